//! A page's address with `.json` behind its path: the same body as under `/api/v1`.
//!
//! Only a last `.json` counts: `/drills/metric/2.05` is a page, `/drills/metric/2.05.json` its
//! figures. An address whose page moved is sent on the same way. Leaves out `.csv` and `.svg`,
//! which the pages make themselves.

use std::sync::Arc;

use axum::extract::{RawQuery, Request, State};
use axum::http::header::LOCATION;
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use super::segments::Segments;
use super::{calc, drills, materials, plan, search, threads};
use crate::{App, Error};
use holewright_core::calculators;

const SUFFIX: &str = ".json";

/// Answers such an address; hands every other on.
pub async fn answer(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return next.run(request).await;
    }
    let uri = request.uri().clone();
    let Some(page) = uri.path().strip_suffix(SUFFIX) else {
        return next.run(request).await;
    };
    let query = uri.query().unwrap_or_default();
    let found = figures(&app, page, query, request.headers().clone()).await;
    if matches!(found, None | Some(Err(Error::NotFound(_))))
        && let Some(moved) = moved(&holewright_pages::answer(page, query, &app.context))
    {
        return moved;
    }
    match found {
        None => next.run(request).await,
        Some(answer) => answer.into_response(),
    }
}

/// The body behind a page, where it has one.
async fn figures(
    app: &Arc<App>,
    page: &str,
    query: &str,
    headers: HeaderMap,
) -> Option<Result<Response, Error>> {
    let raw = RawQuery(Some(query.to_owned()));
    let owned = |text: &str| text.to_owned();
    let segments: Vec<&str> = page.strip_prefix('/')?.split('/').collect();
    Some(match *segments.as_slice() {
        ["threads"] => threads::systems(headers).await,
        ["threads", system] => threads::system(Segments(owned(system)), headers).await,
        ["threads", system, size] => {
            threads::show(Segments((owned(system), owned(size))), headers).await
        }
        ["drills"] => drills::chart(query, headers).await,
        ["drills", series, size] => {
            drills::show(Segments((owned(series), owned(size))), headers).await
        }
        ["materials"] => materials::list(headers).await,
        ["materials", slug] => materials::show(Segments(owned(slug)), headers).await,
        ["calculators", name] => calc::answer(calculators::find(name)?, query, &headers),
        ["plan"] => plan::show(raw, headers).await,
        ["search"] => search::find_all(State(Arc::clone(app)), raw, headers).await,
        _ => return None,
    })
}

/// The same redirect as that of a page that moved for good, to the address with the suffix.
fn moved(page: &holewright_pages::Answer) -> Option<Response> {
    let location = page.location().filter(|_| page.status == StatusCode::MOVED_PERMANENTLY)?;
    let (path, query) = location.split_once('?').unwrap_or((location, ""));
    let mark = if query.is_empty() { "" } else { "?" };
    let location = HeaderValue::from_str(&format!("{path}{SUFFIX}{mark}{query}")).ok()?;
    let mut response = StatusCode::MOVED_PERMANENTLY.into_response();
    response.headers_mut().insert(LOCATION, location);
    Some(response)
}
