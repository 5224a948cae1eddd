//! A refusal as problem details (RFC 9457).

use serde::Serialize;

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
        errors: error
            .fields()
            .iter()
            .map(|field| Field { field: &field.field, message: &field.message })
            .collect(),
    };
    serde_json::to_string(&problem).unwrap_or_default()
}
