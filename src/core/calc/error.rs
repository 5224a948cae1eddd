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
    #[error("{}", none_at_hand(*hole, *would_do))]
    NoDrillAtHand {
        /// The hole that meets the aim.
        hole: Length,
        /// A drill that would.
        would_do: Option<&'static Drill>,
    },
    /// The form has no engagement figure: taper pipe threads.
    #[error("{form} has no engagement figure: use the standard's drill list and the gauge length")]
    NoEngagement {
        /// The form's name.
        form: &'static str,
    },
}

fn none_at_hand(hole: Length, would_do: Option<&Drill>) -> String {
    let hole = print::mm(hole, 2);
    let get = would_do.map_or_else(String::new, |drill| {
        let size = print::mm(drill.diameter, 3);
        if drill.label == size {
            format!(": get {size}")
        } else {
            format!(": get {} ({size})", drill.label)
        }
    });
    format!("no drill at hand leaves a usable thread; the hole wants to be about {hole}{get}")
}
