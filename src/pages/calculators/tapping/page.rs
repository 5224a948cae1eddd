//! The page: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::answer::{Answer as Figures, Left, Subject};
use super::request::{FORMS, Request, THREAD};
use crate::calculators::drawer::notice;
use crate::calculators::form::{Fields, Form};
use crate::candidate::{ShownDrill, Verdict};
use crate::controls::{self, SERIES_AT_HAND};
use crate::drawer::{self, Drawer, Notice};
use crate::field::Field;
use crate::figures::Both;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::threads::{TappingRow, tapping_rows};
use crate::{Answer, FieldError, Visit};
use holewright_core::calc::thread_form::engagement_basis;
use holewright_core::units::{Pitch, in_degrees, print};

#[derive(Template)]
#[template(path = "calculators/tapping.html")]
struct TappingPage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    answer: Option<Shown>,
    form: Form,
}

/// The answer as the page prints it.
struct Shown {
    basis: &'static str,
    left: Option<ShownLeft>,
    wanted: String,
    wanted_other: Option<String>,
    hole: Both,
    nearest: Option<ShownDrill>,
    drills: Vec<TappingRow>,
    two_bases: bool,
    figures: Vec<Figure>,
    thread: Option<Link>,
    custom: bool,
    json: String,
}

/// What the hole asked about leaves.
struct ShownLeft {
    hole: Both,
    drill: Option<Link>,
    engagement: String,
    other_basis: Option<String>,
    verdict: Verdict,
    /// The hole is smaller than the bottom of the thread.
    more_than_full: bool,
}

/// A dimension of the thread.
struct Figure {
    name: &'static str,
    value: String,
    other: Option<String>,
}

/// The page.
pub(crate) fn show(visit: &Visit<'_>) -> Answer {
    let request = Request::of(visit.query.clone());
    if request.asked.lacks(&THREAD) {
        return Answer::html(200, &blank(visit, &request));
    }
    let filled = drawer::filled(visit, &drawer::TAPPING);
    let used = Request::of(filled.query.clone());
    let notice = notice(&filled, &request.asked, &used.asked);
    match used.answer() {
        Ok(figures) => {
            let better = if filled.chooses_drills() { better(&request, &figures) } else { None };
            let notice = notice.map(|notice| notice.saying(better));
            Answer::html(200, &answered(visit, &request, &used, &figures, notice))
        }
        Err(errors) => Answer::html(422, &refused(visit, &request, errors, notice)),
    }
}

/// What a drill outside the drawer would do better.
fn better(typed: &Request, figures: &Figures) -> Option<String> {
    let best = typed.answer().ok()?.nearest?;
    drawer::better_tapping(figures.wanted_percent, &best, figures.nearest.as_ref())
}

fn blank(visit: &Visit<'_>, request: &Request) -> TappingPage {
    let description = "Any diameter, pitch and form: engagement of a hole, hole for an engagement, and the drills that would do.";
    let title = "Tapping size of any thread";
    TappingPage {
        frame: Frame::new(visit, Section::Calculators, title, description),
        heading: title.to_owned(),
        errors: Vec::new(),
        answer: None,
        form: form(request, &[]),
    }
}

fn refused(
    visit: &Visit<'_>,
    request: &Request,
    errors: Vec<FieldError>,
    notice: Option<Notice>,
) -> TappingPage {
    let description = "Something could not be used; everything typed is kept.";
    let title = "Error: tapping size of any thread";
    TappingPage {
        frame: Frame::new(visit, Section::Calculators, title, description)
            .of_a_mistake()
            .with_drawer(notice),
        form: form(request, &errors),
        errors,
        ..blank(visit, request)
    }
}

fn answered(
    visit: &Visit<'_>,
    request: &Request,
    used: &Request,
    figures: &Figures,
    notice: Option<Notice>,
) -> TappingPage {
    let mine = visit.drawer().filter(|_| request.asked.typed("owned") == used.asked.typed("owned"));
    let shown = shown(used, figures, mine);
    let name = name(&figures.subject);
    let answer = match &shown.left {
        Some(left) => format!("{} in a {} hole", left.engagement, left.hole.mm),
        None => format!("{} for {}", shown.hole.mm, shown.wanted),
    };
    let title = format!("{name}: {answer}");
    let description = format!("{name}: {answer} {}.", shown.basis);
    let address = used.address("/calculators/tapping");
    TappingPage {
        frame: Frame::at(visit.context, Section::Calculators, &address, &title, &description)
            .with_drawer(notice),
        heading: format!("Tapping {name}"),
        errors: Vec::new(),
        answer: Some(shown),
        form: form(request, &[]),
    }
}

