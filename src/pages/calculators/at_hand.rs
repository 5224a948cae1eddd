//! The drills at hand, from the two fields that say so.

use super::asked::Asked;
use crate::typed::keep;
use crate::{FieldError, plan};
use holewright_core::plan::AtHand;
use holewright_core::tables::drills::{self, Drill, owned};

/// The drills that may be chosen from, smallest first; every drill where nothing was said.
pub(super) fn drills(asked: &Asked, errors: &mut Vec<FieldError>) -> Vec<&'static Drill> {
    let series = keep(errors, asked.at("series").optional(owned::series));
    let listed = keep(errors, asked.at("owned").optional(owned::owned));
    match keep(errors, plan::at_hand(asked.at("owned"), series, listed)) {
        AtHand::All => drills::all().iter().collect(),
        AtHand::Only(held) => held,
    }
}
