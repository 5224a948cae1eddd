//! `/threads/{system}`: one table of all sizes of a system; `material` says what is tapped.

use askama::Template;

use super::elsewhere;
use super::tapped_in::{self, MATERIAL};
use crate::candidate::Verdict;
use crate::drawer::{Drawer, Notice};
use crate::field::Field;
use crate::figures::Column;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{FieldError, Query, Reply, Visit, controls, query};
use holewright_core::calc::clearance::medium_drill;
use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::tapped_in::TappedIn;
use holewright_core::calc::thread_form::{engagement_basis, geometry, thread_angle};
use holewright_core::tables::source::Grade;
use holewright_core::tables::threads::{self, System, Thread};
use holewright_core::units::print::sentence as sentence_case;
use holewright_core::units::{in_degrees, in_mm, print};

#[derive(Template)]
#[template(path = "threads/system.html")]
struct SystemPage {
    frame: Frame,
    system: &'static System,
    angle: String,
    /// The nut's minor diameter differs from the screw's in 60° forms.
    two_minors: bool,
    /// Engagement, and what it is a percentage of; none for taper threads.
    tapping: Option<Tapping>,
    /// The choice of what is tapped.
    material: Field,
    errors: Vec<FieldError>,
    /// The table as a file.
    csv: String,
    rows: Vec<SystemRow>,
    /// The sizes whose diameter and pitch are known from memory alone, with what that is worth.
    recalled: Option<Recalled>,
}

struct Recalled {
    /// What of them: `Diameter and pitch`.
    what: &'static str,
    sizes: String,
    grade: Grade,
}

struct Tapping {
    aim: String,
    /// What the sizes are for: `grey cast iron, gunmetal and leaded bronze`.
    tapped_in: String,
    /// The standard whose largest hole the marks go by; empty where none is held.
    limit: String,
    /// With how far it can be trusted, unless that is said of all the sizes below the table.
    basis: String,
}

struct SystemRow {
    link: Link,
    id: &'static str,
    pitch: String,
    threads_per_inch: String,
    major: Column,
    effective: Column,
    minor: Column,
    minor_internal: Column,
    tapping: Option<TappingCell>,
    /// The drill for the medium fit.
    clearance: Option<Link>,
}

struct TappingCell {
    link: Link,
    engagement: String,
    verdict: Verdict,
    /// It is in the reader's drawer.
    yours: bool,
}

/// One system's table.
pub(crate) fn system(visit: &Visit<'_>, slug: &str) -> Reply {
    match threads::system(slug) {
        Some(system) => match tapped_in::read(&visit.query) {
            Ok(tapped_in) => Reply::html(200, &page(visit, system, tapped_in)),
            Err(error) => Reply::html(422, &mistake(visit, system, error)),
        },
        None => elsewhere::system(visit, slug),
    }
}

fn page(visit: &Visit<'_>, system: &'static System, tapped_in: TappedIn) -> SystemPage {
    let title = format!("{}, all sizes", system.name);
    let description = format!(
        "{} ({}): pitch, diameters and tapping size of every size.",
        system.name, system.standard
    );
    let drawer = visit.drawer();
    let rows: Vec<SystemRow> =
        system.threads.iter().map(|thread| row(thread, tapped_in, drawer)).collect();
    let recalled = recalled(system);
    let basis = engagement_basis(system.form);
    let tapping = rows.iter().any(|row| row.tapping.is_some()).then(|| Tapping {
        aim: print::trimmed(tapped_in.aim_percent(), 0),
        tapped_in: tapped_in.words(),
        limit: limit(system),
        basis: match recalled.as_ref().is_some_and(|recalled| recalled.what == WHOLE) {
            true => basis.words.to_owned(),
            false => basis.to_string(),
        },
    });
    let (title, pairs) = match tapped_in {
        TappedIn::UsualGroup => (title, None),
        TappedIn::Material(material) => {
            (format!("{title}, in {}", material.name), Some((MATERIAL, material.slug)))
        }
    };
    let address = |ending: &str| query::address(&format!("{}{ending}", visit.path), pairs);
    SystemPage {
        frame: Frame::at(visit.context, Section::Threads, &address(""), &title, &description)
            .with_drawer(tapping.as_ref().and_then(|_| Notice::of_marks(drawer))),
        system,
        angle: print::trimmed(in_degrees(thread_angle(system.form)), 1),
        two_minors: rows.iter().any(|row| row.minor.mm != row.minor_internal.mm),
        tapping,
        material: material(system, &visit.query, &[]),
        errors: Vec::new(),
        csv: address(".csv"),
        rows,
        recalled,
    }
}

/// The page of a material that cannot be used: no row stands on it, so that none is taken for an answer.
fn mistake(visit: &Visit<'_>, system: &'static System, error: FieldError) -> SystemPage {
    let errors = vec![error];
    let title = format!("Error: {}", system.name);
    let material = material(system, &visit.query.clone().cut(&[MATERIAL]), &errors);
    let page = page(visit, system, TappedIn::UsualGroup);
    let frame = Frame::new(visit, Section::Threads, &title, system.used_for).of_a_mistake();
    SystemPage { frame, material, errors, rows: Vec::new(), ..page }
}

fn material(system: &System, query: &Query, errors: &[FieldError]) -> Field {
    let fill = |name: &str, value: &str| {
        query::address(&format!("/threads/{}", system.slug), [(name, value)])
    };
    controls::metal(
        MATERIAL,
        "Material that is tapped",
        &sentence_case(&TappedIn::UsualGroup.words()),
        query.get(MATERIAL),
    )
    .judged(errors, fill)
}

fn limit(system: &'static System) -> String {
    let of = |thread: &'static Thread| largest_hole(thread, &geometry(thread));
    system.threads.iter().find_map(of).map_or_else(String::new, |limit| limit.named())
}

/// What is recalled where the form is as well, and of every size.
const WHOLE: &str = "Form, diameter and pitch";

fn recalled(system: &System) -> Option<Recalled> {
    let recalled = system.threads.iter().filter(|thread| thread.grade() == Grade::Memory);
    let recalled: Vec<&str> = recalled.map(|thread| thread.designation).collect();
    let is_form_recalled = engagement_basis(system.form).grade == Grade::Memory;
    let part = "Diameter and pitch";
    let (what, sizes) = match recalled.len() {
        0 => return None,
        count if count == system.threads.len() => {
            (if is_form_recalled { WHOLE } else { part }, "every size".to_owned())
        }
        _ => (part, recalled.join(", ")),
    };
    Some(Recalled { what, sizes, grade: Grade::Memory })
}

fn row(thread: &'static Thread, tapped_in: TappedIn, drawer: Option<&Drawer>) -> SystemRow {
    let geometry = geometry(thread);
    let tapping = tapped_in.choice(thread).ok().map(|choice| TappingCell {
        link: Link::drill(choice.chosen.drill),
        engagement: print::fixed(choice.chosen.engagement_percent, 1),
        verdict: Verdict::of(&choice.chosen, choice.largest_hole),
        yours: drawer.is_some_and(|drawer| drawer.drills.has(choice.chosen.drill)),
    });
    SystemRow {
        link: Link::thread(thread),
        id: thread.size,
        pitch: print::fixed(in_mm(geometry.pitch), 3),
        threads_per_inch: print::fixed(geometry.threads_per_inch, 2),
        major: Column::of(geometry.major),
        effective: Column::of(geometry.effective),
        minor: Column::of(geometry.minor),
        minor_internal: Column::of(geometry.minor_internal),
        tapping,
        clearance: medium_drill(thread).map(Link::drill),
    }
}
