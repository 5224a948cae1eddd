//! Whether a text gives a pressure as a gauge is read or a table prints it: a figure, in digits or in words, with bars
//! or pounds behind it, or a force on an area.
//!
//! A bar is a piece of stock too. Several of them that are of brass, or taken at once, are no pressure, nor is
//! "3/4 bar". Where it may be either it is a pressure: "went to ten bars at once".

use std::sync::LazyLock;

use super::folded::{folded, is_figure};

/// A unit that is a piece of stock too: of pressure it is where something goes to so many, or stands at
/// or under them.
const BAR: &str = "bar";
const BARS: &str = "bars";
pub(super) const BEFORE_SO_MANY_BAR: [&str; 3] = ["to", "at", "under"];
/// More than so many are the name of an alloy and no pressure.
const MOST_BARS: f64 = 99.0;
/// What several bars are of that are stock.
const SOLIDS: [&str; 22] = [
    "brass",
    "steel",
    "steels",
    "bronze",
    "gunmetal",
    "copper",
    "aluminium",
    "alloy",
    "dural",
    "iron",
    "cast",
    "silver",
    "stainless",
    "mild",
    "nylon",
    "acetal",
    "plastic",
    "metal",
    "stock",
    "hexagon",
    "round",
    "flat",
];
/// What is behind bars that are taken together.
const BEHIND_BARS_OF_STOCK: [&[&str]; 2] = [&["at", "once"], &["at", "a", "time"]];
const BEHIND_A_BAR_OF_STOCK: [&[&str]; 2] = [&["ends"], &["stock"]];

const WEIGHTS: [&str; 2] = ["lb", "lbs"];
/// Money too: of pressure they are behind what a gauge goes to or stands at.
const POUNDS: [&str; 2] = ["pound", "pounds"];
/// So many at least are a pressure and no weight of a hammer.
const LEAST_POUNDS: f64 = 20.0;

/// What presses on an area.
const FORCES: [&str; 15] = [
    "lb", "lbs", "lbf", "pound", "pounds", "kg", "kgs", "kgf", "kilo", "kilos", "kp", "n", "kn",
    "newton", "newtons",
];
/// What stands between the force and the area, so many at most.
const ON: [&str; 7] = ["per", "to", "a", "the", "each", "every", "an"];
const MOST_ON: usize = 3;
const AREAS: [&str; 8] = ["sq", "square", "sqin", "in2", "inch2", "cm2", "mm2", "dm2"];
/// An area that is a thread too: only behind a stroke or "per".
const M2: &str = "m2";

/// Numbers in words that a gauge may show; "one bar" is a piece of stock.
const NUMBERS: [(&str, f64); 30] = [
    ("two", 2.0),
    ("three", 3.0),
    ("four", 4.0),
    ("five", 5.0),
    ("six", 6.0),
    ("seven", 7.0),
    ("eight", 8.0),
    ("nine", 9.0),
    ("ten", 10.0),
    ("eleven", 11.0),
    ("twelve", 12.0),
    ("dozen", 12.0),
    ("thirteen", 13.0),
    ("fourteen", 14.0),
    ("fifteen", 15.0),
    ("sixteen", 16.0),
    ("seventeen", 17.0),
    ("eighteen", 18.0),
    ("nineteen", 19.0),
    ("twenty", 20.0),
    ("thirty", 30.0),
    ("forty", 40.0),
    ("fourty", 40.0),
    ("fifty", 50.0),
    ("sixty", 60.0),
    ("seventy", 70.0),
    ("eighty", 80.0),
    ("ninety", 90.0),
    ("hundred", 100.0),
    ("thousand", 1_000.0),
];
/// "Two and a half" ends so.
const AND_A_HALF: [&str; 3] = ["and", "a", "half"];

/// The words above as they look.
struct Heard {
    numbers: Vec<(String, f64)>,
    solids: Vec<String>,
    bars_of_stock: Vec<Vec<String>>,
    bar_of_stock: Vec<Vec<String>>,
    forces: Vec<String>,
    areas: Vec<String>,
    half: Vec<String>,
}

