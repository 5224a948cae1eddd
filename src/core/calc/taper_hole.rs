//! The holes that a taper pipe thread is tapped in, and how deep.
//!
//! A taper thread has no engagement figure: its hole is the printed list's, or follows from the diameter
//! at the gauge plane and the taper of 1 in 16.

use crate::calc::thread_form::Geometry;
use crate::tables::drills::{self, Drill};
use crate::tables::lists::{self, TaperHole};
use crate::tables::source::{Grade, Source};
use crate::tables::threads::Thread;
use crate::units::{Length, exceeds, in_mm, mm, print};

/// Taper on diameter: 1 in 16 (ISO 7-1, ASME B1.20.1).
const TAPER: f64 = 1.0 / 16.0;
/// Threads that a joint is screwed on beyond hand tight. Common practice, no source.
const WRENCH_THREADS: f64 = 3.0;
/// Threads to the gauge plane, where no gauge length is printed: the printed ones lie at 4.3 to 4.5.
/// Common practice, no source.
const GAUGE_THREADS: f64 = 4.5;
/// Threads of a taper tap's lead. Common practice, no source.
const LEAD_THREADS: f64 = 3.0;

/// One way to make the hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// How it is made.
    pub way: TaperHole,
    /// The diameter to drill.
    pub diameter: Length,
    /// The drill as its list names it, or the diameter.
    pub label: String,
    /// Where it comes from.
    pub source: Source,
}

/// The depths of a taper thread, from the face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Depths {
    /// How far the mating thread goes in by hand: the gauge length.
    pub hand_tight: Length,
    /// Whether the gauge length is printed for this size.
    pub gauge_is_printed: bool,
    /// Length of useful thread: hand tight and three threads more.
    pub thread: Length,
    /// To the end of the full diameter of the drill: the tap's lead and one thread more.
    pub drill: Length,
}

const DERIVED: Source = Source {
    cite: "minor diameter at the gauge plane, less 1/16 of the length of thread",
    grade: Grade::Derived,
};

/// The depths for a taper thread; `None` for other threads.
///
/// # Source
/// The gauge length is the standard's, where one is printed; what is screwed on beyond it is common
/// practice, no source.
#[must_use]
pub fn depths(thread: &Thread, geometry: &Geometry) -> Option<Depths> {
    let printed = thread.taper?.gauge_length.map(|length| length.length());
    let hand_tight = printed.unwrap_or(geometry.pitch * GAUGE_THREADS);
    let useful = hand_tight + geometry.pitch * WRENCH_THREADS;
    Some(Depths {
        hand_tight,
        gauge_is_printed: printed.is_some(),
        thread: useful,
        drill: useful + geometry.pitch * (LEAD_THREADS + 1.0),
    })
}

/// Every way to make the hole of a taper thread, the straight hole first; none for other threads.
///
/// # Source
/// The standard's or a maker's list, where one is held. Where none is, the hole before taper reaming is
/// the minor diameter at the face less 1/16 of the thread's length, and the straight hole is that too.
///
/// # Examples
/// 1/8 NPT: letter Q straight (Machinery's Handbook 31st ed. p. 1005). R 1/8: 8.2 mm straight by a tap
/// maker's list; before a taper reamer 8.1 mm by geometry.
/// ```
/// use holewright_core::calc::{taper_hole::holes, thread_form::geometry};
/// use holewright_core::tables::threads::find;
/// use holewright_core::units::print;
/// let of = |system| {
///     let thread = find(system, "1-8").unwrap();
///     holes(thread, &geometry(thread))
///         .into_iter()
///         .map(|hole| (hole.way.slug(), print::mm(hole.diameter, 2)))
///         .collect::<Vec<_>>()
/// };
/// assert_eq!(of("npt"), [("straight", "8.43 mm".into()), ("taper-reamed", "8.33 mm".into())]);
/// assert_eq!(
///     of("bspt"),
///     [
///         ("straight", "8.2 mm".to_owned()),
///         ("taper-reamed", "8.1 mm".into()),
///         ("parallel-thread", "8.6 mm".into()),
///     ]
/// );
/// ```
#[must_use]
pub fn holes(thread: &Thread, geometry: &Geometry) -> Vec<Hole> {
    let Some(depths) = depths(thread, geometry) else { return Vec::new() };
    let small_end = geometry.minor_internal - depths.thread * TAPER;
    let of = |way| {
        let listed = lists::for_thread(thread).find(|listed| listed.taper_hole == Some(way));
        match listed {
            Some(listed) => Some(Hole {
                way,
                diameter: listed.drill.length(),
                label: listed.label.to_owned(),
                source: listed.source,
            }),
            None if way == TaperHole::ParallelThread => None,
            None => Some(derived(way, small_end)),
        }
    };
    [TaperHole::Straight, TaperHole::Reamed, TaperHole::ParallelThread]
        .into_iter()
        .filter_map(of)
        .collect()
}

/// The hole by geometry: the largest drill there is that is not over it, or its size to bore.
fn derived(way: TaperHole, diameter: Length) -> Hole {
    let drills = drills::all().iter().filter(|drill| !exceeds(drill.diameter, diameter));
    let largest = drills.max_by(|a, b| in_mm(a.diameter).total_cmp(&in_mm(b.diameter)));
    let is_bored = exceeds(diameter, mm(LARGEST_DRILL_MM));
    match largest.filter(|_| !is_bored) {
        Some(drill) => {
            Hole { way, diameter: drill.diameter, label: drill.label.clone(), source: DERIVED }
        }
        None => Hole { way, diameter, label: print::mm(diameter, 1), source: DERIVED },
    }
}

/// The largest drill of the series, in millimetres: past it a hole is bored.
const LARGEST_DRILL_MM: f64 = 25.5;

/// The drill at hand for such a hole: the largest not over it, and not more than a quarter of the pitch
/// under it. A larger hole leaves the tap too little to cut before the joint is tight.
#[must_use]
pub fn drill_for(
    hole: &Hole,
    geometry: &Geometry,
    at_hand: impl IntoIterator<Item = &'static Drill>,
) -> Option<&'static Drill> {
    let least = hole.diameter - geometry.pitch * 0.25;
    at_hand
        .into_iter()
        .filter(|drill| !exceeds(drill.diameter, hole.diameter) && drill.diameter >= least)
        .max_by(|a, b| in_mm(a.diameter).total_cmp(&in_mm(b.diameter)))
}
