//! The calculators in the description of the interface, from their declarations.

use utoipa::openapi::path::{HttpMethod, Operation, Parameter, ParameterIn, PathItem};
use utoipa::openapi::schema::{Array, Object, Schema, Type};
use utoipa::openapi::{Content, OpenApi, Ref, RefOr, Required, Response, Responses};
use utoipa::{IntoResponses, PartialSchema, ToSchema};

use super::described;
use crate::api::problem::{Always, NotUnderstood};
use crate::api::taken::TakenAs;
use holewright_core::asking::{AnyField, Need};
use holewright_core::calculators::{CALCULATORS, Declaration};

/// An answer as it is described.
pub(in crate::api) struct Described {
    pub(super) operation_id: String,
    /// What is answered, in a sentence.
    pub(super) summary: String,
    /// What the body holds.
    pub(super) answer: String,
    /// The body, then what stands in it.
    pub(super) schemas: Vec<(String, RefOr<Schema>)>,
}

impl Described {
    /// An answer whose body is this type.
    pub(super) fn of<T: ToSchema>(operation_id: &str, summary: &str, answer: &str) -> Self {
        let mut schemas = vec![(T::name().into_owned(), T::schema())];
        T::schemas(&mut schemas);
        Self {
            operation_id: operation_id.to_owned(),
            summary: summary.to_owned(),
            answer: answer.to_owned(),
            schemas,
        }
    }
}

/// Adds every calculator to a description.
pub(in crate::api) fn describe(description: &mut OpenApi) {
    for calculator in CALCULATORS.iter().copied() {
        let mut described = described(calculator);
        taking(&mut described);
        let body = described.schemas.first().map(|(name, _)| name.clone()).unwrap_or_default();
        let item = PathItem::new(HttpMethod::Get, operation(calculator, &described, &body));
        description.paths.paths.insert(format!("/api/v1/calc/{}", calculator.slug), item);
        let components = description.components.get_or_insert_default();
        components.schemas.extend(described.schemas);
        components.schemas.insert(TakenAs::name().into_owned(), TakenAs::schema());
    }
}

/// The body of an answer, the first schema, with what was taken in it.
fn taking(described: &mut Described) {
    let Some((_, RefOr::T(Schema::Object(body)))) = described.schemas.first_mut() else { return };
    let mut taken = Array::new(Ref::from_schema_name(TakenAs::name()));
    taken.description =
        Some("What was taken for one thing and could mean another; mostly empty.".to_owned());
    body.properties.insert("taken".to_owned(), Schema::Array(taken).into());
    body.required.push("taken".to_owned());
}

fn operation(calculator: &Declaration, described: &Described, body: &str) -> Operation {
    let mut answer = Response::new(&*described.answer);
    let schema = Ref::from_schema_name(body);
    answer.content.insert("application/json".to_owned(), Content::new(Some(schema)).into());
    let mut responses = Responses::new();
    responses.responses.insert("200".to_owned(), answer.into());
    responses.responses.extend(NotUnderstood::responses());
    responses.responses.extend(Always::responses());
    Operation::builder()
        .tag("calculators")
        .summary(Some(&*described.summary))
        .operation_id(Some(&*described.operation_id))
        .parameters(Some(calculator.fields().map(parameter)))
        .responses(responses)
        .build()
}

fn parameter(field: &dyn AnyField) -> Parameter {
    let about = field.about();
    let required =
        if matches!(about.need, Need::Always(_)) { Required::True } else { Required::False };
    Parameter::builder()
        .name(about.name)
        .parameter_in(ParameterIn::Query)
        .required(required)
        .description(Some(with_words(about.description, &field.choices())))
        .schema(Some(Object::with_type(Type::String)))
        .example(Some(about.example.into()))
        .build()
}

/// `Fit: medium, close or free`, each word as code.
fn with_words(description: &str, choices: &[(&str, &str)]) -> String {
    let words: Vec<String> = choices.iter().map(|(slug, _)| format!("`{slug}`")).collect();
    match words.split_last() {
        None => description.to_owned(),
        Some((last, [])) => format!("{description}: {last}"),
        Some((last, others)) => format!("{description}: {} or {last}", others.join(", ")),
    }
}
