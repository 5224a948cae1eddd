//! Tapping drills: every drill that would do, and the one to take.
//!
//! A forming tap's hole goes by the makers' tables ([`choose_forming`]). Leaves out pipe tapers, which go
//! by their standard's own list ([`crate::calc::taper_hole`]).

use crate::calc::aim::{self, Aim};
use crate::calc::candidate::DISTINCT;
pub use crate::calc::candidate::{Candidate, judge, judge_of, next_larger};
use crate::calc::drill_rule::{Kept, Pick, Rule};
use crate::calc::limits::{self, LargestHole};
use crate::calc::thread_form::{self, Geometry};
use crate::calc::{Error, engagement, oversize};
use crate::tables::drills::{self, Drill};
use crate::tables::materials::{self, Group, Material};
use crate::tables::source::Grade;
use crate::tables::threads::{Form, Thread};
use crate::units::{Length, falls_short, in_mm, mm, print};

/// Engagements worth listing, percent.
const LISTED: std::ops::RangeInclusive<f64> = 50.0..=90.0;
/// Engagements that can still be called a thread when the drawer holds nothing better, percent.
const USABLE: std::ops::RangeInclusive<f64> = 40.0..=100.0;
/// More thread than this is no one's to choose: it is offered by no neighbour, percent.
const STRONGEST: f64 = 85.0;
/// Further than this from the aim, the person is told, percent.
const FAR: f64 = 5.0;

/// What the choice turns on.
#[derive(Clone, Copy, Debug)]
pub struct Question<'a> {
    /// The thread.
    pub thread: &'static Thread,
    /// The metal that is tapped.
    pub material: &'a Material,
    /// Length of thread, where known.
    pub thread_length: Option<Length>,
    /// How much thread is wanted.
    pub aim: Aim,
}

/// The drill to take, and the next at hand on either side.
#[derive(Clone, Debug, PartialEq)]
pub struct DrillChoice {
    /// Engagement aimed for, percent.
    pub aim_percent: f64,
    /// The standard's largest hole.
    pub largest_hole: Option<LargestHole>,
    /// The drill to take, or the nearest where none at hand will do.
    pub chosen: Candidate,
    /// Where no drill at hand will do: the one to get.
    pub get: Option<Candidate>,
    /// The next at hand with more thread.
    pub stronger: Option<Candidate>,
    /// The next at hand with less thread.
    pub easier: Option<Candidate>,
    /// What should be said about the drill chosen.
    pub remarks: Vec<Remark>,
    /// The same of the drill to get.
    pub of_get: Vec<Remark>,
}

impl DrillChoice {
    /// What the nearest drill at hand would leave, where none will do: `The nearest at hand, 2.5 mm, would
    /// leave 47.2 %, likely about 42.5 %.`
    #[must_use]
    pub fn nearest_in_words(&self) -> String {
        let Candidate { drill, engagement_percent, likely_engagement_percent, .. } = self.chosen;
        let nearest = &drill.label;
        let leaves = print::percent(engagement_percent);
        if engagement_percent <= 0.0 {
            format!("The nearest at hand, {nearest}, is as large as the thread or larger.")
        } else if engagement_percent > *USABLE.end() {
            format!("The nearest at hand, {nearest}, is smaller than the core of the thread.")
        } else if engagement_percent > STRONGEST {
            format!(
                "The nearest at hand, {nearest}, would leave {leaves}, too much for a hand tap."
            )
        } else {
            let likely = print::percent(likely_engagement_percent);
            format!("The nearest at hand, {nearest}, would leave {leaves}, likely about {likely}.")
        }
    }

    /// Whether the drill leaves more than five points more or less thread than the aim.
    #[must_use]
    pub fn is_far_from_aim(&self) -> bool {
        let mut said = self.of_planned().iter();
        said.any(|remark| matches!(remark, Remark::FarFromAim { .. }))
    }

    /// What is said of the drill that the hole is planned with.
    fn of_planned(&self) -> &[Remark] {
        if self.get.is_some() { &self.of_get } else { &self.remarks }
    }

    /// Whether the drill passes the standard's largest hole because all that keeps to it is too tight.
    #[must_use]
    pub fn is_beyond_by_need(&self) -> bool {
        self.of_planned().contains(&Remark::BeyondForEase)
    }

    /// What the likely hole must keep, percent, where that and not the aim decides.
    #[must_use]
    pub fn least_likely_percent(&self) -> Option<f64> {
        self.of_planned().iter().find_map(|remark| match remark {
            Remark::HeldByLikely { least } => Some(*least),
            _ => None,
        })
    }

