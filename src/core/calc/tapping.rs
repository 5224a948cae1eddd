//! Tapping drills: every drill that would do, and the one to take.
//!
//! Leaves out forming taps' holes ([`forming_hole`] gives those) and pipe tapers, which go by their
//! standard's own list.

use crate::calc::aim::{self, Aim};
use crate::calc::limits::{self, AT_A_LIMIT, LargestHole};
use crate::calc::thread_form::{self, Geometry};
use crate::calc::{Error, engagement};
use crate::tables::drills::{self, Drill};
use crate::tables::materials::{self, Group, Material};
use crate::tables::threads::{Form, Thread};
use crate::units::{Length, in_mm, mm};

/// Engagements worth listing, percent.
const LISTED: std::ops::RangeInclusive<f64> = 50.0..=90.0;
/// Engagements that can still be called a thread when the drawer holds nothing better, percent.
const USABLE: std::ops::RangeInclusive<f64> = 40.0..=100.0;
/// Two drills nearer than this to the same engagement are one choice, percent.
const DISTINCT: f64 = 2.5;
/// Distances from the aim nearer than this are a tie, percent.
const TIE: f64 = 0.05;
/// Further than this from the aim, the person is told, percent.
const FAR: f64 = 5.0;

/// A drill with the thread it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate {
    /// The drill.
    pub drill: &'static Drill,
    /// Engagement in percent of full thread depth at the drill's nominal size.
    pub engagement_percent: f64,
    /// Within the standard's largest hole; `None` where no limit is held.
    pub within_standard: Option<bool>,
    /// Below the nut's least minor diameter.
    pub below_minor: bool,
}

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
    /// The next tighter at hand.
    pub tighter: Option<Candidate>,
    /// The next easier at hand.
    pub easier: Option<Candidate>,
    /// What should be said about the choice.
    pub remarks: Vec<Remark>,
}

/// What should be said about a choice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remark {
    /// No drill at hand keeps to the standard's largest hole; the nearest above the aim was taken.
    NoneWithinStandard,
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

/// Judges one drill for a thread.
#[must_use]
pub fn judge(
    thread: &Thread,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drill: &'static Drill,
) -> Candidate {
    judge_of(thread.form(), geometry, limit, drill)
}

/// Judges one drill for a thread no table holds.
#[must_use]
pub fn judge_of(
    form: Form,
    geometry: &Geometry,
    limit: Option<LargestHole>,
    drill: &'static Drill,
) -> Candidate {
    Candidate {
        drill,
        engagement_percent: engagement::percent(form, geometry, drill.diameter),
        within_standard: limit.map(|limit| limit.admits(drill.diameter)),
        below_minor: limits::is_below_smallest(geometry, drill.diameter),
    }
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
        return Err(Error::NoDrillAtHand { hole: mm(0.0), would_do: None });
    };
    let question = Question { thread, material, thread_length: None, aim: Aim::Usual };
    choose(question, at_hand)
}

/// Chooses among the drills at hand, given smallest first.
///
/// The drill whose nominal size comes nearest the aim, of those that do not pass the standard's
/// largest hole by more than the allowance; ties go to the larger hole in tough metal.
///
/// # Source
/// Common practice, no source (the policy); the limits are the standards'.
///
/// # Errors
/// [`Error::NoEngagement`] for taper pipe threads; [`Error::NoDrillAtHand`] where nothing at hand
/// leaves a usable thread.
pub fn choose(
    question: Question<'_>,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Result<DrillChoice, Error> {
    let Question { thread, material, thread_length, aim } = question;
    check_has_engagement(thread)?;
    let geometry = thread_form::geometry(thread);
    let limit = limits::largest_hole(thread, &geometry);
    let aim_percent = aim::aim_percent(material, geometry.major, thread_length, aim);
    let most = limit.map(|limit| {
        let allowance = aim::allowance(geometry.major, aim);
        limit.diameter + allowance + AT_A_LIMIT
    });
    let prefer_larger = material.group == Group::Tough;
    let rule = Rule { aim_percent, most, prefer_larger };

    let usable = |drill: &'static Drill| {
        let candidate = judge(thread, &geometry, limit, drill);
        USABLE.contains(&candidate.engagement_percent).then_some(candidate)
    };
    let held: Vec<Candidate> = at_hand.into_iter().filter_map(usable).collect();
    let best = || rule.pick(&drills::all().iter().filter_map(usable).collect::<Vec<_>>());
    let Some(Pick { chosen, passes }) = rule.pick(&held) else {
        return Err(Error::NoDrillAtHand {
            hole: engagement::hole_for(thread.form(), &geometry, aim_percent),
            would_do: best().map(|pick| pick.chosen.drill),
        });
    };

    let mut remarks = Vec::new();
    if !passes {
        remarks.push(Remark::NoneWithinStandard);
    }
    if chosen.below_minor {
        remarks.push(Remark::BelowMinor);
    }
    let by = chosen.engagement_percent - aim_percent;
    if by.abs() > FAR {
        remarks.push(Remark::FarFromAim { by });
    }
    if let Some(best) = best().filter(|best| rule.clearly_beats(&best.chosen, &chosen)) {
        remarks.push(Remark::BetterElsewhere(best.chosen));
    }
    Ok(DrillChoice {
        aim_percent,
        largest_hole: limit,
        chosen,
        get: None,
        tighter: next_tighter(&held, chosen),
        easier: next_easier(&held, chosen),
        remarks,
    })
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

