//! The fields of a note, each declared once. The form, the refusals, the differences, the exports, the
//! table of tips and the words by which a note is found are made from them.
//!
//! The SQL names them a second time, in [`crate::db::notes`] and in the migrations; what is about one field alone, as
//! the dangers of its material, names that one.

use std::collections::BTreeMap;

use serde::de::{Deserialize, Deserializer, Error};
use serde::ser::{Serialize, SerializeMap, Serializer};

use super::belongs::Group;

/// One field.
#[derive(Clone, Copy, Debug)]
pub struct NoteField {
    /// Its name in the form, in the database, in CSV and in JSON.
    pub name: &'static str,
    /// Its label in the form; for what was done, also before it on every page.
    pub label: &'static str,
    /// What may be typed, below the label; empty for none.
    pub hint: &'static str,
    /// What a refusal calls it.
    pub called: &'static str,
    /// The refusal of a note that is sent in without it; empty where it may be left out.
    pub missing: &'static str,
    /// The most characters taken; the database has the same limit.
    pub longest: usize,
    /// How many lines it holds.
    pub lines: Lines,
    /// The name it shipped under, which an address or a form that was kept may still carry; empty where
    /// it has the name it always had.
    pub once: &'static str,
    /// What it may name outright: the note then belongs to that.
    pub group: Option<Group>,
    /// Whether a list of notes shows it below the title.
    pub is_in_lists: bool,
}

/// How many lines a field holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lines {
    /// One.
    One,
    /// As many as its author writes.
    Several,
}

impl NoteField {
    /// What was filled in for it, by its name or by the one it shipped under.
    pub fn filled_in<'a>(&self, filled: impl Fn(&str) -> &'a str) -> &'a str {
        let now = filled(self.name);
        let is_blank = now.trim().is_empty();
        let before = if is_blank && !self.once.is_empty() { filled(self.once) } else { "" };
        if before.is_empty() { now } else { before }
    }
}

/// More characters than a line has that names something.
pub const LONGEST_FIELD: usize = 100;

/// A line about what was done, which may be left out.
const LINE: NoteField = NoteField {
    name: "",
    label: "",
    hint: "",
    called: "",
    missing: "",
    longest: LONGEST_FIELD,
    lines: Lines::One,
    once: "",
    group: None,
    is_in_lists: false,
};

/// The title.
pub const TITLE: NoteField = NoteField {
    name: "title",
    label: "Title",
    hint: "What material, what was done: Tapping 4 BA in copper",
    called: "The title",
    missing: "Give the note a title: what material, what was done.",
    longest: 120,
    ..LINE
};

/// What happened, in Markdown.
pub const TEXT: NoteField = NoteField {
    name: "text",
    label: "What happened",
    hint: "What you did, what it did, what you would do next time: dry, the tap squealed; with paraffin it cut clean. \
           Plain text, or Markdown: **strong**, - a list, > a quotation",
    called: "The text",
    missing: "Write what happened: that is the note.",
    longest: 20_000,
    lines: Lines::Several,
    ..LINE
};

/// Where a tip was printed before it came here.
pub const SOURCE: NoteField = NoteField {
    name: "source",
    label: "Printed before in",
    hint: "Where, and in what year, if it is not new: Newsletter 12, 1987",
    called: "Where it was printed before",
    longest: 200,
    is_in_lists: true,
    ..LINE
};

/// What was done, in the order of the form.
pub const DONE: [NoteField; 8] = [
    NoteField {
        name: "material",
        label: "Material",
        hint: "As you know it: gunmetal, EN1A, the blue bar",
        called: "The material",
        once: "metal",
        group: Some(Group::Materials),
        is_in_lists: true,
        ..LINE
    },
    NoteField {
        name: "thread",
        label: "Thread",
        hint: "4 BA, M3, 1/4 x 40 ME",
        called: "The thread",
        group: Some(Group::Threads),
        is_in_lists: true,
        ..LINE
    },
    NoteField {
        name: "drill",
        label: "Drill",
        hint: "No. 43, 2.3 mm, 7/64 in",
        called: "The drill",
        group: Some(Group::Drills),
        is_in_lists: true,
        ..LINE
    },
    NoteField {
        name: "depth",
        label: "Depth",
        hint: "With its unit: 8 mm, blind",
        called: "The depth",
        ..LINE
    },
    NoteField { name: "lubricant", label: "Lubricant", called: "The lubricant", ..LINE },
    NoteField {
        name: "speed",
        label: "Speed",
        hint: "With its unit: 400 rev/min",
        called: "The speed",
        ..LINE
    },
    NoteField {
        name: "machine",
        label: "Machine or set-up",
        called: "The machine",
        longest: 200,
        is_in_lists: true,
        ..LINE
    },
    SOURCE,
];

/// The most characters of all these fields together, each under its old name too.
#[must_use]
pub const fn longest_of_all() -> usize {
    let (mut left, mut longest) = (DONE.as_slice(), TITLE.longest + TEXT.longest);
    while let [field, rest @ ..] = left {
        longest += field.longest * if field.once.is_empty() { 1 } else { 2 };
        left = rest;
    }
    longest
}

/// A text for each field of [`DONE`], empty where it was left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Done([String; DONE.len()]);

impl Done {
    /// Each field with the text that this gives for it.
    pub fn from_each(text: impl FnMut(NoteField) -> String) -> Self {
        Self(DONE.map(text))
    }

    /// Every field with its text.
    pub fn each(&self) -> impl Iterator<Item = (NoteField, &str)> {
        DONE.into_iter().zip(self.0.iter().map(String::as_str))
    }

    /// The fields that were filled in.
    pub fn filled(&self) -> impl Iterator<Item = (NoteField, &str)> {
        self.each().filter(|(_, text)| !text.is_empty())
    }

    /// The text of the field with this name; nothing, where there is no such field.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::fields::Done;
    /// let done = Done::from_each(|field| field.label.to_owned());
    /// assert_eq!(done.text("machine"), "Machine or set-up");
    /// ```
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.each().find(|(field, _)| field.name == name).map_or("", |(_, text)| text)
    }
}

/// An object with a key for each field.
impl Serialize for Done {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut object = serializer.serialize_map(Some(DONE.len()))?;
        for (field, text) in self.each() {
            object.serialize_entry(field.name, text)?;
        }
        object.end()
    }
}

/// From an object with a key for each field, whatever else it holds. A key that is missing is an error:
/// the SQL that made the object has left a field out.
impl<'de> Deserialize<'de> for Done {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut texts = BTreeMap::<String, String>::deserialize(deserializer)?;
        let mut done = Self::default();
        for (field, text) in DONE.iter().zip(&mut done.0) {
            *text = texts.remove(field.name).ok_or_else(|| D::Error::missing_field(field.name))?;
        }
        Ok(done)
    }
}
