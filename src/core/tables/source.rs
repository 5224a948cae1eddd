//! Where a figure comes from, and how far it can be trusted.

use std::fmt;

/// How a figure came to us.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Read in the source named.
    Published,
    /// Read in a restatement of the source named, not in the source itself.
    SecondHand,
    /// Held by a general-purpose library of parts, not read in print.
    Library,
    /// Computed from a published formula.
    Derived,
    /// Common practice, no published source.
    CommonPractice,
    /// Recalled, no source read: shown as unconfirmed.
    Memory,
}

impl Grade {
    /// Every grade, the surest first.
    pub const ALL: [Self; 6] = [
        Self::Published,
        Self::SecondHand,
        Self::Library,
        Self::Derived,
        Self::CommonPractice,
        Self::Memory,
    ];

    /// The word used in JSON.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::SecondHand => "second-hand",
            Self::Library => "library",
            Self::Derived => "derived",
            Self::CommonPractice => "common-practice",
            Self::Memory => "memory",
        }
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::Published => "published",
            Self::SecondHand => "second-hand",
            Self::Library => "as a parts library holds it, not read in print",
            Self::Derived => "derived from a published formula",
            Self::CommonPractice => "common practice, no source",
            Self::Memory => "from memory, unconfirmed",
        })
    }
}

/// A named source with its grade, in words for a page.
///
/// A standard, a handbook, a textbook or a public body is named with the place to look; a maker, a dealer
/// or a club is told by its kind, and a program and its file never. Where exactly a figure was read
/// stands in `tests/published/sources.csv`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Title, edition, table or page.
    pub cite: &'static str,
    /// How far to trust it.
    pub grade: Grade,
}

impl Source {
    /// A source that was read.
    #[must_use]
    pub const fn published(cite: &'static str) -> Self {
        Self { cite, grade: Grade::Published }
    }

    /// What a library of parts holds of the standard named.
    #[must_use]
    pub const fn library(cite: &'static str) -> Self {
        Self { cite, grade: Grade::Library }
    }

    /// A rule of the trade with no published source.
    #[must_use]
    pub const fn common_practice(cite: &'static str) -> Self {
        Self { cite, grade: Grade::CommonPractice }
    }

    /// A figure recalled, not read.
    #[must_use]
    pub const fn memory(cite: &'static str) -> Self {
        Self { cite, grade: Grade::Memory }
    }
}
