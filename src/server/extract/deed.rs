//! What was done a moment ago, for the page that follows.

use std::convert::Infallible;
use std::sync::Arc;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;

use crate::App;
use crate::rules::deed::Did;

/// What the form before this page did, if it did something within the minute.
#[derive(Clone, Copy, Debug)]
pub struct JustDid(pub Option<Did>);

impl FromRequestParts<Arc<App>> for JustDid {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &Arc<App>) -> Result<Self, Infallible> {
        Ok(Self(Did::read(&parts.headers, parts.uri.path())))
    }
}
