//! A refusal as problem details (RFC 9457).

use serde::Serialize;

use crate::pages::{self, FieldError};
use crate::server::Error;

#[derive(Serialize)]
struct Problem<'a> {
    r#type: &'static str,
    title: &'a str,
    status: u16,
    detail: String,
    instance: &'a str,
    request_id: &'a str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    errors: Vec<Field<'a>>,
}

#[derive(Serialize)]
struct Field<'a> {
    field: &'a str,
    message: &'a str,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    choices: Vec<Choice<'a>>,
}

/// Something that could be meant.
#[derive(Serialize)]
struct Choice<'a> {
    value: &'a str,
    words: &'a str,
}

/// The JSON of a refusal of this path.
#[must_use]
pub fn body(error: &Error, path: &str, request_id: &str) -> String {
    let status = error.status();
    let problem = Problem {
        r#type: "about:blank",
        title: status.canonical_reason().unwrap_or_default(),
        status: status.as_u16(),
        detail: error.to_string(),
        instance: path,
        request_id,
        errors: error.fields().iter().map(Field::from).collect(),
    };
    serde_json::to_string(&problem).unwrap_or_default()
}

impl<'a> From<&'a FieldError> for Field<'a> {
    fn from(error: &'a FieldError) -> Self {
        let choice =
            |choice: &'a pages::Choice| Choice { value: &choice.value, words: &choice.words };
        Self {
            field: error.field,
            message: &error.message,
            choices: error.choices.iter().map(choice).collect(),
        }
    }
}
