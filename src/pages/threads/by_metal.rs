//! The tapping size of one thread for each group of metals.

use crate::candidate::{GROUPS, ShownDrill};
use crate::drawer::Drawer;
use crate::figures::Both;
use holewright_core::calc::aim::base_percent;
use holewright_core::calc::engagement;
use holewright_core::calc::tapping::{DrillChoice, usual, usual_of};
use holewright_core::calc::thread_form::Geometry;
use holewright_core::tables::materials::Group;
use holewright_core::tables::threads::Thread;
use holewright_core::units::print;

/// The group the page's big figure is for: the middle of the aim table.
const MIDDLE: Group = Group::IronAndGunmetal;

/// The big figure and the table beneath it.
pub(super) struct ByMetal {
    /// The choice for the middle group.
    pub(super) usual: ShownDrill,
    pub(super) usual_metals: String,
    pub(super) rows: Vec<MetalRow>,
}

/// The hole where no drill held is large enough.
pub(super) struct Bored {
    pub(super) size: Both,
    pub(super) aim: String,
}

/// The hole to bore for a thread beyond the drills; none for taper threads.
pub(super) fn bored(thread: &Thread, geometry: &Geometry) -> Option<Bored> {
    let aim = base_percent(MIDDLE);
    engagement::applies(thread).then(|| Bored {
        size: Both::of(engagement::hole_for(thread.form(), geometry, aim)),
        aim: format!("{} %", print::fixed(aim, 0)),
    })
}

/// One group of metals.
pub(super) struct MetalRow {
    pub(super) metals: &'static str,
    pub(super) aim: String,
    pub(super) drill: ShownDrill,
    pub(super) engagement: String,
    /// The big figure is this one.
    pub(super) lit: bool,
    /// It is in the reader's drawer.
    pub(super) yours: bool,
}

/// What the reader's drawer has for the big figure's metals.
pub(super) struct FromDrawer {
    /// None where nothing in it leaves a usable thread.
    pub(super) drill: Option<ShownDrill>,
}

/// The choice from the reader's drawer; none where it lists no drills.
pub(super) fn from_drawer(thread: &'static Thread, drawer: Option<&Drawer>) -> Option<FromDrawer> {
    let held = drawer?.drills.held();
    (!held.is_empty() && engagement::applies(thread)).then(|| {
        let choice = usual_of(thread, MIDDLE, held.iter().copied());
        let shown = |choice: DrillChoice| ShownDrill::of(&choice.chosen, choice.largest_hole);
        FromDrawer { drill: choice.ok().map(shown) }
    })
}

/// The tapping sizes of a thread by metal; none for taper threads.
pub(super) fn by_metal(thread: &'static Thread, drawer: Option<&Drawer>) -> Option<ByMetal> {
    let rows: Vec<MetalRow> = GROUPS
        .into_iter()
        .filter_map(|group| usual(thread, group).ok().map(|choice| row(group, &choice, drawer)))
        .collect();
    let usual = rows.iter().find(|row| row.lit)?;
    Some(ByMetal { usual: usual.drill.clone(), usual_metals: MIDDLE.to_string(), rows })
}

/// The group in few words, for a column on a small screen; its material pages say the rest.
const fn short(group: Group) -> &'static str {
    match group {
        Group::EasyCutting => "Brass, aluminium, plastics",
        Group::IronAndGunmetal => "Cast iron, gunmetal",
        Group::FreeCuttingSteel => "Free-cutting mild steel",
        Group::MildSteelAndPhosphorBronze => "Other mild steel, phosphor bronze",
        Group::Tough => "Copper, tool steel, stainless",
    }
}

fn row(group: Group, choice: &DrillChoice, drawer: Option<&Drawer>) -> MetalRow {
    MetalRow {
        metals: short(group),
        aim: print::fixed(choice.aim_percent, 0),
        drill: ShownDrill::of(&choice.chosen, choice.largest_hole),
        engagement: print::fixed(choice.chosen.engagement_percent, 1),
        lit: group == MIDDLE,
        yours: drawer.is_some_and(|drawer| drawer.drills.has(choice.chosen.drill)),
    }
}
