//! The words of everything that can be found, made once, and the search by words.

use std::sync::LazyLock;

use super::doors::DOORS;
use super::letters::{letters_apart, most_wrong};
use super::score::{BEGINS, Score, WORD, WORD_BEGINS, letters_off};
use super::thing::Thing;
use super::words::{has_figure, is_filler, joined, words as cut};
use super::{Kind, MOST};
use crate::tables::drills::{self, Series};
use crate::tables::materials::{self, Material};
use crate::tables::threads::{self, System, Thread};
use crate::units::read::plain;

/// A text of more words is searched by its first.
const MOST_WORDS: usize = 8;
/// A shorter text is the beginning of too many names.
const LEAST_OF_NAME: usize = 3;
/// A shorter word is the beginning of too many words.
const LEAST_OF_WORD: usize = 2;

/// Words that the readers know and no name here has: not to be put right, and worth it if misspelt.
const READERS_WORDS: [&str; 9] =
    ["grade", "hand", "inch", "inches", "left", "millimetre", "plastic", "plastics", "thou"];

/// Words in the marks of materials that say whose mark it is: no material is meant by them.
const STANDARDS: [&str; 4] = ["aisi", "bs", "en", "grade"];

/// A thing with its names joined and its words.
#[derive(Debug)]
struct Entry {
    thing: Thing,
    names: Vec<String>,
    /// Places in [`Index::words`].
    words: Vec<usize>,
}

/// Everything that can be found.
#[derive(Debug)]
struct Index {
    entries: Vec<Entry>,
    /// Every word of every entry, in order, once.
    words: Vec<String>,
    /// The places of those that may be misspelt: without a figure, and not too short.
    spelt: Vec<usize>,
    /// The words that a misspelt one may be taken for, in order.
    spellings: Vec<String>,
}

static INDEX: LazyLock<Index> = LazyLock::new(Index::new);

/// The things with exactly this name, joined; threads and drills are left to their readers.
pub(super) fn named(name: &str) -> Vec<Thing> {
    let named = INDEX.entries.iter().filter(|entry| !is_sized(entry.thing));
    let named = named.filter(|entry| entry.names.iter().any(|own| own == name));
    named.map(|entry| entry.thing).collect()
}

/// The best things that have every word of a text, with their scores.
///
/// A thread or a drill is found only by a text with a figure in it.
pub(super) fn search(typed: &[String]) -> Vec<(Score, Thing)> {
    let is_sizes = typed.iter().any(|word| has_figure(word));
    INDEX.search(typed, |thing| is_sizes || !is_sized(thing))
}

/// As [`search`], without threads and drills.
pub(super) fn search_named(typed: &[String]) -> Vec<(Score, Thing)> {
    INDEX.search(typed, |thing| !is_sized(thing))
}

/// The best things that have some words of a text, threads and drills left out.
pub(super) fn search_some(typed: &[String]) -> Vec<(Score, Thing)> {
    let worths = INDEX.worths(typed);
    let named = INDEX.entries.iter().filter(|entry| !is_sized(entry.thing));
    best(named.filter_map(|entry| Some((entry.mean(&worths)?, entry.thing))).collect())
}

/// The words that a misspelt one may be taken for.
pub(super) fn words() -> impl Iterator<Item = &'static str> {
    INDEX.spellings.iter().map(String::as_str)
}

/// Whether a word of the reference starts with this, or is this.
pub(super) fn is_start_of_word(typed: &str) -> bool {
    let place = INDEX.spellings.partition_point(|word| word.as_str() < typed);
    INDEX.spellings.get(place).is_some_and(|word| word.starts_with(typed))
}

/// Threads and drills: what is known by its size.
fn is_sized(thing: Thing) -> bool {
    matches!(thing.kind(), Kind::Thread | Kind::Drill)
}

/// The best, best first, no more than are shown.
fn best(mut found: Vec<(Score, Thing)>) -> Vec<(Score, Thing)> {
    // Stable: equals stay in the order of the tables, which have the usual thing first.
    found.sort_by_key(|(score, thing)| (std::cmp::Reverse(*score), thing.kind()));
    found.truncate(MOST);
    found
}

impl Index {
    fn new() -> Self {
        let named: Vec<(Thing, Vec<String>)> = things();
        let cut_up: Vec<Vec<String>> = named
            .iter()
            .map(|(thing, texts)| {
                let words = texts.iter().flat_map(|text| cut(text));
                words.filter(|word| is_word_of(*thing, word)).collect()
            })
            .collect();
        let mut words: Vec<String> = cut_up.iter().flatten().cloned().collect();
        words.sort_unstable();
        words.dedup();
        let entries = named
            .into_iter()
            .zip(cut_up)
            .map(|((thing, texts), cut_up)| Entry {
                thing,
                names: names(thing, &texts),
                words: places(&words, &cut_up),
            })
            .collect();
        let spelt: Vec<usize> = words
            .iter()
            .enumerate()
            .filter(|(_, word)| may_be_misspelt(word))
            .map(|(place, _)| place)
            .collect();
        let own = spelt.iter().filter_map(|place| words.get(*place)).cloned();
        let mut spellings: Vec<String> = own.chain(READERS_WORDS.map(str::to_owned)).collect();
        spellings.sort_unstable();
        spellings.dedup();
        Self { entries, words, spelt, spellings }
    }

