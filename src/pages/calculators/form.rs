//! A calculator's form, filled as it was typed.

use super::address;
use crate::FieldError;
use crate::Visit;
use crate::controls;
use crate::drawer::Filled;
use crate::field::Field;
use crate::layout::{Frame, Section};
use crate::taken::TakenAs;
use holewright_core::asking::{AnyField, Asked};
use holewright_core::calculators::Declaration;
use holewright_core::units::print;

/// The whole form.
pub(super) struct Form {
    /// Where it goes.
    pub(super) action: String,
    pub(super) button: &'static str,
    /// What the answer cannot do without.
    pub(super) first: Vec<Field>,
    /// What the rest is about.
    pub(super) rest_heading: &'static str,
    pub(super) rest: Vec<Field>,
    /// Something in the rest was used, or is wrong: it stands open.
    pub(super) rest_open: bool,
    /// What was taken for one thing and could mean another.
    pub(super) taken: Vec<TakenAs>,
}

impl Form {
    /// The form as typed, each field with its error.
    pub(super) fn of(calculator: &Declaration, asked: &Asked, errors: &[FieldError]) -> Self {
        Self::shaped(calculator, asked, errors, Some)
    }

    /// The same form, each field below the fold changed or left out.
    pub(super) fn shaped(
        calculator: &Declaration,
        asked: &Asked,
        errors: &[FieldError],
        shape: impl Fn(Field) -> Option<Field>,
    ) -> Self {
        let carried = asked.carried(errors);
        let fill = |field: &str, value: &str| address(calculator, &carried.with(field, value));
        let control = |field: &&'static dyn AnyField| {
            controls::declared(*field, asked.typed(field.about().name))
        };
        let judged = |field: Field| field.judged(errors, fill);
        let form = &calculator.form;
        let rest: Vec<Field> =
            form.rest.iter().map(control).filter_map(shape).map(judged).collect();
        let rest_open =
            rest.iter().any(|field| field.error.is_some() || !asked.typed(field.name).is_empty());
        Self {
            action: calculator.path(),
            button: form.button,
            first: form.first.iter().map(control).map(judged).collect(),
            rest_heading: form.rest_heading,
            rest,
            rest_open,
            taken: TakenAs::all(calculator.taken(asked), fill),
        }
    }

    /// The same form beside a drawer in use.
    pub(super) fn beside(mut self, filled: &Filled<'_>) -> Self {
        filled.say_at(self.first.iter_mut().chain(&mut self.rest));
        self
    }
}

/// The frame of a page that only asks.
pub(super) fn asking(visit: &Visit<'_>, calculator: &Declaration, description: &str) -> Frame {
    Frame::new(visit, Section::Calculators, calculator.title, description)
}

/// The frame of a page that says what stands in the way.
pub(super) fn refusing(visit: &Visit<'_>, calculator: &Declaration) -> Frame {
    let title = format!("Error: {}", print::running(calculator.title));
    let description = "Something could not be used; everything typed is kept.";
    Frame::new(visit, Section::Calculators, &title, description).of_a_mistake()
}

/// The frame of an answer.
pub(super) fn answering(
    visit: &Visit<'_>,
    calculator: &Declaration,
    used: &Asked,
    [title, description]: [&str; 2],
) -> Frame {
    let address = address(calculator, used);
    Frame::at(visit.context, Section::Calculators, &address, title, description)
}
