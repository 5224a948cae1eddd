//! A tapping drill with the thread it leaves.

use serde::Serialize;

use super::drills::Drill;
use super::figures;
use crate::calc::tapping;

/// A tapping drill.
#[derive(Debug, Serialize)]
pub(super) struct Candidate {
    drill: Drill,
    engagement_percent: f64,
    /// Null where no limit of the standard's is held.
    within_standard: Option<bool>,
}

impl From<&tapping::Candidate> for Candidate {
    fn from(candidate: &tapping::Candidate) -> Self {
        Self {
            drill: candidate.drill.into(),
            engagement_percent: figures::percent(candidate.engagement_percent),
            within_standard: candidate.within_standard,
        }
    }
}
