//! The page: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::answer::{Answer as Figures, Feed, Reach, SpeedAtHand, Tool, Verdict, Work};
use super::drawer::with_drawer;
use super::request::{Request, WORKS};
use crate::calc::cutting_speed::{feet_per_minute, spindle_speed};
use crate::pages::calculators::form::{Fields, Form};
use crate::pages::cited;
use crate::pages::controls;
use crate::pages::field::Field;
use crate::pages::figures::Both;
use crate::pages::layout::{Door, Frame};
use crate::pages::link::Link;
use crate::pages::{Answer, FieldError, Visit};
use crate::tables::materials::SpeedRange;
use crate::units::{Frequency, Velocity, in_metres_per_minute, in_mm, in_rpm, print};

#[derive(Template)]
#[template(path = "calculators/speeds.html")]
struct SpeedsPage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    answer: Option<Shown>,
    form: Form,
}

/// The answer as the page prints it.
struct Shown {
    low: String,
    /// None where the range is one figure.
    high: Option<String>,
    tool: String,
    size: Both,
    thing: Option<Link>,
    material: Link,
    surface: String,
    feed: Option<String>,
    feed_rate: Option<String>,
    feed_source: String,
    set: Option<SpeedRow>,
    /// What to make of the machine, in a sentence or two.
    machine: Option<String>,
    too_fast: bool,
    rows: Vec<SpeedRow>,
    in_print: Vec<PrintedRow>,
    drilling: bool,
    json: String,
}

/// One speed of the machine.
#[derive(Clone)]
struct SpeedRow {
    speed: String,
    metres: String,
    feet: String,
    feed: Option<String>,
    shape: &'static str,
    verdict: &'static str,
    largest: String,
    lit: bool,
}

/// A range in print.
struct PrintedRow {
    printed_as: &'static str,
    metres: String,
    feet: String,
    speed: String,
    source: String,
}

/// The page.
pub(in crate::pages) fn show(visit: &Visit<'_>) -> Answer {
    let request = Request::of(visit.query.clone());
    if request.asked.lacks(&["diameter"]) {
        return Answer::html(200, &blank(visit, &request));
    }
    let (used, notice) = with_drawer(visit, &request);
    match used.answer() {
        Ok(figures) => {
            let page = answered(visit, &used, &figures);
            let frame = page.frame.with_drawer(notice);
            Answer::html(200, &SpeedsPage { frame, form: form(&request, &[]), ..page })
        }
        Err(errors) => Answer::html(422, &refused(visit, &request, errors)),
    }
}

fn blank(visit: &Visit<'_>, request: &Request) -> SpeedsPage {
    let description = "How fast to turn a drill, or a tap under power: metal, diameter and the speeds of the machine.";
    SpeedsPage {
        frame: Frame::new(visit, Door::Calculators, "Spindle speed", description),
        heading: "Spindle speed".to_owned(),
        errors: Vec::new(),
        answer: None,
        form: form(request, &[]),
    }
}

fn refused(visit: &Visit<'_>, request: &Request, errors: Vec<FieldError>) -> SpeedsPage {
    let description = "Something could not be used; everything typed is kept.";
    SpeedsPage {
        frame: Frame::new(visit, Door::Calculators, "Error: spindle speed", description)
            .of_a_mistake(),
        form: form(request, &errors),
        errors,
        ..blank(visit, request)
    }
}

fn answered(visit: &Visit<'_>, request: &Request, figures: &Figures) -> SpeedsPage {
    let shown = shown(request, figures);
    let heading = format!("{} in {}", shown.tool, figures.material.name);
    let range = span(shown.low.clone(), shown.high.clone().unwrap_or_else(|| shown.low.clone()));
    let title = format!("{heading}: {range} rev/min");
    let description = format!("{heading}: {range} rev/min, from {}.", shown.surface);
    let address = request.address("/calculators/speeds");
    SpeedsPage {
        frame: Frame::at(visit.context, Door::Calculators, &address, &title, &description),
        heading,
        errors: Vec::new(),
        answer: Some(shown),
        form: form(request, &[]),
    }
}

