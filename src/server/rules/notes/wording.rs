//! One wording of a note, read from its form: what is kept, what is refused.
//!
//! The fields of what was done are kept as typed; where they name a material, a thread or a drill
//! outright, the note belongs to it. Which fields there are stands in [`super::fields`].

use sha2::{Digest, Sha256};

use super::belongs::{self, Group, Thing};
use super::fields::{Done, Lines, NoteField, TEXT, TITLE};
use super::found::Sense;
use super::meant::{self, Answers, Question};
use super::seen::{is_blank, is_seen};
use super::state::Subject;
use super::{bars, markdown, pressure};
use holewright_pages::FieldError;

/// The form as it was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typed {
    /// Made with the form: the same key is the same note.
    pub form_key: String,
    /// The mark of the wording that the form was filled with; empty where it carries none.
    pub made_from: String,
    /// Title.
    pub title: String,
    /// Markdown.
    pub text: String,
    /// What was done.
    pub done: Done,
    /// The things it belongs to.
    pub on: String,
    /// Whether its author ticked that it is about boilers, steam or pressure.
    pub is_pressure: bool,
    /// Whether its author ticked that it warns.
    pub is_warning: bool,
    /// What they answered where a field only nearly named something.
    pub meant: Answers,
}

/// One wording, as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wording {
    /// Title.
    pub title: String,
    /// Markdown.
    pub text: String,
    /// What was done.
    pub done: Done,
    /// What it speaks of.
    pub subject: Subject,
    /// Whether it shows a way or warns.
    pub sense: Sense,
    /// What it belongs to, in the order of their addresses.
    pub things: Vec<Thing>,
}

/// What the author wants with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// To keep it on the desk: half a note will do.
    Draft,
    /// To send it in: it needs a title and a text.
    SendIn,
}

impl Wording {
    /// Reads a form.
    ///
    /// # Errors
    /// What is missing for this aim, too long, or names no thing of the reference.
    pub fn read(typed: &Typed, aim: Aim) -> Result<Self, Vec<FieldError>> {
        let title = read(TITLE, &typed.title);
        let text = read(TEXT, &typed.text);
        let mut texts = typed.done.each();
        let done = Done::from_each(|field| {
            read(field, texts.next().map(|(_, typed)| typed).unwrap_or_default())
        });
        let said = [(TITLE, title.as_str()), (TEXT, text.as_str())];
        let mut errors = Vec::new();
        if aim == Aim::SendIn {
            errors.extend(said.into_iter().filter_map(|(field, text)| missing(field, text)));
        }
        errors
            .extend(said.into_iter().chain(done.each()).filter_map(|(f, text)| too_long(f, text)));
        let things = belongs::list(&typed.on).unwrap_or_else(|unread| {
            errors.extend(unread);
            Vec::new()
        });
        if !errors.is_empty() {
            return Err(errors);
        }
        let mut wording = Self {
            title,
            text,
            done,
            subject: Subject::Usual,
            sense: Sense::of(typed.is_warning),
            things,
        };
        for (field, text) in wording.done.each() {
            let named = field.group.and_then(|group| group.named_unasked(text));
            named.into_iter().for_each(|thing| belongs::add(&mut wording.things, thing));
        }
        for question in meant::questions(&wording.done, &wording.things, typed.meant) {
            let meant = question.meant().cloned();
            meant.into_iter().for_each(|thing| belongs::add(&mut wording.things, thing));
        }
        wording.things.sort_by(|one, other| one.id.cmp(&other.id));
        if typed.is_pressure || wording.heard(&[]) == Subject::Pressure {
            wording.subject = Subject::Pressure;
        }
        Ok(wording)
    }

    /// The form that reads back to this wording.
    #[must_use]
    pub fn typed(&self, form_key: &str) -> Typed {
        Typed {
            form_key: form_key.to_owned(),
            made_from: String::new(),
            title: self.title.clone(),
            text: self.text.clone(),
            done: self.done.clone(),
            on: belongs::typed(&self.things),
            is_pressure: self.subject == Subject::Pressure,
            is_warning: self.sense == Sense::Warning,
            meant: Answers::default(),
        }
    }

    /// What is asked of a form with these fields: what they nearly name, and nothing in the list already names.
    #[must_use]
    pub fn questions(typed: &Typed) -> Vec<Question> {
        let done = Done::from_each(|field| line(typed.done.text(field.name)));
        let things = belongs::list(&typed.on).unwrap_or_default();
        meant::questions(&done, &things, typed.meant)
    }

