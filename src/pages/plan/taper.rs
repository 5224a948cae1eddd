//! The plan for a taper pipe thread: the holes by the standard's list, depths by gauge length, steps.

use askama::Template;

use super::figure::Figure;
use super::form::{Form, form};
use super::note;
use super::steps::{Step, step};
use super::wanted::{Wanted, heading};
use crate::figures::Both;
use crate::key::{Key, KeyLine, Sign};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::sentence::set;
use crate::taken::TakenAs;
use crate::warnings::{Said, WarningGroup, by_level};
use crate::{Reply, Visit};
use holewright_core::calc::taper_hole;
use holewright_core::drawing::{DrawingIds, thread_profile};
use holewright_core::plan::TaperPlan;

#[derive(Template)]
#[template(path = "plan/taper.html")]
struct TaperPage {
    frame: Frame,
    heading: String,
    taken: Vec<TakenAs>,
    assumed: Vec<String>,
    /// The hole that is planned.
    hole: HoleRow,
    /// The drill at hand for it.
    drill: Option<AtHand>,
    others: Vec<HoleRow>,
    depths: Vec<Figure>,
    steps: Vec<Step>,
    head: Vec<Said>,
    warnings: Vec<WarningGroup>,
    standing_count: usize,
    drawing: String,
    thread: Link,
    material: Link,
    json: String,
    csv: String,
    /// The form of a note with what is known of this job.
    note: String,
    svg: String,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
    form: Form,
}

/// The drill at hand for the hole, and its own size.
struct AtHand {
    link: Link,
    both: Both,
    says_mm: bool,
}

/// One way to make the hole.
struct HoleRow {
    way: &'static str,
    label: String,
    both: Both,
    sign: Sign,
}

impl HoleRow {
    fn of(hole: &taper_hole::Hole, key: &mut Key) -> Self {
        Self {
            way: hole.way.words(),
            label: hole.label.clone(),
            both: Both::of(hole.diameter),
            sign: key.sign(hole.source),
        }
    }
}

/// The page of a taper thread's plan.
pub(super) fn show(visit: &Visit<'_>, asking: &Wanted<'_>, plan: &TaperPlan<'_>) -> Reply {
    let request = asking.used;
    let spec = plan.spec;
    let cautions = &plan.cautions;
    let mut key = Key::default();
    let hole = HoleRow::of(&plan.hole, &mut key);
    let heading = heading(spec);
    let title = format!("{heading}: drill {}", hole.label);
    let [by_hand, thread, drill] =
        [plan.depths.hand_tight, plan.depths.thread, plan.depths.drill].map(Both::coarse);
    let description = format!(
        "{}: drill {}, {}. The fitting goes in {} by hand.",
        hole.way, hole.label, hole.both.mm, by_hand.mm
    );
    let frame =
        Frame::at(visit.context, Section::Plan, &request.address("/plan"), &title, &description)
            .with_drawer(asking.notice());
    let page = TaperPage {
        frame,
        heading,
        taken: TakenAs::all(request.taken(), |field, value| request.address_with(field, value)),
        assumed: cautions.assumed.iter().map(|said| set(&said.text)).collect(),
        drill: plan.drill.map(|drill| AtHand {
            link: Link::drill(drill),
            both: Both::of(drill.diameter),
            says_mm: drill.is_named_in_mm(),
        }),
        others: plan.others.iter().map(|hole| HoleRow::of(hole, &mut key)).collect(),
        depths: vec![
            Figure::both("Fitting by hand, gauge length", by_hand),
            Figure::both("Thread", thread),
            Figure::both("Drill, full diameter, if blind", drill),
        ],
        // One part is planned, whatever lies on it.
        steps: plan
            .operations
            .iter()
            .map(|operation| Step { part: None, ..step(spec, operation) })
            .collect(),
        head: cautions.head.iter().map(Said::of).collect(),
        warnings: by_level(cautions.standing.iter().map(|found| (found.level, set(&found.text)))),
        standing_count: cautions.standing.len(),
        drawing: thread_profile(spec.thread, DrawingIds::new("profile")),
        thread: Link::thread(spec.thread),
        material: Link::material(spec.material),
        json: request.address("/api/v1/plan"),
        csv: request.address("/plan.csv"),
        note: note::of_taper(plan),
        svg: request.address("/plan.svg"),
        key: key.lines(),
        form: form(asking.typed, &[]).beside(asking.filled),
        hole,
    };
    Reply::html(200, &page)
}
