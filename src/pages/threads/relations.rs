//! What one thread is also called, what it could be mistaken for, and what the lists print for it.

use crate::cited;
use crate::figures::{self, Both};
use crate::link::Link;
use holewright_core::calc::engagement;
use holewright_core::calc::relations::{Near, near, same_as};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::lists::{self, ListedDrill};
use holewright_core::tables::threads::Thread;
use holewright_core::units::print;
use holewright_core::units::print::sentence as sentence_case;

/// A look-alike.
pub(super) struct NearRow {
    pub(super) link: Link,
    /// In what they agree, in words.
    pub(super) likeness: String,
    /// How much larger its major diameter is, percent.
    pub(super) major: String,
    /// How much coarser its pitch is, percent.
    pub(super) pitch: String,
}

/// An entry of a published list.
pub(super) struct ListRow {
    pub(super) list: String,
    pub(super) drill: &'static str,
    pub(super) size: Both,
    pub(super) engagement: String,
    pub(super) note: &'static str,
}

/// The same thread under other names.
pub(super) fn same(thread: &Thread) -> Vec<Link> {
    same_as(thread).map(Link::thread).collect()
}

/// The threads that could be mistaken for this one.
pub(super) fn look_alikes(thread: &Thread) -> Vec<NearRow> {
    let row = |near: &Near| NearRow {
        link: Link::thread(near.thread),
        likeness: sentence_case(&near.likeness.to_string()),
        major: figures::signed(near.major_percent, 1),
        pitch: figures::signed(near.pitch_percent, 1),
    };
    near(thread).iter().map(row).collect()
}

/// What the published lists print for it.
pub(super) fn listed(thread: &'static Thread, geometry: &Geometry) -> Vec<ListRow> {
    let engagement = |row: &ListedDrill| {
        if engagement::applies(thread) {
            print::fixed(engagement::percent(thread.form(), geometry, row.drill.length()), 1)
        } else {
            "–".to_owned()
        }
    };
    lists::for_thread(thread)
        .map(|row| ListRow {
            list: cited::list(row),
            drill: row.label,
            size: Both::of(row.drill.length()),
            engagement: engagement(row),
            note: row.note.unwrap_or_default(),
        })
        .collect()
}
