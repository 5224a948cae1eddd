//! What a person owns: drills, taps, reamers and the speeds of the machine, carried in one cookie.
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

pub use carried::{Carried, Unreadable};
pub use contents::{Drawer, LONGEST};
pub use form::{Outcome, decide};
pub use reading::{Drills, Reamers, Speeds, Taps};
pub use sets::{DRILL_SETS, DrillSet, TAP_SETS, TapSet};

pub(super) use fill::{CLEARANCE, Fill, Filled, PLAN, SPEEDS, TAPPING, filled, fills_of};
pub use notice::Notice;
pub(super) use notice::{better_clearance, better_tapping};
pub(super) use page::show;

/// Whether the answer at a path may turn on the drawer: a page may, a file or figures for a program
/// never do.
///
/// # Examples
/// ```
/// use holewright_pages::drawer::matters_at;
/// assert!(matters_at("/plan") && matters_at("/drills/metric/2.05"));
/// assert!(!matters_at("/plan.json") && !matters_at("/api/v1/plan"));
/// ```
#[must_use]
pub fn matters_at(path: &str) -> bool {
    let is_file = [".json", ".csv", ".svg", ".sqlite"].iter().any(|end| path.ends_with(end));
    !is_file && !path.starts_with("/static/") && !path.starts_with("/api/")
}
