//! The formulas: pure functions from tables and what is asked to figures.

pub mod aim;
pub mod clearance;
pub mod cutting_speed;
pub mod depth;
pub mod engagement;
mod error;
pub mod limits;
pub mod neighbours;
pub mod oversize;
pub mod relations;
pub mod tapping;
pub mod thread_form;
pub mod uses;

pub use error::Error;
