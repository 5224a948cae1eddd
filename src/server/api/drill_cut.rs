//! What the interface's list of drills is cut down to: `series`, and plain numbers of millimetres. The
//! chart's own address takes sizes as people write them ([`holewright_pages::drills::cut`]).

use crate::Error;
use holewright_core::tables::drills::{Cut, owned};
use holewright_core::units::{Length, mm};
use holewright_pages::{FieldError, Query};

/// Reads `series`, `from_mm` and `to_mm`.
///
/// # Errors
/// A series or a size that makes no sense.
pub(super) fn read(query: &Query) -> Result<Cut, Error> {
    let mut errors = Vec::new();
    let mut keep = |field, message| errors.push(FieldError { field, message, choices: Vec::new() });
    let series = match query.get("series") {
        "" => None,
        typed => owned::series(typed).map_err(|error| keep("series", error.to_string())).ok(),
    };
    let mut bound = |field| match query.get(field) {
        "" => None,
        typed => number_of_mm(typed).map_err(|message| keep(field, message)).ok(),
    };
    let (from, to) = (bound("from_mm"), bound("to_mm"));
    if errors.is_empty() {
        Ok(Cut { from, to, series, owned: None })
    } else {
        Err(Error::Invalid(errors))
    }
}

fn number_of_mm(typed: &str) -> Result<Length, String> {
    let size = typed.replace(',', ".").parse::<f64>().ok().filter(|size| size.is_finite());
    size.map(mm)
        .ok_or_else(|| "This is no number of millimetres. Write it as 2.05 or 2,05.".to_owned())
}
