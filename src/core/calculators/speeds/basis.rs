//! Which published range is gone by, and what was made of it for another work or another steel.

use super::question::Work;
use crate::calc::countersink;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::materials::{Material, SpeedRange};
use crate::tables::reaming::speed_rule;
use crate::tables::source::Source;
use crate::units::Velocity;

/// The surface speeds gone by.
#[derive(Clone, Debug, PartialEq)]
pub struct Basis {
    /// The range in print they come from: the first its material lists, which is what the plan uses.
    pub range: &'static SpeedRange,
    /// All in print for this work in this metal, that range first.
    pub in_print: &'static [SpeedRange],
    /// Slowest, after the rules.
    pub low: Velocity,
    /// Fastest, after the rules.
    pub high: Velocity,
    /// What was made of the range, in order; none where it is gone by as printed.
    pub rules: Vec<Rule>,
}

/// One thing made of a range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rule {
    /// In words, inside a sentence.
    pub words: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// The surface speeds for a work in a metal; none where no speed is in print for it.
pub(super) fn basis(material: &'static Material, work: Work, steel: ToolSteel) -> Option<Basis> {
    let mut rules = Vec::new();
    let (in_print, [slow, fast]) = match work {
        Work::Drilling => (material.drilling, [1.0, 1.0]),
        Work::Tapping => (material.tapping, [1.0, 1.0]),
        Work::Reaming if !material.reaming.is_empty() => (material.reaming, [1.0, 1.0]),
        Work::Reaming => {
            let (half, source) = speed_rule();
            rules.push(Rule {
                words: "half the drilling speed, since no reaming speed is held for this metal",
                source,
            });
            (material.drilling, [half, half])
        }
        Work::Countersinking => {
            rules.push(Rule {
                words: "a third of its slow end to a half of its fast end, at the head’s diameter",
                source: countersink::SPEED_SOURCE,
            });
            (material.drilling, countersink::SPEED)
        }
        Work::Spotting => {
            rules.push(Rule {
                words: "as a drill of the spot’s widest diameter",
                source: Source::common_practice("a spotting drill is run as a drill of its spot"),
            });
            (material.drilling, [1.0, 1.0])
        }
    };
    if let Some(source) = steel.source() {
        rules.push(Rule { words: "half of that for carbon steel", source });
    }
    let range = in_print.first()?;
    let factor = steel.speed_factor();
    Some(Basis {
        range,
        in_print,
        low: range.low * (slow * factor),
        high: range.high * (fast * factor),
        rules,
    })
}
