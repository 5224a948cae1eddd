//! What was typed for a spindle speed, and what it describes.

use super::answer::{Answer, Question, answer};
use super::work::{Tool, Work};
use crate::calculators::asked::Asked;
use crate::calculators::at_hand;
use crate::controls::{Word, word};
use crate::form::{quoted, thread_error};
use crate::typed::{Typed, keep};
use crate::{FieldError, Query, diameter, plan};
use holewright_core::calc::tool_steel::ToolSteel;
use holewright_core::tables::materials::Material;
use holewright_core::tables::threads;
use holewright_core::units::{Angle, degrees, print, read};

/// The fields by their names in the address, in the order a person thinks.
const NAMES: [&str; 14] = [
    "material",
    "work",
    "diameter",
    "depth",
    "tool_steel",
    "point_angle",
    "flutes",
    "head",
    "hole_size",
    "countersink_angle",
    "series",
    "owned",
    "spindle_speeds",
    "spindle_max",
];

/// `work`
pub(super) static WORKS: &[Word<Work>] = &[
    word("drilling", "Drilling", Work::Drilling),
    word("reaming", "Reaming", Work::Reaming),
    word("tapping", "Tapping under power", Work::Tapping),
    word("countersinking", "Countersinking", Work::Countersinking),
    word("spotting", "Spotting", Work::Spotting),
];

/// `tool_steel`
pub(super) static TOOL_STEELS: &[Word<ToolSteel>] = &[
    word("hss", "High-speed steel", ToolSteel::HighSpeed),
    word("carbon", "Carbon steel", ToolSteel::Carbon),
];

/// A hole deeper than this many diameters is a slip of the pen.
const DEEPEST_DIAMETERS: f64 = 60.0;
/// No reamer has more flutes.
const MOST_FLUTES: u8 = 20;
/// No drill or countersink is ground sharper, in degrees.
const SHARPEST: f64 = 60.0;

/// What was typed in each field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    pub(super) asked: Asked,
}

impl Request {
    /// Reads a query, what follows the `?`. Parameters that are no fields here are left alone.
    #[must_use]
    pub fn read(query: &str) -> Self {
        Self::of(Query::read(query))
    }

    pub(super) fn of(query: Query) -> Self {
        Self { asked: Asked::new("/calculators/speeds", &NAMES, query) }
    }

    /// What was typed in a field, trimmed; empty where nothing was.
    #[must_use]
    pub fn typed(&self, field: &str) -> &str {
        self.asked.typed(field)
    }

    /// The address at a door: the fields that were filled, in one order.
    #[must_use]
    pub fn address(&self, path: &str) -> String {
        self.asked.address(path)
    }

