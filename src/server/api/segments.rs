//! The named parts of an address. What cannot be read as text names nothing: 404.

use axum::extract::{FromRequestParts, Path};
use axum::http::request::Parts;
use serde::de::DeserializeOwned;

use crate::Error;

/// The parts of the path that the route leaves open, in order.
#[derive(Debug)]
pub struct Segments<T>(pub T);

impl<T, S> FromRequestParts<S> for Segments<T>
where
    T: DeserializeOwned + Send,
    S: Send + Sync,
{
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Error> {
        match Path::from_request_parts(parts, state).await {
            Ok(Path(segments)) => Ok(Self(segments)),
            Err(_) => Err(super::nothing_here().await),
        }
    }
}
