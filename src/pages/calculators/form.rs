//! A calculator's form, filled as it was typed.

use super::asked::Asked;
use crate::FieldError;
use crate::field::Field;

/// The whole form.
pub(super) struct Form {
    /// Where it goes.
    pub(super) action: &'static str,
    pub(super) button: &'static str,
    /// What the answer cannot do without.
    pub(super) first: Vec<Field>,
    /// What the rest is about.
    pub(super) rest_heading: &'static str,
    pub(super) rest: Vec<Field>,
    /// Something in the rest was used, or is wrong: it stands open.
    pub(super) rest_open: bool,
}

/// The fields of a form before they are judged.
pub(super) struct Fields {
    pub(super) button: &'static str,
    pub(super) first: Vec<Field>,
    pub(super) rest_heading: &'static str,
    pub(super) rest: Vec<Field>,
}

impl Form {
    /// The form as typed, each field with its error.
    pub(super) fn of(
        action: &'static str,
        asked: &Asked,
        fields: Fields,
        errors: &[FieldError],
    ) -> Self {
        let judge = |fields: Vec<Field>| -> Vec<Field> {
            let fill = |field: &str, value: &str| asked.address_with(field, value);
            fields.into_iter().map(|field| field.judged(errors, fill)).collect()
        };
        let rest = judge(fields.rest);
        let rest_open =
            rest.iter().any(|field| field.error.is_some() || !asked.typed(field.name).is_empty());
        Self {
            action,
            button: fields.button,
            first: judge(fields.first),
            rest_heading: fields.rest_heading,
            rest,
            rest_open,
        }
    }
}
