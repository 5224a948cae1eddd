//! The machine that was typed last in a note, kept in the member's own browser alone and offered in the next note.

use axum::http::header::SET_COOKIE;
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use form_urlencoded::{byte_serialize, parse};

use crate::rules::cookie;
use crate::rules::notes::fields::LONGEST_FIELD;
use crate::rules::notes::wording::{Wording, line};
use crate::{App, Error};

/// The field of the note.
pub(super) const FIELD: &str = "machine";
/// The cookie's name.
const NAME: &str = "machine";
/// A year, in seconds.
const YEAR: u32 = 31_536_000;

/// The machine that this browser remembers.
pub(super) fn read(headers: &HeaderMap) -> Option<String> {
    let value = cookie::value(headers, NAME)?;
    // It is coded as the value of a form is: one value without a name.
    let (typed, _) = parse(value.as_bytes()).next()?;
    let typed = line(&typed);
    (!typed.is_empty() && typed.chars().count() <= LONGEST_FIELD).then_some(typed)
}

/// The answer to a note that was kept, by which the browser remembers its machine, if it names one that is not too
/// long.
pub(super) fn remembered(
    app: &App,
    wording: &Wording,
    mut response: Response,
) -> Result<Response, Error> {
    let machine = wording.done.text(FIELD);
    if machine.is_empty() || machine.chars().count() > LONGEST_FIELD {
        return Ok(response);
    }
    let value: String = byte_serialize(machine.as_bytes()).collect();
    let secure = if app.base_url.is_https() { "; Secure" } else { "" };
    let cookie =
        format!("{NAME}={value}; Path=/notes; Max-Age={YEAR}; SameSite=Lax; HttpOnly{secure}");
    let cookie = HeaderValue::from_str(&cookie).map_err(|error| Error::Internal(error.into()))?;
    response.headers_mut().append(SET_COOKIE, cookie);
    Ok(response)
}
