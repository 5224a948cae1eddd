//! The countersink asked for: its angle, the head, the hole and how deep.

use super::question::{Question, Tool};
use crate::calc::clearance::{self, Fit};
use crate::calc::countersink::{USUAL_HEAD, sink_depth, usual_head};
use crate::calc::thread_form::geometry;
use crate::tables::countersinks::head_angle;
use crate::tables::source::Source;
use crate::units::{Angle, Length};

/// A countersink for a head.
#[derive(Clone, Debug, PartialEq)]
pub struct Sink {
    /// The included angle.
    pub angle: Angle,
    /// Where it comes from; none where it was given.
    pub angle_source: Option<Source>,
    /// The head: least and most, equal where it was given.
    pub head: [Length; 2],
    /// Where it comes from; none where it was given.
    pub head_source: Option<Source>,
    /// The hole that is sunk; none: to a point.
    pub hole: Option<Length>,
    /// What the hole goes by, where it was not given: a medium clearance hole of the screw.
    pub hole_basis: Option<String>,
    /// How deep, for the least and the most head.
    pub depth: [Length; 2],
}

pub(super) fn sink(question: &Question) -> Sink {
    let thread = match question.tool {
        Tool::Screw(thread) | Tool::Tap(thread) => Some(thread),
        Tool::Drill(_) | Tool::Size(_) => None,
    };
    let usual = head_angle(thread);
    let (head, head_source) = match (question.head, thread) {
        (Some(head), _) => ([head, head], None),
        (None, Some(thread)) => (usual_head(geometry(thread).major), Some(USUAL_HEAD)),
        (None, None) => ([question.tool.diameter(); 2], None),
    };
    let by_screw = thread
        .filter(|_| question.hole.is_none())
        .map(|thread| clearance::hole(thread, geometry(thread).major, Fit::Medium));
    let hole = question.hole.or(by_screw.map(|found| found.hole));
    let angle = question.countersink_angle.unwrap_or(usual.angle);
    Sink {
        angle,
        angle_source: question.countersink_angle.is_none().then_some(usual.source),
        head,
        head_source,
        hole,
        hole_basis: by_screw.map(|found| found.basis.to_string()),
        depth: head.map(|head| sink_depth(head, hole.unwrap_or_default(), angle)),
    }
}
