//! What stands beside the answer in a line: the next drills either way, and clearance.

use crate::candidate::ShownDrill;
use crate::link::Link;
use holewright_core::calc::tapping::Candidate;
use holewright_core::plan::HolePlan;

/// One of them.
pub(super) struct Beside {
    pub(super) name: String,
    /// The drill; none where none at hand will do.
    pub(super) link: Option<Link>,
    /// `77.7 %`, `float 0.2 mm`
    pub(super) figure: String,
    pub(super) verdict: Option<Short>,
}

/// Whether a drill keeps to the standard's largest hole, in a word.
pub(super) struct Short {
    pub(super) shape: &'static str,
    pub(super) words: &'static str,
}

/// All of them.
pub(super) fn beside(plan: &HolePlan<'_>) -> Vec<Beside> {
    let choice = &plan.tapping;
    let next = |name: &str, candidate: &Candidate| {
        let shown = ShownDrill::of(candidate, choice.largest_hole);
        let words = match (candidate.below_minor, candidate.within_standard) {
            (true, _) => "too small",
            (false, Some(true)) => "within",
            (false, Some(false)) => "beyond",
            (false, None) => "no standard",
        };
        Beside {
            name: name.to_owned(),
            link: Some(shown.link),
            figure: shown.engagement,
            verdict: Some(Short { shape: shown.verdict.shape, words }),
        }
    };
    let stronger = choice.stronger.as_ref().map(|candidate| next("Stronger", candidate));
    let easier = choice.easier.as_ref().map(|candidate| next("Easier", candidate));
    stronger.into_iter().chain(easier).chain([clearance(plan)]).collect()
}

fn clearance(plan: &HolePlan<'_>) -> Beside {
    let figure = match plan.clearance.float {
        Some(_) => format!("{} fit", plan.spec.fit),
        None => "no drill at hand".to_owned(),
    };
    Beside {
        name: "Clearance".to_owned(),
        link: plan.clearance.drill.map(Link::drill),
        figure,
        verdict: None,
    }
}
