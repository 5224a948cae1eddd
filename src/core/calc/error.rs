//! What can be wrong with a question to the formulas.

use crate::tables::drills::Drill;
use crate::units::{Length, print};

/// One error for every formula: what was given, and what is allowed.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Error {
    /// A length that must lie between two others does not.
    #[error(
        "{quantity} of {} is outside {} to {}",
        print::mm(*given, 4), print::mm(*least, 3), print::mm(*most, 3)
    )]
    OutOfRange {
        /// What was measured or typed: "hole", "thickness".
        quantity: &'static str,
        /// The value given.
        given: Length,
        /// The least allowed.
        least: Length,
        /// The most allowed.
        most: Length,
    },
    /// Nothing in the drawer leaves a usable thread.
    #[error("{}", none_at_hand(*hole, *would_do, *leaves_percent))]
    NoDrillAtHand {
        /// The hole that meets the aim.
        hole: Length,
        /// A drill that would.
        would_do: Option<&'static Drill>,
        /// The engagement it leaves; none for a forming tap, whose thread is no matter of the hole alone.
        leaves_percent: Option<f64>,
    },
    /// The form has no engagement figure: taper pipe threads.
    #[error("{form} has no engagement figure: use the standard's drill list and the gauge length")]
    NoEngagement {
        /// The form's name.
        form: &'static str,
    },
}

/// What to get and what it leaves. The hole of the aim is said only where no drill stands for it: the drill
/// to get keeps to the standard too, and the two may differ.
fn none_at_hand(hole: Length, would_do: Option<&Drill>, leaves_percent: Option<f64>) -> String {
    let none = "no drill at hand leaves a usable thread";
    let Some(drill) = would_do else {
        return format!("{none}: the hole wants to be about {}", print::mm(hole, 2));
    };
    let size = print::mm(drill.diameter, 3);
    let get = if drill.label == size { size } else { format!("{} ({size})", drill.label) };
    let leaves = leaves_percent.map_or_else(String::new, |percent| {
        format!(", which leaves {} % engagement", print::fixed(percent, 0))
    });
    format!("{none}: get {get}{leaves}")
}
