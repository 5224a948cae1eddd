//! The doors for other programs: the figures of the pages as JSON.

pub mod problem;

use crate::server::Error;

/// Any other address under `/api/v1`.
pub async fn nothing_here() -> Error {
    Error::NotFound
}
