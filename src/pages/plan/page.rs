//! `/plan`: the form, the plan under it, or what stands in the way.

use askama::Template;

use super::bearing::{bearing, effort_address};
use super::beside::{self, Beside};
use super::depths::{as_set, depths};
use super::elsewhere;
use super::figure::Figure;
use super::form::{Form, form};
use super::note;
use super::request::Request;
use super::steps::{Step, step};
use super::taper;
use super::trouble::refusal;
use super::wanted::{Wanted, heading};
use crate::candidate::ShownDrill;
use crate::drawer;
use crate::figures::Both;
use crate::key::{Key, KeyLine, PRACTICE, Sign, Signed};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::sentence::set;
use crate::taken::TakenAs;
use crate::warnings::{Said, WarningGroup, by_level};
use crate::{FieldError, Reply, Visit};
use holewright_core::calc::tapping::FORMED_BASIS;
use holewright_core::calc::thread_form::engagement_basis_of;
use holewright_core::drawing::{DrawingIds, hole_section};
use holewright_core::plan::{self, Hole, HolePlan, HoleSpec, Plan, Tap, Warning, build_either};
use holewright_core::tables::threads::read;
use holewright_core::units::print;

#[derive(Template)]
#[template(path = "plan/form.html")]
struct FormPage {
    frame: Frame,
    errors: Vec<FieldError>,
    /// The thread's own page, where a thread was understood.
    thread: Option<Link>,
    /// What would make a blind hole possible, where that is what stands in the way.
    possible: Option<String>,
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
        Err(errors) => return refuse(visit, &asked, errors, None),
    };
    match build_either(&spec) {
        Ok(Plan::Parallel(plan)) => Reply::html(200, &page(visit, &asked, &plan)),
        Ok(Plan::Taper(plan)) => taper::show(visit, &asked, &plan),
        Err(error) => {
            let is_thin = matches!(error, plan::Error::PartTooThin { .. });
            let possible = is_thin.then(|| elsewhere::blind_hole(&used, None));
            refuse(visit, &asked, vec![refusal(&used, &error)], possible)
        }
    }
}

fn ask(visit: &Visit<'_>, request: &Request) -> Reply {
    let description =
        "Say the thread, the material and how deep: drill, depths and every step in order.";
    let frame = Frame::new(visit, Section::Plan, "Plan a hole", description);
    Reply::html(
        200,
        &FormPage {
            frame,
            errors: Vec::new(),
            thread: None,
            possible: None,
            form: form(request, &[]),
        },
    )
}

fn refuse(
    visit: &Visit<'_>,
    asked: &Wanted<'_>,
    errors: Vec<FieldError>,
    possible: Option<String>,
) -> Reply {
    let request = asked.typed;
    let description = "Something in the plan could not be used; everything typed is kept.";
    let frame = Frame::new(visit, Section::Plan, "Error: plan a hole", description)
        .of_a_mistake()
        .with_drawer(asked.notice());
    let form = form(request, &errors);
    let thread = read::as_meant(request.typed("thread")).ok();
    let thread = thread.map(|read| Link::thread(read.thread));
    Reply::html(422, &FormPage { frame, errors, thread, possible, form })
}

#[derive(Template)]
#[template(path = "plan/show.html")]
struct PlanPage {
    frame: Frame,
    heading: String,
    /// What was asked beyond the heading: depth, upper part.
    asked: String,
    /// What was taken for one thing and could mean another.
    taken: Vec<TakenAs>,
    /// What the plan assumed.
    assumed: Vec<String>,
    thread: Link,
    material: Link,
    /// The drill to get, where none at hand will do.
    get: Option<ShownDrill>,
    /// The drill to take, or the nearest where none at hand will do.
    nearest: ShownDrill,
    /// What it would leave.
    nearest_in_words: String,
    aim: String,
    aim_sign: Sign,
    /// The drill, where it lies near the aim; where it does not, the notes on the choice say why.
    nearest_to_aim: Option<String>,
    basis: String,
    beside: Vec<Beside>,
    likely: Both,
    likely_engagement: String,
    clearance: Clearance,
    /// What the tap takes and what the thread carries.
    bearing: Vec<Signed>,
    /// The calculator of effort with this job filled in.
    effort: Option<String>,
    depths: Vec<Figure>,
    listed: Vec<Listed>,
    /// Why they differ from the drill that was chosen, each reason once.
    why_different: Vec<String>,
    steps: Vec<Step>,
    /// The cautions of this cut.
    head: Vec<Said>,
    /// What is said of the drill that was chosen.
    choice: Vec<String>,
    /// The standing cautions, and how many.
    warnings: Vec<WarningGroup>,
    standing_count: usize,
    drawing: String,
    json: String,
    csv: String,
    svg: String,
    /// The form of a note with what is known of this job.
    note: String,
    /// The same hole for the calculator of blind holes, where it is one.
    blind_hole: Option<String>,
    /// What to do about a tap broken in this metal.
    rescue: Link,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
    form: Form,
}

struct Clearance {
    fit: String,
    hole: Both,
    basis: String,
    sign: Sign,
    float: Option<Both>,
}

