//! A refusal as problem details (RFC 9457).

use serde::Serialize;
use utoipa::{IntoResponses, ToSchema};

use crate::Error;
use holewright_pages::FieldError;

/// A refusal (RFC 9457).
#[derive(Serialize, ToSchema)]
pub(super) struct Problem<'a> {
    /// Always about:blank: the status says what kind of trouble it is.
    #[schema(example = "about:blank")]
    r#type: &'static str,
    /// The status in words.
    #[schema(example = "Not Found")]
    title: &'a str,
    /// The HTTP status.
    #[schema(example = 404)]
    status: u16,
    /// What happened, and what to do.
    detail: String,
    /// The path asked for.
    instance: &'a str,
    /// The number under which the log holds the rest.
    request_id: &'a str,
    /// The fields that make no sense; absent where no field is to blame.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    errors: Vec<Field<'a>>,
}

/// A field that makes no sense.
#[derive(Serialize, ToSchema)]
#[schema(as = FieldError)]
struct Field<'a> {
    /// Its name in the query.
    #[schema(example = "thread")]
    field: &'a str,
    /// What was typed, what is understood there, an example.
    message: &'a str,
    /// What could be meant; absent where nothing comes near.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    choices: Vec<Choice<'a>>,
}

/// Something that could be meant.
#[derive(Serialize, ToSchema)]
struct Choice<'a> {
    /// What to put in the field.
    value: &'a str,
    /// The words a person reads.
    words: &'a str,
}

/// What any address may answer instead, for the description.
#[derive(IntoResponses)]
#[expect(dead_code, reason = "read by the description alone")]
pub(super) enum Always {
    /// The program has this version already: the tag it sent in If-None-Match still holds.
    #[response(status = 304)]
    Held,
    /// Another method was used; Allow names those that answer.
    #[response(status = 405, content_type = "application/problem+json")]
    MethodNotAllowed(Problem<'static>),
    /// Accept or Accept-Encoding leaves out every form there is.
    #[response(status = 406, content_type = "application/problem+json")]
    NotAcceptable(Problem<'static>),
}

/// For an address that names a row of a table.
#[derive(IntoResponses)]
#[response(
    status = 404,
    content_type = "application/problem+json",
    description = "Nothing is held under this name"
)]
#[expect(dead_code, reason = "read by the description alone")]
pub(super) struct NotHeld(Problem<'static>);

/// For an address with a query.
#[derive(IntoResponses)]
#[response(
    status = 422,
    content_type = "application/problem+json",
    description = "A field makes no sense; errors names it and says what is understood there"
)]
#[expect(dead_code, reason = "read by the description alone")]
pub(super) struct NotUnderstood(Problem<'static>);

/// For an address that costs work.
#[derive(IntoResponses)]
#[response(
    status = 429,
    content_type = "application/problem+json",
    description = "Too many at once from one address; Retry-After says when to come back"
)]
#[expect(dead_code, reason = "read by the description alone")]
pub(super) struct TooMany(Problem<'static>);

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
        let choice = |choice: &'a holewright_pages::Choice| Choice {
            value: &choice.value,
            words: &choice.words,
        };
        Self {
            field: error.field,
            message: &error.message,
            choices: error.choices.iter().map(choice).collect(),
        }
    }
}
