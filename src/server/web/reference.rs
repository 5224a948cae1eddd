//! Every reference and plan page: the page itself, and the entry's row for its tag.

use std::sync::Arc;

use axum::Extension;
use axum::body::Body;
use axum::extract::State;
use axum::http::header::{ALLOW, CACHE_CONTROL, VARY};
use axum::http::{HeaderValue, Method, StatusCode, Uri};
use axum::response::{IntoResponse, Response};

use crate::pages::{self, Answer, Context, assets};
use crate::server::bytes::Keep;
use crate::server::middleware::drawer::Personal;
use crate::server::validator::Tag;
use crate::server::{App, Error, db};

/// Answers one address with its page. It looks at the method itself: a table of methods would be
/// copied for each request that comes this far.
///
/// # Errors
/// A page that cannot be made into an answer.
pub async fn answer(
    State(app): State<Arc<App>>,
    method: Method,
    uri: Uri,
    personal: Option<Extension<Personal>>,
) -> Result<Response, Error> {
    if !matches!(method, Method::GET | Method::HEAD) {
        let mut refused = Error::MethodNotAllowed.into_response();
        refused.headers_mut().insert(ALLOW, HeaderValue::from_static("GET,HEAD"));
        return Ok(refused);
    }
    let query = uri.query().unwrap_or_default();
    if let Some(Extension(personal)) = personal {
        return alone(pages::answer(uri.path(), query, &context(&app, Some(personal))));
    }
    let page = pages::answer(uri.path(), query, &app.context);
    if page.status != StatusCode::OK {
        return respond(page);
    }
    let (tag, lasts) = tag(&app, uri.path(), &page).await;
    let mut response = tag.mark(respond(page)?);
    if lasts && is_an_address_of_ours(uri.path()) {
        response.extensions_mut().insert(Keep);
    }
    Ok(response)
}

/// What the pages need to know, with the drawer of a reader who has one.
pub(super) fn context(app: &App, personal: Option<Personal>) -> Context {
    let drawer = personal.map_or_else(Default::default, |Personal(drawer)| drawer);
    Context { drawer, ..app.context.clone() }
}

/// A page for one reader alone: nobody else is shown it, and its tag is of its own bytes, since the
/// entry's row knows nothing of drawers.
fn alone(page: Answer) -> Result<Response, Error> {
    let tag = (page.status == StatusCode::OK).then(|| Tag::of_bytes(page.body.as_bytes()));
    let mut response = respond(page)?;
    let private = HeaderValue::from_static("private, no-cache");
    response.headers_mut().insert(CACHE_CONTROL, private);
    Ok(match tag {
        Some(tag) => tag.mark(response),
        None => response,
    })
}

/// The page's tag, and whether it is the one it will have next time: of the entry's row, or of the
/// page's own bytes where it has none. A page needs no database: if the row cannot be read, its
/// bytes must do for now.
async fn tag(app: &App, path: &str, page: &Answer) -> (Tag, bool) {
    let of_bytes = || Tag::of_bytes(page.body.as_bytes());
    let Some(id) = path.strip_prefix('/').filter(|id| id.contains('/')) else {
        return (of_bytes(), true);
    };
    match db::reference::digest(&app.database, id).await {
        Ok(Some(digest)) => (Tag::of_entry(&digest, &app.build), true),
        Ok(None) => (of_bytes(), true),
        Err(error) => {
            tracing::warn!(%error, "the entry's row cannot be read");
            (of_bytes(), false)
        }
    }
}

/// Any hash brings the style sheet, so only today's address of it counts: what is kept must be
/// bounded by what there is, not by what can be asked.
fn is_an_address_of_ours(path: &str) -> bool {
    !path.starts_with("/static/") || [assets::style_sheet(), assets::icon()].contains(&path)
}

pub(super) fn respond(page: Answer) -> Result<Response, Error> {
    let internal = |error: axum::http::Error| Error::Internal(error.into());
    let is_page = page.header("content-type").is_some_and(|kind| kind.starts_with("text/html"));
    let mut builder = Response::builder().status(page.status);
    for (name, value) in page.headers {
        builder = builder.header(name, value);
    }
    let mut response = builder.body(Body::from(page.body)).map_err(internal)?;
    // A kept page is asked for again each time: with its tag that costs one short answer.
    let kept = HeaderValue::from_static("no-cache");
    response.headers_mut().entry(CACHE_CONTROL).or_insert(kept);
    if is_page {
        // A drawer in the cookie changes it.
        response.headers_mut().insert(VARY, HeaderValue::from_static("Cookie"));
    }
    Ok(response)
}