/// Chooses the drill at hand nearest a forming tap's hole. No standard limits the hole drilled
/// before forming, so `within_standard` is `None`.
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
    let off = |drill: &Drill| in_mm(drill.diameter - wanted).abs();
    let near = |drill: &&'static Drill| off(drill) < in_mm(geometry.pitch) * 0.1;
    let nearest = |drills: &mut dyn Iterator<Item = &'static Drill>| {
        drills.filter(near).min_by(|a, b| off(a).total_cmp(&off(b)))
    };
    let Some(drill) = nearest(&mut at_hand.into_iter()) else {
        let would_do = nearest(&mut drills::all().iter());
        return Err(Error::NoDrillAtHand { hole: wanted, would_do });
    };
    Ok(DrillChoice {
        aim_percent: engagement::percent(thread.form(), &geometry, wanted),
        largest_hole: None,
        chosen: judge(thread, &geometry, None, drill),
        get: None,
        tighter: None,
        easier: None,
        remarks: Vec::new(),
    })
}

/// How drills are ranked.
struct Rule {
    aim_percent: f64,
    most: Option<Length>,
    prefer_larger: bool,
}

/// The drill a rule picks.
struct Pick {
    chosen: Candidate,
    passes: bool,
}

impl Rule {
    /// The nearest to the aim that keeps to the limit; none: the nearest above the aim; none: the nearest.
    fn pick(&self, held: &[Candidate]) -> Option<Pick> {
        let sound =
            |candidate: &&Candidate| self.keeps_to_limit(candidate) && !candidate.below_minor;
        let limit_only = |candidate: &&Candidate| self.keeps_to_limit(candidate);
        let above = |candidate: &&Candidate| candidate.engagement_percent >= self.aim_percent;
        let found =
            |chosen: Option<&Candidate>, passes| chosen.map(|&chosen| Pick { chosen, passes });
        found(self.nearest(held.iter().filter(sound)), true)
            .or_else(|| found(self.nearest(held.iter().filter(limit_only)), true))
            .or_else(|| found(self.nearest(held.iter().filter(above)), false))
            .or_else(|| found(self.nearest(held.iter()), false))
    }

    fn keeps_to_limit(&self, candidate: &Candidate) -> bool {
        self.most.is_none_or(|most| candidate.drill.diameter <= most)
    }

    fn distance(&self, candidate: &Candidate) -> f64 {
        (candidate.engagement_percent - self.aim_percent).abs()
    }

    fn nearest<'c>(&self, held: impl Iterator<Item = &'c Candidate>) -> Option<&'c Candidate> {
        held.reduce(|best, next| {
            let gain = self.distance(best) - self.distance(next);
            let tie = gain.abs() <= TIE;
            let larger = next.drill.diameter > best.drill.diameter + AT_A_LIMIT;
            if (tie && larger && self.prefer_larger) || (!tie && gain > 0.0) { next } else { best }
        })
    }

    /// Better by enough to be worth buying: nearer the aim by a distinct size, or within the limit.
    fn clearly_beats(&self, best: &Candidate, chosen: &Candidate) -> bool {
        let nearer = self.distance(chosen) - self.distance(best) >= DISTINCT;
        let lawful = self.keeps_to_limit(best) && !self.keeps_to_limit(chosen);
        nearer || lawful
    }
}

/// The smallest step to more thread that is a distinct size; `held` is smallest drill first.
fn next_tighter(held: &[Candidate], chosen: Candidate) -> Option<Candidate> {
    let least = chosen.engagement_percent + DISTINCT;
    held.iter().rev().find(|candidate| candidate.engagement_percent >= least).copied()
}

/// The smallest step to less thread that is a distinct size; `held` is smallest drill first.
fn next_easier(held: &[Candidate], chosen: Candidate) -> Option<Candidate> {
    let most = chosen.engagement_percent - DISTINCT;
    held.iter().find(|candidate| candidate.engagement_percent <= most).copied()
}

fn check_has_engagement(thread: &Thread) -> Result<(), Error> {
    if engagement::applies(thread) {
        Ok(())
    } else {
        Err(Error::NoEngagement { form: thread.system.system().name })
    }
}
