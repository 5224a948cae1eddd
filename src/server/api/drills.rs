//! The drills of every series, by size.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;

use super::{figures, reply};
use crate::pages::{FieldError, Query};
use crate::server::Error;
use crate::tables::drills::{self, Series, owned};
use crate::units::{Length, mm};

/// A drill.
#[derive(Debug, Serialize)]
pub(super) struct Drill {
    series: &'static str,
    size: &'static str,
    label: &'static str,
    diameter_mm: f64,
    diameter_in: f64,
}

#[derive(Debug, Serialize)]
struct Drills {
    drills: Vec<Drill>,
}

/// What a list of drills is cut down to.
struct Cut {
    series: Vec<Series>,
    from: Option<Length>,
    to: Option<Length>,
}

/// `/drills?series=&from_mm=&to_mm=`
///
/// # Errors
/// A series or a size that makes no sense: 422.
pub async fn list(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let cut = Cut::read(query.as_deref().unwrap_or_default())?;
    let drills = drills::all().iter().filter(|drill| cut.keeps(drill)).map(Drill::from).collect();
    reply::json(&headers, &Drills { drills })
}

impl From<&'static drills::Drill> for Drill {
    fn from(drill: &'static drills::Drill) -> Self {
        Self {
            series: drill.series.slug(),
            size: &drill.size,
            label: &drill.label,
            diameter_mm: figures::mm(drill.diameter),
            diameter_in: figures::inch(drill.diameter),
        }
    }
}

impl Cut {
    fn read(query: &str) -> Result<Self, Error> {
        let query = Query::read(query);
        let mut errors = Vec::new();
        let cut = Self {
            series: series(query.get("series"), &mut errors),
            from: size("from_mm", query.get("from_mm"), &mut errors),
            to: size("to_mm", query.get("to_mm"), &mut errors),
        };
        if errors.is_empty() { Ok(cut) } else { Err(Error::Invalid(errors)) }
    }

    fn keeps(&self, drill: &drills::Drill) -> bool {
        self.series.contains(&drill.series)
            && self.from.is_none_or(|from| drill.diameter > from - drills::SAME_SIZE)
            && self.to.is_none_or(|to| drill.diameter < to + drills::SAME_SIZE)
    }
}

/// The series asked for; all of them where none was typed.
fn series(typed: &str, errors: &mut Vec<FieldError>) -> Vec<Series> {
    if typed.is_empty() {
        return Series::ALL.to_vec();
    }
    owned::series(typed).unwrap_or_else(|error| {
        errors.push(wrong("series", error.to_string()));
        Vec::new()
    })
}

/// A bound in millimetres; none where nothing was typed.
fn size(field: &'static str, typed: &str, errors: &mut Vec<FieldError>) -> Option<Length> {
    if typed.is_empty() {
        return None;
    }
    let size = typed.replace(',', ".").parse::<f64>().ok().filter(|size| size.is_finite());
    if size.is_none() {
        let message = "This is no number of millimetres. Write it as 2.05 or 2,05.";
        errors.push(wrong(field, message.to_owned()));
    }
    size.map(mm)
}

fn wrong(field: &'static str, message: String) -> FieldError {
    FieldError { field, message, choices: Vec::new() }
}
