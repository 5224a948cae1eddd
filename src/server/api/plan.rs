//! The hole plan: the page's query, the page's answer.

mod bearing;
mod taper;

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;
use utoipa::ToSchema;

use bearing::{Strength, TapEffort};
use taper::Taper;

use super::clearance::Hole;
use super::drills::Drill;
use super::materials::Material;
use super::problem::{Always, NotUnderstood, TooMany};
use super::setting::Setting;
use super::taken::{self, TakenAs};
use super::tapping::Candidate;
use super::threads::Thread;
use super::{figures, reply};
use crate::Error;
use holewright_core::calc::tapping::DrillChoice;
use holewright_core::plan::{self, HolePlan, Part, TaperPlan};
use holewright_pages::plan::{Request, refusal};

/// One hole: drills, depths and the steps in order.
#[derive(Debug, Serialize, ToSchema)]
struct Plan<'a> {
    /// The thread.
    thread: Thread,
    /// The material that is tapped.
    material: Material,
    /// The tapping drill and the ones next to it; null for a taper thread, which has no engagement.
    #[schema(required)]
    tapping: Option<Tapping>,
    /// The holes of a taper thread and its depths by gauge length; null for other threads.
    #[schema(required)]
    taper: Option<Taper<'a>>,
    /// The hole the chosen drill is likely to leave; null for a taper thread.
    #[schema(required)]
    likely_hole: Option<LikelyHole>,
    /// The clearance hole in the part on top; null for a taper thread.
    #[schema(required)]
    clearance: Option<Clearance>,
    /// How deep to go.
    depths: Depths,
    /// What the thread carries; null without the screw's metal and a length of thread, and on every plan
    /// that speaks of steam or pressure.
    #[schema(required)]
    strength: Option<Strength>,
    /// What a second tap takes by hand; null for other taps and for metals that have no figure in print.
    #[schema(required)]
    tap: Option<TapEffort>,
    /// What printed lists say of this thread.
    listed: Vec<Listed<'a>>,
    /// The steps, in order.
    operations: Vec<Operation<'a>>,
    /// The cautions that set this cut apart from every other, worst first; three at most.
    cautions: Vec<Caution<'a>>,
    /// The cautions that stand for every such job, worst first.
    standing_cautions: Vec<Caution<'a>>,
    /// What is to be said of the drill that was chosen.
    choice_notes: Vec<&'a str>,
    /// What was not said, and what the plan assumed.
    assumed: Vec<&'a str>,
    /// What was taken for one thing and could mean another; mostly empty.
    taken: Vec<TakenAs>,
}

/// The choice of a tapping drill.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PlanTapping)]
struct Tapping {
    /// Engagement aimed at, as a percentage of the full thread.
    aim_percent: f64,
    /// The drill to take; where `get` names one, the nearest at hand.
    chosen: Candidate,
    /// The drill to get, where none at hand will do; else null.
    #[schema(required)]
    get: Option<Candidate>,
    /// The next with more thread; null where there is none.
    #[schema(required)]
    stronger: Option<Candidate>,
    /// The next with less thread; null where there is none.
    #[schema(required)]
    easier: Option<Candidate>,
}

/// A drilled hole is larger than its drill.
#[derive(Debug, Serialize, ToSchema)]
struct LikelyHole {
    /// Its likely diameter, in millimetres.
    hole_mm: f64,
    /// Engagement in it, as a percentage of the full thread.
    engagement_percent: f64,
    /// Engagement in the hole that was measured, as a percentage; null where none was.
    #[schema(required)]
    measured_engagement_percent: Option<f64>,
}

/// The clearance hole, and how far the screw may float in it.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PlanClearance)]
struct Clearance {
    #[serde(flatten)]
    hole: Hole,
    /// What the drilled hole leaves on diameter, in millimetres; null where no drill is large enough.
    #[schema(required)]
    float_mm: Option<f64>,
}

