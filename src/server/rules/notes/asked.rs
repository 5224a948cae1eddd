//! What a search for notes asks: the words that were typed, each with its other forms and with the things
//! of the reference that it names. Whoever looks for PB102 finds what was written of phosphor bronze.
//!
//! Leaves out how the index is asked.

use std::collections::HashSet;

use holewright_core::tables::drills;
use holewright_core::tables::materials::asked::of_kind;
use holewright_core::tables::materials::read::of_stock;
use holewright_core::tables::materials::{scrap::scrap, stock::without_size};
use holewright_core::tables::threads::Thread;
use holewright_core::tables::threads::read::{as_meant, candidates};
use rust_stemmers::{Algorithm, Stemmer};

use super::words::{Uses, folded};

/// The most words of a query that are looked at.
pub const WORDS: usize = 12;
/// The most letters of one word.
const LETTERS: usize = 40;
/// The most words of one name: "1/4 x 40 ME".
const NAME: usize = 4;

/// Words that say nothing of what is looked for.
#[rustfmt::skip]
const SAYS_NOTHING: [&str; 68] = [
    "a", "about", "an", "and", "any", "anybody", "anyone", "are", "as", "at", "be", "been", "but", "by", "can",
    "did", "do", "does", "doing", "for", "from", "get", "got", "had", "has", "have", "how", "i", "if", "in",
    "into", "is", "it", "its", "me", "my", "of", "on", "or", "others", "our", "so", "some", "somebody",
    "someone", "that", "the", "their", "them", "there", "these", "they", "this", "to", "was", "we", "were",
    "what", "when", "where", "which", "who", "why", "will", "with", "would", "you", "your",
];

/// Words of the bench whose forms no ending tells, or that say one thing: common practice, no source.
const IRREGULAR: [&[&str]; 15] = [
    &["bind", "binds", "binding", "bound"],
    &["blow", "blows", "blew", "blown"],
    &["break", "breaks", "breaking", "broke", "broken", "snap", "snaps", "snapped", "snapping"],
    &["catch", "catches", "catching", "caught"],
    &["drive", "drives", "driving", "drove", "driven"],
    &["freeze", "freezes", "froze", "frozen"],
    &["go", "goes", "went", "gone"],
    &["grab", "grabs", "grabbed", "grabbing", "snatch", "snatches", "snatched", "snatching"],
    &["grind", "grinds", "grinding", "ground"],
    &["hold", "holds", "holding", "held"],
    &["shrink", "shrinks", "shrank", "shrunk"],
    &["spin", "spins", "spinning", "spun"],
    &["stick", "sticks", "sticking", "stuck"],
    &["tear", "tears", "tearing", "tore", "torn"],
    &["wear", "wears", "wearing", "wore", "worn"],
];

/// One word that was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asked {
    /// As it was typed, without what the language of an index could take for its own.
    pub word: String,
    /// The addresses of the things that it names, alone or with the words beside it: `materials/copper`.
    pub things: Vec<String>,
}

/// What was typed, word for word; words that say nothing only where there are no others. A word that is
/// typed again says nothing more.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::asked::read;
/// let asked = read("tapping 8 BA in PB102");
/// let words: Vec<&str> = asked.iter().map(|asked| asked.word.as_str()).collect();
/// assert_eq!(words, ["tapping", "8", "BA", "PB102"]);
/// assert_eq!(asked[1].things, ["threads/ba/8"]);
/// assert_eq!(asked[3].things, ["materials/phosphor-bronze-drawn"]);
/// ```
#[must_use]
pub fn read(typed: &str) -> Vec<Asked> {
    let typed: Vec<String> = typed.split_whitespace().filter_map(plain).collect();
    let says = |word: &&String| !SAYS_NOTHING.contains(&&*folded(word));
    let saying: Vec<String> = typed.iter().filter(says).cloned().collect();
    let mut uses = Uses::default();
    let mut looks = HashSet::new();
    let words = if saying.is_empty() { typed } else { saying };
    let words = words.into_iter().filter(|word| looks.insert(folded(word).into_owned()));
    let words = words.filter_map(|word| plain(uses.within(&word)));
    let mut asked: Vec<Asked> =
        words.take(WORDS).map(|word| Asked { word, things: Vec::new() }).collect();
    name_things(&mut asked);
    asked
}

/// One word, or several that stand together. None where there is no letter and no digit in it. A
/// character of private use is no letter of any word: the marks of the index are made of them.
#[must_use]
pub fn plain(text: &str) -> Option<String> {
    let kept = |letter: &char| {
        *letter != '"' && !letter.is_control() && !('\u{e000}'..='\u{f8ff}').contains(letter)
    };
    let text: String = text.chars().filter(kept).take(LETTERS).collect();
    text.chars().any(char::is_alphanumeric).then_some(text)
}

/// Each word has the things of the longest name that it stands in.
fn name_things(asked: &mut [Asked]) {
    let words: Vec<String> = asked.iter().map(|asked| asked.word.clone()).collect();
    let mut first = 0;
    while first < words.len() {
        let named = (1..=NAME).rev().find_map(|count| {
            let name = words.get(first..first + count)?.join(" ");
            let things = named(&name);
            (!things.is_empty()).then_some((count, things))
        });
        let count = named.as_ref().map_or(1, |(count, _)| *count);
        if let Some((_, things)) = named {
            asked
                .iter_mut()
                .skip(first)
                .take(count)
                .for_each(|asked| asked.things.clone_from(&things));
        }
        first += count;
    }
}

