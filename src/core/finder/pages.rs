//! The calculators and the lists of the reference: what can be found that is no row of a table.
//!
//! The calculators come from their own table. One that has the word of its address among its names
//! outranks the plan for that word.

use std::borrow::Cow;
use std::sync::LazyLock;

use super::Kind;
use crate::calculators::{CALCULATORS, Declaration};

/// A page that stands for itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// [`Kind::Calculator`] or [`Kind::List`].
    pub kind: Kind,
    /// What it is called.
    pub title: &'static str,
    /// Its address.
    pub url: Cow<'static, str>,
    /// What it answers, in a few words.
    pub why: &'static str,
    /// What it is called outright: a text of just this means it.
    pub names: &'static [&'static str],
    /// Words about it: a text of these may mean it.
    pub words: &'static [&'static str],
}

/// Every such page that exists, calculators first.
pub static PAGES: LazyLock<Vec<Page>> = LazyLock::new(|| {
    let calculators = CALCULATORS.iter().map(|calculator| Page::of_calculator(calculator));
    std::iter::once(PLAN).chain(calculators).chain(LISTS).collect()
});

const PLAN: Page = Page {
    kind: Kind::Calculator,
    title: "Hole plan",
    url: Cow::Borrowed("/plan"),
    why: "tapping and clearance drills, depths, speeds and steps for one hole",
    names: &["plan", "hole plan", "hole", "holes"],
    words: &["tapping", "tapped", "tap", "drilling", "depth", "blind", "through"],
};

const LISTS: [Page; 4] = [
    Page {
        kind: Kind::List,
        title: "Threads",
        url: Cow::Borrowed("/threads"),
        why: "every thread system",
        names: &["threads", "thread"],
        words: &["systems", "screw", "screws", "bolt", "bolts", "nut", "nuts"],
    },
    Page {
        kind: Kind::List,
        title: "Drills",
        url: Cow::Borrowed("/drills"),
        why: "the drill chart, every series in one order of size",
        names: &["drills", "drill", "drill chart"],
        words: &["sizes", "series", "twist"],
    },
    Page {
        kind: Kind::List,
        title: "Materials",
        url: Cow::Borrowed("/materials"),
        why: "every metal and plastic",
        names: &["materials", "material", "metal", "metals"],
        words: &[],
    },
    Page {
        kind: Kind::List,
        title: "Calculators",
        url: Cow::Borrowed("/calculators"),
        why: "every sum of the bench, with its sources",
        names: &["calculators", "calculator"],
        words: &[],
    },
];

impl Page {
    fn of_calculator(calculator: &Declaration) -> Self {
        Self {
            kind: Kind::Calculator,
            title: calculator.finding.title,
            url: calculator.path().into(),
            why: calculator.finding.why,
            names: calculator.finding.names,
            words: calculator.finding.words,
        }
    }
}

/// Whether a word is about one of these pages.
pub(super) fn is_about_one(word: &str) -> bool {
    PAGES.iter().any(|page| page.names.contains(&word) || page.words.contains(&word))
}
