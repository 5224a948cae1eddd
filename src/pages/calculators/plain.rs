//! A calculator that answers in rows: the page they all have, and the table and drawing of its answer.

use askama::Template;

use super::drawer::with_drawer;
use super::form::{Form, answering, asking, refusing};
use super::{address, asked, json};
use crate::drawer::fills_of;
use crate::figures::Both;
use crate::key::{Key, KeyLine, Sign, Signed};
use crate::layout::Frame;
use crate::sentence::set;
use crate::warnings::{WarningGroup, by_level};
use crate::{FieldError, Reply, Visit};
use holewright_core::asking::Asked;
use holewright_core::calculators::{AnswerKind, Answered, Declaration, Figure, Rows, Value, find};
use holewright_core::export::{self, Table};
use holewright_core::plan::Level;
use holewright_core::tables::materials;
use holewright_core::units::{
    in_degrees, in_metres_per_minute, in_mm2, in_newton_metres, in_newtons, in_rpm, in_seconds,
    in_watts, print,
};

#[derive(Template)]
#[template(path = "calculators/plain.html")]
struct PlainPage {
    frame: Frame,
    heading: String,
    answers: &'static str,
    errors: Vec<FieldError>,
    answer: Option<Shown>,
    form: Form,
}

/// The answer as the page prints it.
struct Shown {
    first: Row,
    rest: Vec<Row>,
    /// What the material can do to whoever cuts it.
    warnings: Vec<WarningGroup<Signed>>,
    /// What stands in sentences.
    lists: Vec<List>,
    /// What to mind beside them.
    notes: Vec<Signed>,
    drawing: Option<String>,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
    json: String,
    csv: String,
}

/// A row as the page prints it.
struct Row {
    name: &'static str,
    value: String,
    /// In inches, where it is a length.
    inch: Option<String>,
    rule: &'static str,
    sign: Sign,
}

/// Sentences under their name.
struct List {
    name: &'static str,
    sentences: Vec<String>,
    rule: &'static str,
    sign: Sign,
}

/// The page.
pub(super) fn show(visit: &Visit<'_>, calculator: &Declaration, rows: &dyn Rows) -> Reply {
    let typed = asked(calculator, &visit.query);
    let blank = |errors: &[FieldError]| PlainPage {
        frame: asking(visit, calculator, calculator.answers),
        heading: calculator.title.to_owned(),
        answers: calculator.answers,
        errors: errors.to_vec(),
        answer: None,
        form: Form::of(calculator, &typed, errors),
    };
    if calculator.only_asks(|field| visit.query.was_sent(field)) {
        return Reply::html(200, &blank(&[]));
    }
    let names: Vec<&str> = calculator.fields().map(|field| field.about().name).collect();
    let (used, filled, notice) = with_drawer(visit, calculator, &fills_of(&names));
    match rows.answer(&used) {
        Err(errors) => {
            let frame = refusing(visit, calculator).with_drawer(notice);
            Reply::html(422, &PlainPage { frame, ..blank(&errors) })
        }
        Ok(found) => {
            let heading = found.heading.clone();
            let shown = shown(calculator, &used, found);
            let values: Vec<&str> = shown.iter().map(|shown| shown.first.value.as_str()).collect();
            let title = format!("{heading}: {}", values.concat());
            let description = format!("{title}. {}", calculator.answers);
            let frame = answering(visit, calculator, &used, [&title, &description]);
            let frame = frame.with_drawer(notice);
            let page = blank(&[]);
            let form = page.form.beside(&filled);
            Reply::html(200, &PlainPage { frame, heading, answer: shown, form, ..page })
        }
    }
}

/// The rows of an answer as a file; none where the calculator has a page of its own.
pub(crate) fn table(visit: &Visit<'_>, name: &str) -> Option<Table> {
    Some(export::calculators::rows(&answered(visit, name)?.figures))
}

