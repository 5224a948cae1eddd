//! All rounding and printing: a figure is rounded once, here, on its way out.

use super::{Length, in_inch, in_mm};

/// Rounds half away from zero to a number of decimal places.
///
/// A figure that misses the half by nothing but binary noise counts as the half, so `2.675`
/// (stored slightly below) prints as `2.68`, the way a person rounds it.
///
/// # Examples
/// ```
/// use holewright_core::units::print::round;
/// assert_eq!(round(2.675, 2), 2.68);
/// assert_eq!(round(-0.004, 2), 0.0);
/// ```
#[must_use]
pub fn round(value: f64, places: u8) -> f64 {
    let scale = power_of_ten(places);
    let scaled = value.abs() * scale;
    let rounded = (scaled + 0.5 + scaled * 1e-12).floor() / scale;
    if rounded == 0.0 { 0.0 } else { rounded.copysign(value) }
}

fn power_of_ten(places: u8) -> f64 {
    const POWERS: [f64; 10] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];
    POWERS.get(usize::from(places)).copied().unwrap_or(1e9)
}

/// A number with exactly so many decimal places: `2.50`.
#[must_use]
pub fn fixed(value: f64, places: u8) -> String {
    format!("{:.*}", usize::from(places), round(value, places))
}

/// A number with at most so many decimal places and no trailing zeros: `2.5`.
#[must_use]
pub fn trimmed(value: f64, places: u8) -> String {
    format!("{}", round(value, places))
}

/// A length in millimetres, unit included: `2.65 mm`.
#[must_use]
pub fn mm(length: Length, places: u8) -> String {
    format!("{} mm", trimmed(in_mm(length), places))
}

/// A length in inches, unit included: `0.1043 in`.
#[must_use]
pub fn inch(length: Length, places: u8) -> String {
    format!("{} in", fixed(in_inch(length), places))
}

/// A percentage to one place, sign included: `69.9 %`.
#[must_use]
pub fn percent(value: f64) -> String {
    format!("{} %", fixed(value, 1))
}

/// Rounds to so many significant figures: 2,971 rev/min is read off a dial as 3,000.
///
/// # Examples
/// ```
/// use holewright_core::units::print::significant;
/// assert_eq!(significant(2971.0, 2), 3000.0);
/// assert_eq!(significant(84.9, 2), 85.0);
/// ```
#[must_use]
pub fn significant(value: f64, figures: u8) -> f64 {
    let mut scale = 1.0;
    let most = power_of_ten(figures);
    while value.abs() / scale >= most {
        scale *= 10.0;
    }
    round(value / scale, 0) * scale
}

/// A number with so many figures that tell, and no trailing zeros: a rough figure is told roughly.
///
/// # Examples
/// ```
/// use holewright_core::units::print::to_figures;
/// assert_eq!(to_figures(0.14237, 2), "0.14");
/// assert_eq!(to_figures(0.0532, 2), "0.053");
/// assert_eq!(to_figures(2.0265, 2), "2");
/// assert_eq!(to_figures(48.7, 2), "49");
/// assert_eq!(to_figures(0.0, 2), "0");
/// ```
#[must_use]
pub fn to_figures(value: f64, figures: u8) -> String {
    let mut places = 0;
    let mut scale = value.abs();
    let least = power_of_ten(figures.saturating_sub(1));
    while scale > 0.0 && scale < least && places < 9 {
        scale *= 10.0;
        places += 1;
    }
    if places == 0 { trimmed(significant(value, figures), 0) } else { trimmed(value, places) }
}

/// Words with a capital at the start, for the head of a sentence.
#[must_use]
pub fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| joined(first.to_uppercase(), letters.as_str()))
}

/// Words with a small letter at the start, to follow a colon; `PTFE` and `A4` stay as they are.
///
/// # Examples
/// ```
/// use holewright_core::units::print::running;
/// assert_eq!(running("It holds lead."), "it holds lead.");
/// assert_eq!(running("PTFE creeps."), "PTFE creeps.");
/// ```
#[must_use]
pub fn running(words: &str) -> String {
    let mut letters = words.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() || second == ' ' => {
            joined(first.to_lowercase(), letters.as_str())
        }
        _ => words.to_owned(),
    }
}

/// A first letter in another case, and the rest as it is.
fn joined(first: impl Iterator<Item = char>, rest: &str) -> String {
    let mut words = String::with_capacity(rest.len() + 4);
    words.extend(first);
    words.push_str(rest);
    words
}

/// Words that begin with a figure, behind the article that is said before it.
///
/// # Examples
/// ```
/// use holewright_core::units::print::with_article;
/// assert_eq!(["6 mm", "8 mm", "11.5 mm", "18 mm"].map(with_article), ["a 6 mm", "an 8 mm", "an 11.5 mm", "an 18 mm"]);
/// assert_eq!(["1.8 mm", "110 mm", "0.8 mm", "80 mm"].map(with_article), ["a 1.8 mm", "a 110 mm", "a 0.8 mm", "an 80 mm"]);
/// ```
#[must_use]
pub fn with_article(words: &str) -> String {
    let whole = words.split(|letter: char| !letter.is_ascii_digit()).next().unwrap_or_default();
    // Eight, eleven, eighteen, eighty, eight hundred.
    let article = if whole.starts_with('8') || matches!(whole, "11" | "18") { "an" } else { "a" };
    format!("{article} {words}")
}