/// How deep to go; null where it is not known or the hole goes through.
#[derive(Debug, Serialize, ToSchema)]
struct Depths {
    /// Length of full thread, in millimetres.
    #[schema(required, example = 8.0)]
    full_thread_mm: Option<f64>,
    /// Depth to the drill's full diameter, in millimetres.
    #[schema(required)]
    drill_full_diameter_mm: Option<f64>,
    /// The same in millimetres as a depth stop is set: to a tenth of one, or to 5 thou where the depth was
    /// typed in inches.
    #[schema(required)]
    stop_mm: Option<f64>,
    /// Which way the stop is rounded: `up`, to leave the thread its room; `down`, to spare the wall
    /// under the point.
    #[schema(required, pattern = "^(up|down)$")]
    stop_rounded: Option<&'static str>,
    /// Depth to the drill's point, in millimetres.
    #[schema(required)]
    drill_to_point_mm: Option<f64>,
    /// Metal left below the point, in millimetres.
    #[schema(required)]
    wall_mm: Option<f64>,
}

/// What a printed list says of this thread.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ListedDrill)]
struct Listed<'a> {
    /// The list.
    list: &'static str,
    /// The drill it names.
    label: &'static str,
    /// Engagement with that drill, as a percentage of the full thread.
    engagement_percent: f64,
    /// Why ours is another; null where it is the same.
    #[schema(required)]
    why_different: Option<&'a str>,
    /// Where it was read.
    source: String,
}

/// One step.
#[derive(Debug, Serialize, ToSchema)]
struct Operation<'a> {
    /// Its number, from 1.
    number: usize,
    /// What is done: mark-out, spot, spot-through, register, drill, separate, deburr, chamfer, tap,
    /// open-out, seat, try-screw, next-hole.
    #[schema(example = "drill")]
    action: &'static str,
    /// The part it is done to. In a one-part plan the part is lower, the tapped one.
    #[schema(pattern = "^(upper|lower|both)$", example = "lower")]
    part: &'static str,
    /// What it is done with.
    tool: &'a str,
    /// The drill; null where none is used.
    #[schema(required)]
    drill: Option<Drill>,
    /// Diameter cut, in millimetres; null where none is.
    #[schema(required)]
    diameter_mm: Option<f64>,
    /// Depth, in millimetres; null where none is given, and for hand taps, which have `tip_mm`.
    #[schema(required)]
    depth_mm: Option<f64>,
    /// The depth as a stop is set, in millimetres; null where the step has no stop.
    #[schema(required)]
    stop_mm: Option<f64>,
    /// Depth that the end of a hand tap reaches, in millimetres; beyond the far face in a through hole. Null
    /// for every other step.
    #[schema(required)]
    tip_mm: Option<f64>,
    /// Machine speed to set, in revolutions a minute; null where the spindle does not turn, or where setting
    /// says it in words.
    #[schema(required)]
    speed_rpm: Option<f64>,
    /// What to set the machine to; null where the spindle does not turn.
    #[schema(required)]
    setting: Option<Setting<'a>>,
    /// Feed, in millimetres a revolution; null where none is held.
    #[schema(required)]
    feed_mm_per_rev: Option<f64>,
    /// What to put on it; null where nothing is.
    #[schema(required)]
    lubricant: Option<&'static str>,
    /// The step in words.
    text: &'a str,
    /// Why it is done, and done here.
    why: &'a str,
    /// How the drill's lips are ground: `dubbed` or `keen`; null where the drill serves as it comes.
    #[schema(required, pattern = "^(dubbed|keen)$")]
    lips: Option<&'static str>,
    /// What to watch for in this step; two at most.
    cautions: Vec<Caution<'a>>,
}

/// What to watch for.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = PlanCaution)]
struct Caution<'a> {
    /// How much it matters: a danger can hurt a person.
    #[schema(pattern = "^(note|caution|danger)$", example = "caution")]
    level: &'static str,
    /// What to do or watch for, and why.
    text: &'a str,
}

