//! Reading the material names people type: slug, alias, name or designation, in any usual spelling.
//!
//! Case, spaces, hyphens and other marks do not count. A word that could mean two materials asks;
//! a word that means none of ours is never guessed at.

use std::sync::LazyLock;

use super::folded::{LONGEST, fold};
use super::kinds::{KINDS, Kind, NEAREST_ONLY, NO_SHEET, OF_A_FORM, TYPED_ONLY, WIDER_IN_COMPANY};
use super::scrap::scrap;
use super::stock::without_size;
use super::{Material, all, find};
use crate::units::read::plain;

/// Why a typed name gives no material.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReadError {
    /// It is none of the materials we hold.
    #[error("no material here is called “{typed}”{}", suggestion(nearest))]
    Unknown {
        /// What was typed.
        typed: String,
        /// The nearest names, best first; may be empty.
        nearest: Vec<&'static Material>,
    },
    /// It could be any of these.
    #[error("“{typed}” could be {}", listed(candidates))]
    Ambiguous {
        /// What was typed.
        typed: String,
        /// What it could be, in the order of the list.
        candidates: Vec<&'static Material>,
    },
}

/// Most names offered when nothing fits.
const MOST_OFFERED: usize = 5;

/// Words about the shape, the condition or the paperwork, which say nothing about the metal.
#[rustfmt::skip]
const NO_MATTER: &[&str] = &[
    "bar", "rod", "round", "hex", "hexagon", "square", "sheet", "tube", "stock", "metal", "grade",
    "aisi", "bs", "plate", "strip", "flat", "angle", "channel", "billet", "blank", "offcut", "wire",
    "section", "scrap", "old", "piece", "lump", "block", "bit", "some", "shim", "drawn", "rolled", "bright",
    "annealed", "normalised", "hard", "soft", "half", "quarter", "full", "temper", "condition",
    "t3", "t4", "t6", "t651", "t6511", "tb", "tf", "h14", "h24", "sae", "din", "astm", "material",
];

/// Standards named in front of a mark, as in `BS 1400 LG2`.
const STANDARDS: &[&str] = &["970", "1400", "1474", "1490", "2870", "2871", "2873", "2874", "4659"];

/// The material a person means.
///
/// # Errors
/// [`ReadError::Ambiguous`] where two or more fit, [`ReadError::Unknown`] where none does.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::read::{read, ReadError};
/// assert_eq!(read("CZ 121")?.slug, "free-cutting-brass");
/// assert_eq!(read("leaded gunmetal LG2")?.slug, "gunmetal");
/// assert_eq!(read("brass")?.slug, "free-cutting-brass");
/// assert_eq!(read("brass CZ120")?.slug, "engraving-brass");
/// assert_eq!(read("3/16 silver steel")?.slug, "silver-steel");
/// assert!(matches!(read("bronze"), Err(ReadError::Ambiguous { .. })));
/// assert!(matches!(read("unobtainium"), Err(ReadError::Unknown { .. })));
/// # Ok::<(), ReadError>(())
/// ```
pub fn read(typed: &str) -> Result<&'static Material, ReadError> {
    sized(typed).map_err(|unsure| {
        let typed = typed.to_owned();
        match unsure {
            Unsure::Asked(candidates) => ReadError::Ambiguous { typed, candidates },
            Unsure::Partly(nearest) if nearest.is_empty() => {
                let bare = without_size(&typed).unwrap_or_else(|| typed.clone());
                let nearest = self::nearest(&fold(&bare));
                ReadError::Unknown { typed, nearest }
            }
            Unsure::Partly(mut nearest) => {
                nearest.truncate(MOST_OFFERED);
                ReadError::Unknown { typed, nearest }
            }
        }
    })
}