static HEARD: LazyLock<Heard> = LazyLock::new(|| {
    let all = |words: &[&str]| words.iter().map(|word| folded(word)).collect::<Vec<_>>();
    Heard {
        numbers: NUMBERS.iter().map(|(word, value)| (folded(word), *value)).collect(),
        solids: all(&SOLIDS),
        bars_of_stock: BEHIND_BARS_OF_STOCK.iter().map(|words| all(words)).collect(),
        bar_of_stock: BEHIND_A_BAR_OF_STOCK.iter().map(|words| all(words)).collect(),
        forces: all(&FORCES),
        areas: all(&AREAS),
        half: all(&AND_A_HALF),
    }
});

/// A word, with what stands between it and the one before.
struct Part<'a> {
    gap: &'a str,
    word: &'a str,
}

/// Whether a pressure is given in the text, which is as it looks.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::gauge::is_read;
/// assert!(is_read("a 10-bar test") && is_read("ten bars") && is_read("80 lb"));
/// assert!(is_read("eighty pounds to the square inch"));
/// assert!(!is_read("3/4 bar") && !is_read("ten bars of brass") && !is_read("a 2 lb hammer"));
/// ```
#[must_use]
pub fn is_read(looks: &str) -> bool {
    let parts = parts(looks);
    (0..parts.len()).any(|at| {
        are_bars(&parts, at) || are_pounds(&parts, at) || is_a_force_on_an_area(&parts, at)
    })
}

fn parts(looks: &str) -> Vec<Part<'_>> {
    let mut parts = Vec::new();
    let mut rest = looks;
    while let Some(begin) = rest.find(char::is_alphanumeric) {
        let (gap, from) = rest.split_at(begin);
        let end = from.find(|c: char| !c.is_alphanumeric()).unwrap_or(from.len());
        let (word, left) = from.split_at(end);
        parts.push(Part { gap, word });
        rest = left;
    }
    parts
}

fn word<'a>(parts: &[Part<'a>], at: Option<usize>) -> Option<&'a str> {
    at.and_then(|at| parts.get(at)).map(|part| part.word)
}

