//! The thread pages: the systems, one system's table, one thread.

mod by_metal;
mod clearance;
mod dimensions;
mod elsewhere;
mod index;
mod relations;
mod show;
mod system;
mod taper;
mod tapped_in;
mod tapping;

pub(super) use index::index;
pub(super) use show::show;
pub(super) use system::system;
pub(super) use tapped_in::read as tapped_in;
pub(super) use tapping::{TappingRow, rows as tapping_rows};
