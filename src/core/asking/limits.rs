//! The least and the most a field takes, and the sentence that refuses what lies beyond.

use super::error::quoted;
use crate::units::print;

/// The least and the most a field takes.
#[derive(Clone, Copy, Debug)]
pub enum Limits {
    /// It is no figure.
    None,
    /// Those its reader keeps, with something typed that is just taken and just refused.
    OfReader {
        /// At the limits.
        taken: &'static [&'static str],
        /// Just beyond them.
        refused: &'static [&'static str],
    },
    /// Narrower ones, in the unit that a bare number has.
    Between {
        /// The least that is taken.
        least: f64,
        /// The most that is taken.
        most: f64,
        /// What stands behind the figures: ` degrees`.
        unit: &'static str,
        /// What a figure below is: `is too small`.
        below: &'static str,
        /// What a figure above is: `is too large`.
        above: &'static str,
    },
}

impl Limits {
    /// Those of every length.
    pub const LENGTH: Self =
        Self::OfReader { taken: &["0.0001", "2000"], refused: &["0", "0.00009", "2000.1"] };
    /// Those of every spindle speed.
    pub const SPINDLE_SPEED: Self =
        Self::OfReader { taken: &["1", "200000"], refused: &["0", "0.9", "200001"] };

    /// Limits in a unit: ` mm`, ` degrees`.
    #[must_use]
    pub const fn between(least: f64, most: f64, unit: &'static str) -> Self {
        Self::Between { least, most, unit, below: "is too small", above: "is too large" }
    }

    /// Why a figure is not taken, where it is not.
    #[must_use]
    pub fn refusal(&self, figure: f64, typed: &str) -> Option<String> {
        let Self::Between { least, most, below, above, .. } = *self else { return None };
        // An angle or an inch that was typed as the limit may miss it by binary noise.
        match print::round(figure, 6) {
            figure if figure < least => self.sentence(below, typed),
            figure if figure > most => self.sentence(above, typed),
            _ => None,
        }
    }

    /// What is said of a text that is no figure at all.
    pub(super) fn what_is_taken(&self, typed: &str) -> Option<String> {
        let Self::Between { below, .. } = *self else { return None };
        self.sentence(below, typed)
    }

    fn sentence(&self, what: &str, typed: &str) -> Option<String> {
        let Self::Between { least, most, unit, .. } = *self else { return None };
        let [least, most] = [least, most].map(|figure| print::trimmed(figure, 4));
        Some(format!("{} {what}. Write {least} to {most}{unit}.", quoted(typed)))
    }
}
