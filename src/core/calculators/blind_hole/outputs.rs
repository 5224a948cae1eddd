//! The rows of the answer, and its drawing.

use super::fields::{Found, answer_to};
use super::words;
use crate::calculators::{Measure, Output, Plain};
use crate::drawing::{BlindDepths, Bottom, DrawingIds, Drilled, Section, hole_section};
use crate::tables::source::Source;

/// The rule of the whole depth.
const MINIMUM_DEPTH: Source =
    Source::published("an engineering institute's tip 'Minimum tap depth'");
/// The rule that counts the tap's pointed end.
const WITH_CENTRE: Source = Source::published(
    "a tap maker's answer on the machining depth of a tap: full thread, chamfer, external centre and one pitch",
);
const WALL: Source =
    Source::common_practice("half the drill's diameter is the least wall worth leaving");
const WORKSHOP: Source = Source::common_practice("workshop practice");

/// The calculator's answer.
pub(super) static PLAIN: Plain<Found> = Plain {
    answer: answer_to,
    heading: words::heading,
    outputs: &[
        Output {
            key: "drill_full_diameter",
            name: "Drill, full diameter",
            description: "From the surface to the end of the drill's full diameter",
            value: Measure::Length(|found| found.answer.full_diameter),
            rule: "The full thread, the lead of the last tap, its male centre where it has one, and one pitch to spare",
            source: WITH_CENTRE,
        },
        Output {
            key: "verdict",
            name: "In this part",
            description: "Whether the part holds the hole blind, where its thickness was given",
            value: Measure::SomeWords(words::verdict),
            rule: "Possible where half the drill's diameter or more is left under the point",
            source: WALL,
        },
        Output {
            key: "wall",
            name: "Wall left under the point",
            description: "Metal left under the drill's point, 0 where the drill comes through, where the thickness was given",
            value: Measure::SomeLength(|found| {
                Some(found.answer.in_part.as_ref()?.wall.max(Default::default()))
            }),
            rule: "The thickness less the depth to the point",
            source: Source::common_practice("a difference"),
        },
        Output {
            key: "drill_to_point",
            name: "Drill, to the point",
            description: "From the surface to the tip of the drill's point",
            value: Measure::Length(|found| found.answer.to_point),
            rule: "The full diameter and the length of the point, half the drill over the tangent of half its angle",
            source: Source::common_practice("geometry of a cone"),
        },
        Output {
            key: "full_thread",
            name: "Full thread",
            description: "Full thread, as asked",
            value: Measure::Length(|found| found.question.full_thread),
            rule: "As asked; one and a half diameters where nothing was said",
            source: Source::common_practice("the usual length of thread"),
        },
        Output {
            key: "drill",
            name: "Tapping drill",
            description: "The tapping drill that the point is figured with",
            value: Measure::Words(words::drill),
            rule: "As named, or the drill that a plan takes for this material",
            source: Source::common_practice("the aim by material and size"),
        },
        Output {
            key: "tap_lead",
            name: "Lead of the last tap",
            description: "Lead of the last tap, its longest",
            value: Measure::Length(|found| found.answer.depths.tap_lead),
            rule: "The longest lead in print for a tap of its kind: taper 10, second 5, plug 2 threads",
            source: Source::published(
                "a training page 'Threads, taps and tapping'; a tap maker's catalogue p. Y89",
            ),
        },
        Output {
            key: "male_centre",
            name: "Room for the male centre",
            description: "What the male centre on this tap takes",
            value: Measure::SomeLength(words::for_centre),
            rule: "Up to half the diameter of the thread, counted in the depths",
            source: MINIMUM_DEPTH,
        },
        Output {
            key: "swarf_room",
            name: "More, for swarf, up to",
            description: "Further depth for the swarf of a straight-flute hand tap, not counted in the depths",
            value: Measure::Length(|found| found.answer.depths.swarf_room),
            rule: "Up to one diameter deeper under a straight-flute hand tap, where there is metal to spare",
            source: MINIMUM_DEPTH,
        },
        Output {
            key: "most_full_thread",
            name: "Most full thread here",
            description: "The most full thread that these tools leave in this part",
            value: Measure::SomeLength(|found| found.answer.in_part.as_ref()?.most_full_thread),
            rule: "What the lead, the spare pitch, the male centre, the point and the least wall leave of the thickness",
            source: WALL,
        },
        Output {
            key: "ways",
            name: "What would make it possible",
            description: "What would make it possible, the cheapest first; empty where it is possible",
            value: Measure::Sentences(words::ways),
            rule: "The same sum with one thing changed",
            source: WALL,
        },
        Output {
            key: "before_tapping",
            name: "Before it is tapped",
            description: "What to see to before it is tapped",
            value: Measure::Sentences(words::before_tapping),
            rule: "The usual care with a stopped hole",
            source: WORKSHOP,
        },
    ],
    notes: |_| Vec::new(),
    drawing: Some(drawing),
};

fn drawing(found: &Found) -> String {
    let answer = &found.answer;
    let section = Section {
        designation: found.thread.designation.to_owned(),
        major: found.question.hole.major,
        tapping: found
            .drill
            .drill
            .map_or_else(|| Drilled { diameter: found.drill.size, name: None }, Drilled::with),
        point_angle: found.question.hole.point_angle,
        bottom: Bottom::Blind {
            depths: Some(BlindDepths {
                full_thread: found.question.full_thread,
                drill_full_diameter: answer.full_diameter,
                drill_to_point: answer.to_point,
            }),
            part_thickness: found.question.part_thickness,
        },
        upper: None,
    };
    hole_section::draw(&section, DrawingIds::new("blind-hole"))
}
