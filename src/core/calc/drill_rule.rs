//! How one drill is picked of those at hand: the standard first, then the likely hole, then the aim.
//!
//! # Source
//! Common practice, no source (the policy); the limits are the standards'.

use crate::calc::aim;
use crate::calc::candidate::{Candidate, DISTINCT};
use crate::units::{Length, exceeds};

/// Distances from the aim nearer than this are a tie, percent.
const TIE: f64 = 0.05;
/// A thread fuller than this is no tap's work, percent.
const TOO_FULL: f64 = 90.0;

/// What the picking turns on.
pub(super) struct Rule {
    pub(super) aim_percent: f64,
    /// The standard's largest hole with the allowance; `None` where no limit is held.
    pub(super) most: Option<Length>,
    /// The same with the allowance of an easy thread.
    pub(super) most_for_ease: Option<Length>,
    /// The engagement that the likely hole must keep.
    pub(super) least_likely_percent: f64,
    pub(super) prefer_larger: bool,
}

/// How a pick stands to the standard's largest hole.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kept {
    /// Within it and the allowance.
    Standard,
    /// Within the allowance of an easy thread, since all that keeps to the standard is too tight.
    ForEase,
    /// Beyond it: nothing at hand keeps to it.
    Not,
}

/// The drill a rule picks.
#[derive(Clone, Copy)]
pub(super) struct Pick {
    pub(super) chosen: Candidate,
    pub(super) kept: Kept,
    /// The likely hole keeps less thread than the rule asks for.
    pub(super) thin: bool,
    /// A drill nearer the aim was passed over, since its likely hole keeps too little thread.
    pub(super) held_by_likely: bool,
}

impl Pick {
    /// Whether the drill is one to take, and not only the nearest.
    pub(super) fn will_do(&self) -> bool {
        !self.thin && self.chosen.engagement_percent <= TOO_FULL
    }
}

impl Rule {
    /// Picks one of the drills that leave a usable thread, given smallest first.
    pub(super) fn pick(&self, held: &[Candidate]) -> Option<Pick> {
        let sound = some_or_all(held, |candidate| !candidate.below_minor);
        let (pool, kept) = self.of_the_standard(&sound);
        let firm = |candidate: &Candidate| {
            candidate.likely_engagement_percent >= self.least_likely_percent
        };
        let thin = !pool.iter().any(firm);
        let chosen = self.nearest(&some_or_all(&pool, firm))?;
        let held_by_likely = self.nearest(&pool).is_some_and(|nearest| nearest != chosen);
        let kept = if keeps(&chosen, self.most) { Kept::Standard } else { kept };
        Some(Pick { chosen, kept, thin, held_by_likely })
    }

    /// Those that keep to the standard; where they are all too tight, those that an easy thread may
    /// have; where none keeps to it, those at or above the aim.
    fn of_the_standard(&self, held: &[Candidate]) -> (Vec<Candidate>, Kept) {
        let within = |most: Option<Length>| -> Vec<Candidate> {
            held.iter().filter(|candidate| keeps(candidate, most)).copied().collect()
        };
        let mut kept = within(self.most);
        let mut for_ease = within(self.most_for_ease);
        for_ease.retain(|candidate| !keeps(candidate, self.most) && can_be_cut(candidate));
        if !self.prefer_larger {
            // The least step beyond the standard, and no further: only tough metal asks for more.
            for_ease.truncate(1);
        }
        let sound = kept.iter().any(can_be_cut);
        if kept.is_empty() {
            let above = |candidate: &Candidate| candidate.engagement_percent >= self.aim_percent;
            (some_or_all(held, above), Kept::Not)
        } else if sound || for_ease.is_empty() {
            (kept, Kept::Standard)
        } else {
            kept.extend(for_ease);
            (kept, Kept::ForEase)
        }
    }

    fn distance(&self, candidate: &Candidate) -> f64 {
        (candidate.engagement_percent - self.aim_percent).abs()
    }

    fn nearest(&self, held: &[Candidate]) -> Option<Candidate> {
        held.iter().copied().reduce(|best, next| {
            let gain = self.distance(&best) - self.distance(&next);
            let tie = gain.abs() <= TIE;
            let larger = exceeds(next.drill.diameter, best.drill.diameter);
            if (tie && larger && self.prefer_larger) || (!tie && gain > 0.0) { next } else { best }
        })
    }

    /// Better by enough to be worth buying: nearer the aim by a distinct size, or within the standard.
    pub(super) fn clearly_beats(&self, best: &Pick, chosen: &Pick) -> bool {
        let nearer = self.distance(&chosen.chosen) - self.distance(&best.chosen) >= DISTINCT;
        let lawful = best.kept == Kept::Standard && chosen.kept != Kept::Standard;
        nearer || lawful
    }
}

fn keeps(candidate: &Candidate, most: Option<Length>) -> bool {
    most.is_none_or(|most| !exceeds(candidate.drill.diameter, most))
}

/// Whether the thread is one to ask of a hand tap.
fn can_be_cut(candidate: &Candidate) -> bool {
    candidate.engagement_percent <= aim::MOST
}

/// Those for which something holds; where it holds for none, all.
fn some_or_all(held: &[Candidate], holds: impl Fn(&Candidate) -> bool) -> Vec<Candidate> {
    let some: Vec<Candidate> = held.iter().filter(|candidate| holds(candidate)).copied().collect();
    if some.is_empty() { held.to_vec() } else { some }
}
