//! A form on a note's page with one text that must be given: a report, a correction, why it is withdrawn.

use super::back::Back;
use super::kept::Sent;
use crate::extract::Fields;
use crate::rules::deed::Deed;
use crate::rules::notes::NoteId;
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::wording;
use holewright_pages::FieldError;
use holewright_pages::field::{Field, Kind};

/// Such a form.
pub(super) struct TextForm {
    /// The end of its address.
    pub(super) act: &'static str,
    /// What is done by it.
    pub(super) deed: Deed,
    /// Its field.
    pub(super) name: &'static str,
    /// What the field asks for.
    pub(super) label: &'static str,
    /// What is said where nothing was typed.
    pub(super) missing: &'static str,
    /// The most characters taken.
    pub(super) longest: usize,
}

impl TextForm {
    /// The text.
    ///
    /// # Errors
    /// It is missing or too long: the form as it goes back.
    pub(super) fn read(&self, fields: &Fields) -> Result<String, Back> {
        let text = wording::text(fields.as_typed(self.name));
        let (length, longest) = (text.chars().count(), self.longest);
        let message = match length {
            _ if is_blank(&text) => self.missing.to_owned(),
            _ if length > longest => format!("That is {length} characters; {longest} are taken."),
            _ => return Ok(text),
        };
        Err(Back {
            errors: vec![FieldError::new(self.name, message)],
            typed: vec![(self.name, text)],
            ..Back::default()
        })
    }

    /// The form as it was sent about this note.
    pub(super) fn sent(&self, NoteId(id): NoteId, fields: &Fields) -> Sent {
        let text = wording::text(fields.as_typed(self.name));
        let version: String = fields.as_typed("version").chars().take(20).collect();
        Sent {
            action: format!("/notes/{id}/{}", self.act),
            fields: vec![Field::new(self.name, self.label, "", Kind::Long(text))],
            known: [("version", version)]
                .into_iter()
                .filter(|(_, held)| !held.is_empty())
                .collect(),
            carried: Vec::new(),
        }
    }
}
