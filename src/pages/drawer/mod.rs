//! What a person owns: drills, taps, reamers and machines with their speeds, carried in one cookie.
//!
//! A drawer fills what an address leaves open ([`fill`]), never what it says, and it decides which
//! drill is chosen, never a figure. Leaves out the header of the cookie, which is the server's.

mod carried;
mod contents;
mod fill;
mod form;
mod notice;
mod page;
mod pieces;
mod reading;
mod sets;
mod typed;

pub use carried::Carried;
pub use contents::{Drawer, LONGEST, Unreadable};
pub use form::{Outcome, decide};
pub use reading::{Drills, Reamers, Speeds, Taps};
pub use sets::{DRILL_SETS, DrillSet, TAP_SETS, TapSet};

pub(super) use fill::{
    CLEARANCE, Fill, Filled, PLAN, SPEEDS, SPEEDS_TO_REAM, TAPPING, filled, fills_of,
};
pub use notice::Notice;
pub(super) use notice::{better_clearance, better_tapping};
pub(super) use page::show;
