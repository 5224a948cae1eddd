//! The cookies of a request, by name. Leaves out what their values mean.

use axum::http::HeaderMap;
use axum::http::header::COOKIE;
use cookie::Cookie;

/// The values of the cookies of this name, in their order, the quotes around each taken off. Bytes
/// that are no text become the replacement character.
pub fn values(headers: &HeaderMap, name: &str) -> impl Iterator<Item = String> {
    let lines = headers.get_all(COOKIE).iter();
    let lines = lines.map(|line| String::from_utf8_lossy(line.as_bytes()).into_owned());
    lines
        .flat_map(Cookie::split_parse)
        .filter_map(Result::ok)
        .filter(move |cookie| cookie.name() == name)
        .map(|cookie| cookie.value_trimmed().to_owned())
}

/// The value of the first cookie of this name.
#[must_use]
pub fn value(headers: &HeaderMap, name: &str) -> Option<String> {
    values(headers, name).next()
}

/// Whether a request carries a cookie of this name.
#[must_use]
pub fn is_there(headers: &HeaderMap, name: &str) -> bool {
    value(headers, name).is_some()
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
        assert_eq!(of("drawer = 1").as_deref(), Some("1"));
        assert_eq!(of("drawer=a%20b").as_deref(), Some("a%20b"), "it is not decoded");
    }
}
