//! Hits as they are gathered: each address once, with its best score.

use super::score::{self, Score};
use super::spelling::Corrected;
use super::{Hit, MOST};

/// Hits with their scores.
#[derive(Debug, Default)]
pub(super) struct Gathered {
    hits: Vec<(Score, Hit)>,
}

impl Gathered {
    /// Takes a hit in, unless its address is held with as good a score.
    pub(super) fn add(&mut self, score: Score, hit: Hit) {
        match self.hits.iter_mut().find(|(_, held)| held.url == hit.url) {
            Some(held) if held.0 < score => *held = (score, hit),
            Some(_) => {}
            None => self.hits.push((score, hit)),
        }
    }

    /// Takes in what was found for the text spelt right, and says so in each hit.
    pub(super) fn add_misspelt(&mut self, right: Self, corrected: &Corrected) {
        for (score, hit) in right.hits {
            let why = format!("{}; read as {}", hit.why, corrected.text);
            self.add(score::misspelt(score, corrected.letters), Hit { why, ..hit });
        }
    }

    /// How many addresses are held.
    pub(super) const fn len(&self) -> usize {
        self.hits.len()
    }

    /// The best, best first.
    pub(super) fn best(mut self) -> Vec<Hit> {
        // Stable: equals stay in the order of the tables, which have the usual thing first.
        self.hits.sort_by(|(one_score, one), (other_score, other)| {
            other_score.cmp(one_score).then(one.kind.cmp(&other.kind))
        });
        self.hits.into_iter().take(MOST).map(|(_, hit)| hit).collect()
    }
}