fn form(request: &Request, errors: &[FieldError]) -> Form {
    let typed = |name| request.typed(name);
    let fields = Fields {
        button: "Find the speed",
        first: vec![
            controls::metal("material", "Metal", "Choose the metal", typed("material")),
            controls::pick("work", "Work", WORKS, typed("work")),
            Field::text(
                "diameter",
                "Drill or tap",
                "By any name or size: No. 46, F, 7/64 in, 2.5 mm; a tap by its thread: 5 BA, M3",
                typed("diameter"),
            ),
        ],
        rest_heading: "The machine’s speeds",
        rest: vec![
            Field::text(
                "spindle_speeds",
                "Speeds it has",
                "Revolutions a minute: 350, 500, 1000; or 200-2000 for any between",
                typed("spindle_speeds"),
            ),
            Field::text(
                "spindle_max",
                "Or just the fastest",
                "Revolutions a minute",
                typed("spindle_max"),
            ),
        ],
    };
    Form::of("/calculators/speeds", &request.asked, fields, errors)
}

fn shown(request: &Request, figures: &Figures) -> Shown {
    let (tool, thing) = named(figures);
    let (low, high) = (revolutions(figures.low), revolutions(figures.high));
    // A speed that is too fast is not one to set.
    let too_fast = figures.reach == Reach::TooFast;
    let lit = figures.set.filter(|_| !too_fast);
    let rows: Vec<SpeedRow> = figures
        .at_hand
        .iter()
        .map(|found| row(found, lit.is_some_and(|set| set.speed == found.speed)))
        .collect();
    Shown {
        high: (high != low).then_some(high),
        low,
        tool,
        size: Both::of(figures.tool.diameter()),
        thing,
        material: Link::material(figures.material),
        surface: surface(figures.range),
        feed: figures.feed.map(feed),
        feed_rate: figures.feed.filter(|_| !too_fast).map(|feed| feed_rate(figures, feed)),
        feed_source: figures
            .feed
            .and_then(|feed| feed.source)
            .map_or_else(String::new, cited::source),
        set: figures.set.map(|found| row(&found, true)),
        machine: machine(figures),
        too_fast,
        rows,
        in_print: figures.in_print.iter().map(|range| printed(figures, range)).collect(),
        drilling: figures.work == Work::Drilling,
        json: request.address("/api/v1/calc/speeds"),
    }
}

/// What turns, at the head of a line, and its page.
fn named(figures: &Figures) -> (String, Option<Link>) {
    match figures.tool {
        Tool::Drill(drill) => (format!("{} drill", drill.label), Some(Link::drill(drill))),
        Tool::Tap(thread) => (format!("{} tap", thread.designation), Some(Link::thread(thread))),
        Tool::Size(size) => {
            let tool = if figures.work == Work::Drilling { "drill" } else { "tap" };
            (format!("{} {tool}", print::mm(size, 3)), None)
        }
    }
}

fn row(found: &SpeedAtHand, lit: bool) -> SpeedRow {
    let (shape, verdict) = match found.verdict {
        Verdict::Slow => ("no-limit", "slower, no harm"),
        Verdict::Within => ("within", "in the range"),
        Verdict::Fast => ("beyond", "too fast"),
    };
    SpeedRow {
        speed: print::trimmed(in_rpm(found.speed), 0),
        metres: metres(found.surface),
        feet: feet(found.surface),
        feed: found.feed.map(|[low, high]| span(mm_per_minute(low), mm_per_minute(high))),
        shape,
        verdict,
        largest: print::fixed(in_mm(found.largest), 1),
        lit,
    }
}

