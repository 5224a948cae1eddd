//! One cookie of a request. Leaves out what its value means.

use axum::http::HeaderMap;
use axum::http::header::COOKIE;

/// The value of the first cookie of this name, the quotes around it taken off. Bytes that are no text
/// become the replacement character.
#[must_use]
pub fn value(headers: &HeaderMap, name: &str) -> Option<String> {
    let pairs =
        headers.get_all(COOKIE).iter().flat_map(|line| line.as_bytes().split(|b| *b == b';'));
    let value = pairs.filter_map(|pair| named(pair.trim_ascii(), name)).next()?;
    let inner = value.strip_prefix(b"\"").and_then(|value| value.strip_suffix(b"\""));
    Some(String::from_utf8_lossy(inner.unwrap_or(value)).into_owned())
}

/// Whether a request carries a cookie of this name.
#[must_use]
pub fn is_there(headers: &HeaderMap, name: &str) -> bool {
    value(headers, name).is_some()
}

fn named<'a>(pair: &'a [u8], name: &str) -> Option<&'a [u8]> {
    pair.strip_prefix(name.as_bytes())?
        .trim_ascii_start()
        .strip_prefix(b"=")
        .map(<[u8]>::trim_ascii)
}

#[cfg(test)]
mod tests {
    use super::{COOKIE, HeaderMap, value};

    fn of(line: &'static str) -> Option<String> {
        let mut headers = HeaderMap::new();
        headers.insert(COOKIE, axum::http::HeaderValue::from_static(line));
        value(&headers, "drawer")
    }

    #[test]
    fn a_cookie_is_found_by_its_whole_name() {
        assert_eq!(of("a=b; drawer=x=1&y=2; c=d").as_deref(), Some("x=1&y=2"));
        assert_eq!(of("my_drawer=1;drawer=\"2\"; drawer=3").as_deref(), Some("2"));
        assert_eq!(of("drawer").as_deref(), None);
        assert_eq!(of("drawers=1; =; ;").as_deref(), None);
        assert_eq!(of("drawer=").as_deref(), Some(""));
    }
}
