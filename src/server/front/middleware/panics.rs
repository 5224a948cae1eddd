//! A panic becomes a refusal: the reader gets a page, the process lives. The log has the panic
//! already, by its hook.

use std::any::Any;

use axum::response::{IntoResponse, Response};

use crate::Error;

/// The answer to a request whose handler panicked.
#[must_use]
pub fn answer(_panic: Box<dyn Any + Send>) -> Response {
    Error::Internal("the handler panicked".into()).into_response()
}
