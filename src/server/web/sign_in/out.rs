//! `/sign-out`: the session ends here and in the database, and the browser forgets the pages.

use std::sync::Arc;

use axum::extract::State;
use axum::http::header::SET_COOKIE;
use axum::http::{HeaderName, HeaderValue};
use axum::response::Response;

use super::super::page;
use crate::auth::cookie;
use crate::db::accounts;
use crate::extract::{Asker, Reader};
use crate::{App, Error};

/// Ends the session at hand, if there is one.
///
/// # Errors
/// The database cannot be written.
pub async fn take(
    State(app): State<Arc<App>>,
    Reader(reader): Reader,
    asker: Asker,
) -> Result<Response, Error> {
    if let Some(held) = asker.held {
        accounts::sign_out(&app.database, app.clock.now(), reader.as_ref(), held).await?;
    }
    let mut response = page::see_other("/");
    let headers = response.headers_mut();
    let clear = HeaderName::from_static("clear-site-data");
    headers.insert(clear, HeaderValue::from_static("\"cache\""));
    if let Some(value) = cookie::take_away(&app.base_url) {
        headers.insert(SET_COOKIE, value);
    }
    Ok(response)
}
