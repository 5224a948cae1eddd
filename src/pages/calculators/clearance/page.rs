//! The page: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::answer::{Answer as Figures, Drilled};
use super::request::Request;
use crate::calculators::drawer::notice;
use crate::calculators::form::{Fields, Form};
use crate::cited;
use crate::controls::{self, SERIES_AT_HAND};
use crate::drawer::{self, Notice};
use crate::field::Field;
use crate::figures::{Both, Column};
use crate::form::sentence_case;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Answer, FieldError, Visit, plan};
use holewright_core::tables::clearance::Row;
use holewright_core::tables::drills::Drill;
use holewright_core::units::{Length, in_mm, print};

#[derive(Template)]
#[template(path = "calculators/clearance.html")]
struct ClearancePage {
    frame: Frame,
    heading: String,
    errors: Vec<FieldError>,
    answer: Option<Shown>,
    form: Form,
}

/// The answer as the page prints it.
struct Shown {
    fit: String,
    hole: Both,
    drill: Option<ShownHole>,
    /// The errors ask for more than the fit.
    widened: bool,
    basis: String,
    source: String,
    float: Option<Both>,
    screw: Both,
    measured: bool,
    for_errors: Option<Errors>,
    rows: Vec<FitRow>,
    printed: Vec<PrintedRow>,
    thread: Option<Link>,
    json: String,
}

/// The drill to take.
struct ShownHole {
    link: Link,
    /// The size, unless the drill's name says it already.
    mm: Option<String>,
    inch: String,
}

/// What the centre errors ask for.
struct Errors {
    hole: Both,
    fit_will_do: bool,
}

/// One fit.
struct FitRow {
    fit: String,
    hole: Column,
    drill: Option<Link>,
    /// On diameter, in millimetres.
    float: String,
    basis: String,
    lit: bool,
}

/// A row in print.
struct PrintedRow {
    standard: String,
    fits: [(String, Column); 3],
    source: String,
    rules: bool,
}

/// The page.
pub(crate) fn show(visit: &Visit<'_>) -> Answer {
    let request = Request::of(visit.query.clone());
    if request.asked.lacks(&["thread", "diameter"]) {
        return Answer::html(200, &blank(visit, &request));
    }
    let filled = drawer::filled(visit, &drawer::CLEARANCE);
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
    let best = typed.answer().ok()?;
    drawer::better_clearance(figures.hole(), best.drill(), figures.drill())
}

fn blank(visit: &Visit<'_>, request: &Request) -> ClearancePage {
    let description = "The hole a screw passes through: close, medium or free, its drill, its float, and the hole for centres that are off.";
    ClearancePage {
        frame: Frame::new(visit, Section::Calculators, "Clearance and float", description),
        heading: "Clearance and float".to_owned(),
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
) -> ClearancePage {
    let description = "Something could not be used; everything typed is kept.";
    ClearancePage {
        frame: Frame::new(visit, Section::Calculators, "Error: clearance and float", description)
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
) -> ClearancePage {
    let screw = figures.screw.thread.map_or_else(
        || format!("a {} screw", print::mm(figures.screw.major, 3)),
        |thread| thread.designation.to_owned(),
    );
    let heading = format!("Clearance for {screw}, {}", figures.fit);
    let hole = print::mm(figures.hole(), 3);
    let drill = figures.drill().map_or_else(|| hole.clone(), |drill| drill.label.clone());
    let title = format!("{heading}: {drill}");
    let description = format!("{heading}: hole {hole}, drill {drill}.");
    let address = used.address("/calculators/clearance");
    ClearancePage {
        frame: Frame::at(visit.context, Section::Calculators, &address, &title, &description)
            .with_drawer(notice),
        heading,
        errors: Vec::new(),
        answer: Some(shown(used, figures)),
        form: form(request, &[]),
    }
}

fn form(request: &Request, errors: &[FieldError]) -> Form {
    let typed = |name| request.typed(name);
    let text = |name, label, hint| Field::text(name, label, hint, typed(name));
    let fields = Fields {
        button: "Find the hole",
        first: vec![
            text("thread", "Thread of the screw", "5 BA, M3, 1/4 BSF"),
            text(
                "diameter",
                "Or its diameter",
                "mm, or with its unit; with a thread, the screw as measured",
            ),
            controls::pick("fit", "Fit", plan::FITS, typed("fit")),
        ],
        rest_heading: "Centres that may be off, drills at hand",
        rest: vec![
            text(
                "upper_error",
                "How far the clearance hole may be off",
                "From where its centre should be; mm, or 10 thou",
            ),
            text(
                "lower_error",
                "How far the tapped hole may be off",
                "From where its centre should be; mm, or 10 thou",
            ),
            controls::series(SERIES_AT_HAND, typed("series")),
            controls::owned_drills(typed("owned")),
        ],
    };
    Form::of("/calculators/clearance", &request.asked, fields, errors)
}

fn shown(request: &Request, figures: &Figures) -> Shown {
    let basis = figures.asked.hole.basis;
    let drill = figures.drill();
    let row = |name: &str, found: &Drilled, lit| fit_row(name, found, lit);
    let rows = figures
        .fits
        .iter()
        .map(|(fit, found)| row(fit.slug(), found, *fit == figures.fit))
        .chain(figures.model.iter().map(|found| row("model", found, false)))
        .collect();
    let ruling = figures.ruling.map(|row| printed(row, true));
    let also = figures.also_printed.iter().map(|row| printed(row, false));
    Shown {
        fit: figures.fit.to_string(),
        hole: Both::of(figures.hole()),
        drill: drill.map(shown_hole),
        widened: figures.for_errors.is_some_and(|errors| !errors.fit_will_do),
        basis: basis.to_string(),
        source: cited::source(basis.source()),
        float: drill.map(|drill| Both::of(float(drill.diameter, figures))),
        screw: Both::of(figures.screw.size()),
        measured: figures.screw.measured.is_some(),
        for_errors: figures
            .for_errors
            .map(|errors| Errors { hole: Both::of(errors.hole), fit_will_do: errors.fit_will_do }),
        rows,
        printed: ruling.into_iter().chain(also).collect(),
        thread: figures.screw.thread.map(Link::thread),
        json: request.address("/api/v1/calc/clearance"),
    }
}

fn float(hole: Length, figures: &Figures) -> Length {
    holewright_core::calc::clearance::float(hole, figures.screw.size())
}

fn shown_hole(drill: &'static Drill) -> ShownHole {
    let both = Both::of(drill.diameter);
    let says_mm = drill.is_named_in_mm();
    ShownHole { link: Link::drill(drill), mm: (!says_mm).then_some(both.mm), inch: both.inch }
}

fn fit_row(name: &str, found: &Drilled, lit: bool) -> FitRow {
    FitRow {
        fit: sentence_case(name),
        hole: Column::of(found.hole.hole),
        drill: found.drill.map(Link::drill),
        float: found.float.map_or_else(|| "–".to_owned(), |left| print::fixed(in_mm(left), 3)),
        basis: found.hole.basis.to_string(),
        lit,
    }
}

fn printed(row: &Row, rules: bool) -> PrintedRow {
    let [close, medium, free] = row.standard.fit_words();
    let fit = |word: &str, size: Length| (sentence_case(word), Column::of(size));
    PrintedRow {
        standard: row.standard.to_string(),
        fits: [
            fit(close, row.close.length()),
            fit(medium, row.medium.length()),
            fit(free, row.free.length()),
        ],
        source: cited::source(row.source),
        rules,
    }
}
