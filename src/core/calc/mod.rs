//! The formulas: pure functions from the tables and a question to figures.

pub mod aim;
pub mod blind_hole;
mod candidate;
pub mod clearance;
pub mod countersink;
pub mod cutting_speed;
pub mod depth;
pub mod drill_feed;
pub mod drill_force;
mod drill_rule;
pub mod engagement;
mod error;
pub mod fastener;
pub mod fastener_lists;
pub mod limits;
pub mod machines;
pub mod neighbours;
pub mod oversize;
pub mod position;
pub mod reaming;
pub mod relations;
pub mod screw_limits;
pub mod setting;
pub mod speed_choice;
pub mod spindle;
pub mod spotting;
pub mod strength;
pub mod strip;
pub mod tap_effort;
pub mod taper_hole;
pub mod tapped_in;
pub mod tapping;
pub mod thread_form;
pub mod uses;

pub use crate::tables::tool_steel;
pub use error::Error;
