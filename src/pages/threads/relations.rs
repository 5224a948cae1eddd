//! What one thread is also called, what it could be mistaken for, and what the lists print for it.

use crate::figures::{self, Both};
use crate::key::{Key, Sign};
use crate::link::Link;
use holewright_core::calc::engagement;
use holewright_core::calc::relations::{self, LookAlike, same_as};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::lists::{self, ListedDrill};
use holewright_core::tables::threads::Thread;
use holewright_core::units::print;
use holewright_core::units::print::sentence as sentence_case;

/// A look-alike.
pub(super) struct LookAlikeRow {
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
    pub(super) list: &'static str,
    pub(super) drill: &'static str,
    pub(super) size: Both,
    pub(super) engagement: String,
    pub(super) note: &'static str,
    pub(super) sign: Sign,
}

/// The same thread under other names.
pub(super) fn same(thread: &Thread) -> Vec<Link> {
    same_as(thread).map(Link::thread).collect()
}

/// The threads that could be mistaken for this one.
pub(super) fn look_alikes(thread: &Thread) -> Vec<LookAlikeRow> {
    let row = |other: &LookAlike| LookAlikeRow {
        link: Link::thread(other.thread),
        likeness: sentence_case(&other.likeness.to_string()),
        major: figures::signed(other.major_percent, 1),
        pitch: figures::signed(other.pitch_percent, 1),
    };
    relations::look_alikes(thread).iter().map(row).collect()
}

/// What the published lists print for it.
pub(super) fn listed(thread: &'static Thread, geometry: &Geometry, key: &mut Key) -> Vec<ListRow> {
    let engagement = |row: &ListedDrill| {
        if engagement::applies(thread) {
            print::fixed(engagement::percent(thread.form(), geometry, row.drill.length()), 1)
        } else {
            "–".to_owned()
        }
    };
    lists::for_thread(thread)
        .map(|row| ListRow {
            list: row.list,
            drill: row.label,
            size: Both::of(row.drill.length()),
            engagement: engagement(row),
            note: row.note.unwrap_or_default(),
            sign: key.sign(row.source),
        })
        .collect()
}
