//! Which published range is gone by, and what was made of it for another work or another steel.

use std::borrow::Cow;

use super::question::Work;
use crate::calc::countersink;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::materials::{Material, SpeedRange};
use crate::tables::reaming_pairs::{Fractions, fractions};
use crate::tables::source::Source;
use crate::units::{Velocity, print};

/// The surface speeds gone by.
#[derive(Clone, Debug, PartialEq)]
pub struct Basis {
    /// The range in print they come from: the first its material lists, which is what the plan uses; of
    /// taps the gentlest.
    pub range: &'static SpeedRange,
    /// All in print for this work in this metal; that range first, but for reaming.
    pub in_print: Vec<&'static SpeedRange>,
    /// Slowest, after the rules.
    pub low: Velocity,
    /// Fastest, after the rules.
    pub high: Velocity,
    /// What was made of the range, in order; none where it is gone by as printed.
    pub rules: Vec<Rule>,
}

/// One thing made of a range.
#[derive(Clone, Debug, PartialEq)]
pub struct Rule {
    /// In words, inside a sentence.
    pub words: Cow<'static, str>,
    /// Where it comes from.
    pub source: Source,
}

/// The surface speeds for a work in a metal; none where no speed is in print for it.
pub(super) fn basis(material: &'static Material, work: Work, steel: ToolSteel) -> Option<Basis> {
    let mut rules = Vec::new();
    let mut rule = |words: Cow<'static, str>, source| rules.push(Rule { words, source });
    let drilling: Vec<&'static SpeedRange> = material.drilling.iter().collect();
    let (range, in_print, [slow, fast]) = match work {
        Work::Drilling => (*drilling.first()?, drilling, [1.0, 1.0]),
        Work::Tapping => {
            let in_print = material.tapping_gentlest_first();
            (*in_print.first()?, in_print, [1.0, 1.0])
        }
        Work::Reaming => {
            let found = fractions(material);
            rule(reaming_words(&found).into(), found.source);
            let printed: Vec<_> = material.reaming.iter().collect();
            let range = *drilling.first()?;
            let in_print = if printed.is_empty() { drilling } else { printed };
            (range, in_print, [found.least, found.most])
        }
        Work::Countersinking => {
            let print = countersink::MIDWAY;
            rule("the most in print: the drilling speed, at the diameter midway between the hole and the head".into(), print.source);
            rule(
                "at the bench the slowest speed that cuts clean, which stops it chattering".into(),
                countersink::SLOWEST_SOURCE,
            );
            (*drilling.first()?, drilling, [1.0, 1.0])
        }
        Work::Spotting => {
            rule(
                "as a drill of the spot’s widest diameter".into(),
                Source::common_practice("a spotting drill is run as a drill of its spot"),
            );
            (*drilling.first()?, drilling, [1.0, 1.0])
        }
    };
    if let Some(source) = steel.source() {
        rules.push(Rule { words: "half of that for carbon steel".into(), source });
    }
    let factor = steel.speed_factor();
    Some(Basis {
        range,
        in_print,
        low: range.low * (slow * factor),
        high: range.high * (fast * factor),
        rules,
    })
}

/// `0.65 to 0.67 of the drilling speed, as printed for 1006-1026 mild`
fn reaming_words(found: &Fractions) -> String {
    let [least, most] = [found.least, found.most].map(|part| print::trimmed(part, 2));
    let part = if least == most { least } else { format!("{least} to {most}") };
    format!("{part} of the drilling speed, as printed for {}; set the slow end", found.printed_as)
}
