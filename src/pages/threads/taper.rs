//! The holes of a taper thread: straight, taper reamed, and the parallel thread that takes it.

use crate::figures::{Both, Column};
use crate::key::{Key, Sign};
use crate::link::Link;
use holewright_core::calc::taper_hole::{Hole, depths, drill_for, holes};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::drills;
use holewright_core::tables::threads::Thread;

/// The holes, the usual first, and the depths that go with them.
pub(super) struct Taper {
    /// The straight hole: the one that asks for no taper reamer.
    pub(super) first: TaperHole,
    pub(super) rows: Vec<TaperHole>,
    /// How far it goes in by hand, how long the thread is, how deep the drill goes.
    pub(super) depths: [TaperDepth; 3],
    /// Whether the gauge length is printed for this size.
    pub(super) gauge_is_printed: bool,
}

/// One way to make the hole.
#[derive(Clone)]
pub(super) struct TaperHole {
    /// `Taper thread, straight hole`
    pub(super) way: &'static str,
    /// As its list names it: `Letter Q`, `8.2 mm`.
    pub(super) label: String,
    pub(super) size: Both,
    pub(super) column: Column,
    /// A drill held here that serves for it.
    pub(super) drill: Option<Link>,
    pub(super) sign: Sign,
}

/// A depth from the face.
pub(super) struct TaperDepth {
    pub(super) name: &'static str,
    pub(super) size: Both,
}

/// The holes and depths; none for other threads.
pub(super) fn taper(thread: &Thread, geometry: &Geometry, key: &mut Key) -> Option<Taper> {
    let depths = depths(thread, geometry)?;
    let rows: Vec<TaperHole> =
        holes(thread, geometry).into_iter().map(|hole| shown(&hole, geometry, key)).collect();
    let depth = |name, length| TaperDepth { name, size: Both::coarse(length) };
    Some(Taper {
        first: rows.first()?.clone(),
        rows,
        depths: [
            depth("Hand tight, the gauge length", depths.hand_tight),
            depth("Length of thread", depths.thread),
            depth("Drill, to its full diameter", depths.drill),
        ],
        gauge_is_printed: depths.gauge_is_printed,
    })
}

fn shown(hole: &Hole, geometry: &Geometry, key: &mut Key) -> TaperHole {
    TaperHole {
        way: hole.way.words(),
        label: hole.label.clone(),
        size: Both::of(hole.diameter),
        column: Column::of(hole.diameter),
        drill: drill_for(hole, geometry, drills::all()).map(Link::drill),
        sign: key.sign(hole.source),
    }
}