    /// The drill that the hole is planned with: the one to get, where none at hand will do.
    #[must_use]
    pub fn planned(&self) -> Candidate {
        self.get.unwrap_or(self.chosen)
    }
}

/// What should be said about a choice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remark {
    /// No drill at hand keeps to the standard's largest hole; the nearest above the aim was taken.
    NoneWithinStandard,
    /// What keeps to the standard's largest hole leaves more than 83 %, so a drill beyond it was taken.
    BeyondForEase,
    /// At the size that the drill is likely to leave, less thread than the aim asks for is left.
    LikelyThin,
    /// A larger drill comes nearer the aim, but at the size it is likely to leave too little thread is left.
    HeldByLikely {
        /// What the likely hole must keep, percent.
        least: f64,
    },
    /// More than five points from the aim.
    FarFromAim {
        /// Points above (positive) or below the aim.
        by: f64,
    },
    /// Below the nut's least minor diameter: the tap will cut hard or jam.
    BelowMinor,
    /// A drill not at hand comes nearer the aim.
    BetterElsewhere(Candidate),
}

/// Every drill of every series between 50 % and 90 % engagement, largest engagement first.
///
/// # Errors
/// [`Error::NoEngagement`] for taper pipe threads.
pub fn candidates(thread: &Thread) -> Result<Vec<Candidate>, Error> {
    check_has_engagement(thread)?;
    let geometry = thread_form::geometry(thread);
    let limit = limits::largest_hole(thread, &geometry);
    Ok(candidates_of(thread.form(), &geometry, limit, drills::all()))
}

