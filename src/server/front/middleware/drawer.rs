//! The reader's drawer, taken from its cookie before anything is answered from what is kept.

use axum::extract::Request;
use axum::middleware::Next;
use axum::response::Response;

use crate::extract::{DRAWER, Personal};
use crate::front::place::Place;
use crate::rules::cookie;
use holewright_pages::drawer::Carried;

/// Hands the request on, with [`Personal`] on it if its answer turns on a drawer.
///
/// Without a drawer, or with one that is switched off or cannot be read, every page is the one that
/// all readers get; only the drawer's own page shows what the cookie holds.
pub async fn carry(mut request: Request, next: Next) -> Response {
    if let Some(carried) = carried(&request) {
        request.extensions_mut().insert(Personal(carried));
    }
    next.run(request).await
}

fn carried(request: &Request) -> Option<Carried> {
    let place = Place::of(request);
    let value = cookie::value(request.headers(), DRAWER).filter(|_| place.turns_on_drawer())?;
    let carried = Carried::of(&value);
    (carried.in_use().is_some() || place.is_drawer()).then_some(carried)
}
