//! What was asked, in the language of the index.

use crate::db::notes::lists::Filter;
use crate::rules::notes::asked::{Asked, read};

/// One word that was asked: what it is taken for, and the things that it names.
#[derive(Clone, Debug)]
pub(super) struct Word {
    /// Words, or several that stand together; the first as it was typed.
    pub(super) taken: Vec<String>,
    things: Vec<String>,
}

impl Word {
    /// What any note has that has one of these words, in its title, its text or its fields.
    pub(super) fn written(&self) -> String {
        either(self.taken.iter().map(|word| quoted(word)))
    }

    /// Whether it is, or is part of, the name of a thing.
    pub(super) fn names_things(&self) -> bool {
        !self.things.is_empty()
    }

    /// The same, and what any note has that belongs to one of the things.
    pub(super) fn any(&self) -> String {
        let words = self.taken.iter().map(|word| quoted(word));
        either(words.chain(self.things.iter().map(|thing| mark(&marked_thing(thing)))))
    }
}

/// Everything that was asked.
#[derive(Clone, Debug)]
pub(super) struct Words(pub(super) Vec<Word>);

impl Words {
    /// None where no word was typed.
    pub(super) fn read(typed: &str) -> Option<Self> {
        let word = |asked: Asked| Word { taken: vec![asked.word], things: asked.things };
        let words: Vec<Word> = read(typed).into_iter().map(word).collect();
        (!words.is_empty()).then_some(Self(words))
    }

    /// All of them must be there.
    pub(super) fn all(&self) -> String {
        both(self.0.iter().map(Word::any))
    }

    /// All of them must be written there.
    pub(super) fn all_written(&self) -> String {
        both(self.0.iter().map(Word::written))
    }
}

/// What a note that passes the filter is marked by, as a further demand on the index. The marks are
/// those of the view `note_mark`.
pub(super) fn marks(filter: &Filter) -> String {
    let things = (!filter.on.is_empty())
        .then(|| either(filter.on.iter().map(|thing| mark(&marked_thing(thing)))));
    let confirmed = filter.confirmed_only.then(|| mark("confirmed"));
    let corrected = filter.corrected_only.then(|| mark("corrected"));
    let marks = [things, confirmed, corrected].into_iter().flatten();
    marks.map(|mark| format!(" AND {mark}")).collect()
}

fn mark(name: &str) -> String {
    format!("marks : \"\u{e000}{name}\"")
}

/// A thing's address as it stands among the marks.
fn marked_thing(thing: &str) -> String {
    let letters = thing.chars().map(|letter| match letter {
        '/' => '\u{e001}',
        '-' => '\u{e002}',
        '.' => '\u{e003}',
        letter => letter,
    });
    letters.filter(|letter| *letter != '"').collect()
}

/// In quotation marks it is a word whatever it holds.
fn quoted(word: &str) -> String {
    format!("\"{word}\"")
}

fn either(choices: impl Iterator<Item = String>) -> String {
    let choices: Vec<String> = choices.collect();
    if choices.len() == 1 { choices.concat() } else { format!("({})", choices.join(" OR ")) }
}

fn both(demands: impl Iterator<Item = String>) -> String {
    demands.collect::<Vec<_>>().join(" AND ")
}
