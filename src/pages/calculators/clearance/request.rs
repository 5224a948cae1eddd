//! What was typed for a clearance hole, and what it describes.

use super::answer::{Answer, Question, Screw, answer};
use crate::calculators::asked::Asked;
use crate::calculators::at_hand;
use crate::form::{sentence, thread_error};
use crate::typed::{Typed, keep};
use crate::{FieldError, Query, plan};
use holewright_core::tables::threads::{Thread, read};
use holewright_core::units::Length;
use holewright_core::units::read::{Bare, Problem, length};

/// The fields by their names in the address, in the order a person thinks.
const NAMES: [&str; 7] =
    ["thread", "diameter", "fit", "upper_error", "lower_error", "series", "owned"];

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
        Self { asked: Asked::new("/calculators/clearance", &NAMES, query) }
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
    /// As [`Self::question`].
    ///
    /// # Examples
    /// No standard speaks of 5 BA: 3.328 mm by the stated rule, drilled 3.4.
    /// ```
    /// use holewright_pages::calculators::clearance::Request;
    /// let found = Request::read("thread=5ba&series=metric").answer().unwrap();
    /// assert_eq!(found.drill().unwrap().label, "3.4 mm");
    /// assert!(Request::read("thread=1/4+npt").answer().is_err());
    /// ```
    pub fn answer(&self) -> Result<Answer, Vec<FieldError>> {
        self.question().map(answer)
    }

    /// What it asks.
    ///
    /// # Errors
    /// One [`FieldError`] for each field that makes no sense, in the order of the form.
    pub fn question(&self) -> Result<Question, Vec<FieldError>> {
        let mut errors = Vec::new();
        let thread = keep(&mut errors, thread(self.asked.at("thread")));
        let diameter = keep(&mut errors, self.asked.at("diameter").length());
        let screw = match (thread, diameter) {
            (Some(thread), measured) => {
                Some(Screw { thread: Some(thread), major: Screw::major_of(thread), measured })
            }
            (None, Some(major)) => Some(Screw { thread: None, major, measured: None }),
            (None, None) => None,
        };
        if screw.is_none() && errors.is_empty() {
            errors.push(self.asked.at("thread").error(
                "Say which screw. Write its thread, 5 BA, M3, 1/4 BSF, or its diameter below.",
            ));
        }
        let fit = keep(&mut errors, self.asked.at("fit").one_of(plan::FITS));
        let upper_error = keep(&mut errors, centre_error(self.asked.at("upper_error")));
        let lower_error = keep(&mut errors, centre_error(self.asked.at("lower_error")));
        let at_hand = at_hand::drills(&self.asked, &mut errors);
        match screw {
            Some(screw) if errors.is_empty() => {
                Ok(Question { screw, fit, upper_error, lower_error, at_hand })
            }
            _ => Err(errors),
        }
    }
}

fn thread(typed: Typed<'_>) -> Result<Option<&'static Thread>, FieldError> {
    if typed.text.is_empty() {
        return Ok(None);
    }
    let thread = read::read(typed.text).map_err(|error| thread_error(typed.field, &error))?;
    if thread.taper.is_none() {
        Ok(Some(thread))
    } else {
        Err(typed.error(format!(
            "{} is a taper thread: it screws into its mate and passes through nothing.",
            thread.designation
        )))
    }
}

/// How far a centre may be off; none, and zero too, is dead on.
fn centre_error(typed: Typed<'_>) -> Result<Length, FieldError> {
    if typed.text.is_empty() {
        return Ok(Length::default());
    }
    match length(typed.text, Bare::Mm) {
        Ok(length) => Ok(length),
        Err(error) if error.problem == Problem::Zero => Ok(Length::default()),
        Err(error) => Err(typed.error(sentence(&error.to_string()))),
    }
}