/// The things that a text names outright; all of a kind where it names a kind of material. A part that is
/// usually made of something names no material here, nor does a figure alone.
fn named(name: &str) -> Vec<String> {
    let has = |is: fn(char) -> bool| name.chars().any(is);
    let (has_figure, has_letter) =
        (has(|letter| letter.is_ascii_digit()), has(char::is_alphabetic));
    if name.chars().count() < 2 || !has_letter {
        return Vec::new();
    }
    if has_figure {
        if let Some(thread) = thread(name) {
            return vec![thing(&thread.path())];
        }
        if let Ok(drill) = drills::read::read(name) {
            return vec![thing(&drill.path())];
        }
    }
    if scrap(name).is_some() {
        return Vec::new();
    }
    // A size is not part of the name: it is looked for by itself, and may be a drill's.
    if without_size(name).is_some() {
        return Vec::new();
    }
    let kind = of_kind(name);
    let materials = if kind.is_empty() { of_stock(name).into_iter().collect() } else { kind };
    materials.iter().map(|material| format!("materials/{}", material.slug)).collect()
}

/// The thread that a text names; the usual one where it is only a size by a pitch, "1/4x40".
fn thread(name: &str) -> Option<&'static Thread> {
    let is_by_pitch = |word: &str| word == "x" || word.chars().any(|c| c.is_ascii_digit());
    candidates(name).ok().or_else(|| {
        let read = name.split(' ').all(is_by_pitch).then(|| as_meant(name).ok())??;
        Some(read.thread)
    })
}

fn thing(path: &str) -> String {
    path.trim_start_matches('/').to_owned()
}

/// How a word is written in its other forms.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Forms {
    stem: String,
    irregular: &'static [&'static str],
}

impl Forms {
    /// Those of one plain word; none of figures and of what has more in it than letters.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::asked::Forms;
    /// let forms = Forms::of("snapped").unwrap();
    /// assert!(forms.has("snap") && forms.has("snapping") && !forms.has("snarl"));
    /// assert!(Forms::of("broke").unwrap().has("broken"));
    /// assert!(Forms::of("grabs").unwrap().has("snatched"));
    /// assert_eq!(Forms::of("3.3"), None);
    /// ```
    #[must_use]
    pub fn of(word: &str) -> Option<Self> {
        let word = folded(word);
        if word.chars().count() < 3 || !word.chars().all(|letter| letter.is_ascii_lowercase()) {
            return None;
        }
        let irregular = IRREGULAR.into_iter().find(|forms| forms.contains(&&*word));
        Some(Self { stem: stem(&word), irregular: irregular.unwrap_or_default() })
    }

    /// What every form begins with that an ending tells.
    #[must_use]
    pub fn beginning(&self) -> &str {
        self.stem.strip_suffix('i').unwrap_or(&self.stem)
    }

    /// The others.
    #[must_use]
    pub const fn irregular(&self) -> &'static [&'static str] {
        self.irregular
    }

    /// Whether a word of the index, small and without accents, is one.
    #[must_use]
    pub fn has(&self, word: &str) -> bool {
        self.irregular.contains(&word) || stem(word) == self.stem
    }
}

/// What every form of a word begins with, as far as endings tell.
pub(super) fn stem(word: &str) -> String {
    Stemmer::create(Algorithm::English).stem(word).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The words of a query that name something, each with how many things.
    fn names(typed: &str) -> Vec<(String, usize)> {
        let asked = read(typed).into_iter().filter(|asked| !asked.things.is_empty());
        asked.map(|asked| (asked.word, asked.things.len())).collect()
    }

    #[test]
    fn what_says_nothing_is_left_out_where_something_else_stands() {
        let words = |typed: &str| -> Vec<String> {
            read(typed).into_iter().map(|asked| asked.word).collect()
        };
        assert_eq!(words("what did others do with this awkward bronze"), ["awkward", "bronze"]);
        assert_eq!(words("what with"), ["what", "with"]);
        assert_eq!(words("\u{e000} \" -"), Vec::<String>::new());
    }

    #[test]
    fn names_of_the_tables_are_known_in_any_spelling() {
        for (typed, expected) in [
            ("bronze grabs", vec![("bronze", 7)]),
            ("phosphor bronze reamed", vec![("phosphor", 3), ("bronze", 3)]),
            ("8 BA in silver steel", vec![("8", 1), ("BA", 1), ("silver", 1), ("steel", 1)]),
            ("8ba drill", vec![("8ba", 1)]),
            ("3/16 silver steel", vec![("silver", 1), ("steel", 1)]),
            ("silver steel 3/16", vec![("silver", 1), ("steel", 1)]),
            ("6 mm bronze", vec![("6", 1), ("mm", 1), ("bronze", 7)]),
            ("aluminium", vec![("aluminium", 7)]),
            ("aluminium 6082", vec![("aluminium", 1), ("6082", 1)]),
            ("no. 43 drill", vec![("no.", 1), ("43", 1), ("drill", 1)]),
            ("pillar screws", vec![]),
            ("8 43 1/4", vec![]),
        ] {
            let expected: Vec<(String, usize)> =
                expected.into_iter().map(|(word, count)| (word.to_owned(), count)).collect();
            assert_eq!(names(typed), expected, "{typed}");
        }
    }
}
