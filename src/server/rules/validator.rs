//! Validators: the `ETag` of an answer, and what a reader holds already.
//!
//! A handler marks its plain answer; `bytes` makes of that the tag of the coded one and
//! sends 304 to a reader who holds it.

use std::fmt::Write;
use std::fs::File;
use std::io;
use std::sync::LazyLock;

use axum::http::header::{ETAG, IF_NONE_MATCH};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use sha2::{Digest, Sha256};

use super::BaseUrl;

/// A strong validator: the same tag means the same bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tag(String);

/// What every page depends on besides its own figures: the program, and the address it is served at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Build(String);

impl Build {
    /// This program, serving at this address.
    #[must_use]
    pub fn serving(base_url: &BaseUrl) -> Self {
        Self(format!("{} {base_url}", *PROGRAM))
    }
}

/// The version alone would call two builds of one version the same, so the program's own bytes
/// count. A program that cannot read itself gives no lasting tags: they then hold for one run.
static PROGRAM: LazyLock<String> = LazyLock::new(|| {
    let build = own_digest().unwrap_or_else(|_| super::chance::random());
    format!("{} {build}", env!("CARGO_PKG_VERSION"))
});

/// Of the program's own bytes, a piece at a time: the whole of it would be half of what a start takes.
fn own_digest() -> io::Result<String> {
    let mut digest = Sha256::new();
    io::copy(&mut File::open(std::env::current_exe()?)?, &mut digest)?;
    Ok(hexadecimal(&digest.finalize()))
}

impl Tag {
    /// The tag of a reference page: the digest of its entry's figures, and the program.
    #[must_use]
    pub fn of_entry(digest: &str, build: &Build) -> Self {
        Self::of_bytes(format!("{digest} {}", build.0).as_bytes())
    }

    /// The tag of anything else: of its bytes.
    #[must_use]
    pub fn of_bytes(bytes: &[u8]) -> Self {
        let digest = Sha256::digest(bytes);
        Self(format!("\"{}\"", hexadecimal(digest.get(..16).unwrap_or_default())))
    }

    /// The tag on these headers.
    #[must_use]
    pub fn of(headers: &HeaderMap) -> Option<Self> {
        headers.get(ETAG)?.to_str().ok().map(|tag| Self(tag.to_owned()))
    }

    /// The tag of the same answer in the content coding of this name: other bytes, so another tag.
    /// Without one it is the same.
    #[must_use]
    pub fn coded(&self, name: Option<&str>) -> Self {
        match (name, self.0.strip_suffix('"')) {
            (Some(name), Some(opened)) => Self(format!("{opened}-{name}\"")),
            _ => self.clone(),
        }
    }

    /// As a header's value.
    #[must_use]
    pub fn header(&self) -> Option<HeaderValue> {
        HeaderValue::from_str(&self.0).ok()
    }

    /// The answer with this tag on it.
    #[must_use]
    pub fn mark(&self, mut response: Response) -> Response {
        if let Some(value) = self.header() {
            response.headers_mut().insert(ETAG, value);
        }
        response
    }
}

/// The tags a reader holds answers of: `If-None-Match`.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Held(Vec<HeaderValue>);

impl Held {
    /// Takes them out of a request.
    #[must_use]
    pub fn take(request: &mut HeaderMap) -> Self {
        let held = request.get_all(IF_NONE_MATCH).iter().cloned().collect();
        request.remove(IF_NONE_MATCH);
        Self(held)
    }

    /// Whether the answer with this tag is among them. The comparison is the weak one that
    /// RFC 9110 asks for here.
    #[must_use]
    pub fn holds(&self, tag: &Tag) -> bool {
        self.0
            .iter()
            .filter_map(|value| value.to_str().ok())
            .flat_map(|value| value.split(','))
            .map(str::trim)
            .any(|held| held == "*" || opaque(held) == opaque(&tag.0))
    }
}

/// The tag without the mark of a weak one.
fn opaque(tag: &str) -> &str {
    tag.strip_prefix("W/").unwrap_or(tag)
}

/// Bytes as lower-case hexadecimal digits.
pub(crate) fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(bytes.len() * 2), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}
