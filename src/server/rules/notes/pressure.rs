//! Whether a text speaks of boilers, steam or pressure: such a note waits for the inspector.
//!
//! It asks too often rather than too seldom: a note on the pressure of a hand on a drill costs the
//! inspector a minute, and a boiler fitting that nobody looked at can kill.

/// A word that begins like this is about pressure.
const BEGINNINGS: [&str; 12] = [
    "boiler",
    "steam",
    "pressur",
    "firebox",
    "firetube",
    "flue",
    "superheat",
    "clack",
    "blowdown",
    "hydraulic",
    "hydrostatic",
    "pneumatic",
];

/// Words that are about pressure as they stand.
const WORDS: [&str; 3] = ["psi", "lbf", "injector"];

/// Words that are about pressure where they stand together.
const PAIRS: [(&str, &str); 9] = [
    ("safety", "valve"),
    ("safety", "valves"),
    ("water", "gauge"),
    ("fusible", "plug"),
    ("crown", "stay"),
    ("crown", "stays"),
    ("regulator", "valve"),
    ("check", "valve"),
    ("compressed", "air"),
];

/// Whether the text speaks of boilers, steam or pressure.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::pressure::speaks_of_it;
/// assert!(speaks_of_it("Bushes in a BOILER-barrel"));
/// assert!(speaks_of_it("a safety\nvalve seat"));
/// assert!(!speaks_of_it("Bar stock, 20 mm"));
/// ```
#[must_use]
pub fn speaks_of_it(text: &str) -> bool {
    let text = text.to_lowercase();
    let words: Vec<&str> =
        text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let single = words.iter().any(|word| {
        WORDS.contains(word) || BEGINNINGS.iter().any(|beginning| word.starts_with(beginning))
    });
    let pair = words.windows(2).any(|pair| match pair {
        [one, other] => PAIRS.contains(&(*one, *other)),
        _ => false,
    });
    single || pair
}
