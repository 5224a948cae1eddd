//! Every reference and plan page: the page from the pages crate, its tag from the entry's row, and the notes on it.

use std::borrow::Cow;
use std::slice;
use std::sync::Arc;

use axum::Extension;
use axum::body::{Body, Bytes};
use axum::extract::State;
use axum::http::header::{ALLOW, CACHE_CONTROL, VARY};
use axum::http::{HeaderValue, Method, StatusCode, Uri};
use axum::response::{IntoResponse, Response};

use super::apart::aside;
use super::notes::fragment;
use crate::db::notes::lists::{self, Filter};
use crate::db::notes::{search, used};
use crate::extract::Personal;
use crate::rules::Keep;
use crate::rules::notes::belongs::Group;
use crate::rules::notes::used::counted;
use crate::rules::validator::Tag;
use crate::{App, Error, db};
use holewright_pages::address::Address;
use holewright_pages::plan::Request;
use holewright_pages::{Context, Notes, Query, Reply};

/// So many of the newest notes stand on the front page.
const LATELY: i64 = 3;

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
    let below = below(&app, &uri).await;
    let personal = personal.map(|Extension(personal)| personal);
    let is_personal = personal.is_some();
    let context = Context { notes: below.notes, ..context(&app, personal) };
    let page = holewright_pages::answer(uri.path(), query, &context);
    if is_personal {
        return alone(page);
    }
    if page.status != StatusCode::OK {
        return respond(page);
    }
    let tag = match below.digest {
        Some(digest) => Tag::of_entry(&format!("{digest} {:?}", context.club), &app.build),
        None => Tag::of_bytes(page.body.as_bytes()),
    };
    let mut response = tag.mark(respond(page)?);
    if below.lasts && Address::read(uri.path()).page.may_be_kept(uri.path()) {
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
fn alone(page: Reply) -> Result<Response, Error> {
    let tag = (page.status == StatusCode::OK).then(|| Tag::of_bytes(page.body.as_bytes()));
    let mut response = respond(page)?;
    let private = HeaderValue::from_static("private, no-cache");
    response.headers_mut().insert(CACHE_CONTROL, private);
    Ok(match tag {
        Some(tag) => tag.mark(response),
        None => response,
    })
}

/// What the database knows of a page.
struct Below {
    /// The digest of the entry's figures and of the notes on its page; none where the page's own
    /// bytes must do.
    digest: Option<String>,
    /// What members found.
    notes: Notes,
    /// Whether the page will be the same next time.
    lasts: bool,
}

/// The entry's row and its notes, or the notes that a search finds. A page needs no database: where
/// it cannot be read, the figures stand alone.
async fn below(app: &App, uri: &Uri) -> Below {
    let mut below = Below { digest: None, notes: app.context.notes.clone(), lasts: true };
    let path = uri.path();
    if path == "/search" {
        let query = Query::read(uri.query().unwrap_or_default());
        let typed = query.get("q");
        match search::find(&app.database, typed, &Filter::default(), fragment::MOST).await {
            Ok(hits) => {
                let typed = typed.to_owned();
                let found = aside(move || fragment::on_search(&typed, &hits)).await;
                below.notes = found.unwrap_or_default();
            }
            Err(error) => tracing::warn!(%error, "the notes cannot be searched"),
        }
        return below;
    }
    if matches!(path, "/" | "/plan") {
        let found = match path {
            "/plan" => on_job(app, uri.query().unwrap_or_default()).await,
            _ => lately(app).await,
        };
        match found {
            Ok(notes) => below.notes = notes,
            Err(error) => {
                tracing::warn!(%error, "the notes of a page cannot be read");
                below.lasts = false;
            }
        }
        return below;
    }
    let Some(id) = path.strip_prefix('/').filter(|id| id.contains('/')) else { return below };
    match db::reference::with_notes(&app.database, id, fragment::MOST).await {
        Ok(Some(entry)) => {
            let (digest, named) = (entry.digest.clone(), id.to_owned());
            below.notes = if entry.notes.is_empty() {
                fragment::on_page(id, &entry)
            } else {
                let notes = aside(move || fragment::on_page(&named, &entry)).await;
                notes.unwrap_or_default()
            };
            // A calculator's page hangs on its query too.
            below.digest =
                (!id.starts_with("calculators/")).then(|| format!("{digest} {}", below.notes.html));
        }
        Ok(None) => {}
        Err(error) => {
            tracing::warn!(%error, "the entry's row cannot be read");
            below.lasts = false;
        }
    }
    below
}

/// The notes on the thread of a plan in its material; none where either is not named outright.
async fn on_job(app: &App, query: &str) -> Result<Notes, Error> {
    let request = Request::read(query);
    let thread = Group::Threads.named(request.typed("thread"));
    let material = Group::Materials.named(request.typed("material"));
    let (Some(thread), Some(material)) = (thread, material) else {
        return Ok(app.context.notes.clone());
    };
    let job = [thread.id.clone(), material.id.clone()];
    let on = [thread.id.as_str(), &material.id];
    let (found, count) = lists::on_both(&app.database, on, fragment::MOST).await?;
    let [on_thread, in_material] = job.each_ref().map(slice::from_ref);
    let said = used::said(&app.database, [on_thread, in_material]).await?;
    aside(move || {
        let used = counted(&said, &job);
        fragment::on_job(&thread, &material, (&found, count), used)
    })
    .await
}

/// The newest notes.
async fn lately(app: &App) -> Result<Notes, Error> {
    let found = lists::shown(&app.database, &Filter::default(), None, LATELY).await?;
    aside(move || fragment::lately(&found)).await
}

pub(super) fn respond(page: Reply) -> Result<Response, Error> {
    let internal = |error: axum::http::Error| Error::Internal(error.into());
    let is_page = page.header("content-type").is_some_and(|kind| kind.starts_with("text/html"));
    let mut builder = Response::builder().status(page.status);
    for (name, value) in page.headers {
        builder = builder.header(name, value);
    }
    let mut response = builder.body(Body::from(sent(page.body))).map_err(internal)?;
    // A kept page is asked for again each time: with its tag that costs one short answer.
    let kept = HeaderValue::from_static("no-cache");
    response.headers_mut().entry(CACHE_CONTROL).or_insert(kept);
    if is_page {
        // A drawer in the cookie changes it.
        response.headers_mut().insert(VARY, HeaderValue::from_static("Cookie"));
    }
    Ok(response)
}

fn sent(body: holewright_pages::Body) -> Bytes {
    match body.into_bytes() {
        Cow::Borrowed(bytes) => Bytes::from_static(bytes),
        Cow::Owned(bytes) => bytes.into(),
    }
}
