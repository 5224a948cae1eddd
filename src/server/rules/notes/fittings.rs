//! Words that name a part of a boiler in one company and something of the bench in another: a dome is no dome nut, stays
//! with a thread are no drill that stays cool, and a barrel with bushes is no barrel of a micrometer.

use std::sync::LazyLock;

use super::folded::{folded, is_figure};

const DOMES: [&str; 2] = ["dome", "domes"];
/// What is behind a dome that is the end of something small.
const DOME_OF_A_FASTENER: [&str; 5] = ["nut", "head", "screw", "washer", "rivet"];

const STAYS: [&str; 2] = ["stay", "stays"];
/// What makes a thing of the stays behind it.
const BEFORE_STAYS: [&str; 10] =
    ["the", "these", "those", "all", "both", "of", "for", "screwed", "threaded", "cross"];
/// What may stay as it is, and may be what stays are made of.
const METALS: [&str; 6] = ["copper", "bronze", "gunmetal", "brass", "steel", "stainless"];
/// How something stays.
const HOW: [&str; 22] = [
    "cool", "cold", "hot", "put", "sharp", "still", "true", "dry", "wet", "bright", "clean",
    "clear", "square", "flat", "straight", "tight", "loose", "soft", "hard", "parallel", "there",
    "behind",
];
/// What begins like this is done to stays and never to what merely stays somewhere.
const BEHIND_STAYS: [&str; 10] =
    ["thread", "tapped", "nut", "screw", "drill", "rivet", "silver", "solder", "bolt", "rod"];

const BARRELS: [&str; 2] = ["barrel", "barrels"];
/// What begins like this within so many words of a barrel is let into it.
const BUSH: &str = "bush";
const NEAR: usize = 3;
const BEFORE_A_BARREL: [&str; 3] = ["copper", "rolled", "seamless"];
const BEHIND_A_BARREL: [&str; 4] = ["tube", "cladd", "lagg", "flange"];

/// Some of these words as they look.
struct Looks(Vec<String>);

impl Looks {
    fn of(words: &[&str]) -> Self {
        Self(words.iter().map(|word| folded(word)).collect())
    }

    fn hold(&self, word: Option<&str>) -> bool {
        word.is_some_and(|word| self.0.iter().any(|held| held == word))
    }

    fn begin(&self, word: Option<&str>) -> bool {
        word.is_some_and(|word| self.0.iter().any(|held| word.starts_with(held.as_str())))
    }
}

struct Heard {
    domes: Looks,
    of_a_fastener: Looks,
    stays: Looks,
    before_stays: Looks,
    metals: Looks,
    how: Looks,
    behind_stays: Looks,
    barrels: Looks,
    bush: Looks,
    before_a_barrel: Looks,
    behind_a_barrel: Looks,
}

static HEARD: LazyLock<Heard> = LazyLock::new(|| Heard {
    domes: Looks::of(&DOMES),
    of_a_fastener: Looks::of(&DOME_OF_A_FASTENER),
    stays: Looks::of(&STAYS),
    before_stays: Looks::of(&BEFORE_STAYS),
    metals: Looks::of(&METALS),
    how: Looks::of(&HOW),
    behind_stays: Looks::of(&BEHIND_STAYS),
    barrels: Looks::of(&BARRELS),
    bush: Looks::of(&[BUSH]),
    before_a_barrel: Looks::of(&BEFORE_A_BARREL),
    behind_a_barrel: Looks::of(&BEHIND_A_BARREL),
});

/// Whether one of them is a part of a boiler among these words of a text as it looks.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::fittings::are_in;
/// let are_in_it = |text: &str| are_in(&text.split(' ').collect::<Vec<_>>());
/// assert!(are_in_it("dome bush") && are_in_it("the stays") && are_in_it("bushes in the barrel"));
/// assert!(!are_in_it("dome nut") && !are_in_it("drill stays cool") && !are_in_it("barrel of a vice"));
/// ```
#[must_use]
pub fn are_in(words: &[impl AsRef<str>]) -> bool {
    (0..words.len())
        .any(|at| is_a_dome(words, at) || are_stays(words, at) || is_a_barrel(words, at))
}

fn at(words: &[impl AsRef<str>], place: Option<usize>) -> Option<&str> {
    words.get(place?).map(AsRef::as_ref)
}

fn is_a_dome(words: &[impl AsRef<str>], place: usize) -> bool {
    HEARD.domes.hold(at(words, Some(place)))
        && !HEARD.of_a_fastener.begin(at(words, Some(place + 1)))
}

fn are_stays(words: &[impl AsRef<str>], place: usize) -> bool {
    let Heard { stays, before_stays, metals, how, behind_stays, .. } = &*HEARD;
    let (before, behind) = (at(words, place.checked_sub(1)), at(words, Some(place + 1)));
    let may_be_stays = metals.hold(before) || before.is_some_and(is_figure);
    stays.hold(at(words, Some(place)))
        && (before_stays.hold(before)
            || behind_stays.begin(behind)
            || behind.is_some_and(is_figure)
            || (may_be_stays && !how.hold(behind)))
}

fn is_a_barrel(words: &[impl AsRef<str>], place: usize) -> bool {
    let Heard { barrels, bush, before_a_barrel, behind_a_barrel, .. } = &*HEARD;
    let mut around = place.saturating_sub(NEAR)..=place + NEAR;
    barrels.hold(at(words, Some(place)))
        && (before_a_barrel.hold(at(words, place.checked_sub(1)))
            || behind_a_barrel.begin(at(words, Some(place + 1)))
            || around.any(|near| bush.begin(at(words, Some(near)))))
}
