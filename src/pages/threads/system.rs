//! `/threads/{system}`: one table of all sizes of a system.

use askama::Template;

use super::elsewhere;
use crate::drawer::{Drawer, Notice};
use crate::figures::Column;
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit};
use holewright_core::calc::aim;
use holewright_core::calc::aim::MIDDLE_GROUP;
use holewright_core::calc::tapping::usual;
use holewright_core::calc::thread_form::{engagement_basis, geometry, thread_angle};
use holewright_core::tables::source::Grade;
use holewright_core::tables::threads::{self, Basis, System, Thread};
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
    rows: Vec<SystemRow>,
    /// The sizes whose diameter and pitch are known from memory alone, with what that is worth.
    recalled: Option<Recalled>,
}

struct Recalled {
    sizes: String,
    grade: Grade,
}

struct Tapping {
    aim: String,
    basis: Basis,
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
}

struct TappingCell {
    link: Link,
    engagement: String,
    /// It is in the reader's drawer.
    yours: bool,
}

/// One system's table.
pub(crate) fn system(visit: &Visit<'_>, slug: &str) -> Reply {
    match threads::system(slug) {
        Some(system) => Reply::html(200, &page(visit, system)),
        None => elsewhere::system(visit, slug),
    }
}

fn page(visit: &Visit<'_>, system: &'static System) -> SystemPage {
    let title = format!("{}, all sizes", system.name);
    let description = format!(
        "{} ({}): pitch, diameters and tapping size of every size.",
        system.name, system.standard
    );
    let drawer = visit.drawer();
    let rows: Vec<SystemRow> = system.threads.iter().map(|thread| row(thread, drawer)).collect();
    let tapping = rows.iter().any(|row| row.tapping.is_some()).then(|| Tapping {
        aim: print::trimmed(aim::base_percent(MIDDLE_GROUP), 0),
        basis: engagement_basis(system.form),
    });
    SystemPage {
        frame: Frame::new(visit, Section::Threads, &title, &description)
            .with_drawer(tapping.as_ref().and_then(|_| Notice::of_marks(drawer))),
        system,
        angle: print::trimmed(in_degrees(thread_angle(system.form)), 1),
        two_minors: rows.iter().any(|row| row.minor.mm != row.minor_internal.mm),
        tapping,
        rows,
        recalled: recalled(system),
    }
}

fn recalled(system: &System) -> Option<Recalled> {
    let recalled = system.threads.iter().filter(|thread| thread.grade() == Grade::Memory);
    let recalled: Vec<&str> = recalled.map(|thread| thread.designation).collect();
    let sizes = match recalled.len() {
        0 => return None,
        count if count == system.threads.len() => "every size".to_owned(),
        _ => recalled.join(", "),
    };
    Some(Recalled { sizes, grade: Grade::Memory })
}

fn row(thread: &'static Thread, drawer: Option<&Drawer>) -> SystemRow {
    let geometry = geometry(thread);
    let tapping = usual(thread, MIDDLE_GROUP).ok().map(|choice| TappingCell {
        link: Link::drill(choice.chosen.drill),
        engagement: print::fixed(choice.chosen.engagement_percent, 1),
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
    }
}
