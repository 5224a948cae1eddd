//! Building a plan from what is asked.

use super::drilling;
use super::order;
use super::question::Steps;
use super::{
    Cautions, Clearance, Error, HolePlan, HoleSize, HoleSpec, Listed, Tap, bearing, cautions,
    depths,
};
use crate::calc::depth::LONGEST_DIAMETERS;
use crate::calc::tapping::{self, DrillChoice, Question, Remark};
use crate::calc::thread_form::{self, Geometry};
use crate::calc::{self, clearance, engagement, oversize};
use crate::tables::lists;
use crate::tables::materials::FormingTap;
use crate::units::{Length, in_mm, print};

/// The whole plan for one hole.
///
/// # Errors
/// [`Error`] says what stands in the way and what would be possible.
///
/// # Examples
/// ```
/// use holewright_core::{plan::{HoleSpec, build}, tables::{materials, threads}};
/// let spec = HoleSpec::new(threads::find("ba", "5").unwrap(), materials::find("gunmetal").unwrap());
/// assert_eq!(build(&spec).unwrap().operations.first().unwrap().action.slug(), "mark-out");
/// ```
pub fn build(spec: &HoleSpec) -> Result<HolePlan<'_>, Error> {
    let metals = [Some(spec.material), spec.over.map(|over| over.material)];
    if let Some(material) = metals.into_iter().flatten().find(|metal| metal.refused.is_some()) {
        return Err(Error::Refused { material });
    }
    let geometry = thread_form::geometry(spec.thread);
    check_lengths(spec, &geometry)?;
    let tapping = choose(spec, &geometry)?;
    let drill = tapping.planned().drill;
    let clearance = clearance(spec, &geometry);
    let depths = depths::depths(spec, &geometry, drill.diameter)?;
    let operations = order::operations(&Steps {
        spec: &drilling::on_one_machine(spec, drill),
        geometry: &geometry,
        tapping: drill,
        clearance: &clearance,
        depths: &depths,
    });
    let tapped = spec.measured_hole.unwrap_or(drill.diameter);
    let easier = tapping.easier.map(|candidate| candidate.drill);
    let mut plan = HolePlan {
        spec,
        effort: bearing::tap_effort(spec, &geometry, tapped, easier),
        strength: bearing::strength(spec, &geometry, tapped, depths.full_thread),
        geometry,
        hole: hole_size(spec, &geometry, drill.diameter),
        listed: listed(spec, &geometry, &tapping),
        tapping,
        clearance,
        depths,
        operations,
        cautions: Cautions::default(),
    };
    cautions::place(&mut plan);
    Ok(plan)
}

fn check_lengths(spec: &HoleSpec, geometry: &Geometry) -> Result<(), Error> {
    let least = geometry.pitch;
    let most = geometry.major * LONGEST_DIAMETERS;
    let over = spec.over.and_then(|over| over.thickness);
    for (quantity, length) in [("depth", spec.depth), ("thickness of the upper part", over)] {
        if let Some(given) = length.filter(|length| *length < least || *length > most) {
            return Err(calc::Error::OutOfRange { quantity, given, least, most }.into());
        }
    }
    match spec.measured_hole {
        Some(hole) if hole >= geometry.major => {
            Err(Error::NothingLeft { hole, thread: spec.thread, major: geometry.major })
        }
        _ => Ok(()),
    }
}

fn choose(spec: &HoleSpec, geometry: &Geometry) -> Result<DrillChoice, Error> {
    let question = Question {
        thread: spec.thread,
        material: spec.material,
        thread_length: depths::thread_length(spec, geometry),
        aim: spec.aim,
    };
    if spec.tap != Tap::Forming {
        return Ok(tapping::choose_or_get(question, spec.at_hand.drills())?);
    }
    if !spec.thread.form().shape().forming_taps {
        return Err(Error::FormingNeedsSixtyDegrees { thread: spec.thread });
    }
    if spec.material.forming_tap == FormingTap::Refuse {
        return Err(Error::FormingNeedsDuctile { material: spec.material });
    }
    Ok(tapping::choose_forming(question, spec.at_hand.drills())?)
}

fn hole_size(spec: &HoleSpec, geometry: &Geometry, drill: Length) -> HoleSize {
    let likely = oversize::likely(drill).mean;
    let percent = |hole| match spec.tap {
        Tap::Forming => tapping::formed_percent(geometry, hole),
        Tap::Hand | Tap::Machine => engagement::percent(spec.thread.form(), geometry, hole),
    };
    HoleSize {
        likely,
        likely_engagement_percent: percent(likely),
        measured_engagement_percent: spec.measured_hole.map(percent),
    }
}

fn clearance(spec: &HoleSpec, geometry: &Geometry) -> Clearance {
    let hole = clearance::hole(spec.thread, geometry.major, spec.fit);
    let drill = clearance::drill_for(hole.hole, spec.at_hand.drills());
    let float = drill.map(|drill| clearance::float(drill.diameter, geometry.major));
    Clearance { hole, drill, float }
}

/// The published lists' drills beside ours, each with one line of why ours differs.
fn listed(spec: &HoleSpec, geometry: &Geometry, choice: &DrillChoice) -> Vec<Listed> {
    lists::for_thread(spec.thread)
        .map(|row| {
            let hole = row.drill.length();
            let engagement_percent = engagement::percent(spec.thread.form(), geometry, hole);
            let same = in_mm(hole - choice.planned().drill.diameter).abs() < 0.02;
            let why_different = (!same).then(|| why_different(spec, choice));
            Listed { row, engagement_percent, why_different }
        })
        .collect()
}

fn why_different(spec: &HoleSpec, choice: &DrillChoice) -> String {
    if spec.tap == Tap::Forming {
        return "The list is for cutting taps; a forming tap wants a larger hole.".to_owned();
    }
    let taken = print::fixed(choice.planned().engagement_percent, 0);
    if choice.remarks.iter().any(|remark| matches!(remark, Remark::BetterElsewhere(_))) {
        let drill = &choice.planned().drill.label;
        return format!("The drills at hand decide here: {drill} leaves about {taken} %.");
    }
    let decides = match (choice.is_beyond_by_need(), choice.least_likely_percent()) {
        (true, _) => "what a hand tap can cut decides".to_owned(),
        (_, Some(least)) => {
            format!("a hole that is likely to keep {} % decides", print::fixed(least, 0))
        }
        _ if choice.is_far_from_aim() => "the largest hole of the standard decides".to_owned(),
        _ => {
            let material = spec.material.name;
            return format!(
                "A list has one size for all; here {material} is taken to about {taken} %."
            );
        }
    };
    format!("A list has one size for all; here {decides}, at about {taken} %.")
}
