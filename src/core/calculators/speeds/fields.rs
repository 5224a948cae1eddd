//! What is asked for a spindle speed.

use super::answer::{Answer, answer};
use super::question::{Question, Tool, Work};
use crate::asking::{
    About, Asked, Control, Field, FieldError, GROUND, Limits, Need, POINT_ANGLE, Reading,
    SPINDLE_MAX, SPINDLE_SPEEDS, TOOL_STEELS, Taken, Typed, Word, at_hand, diameter,
    diameter_taken, machines, metal, owned, quoted, series, thread_as_meant, thread_taken, word,
};
use crate::calc::countersink::usual_head;
use crate::calc::tool_steel::ToolSteel;
use crate::calculators::{AnswerKind, Declaration, Finding, Form};
use crate::tables::drills::{Drill, Series};
use crate::tables::materials::Material;
use crate::units::{Angle, Length, inch, mm, print};

/// The calculator.
pub static DECLARATION: Declaration = Declaration {
    slug: "speeds",
    title: "Machine speed",
    answers: "How fast to turn a drill, a reamer, a tap or a countersink, which of your machines and its speeds comes nearest, how long it cuts and when to withdraw.",
    finding: Finding {
        title: "Speed and feed",
        why: "machine speed, feed and time for a drill, reamer or tap in a material",
        names: &[
            "speeds",
            "speed",
            "spindle speed",
            "machine speed",
            "feeds",
            "feed rate",
            "feed",
            "speeds and feeds",
            "rpm",
        ],
        words: &["spindle", "cutting", "surface", "revolutions"],
    },
    form: Form {
        first: &[&MATERIAL, &WORK, &DIAMETER],
        rest_heading: "Depth, tool and machine speeds",
        rest: &[
            &DEPTH,
            &TOOL_STEEL,
            &POINT_ANGLE,
            &HEAD,
            &HOLE_SIZE,
            &COUNTERSINK_ANGLE,
            &SERIES_TO_REAM,
            &OWNED_TO_REAM,
            &SPINDLE_SPEEDS,
            &SPINDLE_MAX,
        ],
        begun_by: &[&DIAMETER],
        button: "Find the speed",
    },
    answer: AnswerKind::Speeds,
};

/// A hole deeper than this many diameters is a slip of the pen.
const DEEPEST_DIAMETERS: f64 = 60.0;

/// The smallest tool that is taken.
pub const SMALLEST_TOOL: Length = mm(0.1);
/// The largest: no bench machine turns one of 4 in.
pub const LARGEST_TOOL: Length = inch(4.0);

/// `work`
static WORKS: &[Word<Work>] = &[
    word("drilling", "Drilling", Work::Drilling),
    word("reaming", "Reaming", Work::Reaming),
    word("tapping", "Tapping", Work::Tapping),
    word("countersinking", "Countersinking", Work::Countersinking),
    word("spotting", "Spotting", Work::Spotting),
];

static MATERIAL: Field<&Material> = Field::new(
    About {
        name: "material",
        label: "Material",
        hint: "",
        description: "The material, by any name or mark",
        example: "gunmetal",
        need: Need::Always("Choose the material: it decides how fast the edge may go."),
        limits: Limits::None,
    },
    metal,
)
.with_control(Control::Metal("Choose the material"));

