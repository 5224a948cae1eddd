//! A tapping drill as pages show it: name, both units, engagement, inside the standard or not.

use crate::calc::Error;
use crate::calc::aim::Aim;
use crate::calc::limits::LargestHole;
use crate::calc::tapping::{Candidate, Choice, Question, choose};
use crate::tables::drills;
use crate::tables::materials::{self, Group};
use crate::tables::threads::Thread;
use crate::units::{mm, print};

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
        let says_mm = candidate.drill.label.ends_with("mm");
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
        let standard = limit.map_or("", |limit| limit.standard);
        let (shape, words) = match candidate.within_standard {
            _ if candidate.below_minor => {
                ("beyond", "below the nut’s least minor diameter: the tap cuts hard".to_owned())
            }
            Some(true) => ("within", format!("within {standard}")),
            Some(false) => ("beyond", format!("beyond {standard}")),
            None => ("no-limit", "no limit held".to_owned()),
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

/// The usual choice for a thread in a group of metals, every drill of every series at hand.
///
/// # Errors
/// As [`choose`].
pub(super) fn for_group(thread: &'static Thread, group: Group) -> Result<Choice, Error> {
    let Some(material) = materials::all().iter().find(|material| material.group == group) else {
        return Err(Error::NoDrillAtHand { hole: mm(0.0), would_do: None });
    };
    let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
    choose(question, drills::all())
}