    /// What is done; drilling where nothing, or nothing known, was typed.
    pub(super) fn work(&self) -> Work {
        self.asked.at("work").one_of(WORKS).unwrap_or_default()
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
    /// use holewright_pages::calculators::speeds::Request;
    /// use holewright_core::units::{in_metres_per_minute, print::round};
    /// let typed = "material=free-cutting-brass&diameter=0.5mm&spindle_max=2000";
    /// let found = Request::read(typed).answer().unwrap();
    /// assert_eq!(found.reach, Reach::TooSlow);
    /// assert_eq!(round(in_metres_per_minute(found.set.unwrap().surface), 1), 3.1);
    /// assert!(Request::read("material=cheese&diameter=long").answer().is_err());
    /// ```
    pub fn answer(&self) -> Result<Answer, Vec<FieldError>> {
        let mut errors = Vec::new();
        let at = |field| self.asked.at(field);
        let material = keep(&mut errors, material(at("material")).map(Some));
        let work = keep(&mut errors, at("work").one_of(WORKS));
        let tool = keep(&mut errors, tool(at("diameter"), work).map(Some));
        let depth = keep(&mut errors, at("depth").length());
        let tool_steel = keep(&mut errors, tool_steel(at("tool_steel")));
        let point_angle = keep(&mut errors, angle(at("point_angle")));
        let flutes = keep(&mut errors, flutes(at("flutes")));
        let head = keep(&mut errors, at("head").length());
        let hole = keep(&mut errors, at("hole_size").length());
        let countersink_angle = keep(&mut errors, angle(at("countersink_angle")));
        let at_hand = at_hand::drills(&self.asked, &mut errors);
        let spindle = plan::spindle(at("spindle_speeds"), at("spindle_max"), &mut errors);
        let (Some(material), Some(tool), true) = (material, tool, errors.is_empty()) else {
            return Err(errors);
        };
        let usual = Question::new(material, work, tool);
        let question = Question {
            tool_steel,
            spindle,
            depth,
            point_angle: point_angle.unwrap_or(usual.point_angle),
            flutes: flutes.unwrap_or(usual.flutes),
            head,
            hole,
            countersink_angle,
            at_hand,
            ..usual
        };
        self.check(&question)?;
        answer(question).ok_or_else(|| vec![self.none_in_print(material, work)])
    }

    /// What no field alone can tell.
    fn check(&self, question: &Question) -> Result<(), Vec<FieldError>> {
        let mut errors = Vec::new();
        let diameter = question.tool.diameter();
        if question.depth.is_some_and(|depth| depth > diameter * DEEPEST_DIAMETERS) {
            errors.push(self.asked.at("depth").error(format!(
                "That is over {DEEPEST_DIAMETERS} diameters of the tool. Write a depth up to {}.",
                print::mm(diameter * DEEPEST_DIAMETERS, 1)
            )));
        }
        if question.work == Work::Countersinking {
            let by_size = matches!(question.tool, Tool::Size(_));
            let head = question.head.unwrap_or(diameter);
            if by_size && question.head.is_some() {
                errors.push(self.asked.at("head").error(
                    "The head is given twice. Write the screw above, 4 BA or M3, or leave this empty.",
                ));
            } else if question.hole.is_some_and(|hole| hole >= head) {
                errors.push(self.asked.at("hole_size").error(format!(
                    "A hole this wide leaves nothing to sink: the head is {}.",
                    print::mm(head, 3)
                )));
            }
        }
        if errors.is_empty() { Ok(()) } else { Err(errors) }
    }

    fn none_in_print(&self, material: &Material, work: Work) -> FieldError {
        let name = material.name;
        self.asked.at("work").error(match work {
            Work::Tapping => {
                format!(
                    "We hold no published speed for tapping {name} under power. Tap it by hand."
                )
            }
            _ => format!("We hold no published speed for drilling {name}, so none is given."),
        })
    }
}

/// The metal; one that is refused says why.
fn material(typed: Typed<'_>) -> Result<&'static Material, FieldError> {
    if typed.text.is_empty() {
        return Err(typed.error("Choose the metal: it decides how fast the edge may go."));
    }
    let material = plan::material(typed)?;
    match material.refused {
        Some(why) => Err(typed.error(why.text)),
        None => Ok(material),
    }
}

/// The tool's steel. What we hold no figure for is said by name.
fn tool_steel(typed: Typed<'_>) -> Result<ToolSteel, FieldError> {
    match typed.text.to_lowercase().as_str() {
        "cobalt" | "carbide" => Err(typed.error(format!(
            "We hold no published speeds for tools of {}: go by their maker’s list. Write hss or carbon.",
            quoted(typed.text)
        ))),
        _ => typed.one_of(TOOL_STEELS),
    }
}

/// An angle a drill or a countersink is ground to.
fn angle(typed: Typed<'_>) -> Result<Option<Angle>, FieldError> {
    let found = typed.optional(read::angle)?;
    if found.is_some_and(|angle| angle < degrees(SHARPEST)) {
        return Err(typed.error(format!(
            "{} is sharper than any is ground. Write {SHARPEST} to 179 degrees.",
            quoted(typed.text)
        )));
    }
    Ok(found)
}

fn flutes(typed: Typed<'_>) -> Result<Option<u8>, FieldError> {
    if typed.text.is_empty() {
        return Ok(None);
    }
    let found = typed.text.parse().ok().filter(|flutes| (1..=MOST_FLUTES).contains(flutes));
    found.map(Some).ok_or_else(|| {
        typed.error(format!(
            "{} is no number of flutes. Write 1 to {MOST_FLUTES}: 4, 6.",
            quoted(typed.text)
        ))
    })
}

/// A drill by any name when drilling and spotting, a reamer by its size, a tap by its thread or its
/// diameter, a countersink by the screw or the head it is for.
fn tool(typed: Typed<'_>, work: Work) -> Result<Tool, FieldError> {
    if typed.text.is_empty() {
        return Err(typed.error(wanted(work)));
    }
    let thread = threads::read::read(typed.text);
    let size = diameter::optional(typed);
    match (work, thread, size) {
        (Work::Tapping, Ok(thread), _) => Ok(Tool::Tap(thread)),
        (Work::Countersinking, Ok(thread), _) => Ok(Tool::Screw(thread)),
        (Work::Tapping, Err(error), Err(_)) => Err(thread_error(typed.field, &error)),
        (Work::Drilling | Work::Reaming | Work::Spotting, Ok(thread), Err(_)) => {
            Err(typed.error(format!(
                "{} is a thread. Choose tapping under power, or name the {}: {}",
                thread.designation,
                work.tool(),
                match work {
                    Work::Reaming => "6 mm, 1/4 in.",
                    _ => "No. 46, 7/64 in, 2.5 mm.",
                }
            )))
        }
        (Work::Drilling | Work::Spotting, _, Ok(Some(found))) => {
            Ok(found.drill.map_or(Tool::Size(found.size), Tool::Drill))
        }
        (_, _, Ok(Some(found))) => Ok(Tool::Size(found.size)),
        (_, _, Err(error)) => Err(error),
        (_, _, Ok(None)) => Err(typed.error(wanted(work))),
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
