//! Whether a text speaks of boilers, steam or pressure: such a note waits for the inspector.
//!
//! It asks too often rather than too seldom: a note on the pressure of a hand on a drill costs the
//! inspector a minute, and a boiler fitting that nobody looked at can kill. So it judges what a reader
//! makes of the text: how it looks ([`folded`]), and with what stands between the letters left out.

use std::sync::LazyLock;

use sha2::{Digest, Sha256};

use super::folded::{folded, is_figure};
use super::state::Subject;
use super::{fittings, gauge, markdown, strongest};

/// What the rules stand in: with another letter in it they may judge otherwise.
const WRITTEN: [&str; 9] = [
    include_str!("pressure.rs"),
    include_str!("fittings.rs"),
    include_str!("gauge.rs"),
    include_str!("bars.rs"),
    include_str!("strongest.rs"),
    include_str!("folded.rs"),
    include_str!("seen.rs"),
    include_str!("wording.rs"),
    include_str!("markdown.rs"),
];

/// Which rules these are: what was judged by others is judged anew by them.
#[must_use]
pub fn rule() -> String {
    let digest = WRITTEN.iter().fold(Sha256::new(), |digest, file| digest.chain_update(file));
    digest.finalize().iter().map(|byte| format!("{byte:02x}")).collect()
}

/// A word that begins like this is about pressure; some as they are often misspelt.
pub const BEGINNINGS: [&str; 44] = [
    "boiler",
    "bioler",
    "steam",
    "pressur",
    "presur",
    "firebox",
    "firetube",
    "firehole",
    "smokebox",
    "backhead",
    "tubeplate",
    "throatplate",
    "flue",
    "superheat",
    "clack",
    "blowdown",
    "washout",
    "kilopascal",
    "injector",
    "hydraulic",
    "hydrostatic",
    "pneumatic",
    "boilar",
    "boilor",
    "boyler",
    "steem",
    "preasur",
    "presshur",
    "hydrolic",
    "hydralic",
    "injecter",
    "autoclave",
    "tubesheet",
    "preassur",
    "preshur",
    "newmatic",
    "vaporis",
    "vaporiz",
    "manifold",
    "acetylen",
    "staybolt",
    "manhole",
    "mudhole",
    "millibar",
];

/// Units of pressure, as they stand or behind a figure.
pub const UNITS: [&str; 10] =
    ["psi", "psig", "psia", "lbf", "kpa", "mpa", "atm", "atmospheres", "mbar", "barg"];

/// What stands beside a note that speaks of it.
pub const CAUTION: &str = "It speaks of boilers, steam or pressure: the national boiler code and a club’s inspector \
     decide, before cutting.";