static WORK: Field<Work> = Field::words(
    About {
        name: "work",
        label: "Work",
        hint: "",
        description: "What is done",
        example: "drilling",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::Pick,
    WORKS,
);

/// How it is read depends on the work: see [`tool`].
static DIAMETER: Field<Tool> = Field::new(
    About {
        name: "diameter",
        label: "Drill, reamer, tap or screw",
        hint: "By any name or size: No. 46, F, 7/64 in, 2.5 mm; a tap or a countersunk screw by its thread: 5 BA, M3; a head by its diameter",
        description: "A drill by any name or size (when spotting, the one that follows); a reamer by its size; a tap by its thread or its diameter; a countersink by its screw's thread or the head's diameter",
        example: "No. 46",
        need: Need::Always(wanted(Work::Drilling)),
        limits: Limits::LENGTH,
    },
    |typed| tool(typed, Work::Drilling),
)
.taking(|typed, asked| tool_taken(typed, work_of(asked)));

static DEPTH: Field<Length> = Field::length(About {
    name: "depth",
    label: "Depth",
    hint: "At the full diameter, the point not counted: 12 mm, 1/2 in",
    description: "Depth at the full diameter, or length of full thread; a bare number is mm",
    example: "12 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

static TOOL_STEEL: Field<ToolSteel> = Field::words(
    About {
        name: "tool_steel",
        label: "Steel of the tool",
        hint: "",
        description: "Steel of the tool",
        example: "hss",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::List,
    TOOL_STEELS,
)
.or(other_tool);

static HEAD: Field<Length> = Field::length(About {
    name: "head",
    label: "Head, as measured",
    hint: "Across the top of the screw’s head: 5.5 mm",
    description: "Diameter of the screw's head as measured; a bare number is mm",
    example: "5.5 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

static HOLE_SIZE: Field<Length> = Field::length(About {
    name: "hole_size",
    label: "Hole that is sunk",
    hint: "3.4 mm; if left empty, a medium clearance hole for the screw",
    description: "Diameter of the hole that is countersunk; a bare number is mm",
    example: "3.4 mm",
    need: Need::Open,
    limits: Limits::LENGTH,
});

static COUNTERSINK_ANGLE: Field<Angle> = Field::angle(About {
    name: "countersink_angle",
    label: "Angle of the countersink",
    hint: "Degrees; by the screw if left empty",
    description: "Angle of the countersink, in degrees",
    example: "90",
    need: Need::Open,
    limits: GROUND,
});

static SERIES_TO_REAM: Field<Vec<Series>> = series(
    "Drill series at hand, for the hole before reaming: a comma list of `number`, `letter`, `fraction`, `metric`",
);

static OWNED_TO_REAM: Field<Vec<&Drill>> = owned("Drills at hand, for the hole before reaming");

/// What is done; drilling where nothing, or nothing known, was typed.
#[must_use]
pub fn work_of(asked: &Asked) -> Work {
    Reading::of(asked).or_default(&WORK)
}

/// The figures.
///
/// # Errors
/// One [`FieldError`] for each field that makes no sense, in the order of the form.
///
/// # Examples
/// A 0.5 mm drill in brass wants 38,000 rev/min and more; on a machine of 2,000 it turns at 3.1 m/min.
/// ```
/// use holewright_core::calc::speed_choice::Reach;
/// use holewright_core::calculators::speeds::{DECLARATION, answer_to};
/// use holewright_core::units::{in_metres_per_minute, print::round};
/// let typed = [("material", "free-cutting-brass"), ("diameter", "0.5mm"), ("spindle_max", "2000")];
/// let found = answer_to(&DECLARATION.asked(typed)).unwrap();
/// assert_eq!(found.reach, Reach::TooSlow);
/// assert_eq!(round(in_metres_per_minute(found.set.unwrap().surface), 1), 3.1);
/// assert!(answer_to(&DECLARATION.asked([("material", "cheese"), ("diameter", "long")])).is_err());
/// ```
pub fn answer_to(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let material = reading.required(&MATERIAL);
    let work = reading.or_default(&WORK);
    let named = reading.typed(&DIAMETER);
    let tool = reading.keep(tool(named, work));
    let depth = reading.optional(&DEPTH);
    let tool_steel = reading.or_default(&TOOL_STEEL);
    let point_angle = reading.optional(&POINT_ANGLE);
    let head = reading.optional(&HEAD);
    let hole = reading.optional(&HOLE_SIZE);
    let countersink_angle = reading.optional(&COUNTERSINK_ANGLE);
    let at_hand = at_hand(&mut reading);
    let machines = machines(&mut reading);
    let asked = material.zip(tool).zip(point_angle);
    let question = asked.map(|((material, tool), point_angle)| Question {
        tool_steel,
        machines,
        depth,
        point_angle,
        head,
        hole,
        countersink_angle,
        at_hand,
        ..Question::new(material, work, tool)
    });
    let question = reading.answered(question)?;
    check(&question)?;
    let (material, work) = (question.material, question.work);
    answer(question).ok_or_else(|| vec![none_in_print(material, work)])
}

/// What no field alone can tell.
fn check(question: &Question) -> Result<(), Vec<FieldError>> {
    let mut errors = Vec::new();
    let diameter = question.tool.diameter();
    if !(SMALLEST_TOOL..=LARGEST_TOOL).contains(&diameter) {
        errors.push(DIAMETER.error(format!(
            "{} is no {} for a bench machine. Write a size from {} to {} ({}).",
            print::sentence(&print::with_article(&print::mm(diameter, 3))),
            question.work.tool(),
            print::mm(SMALLEST_TOOL, 1),
            print::mm(LARGEST_TOOL, 1),
            print::inch(LARGEST_TOOL, 0)
        )));
    }
    if question.depth.is_some_and(|depth| depth > diameter * DEEPEST_DIAMETERS) {
        errors.push(DEPTH.error(format!(
            "That is over {DEEPEST_DIAMETERS} diameters of the tool. Write a depth up to {}.",
            print::mm(diameter * DEEPEST_DIAMETERS, 1)
        )));
    }
    if question.work == Work::Countersinking {
        let by_size = matches!(question.tool, Tool::Size(_));
        let most = if by_size { diameter } else { usual_head(diameter)[1] };
        let head = question.head.unwrap_or(most);
        if by_size && question.head.is_some() {
            errors.push(HEAD.error(
                "The head is given twice. Write the screw above, 4 BA or M3, or leave this empty.",
            ));
        } else if !by_size && head <= diameter {
            errors.push(HEAD.error(format!(
                "A head of {} is no wider than its screw, {}. Measure across the top of the head.",
                print::mm(head, 3),
                print::mm(diameter, 3)
            )));
        } else if question.hole.is_some_and(|hole| hole >= head) {
            errors.push(HOLE_SIZE.error(format!(
                "A hole this wide leaves nothing to sink: the head is {} at most.",
                print::mm(head, 3)
            )));
        }
    }
    if errors.is_empty() { Ok(()) } else { Err(errors) }
}

fn none_in_print(material: &Material, work: Work) -> FieldError {
    let name = material.name;
    WORK.error(match work {
        Work::Tapping => {
            format!("We hold no published speed for tapping {name} under power. Tap it by hand.")
        }
        _ => format!("We hold no published speed for drilling {name}, so none is given."),
    })
}

/// What we hold no figure for is said by name.
fn other_tool(typed: Typed<'_>) -> Result<ToolSteel, FieldError> {
    Err(match typed.text.to_lowercase().as_str() {
        "cobalt" | "carbide" => typed.error(format!(
            "We hold no published speeds for tools of {}: go by their maker’s list. Write hss or carbon.",
            quoted(typed.text)
        )),
        _ => typed.error(""),
    })
}

/// A drill by any name when drilling and spotting, a reamer by its size, a tap by its thread or its
/// diameter, a countersink by the screw or the head it is for.
fn tool(typed: Typed<'_>, work: Work) -> Result<Tool, FieldError> {
    if typed.text.is_empty() {
        return Err(typed.error(wanted(work)));
    }
    let thread = thread_as_meant(typed).map(|read| read.thread);
    let size = diameter(typed);
    match (work, thread, size) {
        (Work::Tapping, Ok(thread), _) => Ok(Tool::Tap(thread)),
        (Work::Countersinking, Ok(thread), _) => Ok(Tool::Screw(thread)),
        (Work::Tapping | Work::Countersinking, Err(error), Err(_)) => Err(error),
        (Work::Drilling | Work::Reaming | Work::Spotting, Ok(thread), Err(_)) => {
            Err(typed.error(format!(
                "{} is a thread. Choose tapping, or name the {}: {}",
                thread.designation,
                work.tool(),
                match work {
                    Work::Reaming => "6 mm, 1/4 in.",
                    _ => "No. 46, 7/64 in, 2.5 mm.",
                }
            )))
        }
        (Work::Drilling | Work::Spotting, _, Ok(found)) => {
            Ok(found.drill.map_or(Tool::Size(found.size), Tool::Drill))
        }
        (_, _, Ok(found)) => Ok(Tool::Size(found.size)),
        (_, _, Err(error)) => Err(error),
    }
}

/// What a tool was taken for, as [`tool`] reads it.
fn tool_taken(typed: Typed<'_>, work: Work) -> Option<Taken> {
    match work {
        Work::Tapping | Work::Countersinking => thread_taken(typed),
        Work::Drilling | Work::Reaming | Work::Spotting => diameter_taken(typed),
    }
}

/// What to write for the tool.
const fn wanted(work: Work) -> &'static str {
    match work {
        Work::Drilling => {
            "Say which drill. Write its name or its size: No. 46, F, 7/64 in, 2.5 mm."
        }
        Work::Reaming => "Say which reamer. Write its size: 6 mm, 1/4 in, .2500 in.",
        Work::Tapping => {
            "Say which tap. Write its thread or its diameter: 5 BA, M3, 1/4 BSF, 6 mm."
        }
        Work::Countersinking => {
            "Say which screw or how wide a head. Write a thread or a diameter: 4 BA, M3, 6 mm."
        }
        Work::Spotting => {
            "Say which drill follows. Write its name or its size: No. 46, F, 7/64 in, 2.5 mm."
        }
    }
}
