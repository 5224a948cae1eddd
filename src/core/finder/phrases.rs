//! The phrases of questions and of drawings: what is asked for, and words that narrow nothing.

use crate::tables::threads::read::is_use;

/// What a line asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Work {
    Tapping,
    Clearance,
    Drilling,
    /// How fast to turn.
    Speed,
    Reaming,
    Countersinking,
    /// Counterbores and spotfaces.
    Counterboring,
    Spotting,
    /// What members wrote of it.
    Notes,
    /// What to put on it, how to tell it: its own page says.
    OfMaterial,
    /// Tapping without chips.
    Forming,
    /// How deep to drill for so much thread.
    Depth,
    /// What goes with a screw of this head: spanner, washer, countersink.
    Card(&'static str),
}

/// Longer phrases stand before shorter ones that they begin with only for the reader: the longest is
/// taken.
#[rustfmt::skip]
const PHRASES: [(Work, &[&str]); 14] = [
    (Work::Forming, &["forming tap", "form tap", "forming taps", "roll tap", "thread forming", "thread forming tap", "fluteless tap"]),
    (Work::Notes, &["notes", "note", "notes on", "notes about", "shop notes", "shop notes on", "members notes"]),
    (Work::OfMaterial, &[
        "tap out", "lubricant", "lube", "cutting oil", "cutting fluid", "cutting compound", "tapping compound",
        "tapping fluid", "coolant", "oil", "fluid", "paste", "what oil", "lubricant when drilling",
        "identify", "identifying", "tell", "how to tell", "how do i tell", "what is", "spark test",
        "sparks", "spark", "magnet", "magnetic", "is it", "behaviour", "properties", "hardness",
        "density", "weight", "machinability", "how hard is", "drill point", "drill angle", "backing off",
        "dub", "dubbed", "work hardening", "speed table",
    ]),
    (Work::Clearance, &[
        "clearance", "clearance hole", "clearance holes", "clearance drill", "clearance size", "clear",
        "clears", "clearing", "pass", "passes", "to clear", "to pass", "close fit", "free fit",
        "medium fit", "clearance drill size",
    ]),
    (Work::Speed, &[
        "how fast", "what speed", "which speed", "speed", "speeds", "rpm", "revs", "rev/min",
        "r.p.m", "speeds and feeds", "feeds and speeds", "speed and feed", "feed", "feeds", "feed rate",
        "spindle speed", "drilling speed", "cutting speed", "drill speed", "how many revs",
        "how fast to drill", "what rpm", "surface speed",
    ]),
    (Work::Reaming, &["ream", "reamed", "reamer", "reaming", "drill and ream", "ream to", "reamer speed",
        "how fast to ream", "reaming speed", "drill before reaming", "drill and reamed", "drilled and reamed"]),
    (Work::Countersinking, &["countersink", "countersunk", "countersinking", "csk", "drill and countersink", "drilled and countersunk", "drill and csk", "countersunk hole",
        "how fast to countersink"]),
    (Work::Card("countersunk"), &["countersunk head", "csk head", "countersunk heads", "csk heads"]),
    (Work::Card("hexagon"), &[
        "spanner", "spanners", "spanner size", "spanner for", "spanner size for", "what spanner", "which spanner", "what spanner for",
        "what size spanner", "what size spanner for", "which spanner for", "across flats", "a/f", "af", "af size", "hexagon", "hexagon head", "hexagon size", "nut size",
        "washer", "washers", "washer for", "washer size", "washer size for", "what washer", "what washer for", "which washer", "which washer for", "fastener",
        "edge distance", "least edge", "die blank", "blank for a die", "blank for die",
    ]),
    (Work::Counterboring, &["counterbore", "counterbored", "cbore", "spotface", "spotfaced", "spot face",
        "counterboring", "drill and counterbore"]),
    (Work::Spotting, &["spot", "spotting", "spot drill", "centre drill", "center drill", "centre"]),
    (Work::Tapping, &[
        "tap", "tapped", "tapping", "taps", "drill and tap", "drilled and tapped", "drill tap", "drill/tap",
        "tapping drill", "tapping drills", "tapping size", "tap drill", "tap size", "tap hole", "core drill",
        "core size", "pilot", "pilot drill", "pilot hole", "tapping drill size", "tapping hole",
        "what drill for", "which drill for", "what size drill for", "what size hole for",
        "what size drill to tap", "what drill to tap", "drill to tap", "drill for", "drill size for",
        "hole for", "size drill for", "what hole for", "hole size for", "what to drill for",
        "what do i drill for", "what size do i drill for", "drill before tapping", "tapping drill for",
        "root diameter", "core diameter", "thread", "threads", "screwed", "threaded", "die", "engagement",
    ]),
    (Work::Depth, &["how deep to drill", "how deep to drill for", "how deep do i drill", "how deep do i drill for",
        "how deep to tap", "drill depth for", "depth to drill for", "depth to drill"]),
    (Work::Drilling, &["drill", "drilled", "drilling", "drills", "dia", "diameter", "diam", "hole", "holes", "bore",
        "bored", "drill hole"]),
];