/// Words that are about pressure where they stand together, the second in the plural too.
pub const PAIRS: [(&str, &str); 107] = [
    ("safety", "valv"),
    ("relief", "valv"),
    ("water", "gauge"),
    ("fusible", "plug"),
    ("crown", "stay"),
    ("regulator", "valv"),
    ("check", "valv"),
    ("compressed", "air"),
    ("air", "receiver"),
    ("air", "reservoir"),
    ("air", "tank"),
    ("compressor", "tank"),
    ("gas", "tank"),
    ("butane", "tank"),
    ("bursting", "disc"),
    ("pop", "valv"),
    ("blower", "valv"),
    ("gauge", "glass"),
    ("gauge", "cock"),
    ("try", "cock"),
    ("foundation", "ring"),
    ("girder", "stay"),
    ("palm", "stay"),
    ("hydro", "test"),
    ("per", "square"),
    ("saftey", "va"),
    ("safetey", "va"),
    ("safty", "va"),
    ("valve", "safety"),
    ("stop", "valv"),
    ("snifting", "valv"),
    ("whistle", "valv"),
    ("clak", "valv"),
    ("non", "return"),
    ("air", "reciev"),
    ("air", "reciver"),
    ("air", "bottle"),
    ("air", "vessel"),
    ("compresed", "air"),
    ("compresser", "tank"),
    ("gage", "glass"),
    ("gas", "bottle"),
    ("gas", "cylinder"),
    ("propane", "cylinder"),
    ("propane", "bottle"),
    ("expansion", "vessel"),
    ("wet", "header"),
    ("tube", "sheet"),
    ("proof", "test"),
    ("leak", "test"),
    ("lb", "sq"),
    ("lbs", "sq"),
    ("lb", "in"),
    ("lbs", "in"),
    ("kg", "cm"),
    ("n", "mm2"),
    ("water", "guage"),
    ("water", "gage"),
    ("fusable", "plug"),
    ("flu", "tube"),
    ("saftey", "plug"),
    ("pounds", "per"),
    ("lbs", "per"),
    ("lb", "per"),
    ("displacement", "lubricator"),
    ("fire", "extinguisher"),
    ("co2", "bottle"),
    ("co2", "cylinder"),
    ("regulator", "bod"),
    ("airbrush", "receiver"),
    ("refrigerator", "compressor"),
    ("fridge", "compressor"),
    ("torch", "fitting"),
    ("crown", "sheet"),
    ("blow", "off"),
    ("lifting", "valv"),
    ("oxygen", "bottle"),
    ("oxygen", "cylinder"),
    ("of", "propane"),
    ("longitudinal", "stay"),
    ("stay", "tub"),
    ("top", "feed"),
    ("feed", "pump"),
    ("blower", "ring"),
    ("blower", "jet"),
    ("blower", "nozz"),
    ("oxy", "acet"),
    ("gas", "regulat"),
    ("gas", "burn"),
    ("gas", "jet"),
    ("gas", "canist"),
    ("gas", "cartridg"),
    ("gas", "adapt"),
    ("gas", "valv"),
    ("burner", "jet"),
    ("burner", "nozz"),
    ("butane", "bottl"),
    ("butane", "canist"),
    ("butane", "cylind"),
    ("propane", "canist"),
    ("propane", "regulat"),
    ("regulator", "fitt"),
    ("flash", "coil"),
    ("water", "tube"),
    ("mud", "plug"),
    ("mud", "door"),
    ("mud", "lid"),
];

/// The words above as they look.
struct Heard {
    beginnings: Vec<String>,
    units: Vec<String>,
    pairs: Vec<(String, String)>,
}

static HEARD: LazyLock<Heard> = LazyLock::new(|| Heard {
    beginnings: BEGINNINGS.iter().map(|word| folded(word)).collect(),
    units: UNITS.iter().map(|word| folded(word)).collect(),
    pairs: PAIRS.iter().map(|(one, other)| (folded(one), folded(other))).collect(),
});

/// What a text in Markdown speaks of, as it is typed and as it is read.
#[must_use]
pub fn subject(text: &str) -> Subject {
    if marked_text_speaks_of_it(text) { Subject::Pressure } else { Subject::Usual }
}

/// Whether the text speaks of boilers, steam or pressure.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::pressure::speaks_of_it;
/// assert!(speaks_of_it("Bushes in a BOILER-barrel"));
/// assert!(speaks_of_it("a safety\nvalve seat"));
/// assert!(speaks_of_it("a b\u{43e}i-ler"));
/// assert!(!speaks_of_it("Bar stock, 20 mm"));
/// ```
#[must_use]
pub fn speaks_of_it(text: &str) -> bool {
    let looks = without_possessives(&folded(text));
    let words: Vec<&str> = split(&looks).collect();
    let joined = joined(&looks);
    speak_of_it(&words)
        || speak_of_it(&joined)
        || is_spelt_out(&words)
        || gauge::is_read(&looks)
        || strongest::are_in(&looks, &words)
        || fittings::are_in(&words)
        || fittings::are_in(&joined)
}

