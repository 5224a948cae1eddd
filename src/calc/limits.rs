//! The standard's largest hole: the nut's minor diameter at its upper limit.

use crate::calc::thread_form::Geometry;
use crate::tables::threads::Thread;
use crate::units::Length;

/// The largest minor diameter the standard allows the nut, and whose limit it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LargestHole {
    /// The limit.
    pub diameter: Length,
    /// The standard as pages name it: "BS 93", "6H", "2B".
    pub standard: &'static str,
}

/// The largest hole of a thread, where we hold its standard's figure.
#[must_use]
pub fn largest_hole(_thread: &Thread, _geometry: &Geometry) -> Option<LargestHole> {
    None
}
