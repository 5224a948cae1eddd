//! The rows of the answer, and its drawing.

use super::fields::{Found, answer_to};
use super::words;
use crate::calc::position::Case;
use crate::calculators::{Measure, Output, Plain};
use crate::drawing::{DrawingIds, WorstCase, worst_case};
use crate::tables::source::Source;
use crate::units::Length;

/// The rule of the fixed and the floating case.
const APPENDIX_B: Source = Source::published(
    "ASME Y14.5 appendix B, fixed fastener H = F + T1 + T2, floating fastener H = F + T",
);
const GEOMETRY: Source = Source::common_practice("geometry of a leaning axis");
const WORKSHOP: Source = Source::common_practice("workshop practice");

/// The calculator's answer.
pub(super) static PLAIN: Plain<Found> = Plain {
    answer: answer_to,
    heading: words::heading,
    outputs: &[
        Output {
            key: "verdict",
            name: "Do they go together",
            description: "Whether the parts go together at the worst",
            value: Measure::Words(words::verdict),
            rule: "At the worst each centre is off the full amount, and away from the other",
            source: APPENDIX_B,
        },
        Output {
            key: "hole_needed",
            name: "Clearance hole that would do",
            description: "The upper part's clearance hole that would just do",
            value: Measure::Length(|found| found.position.hole_needed),
            rule: "The screw and twice what the centres are off together; less what a clearance hole below gives",
            source: APPENDIX_B,
        },
        Output {
            key: "drill",
            name: "Drill for it",
            description: "The drill at hand for that hole",
            value: Measure::SomeWords(words::drill),
            rule: "The smallest at hand that is not smaller, within 1/64 in of it or a tenth of it",
            source: WORKSHOP,
        },
        Output {
            key: "hole",
            name: "Clearance hole as it is",
            description: "The upper part's clearance hole as it is",
            value: Measure::Length(|found| found.joint.hole),
            rule: "As measured, or the drill for the fit",
            source: WORKSHOP,
        },
        Output {
            key: "room",
            name: "Room, to one side",
            description: "How far the axes may be apart in these holes",
            value: Measure::Length(|found| found.position.room),
            rule: "Half of what each clearance hole is wider than the screw",
            source: APPENDIX_B,
        },
        Output {
            key: "off",
            name: "Off at the worst",
            description: "How far the axes can be apart at the worst",
            value: Measure::Length(|found| found.position.off),
            rule: "Both errors and the lean together; of one hole whose parts may shift, half the lean",
            source: APPENDIX_B,
        },
        Output {
            key: "spare",
            name: "To spare",
            description: "What is left of the room at the worst",
            value: Measure::SomeLength(|found| spare(found, true)),
            rule: "The room less what they are off",
            source: APPENDIX_B,
        },
        Output {
            key: "short_by",
            name: "Short by",
            description: "What is wanting of the room at the worst",
            value: Measure::SomeLength(|found| spare(found, false)),
            rule: "What they are off less the room",
            source: APPENDIX_B,
        },
        Output {
            key: "lean",
            name: "Of that, the lean",
            description: "What the lean takes over the upper part's thickness",
            value: Measure::SomeLength(words::lean),
            rule: "The thickness of the upper part, or the screw’s diameter where none was given, times the tangent of the lean",
            source: GEOMETRY,
        },
        Output {
            key: "each_may_be_off",
            name: "Each centre may be off",
            description: "How far each centre may be off in these holes, shared alike",
            value: Measure::SomeLength(|found| found.position.each_may_be_off),
            rule: "Half of the room that the lean leaves; a positional tolerance on diameter is twice that",
            source: APPENDIX_B,
        },
        Output {
            key: "what_to_do",
            name: "What to do",
            description: "What to do, the cheapest first; empty where the parts go together",
            value: Measure::Sentences(words::what_to_do),
            rule: "By how far the hole has gone and what its screw has to do",
            source: WORKSHOP,
        },
        Output {
            key: "putting_together",
            name: "When they are put together",
            description: "What to see to when the parts are put together",
            value: Measure::Sentences(words::notes),
            rule: "The usual care with parts that have to meet",
            source: WORKSHOP,
        },
    ],
    notes: |_| Vec::new(),
    drawing: Some(drawing),
};

/// What is left of the room, or wanting of it.
fn spare(found: &Found, is_left: bool) -> Option<Length> {
    let position = &found.position;
    let left = position.room - position.off;
    (position.goes_together == is_left)
        .then(|| if is_left { left.max(Length::default()) } else { -left })
}

fn drawing(found: &Found) -> String {
    let joint = &found.joint;
    let worst = WorstCase {
        hole: joint.hole,
        lower: match joint.case {
            Case::Fixed => None,
            Case::Floating { lower } => Some(lower),
        },
        screw: joint.screw,
        off: found.position.off,
        goes_together: found.position.goes_together,
    };
    worst_case(&worst, DrawingIds::new("position"))
}