fn form(request: &Request, errors: &[FieldError]) -> Form {
    let typed = |name| request.typed(name);
    let text = |name, label, hint| Field::text(name, label, hint, typed(name));
    let fields = Fields {
        button: "Find hole and thread",
        first: vec![
            text(
                "thread",
                "Thread, if it has a name",
                "5 BA, M3, 1/4 x 40 ME; it fills what is left empty below",
            ),
            controls::optional_list("form", "Form", "As the thread named", FORMS, typed("form")),
            text("major", "Major diameter", "mm, or with its unit: 1/4 in"),
            text("pitch", "Pitch", "0.6 mm, or threads in an inch: 40 tpi"),
            text("hole", "Hole to judge", "A drill or a size: No. 36, 2.7 mm; may be left empty"),
        ],
        rest_heading: "Engagement wanted, drills at hand",
        rest: vec![
            text(
                "engagement",
                "Engagement wanted",
                "Percent of full thread depth; 70 if left empty",
            ),
            controls::series(SERIES_AT_HAND, typed("series")),
            controls::owned_drills(typed("owned")),
        ],
    };
    Form::of("/calculators/tapping", &request.asked, fields, errors)
}

fn shown(request: &Request, figures: &Figures, drawer: Option<&Drawer>) -> Shown {
    let subject = &figures.subject;
    let limit = subject.largest_hole;
    let drills = tapping_rows(subject.form, &subject.geometry, limit, &figures.candidates, drawer);
    Shown {
        basis: engagement_basis(subject.form),
        left: figures.left.map(|left| shown_left(subject, &left)),
        wanted: format!("{} %", print::trimmed(figures.wanted_percent, 1)),
        wanted_other: figures.wanted_of_five_eighths_h.map(print::percent),
        hole: Both::of(figures.hole),
        nearest: figures.nearest.map(|candidate| ShownDrill::of(&candidate, limit)),
        two_bases: drills.iter().any(|row| row.other_basis.is_some()),
        drills,
        figures: dimensions(subject),
        thread: subject.thread.map(Link::thread),
        custom: subject.thread.is_none(),
        json: request.address("/api/v1/calc/tapping"),
    }
}

fn shown_left(subject: &Subject, left: &Left) -> ShownLeft {
    let standard = subject.largest_hole.map_or("", |limit| limit.standard);
    ShownLeft {
        hole: Both::of(left.hole),
        drill: left.drill.map(Link::drill),
        engagement: print::percent(left.percent),
        other_basis: left.percent_of_five_eighths_h.map(print::percent),
        more_than_full: left.percent > 100.0,
        verdict: Verdict::new(left.within_standard, left.below_minor, standard),
    }
}

fn dimensions(subject: &Subject) -> Vec<Figure> {
    let geometry = &subject.geometry;
    let both = |name, length| {
        let Both { mm, inch } = Both::of(length);
        Figure { name, value: mm, other: Some(inch) }
    };
    let one = |name, value| Figure { name, value, other: None };
    let mut figures = vec![
        both("Major diameter", geometry.major),
        both("Pitch", geometry.pitch),
        one("Threads per inch", print::trimmed(geometry.threads_per_inch, 3)),
        one("Thread angle", format!("{}°", print::trimmed(in_degrees(geometry.thread_angle), 1))),
        both("Depth of thread, one side", geometry.thread_depth),
        both("Effective diameter", geometry.effective),
        both("Minor diameter of the screw", geometry.minor),
        both("Minor diameter of the nut", geometry.minor_internal),
    ];
    if let Some(limit) = subject.largest_hole {
        let Both { mm, inch } = Both::of(limit.diameter);
        figures.push(Figure {
            name: "Largest hole",
            value: format!("{mm}, {}", limit.standard),
            other: Some(inch),
        });
    }
    figures
}

/// `5 BA`, or `3.2 mm × 0.6 mm, BA form`.
fn name(subject: &Subject) -> String {
    if let Some(thread) = subject.thread {
        return thread.designation.to_owned();
    }
    let form = FORMS.iter().find(|word| word.value == Some(subject.form));
    let form = form.map_or("", |word| word.words.split([',', ':']).next().unwrap_or(word.words));
    match subject.pitch {
        Pitch::Mm(_) => format!(
            "{} × {}, {form} form",
            print::mm(subject.geometry.major, 3),
            print::mm(subject.geometry.pitch, 4)
        ),
        Pitch::PerInch(threads) => format!(
            "{} × {} tpi, {form} form",
            print::inch(subject.geometry.major, 4),
            print::trimmed(threads, 2)
        ),
    }
}