/// One hole planned: tapping and clearance drills, depths, speeds and the steps in order.
///
/// The fields are read as people write them; what is left out takes the usual value.
///
/// # Errors
/// A field that makes no sense, or a hole that cannot be made: 422.
#[rustfmt::skip]
#[utoipa::path(
    get,
    path = "/api/v1/plan",
    operation_id = "plan",
    tag = "plan",
    params(
        ("thread" = String, Query, description = "The thread, in any usual spelling", example = "5 BA"),
        ("material" = String, Query, description = "The material that is tapped, by any name or mark", example = "gunmetal"),
        ("hole" = Option<String>, Query, description = "`through` or `blind`", example = "blind"),
        ("depth" = Option<String>, Query, description = "Length of full thread wanted, or thickness of a through hole; a bare number is mm, a fraction inches; a bare number that could be inches beside an inch thread is refused with both", example = "8 mm"),
        ("over" = Option<String>, Query, description = "Material of a part screwed down on top: makes it a two-part plan", example = "free-cutting-brass"),
        ("over_thickness" = Option<String>, Query, description = "Thickness of the part on top; a bare number is mm", example = "4 mm"),
        ("upper_hole" = Option<String>, Query, description = "How the upper part comes: `tapping` or `clearance`", example = "tapping"),
        ("fit" = Option<String>, Query, description = "Fit of the clearance hole: `close`, `medium`, `free`", example = "medium"),
        ("head" = Option<String>, Query, description = "Head of the screw, for its seat: `countersunk`, `cheese`, `hexagon`", example = "cheese"),
        ("aim" = Option<String>, Query, description = "How much thread: `strong`, `usual`, `easy`", example = "usual"),
        ("series" = Option<String>, Query, description = "Drill series at hand, separated by commas: `number`, `letter`, `fraction`, `metric`", example = "number,metric"),
        ("owned" = Option<String>, Query, description = "Drills at hand, `-` marks a range", example = "1-60, 1-6x0.1mm"),
        ("tap" = Option<String>, Query, description = "`hand`, `machine` or `forming`", example = "hand"),
        ("tap_steel" = Option<String>, Query, description = "`hss` or `carbon`", example = "hss"),
        ("finish" = Option<String>, Query, description = "The last tap run down: `taper`, `second`, `plug`", example = "plug"),
        ("hand" = Option<String>, Query, description = "`right` or `left`", example = "right"),
        ("part_thickness" = Option<String>, Query, description = "Thickness of the tapped part, for the wall under a blind hole; a bare number is mm", example = "12 mm"),
        ("measured_hole" = Option<String>, Query, description = "Diameter of the hole as measured; a bare number is mm", example = "2.74 mm"),
        ("screw" = Option<String>, Query, description = "Property class of the screw, or the metal it is turned from, for what the thread carries", example = "8.8"),
        ("centre_error" = Option<String>, Query, description = "How far a marked-out centre may be off, to see whether the clearance takes it up; a bare number is mm", example = "0.2 mm"),
        ("point_angle" = Option<String>, Query, description = "Point angle of the drill, in degrees", example = "118"),
        ("spindle_speeds" = Option<String>, Query, description = "Machine speeds, in revolutions a minute; `200-2000` for any between; several machines each with its name, `lathe: 350, 500; bench drill: 600-2000`", example = "350, 500, 1000"),
        ("spindle_max" = Option<String>, Query, description = "Fastest machine speed, in revolutions a minute", example = "2000"),
    ),
    responses(
        (status = 200, description = "The plan", body = Plan),
        NotUnderstood,
        TooMany,
        Always,
    )
)]
pub async fn show(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let request = Request::read(query.as_deref().unwrap_or_default());
    let spec = request.spec().map_err(Error::Invalid)?;
    let plan = plan::build_either(&spec)
        .map_err(|error| Error::Invalid(vec![refusal(&request, &error)]))?;
    let taken = taken::all(request.taken());
    let answer = match &plan {
        plan::Plan::Parallel(plan) => Plan::from(plan.as_ref()),
        plan::Plan::Taper(plan) => Plan::from(plan.as_ref()),
    };
    reply::json(&headers, &Plan { taken, ..answer })
}

impl<'a> From<&'a HolePlan<'_>> for Plan<'a> {
    fn from(plan: &'a HolePlan<'_>) -> Self {
        Self {
            thread: plan.spec.thread.into(),
            material: plan.spec.material.into(),
            tapping: Some(Tapping::from(&plan.tapping)),
            taper: None,
            likely_hole: Some(LikelyHole {
                hole_mm: figures::mm(plan.hole.likely),
                engagement_percent: figures::percent(plan.hole.likely_engagement_percent),
                measured_engagement_percent: plan
                    .hole
                    .measured_engagement_percent
                    .map(figures::percent),
            }),
            clearance: Some(Clearance {
                hole: Hole::new(plan.clearance.hole, plan.clearance.drill),
                float_mm: plan.clearance.float.map(figures::mm),
            }),
            depths: Depths {
                full_thread_mm: plan.depths.full_thread.map(figures::mm),
                drill_full_diameter_mm: plan.depths.drill_full_diameter.map(figures::mm),
                stop_mm: plan.depths.stop.map(figures::mm),
                stop_rounded: plan
                    .depths
                    .stop
                    .map(|_| if plan.depths.stop_is_short { "down" } else { "up" }),
                drill_to_point_mm: plan.depths.drill_to_point.map(figures::mm),
                wall_mm: plan.depths.wall.map(figures::mm),
            },
            strength: plan.strength.as_ref().map(Strength::from),
            tap: plan.effort.as_ref().map(TapEffort::from),
            listed: plan.listed.iter().map(Listed::from).collect(),
            operations: (1..).zip(&plan.operations).map(Operation::from).collect(),
            cautions: cautions(&plan.cautions.head),
            standing_cautions: cautions(&plan.cautions.standing),
            choice_notes: texts(&plan.cautions.choice),
            assumed: texts(&plan.cautions.assumed),
            taken: Vec::new(),
        }
    }
}

