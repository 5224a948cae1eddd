//! Keeping a drawer: the form that was sent, and the cookie that answers it.
//!
//! The page itself is `pages::drawer`; nothing of a drawer is kept here.

use std::sync::Arc;

use axum::Extension;
use axum::body::{Body, Bytes};
use axum::extract::State;
use axum::http::header::{CACHE_CONTROL, LOCATION, SET_COOKIE};
use axum::http::{HeaderValue, StatusCode};
use axum::response::Response;

use super::reference::{context, respond};
use crate::extract::{DRAWER, Personal};
use crate::{App, Error};
use holewright_pages::drawer::{Outcome, decide};

/// A year, in seconds.
const YEAR: u32 = 31_536_000;

/// Keeps the drawer that was sent, in the reader's own browser, and shows it.
///
/// # Errors
/// An answer that cannot be made.
pub async fn keep(
    State(app): State<Arc<App>>,
    personal: Option<Extension<Personal>>,
    form: Bytes,
) -> Result<Response, Error> {
    let personal = personal.map(|Extension(personal)| personal);
    let answer = match decide(&form, &context(&app, personal)) {
        Outcome::Keep(drawer) => done(&cookie(&app, &drawer.cookie_value(), YEAR))?,
        Outcome::Empty => done(&cookie(&app, "", 0))?,
        Outcome::Refused(page) => respond(page)?,
    };
    Ok(never_stored(answer))
}

/// The cookie, out of reach of scripts and of forms on other sites.
fn cookie(app: &App, value: &str, seconds: u32) -> String {
    let secure = if app.base_url.is_https() { "; Secure" } else { "" };
    format!("{DRAWER}={value}; Path=/; Max-Age={seconds}; SameSite=Lax; HttpOnly{secure}")
}

fn done(cookie: &str) -> Result<Response, Error> {
    let cookie = HeaderValue::from_str(cookie).map_err(|error| Error::Internal(error.into()))?;
    let mut response = Response::new(Body::empty());
    *response.status_mut() = StatusCode::SEE_OTHER;
    response.headers_mut().insert(LOCATION, HeaderValue::from_static("/drawer"));
    response.headers_mut().insert(SET_COOKIE, cookie);
    Ok(response)
}

fn never_stored(mut response: Response) -> Response {
    response.headers_mut().insert(CACHE_CONTROL, HeaderValue::from_static("no-store"));
    response
}
