//! A tapping drill with the thread it leaves.

use serde::Serialize;
use utoipa::ToSchema;

use super::drills::Drill;
use super::figures;
use holewright_core::calc::tapping;

/// A tapping drill.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = TappingDrill)]
pub(super) struct Candidate {
    /// The drill.
    drill: Drill,
    /// Depth of thread it leaves, as a percentage of the full thread of that form.
    #[schema(example = 69.9)]
    engagement_percent: f64,
    /// Whether the hole keeps to the standard's largest; null where no such limit is held.
    #[schema(required)]
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