struct Listed {
    list: String,
    sign: Sign,
    label: &'static str,
    engagement: String,
}

fn page(visit: &Visit<'_>, asking: &Wanted<'_>, plan: &HolePlan<'_>) -> PlanPage {
    let request = asking.used;
    let spec = plan.spec;
    let choice = &plan.tapping;
    let limit = choice.largest_hole;
    let nearest = ShownDrill::of(&choice.chosen, limit);
    let get = choice.get.map(|candidate| ShownDrill::of(&candidate, limit));
    let heading = heading(spec);
    let answer = get.as_ref().unwrap_or(&nearest);
    let title = format!("{heading}: {}, {}", answer.link.words, answer.engagement);
    let description = description(plan, answer);
    let frame =
        Frame::at(visit.context, Section::Plan, &request.address("/plan"), &title, &description)
            .with_drawer(asking.notice().map(|notice| notice.saying(asking.better(plan))));
    let sentences = |said: &[Warning]| said.iter().map(|said| set(&said.text)).collect();
    let cautions = &plan.cautions;
    let mut key = Key::default();
    PlanPage {
        frame,
        heading,
        asked: asked(spec, asking.tap(spec)),
        taken: TakenAs::all(request.taken(), |field, value| request.address_with(field, value)),
        assumed: sentences(&cautions.assumed),
        thread: Link::thread(spec.thread),
        material: Link::material(spec.material),
        aim: print::percent(choice.aim_percent),
        aim_sign: key.sign(PRACTICE),
        nearest_to_aim: (choice.get.is_none() && !choice.is_far_from_aim())
            .then(|| nearest.link.words.clone()),
        basis: basis(spec),
        beside: beside::beside(plan),
        likely: Both::of(plan.hole.likely),
        likely_engagement: print::percent(plan.hole.likely_engagement_percent),
        clearance: Clearance {
            fit: spec.fit.to_string(),
            hole: Both::of(plan.clearance.hole.hole),
            basis: plan.clearance.hole.basis.to_string(),
            sign: key.sign(plan.clearance.hole.basis.source()),
            float: plan.clearance.float.map(Both::coarse),
        },
        bearing: bearing(plan, &mut key),
        effort: effort_address(plan),
        depths: depths(spec, &plan.operations, &plan.depths),
        listed: plan
            .listed
            .iter()
            .map(|listed| Listed {
                list: set(&print::sentence(listed.row.list)),
                sign: key.sign(listed.row.source),
                label: listed.row.label,
                engagement: print::percent(listed.engagement_percent),
            })
            .collect(),
        why_different: reasons(&plan.listed),
        steps: plan.operations.iter().map(|operation| step(spec, operation)).collect(),
        head: cautions.head.iter().map(Said::of).collect(),
        choice: sentences(&cautions.choice),
        warnings: by_level(cautions.standing.iter().map(|found| (found.level, set(&found.text)))),
        standing_count: cautions.standing.len(),
        drawing: hole_section(plan, DrawingIds::new("section")),
        json: request.address("/api/v1/plan"),
        csv: request.address("/plan.csv"),
        svg: request.address("/plan.svg"),
        note: note::address_of(plan),
        blind_hole: (spec.hole == Hole::Blind)
            .then(|| elsewhere::blind_hole(request, Some(choice.planned().drill))),
        rescue: elsewhere::broken_tap(spec),
        key: key.lines(),
        form: form(asking.typed, &[]).beside(asking.filled),
        get,
        nearest,
        nearest_in_words: set(&choice.nearest_in_words()),
    }
}

/// `8 mm of full thread, under a free-cutting brass part 4 mm thick`
/// Why the lists differ from the plan, each reason once.
fn reasons(listed: &[plan::Listed]) -> Vec<String> {
    let mut reasons: Vec<String> = Vec::new();
    for why in listed.iter().filter_map(|row| row.why_different.as_ref()) {
        if !reasons.contains(why) {
            reasons.push(why.clone());
        }
    }
    reasons
}

fn asked(spec: &HoleSpec, tap: Option<&str>) -> String {
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
    let tap = tap.map(|tap| format!("tap {tap}"));
    depth.into_iter().chain(over).chain(tap).collect::<Vec<_>>().join(", ")
}

/// One or two sentences with the figures, for a preview where the link is pasted.
fn description(plan: &HolePlan<'_>, drill: &ShownDrill) -> String {
    let mut sentences = vec![format!(
        "Tapping size {}, {} {}.",
        drill.link.words,
        drill.engagement,
        basis(plan.spec)
    )];
    if let Some(stop) = plan.depths.stop {
        sentences.push(format!("Drill {} deep at full diameter.", as_set(stop, plan.spec.scale)));
    }
    if let Some(clearance) = plan.clearance.drill {
        sentences.push(format!("Clearance {}.", clearance.label));
    }
    sentences.join(" ")
}

/// What the percentage of thread is of.
fn basis(spec: &HoleSpec) -> String {
    match spec.tap {
        Tap::Forming => FORMED_BASIS.to_owned(),
        Tap::Hand | Tap::Machine => engagement_basis_of(spec.thread).to_string(),
    }
}
