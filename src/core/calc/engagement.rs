//! Engagement: how much of the full thread a hole leaves.

use crate::calc::thread_form::{Geometry, full_depth};
use crate::tables::threads::{Form, Thread};
use crate::units::{Length, in_mm};

/// Engagement in percent of full thread depth that a hole of this diameter leaves.
///
/// 60° forms are figured on ¾ H (ISO 68-1): 100 · (major − hole) / (1.299038 p).
///
/// # Source
/// Machinery's Handbook 31st ed. p. 2155, basis of table 2; BS 93 and BS 84 depths elsewhere.
///
/// # Examples
/// M3 in a 2.5 mm hole is 77 % of ¾ H; 5 BA in No. 36 is 69.9 % of 0.6 p.
/// ```
/// use holewright_core::{calc::{engagement::percent, thread_form::geometry}, tables::threads::find, units::{inch, print}};
/// let five = find("ba", "5").unwrap();
/// assert_eq!(print::percent(percent(five.form(), &geometry(five), inch(0.1065))), "69.9 %");
/// ```
#[must_use]
pub fn percent(form: Form, geometry: &Geometry, hole: Length) -> f64 {
    let full = in_mm(full_depth(form, geometry.pitch)) * 2.0;
    100.0 * in_mm(geometry.major - hole) / full
}

/// The same engagement on the other basis in print for 60° forms, 5/8 H: a fifth more.
#[must_use]
pub fn percent_of_internal_height(form: Form, geometry: &Geometry, hole: Length) -> Option<f64> {
    form.shape().on_five_eighths_h.then(|| percent(form, geometry, hole) * 1.2)
}

/// The hole that leaves this engagement.
#[must_use]
pub fn hole_for(form: Form, geometry: &Geometry, percent: f64) -> Length {
    geometry.major - full_depth(form, geometry.pitch) * 2.0 * (percent / 100.0)
}

/// Whether an engagement figure means anything for this thread: not for taper threads.
#[must_use]
pub fn applies(thread: &Thread) -> bool {
    thread.taper.is_none()
}
