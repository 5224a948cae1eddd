//! A tapping drill as pages show it: name, both units, engagement, inside the standard or not.

use holewright_core::calc::limits::LargestHole;
use holewright_core::calc::tapping::Candidate;
use holewright_core::tables::materials::Group;
use holewright_core::units::print;

use super::figures::Both;
use super::link::Link;

/// A tapping drill as pages show it.
#[derive(Clone, Debug)]
pub(super) struct ShownDrill {
    pub(super) link: Link,
    /// The size, unless the drill's name says it already.
    pub(super) mm: Option<String>,
    pub(super) inch: Option<String>,
    /// `69.9 %`
    pub(super) engagement: String,
    pub(super) verdict: Verdict,
}

/// Whether a drill keeps to the standard's largest hole.
#[derive(Clone, Debug)]
pub(super) struct Verdict {
    /// The shape beside the words: a tick, a triangle, a dash.
    pub(super) shape: &'static str,
    pub(super) words: String,
}

impl ShownDrill {
    /// A candidate, judged against this limit.
    pub(super) fn of(candidate: &Candidate, limit: Option<LargestHole>) -> Self {
        let both = Both::of(candidate.drill.diameter);
        let says_mm = candidate.drill.is_named_in_mm();
        Self {
            link: Link::drill(candidate.drill),
            mm: (!says_mm).then_some(both.mm),
            inch: Some(both.inch),
            engagement: print::percent(candidate.engagement_percent),
            verdict: Verdict::of(candidate, limit),
        }
    }
}

impl Verdict {
    /// The verdict on a candidate.
    pub(super) fn of(candidate: &Candidate, limit: Option<LargestHole>) -> Self {
        let standard = limit.map(|limit| limit.named()).unwrap_or_default();
        Self::new(candidate.within_standard, candidate.below_minor, &standard)
    }

    /// In one word, for a column whose caption names the standard.
    pub(super) fn short(&self) -> &'static str {
        match self.shape {
            "within" => "within",
            "beyond" => "beyond",
            _ => "no limit",
        }
    }

    /// The verdict on a hole of any size.
    pub(super) fn new(within_standard: Option<bool>, below_minor: bool, standard: &str) -> Self {
        let (shape, words) = match within_standard {
            _ if below_minor => {
                ("beyond", "below the nut’s least minor diameter: the tap cuts hard".to_owned())
            }
            Some(true) => ("within", format!("within {standard}")),
            Some(false) => ("beyond", format!("beyond {standard}")),
            None => ("no-limit", "no standard limit".to_owned()),
        };
        Self { shape, words }
    }
}

/// Every group of metals, in the order of the aim table.
pub(super) const GROUPS: [Group; 5] = [
    Group::EasyCutting,
    Group::IronAndGunmetal,
    Group::FreeCuttingSteel,
    Group::MildSteelAndPhosphorBronze,
    Group::Tough,
];
