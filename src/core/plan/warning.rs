//! What to look out for, by how much it matters.

use std::borrow::Cow;

/// How much a warning matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Level {
    /// Worth knowing.
    Note,
    /// The work or the tool is at risk.
    Caution,
    /// A person can be hurt.
    Danger,
}

impl Level {
    /// The word in JSON and on the page.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Caution => "caution",
            Self::Danger => "danger",
        }
    }
}

/// One warning.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Warning {
    /// How much it matters.
    pub level: Level,
    /// What to do or watch for, and why.
    pub text: Cow<'static, str>,
}
