//! A metal as stock is spoken of, with its size: `3/16 silver steel`, `brass sheet 1 mm`. What says
//! the size is left aside, so that no figure of it is taken for a grade.

use crate::units::read::{Notation, Number, plain, take, take_mixed, with_diameter_sign};

/// What may stand behind the figure of a size, the longer before what it begins with.
const UNITS: &[&str] = &[
    "millimetres",
    "millimetre",
    "millimeters",
    "millimeter",
    "mm",
    "cm",
    "inches",
    "inch",
    "ins",
    "in",
    "\"",
    "thous",
    "thou",
    "swg",
    "gauge",
    "ga",
    "g",
    "metres",
    "metre",
    "m",
    "feet",
    "foot",
    "ft",
    "diameter",
    "diam",
    "dia",
    "across flats",
    "a/f",
    "af",
    "od",
    "thick",
    "long",
    "wide",
];

/// Words that say of what a size is, wherever they stand.
const OF_A_SIZE: &[&str] =
    &["dia", "diam", "diameter", "thick", "thickness", "thin", "long", "wide", "af", "od"];

/// Words before a number that is no size: `EN 8`, `grade 2`.
#[rustfmt::skip]
const BEFORE_A_GRADE: &[&str] = &[
    "en", "lm", "lg", "pb", "cz", "cw", "he", "ab", "nylon", "grade", "alloy", "type", "bs", "aisi", "din",
];

/// The whole number of the largest mixed size: above it, the figure before a fraction is a grade,
/// `303 1/4`.
const LARGEST_WHOLE: f64 = 12.0;
/// Longer than a bar is sold.
const MOST_INCHES: f64 = 144.0;
/// More decimals than a size has: `1.4301` is a grade.
const MOST_PLACES: usize = 3;

/// The text without its sizes, in plain characters; none where it has no size.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::stock::without_size;
/// assert_eq!(without_size("Silver steel, 1/4 dia").as_deref(), Some("silver steel"));
/// assert_eq!(without_size("brass 25 x 3 mm").as_deref(), Some("brass"));
/// assert_eq!(without_size("EN 8 1/2\" dia").as_deref(), Some("en 8"));
/// assert_eq!(without_size("Ø6 brass").as_deref(), Some("brass"));
/// assert_eq!(without_size("stainless 303"), None);
/// ```
#[must_use]
pub fn without_size(typed: &str) -> Option<String> {
    let text = plain(&with_diameter_sign(typed));
    let mut left: Vec<&str> = Vec::new();
    let mut rest = text.as_str();
    let mut is_sized = false;
    loop {
        rest = rest.trim_start_matches(is_gap);
        if rest.is_empty() {
            break;
        }
        let before = left.last().copied().unwrap_or_default();
        if let Some(behind) = size(rest, before) {
            (rest, is_sized) = (behind, true);
            continue;
        }
        let (word, behind) = word(rest);
        if OF_A_SIZE.contains(&word) {
            is_sized = true;
            rest = behind_its_figure(word, behind);
        } else {
            left.push(word);
            rest = behind;
        }
    }
    is_sized.then(|| left.join(" "))
}

/// The words of a text, its sizes left aside, that have no figure in them.
#[must_use]
pub fn without_figures(typed: &str) -> String {
    let text = without_size(typed).unwrap_or_else(|| plain(&with_diameter_sign(typed)));
    let words = text.split(is_gap).filter(|word| !word.contains(|c: char| c.is_ascii_digit()));
    words.filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

/// What stands behind the figure of a diameter: "dia 6".
fn behind_its_figure<'a>(word: &str, behind: &'a str) -> &'a str {
    let figure = take_mixed(behind.trim_start_matches(is_gap)).filter(|_| word.starts_with("dia"));
    figure.map_or(behind, |(_, rest)| rest)
}

/// Whether a letter parts words.
const fn is_gap(letter: char) -> bool {
    matches!(letter, ' ' | ',' | ';' | '(' | ')')
}

/// The first word, and what stands behind it.
fn word(text: &str) -> (&str, &str) {
    text.split_at_checked(text.find(is_gap).unwrap_or(text.len())).unwrap_or((text, ""))
}

/// What stands behind the size that a text begins with: `3/16`, `4 mm dia`, `25 x 3`. A whole number
/// alone is none, nor is the number of a grade.
fn size<'a>(text: &'a str, before: &str) -> Option<&'a str> {
    let is_of_a_grade = BEFORE_A_GRADE.contains(&before);
    let (mut number, mut rest) = if is_of_a_grade { take(text)? } else { figure(text)? };
    let mut is_size = false;
    loop {
        // "EN 8", "grade 8.8".
        let may_be_one = !is_of_a_grade || number.is_vulgar();
        is_size |= may_be_one && is_alone(rest) && is_like_a_size(number);
        while let Some(behind) = unit(number, rest).filter(|_| may_be_one) {
            (rest, is_size) = (behind, true);
        }
        let Some((next, behind)) = by_another(rest) else { break };
        (number, rest, is_size) = (next, behind, true);
    }
    is_size.then_some(rest)
}

/// The figure at the start, with the fraction behind it where the two can be one size.
fn figure(text: &str) -> Option<(Number<'_>, &str)> {
    let (mixed, rest) = take_mixed(text)?;
    if matches!(mixed.notation, Notation::Mixed) && mixed.value >= LARGEST_WHOLE {
        return take(text);
    }
    Some((mixed, rest))
}

/// Whether a figure without a unit is that of a size and no grade: `3/16`, `1.6`, but no `18/8` and no `1.4301`.
fn is_like_a_size(number: Number<'_>) -> bool {
    match number.notation {
        Notation::Fraction => number.value < 1.0,
        Notation::Mixed => true,
        Notation::Whole(_) => false,
        Notation::Decimal { .. } => number.places() <= MOST_PLACES,
    }
}

/// Whether a figure ends here and nothing is written to it.
fn is_alone(rest: &str) -> bool {
    let is_more = |next: char| next.is_alphanumeric() || next == '/';
    let text = rest.strip_prefix('.').unwrap_or(rest);
    !text.starts_with(is_more) || by_another(rest).is_some()
}

/// What stands behind the unit of a figure at the start.
fn unit<'a>(number: Number<'_>, rest: &'a str) -> Option<&'a str> {
    let text = rest.trim_start();
    let behind = UNITS.iter().find_map(|unit| {
        let behind = text.strip_prefix(unit)?;
        let ends = *unit == "\"" || is_alone(behind);
        // "3 gauge plate" has no gauge, "303 in bar" no inches.
        let is_a_word = *unit == "gauge" && behind.starts_with(" plate")
            || *unit == "in" && number.value > MOST_INCHES;
        (ends && !is_a_word).then_some(behind)
    })?;
    Some(behind.strip_prefix('.').unwrap_or(behind))
}

/// The next figure of a size with several, behind the `x` or `by`.
fn by_another(rest: &str) -> Option<(Number<'_>, &str)> {
    let text = rest.trim_start();
    let behind = text.strip_prefix('x').or_else(|| text.strip_prefix("by "))?;
    figure(behind.trim_start())
}
