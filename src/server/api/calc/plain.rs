//! An answer in rows: each figure under its key, then the rules they go by.

use serde::ser::{Serialize, SerializeMap, Serializer};
use utoipa::openapi::schema::{Array, Object, Schema, SchemaType, Type};
use utoipa::openapi::{Ref, RefOr};
use utoipa::{PartialSchema, ToSchema};

use super::Described;
use crate::Error;
use crate::api::figures;
use holewright_core::asking::Asked;
use holewright_core::calculators::{Answered, Declaration, Figure, FigureKind, Rows, Value};
use holewright_core::tables::materials::Advice;
use holewright_core::units::{in_newton_metres, in_newtons, in_seconds, in_watts, print};

/// The key of the rules.
const RULES: &str = "rules";

/// The key of what to mind.
const NOTES: &str = "notes";

/// The figures of an answer, and what to mind beside them.
pub(super) struct Body(Answered);

/// What to mind beside the figures.
#[derive(serde::Serialize, ToSchema)]
#[schema(as = FigureNote)]
struct Note<'a> {
    /// A sentence.
    text: &'a str,
    /// Where it was read; a grade in brackets where not in the source itself.
    source: String,
}

/// What a figure goes by.
#[derive(serde::Serialize, ToSchema)]
#[schema(as = FigureRule)]
struct Rule<'a> {
    /// The key of the figure.
    figure: &'a str,
    /// The rule, in words.
    rule: &'a str,
    /// Where it was read; a grade in brackets where not in the source itself.
    source: String,
}

/// The answer.
///
/// # Errors
/// A field that makes no sense.
pub(super) fn answer(rows: &dyn Rows, asked: &Asked) -> Result<Body, Error> {
    rows.answer(asked).map(Body).map_err(Error::Invalid)
}

impl Serialize for Body {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.figures.len() + 2))?;
        for Figure { key, value, .. } in &self.0.figures {
            match value {
                Value::Length(length) => map.serialize_entry(key, &figures::mm(*length)),
                Value::Angle(angle) => map.serialize_entry(key, &figures::degrees(*angle)),
                Value::SpindleSpeed(speed) => map.serialize_entry(key, &figures::rpm(*speed)),
                Value::SurfaceSpeed(speed) => {
                    map.serialize_entry(key, &figures::metres_per_minute(*speed))
                }
                Value::Time(time) => map.serialize_entry(key, &figures::number(in_seconds(*time))),
                Value::Percent(percent) => map.serialize_entry(key, &figures::percent(*percent)),
                Value::Words(words) => map.serialize_entry(key, words),
                Value::Sentences(sentences) => map.serialize_entry(key, sentences),
                Value::Area(area) => map.serialize_entry(key, &figures::mm2(*area)),
                Value::Torque(torque) => {
                    map.serialize_entry(key, &figures::number(in_newton_metres(*torque)))
                }
                Value::Force(force) => {
                    map.serialize_entry(key, &print::round(in_newtons(*force), 0))
                }
                Value::Power(power) => map.serialize_entry(key, &figures::number(in_watts(*power))),
                Value::Nothing | Value::Absent => map.serialize_entry(key, &None::<f64>),
            }?;
        }
        let rules: Vec<Rule<'_>> = self.0.figures.iter().map(Rule::from).collect();
        map.serialize_entry(RULES, &rules)?;
        let notes: Vec<Note<'_>> = self.0.notes.iter().map(Note::from).collect();
        map.serialize_entry(NOTES, &notes)?;
        map.end()
    }
}

impl<'a> From<&'a Figure> for Rule<'a> {
    fn from(figure: &'a Figure) -> Self {
        let source = figures::source(figure.source);
        Self { figure: &figure.key, rule: figure.rule, source }
    }
}

impl<'a> From<&'a Advice> for Note<'a> {
    fn from(advice: &'a Advice) -> Self {
        Self { text: advice.text, source: figures::source(advice.source) }
    }
}

/// The answer as it is described.
pub(super) fn described(calculator: &Declaration, rows: &dyn Rows) -> Described {
    let mut body = Object::new();
    for kind in rows.kinds() {
        body.properties.insert(kind.key.clone(), property(&kind).into());
        body.required.push(kind.key);
    }
    let mut rules = Array::new(Ref::from_schema_name(Rule::name()));
    rules.description = Some("What each figure goes by, in order.".to_owned());
    body.properties.insert(RULES.to_owned(), Schema::Array(rules).into());
    body.required.push(RULES.to_owned());
    let mut notes = Array::new(Ref::from_schema_name(Note::name()));
    notes.description = Some("What to mind beside the figures.".to_owned());
    body.properties.insert(NOTES.to_owned(), Schema::Array(notes).into());
    body.required.push(NOTES.to_owned());
    body.description = Some(calculator.answers.to_owned());
    let name: String = calculator.slug.split('-').map(print::sentence).collect();
    let schemas: Vec<(String, RefOr<Schema>)> = vec![
        (name, Schema::Object(body).into()),
        (Rule::name().into_owned(), Rule::schema()),
        (Note::name().into_owned(), Note::schema()),
    ];
    Described {
        operation_id: calculator.slug.replace('-', "_"),
        summary: calculator.answers.to_owned(),
        answer: calculator.title.to_owned(),
        schemas,
    }
}

fn property(kind: &FigureKind) -> Schema {
    if kind.is_list {
        let mut list = Array::new(Object::with_type(Type::String));
        list.description = Some(kind.description.clone());
        return Schema::Array(list);
    }
    let of = if kind.is_words { Type::String } else { Type::Number };
    let mut property = if kind.may_lack {
        Object::with_type(SchemaType::from_iter([of, Type::Null]))
    } else {
        Object::with_type(of)
    };
    property.description = Some(kind.description.clone());
    Schema::Object(property)
}
