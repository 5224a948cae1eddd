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
use crate::place::Place;
use crate::{App, Error};
use holewright_core::calculators;
use holewright_pages::address::{Ending, Page};

/// Answers such an address; hands every other on.
pub async fn answer(State(app): State<Arc<App>>, request: Request, next: Next) -> Response {
    let place = Place::of(&request);
    let Place::Page(address) = &*place else { return next.run(request).await };
    let is_read = matches!(*request.method(), Method::GET | Method::HEAD);
    if !is_read || address.ending != Some(Ending::Json) {
        return next.run(request).await;
    }
    let uri = request.uri().clone();
    let query = uri.query().unwrap_or_default();
    // In any other spelling it is sent on first.
    let found = if address.canonical() == uri.path() {
        figures(&app, &address.page, query, request.headers().clone()).await
    } else {
        None
    };
    if matches!(found, None | Some(Err(Error::NotFound(_))))
        && let Some(moved) = moved(&holewright_pages::answer(uri.path(), query, &app.context))
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
    page: &Page,
    query: &str,
    headers: HeaderMap,
) -> Option<Result<Response, Error>> {
    let raw = RawQuery(Some(query.to_owned()));
    Some(match page.clone() {
        Page::ThreadSystems => threads::systems(headers).await,
        Page::ThreadSystem(system) => threads::system(Segments(system), headers).await,
        Page::Thread { system, size } => threads::show(Segments((system, size)), headers).await,
        Page::DrillChart => drills::chart(query, headers).await,
        Page::Drill { series, size } => drills::show(Segments((series, size)), headers).await,
        Page::Materials => materials::list(headers).await,
        Page::Material(slug) => materials::show(Segments(slug), headers).await,
        Page::Calculator(name) => calc::answer(calculators::find(&name)?, query, &headers),
        Page::Plan => plan::show(raw, headers).await,
        Page::Search => search::find_all(State(Arc::clone(app)), raw, headers).await,
        Page::Home | Page::Drawer | Page::Calculators | Page::Asset(_) | Page::Unknown => {
            return None;
        }
    })
}

/// The redirect of an address that moved for good.
fn moved(answer: &holewright_pages::Reply) -> Option<Response> {
    let location = answer.location().filter(|_| answer.status == StatusCode::MOVED_PERMANENTLY)?;
    let location = HeaderValue::from_str(location).ok()?;
    let mut response = StatusCode::MOVED_PERMANENTLY.into_response();
    response.headers_mut().insert(LOCATION, location);
    Some(response)
}