/// The material that [`read`] would read, without looking for names like it: for a caller that tries
/// many texts.
///
/// # Errors
/// The materials that can be meant, in the order of the list; none where the text is no material.
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::{find, read::candidates};
/// assert_eq!(candidates("LG2").ok(), find("gunmetal"));
/// assert!(candidates("bronze").is_err_and(|materials| materials.len() == 7));
/// assert_eq!(candidates("unobtainium"), Err(Vec::new()));
/// ```
pub fn candidates(typed: &str) -> Result<&'static Material, Vec<&'static Material>> {
    meant(typed).map_err(|unsure| match unsure {
        Unsure::Asked(candidates) => candidates,
        Unsure::Partly(_) => Vec::new(),
    })
}

/// The same of a text with the size of the stock, as [`read`] reads it: `3/16 silver steel`. The finder,
/// where a size is a drill, asks [`candidates`] first.
///
/// # Errors
/// As [`candidates`].
///
/// # Examples
/// ```
/// use holewright_core::tables::materials::{find, read::of_stock};
/// assert_eq!(of_stock("silver steel, 1/4 dia").ok(), find("silver-steel"));
/// assert_eq!(of_stock("half hard brass sheet 1 mm").ok(), find("sheet-brass"));
/// assert_eq!(of_stock("brass 303"), Err(Vec::new()));
/// ```
pub fn of_stock(typed: &str) -> Result<&'static Material, Vec<&'static Material>> {
    sized(typed).map_err(|unsure| match unsure {
        Unsure::Asked(candidates) => candidates,
        Unsure::Partly(_) => Vec::new(),
    })
}

/// Whether a text names a metal that is not held, so that what it is read as is only the nearest.
#[must_use]
pub fn is_nearest_only(typed: &str) -> bool {
    NEAREST_ONLY.contains(&fold(typed).as_str())
}

/// Why a text is not one material.
enum Unsure {
    /// All of it is understood, and it can be any of these.
    Asked(Vec<&'static Material>),
    /// Not all of it is understood; what is, can be any of these, if there are some.
    Partly(Vec<&'static Material>),
}

/// The one material that is meant by a text, or by what is left of it without the size.
fn sized(typed: &str) -> Result<&'static Material, Unsure> {
    meant(typed).or_else(|unsure| match (&unsure, without_size(typed)) {
        (Unsure::Partly(_), Some(bare)) => meant(&bare),
        _ => Err(unsure),
    })
}

/// The one material that is meant.
fn meant(typed: &str) -> Result<&'static Material, Unsure> {
    if let Some(material) = find(typed) {
        return Ok(material);
    }
    if is_fraction(typed) || is_other_figure(plain(typed).trim_matches([' ', '.'])) {
        return Err(Unsure::Partly(Vec::new()));
    }
    let whole = fold(typed);
    let words = words(typed);
    let bare = bare(&words);
    if let Some(material) =
        named(&whole).or_else(|| of_a_form(&words, &bare)).or_else(|| named(&bare))
    {
        return Ok(material);
    }
    if let Some(scrap) = scrap(typed) {
        return Err(Unsure::Asked(scrap.materials()));
    }
    let (candidates, understood) = meanings(&words);
    match candidates.as_slice() {
        [material] if understood => Ok(material),
        [_, _, ..] if understood => one_of(of_sheet(&words, candidates)),
        _ => Err(Unsure::Partly(candidates)),
    }
}

/// Whether a text is a fraction of an inch, which would fold to another figure: 3/16 is no 316.
fn is_fraction(typed: &str) -> bool {
    let text = plain(typed);
    let parts = text.rsplit(' ').next().and_then(|last| last.split_once('/'));
    parts.is_some_and(|(above, below)| {
        let figures: Option<(u32, u32)> = above.parse().ok().zip(below.parse().ok());
        figures
            .is_some_and(|(above, below)| above < below && below.is_power_of_two() && below <= 64)
            && text.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, ' ' | '/'))
    })
}

/// The words that matter, joined.
pub(super) fn bare(words: &[String]) -> String {
    words.iter().filter(|word| !is_no_matter(word)).map(String::as_str).collect()
}

