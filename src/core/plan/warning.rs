//! What to watch for, by how much it matters and where it is said.

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

/// The cautions that belong to no one step.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cautions {
    /// Those of this cut that differ from every cut, worst first; three at most.
    pub head: Vec<Warning>,
    /// What the plan assumed, since it was not said.
    pub assumed: Vec<Warning>,
    /// What is to be said of the drill that was chosen.
    pub choice: Vec<Warning>,
    /// Those that stand for every such job, worst first.
    pub standing: Vec<Warning>,
}

impl Cautions {
    /// Each of them, in the order of the page.
    pub fn each(&self) -> impl Iterator<Item = &Warning> {
        let Self { head, assumed, choice, standing } = self;
        head.iter().chain(assumed).chain(choice).chain(standing)
    }
}
