//! What was typed for a spindle speed, and what it describes.

use super::answer::{Answer, Tool, Work, answer};
use super::spindle::Spindle;
use crate::pages::calculators::asked::Asked;
use crate::pages::calculators::diameter;
use crate::pages::controls::{Word, word};
use crate::pages::form::{sentence, thread_error};
use crate::pages::typed::{Typed, keep};
use crate::pages::{FieldError, Query, plan};
use crate::tables::threads;
use crate::units::read;

/// The fields by their names in the address, in the order a person thinks.
const NAMES: [&str; 5] = ["material", "work", "diameter", "spindle_speeds", "spindle_max"];

/// `work`
pub(super) static WORKS: &[Word<Work>] = &[
    word("drilling", "Drilling", Work::Drilling),
    word("tapping", "Tapping under power", Work::Tapping),
];

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

    /// The figures.
    ///
    /// # Errors
    /// One [`FieldError`] for each field that makes no sense, in the order of the form.
    ///
    /// # Examples
    /// A 0.5 mm drill in brass wants 38,000 rev/min and more; on a machine of 2,000 it turns at 3.1 m/min.
    /// ```
    /// use holewright::pages::calculators::speeds::{Reach, Request};
    /// use holewright::units::{in_metres_per_minute, print::round};
    /// let typed = "material=free-cutting-brass&diameter=0.5mm&spindle_max=2000";
    /// let found = Request::read(typed).answer().unwrap();
    /// assert_eq!(found.reach, Reach::TooSlow);
    /// assert_eq!(round(in_metres_per_minute(found.set.unwrap().surface), 1), 3.1);
    /// assert!(Request::read("material=cheese&diameter=long").answer().is_err());
    /// ```
    pub fn answer(&self) -> Result<Answer, Vec<FieldError>> {
        let mut errors = Vec::new();
        let material = keep(&mut errors, material(self.asked.at("material")).map(Some));
        let work = keep(&mut errors, self.asked.at("work").one_of(WORKS));
        let tool = keep(&mut errors, tool(self.asked.at("diameter"), work).map(Some));
        let speeds = self.asked.at("spindle_speeds").optional(Spindle::read);
        let speeds = keep(&mut errors, speeds).unwrap_or_default();
        let most = keep(&mut errors, self.asked.at("spindle_max").optional(read::spindle_speed));
        let spindle = speeds
            .held_to(most)
            .map_err(|error| self.asked.at("spindle_max").error(sentence(&error.to_string())));
        let spindle = keep(&mut errors, spindle);
        let (Some(material), Some(tool), true) = (material, tool, errors.is_empty()) else {
            return Err(errors);
        };
        answer(material, work, tool, &spindle).ok_or_else(|| {
            let name = material.name;
            vec![self.asked.at("work").error(format!(
                "We hold no published speed for tapping {name} under power. Tap it by hand.",
            ))]
        })
    }
}

fn material(typed: Typed<'_>) -> Result<&'static crate::tables::materials::Material, FieldError> {
    if typed.text.is_empty() {
        Err(typed.error("Choose the metal: it decides how fast the edge may go."))
    } else {
        plan::material(typed)
    }
}

/// A drill by any name when drilling; when tapping, a thread or the diameter of the tap.
fn tool(typed: Typed<'_>, work: Work) -> Result<Tool, FieldError> {
    if typed.text.is_empty() {
        return Err(typed.error(match work {
            Work::Drilling => {
                "Say which drill. Write its name or its size: No. 46, F, 7/64 in, 2.5 mm."
            }
            Work::Tapping => {
                "Say which tap. Write its thread or its diameter: 5 BA, M3, 1/4 BSF, 6 mm."
            }
        }));
    }
    let thread = threads::read::read(typed.text);
    let size = diameter::optional(typed);
    match (work, thread, size) {
        (Work::Tapping, Ok(thread), _) => Ok(Tool::Tap(thread)),
        (Work::Drilling, Ok(thread), Err(_)) => Err(typed.error(format!(
            "{} is a thread. Choose tapping under power, or name the drill: No. 46, 7/64 in, 2.5 mm.",
            thread.designation
        ))),
        (Work::Drilling, _, Ok(Some(found))) => {
            Ok(found.drill.map_or(Tool::Size(found.size), Tool::Drill))
        }
        (Work::Tapping, Err(_), Ok(Some(found))) => Ok(Tool::Size(found.size)),
        (Work::Tapping, Err(error), _) => Err(thread_error(typed.field, &error)),
        (Work::Drilling, _, Err(error)) => Err(error),
        (Work::Drilling, _, Ok(None)) => Err(typed.error("Say which drill.")),
    }
}
