//! The doors for other programs: the figures of the pages as JSON.
//!
//! Keys carry their unit and are never dropped or renamed inside `/api/v1`.

pub mod calc;
mod clearance;
pub mod drills;
mod figures;
pub mod materials;
pub mod plan;
pub mod problem;
mod reply;
mod tapping;
pub mod threads;

use crate::server::Error;

/// Any other address under `/api`.
pub async fn nothing_here() -> Error {
    Error::NotFound("nothing stands at this address")
}
