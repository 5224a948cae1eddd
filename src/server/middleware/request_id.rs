//! The name of one request, in its header, on its error page and in the log.

use std::hash::{BuildHasher, RandomState};

use axum::http::HeaderName;

/// The header that carries it.
pub const HEADER: HeaderName = HeaderName::from_static("x-request-id");

/// The id of the request at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RequestId(pub String);

/// Sixteen hexadecimal digits that do not come twice. Not a secret: nothing may rest on them being
/// hard to guess.
#[must_use]
pub fn random() -> String {
    // Each `RandomState` has keys of its own, so equal input gives a different digest.
    format!("{:016x}", RandomState::new().hash_one(0_u8))
}