/// The only one, or all are asked for.
fn one_of(candidates: Vec<&'static Material>) -> Result<&'static Material, Unsure> {
    match candidates.as_slice() {
        [material] => Ok(material),
        _ => Err(Unsure::Asked(candidates)),
    }
}

/// The material of one of its forms: brass is bar, and brass sheet another.
fn of_a_form(words: &[String], bare: &str) -> Option<&'static Material> {
    let has = |forms: &[&str]| words.iter().any(|word| forms.contains(&word.as_str()));
    let row = OF_A_FORM.iter().find(|(name, forms, _)| *name == bare && has(forms));
    row.and_then(|(_, _, slug)| find(slug))
}

/// Of a sheet, those that are sold as sheet; all where none is.
pub(super) fn of_sheet(
    words: &[String],
    candidates: Vec<&'static Material>,
) -> Vec<&'static Material> {
    let is_sheet = |word: &String| matches!(word.as_str(), "sheet" | "strip" | "plate");
    let is_sold = |material: &&&'static Material| !NO_SHEET.contains(&material.slug);
    let sold: Vec<_> = candidates.iter().filter(is_sold).copied().collect();
    if words.iter().any(is_sheet) && !sold.is_empty() { sold } else { candidates }
}

/// The material with exactly this folded name.
fn named(folded: &str) -> Option<&'static Material> {
    NAMES.iter().find(|(name, _)| name == folded).map(|(_, material)| *material)
}

/// Every name, folded once, with its material, in the order of the list.
static NAMES: LazyLock<Vec<(String, &'static Material)>> = LazyLock::new(|| {
    all().iter().flat_map(|material| names(material).map(move |name| (name, material))).collect()
});

/// Everything a material answers to, folded.
fn names(material: &'static Material) -> impl Iterator<Item = String> {
    let own = [material.slug, material.name];
    let other = material.aliases.iter().chain(material.known_as).copied();
    let marks = material.designations.iter().map(|designation| designation.mark);
    own.into_iter().chain(other).chain(marks).map(fold)
}

/// The typed text cut at spaces and marks, each part folded. A word said again at once says no more;
/// a figure may, as in `85-5-5-5`.
pub(super) fn words(typed: &str) -> Vec<String> {
    let text = plain(typed);
    let chunks =
        text.split(|letter: char| !letter.is_alphanumeric() && !matches!(letter, '/' | '.'));
    let words =
        chunks.flat_map(
            |chunk| {
                if is_other_figure(chunk) { vec![chunk.to_owned()] } else { parts(chunk) }
            },
        );
    let mut words: Vec<_> = words.filter(|word| !word.is_empty()).take(LONGEST).collect();
    words.dedup_by(|word, before| word == before && word.chars().all(char::is_alphabetic));
    words
}

/// A word cut at its marks, each part folded.
fn parts(chunk: &str) -> Vec<String> {
    chunk.split(|letter: char| !letter.is_alphanumeric()).map(fold).collect()
}

/// Whether a figure with a mark in it would fold to a grade that is not written so: 3/16 and 3.16 are
/// no 316.
fn is_other_figure(chunk: &str) -> bool {
    let is_figure = chunk.contains(['/', '.'])
        && chunk.chars().all(|c| c.is_ascii_digit() || matches!(c, '/' | '.'));
    let is_written_so = |material: &'static Material| {
        let marks = material.designations.iter().map(|designation| designation.mark);
        marks.chain(material.known_as.iter().copied()).any(|name| name == chunk)
    };
    is_figure && named(&fold(chunk)).is_some_and(|material| !is_written_so(material))
}

/// What the words can mean together, and whether every one of them was understood.
///
/// At each place the longest run of words that is a name or a kind is taken: `en 1 a steel` is
/// EN1A, then steel. The meanings of the runs are intersected.
pub(super) fn meanings(words: &[String]) -> (Vec<&'static Material>, bool) {
    const LONGEST_RUN: usize = 4;
    let mut found: Option<Vec<&'static Material>> = None;
    let mut understood = true;
    let mut rest = words;
    while !rest.is_empty() {
        let run = (1..=LONGEST_RUN.min(rest.len()))
            .rev()
            .find_map(|length| rest.get(..length).and_then(meaning).map(|means| (length, means)));
        let Some((length, means)) = run else {
            understood &= rest.first().is_some_and(|word| is_no_matter(word));
            rest = rest.get(1..).unwrap_or_default();
            continue;
        };
        found = Some(match found {
            None => means,
            Some(so_far) => so_far
                .into_iter()
                .filter(|known| means.iter().any(|other| other.slug == known.slug))
                .collect(),
        });
        rest = rest.get(length..).unwrap_or_default();
    }
    (found.unwrap_or_default(), understood)
}

