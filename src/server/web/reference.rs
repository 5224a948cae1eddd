//! Every reference and plan page: the entry's row for the validator, then the page itself.

use std::sync::Arc;

use axum::body::Body;
use axum::extract::State;
use axum::http::header::CACHE_CONTROL;
use axum::http::{HeaderMap, HeaderValue, StatusCode, Uri};
use axum::response::Response;

use crate::pages::{self, Answer};
use crate::server::validator::Tag;
use crate::server::{App, Error, db};

/// Answers one address with its page, or with 304 to a reader who has it.
///
/// # Errors
/// A page that cannot be made into an answer.
pub async fn answer(
    State(app): State<Arc<App>>,
    uri: Uri,
    headers: HeaderMap,
) -> Result<Response, Error> {
    let entry = entry_tag(&app, uri.path()).await;
    if let Some(tag) = entry.as_ref().filter(|tag| tag.is_held(&headers)) {
        return Ok(tag.not_modified());
    }
    let page = pages::answer(uri.path(), uri.query().unwrap_or_default(), &app.context);
    if page.status != StatusCode::OK {
        return respond(page);
    }
    let tag = entry.unwrap_or_else(|| Tag::of_bytes(page.body.as_bytes()));
    if tag.is_held(&headers) { Ok(tag.not_modified()) } else { Ok(tag.mark(respond(page)?)) }
}

/// The tag from the entry's row. A page needs no database: if the row cannot be read, the page's
/// own bytes make its tag.
async fn entry_tag(app: &App, path: &str) -> Option<Tag> {
    let id = path.strip_prefix('/').filter(|id| id.contains('/'))?;
    match db::reference::digest(&app.database, id).await {
        Ok(digest) => digest.map(|digest| Tag::of_entry(&digest, &app.build)),
        Err(error) => {
            tracing::warn!(%error, "the entry's row cannot be read");
            None
        }
    }
}

fn respond(page: Answer) -> Result<Response, Error> {
    let internal = |error: axum::http::Error| Error::Internal(error.into());
    let mut builder = Response::builder().status(page.status);
    for (name, value) in page.headers {
        builder = builder.header(name, value);
    }
    let mut response = builder.body(Body::from(page.body)).map_err(internal)?;
    // A kept page is asked for again each time: with its tag that costs one short answer.
    let kept = HeaderValue::from_static("no-cache");
    response.headers_mut().entry(CACHE_CONTROL).or_insert(kept);
    Ok(response)
}
