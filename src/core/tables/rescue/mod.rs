//! What to do when a hole, a tap or a thread goes wrong: each trouble with its cautions first, then the
//! ways out in order, the cheapest and safest first, every sentence with its source.
//!
//! No acid is advised for anything. What a bath does to a metal is the metal's own to say
//! ([`BrokenTap`]). Leaves out the figures, which the calculators work out.

mod broken_drill;
mod broken_screw;
mod broken_tap;
mod crooked_tap;
mod hole_astray;
mod loose_thread;
mod stripped_thread;
mod tight_tap;
mod torn_thread;

use crate::tables::materials::{Advice, BrokenTap, Material};
use crate::tables::source::Source;
use crate::tables::tool_steel::ToolSteel;

/// One thing that goes wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trouble {
    /// Its part of the address, a promise: `broken-tap`.
    pub slug: &'static str,
    /// What it is called: `A broken tap`.
    pub title: &'static str,
    /// What to do before anything else.
    pub first: Advice,
    /// What it is called outright, as people type it.
    pub names: &'static [&'static str],
    /// How a text tells of it: a word of each list stands in it.
    pub signs: &'static [Signs],
    /// What can hurt, before any step.
    pub dangers: &'static [Advice],
    /// The ways out, in order.
    pub ways: &'static [Way],
    /// When to stop.
    pub stop: Advice,
    /// Pages that go further.
    pub see: &'static [See],
}

/// Stands among the first words where naming a thread says as much: `stripped 2 BA`.
pub const A_THREAD: &str = "a thread";

/// Words that tell of a trouble: one of the first with one of the second.
pub type Signs = [&'static [&'static str]; 2];

/// One way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Way {
    /// What is done, in a few words: `Wind it back`.
    pub name: &'static str,
    /// For which metals of the part; for all where none stands here.
    pub parts: &'static [BrokenTap],
    /// For which steels of the tap; for both where none stands here.
    pub taps: &'static [ToolSteel],
    /// How, in order.
    pub says: &'static [Advice],
    /// What can hurt in it.
    pub dangers: &'static [Advice],
}

/// A page that goes further.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct See {
    /// Its address on this server.
    pub url: &'static str,
    /// What it is called.
    pub words: &'static str,
}

/// Every trouble, in the order the pages list them.
static ALL: &[Trouble] = &[
    broken_tap::TROUBLE,
    tight_tap::TROUBLE,
    crooked_tap::TROUBLE,
    broken_drill::TROUBLE,
    hole_astray::TROUBLE,
    stripped_thread::TROUBLE,
    torn_thread::TROUBLE,
    loose_thread::TROUBLE,
    broken_screw::TROUBLE,
];

/// Every trouble, in the order the pages list them.
#[must_use]
pub fn all() -> &'static [Trouble] {
    ALL
}

/// The trouble at an address.
///
/// # Examples
/// ```
/// use holewright_core::tables::rescue::find;
/// assert_eq!(find("broken-tap").map(|found| found.title), Some("A broken tap"));
/// assert_eq!(find("cheese"), None);
/// ```
#[must_use]
pub fn find(slug: &str) -> Option<&'static Trouble> {
    ALL.iter().find(|trouble| trouble.slug == slug)
}

/// What a part under steam or pressure asks for, whatever went wrong in it.
pub const PRESSURE: Advice = practice(
    "On a boiler, a cylinder or any part for steam, water or pressure: stop, and show it to the club's boiler inspector before anything is drilled, plugged, bushed or heated. The national boiler code decides.",
);

/// Said of every trouble.
pub const EYES: Advice = practice(
    "Goggles before anything is touched: hard steel under a punch, a pick or a drill flies like glass.",
);

impl Trouble {
    /// Its page: `/rescue/broken-tap`.
    #[must_use]
    pub fn path(&self) -> String {
        format!("/rescue/{}", self.slug)
    }

    /// Whether it is a tap that broke: each metal says what may be done about that.
    #[must_use]
    pub fn is_of_broken_tap(&self) -> bool {
        self.slug == broken_tap::TROUBLE.slug
    }

    /// Whether a wire insert is one of its ways.
    #[must_use]
    pub fn has_inserts(&self) -> bool {
        self.slug == stripped_thread::TROUBLE.slug
    }

    /// Whether what to do turns on the metal of the part or the steel of the tool.
    #[must_use]
    pub fn turns_on_metal(&self) -> bool {
        self.ways.iter().any(|way| !way.parts.is_empty() || !way.taps.is_empty())
    }

    /// The ways out that serve in a part of this metal with a tool of this steel; what is not known
    /// leaves nothing out.
    pub fn ways_for(
        &self,
        part: Option<&Material>,
        tool: Option<ToolSteel>,
    ) -> impl Iterator<Item = &'static Way> + use<> {
        let part = part.map(|part| part.broken_tap);
        let ways: &'static [Way] = self.ways;
        ways.iter().filter(move |way| way.serves(part, tool))
    }

    /// Every sentence of it.
    pub fn sentences(&self) -> impl Iterator<Item = Advice> + use<> {
        let ways: &'static [Way] = self.ways;
        let of_ways = ways.iter().flat_map(|way| way.dangers.iter().chain(way.says));
        let dangers: &'static [Advice] = self.dangers;
        [self.first, self.stop].into_iter().chain(dangers.iter().chain(of_ways).copied())
    }
}

impl Way {
    /// Whether it serves in a part of this metal with a tool of this steel.
    #[must_use]
    pub fn serves(&self, part: Option<BrokenTap>, tool: Option<ToolSteel>) -> bool {
        let fits_part = self.parts.is_empty() || part.is_none_or(|part| self.parts.contains(&part));
        let fits_tool = self.taps.is_empty() || tool.is_none_or(|tool| self.taps.contains(&tool));
        fits_part && fits_tool
    }

    /// For what it is, where it is not for everything: `brass, bronze or copper; a carbon steel tap`.
    #[must_use]
    pub fn only_for(&self) -> String {
        let parts = joined(self.parts.iter().map(|part| part_words(*part)));
        let tool = |steel: &ToolSteel| format!("a tool of {}", steel.name());
        let tools = joined(self.taps.iter().map(tool));
        [parts, tools].into_iter().filter(|words| !words.is_empty()).collect::<Vec<_>>().join("; ")
    }
}

/// Words joined by or.
fn joined(words: impl Iterator<Item = String>) -> String {
    words.collect::<Vec<_>>().join(" or ")
}

/// The metals that a bath treats alike, in words.
fn part_words(part: BrokenTap) -> String {
    match part {
        BrokenTap::HotAlum => "brass, bronze, gunmetal and copper",
        BrokenTap::NeverAlum => "iron and steel",
        BrokenTap::AlumUnconfirmed => "aluminium and other metals not confirmed",
        BrokenTap::AlumAttacks => "magnesium and zinc",
        BrokenTap::NoNeed => "plastics",
    }
    .to_owned()
}

/// A way for every metal and every tool.
const fn way(name: &'static str, says: &'static [Advice]) -> Way {
    Way { name, parts: &[], taps: &[], says, dangers: &[] }
}

/// Advice of the trade with no published source.
const fn practice(text: &'static str) -> Advice {
    Advice { text, source: Source::common_practice("workshop practice") }
}

/// Advice read in the source named.
const fn read(text: &'static str, source: Source) -> Advice {
    Advice { text, source }
}

/// Chips in the eyes.
const NO_AIR_LINE: Advice = practice(
    "Lift the chips out with a pick, a dab of grease on a wire, or a rinse, never with an air line.",
);
