//! The thread tables: the systems, the sizes of one system, the tapping drills of one thread.

use super::{Cell, Table};
use crate::calc::clearance::medium_drill;
use crate::calc::engagement::percent_of_internal_height;
use crate::calc::limits::largest_hole;
use crate::calc::tapped_in::TappedIn;
use crate::calc::tapping::candidates;
use crate::calc::thread_form::{geometry, thread_angle};
use crate::tables::lists;
use crate::tables::threads::{System, Thread, systems as all_systems};
use crate::units::{in_degrees, in_mm, print};

/// Every system.
#[must_use]
pub fn systems() -> Table {
    let row = |system: &&System| {
        let angle = print::trimmed(in_degrees(thread_angle(system.form)), 1);
        vec![
            Cell::text(system.slug),
            Cell::text(system.name),
            Cell::text(system.mark),
            Cell::count(system.threads.len()),
            Cell::number(angle),
            Cell::text(system.used_for),
            Cell::text(system.standard),
        ]
    };
    Table {
        columns: &["system", "name", "mark", "sizes", "thread_angle_deg", "used_for", "standard"],
        rows: all_systems().iter().map(row).collect(),
    }
}

const SIZE_COLUMNS: [&str; 18] = [
    "system",
    "size",
    "designation",
    "material",
    "tapping_drill",
    "tapping_engagement_percent",
    "tapping_within_standard",
    "clearance_drill",
    "major_mm",
    "major_in",
    "pitch_mm",
    "threads_per_inch",
    "effective_mm",
    "effective_in",
    "minor_mm",
    "minor_in",
    "minor_internal_mm",
    "minor_internal_in",
];

/// Every size of a system, with the tapping size for what is tapped and the medium clearance drill.
#[must_use]
pub fn sizes(system: &'static System, tapped_in: TappedIn) -> Table {
    let rows = system.threads.iter().map(|thread| size(thread, tapped_in)).collect();
    Table { columns: &SIZE_COLUMNS, rows }
}

fn size(thread: &'static Thread, tapped_in: TappedIn) -> Vec<Cell> {
    let geometry = geometry(thread);
    let tapping = tapped_in.choice(thread).ok().map(|choice| choice.chosen);
    let engagement = tapping.map(|chosen| print::fixed(chosen.engagement_percent, 1));
    let clears = medium_drill(thread).map(|drill| Cell::text(drill.label.as_str()));
    vec![
        Cell::text(thread.system.system().slug),
        Cell::text(thread.size),
        Cell::text(thread.designation),
        Cell::text(tapped_in.slug()),
        Cell::or_empty(tapping.map(|chosen| Cell::text(chosen.drill.label.as_str()))),
        Cell::or_empty(engagement.map(Cell::number)),
        Cell::yes_or_no(tapping.and_then(|chosen| chosen.within_standard)),
        Cell::or_empty(clears),
        Cell::mm(geometry.major),
        Cell::inch(geometry.major),
        Cell::number(print::fixed(in_mm(geometry.pitch), 3)),
        Cell::number(print::fixed(geometry.threads_per_inch, 2)),
        Cell::mm(geometry.effective),
        Cell::inch(geometry.effective),
        Cell::mm(geometry.minor),
        Cell::inch(geometry.minor),
        Cell::mm(geometry.minor_internal),
        Cell::inch(geometry.minor_internal),
    ]
}

/// The table of a thread's page: its tapping drills; for a taper thread, or one beyond the drills, what
/// the published lists print for it; its dimensions where no list is held either.
#[must_use]
pub fn of_thread(thread: &'static Thread) -> Table {
    tapping(thread).or_else(|| listed(thread)).unwrap_or_else(|| Table {
        columns: &SIZE_COLUMNS,
        rows: vec![size(thread, TappedIn::UsualGroup)],
    })
}

/// What the published lists print for a thread; none where no list is held.
fn listed(thread: &'static Thread) -> Option<Table> {
    let rows: Vec<Vec<Cell>> = lists::for_thread(thread)
        .map(|row| {
            vec![
                Cell::text(row.list),
                Cell::text(row.label),
                Cell::mm(row.drill.length()),
                Cell::inch(row.drill.length()),
                Cell::text(row.source.cite),
                Cell::text(row.source.grade.slug()),
                Cell::text(row.note.unwrap_or_default()),
            ]
        })
        .collect();
    (!rows.is_empty()).then_some(Table {
        columns: &["list", "drill", "diameter_mm", "diameter_in", "source", "grade", "note"],
        rows,
    })
}

/// Every tapping drill of a thread worth listing; none where no drill is, or for a taper thread.
fn tapping(thread: &'static Thread) -> Option<Table> {
    let candidates = candidates(thread).ok().filter(|found| !found.is_empty())?;
    let geometry = geometry(thread);
    let standard = largest_hole(thread, &geometry).map(|limit| limit.named());
    let rows = candidates.iter().map(|candidate| {
        let drill = candidate.drill;
        let other = percent_of_internal_height(thread.form(), &geometry, drill.diameter);
        vec![
            Cell::text(drill.series.slug()),
            Cell::text(drill.size.as_str()),
            Cell::text(drill.label.as_str()),
            Cell::mm(drill.diameter),
            Cell::inch(drill.diameter),
            Cell::number(print::fixed(candidate.engagement_percent, 1)),
            Cell::or_empty(other.map(|percent| Cell::number(print::fixed(percent, 1)))),
            Cell::or_empty(standard.as_deref().map(Cell::text)),
            Cell::yes_or_no(candidate.within_standard),
            Cell::yes_or_no(Some(candidate.below_minor)),
        ]
    });
    Some(Table {
        columns: &[
            "series",
            "size",
            "drill",
            "diameter_mm",
            "diameter_in",
            "engagement_percent",
            "engagement_of_five_eighths_h_percent",
            "largest_hole_standard",
            "within_standard",
            "below_least_minor",
        ],
        rows: rows.collect(),
    })
}