    fn search(&self, typed: &[String], is_wanted: impl Fn(Thing) -> bool) -> Vec<(Score, Thing)> {
        let worths = self.worths(typed);
        let whole = typed.concat();
        let entries = self.entries.iter().filter(|entry| is_wanted(entry.thing));
        let found = entries.filter_map(|entry| {
            let begins = entry.begins_with(&whole).then_some(BEGINS);
            Some((begins.max(entry.least(&worths))?, entry.thing))
        });
        best(found.collect())
    }

    /// For each word typed that says something, what each word here is worth to it.
    fn worths(&self, typed: &[String]) -> Vec<Vec<Score>> {
        let says = |word: &&String| !is_filler(word);
        typed.iter().filter(says).take(MOST_WORDS).map(|typed| self.worth(typed)).collect()
    }

    /// What each word here is worth to a word typed.
    ///
    /// A figure is never nearly right, and does not begin another: `2` is not `20`. A mark with
    /// letters in front may be half written: `cz12`.
    fn worth(&self, typed: &str) -> Vec<Score> {
        let mut worths = vec![0; self.words.len()];
        if let Some(most) = most_wrong(typed.chars().count()).filter(|_| !has_figure(typed)) {
            for place in &self.spelt {
                let (Some(word), Some(worth)) = (self.words.get(*place), worths.get_mut(*place))
                else {
                    continue;
                };
                *worth = letters_apart(typed, word, most).map_or(0, letters_off);
            }
        }
        let is_figure = typed.starts_with(|letter: char| letter.is_ascii_digit());
        let may_begin = !is_figure && typed.chars().nth(LEAST_OF_WORD - 1).is_some();
        let first = self.words.partition_point(|word| word.as_str() < typed);
        for (word, worth) in self.words.iter().zip(&mut worths).skip(first) {
            match word.strip_prefix(typed) {
                Some("") => *worth = WORD,
                Some(_) if may_begin => *worth = WORD_BEGINS,
                _ => break,
            }
        }
        worths
    }
}

impl Entry {
    fn begins_with(&self, typed: &str) -> bool {
        typed.chars().nth(LEAST_OF_NAME - 1).is_some()
            && self.names.iter().any(|name| name.starts_with(typed))
    }

    /// What the best of its words is worth to one word typed.
    fn best(&self, worths: &[Score]) -> Score {
        self.words.iter().filter_map(|word| worths.get(*word)).copied().max().unwrap_or_default()
    }

    /// What the word typed that it has least of is worth, if it has them all.
    fn least(&self, worths: &[Vec<Score>]) -> Option<Score> {
        worths.iter().map(|worths| self.best(worths)).min().filter(|least| *least > 0)
    }

    /// The mean over the words typed, if it has any.
    fn mean(&self, worths: &[Vec<Score>]) -> Option<Score> {
        let count = Score::try_from(worths.len()).ok().filter(|count| *count > 0)?;
        let sum: Score = worths.iter().map(|worths| self.best(worths)).sum();
        Some(sum / count).filter(|mean| *mean > 0)
    }
}

/// Whether another word may be this one misspelt.
fn may_be_misspelt(word: &str) -> bool {
    word.chars().all(char::is_alphabetic) && most_wrong(word.chars().count()).is_some()
}

/// Everything, with the plain texts it is known by, names before mere words.
fn things() -> Vec<(Thing, Vec<String>)> {
    let threads = threads::all().map(|thread| (Thing::Thread(thread), of_thread(thread)));
    let systems =
        threads::systems().iter().map(|system| (Thing::System(system), of_system(system)));
    let drills = drills::all().iter().map(|drill| {
        (Thing::Drill(drill), vec![plain(&drill.label), format!("{} drill", drill.series)])
    });
    let series = Series::ALL
        .into_iter()
        .map(|series| (Thing::Series(series), vec![format!("{series} drills"), "series".into()]));
    let materials =
        materials::all().iter().map(|material| (Thing::Material(material), of_material(material)));
    let doors = DOORS.iter().map(|door| {
        let words = door.names.iter().chain(door.words).map(|&word| word.to_owned());
        (Thing::Door(door), words.collect())
    });
    threads.chain(systems).chain(drills).chain(series).chain(materials).chain(doors).collect()
}

fn of_thread(thread: &Thread) -> Vec<String> {
    let system = thread.system.system();
    [thread.designation, system.name, system.mark].map(plain).into()
}

fn of_system(system: &System) -> Vec<String> {
    [system.slug, system.name, system.mark].map(plain).into()
}

fn of_material(material: &Material) -> Vec<String> {
    let names = [material.slug, material.name].into_iter();
    let names = names.chain(material.aliases.iter().copied());
    let names = names.chain(material.known_as.iter().copied());
    let marks = material.designations.iter().map(|designation| designation.mark);
    names.chain(marks).map(plain).collect()
}

/// Whether a word in its texts is a word of it.
fn is_word_of(thing: Thing, word: &str) -> bool {
    match thing {
        Thing::Material(_) => !STANDARDS.contains(&word),
        _ => true,
    }
}

/// Which of its texts are names: a drill's label is, its series is not.
fn names(thing: Thing, texts: &[String]) -> Vec<String> {
    let count = match thing {
        Thing::Thread(_) | Thing::Drill(_) | Thing::Series(_) => 1,
        Thing::Door(door) => door.names.len(),
        Thing::System(_) | Thing::Material(_) => texts.len(),
    };
    texts.iter().take(count).map(|text| joined(text)).collect()
}

/// Where some words stand in a list in order, each once.
fn places(words: &[String], wanted: &[String]) -> Vec<usize> {
    let mut places: Vec<usize> =
        wanted.iter().filter_map(|word| words.binary_search(word).ok()).collect();
    places.sort_unstable();
    places.dedup();
    places
}
