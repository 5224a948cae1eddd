//! `Accept-Encoding`: which codings a reader takes, and which it likes best.

use axum::http::HeaderMap;
use axum::http::header::ACCEPT_ENCODING;

use super::Coding;

/// How well a reader likes a coding, in thousandths.
type Liking = u16;

/// What a reader takes. Without the header: plain bytes only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Accepts {
    /// `None`: refused. Plain bytes that are not named are taken if nothing else is.
    likings: [(Coding, Option<Liking>); Coding::ALL.len()],
}

impl Accepts {
    /// Reads the header. What cannot be understood is left out.
    #[must_use]
    pub fn read(headers: &HeaderMap) -> Self {
        let (mut named, mut others) = (Coding::ALL.map(|coding| (coding, None)), None);
        let items = headers
            .get_all(ACCEPT_ENCODING)
            .iter()
            .filter_map(|line| line.to_str().ok())
            .flat_map(|line| line.split(','));
        for item in items {
            let mut parts = item.split(';').map(str::trim);
            let name = parts.next().unwrap_or("");
            let Some(liking) = parts.next().map_or(Some(1000), liking) else { continue };
            let named = named.iter_mut().find(|(known, _)| Some(*known) == coding(name));
            let said = match named {
                Some((_, said)) => said,
                None if name == "*" => &mut others,
                None => continue,
            };
            // Named twice: the first counts.
            said.get_or_insert(liking);
        }
        let likings = named.map(|(coding, said)| match (coding, said.or(others)) {
            (Coding::Identity, None) => (coding, Some(0)),
            (_, liking) => (coding, liking.filter(|liking| *liking > 0)),
        });
        Self { likings }
    }

    /// The coding liked best; of equals the one that makes the fewest bytes. `None`: the reader
    /// takes nothing we have.
    #[must_use]
    pub fn best(&self) -> Option<Coding> {
        let taken = self.likings.into_iter().filter_map(|(coding, liking)| Some((coding, liking?)));
        // Of equals the last, as they stand in `Coding::ALL`.
        taken.max_by_key(|(_, liking)| *liking).map(|(coding, _)| coding)
    }

    /// Plain bytes may be sent.
    #[must_use]
    pub fn takes_identity(&self) -> bool {
        self.likings.iter().any(|(coding, liking)| *coding == Coding::Identity && liking.is_some())
    }
}

/// The coding of this name, in whatever case it is written.
fn coding(name: &str) -> Option<Coding> {
    let names = [
        ("identity", Coding::Identity),
        ("gzip", Coding::Gzip),
        ("x-gzip", Coding::Gzip),
        ("zstd", Coding::Zstd),
        ("br", Coding::Brotli),
    ];
    names
        .into_iter()
        .find(|(written, _)| written.eq_ignore_ascii_case(name))
        .map(|(_, coding)| coding)
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
