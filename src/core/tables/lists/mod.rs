//! Published tapping-drill lists, by name: what the chart on the reader's wall says.
//!
//! A row holds what its list prints, slips included where they carry a note. Which drill we would
//! take is worked out in [`crate::calc::tapping`]. Miniature lists, which give ranges by depth,
//! are not held.

mod british;
mod metric;
mod model_engineer;
mod pipe;
mod unified;

use crate::tables::source::Source;
use crate::tables::threads::{SystemId, TappingLists, Thread};
use crate::units::Printed;

/// One entry of one list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ListedDrill {
    /// The list as pages name it: `ISO 2306`.
    pub list: &'static str,
    /// The system of the thread.
    pub system: SystemId,
    /// The size of the thread as addresses write it.
    pub size: &'static str,
    /// The drill's diameter.
    pub drill: Printed,
    /// The drill as the list names it: `2.5 mm`, `No. 46`.
    pub label: &'static str,
    /// Where the entry was read.
    pub source: Source,
    /// What is wrong with the entry, if anything is.
    pub note: Option<&'static str>,
    /// How the hole is made that a taper thread is tapped in; `None` for other threads.
    pub taper_hole: Option<TaperHole>,
}

/// How the hole is made that a taper thread is tapped in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TaperHole {
    /// A straight hole, drilled and tapped.
    Straight,
    /// Drilled, and opened with a taper reamer before it is tapped.
    Reamed,
    /// A parallel thread that takes the taper one: Rp.
    ParallelThread,
}

impl TaperHole {
    /// The word in JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Straight => "straight",
            Self::Reamed => "taper-reamed",
            Self::ParallelThread => "parallel-thread",
        }
    }

    /// The words on the page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Straight => "Taper thread, straight hole",
            Self::Reamed => "Taper thread, hole taper reamed",
            Self::ParallelThread => "Parallel thread for a taper fitting (Rp)",
        }
    }
}

/// One list for one system, of which rows are made.
struct List {
    name: &'static str,
    system: SystemId,
    source: Source,
}

impl List {
    const fn row(&self, size: &'static str, drill: Printed, label: &'static str) -> ListedDrill {
        let Self { name: list, system, source } = *self;
        ListedDrill { list, system, size, drill, label, source, note: None, taper_hole: None }
    }
}

impl ListedDrill {
    /// The same entry, of a taper thread in a hole made this way.
    const fn of_taper(self, hole: TaperHole) -> Self {
        Self { taper_hole: Some(hole), ..self }
    }

    /// The same entry with a warning.
    const fn with_note(self, note: &'static str) -> Self {
        Self { note: Some(note), ..self }
    }
}

/// Every entry of every list.
pub fn all() -> impl Iterator<Item = &'static ListedDrill> {
    [metric::ROWS, british::ROWS, model_engineer::ROWS, unified::ROWS, pipe::ROWS]
        .into_iter()
        .flatten()
}

/// What the lists print for a thread, the standard's list first.
///
/// # Examples
/// For 5 BA one list has 2.65 mm and another No. 37.
/// ```
/// use holewright_core::tables::{lists, threads};
/// let labels: Vec<_> =
///     lists::for_thread(threads::find("ba", "5").unwrap()).map(|listed| listed.label).collect();
/// assert_eq!(labels, ["2.65 mm", "2.65 mm", "No. 37"]);
/// ```
#[must_use = "the entries are only looked up when the iterator is used"]
pub fn for_thread(thread: &Thread) -> impl Iterator<Item = &'static ListedDrill> {
    let (system, size) = (thread.system, thread.size);
    rows_of(system).iter().filter(move |listed| listed.system == system && listed.size == size)
}

/// The table a system's lists are in.
fn rows_of(system: SystemId) -> &'static [ListedDrill] {
    match system.system().lists {
        TappingLists::British => british::ROWS,
        TappingLists::Metric => metric::ROWS,
        TappingLists::ModelEngineer => model_engineer::ROWS,
        TappingLists::Pipe => pipe::ROWS,
        TappingLists::Unified => unified::ROWS,
        TappingLists::NotHeld => &[],
    }
}
