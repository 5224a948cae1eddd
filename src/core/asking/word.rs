//! The words an address may hold where there is a choice of a few; the first is what an empty field
//! means, unless it may be left open.

use crate::calc::clearance::Fit;
use crate::calc::tool_steel::ToolSteel;

/// One choice: its word in an address, the words a person reads, what it means.
#[derive(Clone, Copy, Debug)]
pub struct Word<T> {
    /// Its word in an address.
    pub slug: &'static str,
    /// The words a person reads.
    pub words: &'static str,
    /// What it means.
    pub value: T,
}

/// A choice.
pub const fn word<T>(slug: &'static str, words: &'static str, value: T) -> Word<T> {
    Word { slug, words, value }
}

/// How freely a screw passes.
pub static FITS: &[Word<Fit>] = &[
    word("medium", "Medium, the usual", Fit::Medium),
    word("close", "Close", Fit::Close),
    word("free", "Free", Fit::Free),
];

/// What a tool is made of.
pub static TOOL_STEELS: &[Word<ToolSteel>] = &[
    word("hss", "High-speed steel", ToolSteel::HighSpeed),
    word("carbon", "Carbon steel", ToolSteel::Carbon),
];
