//! `/calculators/tapping`: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::drawer::with_drawer;
use super::form::{Form, answering, asking, refusing};
use super::{asked, json};
use crate::candidate::{ShownDrill, Verdict};
use crate::drawer::{self, Drawer, Notice};
use crate::figures::Both;
use crate::key::{Key, KeyLine, PRACTICE, Sign};
use crate::layout::Frame;
use crate::link::Link;
use crate::threads::{TappingRow, tapping_rows};
use crate::{FieldError, Reply, Visit};
use holewright_core::asking::Asked;
use holewright_core::calculators::tapping::{
    self, DECLARATION, FORMS, Left, NEAR, Subject, answer_to,
};
use holewright_core::tables::threads::Basis;
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
    basis: Basis,
    left: Option<ShownLeft>,
    wanted: String,
    wanted_other: Option<String>,
    hole: Both,
    nearest: Option<ShownDrill>,
    /// The engagements that count as near: `60 to 80 %`.
    near: String,
    drills: Vec<TappingRow>,
    two_bases: bool,
    figures: Vec<Figure>,
    thread: Option<Link>,
    custom: bool,
    /// Of a hole too small, and of how much thread to aim for.
    practice: Sign,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
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
pub(super) fn show(visit: &Visit<'_>) -> Reply {
    let typed = asked(&DECLARATION, &visit.query);
    if DECLARATION.only_asks(|field| visit.query.was_sent(field)) {
        return Reply::html(200, &blank(visit, &typed));
    }
    let (used, filled, notice) = with_drawer(visit, &DECLARATION, &drawer::TAPPING);
    match answer_to(&used) {
        Ok(found) => {
            let better = if filled.chooses_drills() { better(&typed, &found) } else { None };
            let mine = visit.drawer().filter(|_| typed.typed("owned") == used.typed("owned"));
            let page = answered(visit, &used, shown(&used, &found, mine), &found.subject);
            let frame = page.frame.with_drawer(notice.map(|notice| notice.saying(better)));
            let form = Form::of(&DECLARATION, &typed, &[]).beside(&filled);
            Reply::html(200, &TappingPage { frame, form, ..page })
        }
        Err(errors) => Reply::html(422, &refused(visit, &typed, errors, notice)),
    }
}

/// What a drill outside the drawer would do better.
fn better(typed: &Asked, found: &tapping::Answer) -> Option<String> {
    let best = answer_to(typed).ok()?.nearest?;
    drawer::better_tapping(found.wanted_percent, &best, found.nearest.as_ref())
}

fn blank(visit: &Visit<'_>, typed: &Asked) -> TappingPage {
    let description = "Any diameter, pitch and form: engagement of a hole, hole for an engagement, and the drills that would do.";
    TappingPage {
        frame: asking(visit, &DECLARATION, description),
        heading: DECLARATION.title.to_owned(),
        errors: Vec::new(),
        answer: None,
        form: Form::of(&DECLARATION, typed, &[]),
    }
}

fn refused(
    visit: &Visit<'_>,
    typed: &Asked,
    errors: Vec<FieldError>,
    notice: Option<Notice>,
) -> TappingPage {
    TappingPage {
        frame: refusing(visit, &DECLARATION).with_drawer(notice),
        form: Form::of(&DECLARATION, typed, &errors),
        errors,
        ..blank(visit, typed)
    }
}

fn answered(visit: &Visit<'_>, used: &Asked, shown: Shown, subject: &Subject) -> TappingPage {
    let name = name(subject);
    let answer = match &shown.left {
        Some(left) => format!("{} in {} hole", left.engagement, print::with_article(&left.hole.mm)),
        None => format!("{} for {}", shown.hole.mm, shown.wanted),
    };
    let title = format!("{name}: {answer}");
    let description = format!("{name}: {answer} {}.", shown.basis);
    TappingPage {
        frame: answering(visit, &DECLARATION, used, [&title, &description]),
        heading: format!("Tapping {name}"),
        errors: Vec::new(),
        answer: Some(shown),
        form: Form::of(&DECLARATION, used, &[]),
    }
}

fn shown(used: &Asked, found: &tapping::Answer, drawer: Option<&Drawer>) -> Shown {
    let subject = &found.subject;
    let limit = subject.largest_hole;
    let drills = tapping_rows(subject.form, &subject.geometry, limit, &found.candidates, drawer);
    let mut key = Key::default();
    Shown {
        basis: subject.basis(),
        left: found.left.map(|left| shown_left(subject, &left)),
        wanted: format!("{} %", print::trimmed(found.wanted_percent, 1)),
        wanted_other: found.wanted_of_five_eighths_h.map(print::percent),
        hole: Both::of(found.hole),
        nearest: found.nearest.map(|candidate| ShownDrill::of(&candidate, limit)),
        near: near(found.wanted_percent),
        two_bases: drills.iter().any(|row| row.other_basis.is_some()),
        drills,
        figures: dimensions(subject),
        thread: subject.thread.map(Link::thread),
        custom: subject.thread.is_none(),
        practice: key.sign(PRACTICE),
        key: key.lines(),
        json: json(&DECLARATION, used),
    }
}

/// The engagements that count as near the one wanted.
fn near(wanted: f64) -> String {
    let end = |percent| print::trimmed(percent, 1);
    format!("{} to {} %", end((wanted - NEAR).max(0.0)), end((wanted + NEAR).min(100.0)))
}

fn shown_left(subject: &Subject, left: &Left) -> ShownLeft {
    let standard = subject.largest_hole.map(|limit| limit.named()).unwrap_or_default();
    ShownLeft {
        hole: Both::of(left.hole),
        drill: left.drill.map(Link::drill),
        engagement: print::percent(left.percent),
        other_basis: left.percent_of_five_eighths_h.map(print::percent),
        more_than_full: left.percent > 100.0,
        verdict: Verdict::new(left.within_standard, left.below_minor, &standard),
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
            value: format!("{mm}, {}", limit.named()),
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