/// Words and phrases that narrow nothing: they join, count, place, or say a head or a use.
#[rustfmt::skip]
const NOTHING: &[&str] = &[
    // Lists.
    "chart", "charts", "table", "tables", "list", "lists", "dimensions",
    // Joining and asking.
    "a", "an", "and", "at", "best", "both", "by", "can", "do", "does", "each", "either", "for", "from",
    "get", "give", "go", "have", "how", "i", "if", "in", "into", "is", "it", "long", "make", "me", "my", "need", "of",
    "on", "one", "or", "please", "right", "should", "size", "sizes", "some", "suit", "that", "the",
    "this", "to", "typ", "use", "used", "using", "want", "what", "which", "when", "will", "with", "would", "you",
    "your", "small", "piece", "bit", "off", "out", "up", "about", "shown", "as", "plate", "job", "big", "remove",
    // Places on a drawing.
    "equi", "spaced", "equispaced", "equally", "pitch", "circle", "places", "positions", "posns",
    "pos", "side", "sides", "face", "end", "ends", "line", "only", "lower", "upper", "square", "flat",
    "all", "clean", "sharp", "edge", "edges", "deburr", "bottom", "top",
    // A screw's head, where the screw itself is meant.
    "csk screw", "csk screws", "countersunk screw", "countersunk screws",
    // What is drilled, and with what.
    "spindle", "bar", "twist", "jobber", "jobbers", "stub",
    // Limits of a reamed hole, which the reamer has.
    "h6", "h7", "h8", "h9",
];

/// The longest phrase has so many words.
const LONGEST: usize = 6;

/// What the words at the front mean.
pub(super) enum Phrase {
    Work(Work),
    Nothing,
}

/// The longest phrase at the front, and how many words it has.
pub(super) fn at_front(words: &[&str]) -> Option<(Phrase, usize)> {
    (1..=LONGEST.min(words.len())).rev().find_map(|count| {
        let said = words.get(..count)?.join(" ");
        let work = PHRASES.iter().find(|(_, phrases)| phrases.contains(&said.as_str()));
        match work {
            Some((work, _)) => Some((Phrase::Work(*work), count)),
            None => {
                let is_nothing = NOTHING.contains(&said.as_str()) || is_use(&said);
                is_nothing.then_some((Phrase::Nothing, count))
            }
        }
    })
}

/// Marks of drawings spelt out, so that they are words: `c'bore`, `thro'`, `csk'd`, `&`.
pub(super) fn spelt_out(text: &str) -> String {
    const MARKS: [(&str, &str); 22] = [
        ("▽", " deep "),
        ("↧", " deep "),
        ("c'bored", "counterbore"),
        ("c'bore", "counterbore"),
        ("c/bore", "counterbore"),
        ("c'sunk", "countersink"),
        ("c'sink", "countersink"),
        ("c/sunk", "countersink"),
        ("c/sink", "countersink"),
        ("c'sk", "countersink"),
        ("csk'd", "countersink"),
        ("s'faced", "spotface"),
        ("s'face", "spotface"),
        ("s/face", "spotface"),
        ("thro'", "through"),
        ("equi-spaced", "equispaced"),
        ("p.c.d.", "pcd"),
        ("p.c.d", "pcd"),
        ("&", " and "),
        ("r.p.m.", "rpm"),
        ("+", " and "),
        ("?", " "),
    ];
    let spelt = MARKS.iter().fold(text.to_owned(), |text, (mark, word)| text.replace(mark, word));
    let words = spelt.split(' ').filter(|word| !word.is_empty()).map(|word| match word {
        "thro" | "thru" | "thro," => "through",
        word => word,
    });
    words.collect::<Vec<_>>().join(" ")
}
