//! `/calculators/clearance`: the form, the answer over it, or what stands in the way.

use askama::Template;

use super::drawer::with_drawer;
use super::form::{Form, answering, asking, refusing};
use super::{asked, json};
use crate::drawer::{self, Notice};
use crate::figures::{Both, Column};
use crate::key::{Key, KeyLine, Sign, Signed};
use crate::layout::Frame;
use crate::link::Link;
use crate::{FieldError, Reply, Visit};
use holewright_core::asking::Asked;
use holewright_core::calc::clearance::{DRILL_TAKEN, drill_for};
use holewright_core::calculators::clearance::{self, DECLARATION, Drilled, answer_to};
use holewright_core::tables::clearance::Holes;
use holewright_core::tables::drills::{self, Drill};
use holewright_core::units::print::sentence as sentence_case;
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
    /// What to get where no drill at hand will do.
    get: Option<Link>,
    /// The errors ask for more than the fit.
    widened: bool,
    basis: String,
    sign: Sign,
    /// Which drill is taken for it.
    taken: Signed,
    float: Option<Both>,
    screw: Both,
    measured: bool,
    for_errors: Option<Errors>,
    rows: Vec<FitRow>,
    printed: Vec<PrintedRow>,
    thread: Option<Link>,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
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
    sign: Sign,
    rules: bool,
}

/// The page.
pub(super) fn show(visit: &Visit<'_>) -> Reply {
    let typed = asked(&DECLARATION, &visit.query);
    if DECLARATION.only_asks(|field| visit.query.was_sent(field)) {
        return Reply::html(200, &blank(visit, &typed));
    }
    let (used, filled, notice) = with_drawer(visit, &DECLARATION, &drawer::CLEARANCE);
    match answer_to(&used) {
        Ok(found) => {
            let better = if filled.chooses_drills() { better(&typed, &found) } else { None };
            let notice = notice.map(|notice| notice.saying(better));
            let page = answered(visit, &used, &found, notice);
            Reply::html(
                200,
                &ClearancePage {
                    form: Form::of(&DECLARATION, &typed, &[]).beside(&filled),
                    ..page
                },
            )
        }
        Err(errors) => Reply::html(422, &refused(visit, &typed, errors, notice)),
    }
}

/// What a drill outside the drawer would do better.
fn better(typed: &Asked, found: &clearance::Answer) -> Option<String> {
    let best = answer_to(typed).ok()?;
    drawer::better_clearance(found.hole(), best.drill(), found.drill())
}

fn blank(visit: &Visit<'_>, typed: &Asked) -> ClearancePage {
    let description = "The hole a screw passes through: close, medium or free, its drill, its float, and the hole for centres that are off.";
    ClearancePage {
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
) -> ClearancePage {
    ClearancePage {
        frame: refusing(visit, &DECLARATION).with_drawer(notice),
        form: Form::of(&DECLARATION, typed, &errors),
        errors,
        ..blank(visit, typed)
    }
}

fn answered(
    visit: &Visit<'_>,
    used: &Asked,
    found: &clearance::Answer,
    notice: Option<Notice>,
) -> ClearancePage {
    let screw = found.screw.thread.map_or_else(
        || format!("{} screw", print::with_article(&print::mm(found.screw.major, 3))),
        |thread| thread.designation.to_owned(),
    );
    let heading = format!("Clearance for {screw}, {}", found.fit);
    let hole = print::mm(found.hole(), 3);
    let drill = found.drill().map_or_else(|| hole.clone(), |drill| drill.label.clone());
    let title = format!("{heading}: {drill}");
    let description = format!("{heading}: hole {hole}, drill {drill}.");
    ClearancePage {
        frame: answering(visit, &DECLARATION, used, [&title, &description]).with_drawer(notice),
        heading,
        errors: Vec::new(),
        answer: Some(shown(used, found)),
        form: Form::of(&DECLARATION, used, &[]),
    }
}

fn shown(used: &Asked, found: &clearance::Answer) -> Shown {
    let basis = found.asked.hole.basis;
    let drill = found.drill();
    let row = |name: &str, held: &Drilled, lit| fit_row(name, held, lit);
    let rows = found
        .fits
        .iter()
        .map(|(fit, held)| row(fit.slug(), held, *fit == found.fit))
        .chain(found.model.iter().map(|held| row("model", held, false)))
        .collect();
    let mut key = Key::default();
    let ruling = found.ruling.map(|row| (row, true)).into_iter();
    let also = found.also_printed.iter().map(|row| (*row, false));
    let printed = ruling.chain(also).map(|(row, rules)| printed(row, rules, &mut key)).collect();
    Shown {
        fit: found.fit.to_string(),
        hole: Both::of(found.hole()),
        drill: drill.map(shown_hole),
        get: drill_for(found.hole(), drills::all().iter()).map(Link::drill),
        widened: found.for_errors.is_some_and(|errors| !errors.fit_will_do),
        basis: basis.to_string(),
        sign: key.sign(basis.source()),
        taken: key.practice(&sentence_case(DRILL_TAKEN.cite)),
        float: drill.map(|drill| Both::of(float(drill.diameter, found))),
        screw: Both::of(found.screw.size()),
        measured: found.screw.measured.is_some(),
        for_errors: found
            .for_errors
            .map(|errors| Errors { hole: Both::of(errors.hole), fit_will_do: errors.fit_will_do }),
        rows,
        printed,
        thread: found.screw.thread.map(Link::thread),
        key: key.lines(),
        json: json(&DECLARATION, used),
    }
}

fn float(hole: Length, found: &clearance::Answer) -> Length {
    holewright_core::calc::clearance::float(hole, found.screw.size())
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

fn printed(row: &Holes, rules: bool, key: &mut Key) -> PrintedRow {
    let [close, medium, free] = row.standard.fit_words();
    let fit = |word: &str, size: Length| (sentence_case(word), Column::of(size));
    PrintedRow {
        standard: row.standard.to_string(),
        fits: [
            fit(close, row.close.length()),
            fit(medium, row.medium.length()),
            fit(free, row.free.length()),
        ],
        sign: key.sign(row.source),
        rules,
    }
}
