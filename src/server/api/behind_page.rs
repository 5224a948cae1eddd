//! The figures behind a page: the body that its address with `.json` has.

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::HeaderMap;
use axum::response::Response;

use super::segments::Segments;
use super::{calc, drills, fasteners, materials, plan, rescue, search, threads};
use crate::{App, Error};
use holewright_core::calculators;
use holewright_pages::address::Page;

/// The body behind a page, where it has one.
pub async fn figures(
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
        Page::Troubles => rescue::list(headers).await,
        Page::Trouble(slug) => rescue::show(Segments(slug), raw, headers).await,
        Page::Fasteners => fasteners::list(headers).await,
        Page::FastenerTable(slug) => fasteners::show(Segments(slug), headers).await,
        Page::Calculator(name) => calc::answer(calculators::find(&name)?, query, &headers),
        Page::Plan => plan::show(raw, headers).await,
        Page::Search => search::find_all(State(Arc::clone(app)), raw, headers).await,
        Page::Home | Page::Drawer | Page::Calculators | Page::Asset(_) | Page::Unknown => {
            return None;
        }
    })
}
