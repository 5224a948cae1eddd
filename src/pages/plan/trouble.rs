//! Why a hole that was read without error cannot be planned, at the field that could change it.

use super::request::Request;
use crate::{Choice, FieldError};
use holewright_core::asking::sentence;
use holewright_core::calc;
use holewright_core::plan::{Error, most_offered};
use holewright_core::tables::drills::Drill;
use holewright_core::units::{Length, print};

/// The error at the field that could change it, with what would be possible.
#[must_use]
pub fn refusal(request: &Request, error: &Error) -> FieldError {
    let (field, choices) = match error {
        Error::Refused { .. } => ("material", Vec::new()),
        Error::PartTooThin { most, .. } => {
            ("depth", most.iter().map(|most| length(*most)).collect())
        }
        Error::NothingLeft { .. } => ("measured_hole", Vec::new()),
        Error::NotTaper { .. } => ("thread", Vec::new()),
        Error::FormingNeedsSixtyDegrees { .. }
        | Error::FormingNeedsDuctile { .. }
        | Error::TaperWantsHandTaps { .. } => {
            ("tap", vec![Choice { value: "hand".into(), words: "Hand taps".into() }])
        }
        Error::Calc(calc::Error::NoDrillAtHand { would_do, .. }) => {
            let field = if request.typed("owned").is_empty() { "series" } else { "owned" };
            (field, would_do.iter().map(|drill| with_drill(request, drill)).collect())
        }
        Error::Calc(calc::Error::OutOfRange { quantity, .. }) => {
            (if *quantity == "depth" { "depth" } else { "over_thickness" }, Vec::new())
        }
        Error::Calc(calc::Error::NoEngagement { .. }) => ("thread", Vec::new()),
    };
    FieldError { field, message: sentence(&error.to_string()), choices }
}

fn length(length: Length) -> Choice {
    let value = print::mm(most_offered(length), 2);
    Choice { words: value.clone(), value }
}

/// The drills at hand with one more that would do.
fn with_drill(request: &Request, drill: &Drill) -> Choice {
    let owned = request.typed("owned");
    let value = if owned.is_empty() {
        format!("{},{}", request.typed("series"), drill.series)
    } else {
        format!("{owned}, {}", drill.label)
    };
    Choice { value, words: format!("with {}", drill.label) }
}
