//! What is asked of two parts that have to go together.

use crate::asking::{
    About, Asked, Control, Diameter, Field, FieldError, Limits, Need, Reading, Word, at_hand,
    diameter, diameter_taken, word,
};
use crate::calc::clearance::{Fit, drill_for, hole, hole_by_rule};
use crate::calc::position::{self, Case, Duty, Joint, Position, Register, Stage};
use crate::calculators::clearance::{CENTRE_ERROR, FIT, Screw, centre_error, screw};
use crate::tables::drills::Drill;
use crate::units::{Angle, Length, falls_short, print};

/// What stands below the clearance hole.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Below {
    /// A thread.
    #[default]
    Tapped,
    /// A clearance hole.
    Clear,
}

pub(super) static CASE: Field<Below> = Field::words(
    About {
        name: "case",
        label: "The lower part",
        hint: "",
        description: "Whether the lower part is tapped or the screw passes both",
        example: "floating",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::Pick,
    CASES,
);

static CASES: &[Word<Below>] = &[
    word("fixed", "Is tapped", Below::Tapped),
    word("floating", "Has a clearance hole too, for a bolt and nut", Below::Clear),
];

pub(super) static UPPER_ERROR: Field<Length> = Field::new(
    About {
        name: "upper_error",
        label: "How far the upper hole may be off",
        hint: "From where its centre should be; mm, or 10 thou",
        description: "How far the upper hole's centre may be off; a bare number is mm",
        example: "0.2 mm",
        need: Need::Open,
        limits: CENTRE_ERROR,
    },
    centre_error,
);

pub(super) static LOWER_ERROR: Field<Length> = Field::new(
    About {
        name: "lower_error",
        label: "How far the lower hole may be off",
        hint: "From where its centre should be; mm, or 10 thou",
        description: "How far the lower hole's centre may be off; a bare number is mm",
        example: "0.2 mm",
        need: Need::Open,
        limits: CENTRE_ERROR,
    },
    centre_error,
);

pub(super) static HOLE: Field<Diameter> = Field::new(
    About {
        name: "hole",
        label: "Upper hole, as drilled",
        hint: "A drill or a size: No. 30, 3.4 mm; the drill for the fit if left empty",
        description: "The upper hole as drilled: a drill by any name, or a size; empty for the drill of the fit",
        example: "13 mm",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    diameter,
)
.taking(|typed, _| diameter_taken(typed));

pub(super) static LOWER_HOLE: Field<Diameter> = Field::new(
    About {
        name: "lower_hole",
        label: "Lower hole, where it is a clearance hole",
        hint: "As the upper one if left empty",
        description: "The lower hole where the screw passes both: a drill by any name, or a size; empty for one as the upper",
        example: "13 mm",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    diameter,
)
.taking(|typed, _| diameter_taken(typed));

pub(super) static REGISTER: Field<Register> = Field::words(
    About {
        name: "register",
        label: "What says where the parts lie",
        hint: "",
        description: "What says where the parts lie",
        example: "pattern",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    REGISTERS,
);

static REGISTERS: &[Word<Register>] = &[
    word("pattern", "A pattern of these holes", Register::Pattern),
    word("located", "One hole, and a spigot, an edge or a dowel", Register::Located),
    word("free", "One hole, and nothing else: they may shift", Register::Free),
];

pub(super) static THICKNESS: Field<Length> = Field::length(About {
    name: "thickness",
    label: "Thickness of the upper part",
    hint: "Only for a hole that leans; as thick as the screw if left empty",
    description: "Thickness of the upper part, over which a lean shows; a bare number is mm, empty for as thick as the screw",
    example: "10 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

pub(super) static LEAN: Field<Angle> = Field::angle(About {
    name: "lean",
    label: "How far the lower hole leans",
    hint: "Degrees off square: 0.2 mm in 10 mm is 1.1 degrees",
    description: "How far the lower hole leans from square, in degrees",
    example: "0.5",
    need: Need::Open,
    limits: Limits::between(0.1, 20.0, " degrees"),
});

pub(super) static STAGE: Field<Stage> = Field::words(
    About {
        name: "stage",
        label: "How far the hole that is out has gone",
        hint: "",
        description: "How far the hole that is out has gone",
        example: "drilled",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    STAGES,
);

static STAGES: &[Word<Stage>] = &[
    word("drilled", "Drilled, or tapped", Stage::Drilled),
    word("cone", "Begun: only a cone", Stage::Cone),
    word("marked", "Only marked or popped", Stage::Marked),
];

pub(super) static DUTY: Field<Duty> = Field::words(
    About {
        name: "duty",
        label: "What the screw does",
        hint: "",
        description: "What the screw has to do",
        example: "holds",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    DUTIES,
);

static DUTIES: &[Word<Duty>] = &[
    word("holds", "Holds a part down", Duty::Holds),
    word("locates", "Its hole says where the part lies", Duty::Locates),
    word("pressure", "Holds against steam, water or pressure", Duty::Pressure),
];

/// What was asked, and the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// The screw.
    pub screw: Screw,
    /// The parts.
    pub joint: Joint,
    /// What comes of them.
    pub position: Position,
    /// The drill at hand for the clearance hole that would do.
    pub drill: Option<&'static Drill>,
    /// How far the hole that is out has gone.
    pub stage: Stage,
    /// What the screw has to do.
    pub duty: Duty,
}

/// The figures.
///
/// # Errors
/// One [`FieldError`] for each field that makes no sense, in the order of the form.
///
/// # Examples
/// An M3 screw in its medium hole, 3.4 mm, has 0.2 mm to one side: centres 0.1 mm out in each part use it up.
/// ```
/// use holewright_core::calculators::position::{DECLARATION, answer_to};
/// let asked = |upper, lower| {
///     let asked = [("thread", "M3"), ("upper_error", upper), ("lower_error", lower)];
///     answer_to(&DECLARATION.asked(asked)).unwrap().position.goes_together
/// };
/// assert!(asked("0.1", "0.1") && !asked("0.1", "0.11"));
/// ```
pub fn answer_to(asked: &Asked) -> Result<Found, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let said = reading.optional(&CASE);
    let screw = screw(&mut reading);
    let upper_error = reading.or_default(&UPPER_ERROR);
    let lower_error = reading.or_default(&LOWER_ERROR);
    let fit = reading.or_default(&FIT);
    let made = reading.optional(&HOLE).map(|hole| hole.size);
    let made_below = reading.optional(&LOWER_HOLE).map(|hole| hole.size);
    let register = reading.or_default(&REGISTER);
    let thickness = reading.optional(&THICKNESS);
    let angle = reading.optional(&LEAN);
    let stage = reading.or_default(&STAGE);
    let duty = reading.or_default(&DUTY);
    let at_hand = at_hand(&mut reading);
    if let Some(screw) = screw {
        let too_small = |field, hole| too_small(field, hole, &screw);
        let errors = [
            made.and_then(|hole| too_small(&HOLE, hole)),
            made_below.and_then(|hole| too_small(&LOWER_HOLE, hole)),
            made_below.filter(|_| said == Some(Below::Tapped)).map(|_| tapped_below()),
        ];
        errors.into_iter().flatten().for_each(|error| reading.refuse(error));
    }
    // Whoever gives the lower clearance hole has said that there is one.
    let usual = if made_below.is_some() { Below::Clear } else { Below::Tapped };
    let below = said.unwrap_or(usual);
    let found = screw.map(|screw| {
        let hole = made.unwrap_or_else(|| hole_of(&screw, fit, &at_hand));
        let case = match below {
            Below::Tapped => Case::Fixed,
            Below::Clear => Case::Floating { lower: made_below.unwrap_or(hole) },
        };
        // Without a thickness, the upper part is as thick as the screw.
        let thickness = thickness.unwrap_or(screw.size());
        let lean = angle.map(|angle| position::lean(thickness, angle));
        let joint = Joint {
            case,
            register,
            screw: screw.size(),
            hole,
            upper_error,
            lower_error,
            lean: lean.unwrap_or_default(),
        };
        let position = position::position(&joint);
        let drill = drill_for(position.hole_needed, at_hand.iter().copied());
        Found { screw, joint, position, drill, stage, duty }
    });
    reading.answered(found)
}

/// The hole of the fit as it is made: its drill's, where one at hand comes near it.
fn hole_of(screw: &Screw, fit: Fit, at_hand: &[&'static Drill]) -> Length {
    let hole = match screw.thread {
        Some(thread) => hole(thread, screw.major, fit),
        None => hole_by_rule(screw.major, fit),
    };
    drill_for(hole.hole, at_hand.iter().copied()).map_or(hole.hole, |drill| drill.diameter)
}

fn too_small(field: &Field<Diameter>, hole: Length, screw: &Screw) -> Option<FieldError> {
    falls_short(hole, screw.size()).then(|| {
        field.error(format!(
            "A screw of {} does not pass a hole of {}. Measure both again.",
            print::mm(screw.size(), 3),
            print::mm(hole, 3)
        ))
    })
}

fn tapped_below() -> FieldError {
    LOWER_HOLE.error(
        "A tapped part has no clearance hole. Leave this empty, or choose that the lower part has one too.",
    )
}
