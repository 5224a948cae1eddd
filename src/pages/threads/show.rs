//! `/threads/{system}/{size}`: one thread – tapping size, clearance, dimensions, near relations.

use askama::Template;

use super::by_metal::{Bored, ByMetal, FromDrawer, bored, by_metal, from_drawer};
use super::clearance::{ClearanceRow, Clears, PrintedRow, clearance, clears, printed};
use super::dimensions::{DimensionRow, OtherFigure, lengths, others};
use super::elsewhere;
use super::relations::{ListRow, LookAlikeRow, listed, look_alikes, same};
use super::taper::{Taper, TaperHole, taper};
use super::tapping::{TappingRow, tapping};
use crate::candidate::ShownDrill;
use crate::drawer::Notice;
use crate::field::Field;
use crate::figures::{Both, Column};
use crate::key::{Key, KeyLine, PRACTICE, Sign};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::plan::short_form_for;
use crate::{Reply, Visit, query};
use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::thread_form::{Geometry, engagement_basis_of, geometry};
use holewright_core::drawing::{DrawingIds, thread_profile};
use holewright_core::tables::threads::{self, Basis, Thread};

#[derive(Template)]
#[template(path = "threads/show.html")]
struct ThreadPage {
    frame: Frame,
    thread: &'static Thread,
    system: Link,
    standard: &'static str,
    basis: Basis,
    tapping: Option<ByMetal>,
    /// A taper thread’s holes, in the place of the tapping sizes.
    taper: Option<Taper>,
    /// Where the aims come from.
    aim_sign: Option<Sign>,
    from_drawer: Option<FromDrawer>,
    /// Where the thread is beyond the drills.
    bored: Option<Bored>,
    /// Every drill worth listing.
    drills: Vec<TappingRow>,
    /// The drills are figured on both 60° bases.
    two_bases: bool,
    largest_hole: Option<LargestHole>,
    /// The fits that have a drill.
    clears: Vec<Clears>,
    clearance: Vec<ClearanceRow>,
    printed: Vec<PrintedRow>,
    dimensions: Vec<DimensionRow>,
    other_figures: Vec<OtherFigure>,
    same: Vec<Link>,
    look_alikes: Vec<LookAlikeRow>,
    listed: Vec<ListRow>,
    /// Where the basic sizes were read.
    read_in: Vec<Sign>,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
    drawing: String,
    plan_fields: Vec<Field>,
    /// The calculators with this thread filled in.
    tapping_calculator: String,
    clearance_calculator: String,
    fastener_calculator: String,
}

struct LargestHole {
    size: Column,
    standard: String,
}

/// One thread.
pub(crate) fn show(visit: &Visit<'_>, system: &str, size: &str) -> Reply {
    match threads::find(system, size) {
        Some(thread) => Reply::html(200, &page(visit, thread)),
        None => elsewhere::thread(visit, system, size),
    }
}

fn page(visit: &Visit<'_>, thread: &'static Thread) -> ThreadPage {
    let system = thread.system.system();
    let geometry = geometry(thread);
    let limit = largest_hole(thread, &geometry);
    let drawer = visit.drawer();
    let by_metal = by_metal(thread, drawer);
    let drills = tapping(thread, &geometry, limit, drawer);
    let clearance = clearance(thread, &geometry);
    // In the order of the page, so that its signs run from a.
    let mut key = Key::default();
    let bored = if by_metal.is_none() { bored(thread, &geometry) } else { None };
    let is_aimed = by_metal.is_some() || bored.is_some();
    let aim_sign = is_aimed.then(|| key.sign(PRACTICE));
    let taper = taper(thread, &geometry, &mut key);
    let read_in = thread.sources.iter().map(|source| key.sign(*source)).collect();
    let listed = listed(thread, &geometry, &mut key);
    let usual = by_metal.as_ref().map(|metals| &metals.usual);
    let taper_hole = taper.as_ref().map(|taper| &taper.first);
    ThreadPage {
        frame: frame(visit, thread, &geometry, usual, taper_hole),
        thread,
        system: Link::new(format!("/threads/{}", system.slug), system.name),
        standard: system.standard,
        basis: engagement_basis_of(thread),
        bored,
        taper,
        aim_sign,
        from_drawer: from_drawer(thread, drawer),
        tapping: by_metal,
        two_bases: drills.iter().any(|row| row.other_basis.is_some()),
        drills,
        largest_hole: limit
            .map(|limit| LargestHole { size: Column::of(limit.diameter), standard: limit.named() }),
        clears: clears(&clearance),
        clearance,
        printed: printed(thread),
        dimensions: lengths(thread, &geometry),
        other_figures: others(&geometry),
        same: same(thread),
        look_alikes: look_alikes(thread),
        listed,
        read_in,
        key: key.lines(),
        drawing: thread_profile(thread, DrawingIds::new("profile")),
        plan_fields: short_form_for(thread),
        tapping_calculator: calculator("tapping", thread),
        clearance_calculator: calculator("clearance", thread),
        fastener_calculator: calculator("fastener", thread),
    }
}

fn frame(
    visit: &Visit<'_>,
    thread: &Thread,
    geometry: &Geometry,
    usual: Option<&ShownDrill>,
    taper: Option<&TaperHole>,
) -> Frame {
    let Both { mm, inch } = Both::of(geometry.major);
    let pitch = Both::of(geometry.pitch).mm;
    let name = thread.designation;
    let title = match (usual, taper) {
        (Some(drill), _) => {
            format!("{name}: tapping size {}, {}", drill.link.words, drill.engagement)
        }
        (None, Some(hole)) => format!("{name}: tapping size {}, straight hole", hole.label),
        (None, None) => format!("{name}: dimensions"),
    };
    let description =
        format!("{}: major diameter {mm} ({inch}), pitch {pitch}.", thread.designation);
    let frame = Frame::new(visit, Section::Threads, &title, &description);
    // Without a tapping drill there is nothing to mark.
    frame.with_drawer(usual.and_then(|_| Notice::of_marks(visit.drawer())))
}

/// A calculator's address with this thread filled in.
fn calculator(name: &str, thread: &Thread) -> String {
    query::address(&format!("/calculators/{name}"), [("thread", thread.designation)])
}
