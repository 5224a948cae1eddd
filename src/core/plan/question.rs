//! What the steps of a plan are made from.

use super::{Clearance, Depths, HoleSpec};
use crate::calc::thread_form::Geometry;
use crate::tables::drills::Drill;

/// The question, and what was worked out for it.
pub(super) struct Steps<'a> {
    pub(super) spec: &'a HoleSpec,
    pub(super) geometry: &'a Geometry,
    pub(super) tapping: &'static Drill,
    pub(super) clearance: &'a Clearance,
    pub(super) depths: &'a Depths,
}
