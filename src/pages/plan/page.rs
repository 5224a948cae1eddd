//! `/plan`: the form, the plan under it, or what stands in the way.

use askama::Template;

use super::depths::depths;
use super::form::{Form, form};
use super::request::Request;
use super::steps::{Figure, Step, step};
use super::trouble::refusal;
use crate::candidate::ShownDrill;
use crate::cited::{self, Cited};
use crate::controls::EVERY_SERIES;
use crate::drawer::{self, Filled, Notice};
use crate::figures::Both;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::taken::TakenAs;
use crate::warnings::{WarningGroup, by_level};
use crate::{FieldError, Reply, Visit};
use holewright_core::calc::thread_form::engagement_basis_of;
use holewright_core::drawing::{DrawingIds, hole_section};
use holewright_core::plan::{AtHand, Hole, HolePlan, HoleSpec, build};
use holewright_core::tables::threads::Basis;
use holewright_core::tables::threads::read::{self, Hand};
use holewright_core::units::print;

#[derive(Template)]
#[template(path = "plan/form.html")]
struct FormPage {
    frame: Frame,
    errors: Vec<FieldError>,
    /// The thread's own page, where a thread was understood.
    thread: Option<Link>,
    form: Form,
}

/// A plan, the form that made it, or the errors in it.
pub(crate) fn show(visit: &Visit<'_>) -> Reply {
    let request = Request::of(visit.query.clone());
    if !visit.query.was_sent("thread") {
        return ask(visit, &request);
    }
    let filled = drawer::filled(visit, &drawer::PLAN);
    let used = Request::of(filled.query.clone());
    let asked = Wanted { typed: &request, used: &used, filled: &filled };
    let spec = match used.spec() {
        Ok(spec) => spec,
        Err(errors) => return refuse(visit, &asked, errors),
    };
    match build(&spec) {
        Ok(plan) => Reply::html(200, &page(visit, &asked, &plan)),
        Err(error) => refuse(visit, &asked, vec![refusal(&used, &error)]),
    }
}

/// A plan as it was asked for.
struct Wanted<'a> {
    /// What was typed: it stands in the form.
    typed: &'a Request,
    /// The same with what the reader's drawer filled: it is worked out, and a link to it says all.
    used: &'a Request,
    filled: &'a Filled<'a>,
}

impl Wanted<'_> {
    fn notice(&self) -> Option<Notice> {
        let without = self.typed.address_with("series", EVERY_SERIES);
        Notice::of_choice(self.filled, &without, &self.used.address("/plan"))
    }

    /// What drills outside the drawer would do better in this plan.
    fn better(&self, plan: &HolePlan<'_>) -> Vec<String> {
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
    fn tap(&self, spec: &HoleSpec) -> Option<&'static str> {
        let taps = &self.filled.drawer()?.taps;
        (!taps.held().is_empty()).then(|| {
            if taps.has(spec.thread, spec.hand) { "in your drawer" } else { "not in your drawer" }
        })
    }
}

fn ask(visit: &Visit<'_>, request: &Request) -> Reply {
    let description =
        "Say the thread, the metal and how deep: drill, depths and every step in order.";
    let frame = Frame::new(visit, Section::Plan, "Plan a hole", description);
    Reply::html(
        200,
        &FormPage { frame, errors: Vec::new(), thread: None, form: form(request, &[]) },
    )
}

fn refuse(visit: &Visit<'_>, asked: &Wanted<'_>, errors: Vec<FieldError>) -> Reply {
    let request = asked.typed;
    let description = "Something in the plan could not be used; everything typed is kept.";
    let frame = Frame::new(visit, Section::Plan, "Error: plan a hole", description)
        .of_a_mistake()
        .with_drawer(asked.notice());
    let form = form(request, &errors);
    let thread = read::as_meant(request.typed("thread")).ok();
    let thread = thread.map(|read| Link::thread(read.thread));
    Reply::html(422, &FormPage { frame, errors, thread, form })
}

#[derive(Template)]
#[template(path = "plan/show.html")]
struct PlanPage {
    frame: Frame,
    heading: String,
    /// What was asked beyond the heading: depth, upper part.
    asked: String,
    taken: Vec<TakenAs>,
    thread: Link,
    material: Link,
    drill: ShownDrill,
    aim: String,
    basis: Basis,
    tighter: Option<ShownDrill>,
    easier: Option<ShownDrill>,
    likely: Both,
    likely_engagement: String,
    measured_engagement: Option<String>,
    clearance: Clearance,
    /// Whether the tap is in the reader's drawer.
    tap: Option<&'static str>,
    depths: Vec<Figure>,
    listed: Vec<Listed>,
    steps: Vec<Step>,
    warnings: Vec<WarningGroup>,
    drawing: String,
    json: String,
    csv: String,
    svg: String,
    form: Form,
}

