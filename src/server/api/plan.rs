//! The hole plan: the page's query, the page's answer.

use axum::extract::RawQuery;
use axum::http::HeaderMap;
use axum::response::Response;
use serde::Serialize;

use super::clearance::Hole;
use super::drills::Drill;
use super::materials::Material;
use super::tapping::Candidate;
use super::threads::Thread;
use super::{figures, reply};
use crate::calc::tapping::Choice;
use crate::pages::plan::{Request, refusal};
use crate::plan::{self, HolePlan, Part};
use crate::server::Error;

#[derive(Debug, Serialize)]
struct Plan<'a> {
    thread: Thread,
    material: Material,
    tapping: Tapping,
    likely_hole: LikelyHole,
    clearance: Clearance,
    depths: Depths,
    /// Not yet worked out.
    strength: Option<()>,
    /// Not yet worked out.
    tap: Option<()>,
    listed: Vec<Listed<'a>>,
    operations: Vec<Operation<'a>>,
    warnings: Vec<Warning<'a>>,
}

#[derive(Debug, Serialize)]
struct Tapping {
    aim_percent: f64,
    chosen: Candidate,
    tighter: Option<Candidate>,
    easier: Option<Candidate>,
}

#[derive(Debug, Serialize)]
struct LikelyHole {
    hole_mm: f64,
    engagement_percent: f64,
    measured_engagement_percent: Option<f64>,
}

#[derive(Debug, Serialize)]
struct Clearance {
    #[serde(flatten)]
    hole: Hole,
    float_mm: Option<f64>,
}

#[derive(Debug, Serialize)]
struct Depths {
    full_thread_mm: Option<f64>,
    drill_full_diameter_mm: Option<f64>,
    drill_to_point_mm: Option<f64>,
    wall_mm: Option<f64>,
}

#[derive(Debug, Serialize)]
struct Listed<'a> {
    list: &'static str,
    label: &'static str,
    engagement_percent: f64,
    why_different: Option<&'a str>,
    source: String,
}

#[derive(Debug, Serialize)]
struct Operation<'a> {
    number: usize,
    action: &'static str,
    part: &'static str,
    tool: &'a str,
    drill: Option<Drill>,
    diameter_mm: Option<f64>,
    depth_mm: Option<f64>,
    speed_rpm: Option<f64>,
    feed_mm_per_rev: Option<f64>,
    lubricant: Option<&'static str>,
    text: &'a str,
    why: &'a str,
}

#[derive(Debug, Serialize)]
struct Warning<'a> {
    level: &'static str,
    text: &'a str,
}

/// `/plan?thread=&material=&…`
///
/// # Errors
/// A field that makes no sense, or a hole that cannot be made: 422.
pub async fn show(RawQuery(query): RawQuery, headers: HeaderMap) -> Result<Response, Error> {
    let request = Request::read(query.as_deref().unwrap_or_default());
    let spec = request.spec().map_err(Error::Invalid)?;
    let plan =
        plan::build(&spec).map_err(|error| Error::Invalid(vec![refusal(&request, &error)]))?;
    reply::json(&headers, &Plan::from(&plan))
}

impl<'a> From<&'a HolePlan<'_>> for Plan<'a> {
    fn from(plan: &'a HolePlan<'_>) -> Self {
        Self {
            thread: plan.spec.thread.into(),
            material: plan.spec.material.into(),
            tapping: Tapping::from(&plan.tapping),
            likely_hole: LikelyHole {
                hole_mm: figures::mm(plan.hole.likely),
                engagement_percent: figures::percent(plan.hole.likely_engagement_percent),
                measured_engagement_percent: plan
                    .hole
                    .measured_engagement_percent
                    .map(figures::percent),
            },
            clearance: Clearance {
                hole: Hole::new(plan.clearance.hole, plan.clearance.drill),
                float_mm: plan.clearance.float.map(figures::mm),
            },
            depths: Depths {
                full_thread_mm: plan.depths.full_thread.map(figures::mm),
                drill_full_diameter_mm: plan.depths.drill_full_diameter.map(figures::mm),
                drill_to_point_mm: plan.depths.drill_to_point.map(figures::mm),
                wall_mm: plan.depths.wall.map(figures::mm),
            },
            strength: None,
            tap: None,
            listed: plan.listed.iter().map(Listed::from).collect(),
            operations: (1..).zip(&plan.operations).map(Operation::from).collect(),
            warnings: plan.warnings.iter().map(Warning::from).collect(),
        }
    }
}

impl From<&Choice> for Tapping {
    fn from(choice: &Choice) -> Self {
        Self {
            aim_percent: figures::percent(choice.aim_percent),
            chosen: Candidate::from(&choice.chosen),
            tighter: choice.tighter.as_ref().map(Candidate::from),
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
            speed_rpm: operation.speed.map(figures::rpm),
            feed_mm_per_rev: operation.feed.map(figures::mm),
            lubricant: operation.lubricant,
            text: &operation.text,
            why: &operation.why,
        }
    }
}

impl<'a> From<&'a plan::Warning> for Warning<'a> {
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