/// Of the drills at hand, given smallest first, those between 50 % and 90 % engagement in a thread of
/// any form, diameter and pitch; largest engagement first.
///
/// # Examples
/// A 2.5 mm drill leaves M3 × 0.5 77 % of ¾ H.
/// ```
/// use holewright_core::calc::{tapping::candidates_of, thread_form::geometry_of};
/// use holewright_core::tables::{drills::{Series, find}, threads::Form};
/// use holewright_core::units::{Pitch, mm, print};
/// let m3 = geometry_of(Form::IsoMetric, mm(3.0), Pitch::Mm(0.5));
/// let found = candidates_of(Form::IsoMetric, &m3, None, find(Series::Metric, "2.5"));
/// assert_eq!(print::percent(found[0].engagement_percent), "77.0 %");
/// ```
#[must_use]
pub fn candidates_of(
    form: Form,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Vec<Candidate> {
    at_hand
        .into_iter()
        .map(|drill| judge_of(form, geometry, limit, drill))
        .filter(|candidate| LISTED.contains(&candidate.engagement_percent))
        .collect()
}

/// The usual choice for a thread in a group of metals, every drill of every series at hand.
///
/// # Errors
/// As [`choose`].
pub fn usual(thread: &'static Thread, group: Group) -> Result<DrillChoice, Error> {
    usual_of(thread, group, drills::all())
}

/// The usual choice for a thread in a group of metals among the drills at hand, given smallest first.
///
/// # Errors
/// As [`choose`].
pub fn usual_of(
    thread: &'static Thread,
    group: Group,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Result<DrillChoice, Error> {
    let Some(material) = materials::all().iter().find(|material| material.group == group) else {
        return Err(Error::NoDrillAtHand { hole: mm(0.0), would_do: None, leaves_percent: None });
    };
    let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
    choose(question, at_hand)
}

/// Chooses among the drills at hand, given smallest first.
///
/// The standard first: of what leaves 40 to 100 % and no less than the nut's least minor diameter, the
/// drills within the standard's largest hole and its allowance; of these, those whose likely hole keeps
/// enough thread; of these, the one whose nominal size comes nearest the aim. Ties go to the larger hole
/// in tough metal. Where no drill at hand will do, `get` says which would.
///
/// # Source
/// Common practice, no source (the policy); the limits are the standards'.
///
/// # Errors
/// [`Error::NoEngagement`] for taper pipe threads; [`Error::NoDrillAtHand`] where nothing at hand
/// leaves a usable thread.
///
/// # Examples
/// 2 BA in bright mild steel, 6 mm deep, keeps to BS 93: 4.0 mm, 72 %.
/// ```
/// use holewright_core::calc::{aim::Aim, tapping::{Question, choose}};
/// use holewright_core::tables::{drills, materials, threads};
/// use holewright_core::units::{mm, print};
/// let question = Question {
///     thread: threads::find("ba", "2").unwrap(),
///     material: materials::find("bright-mild-steel").unwrap(),
///     thread_length: Some(mm(6.0)),
///     aim: Aim::Usual,
/// };
/// let chosen = choose(question, drills::in_series(drills::Series::Metric).iter().copied()).unwrap().chosen;
/// assert_eq!((chosen.drill.label.as_str(), print::percent(chosen.engagement_percent).as_str()), ("4 mm", "72.0 %"));
/// ```
pub fn choose(
    question: Question<'_>,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Result<DrillChoice, Error> {
    let Question { thread, material, thread_length, aim } = question;
    check_has_engagement(thread)?;
    let geometry = thread_form::geometry(thread);
    let limit = limits::largest_hole(thread, &geometry);
    let aim_percent = aim::aim_percent(material, geometry.major, thread_length, aim);
    let most = |aim| {
        let allowance = aim::allowance(geometry.major, aim, material.group);
        limit.map(|limit| limit.diameter + allowance)
    };
    let rule = Rule {
        aim_percent,
        most: most(aim),
        most_for_ease: most(Aim::Easy),
        least_likely_percent: aim::least_likely_percent(aim),
        prefer_larger: material.group == Group::Tough,
    };
    let usable = |drill: &'static Drill| {
        let percent = engagement::percent(thread.form(), &geometry, drill.diameter);
        USABLE.contains(&percent).then(|| judge(thread, &geometry, limit, drill))
    };
    let held: Vec<Candidate> = at_hand.into_iter().filter_map(usable).collect();
    let best = rule.pick(&drills::all().iter().filter_map(usable).collect::<Vec<_>>());
    let Some(pick) = rule.pick(&held) else {
        return Err(Error::NoDrillAtHand {
            hole: engagement::hole_for(thread.form(), &geometry, aim_percent),
            would_do: best.map(|pick| pick.chosen.drill),
            leaves_percent: best.map(|pick| pick.chosen.engagement_percent),
        });
    };
    let get = best.filter(|best| best.will_do() && !pick.will_do()).map(|best| best.chosen);
    let better = best
        .filter(|best| get.is_none() && rule.clearly_beats(best, &pick))
        .map(|best| best.chosen);
    Ok(DrillChoice {
        aim_percent,
        largest_hole: limit,
        chosen: pick.chosen,
        get,
        // Beside a drill to get, those at hand are no choice: none of them will do.
        stronger: next_stronger(&held, pick.chosen).filter(|_| get.is_none()),
        easier: next_easier(&held, pick.chosen).filter(|_| get.is_none()),
        remarks: remarks(&rule, &pick, better),
        of_get: get.and(best).map_or_else(Vec::new, |best| remarks(&rule, &best, None)),
    })
}

/// As [`choose`], but where nothing at hand leaves a usable thread the nearest is named beside the drill
/// to get.
///
/// # Errors
/// As [`choose`], and [`Error::NoDrillAtHand`] only where nothing is at hand or no drill there is would do.
pub fn choose_or_get(
    question: Question<'_>,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Result<DrillChoice, Error> {
    let at_hand: Vec<&'static Drill> = at_hand.into_iter().collect();
    let refused = match choose(question, at_hand.iter().copied()) {
        Err(refused @ Error::NoDrillAtHand { .. }) => refused,
        answered => return answered,
    };
    let Ok(best) = choose(question, drills::all()) else { return Err(refused) };
    let wanted = best.chosen.drill.diameter;
    let off = |drill: &Drill| in_mm(drill.diameter - wanted).abs();
    let Some(nearest) = at_hand.into_iter().min_by(|a, b| off(a).total_cmp(&off(b))) else {
        return Err(refused);
    };
    let geometry = thread_form::geometry(question.thread);
    Ok(DrillChoice {
        chosen: judge(question.thread, &geometry, best.largest_hole, nearest),
        get: Some(best.chosen),
        stronger: None,
        easier: None,
        remarks: Vec::new(),
        of_get: best.remarks,
        ..best
    })
}

fn remarks(rule: &Rule, pick: &Pick, better: Option<Candidate>) -> Vec<Remark> {
    let by = pick.chosen.engagement_percent - rule.aim_percent;
    let kept = match pick.kept {
        Kept::Standard => None,
        Kept::ForEase => Some(Remark::BeyondForEase),
        Kept::Not => Some(Remark::NoneWithinStandard),
    };
    let said = [
        kept,
        pick.chosen.below_minor.then_some(Remark::BelowMinor),
        pick.thin.then_some(Remark::LikelyThin),
        pick.held_by_likely.then_some(Remark::HeldByLikely { least: rule.least_likely_percent }),
        (by.abs() > FAR).then_some(Remark::FarFromAim { by }),
        better.map(Remark::BetterElsewhere),
    ];
    said.into_iter().flatten().collect()
}

/// Engagement a forming tap is usually drilled for, percent as the makers' rows print it.
const FORMING_PERCENT: f64 = 65.0;

/// The hole for a forming tap, which displaces its thread and needs a larger one.
///
/// `percent` of full thread as the makers' rows print it: hole = D − 0.0068 · p · percent.
///
/// # Source
/// Makers' form tap tables, reproduced row by row in the published checks.
#[must_use]
pub fn forming_hole(geometry: &Geometry, percent: f64) -> Length {
    geometry.major - geometry.pitch * (0.0068 * percent)
}

/// The thread that a forming tap makes of a hole, percent as the makers' rows print it: what
/// [`forming_hole`] turns round.
#[must_use]
pub fn formed_percent(geometry: &Geometry, hole: Length) -> f64 {
    ((geometry.major - hole) / (geometry.pitch * 0.0068)).value
}

/// What the percentage of a forming tap is of, in words.
pub const FORMED_BASIS: &str = "as tap makers print it for forming taps, (D − hole) / 0.0068 p";

/// The thread that the makers' tables drill for, the most and the least, percent as they print it.
const FORMING_RANGE: (f64, f64) = (75.0, 55.0);

/// The hole for a forming tap at its largest, by the makers' tables.
fn largest_forming_hole(geometry: &Geometry) -> LargestHole {
    let (_, least) = FORMING_RANGE;
    LargestHole {
        diameter: forming_hole(geometry, least),
        standard: "the tap makers' tables",
        grade: Grade::Published,
    }
}

/// Chooses the drill at hand nearest a forming tap's hole.
///
/// Its limits are those of the makers' tables, 75 to 55 % as they print it: the standard's largest hole
/// is measured after the metal has flowed in. Its percentages are the makers' too.
///
/// # Errors
/// As [`choose`].
pub fn choose_forming(
    question: Question<'_>,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Result<DrillChoice, Error> {
    let thread = question.thread;
    check_has_engagement(thread)?;
    let geometry = thread_form::geometry(thread);
    let wanted = forming_hole(&geometry, FORMING_PERCENT);
    let limit = largest_forming_hole(&geometry);
    let smallest = forming_hole(&geometry, FORMING_RANGE.0);
    let off = |drill: &Drill| in_mm(drill.diameter - wanted).abs();
    let near = |drill: &&'static Drill| off(drill) < in_mm(geometry.pitch) * 0.1;
    let nearest = |drills: &mut dyn Iterator<Item = &'static Drill>| {
        drills.filter(near).min_by(|a, b| off(a).total_cmp(&off(b)))
    };
    let Some(drill) = nearest(&mut at_hand.into_iter()) else {
        let would_do = nearest(&mut drills::all().iter());
        return Err(Error::NoDrillAtHand { hole: wanted, would_do, leaves_percent: None });
    };
    let chosen = Candidate {
        engagement_percent: formed_percent(&geometry, drill.diameter),
        likely_engagement_percent: formed_percent(&geometry, oversize::likely(drill.diameter).mean),
        below_minor: falls_short(drill.diameter, smallest),
        ..judge(thread, &geometry, Some(limit), drill)
    };
    let said = [
        chosen.below_minor.then_some(Remark::BelowMinor),
        (chosen.likely_engagement_percent < FORMING_RANGE.1).then_some(Remark::LikelyThin),
    ];
    Ok(DrillChoice {
        aim_percent: FORMING_PERCENT,
        largest_hole: Some(limit),
        chosen,
        get: None,
        stronger: None,
        easier: None,
        remarks: said.into_iter().flatten().collect(),
        of_get: Vec::new(),
    })
}

/// The smallest step to more thread that is a distinct size and one to tap; `held` is smallest drill first.
fn next_stronger(held: &[Candidate], chosen: Candidate) -> Option<Candidate> {
    let offered = chosen.engagement_percent + DISTINCT..=STRONGEST;
    let is_offered = |candidate: &&Candidate| {
        offered.contains(&candidate.engagement_percent) && !candidate.below_minor
    };
    held.iter().rev().find(is_offered).copied()
}

/// The smallest step to less thread that is a distinct size and still a thread at its likely hole; `held`
/// is smallest drill first.
fn next_easier(held: &[Candidate], chosen: Candidate) -> Option<Candidate> {
    let most = chosen.engagement_percent - DISTINCT;
    let least_likely = aim::least_likely_percent(Aim::Easy);
    let is_offered = |candidate: &&Candidate| {
        candidate.engagement_percent <= most && candidate.likely_engagement_percent >= least_likely
    };
    held.iter().find(is_offered).copied()
}

fn check_has_engagement(thread: &Thread) -> Result<(), Error> {
    if engagement::applies(thread) {
        Ok(())
    } else {
        Err(Error::NoEngagement { form: thread.system.system().name })
    }
}