impl<'a> From<&'a TaperPlan<'_>> for Plan<'a> {
    fn from(plan: &'a TaperPlan<'_>) -> Self {
        Self {
            thread: plan.spec.thread.into(),
            material: plan.spec.material.into(),
            tapping: None,
            taper: Some(Taper::from(plan)),
            likely_hole: None,
            clearance: None,
            depths: Depths {
                full_thread_mm: Some(figures::mm(plan.depths.thread)),
                drill_full_diameter_mm: None,
                stop_mm: None,
                stop_rounded: None,
                drill_to_point_mm: None,
                wall_mm: None,
            },
            strength: None,
            tap: None,
            listed: Vec::new(),
            operations: (1..).zip(&plan.operations).map(Operation::from).collect(),
            cautions: cautions(&plan.cautions.head),
            standing_cautions: cautions(&plan.cautions.standing),
            choice_notes: texts(&plan.cautions.choice),
            assumed: texts(&plan.cautions.assumed),
            taken: Vec::new(),
        }
    }
}

impl From<&DrillChoice> for Tapping {
    fn from(choice: &DrillChoice) -> Self {
        Self {
            aim_percent: figures::percent(choice.aim_percent),
            chosen: Candidate::from(&choice.chosen),
            get: choice.get.as_ref().map(Candidate::from),
            stronger: choice.stronger.as_ref().map(Candidate::from),
            easier: choice.easier.as_ref().map(Candidate::from),
        }
    }
}

impl<'a> From<&'a plan::Listed> for Listed<'a> {
    fn from(listed: &'a plan::Listed) -> Self {
        Self {
            list: listed.row.list,
            label: listed.row.label,
            engagement_percent: figures::percent(listed.engagement_percent),
            why_different: listed.why_different.as_deref(),
            source: figures::source(listed.row.source),
        }
    }
}

impl<'a> From<(usize, &'a plan::Operation)> for Operation<'a> {
    fn from((number, operation): (usize, &'a plan::Operation)) -> Self {
        Self {
            number,
            action: operation.action.slug(),
            part: part(operation.part),
            tool: &operation.tool,
            drill: operation.drill.map(Drill::from),
            diameter_mm: operation.diameter.map(figures::mm),
            depth_mm: operation.depth.map(figures::mm),
            stop_mm: operation.stop.map(figures::mm),
            tip_mm: operation.tip.map(figures::mm),
            speed_rpm: operation.speed.as_ref().and_then(|set| set.speed()).map(figures::rpm),
            setting: operation.speed.as_ref().map(Setting::from),
            feed_mm_per_rev: operation.feed.map(figures::mm),
            lubricant: operation.lubricant,
            text: &operation.text,
            why: &operation.why,
            lips: operation.lips.map(plan::Lips::slug),
            cautions: cautions(&operation.cautions),
        }
    }
}

fn cautions(said: &[plan::Warning]) -> Vec<Caution<'_>> {
    said.iter().map(Caution::from).collect()
}

fn texts(said: &[plan::Warning]) -> Vec<&str> {
    said.iter().map(|said| said.text.as_ref()).collect()
}

impl<'a> From<&'a plan::Warning> for Caution<'a> {
    fn from(warning: &'a plan::Warning) -> Self {
        Self { level: warning.level.slug(), text: &warning.text }
    }
}

/// In a one-part plan the part is `lower`, the tapped one.
const fn part(part: Part) -> &'static str {
    match part {
        Part::Upper => "upper",
        Part::Lower => "lower",
        Part::Both => "both",
    }
}