struct Clearance {
    fit: String,
    hole: Both,
    basis: String,
    drill: Option<Link>,
    drill_size: Option<Both>,
    float: Option<Both>,
}

struct Listed {
    list: String,
    label: &'static str,
    engagement: String,
    why_different: Option<String>,
}

fn page(visit: &Visit<'_>, asking: &Wanted<'_>, plan: &HolePlan<'_>) -> PlanPage {
    let request = asking.used;
    let spec = plan.spec;
    let choice = &plan.tapping;
    let limit = choice.largest_hole;
    let drill = ShownDrill::of(&choice.chosen, limit);
    let heading = heading(spec);
    let title = format!("{heading}: {}, {}", drill.link.words, drill.engagement);
    let description = description(plan, &drill);
    let frame =
        Frame::at(visit.context, Section::Plan, &request.address("/plan"), &title, &description)
            .with_drawer(asking.notice().map(|notice| notice.saying(asking.better(plan))));
    let percent = |value: f64| print::percent(value);
    PlanPage {
        frame,
        heading,
        asked: asked(spec),
        taken: TakenAs::all(request.taken(), |field, value| request.address_with(field, value)),
        thread: Link::thread(spec.thread),
        material: Link::material(spec.material),
        aim: percent(choice.aim_percent),
        basis: engagement_basis_of(spec.thread),
        tighter: choice.tighter.map(|candidate| ShownDrill::of(&candidate, limit)),
        easier: choice.easier.map(|candidate| ShownDrill::of(&candidate, limit)),
        likely: Both::of(plan.hole.likely),
        likely_engagement: percent(plan.hole.likely_engagement_percent),
        measured_engagement: plan.hole.measured_engagement_percent.map(percent),
        clearance: Clearance {
            fit: spec.fit.to_string(),
            hole: Both::of(plan.clearance.hole.hole),
            basis: plan.clearance.hole.basis.to_string(),
            drill: plan.clearance.drill.map(Link::drill),
            drill_size: plan.clearance.drill.map(|drill| Both::of(drill.diameter)),
            float: plan.clearance.float.map(Both::coarse),
        },
        tap: asking.tap(spec),
        depths: depths(spec.hole, &plan.depths),
        listed: plan
            .listed
            .iter()
            .map(|listed| Listed {
                list: cited::list(listed.row),
                label: listed.row.label,
                engagement: percent(listed.engagement_percent),
                why_different: listed.why_different.clone(),
            })
            .collect(),
        steps: plan.operations.iter().map(|operation| step(spec, operation)).collect(),
        warnings: by_level(
            plan.warnings.iter().map(|found| (found.level, Cited::bare(&found.text))),
        ),
        drawing: hole_section(plan, DrawingIds::new("section")),
        json: request.address("/api/v1/plan"),
        csv: request.address("/plan.csv"),
        svg: request.address("/plan.svg"),
        form: form(asking.typed, &[]).beside(asking.filled),
        drill,
    }
}

/// `5 BA in gunmetal, blind`
fn heading(spec: &HoleSpec) -> String {
    let hand = if spec.hand == Hand::Left { " left hand" } else { "" };
    format!("{}{hand} in {}, {}", spec.thread.designation, spec.material.name, hole(spec.hole))
}

fn hole(hole: Hole) -> &'static str {
    match hole {
        Hole::Through => "through",
        Hole::Blind => "blind",
    }
}

/// `8 mm of full thread, under a free-cutting brass part 4 mm thick`
fn asked(spec: &HoleSpec) -> String {
    let depth = spec.depth.map(|depth| {
        let depth = print::mm(depth, 2);
        match spec.hole {
            Hole::Through => format!("{depth} thick"),
            Hole::Blind => format!("{depth} of full thread"),
        }
    });
    let over = spec.over.map(|over| {
        let thick = over
            .thickness
            .map_or_else(String::new, |thickness| format!(", {} thick", print::mm(thickness, 2)));
        format!("under a part of {}{thick}", over.material.name)
    });
    depth.into_iter().chain(over).collect::<Vec<_>>().join(", ")
}

/// One or two sentences with the figures, for a preview where the link is pasted.
fn description(plan: &HolePlan<'_>, drill: &ShownDrill) -> String {
    let mut sentences = vec![format!(
        "Tapping size {}, {} {}.",
        drill.link.words,
        drill.engagement,
        engagement_basis_of(plan.spec.thread)
    )];
    if let Some(depth) = plan.depths.drill_full_diameter.filter(|_| plan.spec.hole == Hole::Blind) {
        sentences.push(format!("Drill {} deep at full diameter.", print::mm(depth, 2)));
    }
    if let Some(clearance) = plan.clearance.drill {
        sentences.push(format!("Clearance {}.", clearance.label));
    }
    sentences.join(" ")
}
