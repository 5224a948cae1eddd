//! Tapping drills: every drill that would do, and the one to take.

use crate::calc::aim::{self, Aim};
use crate::calc::limits::LargestHole;
use crate::calc::{engagement, limits, thread_form};
use crate::tables::drills::{self, Drill};
use crate::tables::materials::{Group, Material};
use crate::tables::threads::Thread;
use crate::units::{Length, in_mm};

/// A drill with the thread it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The drill.
    pub drill: &'static Drill,
    /// Engagement in percent of full thread depth at the drill's nominal size.
    pub engagement_percent: f64,
    /// Within the standard's largest hole; `None` where no limit is held.
    pub within_standard: Option<bool>,
}
