//! The kinds of metal that a text only stands for, as whoever wrote it is asked for one of them.

use super::kinds::{KINDS, WIDER_IN_COMPANY};
use super::read::{bare, letters_apart, meanings, of_sheet, of_stock, words};
use super::stock::{without_figures, without_size};
use super::{Material, find};

/// A kind with fewer letters is not looked for in a word misspelt.
const LEAST_LETTERS: usize = 5;
/// So many letters of a kind's name allow one to be wrong.
const LETTERS_TO_ONE_WRONG: usize = 5;
/// Never more letters are wrong.
const MOST_WRONG: usize = 2;

/// The materials that a text names together, the commonest first; none where it names one, or says
/// something else. Aluminium alone is a kind, though its address is that of the commonest.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::asked::of_kind;
/// assert_eq!(of_kind("aluminium bar"), of_kind("ali"));
/// assert_eq!(of_kind("3/16 stainless").len(), 5);
/// assert!(of_kind("brass").is_empty() && of_kind("aluminium 6082").is_empty());
/// ```
#[must_use]
pub fn of_kind(typed: &str) -> Vec<&'static Material> {
    match of_stock(typed) {
        Err(several) => several,
        Ok(_) => aluminium(typed),
    }
}

/// The aluminiums, where nothing more is named.
fn aluminium(typed: &str) -> Vec<&'static Material> {
    let text = without_size(typed).unwrap_or_else(|| typed.to_owned());
    let words = words(&text);
    let named = bare(&words);
    let kind = WIDER_IN_COMPANY.iter().find(|(name, _)| *name == "aluminium" && *name == named);
    let slugs = kind.map(|(_, slugs)| *slugs).unwrap_or_default();
    of_sheet(&words, slugs.iter().filter_map(|slug| find(slug)).collect())
}

/// The materials of the kind whose name a text misspells; none where it is far from any.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::asked::of_misspelt_kind;
/// assert_eq!(of_misspelt_kind("stainless steal").len(), 5);
/// assert_eq!(of_misspelt_kind("phosphor broze rod").len(), 3);
/// assert!(of_misspelt_kind("the blue bar").is_empty());
/// ```
#[must_use]
pub fn of_misspelt_kind(typed: &str) -> Vec<&'static Material> {
    let text = without_size(typed).unwrap_or_else(|| typed.to_owned());
    let words = words(&text);
    let named = bare(&words);
    let length = named.chars().count();
    let most = (length / LETTERS_TO_ONE_WRONG).min(MOST_WRONG);
    let is_as_long =
        |name: &str| name.len() >= LEAST_LETTERS && name.len().abs_diff(length) <= most;
    let kinds = WIDER_IN_COMPANY.iter().chain(KINDS).filter(|(name, _)| is_as_long(name));
    let near = kinds.map(|(name, slugs)| (letters_apart(&named, name), slugs));
    let nearest = near.filter(|(apart, _)| *apart <= most).min_by_key(|(apart, _)| *apart);
    let slugs = nearest.map(|(_, slugs)| *slugs).unwrap_or_default();
    of_sheet(&words, slugs.iter().filter_map(|slug| find(slug)).collect())
}

/// What the words of a text can mean together, whatever its figures say, and whatever is not understood.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::{Family, asked::spoken_of};
/// let brasses = spoken_of("round brass 303, odd");
/// assert!(brasses.len() > 1 && brasses.iter().all(|brass| brass.family == Family::Brass));
/// ```
#[must_use]
pub fn spoken_of(typed: &str) -> Vec<&'static Material> {
    meanings(&words(&without_figures(typed))).0
}
