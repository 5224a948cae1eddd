//! `/calculators/point-length`: how far a drill's point reaches beyond its full diameter.

use super::{AnswerKind, Declaration, Finding, Form, Measure, Output, Plain};
use crate::asking::{About, Asked, Field, FieldError, Limits, Need, POINT_ANGLE, Reading};
use crate::calc::depth::point_length;
use crate::tables::source::Source;
use crate::units::{Angle, Length, in_degrees, print};

/// The calculator.
pub(super) static DECLARATION: Declaration = Declaration {
    slug: "point-length",
    title: "Drill point length",
    answers: "How far the point of a drill reaches beyond its full diameter.",
    finding: Finding {
        title: "Drill point length",
        why: "how far the point of a drill reaches beyond its full diameter",
        names: &["point length", "drill point", "drill point length"],
        words: &["point", "cone"],
    },
    form: Form {
        first: &[&DIAMETER, &POINT_ANGLE],
        rest_heading: "",
        rest: &[],
        begun_by: &[&DIAMETER],
        button: "Find the length",
    },
    answer: AnswerKind::Rows(&Plain {
        answer,
        heading: |found| {
            format!(
                "Point of {} drill, {}°",
                print::with_article(&print::mm(found.diameter, 3)),
                print::trimmed(in_degrees(found.angle), 2)
            )
        },
        outputs: &[Output {
            key: "point_length",
            name: "Length of the point",
            description: "Length of the drill's point",
            value: Measure::Length(|found| found.point),
            rule: "Half the diameter over the tangent of half the point angle",
            source: Source::common_practice("geometry of a cone"),
        }],
        notes: |_| Vec::new(),
        drawing: None,
    }),
};

static DIAMETER: Field<Length> = Field::length(About {
    name: "diameter",
    label: "Diameter of the drill",
    hint: "mm, or with its unit: 1/4 in",
    description: "Diameter of the drill; a bare number is mm",
    example: "6 mm",
    need: Need::Always("Write the drill’s diameter: 6 mm, 1/4 in."),
    limits: Limits::between(0.1, 100.0, " mm"),
});

/// The drill and its point.
struct Answer {
    diameter: Length,
    angle: Angle,
    point: Length,
}

fn answer(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let diameter = reading.required(&DIAMETER);
    let angle = reading.required(&POINT_ANGLE);
    let found = diameter.zip(angle).map(|(diameter, angle)| Answer {
        diameter,
        angle,
        point: point_length(diameter, angle),
    });
    reading.answered(found)
}