fn printed(figures: &Figures, range: &SpeedRange) -> PrintedRow {
    let speed = |surface| revolutions(spindle_speed(surface, figures.tool.diameter()));
    PrintedRow {
        printed_as: range.printed_as,
        metres: span(metres(range.low), metres(range.high)),
        feet: span(feet(range.low), feet(range.high)),
        speed: span(speed(range.low), speed(range.high)),
        source: cited::source(range.source),
    }
}

/// What to make of the machine.
fn machine(figures: &Figures) -> Option<String> {
    let set = figures.set?;
    let speed = print::trimmed(in_rpm(set.speed), 0);
    let edge = metres(set.surface);
    let name = figures.material.name;
    Some(match figures.reach {
        Reach::NotSaid | Reach::Within => return None,
        Reach::Between => format!(
            "No speed at hand lies in the range. {speed} rev/min is the next below it: slower does no harm, too fast burns the edge."
        ),
        Reach::TooSlow => format!(
            "The machine cannot go fast enough: at its fastest, {speed} rev/min, the edge moves at {edge} m/min, {} % of the slow end. It still cuts, only slowly. {}",
            rough(
                100.0 * in_metres_per_minute(set.surface) / in_metres_per_minute(figures.range.low)
            ),
            match figures.work {
                Work::Drilling =>
                    "Hold the drill short, feed it finely by feel and clear it often: a small drill breaks from force, not from turning slowly.",
                Work::Tapping => "A tap takes no harm from turning slowly.",
            }
        ),
        Reach::TooFast => format!(
            "The machine cannot go slowly enough: at its slowest, {speed} rev/min, the edge moves at {edge} m/min, {} times the fast end of the range. {}",
            rough(in_metres_per_minute(set.surface) / in_metres_per_minute(figures.range.high)),
            match figures.work {
                Work::Drilling => format!(
                    "It overheats and goes blunt. The largest drill that speed suits in {name} is {}: open the hole out to there, then bore, ream or file it, or use a slower machine.",
                    print::mm(set.largest, 1)
                ),
                Work::Tapping => "Turn the tap by hand, the chuck only guiding it.".to_owned(),
            }
        ),
    })
}

/// A ratio to two figures or so: `1.5`, `24`.
fn rough(ratio: f64) -> String {
    print::trimmed(ratio, if ratio < 10.0 { 1 } else { 0 })
}

fn feed(feed: Feed) -> String {
    let places = if feed.source.is_some() { 3 } else { 4 };
    let size = |length| print::trimmed(in_mm(length), places);
    format!("{} mm/rev", span(size(feed.low), size(feed.high)))
}

/// How fast the tool goes in at the speed to set, or at the slow end where no machine was named.
fn feed_rate(figures: &Figures, feed: Feed) -> String {
    use crate::calc::cutting_speed::feed_rate;
    let speed = figures.set.map_or(figures.low, |set| set.speed);
    let [low, high] = [feed.low, feed.high].map(|feed| mm_per_minute(feed_rate(feed, speed)));
    format!("{} mm/min at {} rev/min", span(low, high), revolutions(speed))
}

fn surface(range: &SpeedRange) -> String {
    format!(
        "{} m/min ({} ft/min)",
        span(metres(range.low), metres(range.high)),
        span(feet(range.low), feet(range.high))
    )
}

/// A spindle is set to two figures at most.
fn revolutions(speed: Frequency) -> String {
    print::trimmed(print::significant(in_rpm(speed), 2), 0)
}

fn metres(speed: Velocity) -> String {
    print::trimmed(in_metres_per_minute(speed), 1)
}

fn feet(speed: Velocity) -> String {
    print::trimmed(feet_per_minute(speed), 0)
}

fn mm_per_minute(rate: Velocity) -> String {
    print::trimmed(in_metres_per_minute(rate) * 1000.0, 0)
}

/// `24 to 30`, or the one figure where both are the same.
fn span(low: String, high: String) -> String {
    if low == high { low } else { format!("{low} to {high}") }
}
