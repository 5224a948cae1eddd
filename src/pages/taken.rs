//! What a field was taken for where its text could mean more, with the others one tap away.

use crate::link::Link;
use holewright_core::asking::Taken;

/// A field taken for one thing, as a page says it.
#[derive(Clone, Debug)]
pub(crate) struct TakenAs {
    /// What was typed, quoted.
    pub(crate) typed: String,
    /// What it was taken for.
    pub(crate) taken_as: String,
    /// Why that; empty where it is plain.
    pub(crate) why: &'static str,
    /// Addresses with the others in its place.
    pub(crate) others: Vec<Link>,
}

impl TakenAs {
    /// Each of them; `fill` makes the address that puts another value in a field.
    pub(crate) fn all(taken: Vec<Taken>, fill: impl Fn(&str, &str) -> String) -> Vec<Self> {
        let shown = |Taken { field, typed, taken_as, why, others }: Taken| Self {
            typed,
            taken_as,
            why,
            others: others
                .into_iter()
                .map(|other| Link::new(fill(field, &other.value), other.words))
                .collect(),
        };
        taken.into_iter().map(shown).collect()
    }
}
