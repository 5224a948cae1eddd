//! Fractions said in words: `quarter whit`, `three sixteenths`, `inch and a half`.

/// The names of numerators, and of the whole inches people say.
#[rustfmt::skip]
const COUNTS: [(&str, u32); 16] = [
    ("a", 1), ("one", 1), ("two", 2), ("three", 3), ("four", 4), ("five", 5), ("six", 6),
    ("seven", 7), ("eight", 8), ("nine", 9), ("ten", 10), ("eleven", 11), ("twelve", 12),
    ("thirteen", 13), ("fifteen", 15), ("seventeen", 17),
];

/// The names of denominators.
#[rustfmt::skip]
const PARTS: [(&str, u32); 6] = [
    ("half", 2), ("quarter", 4), ("eighth", 8), ("sixteenth", 16), ("thirtysecond", 32),
    ("sixtyfourth", 64),
];

/// Words behind `half` or `quarter` with which it is no size: `half shaft`, `quarter hard`.
const NO_SIZE: [&str; 9] =
    ["hard", "shaft", "shafts", "round", "nut", "nuts", "centre", "moon", "section"];

/// A plain text with fractions said in words as figures; all else is left as it stands.
///
/// # Examples
/// ```
/// use holewright_core::units::read::worded;
/// assert_eq!(worded("quarter whit"), "1/4 whit");
/// assert_eq!(worded("three sixteenths drill"), "3/16 drill");
/// assert_eq!(worded("inch and a half bsw"), "1 1/2 bsw");
/// assert_eq!(worded("half hard brass"), "half hard brass");
/// ```
#[must_use]
pub fn worded(plain: &str) -> String {
    let words: Vec<&str> = plain.split(' ').collect();
    let mut out: Vec<String> = Vec::new();
    let mut rest = words.as_slice();
    while let Some((word, behind)) = rest.split_first() {
        match mixed(rest).or_else(|| fraction(rest)) {
            Some((figure, after)) => {
                out.push(figure);
                rest = after;
            }
            None => {
                out.push((*word).to_owned());
                rest = behind;
            }
        }
    }
    out.join(" ")
}

/// `inch and a half`, `one and a quarter`, `1 and three eighths`.
fn mixed<'w, 't>(words: &'w [&'t str]) -> Option<(String, &'w [&'t str])> {
    let (whole, rest) = words.split_first()?;
    let whole = if *whole == "inch" { 1 } else { count(whole)? };
    let rest = rest.strip_prefix(&["and"])?;
    let (fraction, rest) = fraction(rest)?;
    Some((format!("{whole} {fraction}"), rest))
}

/// `quarter`, `a quarter`, `three sixteenths`, `3 sixteenths`, `five thirty seconds`.
fn fraction<'w, 't>(words: &'w [&'t str]) -> Option<(String, &'w [&'t str])> {
    let (above, rest) = match words {
        [first, rest @ ..] => match count(first) {
            Some(above) => (above, rest),
            None => (1, words),
        },
        [] => return None,
    };
    let (below, rest) = part(rest)?;
    let is_size = rest.first().is_none_or(|next| !NO_SIZE.contains(next));
    (is_size && above < below).then(|| (format!("{above}/{below}"), rest))
}

fn count(word: &str) -> Option<u32> {
    let named = COUNTS.iter().find(|(name, _)| *name == word).map(|(_, count)| *count);
    named.or_else(|| word.parse().ok().filter(|count| *count < 64))
}

/// A denominator, run together, with a dash or apart; `of an inch` behind it goes too.
fn part<'w, 't>(words: &'w [&'t str]) -> Option<(u32, &'w [&'t str])> {
    let (below, rest) = match words {
        [tens @ ("thirty" | "sixty"), units, rest @ ..] => {
            (named(&format!("{tens}{units}"))?, rest)
        }
        [word, rest @ ..] => (named(&word.replace('-', ""))?, rest),
        [] => return None,
    };
    let rest = rest.strip_prefix(&["of", "an", "inch"]).unwrap_or(rest);
    Some((below, rest))
}

fn named(word: &str) -> Option<u32> {
    let one = word.strip_suffix('s').unwrap_or(word);
    PARTS.iter().find(|(name, _)| *name == one).map(|(_, below)| *below)
}
