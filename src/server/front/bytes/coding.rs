//! The content codings, and how much trouble is taken over each.

use std::io::{self, Write};

use axum::http::HeaderValue;
use brotli::enc::BrotliEncoderParams;
use flate2::Compression;
use flate2::write::GzEncoder;

/// How the bytes of a body are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Coding {
    /// As they are.
    Identity,
    /// RFC 1952.
    Gzip,
    /// RFC 8878.
    Zstd,
    /// RFC 7932.
    Brotli,
}

/// How much work goes into making few bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effort {
    /// Once, for every reader to come. Brotli 10 makes a tenth fewer bytes of a thread page than 5
    /// does, in 6 ms; 11 makes two hundredths fewer again and takes twice as long. Zstd 19 makes
    /// three hundredths fewer than gzip's best, in 3 ms; its levels above make no fewer.
    Kept,
    /// For one reader. Brotli 4 takes a fifth of a millisecond for a thread page. Zstd 9 takes as
    /// long as gzip 5 and makes a hundredth fewer bytes.
    Passing,
}

impl Coding {
    /// Every coding, the one that makes the fewest bytes of a page last.
    pub const ALL: [Self; 4] = [Self::Identity, Self::Gzip, Self::Zstd, Self::Brotli];

    /// What `Content-Encoding` says; nothing for plain bytes.
    #[must_use]
    pub const fn name(self) -> Option<&'static str> {
        match self {
            Self::Identity => None,
            Self::Gzip => Some("gzip"),
            Self::Zstd => Some("zstd"),
            Self::Brotli => Some("br"),
        }
    }

    pub(super) fn header(self) -> Option<HeaderValue> {
        self.name().map(HeaderValue::from_static)
    }
}

/// The bytes in this coding. Equal bytes always come out equal.
///
/// # Errors
/// None that can happen in memory; the coders' own signature has one.
pub fn encode(bytes: &[u8], coding: Coding, effort: Effort) -> io::Result<Vec<u8>> {
    match coding {
        Coding::Identity => Ok(bytes.to_vec()),
        Coding::Gzip => gzip(bytes, effort),
        Coding::Zstd => zstd(bytes, effort),
        Coding::Brotli => brotli(bytes, effort),
    }
}

fn gzip(bytes: &[u8], effort: Effort) -> io::Result<Vec<u8>> {
    let level = match effort {
        Effort::Kept => Compression::best(),
        Effort::Passing => Compression::new(5),
    };
    let mut encoder = GzEncoder::new(Vec::with_capacity(bytes.len() / 3), level);
    encoder.write_all(bytes)?;
    encoder.finish()
}

/// The window is never longer than the body, so it keeps within the 8 MB of RFC 9659.
fn zstd(bytes: &[u8], effort: Effort) -> io::Result<Vec<u8>> {
    let level = match effort {
        Effort::Kept => 19,
        Effort::Passing => 9,
    };
    zstd::bulk::compress(bytes, level)
}

fn brotli(mut bytes: &[u8], effort: Effort) -> io::Result<Vec<u8>> {
    let parameters = BrotliEncoderParams {
        quality: match effort {
            Effort::Kept => 10,
            Effort::Passing => 4,
        },
        // A window of 256 kB holds any page whole; a larger one costs memory for nothing.
        lgwin: 18,
        size_hint: bytes.len(),
        ..BrotliEncoderParams::default()
    };
    let mut coded = Vec::with_capacity(bytes.len() / 3);
    brotli::BrotliCompress(&mut bytes, &mut coded, &parameters)?;
    Ok(coded)
}
