//! The answer of a calculator that answers in rows.

use super::{Cell, Table};
use crate::calculators::{Figure, Value};
use crate::units::{
    in_degrees, in_metres_per_minute, in_mm, in_mm2, in_newton_metres, in_newtons, in_rpm,
    in_seconds, in_watts, print,
};

/// The rows, each under its key with its unit.
#[must_use]
pub fn rows(figures: &[Figure]) -> Table {
    let row = |figure: &Figure| {
        let Figure { key, value, rule, source, .. } = figure;
        let words = [rule, source.cite, source.grade.slug()].map(Cell::text);
        [Cell::text(&**key), cell(value)].into_iter().chain(words).collect()
    };
    Table {
        columns: &["figure", "value", "rule", "source", "grade"],
        rows: figures.iter().map(row).collect(),
    }
}

fn cell(value: &Value) -> Cell {
    let number = |value, places| Cell::number(print::fixed(value, places));
    match value {
        Value::Length(length) => number(in_mm(*length), 3),
        Value::Angle(angle) => number(in_degrees(*angle), 2),
        Value::SpindleSpeed(speed) => number(in_rpm(*speed), 0),
        Value::SurfaceSpeed(speed) => number(in_metres_per_minute(*speed), 1),
        Value::Time(time) => number(in_seconds(*time), 1),
        Value::Percent(percent) => number(*percent, 1),
        Value::Words(words) => Cell::text(&**words),
        Value::Sentences(sentences) => Cell::text(sentences.join(" ")),
        Value::Area(area) => number(in_mm2(*area), 2),
        Value::Torque(torque) => number(in_newton_metres(*torque), 3),
        Value::Force(force) => number(in_newtons(*force), 0),
        Value::Power(power) => number(in_watts(*power), 1),
        Value::Nothing | Value::Absent => Cell::text(""),
    }
}
