//! One thing found, ready for a page or for JSON.

use std::borrow::Cow;

/// What kind of thing a hit is, in the order equal scores are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Kind {
    /// One size of one system.
    Thread,
    /// A thread system.
    System,
    /// One drill.
    Drill,
    /// A drill series.
    Series,
    /// A material.
    Material,
    /// Something that goes wrong.
    Rescue,
    /// A calculator, the hole plan among them.
    Calculator,
    /// A list of the reference: threads, drills, materials.
    List,
}

impl Kind {
    /// The name used in JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Thread => "thread",
            Self::System => "system",
            Self::Drill => "drill",
            Self::Series => "series",
            Self::Material => "material",
            Self::Rescue => "rescue",
            Self::Calculator => "calculator",
            Self::List => "list",
        }
    }
}

/// One thing found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hit {
    /// What kind of thing it is.
    pub kind: Kind,
    /// What it is called: `5 BA`, `No. 46`, `Gunmetal`.
    pub title: Cow<'static, str>,
    /// Its address on this server, percent-coded: `/threads/ba/5`.
    pub url: Cow<'static, str>,
    /// What it is, or why it was found, in a few words: `British Association`.
    pub why: String,
}
