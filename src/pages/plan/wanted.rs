//! What was asked of a plan, and what the reader's drawer makes of it.

use super::request::Request;
use crate::controls::EVERY_SERIES;
use crate::drawer::{self, Filled, Notice};
use holewright_core::plan::{AtHand, Hole, HolePlan, HoleSpec, build};
use holewright_core::tables::threads::read::Hand;

/// A plan as it was asked for.
pub(super) struct Wanted<'a> {
    /// What was typed: it stands in the form.
    pub(super) typed: &'a Request,
    /// The same with what the reader's drawer filled: it is worked out, and a link to it says all.
    pub(super) used: &'a Request,
    pub(super) filled: &'a Filled<'a>,
}

impl Wanted<'_> {
    pub(super) fn notice(&self) -> Option<Notice> {
        let without = self.typed.address_with("series", EVERY_SERIES);
        Notice::of_choice(self.filled, &without, &self.used.address("/plan"))
    }

    /// What drills outside the drawer would do better in this plan.
    pub(super) fn better(&self, plan: &HolePlan<'_>) -> Vec<String> {
        if !self.filled.chooses_drills() {
            return Vec::new();
        }
        let spec = HoleSpec { at_hand: AtHand::All, ..plan.spec.clone() };
        let Ok(best) = build(&spec) else { return Vec::new() };
        let mine = &plan.tapping;
        let tapping =
            drawer::better_tapping(mine.aim_percent, &best.tapping.chosen, Some(&mine.chosen));
        let hole = plan.clearance.hole.hole;
        let clearance = drawer::better_clearance(hole, best.clearance.drill, plan.clearance.drill);
        tapping.into_iter().chain(clearance).collect()
    }

    /// Whether the tap is in the drawer, where that lists taps.
    pub(super) fn tap(&self, spec: &HoleSpec) -> Option<&'static str> {
        let taps = &self.filled.drawer()?.taps;
        (!taps.held().is_empty()).then(|| {
            if taps.has(spec.thread, spec.hand) { "in your drawer" } else { "not in your drawer" }
        })
    }
}

/// `5 BA in gunmetal, blind`
pub(super) fn heading(spec: &HoleSpec) -> String {
    let hand = if spec.hand == Hand::Left { " left hand" } else { "" };
    format!("{}{hand} in {}, {}", spec.thread.designation, spec.material.name, hole(spec.hole))
}

fn hole(hole: Hole) -> &'static str {
    match hole {
        Hole::Through => "through",
        Hole::Blind => "blind",
    }
}