    /// The whole wording as plain text, to be compared with another.
    #[must_use]
    pub fn as_lines(&self) -> String {
        let mut lines = format!("{}\n\n", self.title);
        if self.sense == Sense::Warning {
            lines.push_str("A warning\n");
        }
        for (field, typed) in self.done.filled() {
            lines.push_str(&format!("{}: {typed}\n", field.label));
        }
        let things: Vec<&str> = self.things.iter().map(|thing| thing.title.as_str()).collect();
        if !things.is_empty() {
            lines.push_str(&format!("Belongs to: {}\n", things.join(", ")));
        }
        format!("{lines}\n{}", self.text)
    }

    /// The key of the note that a form with this key makes with these words, once it has made another with
    /// others. The same words give the same key, so that sending it twice makes one note of them.
    #[must_use]
    pub fn key_beside(&self, form_key: &str) -> String {
        let words = format!("{form_key}\n{}", self.as_lines());
        Sha256::digest(words).iter().map(|byte| format!("{byte:02x}")).collect()
    }

    /// By what a form knows again which wording it was filled with, and what a moderator had said of it.
    #[must_use]
    pub fn mark(&self, reason: &str) -> String {
        let mut hash = Sha256::new();
        let subject = if self.subject == Subject::Pressure { "pressure" } else { "" };
        let done = self.done.each().map(|(_, typed)| typed);
        let things = self.things.iter().map(|thing| thing.id.as_str());
        let words = [self.title.as_str(), &self.text, reason, subject];
        // A form that was open before there were warnings still knows its wording.
        let warning = (self.sense == Sense::Warning).then_some("a warning");
        for part in words.into_iter().chain(done).chain(things).chain(warning) {
            hash.update(part.len().to_be_bytes());
            hash.update(part);
        }
        hash.finalize().iter().take(16).map(|byte| format!("{byte:02x}")).collect()
    }

    /// What the wording speaks of by its words, with these corrections above its text.
    #[must_use]
    pub fn heard(&self, corrections: &[&str]) -> Subject {
        let is_heard =
            |read: fn(&str) -> String| pressure::speaks_of_it(&self.in_order(corrections, read));
        let is_heard = is_heard(str::to_owned) || is_heard(markdown::plain);
        if is_heard { Subject::Pressure } else { Subject::Usual }
    }

    /// What a correction speaks of where it stands in this wording. What the wording says alone was read before.
    #[must_use]
    pub fn subject_of_a_correction(&self, correction: &str) -> Subject {
        let alone = pressure::subject(correction);
        match self.heard(&[]) {
            Subject::Usual => alone.with(self.heard(&[correction])),
            Subject::Pressure => alone,
        }
    }

    /// What a reader reads as one, in the order in which it is shown: a word of one field and the next of another
    /// are a pair too.
    pub(super) fn in_order(&self, corrections: &[&str], read: fn(&str) -> String) -> String {
        let text = read(&self.text);
        let title = [self.title.clone()].into_iter();
        let mut all: Vec<String> = title.chain(corrections.iter().map(|said| read(said))).collect();
        for (field, typed) in self.done.filled() {
            let before = all.last().map(String::as_str).unwrap_or_default();
            let is_ended = field.group == Some(Group::Drills)
                && bars::is_a_drill_before_stock(before, typed, &text);
            all.push(if is_ended { format!("{typed}.") } else { typed.to_owned() });
        }
        all.push(text);
        all.join("\n")
    }
}

/// One line: trimmed, without marks that a reader cannot see.
#[must_use]
pub fn line(typed: &str) -> String {
    let line: String = typed
        .chars()
        .map(|c| if c.is_whitespace() { ' ' } else { c })
        .filter(|c| is_seen(*c))
        .collect();
    line.trim().to_owned()
}

/// A text of several lines, without marks that a reader cannot see.
#[must_use]
pub fn text(typed: &str) -> String {
    let text = typed.replace("\r\n", "\n").replace('\r', "\n");
    let text: String = text.chars().filter(|c| matches!(c, '\n' | '\t') || is_seen(*c)).collect();
    text.trim_end().to_owned()
}

/// What was typed into a field, as it is kept.
fn read(field: NoteField, typed: &str) -> String {
    match field.lines {
        Lines::One => line(typed),
        Lines::Several => text(typed),
    }
}

fn missing(field: NoteField, text: &str) -> Option<FieldError> {
    let is_missing = !field.missing.is_empty() && is_blank(text);
    is_missing.then(|| FieldError::new(field.name, field.missing))
}

fn too_long(field: NoteField, text: &str) -> Option<FieldError> {
    let (length, longest) = (text.chars().count(), field.longest);
    let message = || format!("{} has {length} characters; {longest} are taken.", field.called);
    (length > longest).then(|| FieldError::new(field.name, message()))
}