/// The drawing of an answer; none where there is none.
pub(crate) fn drawing(visit: &Visit<'_>, name: &str) -> Option<String> {
    answered(visit, name)?.drawing
}

fn answered(visit: &Visit<'_>, name: &str) -> Option<Answered> {
    let calculator = find(name)?;
    match calculator.answer {
        AnswerKind::Rows(rows) => rows.answer(&asked(calculator, &visit.query)).ok(),
        AnswerKind::Speeds | AnswerKind::Tapping | AnswerKind::Clearance => None,
    }
}

fn shown(calculator: &Declaration, used: &Asked, found: Answered) -> Option<Shown> {
    let mut key = Key::default();
    let warnings = warnings(used, &mut key);
    let notes = key.all(&found.notes);
    let (mut rows, mut lists) = (Vec::new(), Vec::new());
    for figure in &found.figures {
        match &figure.value {
            Value::Sentences(sentences) if sentences.is_empty() => {}
            Value::Sentences(sentences) => lists.push(list(figure, sentences, &mut key)),
            value => rows.extend(value_of(value).map(|value| row(figure, value, &mut key))),
        }
    }
    let mut rows = rows.into_iter();
    let first = rows.next()?;
    let page = address(calculator, used);
    Some(Shown {
        first,
        rest: rows.collect(),
        warnings,
        lists,
        notes,
        drawing: found.drawing,
        key: key.lines(),
        json: json(calculator, used),
        csv: page.replacen(&calculator.path(), &format!("{}.csv", calculator.path()), 1),
    })
}

/// What burns or poisons of the material that was named.
fn warnings(used: &Asked, key: &mut Key) -> Vec<WarningGroup<Signed>> {
    let named = used.typed("material");
    let material = materials::find(named).or_else(|| materials::read::read(named).ok());
    let dangers = material.map_or(&[][..], |material| material.dangers);
    let dangers = dangers.iter().filter(|danger| danger.work.burns_or_poisons());
    let dangers = key.all(dangers.map(|danger| &danger.advice));
    by_level(dangers.into_iter().map(|item| (Level::Danger, item)))
}

fn list(figure: &Figure, sentences: &[String], key: &mut Key) -> List {
    let sentences = sentences.iter().map(|sentence| set(sentence)).collect();
    List { name: figure.name, sentences, rule: figure.rule, sign: key.sign(figure.source) }
}

fn row(figure: &Figure, (value, inch): (String, Option<String>), key: &mut Key) -> Row {
    Row { name: figure.name, value, inch, rule: figure.rule, sign: key.sign(figure.source) }
}

/// A figure as the page prints it, and in inches where it is a length; none where it is no one figure.
fn value_of(value: &Value) -> Option<(String, Option<String>)> {
    let value = match value {
        Value::Length(length) => {
            let Both { mm, inch } = Both::of(*length);
            return Some((mm, Some(inch)));
        }
        Value::Angle(angle) => format!("{}°", print::trimmed(in_degrees(*angle), 2)),
        Value::SpindleSpeed(speed) => format!("{} rev/min", print::trimmed(in_rpm(*speed), 0)),
        Value::SurfaceSpeed(speed) => {
            format!("{} m/min", print::trimmed(in_metres_per_minute(*speed), 1))
        }
        Value::Time(time) => format!("{} s", print::trimmed(in_seconds(*time), 1)),
        Value::Percent(percent) => print::percent(*percent),
        Value::Words(words) => set(words),
        Value::Area(area) => format!("{} mm²", print::trimmed(in_mm2(*area), 2)),
        Value::Torque(torque) => {
            format!("{} N·m", print::to_figures(in_newton_metres(*torque), 2))
        }
        Value::Force(force) => format!("{} N", print::significant(in_newtons(*force), 3)),
        Value::Power(power) => format!("{} W", print::to_figures(in_watts(*power), 2)),
        Value::Nothing => "–".to_owned(),
        Value::Absent | Value::Sentences(_) => return None,
    };
    Some((value, None))
}
