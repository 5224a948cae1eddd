//! The numbers people type: whole, decimal with a point or a comma, fraction, mixed.
//!
//! Leaves out: units, signs, and what the number stands for. Works on [`super::plain`] text.

/// More digits than any size has.
const MOST_DIGITS: usize = 12;
/// More digits than the numerator or denominator of any size has.
const MOST_FRACTION_DIGITS: usize = 4;

/// How a number was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Notation<'a> {
    /// Digits alone; leading zeros count, since `00` and `0` are two sizes.
    Whole(&'a str),
    /// Digits after a point or a comma.
    Decimal {
        /// The digits before the point, empty in `.5`.
        whole: &'a str,
        /// The digits after it.
        decimals: &'a str,
        /// A comma in place of the point.
        comma: bool,
    },
    /// A fraction, `7/64`.
    Fraction,
    /// A whole number and a fraction, `1 1/4`.
    Mixed,
}

/// A number as typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number<'a> {
    /// What it comes to.
    pub value: f64,
    /// How it was written.
    pub notation: Notation<'a>,
}

impl Number<'_> {
    /// The number of digits after the point.
    pub fn places(&self) -> usize {
        match self.notation {
            Notation::Decimal { decimals, .. } => decimals.len(),
            _ => 0,
        }
    }

    /// Written as a fraction or a mixed number.
    pub fn is_vulgar(&self) -> bool {
        matches!(self.notation, Notation::Fraction | Notation::Mixed)
    }
}

/// Takes a whole number, a decimal or a fraction off the front of the text, and returns the rest.
pub fn take(text: &str) -> Option<(Number<'_>, &str)> {
    let (whole, rest) = digits(text);
    if let Some((decimals, comma, rest)) =
        decimals(rest).filter(|part| !(whole.is_empty() && part.1))
    {
        let value = format!("0{whole}.{decimals}").parse().ok()?;
        let notation = Notation::Decimal { whole, decimals, comma };
        return (whole.len() + decimals.len() <= MOST_DIGITS)
            .then_some((Number { value, notation }, rest));
    }
    if whole.is_empty() || whole.len() > MOST_DIGITS {
        return None;
    }
    let value: f64 = whole.parse().ok()?;
    if let Some((below, rest)) =
        rest.strip_prefix('/').map(digits).filter(|part| !part.0.is_empty())
    {
        let denominator: f64 = below.parse().ok()?;
        let fits = whole.len().max(below.len()) <= MOST_FRACTION_DIGITS && denominator > 0.0;
        return fits.then_some((
            Number { value: value / denominator, notation: Notation::Fraction },
            rest,
        ));
    }
    // "2." is 2, as long as the point ends the number.
    let rest = match rest.strip_prefix('.') {
        Some(after) if !after.starts_with(|next: char| next.is_ascii_digit()) => after,
        _ => rest,
    };
    Some((Number { value, notation: Notation::Whole(whole) }, rest))
}

/// Like [`take`], and joins a whole number with the fraction behind it: `1 1/4`, `1-1/4`.
pub fn take_mixed(text: &str) -> Option<(Number<'_>, &str)> {
    let (first, rest) = take(text)?;
    if let Notation::Whole(_) = first.notation {
        let behind = rest.trim_start();
        let behind = behind.strip_prefix('-').map_or(behind, str::trim_start);
        if behind.len() < rest.len()
            && let Some((second, rest)) = take(behind)
            && let Some(mixed) = mixed(first, second)
        {
            return Some((mixed, rest));
        }
    }
    Some((first, rest))
}

/// A whole number and a fraction below one as a mixed number; `None` for any other pair.
pub fn mixed<'a>(whole: Number<'_>, fraction: Number<'_>) -> Option<Number<'a>> {
    let fits = matches!(whole.notation, Notation::Whole(_))
        && matches!(fraction.notation, Notation::Fraction)
        && fraction.value > 0.0
        && fraction.value < 1.0;
    fits.then_some(Number { value: whole.value + fraction.value, notation: Notation::Mixed })
}

/// Splits the digits off the front.
fn digits(text: &str) -> (&str, &str) {
    let end = text.find(|next: char| !next.is_ascii_digit()).unwrap_or(text.len());
    text.split_at_checked(end).unwrap_or((text, ""))
}

/// Takes a point or comma and the digits behind it: the digits, whether it was a comma, the rest.
fn decimals(text: &str) -> Option<(&str, bool, &str)> {
    let mark = text.chars().next().filter(|mark| matches!(mark, '.' | ','))?;
    let (decimals, rest) = digits(text.strip_prefix(mark)?);
    (!decimals.is_empty()).then_some((decimals, mark == ',', rest))
}
