//! `Accept-Encoding`: which codings a reader takes, and which it likes best.

use axum::http::HeaderMap;
use axum::http::header::ACCEPT_ENCODING;

use super::Coding;

/// How well a reader likes a coding, in thousandths.
type Liking = u16;

/// What a reader takes. Without the header: plain bytes only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Accepts {
    brotli: Liking,
    gzip: Liking,
    /// `None`: refused. Not named: taken if nothing else is.
    identity: Option<Liking>,
}

impl Accepts {
    /// Reads the header. What cannot be understood is left out.
    #[must_use]
    pub fn read(headers: &HeaderMap) -> Self {
        let (mut brotli, mut gzip, mut identity, mut others) = (None, None, None, None);
        let items = headers
            .get_all(ACCEPT_ENCODING)
            .iter()
            .filter_map(|line| line.to_str().ok())
            .flat_map(|line| line.split(','));
        for item in items {
            let mut parts = item.split(';').map(str::trim);
            let name = parts.next().unwrap_or("");
            let Some(liking) = parts.next().map_or(Some(1000), liking) else { continue };
            let named = match name {
                _ if name.eq_ignore_ascii_case("br") => &mut brotli,
                _ if name.eq_ignore_ascii_case("gzip") => &mut gzip,
                _ if name.eq_ignore_ascii_case("x-gzip") => &mut gzip,
                _ if name.eq_ignore_ascii_case("identity") => &mut identity,
                "*" => &mut others,
                _ => continue,
            };
            // Named twice: the first counts.
            named.get_or_insert(liking);
        }
        Self {
            brotli: brotli.or(others).unwrap_or(0),
            gzip: gzip.or(others).unwrap_or(0),
            identity: match identity.or(others) {
                None => Some(0),
                named => named.filter(|liking| *liking > 0),
            },
        }
    }

    /// The coding liked best; of equals the one that makes the fewest bytes. `None`: the reader
    /// takes nothing we have.
    #[must_use]
    pub fn best(&self) -> Option<Coding> {
        let (coding, liking) = if self.brotli >= self.gzip {
            (Coding::Brotli, self.brotli)
        } else {
            (Coding::Gzip, self.gzip)
        };
        match self.identity {
            Some(identity) if identity > liking || liking == 0 => Some(Coding::Identity),
            _ => (liking > 0).then_some(coding),
        }
    }

    /// Plain bytes may be sent.
    #[must_use]
    pub const fn takes_identity(&self) -> bool {
        self.identity.is_some()
    }
}

/// A weight as RFC 9110 writes it: `q=0`, `q=0.25`, `q=1.000`.
fn liking(parameter: &str) -> Option<Liking> {
    let value = parameter.strip_prefix("q=").or_else(|| parameter.strip_prefix("Q="))?;
    let (whole, part) = value.split_once('.').unwrap_or((value, ""));
    if !part.bytes().all(|digit| digit.is_ascii_digit()) || part.len() > 3 {
        return None;
    }
    let thousandths = format!("{part:0<3}").parse::<Liking>().ok()?;
    match whole {
        "0" => Some(thousandths),
        "1" if thousandths == 0 => Some(1000),
        _ => None,
    }
}