/// Whether a name says more of it than a society has in its name: a unit, a figure, or what is heard in two words.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::pressure::says_more_than_a_name;
/// assert!(!says_more_than_a_name("Marlbeck Steam and Model Engineers"));
/// assert!(says_more_than_a_name("Wire the safety valve shut"));
/// assert!(says_more_than_a_name("Any boiler may go to ninety psi"));
/// ```
#[must_use]
pub fn says_more_than_a_name(text: &str) -> bool {
    let looks = without_possessives(&folded(text));
    let words: Vec<&str> = split(&looks).collect();
    let is_a_pair = |pair: &[&str]| match pair {
        [one, other] => {
            HEARD.pairs.iter().any(|known| *one == known.0 && other.starts_with(&known.1))
        }
        _ => false,
    };
    let is_a_unit = |word: &&str| HEARD.units.iter().any(|unit| word.ends_with(unit.as_str()));
    words.windows(2).any(is_a_pair) || words.iter().any(is_a_unit) || gauge::is_read(&looks)
}

/// The same of Markdown: as it is typed, and as it is read.
#[must_use]
pub fn marked_text_speaks_of_it(text: &str) -> bool {
    speaks_of_it(text) || speaks_of_it(&markdown::plain(text))
}

/// The text without the s behind a word: "the club’s team" has no steam in it.
pub(super) fn without_possessives(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(['\'', '’']) {
        let (before, from) = rest.split_at(at);
        kept.push_str(before);
        let mut behind = from.chars();
        behind.next();
        let is_one = before.ends_with(char::is_alphanumeric)
            && behind.next() == Some('s')
            && !behind.next().is_some_and(char::is_alphanumeric);
        let mark = from.chars().next().map_or(0, char::len_utf8);
        let (mark, left) = from.split_at(if is_one { mark + 1 } else { mark });
        kept.push_str(if is_one { " " } else { mark });
        rest = left;
    }
    kept + rest
}

pub(super) fn split(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty())
}

/// The words of a text with what is joined by a hyphen or dots in one: it may be read so.
pub(super) fn joined(looks: &str) -> Vec<String> {
    // What stood apart may look like one letter once it is joined.
    let joined = looks.split_whitespace().map(|word| split(word).collect::<String>());
    let joined = joined.map(|word| word.replace("rn", "m"));
    joined.filter(|word| !word.is_empty()).collect()
}

fn speak_of_it(words: &[impl AsRef<str>]) -> bool {
    words.iter().any(|word| is_about_it(word.as_ref()))
        || words.windows(2).any(|pair| match pair {
            [one, other] => are_about_it(one.as_ref(), other.as_ref()),
            _ => false,
        })
}

fn is_about_it(word: &str) -> bool {
    let Heard { beginnings, units, pairs } = &*HEARD;
    beginnings.iter().any(|beginning| word.starts_with(beginning.as_str()))
        || units.iter().any(|unit| word.strip_suffix(unit.as_str()).is_some_and(is_figure))
        || pairs.iter().any(|(one, other)| {
            word.strip_prefix(one.as_str()).is_some_and(|rest| rest.starts_with(other.as_str()))
        })
}

/// Two words that are a pair, or one word in two.
fn are_about_it(one: &str, other: &str) -> bool {
    // A figure may stand before the first without a gap: "80lb/sq in".
    let is_pair = |pair: &(String, String)| {
        one.strip_suffix(pair.0.as_str()).is_some_and(is_figure)
            && other.starts_with(pair.1.as_str())
    };
    let is_halved = |beginning: &String| {
        let rest = beginning.strip_prefix(one).filter(|rest| !rest.is_empty());
        rest.is_some_and(|rest| other.starts_with(rest))
    };
    HEARD.pairs.iter().any(is_pair) || HEARD.beginnings.iter().any(is_halved)
}

/// Whether letters that stand singly make such a word.
fn is_spelt_out(words: &[&str]) -> bool {
    let is_letter = |word: &&str| word.chars().nth(1).is_none();
    let mut all = HEARD.beginnings.iter().chain(&HEARD.units);
    let runs: Vec<String> = words
        .chunk_by(|one, other| is_letter(one) && is_letter(other))
        .filter(|run| run.len() > 1)
        .map(|run| run.concat())
        .collect();
    all.any(|word| runs.iter().any(|run| run.contains(word.as_str())))
}
