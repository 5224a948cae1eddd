//! What someone typed, to ranked hits over the reference: threads, systems, drills, materials,
//! calculators and the lists of them.
//!
//! The readers beside the tables say what a text names; the finder asks them first, and ranks by
//! [its own scores](self#scores) what is partial, misspelt, or names two things at once. Leaves out
//! the members' notes, and what a drill taps or clears, which is worked out in `calc`.
//!
//! # Scores
//! Each thing found has one score, the best that was found for it.
//!
//! | score | why it was found |
//! | --- | --- |
//! | 995 | something that went wrong, where the text has the signs of it: `tap snapped in brass`; what goes further, and what else it names, less |
//! | 1000 | the whole text names it: `5 BA`, `LG2`, `81 thou`, `BSF`; 1 more where it is the usual one of several |
//! | 995 | the page that answers a line of a drawing or a question of which all is understood: `clearance for 4BA`; the next such 1 less, and so on |
//! | 980 | the plan of a hole, where a thread and a material stand in one text: `copper 4ba` |
//! | 960 | a part of the text names it, and the rest names something too; a metal, where the rest is a size that nothing has: `brass 3.16` |
//! | 900 | a thread whose major diameter is the size typed: `3.2 mm` |
//! | 850 | a drill of another series near the size typed; 849 the next nearest, and so on |
//! | 800 | one of its names begins with the whole text: `phos` |
//! | 700 to 400 | every word of the text is one of its words: as it stands 700, the start of one 600, one letter wrong 500, two 400; the least of them counts |
//! | 550, 450 | as 1000, with one or two letters of the text put right; 980 to 850 fall by as much |
//!
//! Where the rest of a text is only half written or misspelt, its score by words, less 10, stands
//! for 960, and the plan's is 20 more. Where a part is a bare size that can mean several things,
//! each has 10 less than the rest.
//!
//! A letter left out, put in, changed, or swapped with the next counts as one. Equal scores stand
//! in the order of [`Kind`], then of the tables, which have the usual thing first.

mod answers;
mod gather;
mod hit;
mod index;
mod letters;
mod line;
mod pages;
mod parts;
mod phrases;
mod reading;
mod score;
mod size;
mod spelling;
mod thing;
mod troubles;
mod whole;
mod words;

pub use hit::{Hit, Kind};
pub use letters::letters_apart;
pub use pages::{PAGES, Page};
pub use spelling::nearest;

use crate::units::read::{Bare, length, plain, with_diameter_sign};
use gather::Gathered;
use parts::Parts;
use whole::Meaning;

/// The most characters of a query that are looked at.
pub const LONGEST: usize = 200;
/// The most hits, and the most suggestions.
pub const MOST: usize = 30;

/// What was found.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// What was typed, trimmed, as far as it was looked at.
    pub query: String,
    /// What it can mean, best first; each address once.
    pub hits: Vec<Hit>,
    /// What comes near, best first; empty unless `hits` is.
    pub suggestions: Vec<Hit>,
    /// Whether the first hit is the one thing that can be meant.
    is_settled: bool,
}

impl Found {
    /// The first hit, where it is the one thing that can be meant: there a search goes straight to
    /// its page. Its neighbours may stand behind it in [`Self::hits`].
    ///
    /// # Examples
    /// ```
    /// use holewright_core::finder::find;
    /// assert_eq!(find("No 46").only().map(|hit| hit.url.as_ref()), Some("/drills/number/46"));
    /// assert_eq!(find("1/4").only(), None);
    /// assert_eq!(find("gunmetel").only(), None);
    /// ```
    #[must_use]
    pub fn only(&self) -> Option<&Hit> {
        self.hits.first().filter(|_| self.is_settled)
    }
}

/// Finds what a text can mean. Never fails: a text that means nothing has no hits.
///
/// # Examples
/// ```
/// use holewright_core::finder::find;
/// let first = |query| find(query).hits.first().map(|hit| hit.url.to_string());
/// assert_eq!(first("5ba").as_deref(), Some("/threads/ba/5"));
/// assert_eq!(first("gunmetel").as_deref(), Some("/materials/gunmetal"));
/// assert_eq!(first("copper 4ba").as_deref(), Some("/plan?thread=4+BA&material=copper"));
/// assert_eq!(first("qwertyuiop"), None);
/// ```
#[must_use]
pub fn find(query: &str) -> Found {
    let query: String = query.trim().chars().take(LONGEST).collect();
    let query = query.trim_end().to_owned();
    let text = plain(&with_diameter_sign(&query));
    if text.is_empty() {
        return Found { query, ..Found::default() };
    }
    let mut told = Gathered::default();
    if troubles::gather(&text, &mut told) {
        return Found { query, hits: told.best(), suggestions: Vec::new(), is_settled: false };
    }
    let (meaning, mut gathered) = whole::gather(&text);
    if meaning != Meaning::None {
        let is_settled = meaning == Meaning::One;
        return Found { query, hits: gathered.best(), suggestions: Vec::new(), is_settled };
    }
    let is_settled = answers::gather(&text, &mut gathered);
    if gathered.len() > 0 {
        return Found { query, hits: gathered.best(), suggestions: Vec::new(), is_settled };
    }
    if is_size_alone(&text) {
        let mut near = Gathered::default();
        whole::suggest(&text, &mut near);
        return Found { query, suggestions: near.best(), ..Found::default() };
    }
    let parts = Parts::of(&text);
    gather_less_sure(&text, &parts, &mut gathered);
    if gathered.len() == 0 {
        whole::gather_stock(&text, &mut gathered);
    }
    let hits = gathered.best();
    let suggestions = if hits.is_empty() { suggestions(&text, &parts) } else { Vec::new() };
    Found { query, hits, suggestions, is_settled: false }
}

/// Whether a text is a size with its unit, and so no number of a thread beside a word: `3 in`.
fn is_size_alone(text: &str) -> bool {
    length(text, Bare::Ask).is_ok() && text.ends_with(|last: char| !last.is_ascii_digit())
}

/// What parts of the text name, what it names spelt right, and whose words it has.
fn gather_less_sure(text: &str, parts: &Parts, gathered: &mut Gathered) {
    parts.gather(gathered);
    if let Some(corrected) = spelling::corrected(text) {
        let (meaning, mut right) = whole::gather(&corrected.text);
        if meaning == Meaning::None {
            answers::gather(&corrected.text, &mut right);
        }
        if right.len() == 0 {
            Parts::of(&corrected.text).gather(&mut right);
        }
        gathered.add_misspelt(right, &corrected);
    }
    for (score, thing) in index::search(&words::words(text)) {
        gathered.add(score, thing.hit());
    }
}

/// What comes near a text that means nothing.
fn suggestions(text: &str, parts: &Parts) -> Vec<Hit> {
    let mut near = Gathered::default();
    parts.suggest(&mut near);
    whole::suggest(text, &mut near);
    for (score, thing) in index::search_some(&words::words(text)) {
        near.add(score, thing.hit());
    }
    near.best()
}
