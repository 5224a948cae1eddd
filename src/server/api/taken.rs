//! What a field was taken for where its text could mean more than one thing.

use serde::Serialize;
use utoipa::ToSchema;

use holewright_core::asking::{Choice, Taken};

/// A field taken for one thing that could mean another.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Taken)]
pub(super) struct TakenAs {
    /// The field.
    #[schema(example = "thread")]
    field: &'static str,
    /// What it was taken for.
    #[schema(example = "1/4 in × 40 ME")]
    taken_as: String,
    /// Why that, in words; empty where it is plain.
    why: &'static str,
    /// What else may be put in the field.
    others: Vec<String>,
}

/// An answer with what was taken to reach it.
#[derive(Debug, Serialize)]
pub(super) struct WithTaken<T> {
    #[serde(flatten)]
    answer: T,
    taken: Vec<TakenAs>,
}

impl<T> WithTaken<T> {
    pub(super) fn new(answer: T, taken: Vec<Taken>) -> Self {
        Self { answer, taken: all(taken) }
    }
}

/// Each of them.
pub(super) fn all(taken: Vec<Taken>) -> Vec<TakenAs> {
    taken.into_iter().map(TakenAs::from).collect()
}

impl From<Taken> for TakenAs {
    fn from(Taken { field, typed: _, taken_as, why, others }: Taken) -> Self {
        let value = |Choice { value, words: _ }| value;
        Self { field, taken_as, why, others: others.into_iter().map(value).collect() }
    }
}
