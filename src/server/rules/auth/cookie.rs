//! The session's cookie.
//!
//! Over TLS it has the prefix that binds it to this host. A club's home network without TLS must
//! work too: there the prefix and `Secure` would only make the browser drop it.

use axum::http::header::SET_COOKIE;
use axum::http::{HeaderMap, HeaderValue};

use super::Token;
use crate::rules::BaseUrl;
use crate::rules::cookie::values;

/// How long a browser keeps it: the longest a session lasts.
const MAX_AGE: u32 = 30 * 24 * 60 * 60;

/// The most tokens looked at: each costs a look into the database.
const MOST: usize = 4;

/// Its name at this address.
#[must_use]
pub fn name(base_url: &BaseUrl) -> &'static str {
    if base_url.is_https() { "__Host-holewright" } else { "holewright" }
}

/// The tokens a request carries. A browser may hold several cookies of this name: a dead one, or one that
/// another program on the same host gave. No more than a few are looked at.
pub fn read(headers: &HeaderMap, base_url: &BaseUrl) -> impl Iterator<Item = Token> {
    values(headers, name(base_url)).filter_map(|value| Token::read(&value)).take(MOST)
}

/// The header that gives it to the browser.
#[must_use]
pub fn give(token: &Token, base_url: &BaseUrl) -> Option<HeaderValue> {
    written(base_url, token.secret(), MAX_AGE)
}

/// The header that takes it away.
#[must_use]
pub fn take_away(base_url: &BaseUrl) -> Option<HeaderValue> {
    written(base_url, "", 0)
}

/// Whether an answer gives it or takes it away.
#[must_use]
pub fn is_told(headers: &HeaderMap, base_url: &BaseUrl) -> bool {
    let said = |value: &HeaderValue| {
        let text = value.as_bytes().strip_prefix(name(base_url).as_bytes());
        text.is_some_and(|rest| rest.starts_with(b"="))
    };
    headers.get_all(SET_COOKIE).iter().any(said)
}

fn written(base_url: &BaseUrl, value: &str, max_age: u32) -> Option<HeaderValue> {
    let secure = if base_url.is_https() { "; Secure" } else { "" };
    let name = name(base_url);
    let text = format!("{name}={value}; Path=/; Max-Age={max_age}; HttpOnly; SameSite=Lax{secure}");
    let mut value = HeaderValue::from_str(&text).ok()?;
    value.set_sensitive(true);
    Some(value)
}
