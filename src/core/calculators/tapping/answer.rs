//! The figures: from a thread and the drills at hand to hole and engagement.

use crate::calc::engagement::{hole_for, percent, percent_of_internal_height};
use crate::calc::limits::{LargestHole, is_below_smallest, largest_hole, largest_hole_of};
use crate::calc::tapping::{Candidate, candidates_of, judge_of};
use crate::calc::thread_form::{
    Geometry, engagement_basis, engagement_basis_of, geometry, geometry_of,
};
use crate::tables::drills::{Drill, SAME_SIZE};
use crate::tables::threads::{Basis, Form, Thread};
use crate::units::{Length, Pitch, in_mm};

/// A drill further than this from the engagement asked for is not named for it, percent.
pub const NEAR: f64 = 10.0;

/// The thread that is tapped: one held here, or any form, diameter and pitch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Subject {
    /// The thread held here; none for one no table holds.
    pub thread: Option<&'static Thread>,
    /// Its form.
    pub form: Form,
    /// Its pitch as written.
    pub pitch: Pitch,
    /// Its figures.
    pub geometry: Geometry,
    /// The standard's largest hole, where one is held or follows from the form's rule.
    pub largest_hole: Option<LargestHole>,
}

/// What a hole leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Left {
    /// The hole.
    pub hole: Length,
    /// The drill it was named by.
    pub drill: Option<&'static Drill>,
    /// Engagement, percent of full thread depth.
    pub percent: f64,
    /// The same on 5/8 H, the other basis in print for 60° forms.
    pub percent_of_five_eighths_h: Option<f64>,
    /// Within the standard's largest hole.
    pub within_standard: Option<bool>,
    /// Below the nut's least minor diameter.
    pub below_minor: bool,
}

/// Everything the page says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The thread.
    pub subject: Subject,
    /// The hole asked about.
    pub left: Option<Left>,
    /// The engagement asked for, percent of full thread depth.
    pub wanted_percent: f64,
    /// The same on 5/8 H.
    pub wanted_of_five_eighths_h: Option<f64>,
    /// The hole that leaves it.
    pub hole: Length,
    /// The drill at hand nearest to it, if one is within ten points.
    pub nearest: Option<Candidate>,
    /// The drills at hand between 90 and 50 %, largest engagement first.
    pub candidates: Vec<Candidate>,
}

impl Subject {
    /// A thread held here.
    #[must_use]
    pub fn known(thread: &'static Thread) -> Self {
        let geometry = geometry(thread);
        Self {
            thread: Some(thread),
            form: thread.form(),
            pitch: thread.pitch,
            geometry,
            largest_hole: largest_hole(thread, &geometry),
        }
    }

    /// A thread no table holds.
    #[must_use]
    pub fn custom(form: Form, major: Length, pitch: Pitch) -> Self {
        let geometry = geometry_of(form, major, pitch);
        let largest_hole = largest_hole_of(form, &geometry);
        Self { thread: None, form, pitch, geometry, largest_hole }
    }

    /// What its engagement is a percentage of.
    #[must_use]
    pub fn basis(&self) -> Basis {
        self.thread.map_or_else(|| engagement_basis(self.form), engagement_basis_of)
    }

    /// Whether two threads have the same form, diameter and pitch.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        let same = |a: Length, b: Length| in_mm(a - b).abs() < in_mm(SAME_SIZE);
        self.form.of_any_size() == other.form.of_any_size()
            && same(self.geometry.major, other.geometry.major)
            && same(self.geometry.pitch, other.geometry.pitch)
    }
}

/// The figures; `at_hand` is given smallest first.
///
/// # Source
/// Machinery's Handbook 31st ed. p. 2155, basis of table 2; depths of the forms as in
/// [`crate::calc::thread_form`].
///
/// # Examples
/// M3 in a 2.5 mm hole is 77.0 % of ¾ H and 92.4 % of 5/8 H (a maker's flowchart prints 92.4).
/// ```
/// use holewright_core::calculators::tapping::{Subject, answer};
/// use holewright_core::tables::threads::Form;
/// use holewright_core::units::{Pitch, mm, print};
/// let thread = Subject::custom(Form::IsoMetric, mm(3.0), Pitch::Mm(0.5));
/// let found = answer(thread, Some((mm(2.5), None)), 70.0, &[]);
/// let left = found.left.unwrap();
/// assert_eq!(print::percent(left.percent), "77.0 %");
/// assert_eq!(print::percent(left.percent_of_five_eighths_h.unwrap()), "92.4 %");
/// assert_eq!(print::mm(found.hole, 3), "2.545 mm");
/// ```
#[must_use]
pub fn answer(
    subject: Subject,
    hole: Option<(Length, Option<&'static Drill>)>,
    wanted_percent: f64,
    at_hand: &[&'static Drill],
) -> Answer {
    let Subject { form, geometry, largest_hole, .. } = subject;
    let wanted = hole_for(form, &geometry, wanted_percent);
    let off = |candidate: &Candidate| (candidate.engagement_percent - wanted_percent).abs();
    let nearest = at_hand
        .iter()
        .map(|drill| judge_of(form, &geometry, largest_hole, drill))
        .filter(|candidate| off(candidate) <= NEAR)
        .min_by(|a, b| off(a).total_cmp(&off(b)));
    Answer {
        subject,
        left: hole.map(|(hole, drill)| left(&subject, hole, drill)),
        wanted_percent,
        wanted_of_five_eighths_h: percent_of_internal_height(form, &geometry, wanted),
        hole: wanted,
        nearest,
        candidates: candidates_of(form, &geometry, largest_hole, at_hand.iter().copied()),
    }
}

fn left(subject: &Subject, hole: Length, drill: Option<&'static Drill>) -> Left {
    let Subject { form, geometry, largest_hole, .. } = subject;
    Left {
        hole,
        drill,
        percent: percent(*form, geometry, hole),
        percent_of_five_eighths_h: percent_of_internal_height(*form, geometry, hole),
        within_standard: largest_hole.map(|limit| limit.admits(hole)),
        below_minor: is_below_smallest(geometry, hole),
    }
}
