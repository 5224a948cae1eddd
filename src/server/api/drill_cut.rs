//! What a list of drills is cut down to. The interface takes plain numbers of millimetres; the
//! chart's own address takes sizes as people write them.

use crate::pages::{FieldError, Query};
use crate::server::Error;
use crate::tables::drills::{self, Drill, Series, owned};
use crate::units::read::{Bare, length};
use crate::units::{Length, mm};

/// What is left of the drills.
pub(super) struct Cut {
    series: Vec<Series>,
    from: Option<Length>,
    to: Option<Length>,
    owned: Option<Vec<&'static Drill>>,
}

/// Reads `series`, `from_mm` and `to_mm`.
///
/// # Errors
/// A series or a size that makes no sense.
pub(super) fn by_numbers(query: &Query) -> Result<Cut, Error> {
    read(query, ["from_mm", "to_mm"], number_of_mm)
}

/// Reads `series`, `from`, `to` and `owned`, as the drill chart does.
///
/// # Errors
/// A series or a size that makes no sense, or two sizes with nothing between.
pub(super) fn by_names(query: &Query) -> Result<Cut, Error> {
    let owned = match query.get("owned") {
        "" => None,
        typed => Some(
            owned::owned(typed)
                .map_err(|error| Error::Invalid(vec![wrong("owned", error.to_string())]))?,
        ),
    };
    let cut = Cut { owned, ..read(query, ["from", "to"], name_or_length)? };
    if let (Some(from), Some(to)) = (cut.from, cut.to)
        && from > to
    {
        let message = "The larger size stands first: nothing lies between.";
        return Err(Error::Invalid(vec![wrong("to", message.to_owned())]));
    }
    Ok(cut)
}

impl Cut {
    /// Whether a drill is left.
    pub(super) fn keeps(&self, drill: &'static Drill) -> bool {
        self.series.contains(&drill.series)
            && self.from.is_none_or(|from| drill.diameter > from - drills::SAME_SIZE)
            && self.owned.as_ref().is_none_or(|owned| owned.contains(&drill))
            && self.to.is_none_or(|to| drill.diameter < to + drills::SAME_SIZE)
    }
}

fn read(
    query: &Query,
    [from, to]: [&'static str; 2],
    size: fn(&str) -> Result<Length, String>,
) -> Result<Cut, Error> {
    let mut errors = Vec::new();
    let mut bound = |field| match query.get(field) {
        "" => None,
        typed => size(typed).map_err(|message| errors.push(wrong(field, message))).ok(),
    };
    let (from, to) = (bound(from), bound(to));
    let series = match query.get("series") {
        "" => Series::ALL.to_vec(),
        typed => owned::series(typed).unwrap_or_else(|error| {
            errors.insert(0, wrong("series", error.to_string()));
            Vec::new()
        }),
    };
    if errors.is_empty() {
        Ok(Cut { series, from, to, owned: None })
    } else {
        Err(Error::Invalid(errors))
    }
}

fn number_of_mm(typed: &str) -> Result<Length, String> {
    let size = typed.replace(',', ".").parse::<f64>().ok().filter(|size| size.is_finite());
    size.map(mm)
        .ok_or_else(|| "This is no number of millimetres. Write it as 2.05 or 2,05.".to_owned())
}

fn name_or_length(typed: &str) -> Result<Length, String> {
    match drills::read::read(typed) {
        Ok(drill) => Ok(drill.diameter),
        Err(_) => length(typed, Bare::Mm)
            .map_err(|error| format!("{error} Or name a drill: No. 46, F, 7/64 in.")),
    }
}

fn wrong(field: &'static str, message: String) -> FieldError {
    FieldError { field, message, choices: Vec::new() }
}
