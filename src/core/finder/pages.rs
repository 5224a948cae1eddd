//! The calculators and the lists of the reference: what can be found that is no row of a table.
//!
//! The calculators come from their own table. One that has the word of its address among its names
//! outranks the plan for that word.

use std::borrow::Cow;
use std::sync::LazyLock;

use super::Kind;
use crate::calculators::{CALCULATORS, Declaration};
use crate::tables::rescue::{self, Trouble};

/// A page that stands for itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// [`Kind::Calculator`], [`Kind::Rescue`] or [`Kind::List`].
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
    let troubles = rescue::all().iter().map(Page::of_trouble);
    let pages = std::iter::once(PLAN).chain(calculators).chain(WORKS).chain(LISTS);
    pages.chain([RESCUE]).chain(troubles).chain(OWN).collect()
});

#[rustfmt::skip]
const PLAN: Page = Page {
    kind: Kind::Calculator,
    title: "Hole plan",
    url: Cow::Borrowed("/plan"),
    why: "tapping and clearance drills, depths, speeds and steps for one hole",
    names: &[
        "plan", "hole plan", "hole", "holes", "peck", "pecking", "peck drilling",
        "tap", "how deep to drill", "depth to drill",
        "plan a hole", "two parts", "two part plan", "spot through", "pattern of holes",
    ],
    words: &["tapping", "tapped", "tap", "drilling", "depth", "blind", "through", "swarf", "wander"],
};

/// The works that the speed calculator asks the rest for.
#[rustfmt::skip]
const WORKS: [Page; 4] = [
    Page {
        kind: Kind::Calculator,
        title: "Countersinking",
        url: Cow::Borrowed("/calculators/speeds?work=countersinking"),
        why: "how deep to sink for a head, and how fast to turn",
        names: &["countersinking", "countersink", "csk", "countersink depth", "countersink speed", "chatter"],
        words: &["countersunk"],
    },
    Page {
        kind: Kind::Calculator,
        title: "Reaming",
        url: Cow::Borrowed("/calculators/speeds?work=reaming"),
        why: "the drill before the reamer, how fast to turn and how much to feed",
        names: &["reaming", "ream", "reamer", "reamers", "reaming allowance", "drill before reaming"],
        words: &["reamed"],
    },
    Page {
        kind: Kind::Calculator,
        title: "Tapping under power",
        url: Cow::Borrowed("/calculators/speeds?work=tapping"),
        why: "how fast to turn a tap, and when not to",
        names: &["tapping speed", "machine tapping", "power tapping", "tapping under power"],
        words: &["torque"],
    },
    Page {
        kind: Kind::Calculator,
        title: "Spotting and centre drilling",
        url: Cow::Borrowed("/calculators/speeds?work=spotting"),
        why: "how fast to turn a centre drill and how wide to spot",
        names: &["spotting", "centre drill", "centre drilling", "spot drill", "spotting drill"],
        words: &["spot"],
    },
];

#[rustfmt::skip]
const LISTS: [Page; 5] = [
    Page {
        kind: Kind::List,
        title: "Threads",
        url: Cow::Borrowed("/threads"),
        why: "every thread system",
        names: &[
            "threads", "thread", "thread chart", "tap chart", "tapping chart", "tapping drill chart", "screw threads", "die",
            "dies", "bolts", "screws",
        ],
        words: &["systems", "screw", "bolt", "nut", "nuts"],
    },
    Page {
        kind: Kind::List,
        title: "Drills",
        url: Cow::Borrowed("/drills"),
        why: "the drill chart, every series in one order of size",
        names: &["drills", "drill", "drill chart", "drill bits", "twist drills", "jobber drills", "drill sizes", "number drill chart", "decimal equivalents", "inch to mm chart"],
        words: &["sizes", "series", "twist"],
    },
    Page {
        kind: Kind::List,
        title: "Materials",
        url: Cow::Borrowed("/materials"),
        why: "every metal and plastic: speeds, lubricant, how to tell it",
        names: &[
            "materials", "material", "metal", "metals", "plastics list", "unknown metal", "what metal is this",
            "identify metal", "spark test", "how to tell metals", "scrap", "scrap metal", "lubricant", "lubricants",
            "cutting oil", "cutting fluid", "coolant",
        ],
        words: &[],
    },
    Page {
        kind: Kind::List,
        title: "Hexagons, heads and washers",
        url: Cow::Borrowed("/fasteners"),
        why: "tables of hexagons, heads and washers, each row with its source",
        names: &["hexagon table", "hexagon sizes", "spanner sizes", "spanner table", "washer table", "washer sizes", "screw heads", "nut sizes"],
        words: &["hexagons", "washers", "nuts"],
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

#[rustfmt::skip]
const RESCUE: Page = Page {
    kind: Kind::List,
    title: "When it goes wrong",
    url: Cow::Borrowed("/rescue"),
    why: "what to do first, and every way out in order",
    names: &["rescue", "trouble", "troubles", "when it goes wrong", "what went wrong", "mistakes"],
    words: &["wrong", "mistake", "spoilt"],
};

/// What members keep here.
#[rustfmt::skip]
const OWN: [Page; 3] = [
    Page {
        kind: Kind::List,
        title: "Drawer",
        url: Cow::Borrowed("/drawer"),
        why: "the drills, taps, reamers and speeds you have, kept in this browser",
        names: &["drawer", "my drawer", "my drills", "my taps", "drills i have", "tool drawer", "my speeds", "my reamers"],
        words: &["owned", "pulleys"],
    },
    Page {
        kind: Kind::List,
        title: "Shop notes",
        url: Cow::Borrowed("/notes"),
        why: "what members wrote of their own jobs",
        names: &["notes", "note", "shop notes", "members notes", "shop note"],
        words: &["members"],
    },
    Page {
        kind: Kind::List,
        title: "Write a note",
        url: Cow::Borrowed("/notes/new"),
        why: "what you drilled, how it went, for the others",
        names: &["write a note", "new note", "add a note"],
        words: &[],
    },
];

impl Page {
    fn of_trouble(trouble: &'static Trouble) -> Self {
        Self {
            kind: Kind::Rescue,
            title: trouble.title,
            url: trouble.path().into(),
            why: trouble.first.text,
            names: trouble.names,
            words: &[],
        }
    }

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

/// The page that is called this outright.
pub(super) fn named(name: &str) -> Option<&'static Page> {
    PAGES.iter().find(|page| page.names.contains(&name))
}

/// Whether a text is a trouble, which members speak of too: a search of just this goes straight to no
/// page.
pub(super) fn is_trouble(text: &str) -> bool {
    named(text).is_some_and(|page| page.kind == Kind::Rescue)
}

/// Whether a word is about one of these pages.
pub(super) fn is_about_one(word: &str) -> bool {
    PAGES.iter().any(|page| page.names.contains(&word) || page.words.contains(&word))
}
