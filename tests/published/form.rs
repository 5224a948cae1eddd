//! Figures of a thread form that follow from the library's angle and depth by plain geometry.

use holewright_core::calc::thread_form::{full_depth, thread_angle};
use holewright_core::tables::threads::Form;
use holewright_core::units::{Length, in_degrees, in_mm, mm};

/// A form at a pitch: its sharp height, depth, truncation and root radius, in the pitch's unit.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Profile {
    /// Height of the sharp triangle, p / (2 tan(a/2)).
    pub(crate) height: f64,
    /// Depth of full thread.
    pub(crate) depth: f64,
    /// What the rounding takes off each end, (H − h) / 2.
    pub(crate) truncation: f64,
    /// Radius of crest and root.
    pub(crate) radius: f64,
    /// Depth of the straight flank between the roundings.
    pub(crate) straight: f64,
}

/// The profile of a rounded form.
pub(crate) fn profile(form: Form, pitch: Length) -> Profile {
    let half = in_degrees(thread_angle(form)).to_radians() / 2.0;
    let height = in_mm(pitch) / (2.0 * libm::tan(half));
    let depth = in_mm(full_depth(form, pitch));
    let truncation = (height - depth) / 2.0;
    let radius = truncation * libm::sin(half) / (1.0 - libm::sin(half));
    let straight = depth - 2.0 * radius * (1.0 - libm::sin(half));
    Profile { height, depth, truncation, radius, straight }
}

/// The profile at a pitch of one.
pub(crate) fn unit_profile(form: Form) -> Profile {
    profile(form, mm(1.0))
}
