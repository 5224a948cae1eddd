//! The calculators and the lists of the reference: what can be found that is no row of a table.
//!
//! A calculator that is added gets its row here, with the name of its address among its names; then
//! it outranks the plan for that word.

use super::Kind;

/// A page that stands for itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Door {
    /// [`Kind::Calculator`] or [`Kind::List`].
    pub kind: Kind,
    /// What it is called.
    pub title: &'static str,
    /// Its address.
    pub url: &'static str,
    /// What it answers, in a few words.
    pub why: &'static str,
    /// What it is called outright: a text of just this means it.
    pub names: &'static [&'static str],
    /// Words about it: a text of these may mean it.
    pub words: &'static [&'static str],
}

/// Every such page that exists, calculators first.
pub const DOORS: [Door; 8] = [
    Door {
        kind: Kind::Calculator,
        title: "Hole plan",
        url: "/plan",
        why: "tapping and clearance drills, depths, speeds and steps for one hole",
        names: &["plan", "hole plan", "hole", "holes"],
        words: &["tapping", "tapped", "tap", "drilling", "depth", "blind", "through"],
    },
    Door {
        kind: Kind::Calculator,
        title: "Speed and feed",
        url: "/calculators/speeds",
        why: "spindle speed, feed and time for a drill, reamer or tap in a metal",
        names: &["speeds", "speed", "spindle speed", "feeds", "feed", "speeds and feeds", "rpm"],
        words: &["spindle", "cutting", "surface", "revolutions"],
    },
    Door {
        kind: Kind::Calculator,
        title: "Tapping size of any thread",
        url: "/calculators/tapping",
        why: "engagement of a hole, and the hole for an engagement, for any diameter and pitch",
        names: &["tapping size", "tapping drill", "engagement", "percent of thread"],
        words: &["tapping", "custom", "pitch", "percent"],
    },
    Door {
        kind: Kind::Calculator,
        title: "Clearance and float",
        url: "/calculators/clearance",
        why: "the hole a screw passes through, and how far centres may be out",
        names: &["clearance", "clearance hole", "float", "clearance drill"],
        words: &["centres", "error", "close", "medium", "free"],
    },
    Door {
        kind: Kind::List,
        title: "Threads",
        url: "/threads",
        why: "every thread system",
        names: &["threads", "thread"],
        words: &["systems", "screw", "screws", "bolt", "bolts", "nut", "nuts"],
    },
    Door {
        kind: Kind::List,
        title: "Drills",
        url: "/drills",
        why: "the drill chart, every series in one order of size",
        names: &["drills", "drill", "drill chart"],
        words: &["sizes", "series", "twist"],
    },
    Door {
        kind: Kind::List,
        title: "Materials",
        url: "/materials",
        why: "every metal and plastic",
        names: &["materials", "material", "metal", "metals"],
        words: &[],
    },
    Door {
        kind: Kind::List,
        title: "Calculators",
        url: "/calculators",
        why: "speeds, tapping sizes, clearance",
        names: &["calculators", "calculator"],
        words: &[],
    },
];

/// Whether a word is about one of these pages.
pub(super) fn is_about_one(word: &str) -> bool {
    DOORS.iter().any(|door| door.names.contains(&word) || door.words.contains(&word))
}
