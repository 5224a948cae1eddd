//! The name of one request, in its header, on its error page and in the log.

use axum::http::HeaderName;

/// The header that carries it.
pub const HEADER: HeaderName = HeaderName::from_static("x-request-id");

/// The id of the request at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RequestId(pub String);