/// Whether the word says nothing about which metal it is.
fn is_no_matter(word: &str) -> bool {
    let number = word.strip_prefix("bs").unwrap_or(word);
    NO_MATTER.contains(&word) || STANDARDS.contains(&number)
}

/// What a run of words, joined, can mean; none where it is neither a name nor a kind.
fn meaning(run: &[String]) -> Option<Vec<&'static Material>> {
    let joined = run.concat();
    let single = joined.strip_suffix('s').unwrap_or(&joined);
    let is_it = |(word, _): &&Kind| *word == joined || *word == single;
    let kind = WIDER_IN_COMPANY.iter().chain(KINDS).chain(TYPED_ONLY).find(is_it);
    if let Some((_, slugs)) = kind {
        return Some(slugs.iter().filter_map(|slug| find(slug)).collect());
    }
    let called = NAMES.iter().filter(|(name, _)| *name == joined);
    let mut means: Vec<_> = called.map(|(_, material)| *material).collect();
    means.dedup_by_key(|material| material.slug);
    (!means.is_empty()).then_some(means)
}

/// The materials with a name that starts the same or differs by a letter or two, best first.
fn nearest(typed: &str) -> Vec<&'static Material> {
    if typed.is_empty() {
        return Vec::new();
    }
    let length = typed.chars().count();
    let allowed = (length / 4).max(1);
    // A name too long or too short by more letters than may differ need not be compared.
    let may_be_near =
        |name: &str| name.starts_with(typed) || name.chars().count().abs_diff(length) <= allowed;
    let mut ranked: Vec<(usize, &'static Material)> = NAMES
        .iter()
        .filter(|(name, _)| may_be_near(name))
        .map(|(name, material)| (unlikeness(typed, name), *material))
        .filter(|(distance, _)| *distance <= allowed)
        .collect();
    ranked.sort_by_key(|(distance, _)| *distance);
    let mut nearest: Vec<&'static Material> = Vec::new();
    for (_, material) in ranked {
        if nearest.len() < MOST_OFFERED && !nearest.iter().any(|near| near.slug == material.slug) {
            nearest.push(material);
        }
    }
    nearest
}

/// 1 where the name goes on from what was typed, else the number of letters to change.
fn unlikeness(typed: &str, name: &str) -> usize {
    const LEAST_PREFIX: usize = 3;
    if typed.len() >= LEAST_PREFIX && name.starts_with(typed) {
        return 1;
    }
    letters_apart(typed, name)
}

/// Insertions, deletions and changes that turn one text into the other (Levenshtein's distance).
pub(super) fn letters_apart(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (above, letter) in one.chars().enumerate() {
        let mut left = above + 1;
        let mut next = vec![left];
        for (pair, wanted) in row.windows(2).zip(&other) {
            let [diagonal, up] = pair else { continue };
            let change = diagonal + usize::from(*wanted != letter);
            left = change.min(up + 1).min(left + 1);
            next.push(left);
        }
        row = next;
    }
    row.last().copied().unwrap_or_default()
}

/// The end of the message: the nearest names, or nothing.
fn suggestion(nearest: &[&'static Material]) -> String {
    if nearest.is_empty() { String::new() } else { format!("; nearest: {}", listed(nearest)) }
}

/// Names joined for a sentence: `a, b or c`.
fn listed(materials: &[&'static Material]) -> String {
    let names: Vec<&str> = materials.iter().map(|material| material.name).collect();
    match names.as_slice() {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}
