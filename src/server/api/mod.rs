//! The doors for other programs: the figures of the pages as JSON, and the tables as one file.
//!
//! Keys carry their unit and are never dropped or renamed inside `/api/v1`.

mod acceptable;
pub mod behind_page;
pub mod calc;
mod clearance;
mod drill_cut;
pub mod drills;
pub mod fasteners;
mod figures;
mod material_properties;
pub mod materials;
pub mod openapi;
pub mod plan;
pub mod problem;
pub mod reference_file;
mod reply;
pub mod rescue;
pub mod search;
pub mod segments;
mod setting;
mod taken;
mod tapping;
pub mod threads;

use crate::Error;

/// Any other address under `/api`.
pub async fn nothing_here() -> Error {
    Error::NotFound("there is nothing at this address")
}
