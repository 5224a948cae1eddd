//! A form on the page of a note, as it comes back there.

use axum::http::StatusCode;

use crate::rules::deed::Did;
use holewright_pages::FieldError;

/// A form on the page that came back: what was typed into it and what was wrong.
#[derive(Default)]
pub(super) struct Back {
    pub(super) errors: Vec<FieldError>,
    pub(super) typed: Vec<(&'static str, String)>,
    /// The status, where it is not that of a form that could not be read.
    pub(super) status: Option<StatusCode>,
    /// What was done a moment ago.
    pub(super) did: Option<Did>,
}

impl Back {
    pub(super) fn typed(&self, name: &str) -> &str {
        self.typed.iter().find(|(held, _)| *held == name).map_or("", |(_, typed)| typed.as_str())
    }
}