fn are_bars(parts: &[Part<'_>], at: usize) -> bool {
    [BAR, BARS].into_iter().any(|unit| {
        let is_read = number_before(parts, at, unit).is_some_and(|it| it > 0.0 && it <= MOST_BARS);
        (is_read && !are_stock(parts, at, unit)) || is_so_many(parts, at, unit)
    })
}

fn are_stock(parts: &[Part<'_>], at: usize, unit: &str) -> bool {
    if unit == BAR {
        return stand_behind(parts, at, &HEARD.bar_of_stock);
    }
    are_of_a_solid(parts, at) || stand_behind(parts, at, &HEARD.bars_of_stock)
}

fn are_pounds(parts: &[Part<'_>], at: usize) -> bool {
    let is_enough =
        |unit| number_before(parts, at, unit).is_some_and(|figure| figure >= LEAST_POUNDS);
    WEIGHTS.into_iter().any(is_enough)
        || POUNDS.into_iter().any(|unit| is_enough(unit) && is_so_many(parts, at, unit))
}

/// Whether something goes to so many of the unit, or stands at or under them: of bars also where no figure is told.
fn is_so_many(parts: &[Part<'_>], at: usize, unit: &str) -> bool {
    let Some(own) = parts.get(at).and_then(|part| part.word.strip_suffix(unit)) else {
        return false;
    };
    let before = parts.iter().take(at).rev().map(|part| part.word);
    let mut others = before.skip_while(|word| is_number(word));
    is_figure(own)
        && (unit == BAR || !own.is_empty() || word(parts, at.checked_sub(1)).is_some_and(is_number))
        && others.next().is_some_and(|word| BEFORE_SO_MANY_BAR.contains(&word))
}

/// Whether these words are behind, in one line and sentence with what is before them: "It held 5 bar. Stock was
/// brass" is about a gauge.
fn stand_behind(parts: &[Part<'_>], at: usize, all: &[Vec<String>]) -> bool {
    all.iter().any(|words| {
        let behind = parts.iter().skip(at + 1).take(words.len());
        behind.map(in_one_sentence).eq(words.iter().map(|word| Some(word.as_str())))
    })
}

fn in_one_sentence<'a>(part: &Part<'a>) -> Option<&'a str> {
    matches!(part.gap, " " | "-").then_some(part.word)
}

fn are_of_a_solid(parts: &[Part<'_>], at: usize) -> bool {
    let mut behind = parts.iter().skip(at + 1).map(in_one_sentence);
    let is_solid = |word: &str| is_figure(word) || HEARD.solids.iter().any(|solid| solid == word);
    behind.next() == Some(Some("of")) && behind.next().flatten().is_some_and(is_solid)
}

/// How many of the unit stand here: before it with a gap or a hyphen, or in one word with it.
fn number_before(parts: &[Part<'_>], at: usize, unit: &str) -> Option<f64> {
    let part = parts.get(at)?;
    let own = part.word.strip_suffix(unit)?;
    if !own.is_empty() {
        return figure(parts, at, own);
    }
    let before = at.checked_sub(1)?;
    let last = word(parts, Some(before)).filter(|_| leads_on(part.gap))?;
    figure(parts, before, last)
        .or_else(|| in_words(parts, before))
        .or_else(|| and_a_half(parts, before))
}

/// Whether what stands before the gap is the figure of what stands behind it: what ends with a colon is not, and what is
/// in inches is a piece of stock.
fn leads_on(gap: &str) -> bool {
    let ends = |c: char| matches!(c, '.' | ',' | ';' | ':' | '(' | ')' | '!' | '?');
    is_hyphen(gap.trim_end())
        || (gap.starts_with(char::is_whitespace)
            && gap.chars().all(|c| c.is_whitespace() || ends(c)))
}

fn is_hyphen(gap: &str) -> bool {
    matches!(gap, "-" | "–" | "‐" | "‑" | "_" | "·" | "*" | "**")
}

/// The figure that ends here, with its places: "3/4" is none, nor is the number in a name such as "LG-2".
fn figure(parts: &[Part<'_>], at: usize, last: &str) -> Option<f64> {
    let gap = parts.get(at)?.gap;
    let before = word(parts, at.checked_sub(1)).unwrap_or_default();
    let is_a_name = is_hyphen(gap) && !is_number(before) && !BEFORE_SO_MANY_BAR.contains(&before);
    if last.is_empty() || !is_figure(last) || gap.ends_with(['/', '⁄']) || is_a_name {
        return None;
    }
    let has_places = matches!(gap, "." | ",") && !before.is_empty() && is_figure(before);
    let typed = if has_places { format!("{before}.{last}") } else { last.to_owned() };
    typed.replace('l', "1").replace('o', "0").parse().ok()
}

/// About how many the words that end here say: the largest of them.
fn in_words(parts: &[Part<'_>], at: usize) -> Option<f64> {
    let run = parts.iter().take(at + 1).rev().map_while(|part| value(part.word));
    run.reduce(f64::max).map(|most| most.min(MOST_BARS))
}

fn and_a_half(parts: &[Part<'_>], at: usize) -> Option<f64> {
    let begin = (at + 1).checked_sub(HEARD.half.len())?;
    let ending = parts.iter().skip(begin).take(HEARD.half.len()).map(|part| part.word);
    let before = begin.checked_sub(1).filter(|_| ending.eq(HEARD.half.iter().map(String::as_str)));
    let last = word(parts, before)?;
    figure(parts, before?, last).or_else(|| value(last)).or_else(|| (last == "one").then_some(1.0))
}

fn value(word: &str) -> Option<f64> {
    HEARD.numbers.iter().find(|(number, _)| number == word).map(|(_, value)| *value)
}

fn is_number(word: &str) -> bool {
    is_figure(word) || value(word).is_some() || word == "one"
}

/// "Pounds to the square inch", "6kgf/cm2".
fn is_a_force_on_an_area(parts: &[Part<'_>], at: usize) -> bool {
    let Some(part) = parts.get(at) else { return false };
    let is_force = |force: &String| part.word.strip_suffix(force.as_str()).is_some_and(is_figure);
    if !HEARD.forces.iter().any(is_force) {
        return false;
    }
    let behind = || parts.iter().skip(at + 1);
    let on = behind().take(MOST_ON).take_while(|part| ON.contains(&part.word)).count();
    let is_per = on > 0 && word(parts, Some(at + on)) == Some("per");
    behind().nth(on).is_some_and(|area| {
        HEARD.areas.iter().any(|held| held == area.word)
            || (area.word == M2 && (is_per || (on == 0 && area.gap.trim() == "/")))
    })
}
