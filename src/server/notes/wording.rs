//! One wording of a note, read from its form: what is kept, what is refused.
//!
//! The fields of what was done are kept as typed; where they name a metal, a thread or a drill
//! outright, the note belongs to it.

use super::belongs::{self, Thing};
use super::pressure;
use super::state::Subject;
use holewright_pages::FieldError;

/// The most characters of a title.
pub const LONGEST_TITLE: usize = 120;
/// The most characters of a text.
pub const LONGEST_TEXT: usize = 20_000;
/// The most characters of a line about what was done.
pub const LONGEST_LINE: usize = 100;
/// The most characters about the machine and the set-up.
pub const LONGEST_MACHINE: usize = 200;

/// The form as it was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typed {
    /// Made with the form: the same key is the same note.
    pub form_key: String,
    /// Title.
    pub title: String,
    /// Markdown.
    pub text: String,
    /// Metal.
    pub metal: String,
    /// Thread.
    pub thread: String,
    /// Drill.
    pub drill: String,
    /// Depth.
    pub depth: String,
    /// Lubricant.
    pub lubricant: String,
    /// Speed.
    pub speed: String,
    /// Machine or set-up.
    pub machine: String,
    /// The things it belongs to.
    pub on: String,
    /// Whether its author ticked that it is about boilers, steam or pressure.
    pub is_pressure: bool,
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
    /// What it belongs to, in the order of their addresses.
    pub things: Vec<Thing>,
}

/// What was done, each as typed; empty where it was left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Done {
    /// Metal.
    pub metal: String,
    /// Thread.
    pub thread: String,
    /// Drill.
    pub drill: String,
    /// Depth.
    pub depth: String,
    /// Lubricant.
    pub lubricant: String,
    /// Speed.
    pub speed: String,
    /// Machine or set-up.
    pub machine: String,
}

/// What the author wants with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// To keep it on the desk: half a note will do.
    Draft,
    /// To send it in: it needs a title and a text.
    SendIn,
}

impl Done {
    /// The lines that were filled in, each with its name.
    #[must_use]
    pub fn lines(&self) -> Vec<(&'static str, &str)> {
        let lines = [
            ("Metal", self.metal.as_str()),
            ("Thread", &self.thread),
            ("Drill", &self.drill),
            ("Depth", &self.depth),
            ("Lubricant", &self.lubricant),
            ("Speed", &self.speed),
            ("Machine or set-up", &self.machine),
        ];
        lines.into_iter().filter(|(_, typed)| !typed.is_empty()).collect()
    }
}

impl Wording {
    /// Reads a form.
    ///
    /// # Errors
    /// What is missing for this aim, too long, or names no thing of the reference.
    pub fn read(typed: &Typed, aim: Aim) -> Result<Self, Vec<FieldError>> {
        let mut errors = Vec::new();
        let title = line(&typed.title);
        let text = text(&typed.text);
        if aim == Aim::SendIn && title.is_empty() {
            errors.push(FieldError::new(
                "title",
                "Give the note a title: what metal, what was done.",
            ));
        }
        if aim == Aim::SendIn && text.trim().is_empty() {
            errors.push(FieldError::new("text", "Write what happened: that is the note."));
        }
        too_long(&mut errors, "title", "The title", &title, LONGEST_TITLE);
        too_long(&mut errors, "text", "The text", &text, LONGEST_TEXT);
        let done = Done {
            metal: line(&typed.metal),
            thread: line(&typed.thread),
            drill: line(&typed.drill),
            depth: line(&typed.depth),
            lubricant: line(&typed.lubricant),
            speed: line(&typed.speed),
            machine: line(&typed.machine),
        };
        for (field, name, typed) in [
            ("metal", "The metal", &done.metal),
            ("thread", "The thread", &done.thread),
            ("drill", "The drill", &done.drill),
            ("depth", "The depth", &done.depth),
            ("lubricant", "The lubricant", &done.lubricant),
            ("speed", "The speed", &done.speed),
        ] {
            too_long(&mut errors, field, name, typed, LONGEST_LINE);
        }
        too_long(&mut errors, "machine", "The machine", &done.machine, LONGEST_MACHINE);
        let things = belongs::list(&typed.on).unwrap_or_else(|unread| {
            errors.extend(unread);
            Vec::new()
        });
        if !errors.is_empty() {
            return Err(errors);
        }
        let mut wording = Self { title, text, done, subject: Subject::Usual, things };
        for thing in belongs::named(&wording.done.metal, &wording.done.thread, &wording.done.drill)
        {
            belongs::add(&mut wording.things, thing);
        }
        wording.things.sort_by(|one, other| one.id.cmp(&other.id));
        wording.subject = wording.speaks_of(typed.is_pressure);
        Ok(wording)
    }

    /// The form that reads back to this wording.
    #[must_use]
    pub fn typed(&self, form_key: &str) -> Typed {
        let done = self.done.clone();
        Typed {
            form_key: form_key.to_owned(),
            title: self.title.clone(),
            text: self.text.clone(),
            metal: done.metal,
            thread: done.thread,
            drill: done.drill,
            depth: done.depth,
            lubricant: done.lubricant,
            speed: done.speed,
            machine: done.machine,
            on: belongs::typed(&self.things),
            is_pressure: self.subject == Subject::Pressure,
        }
    }

    /// The whole wording as plain text, to be compared with another.
    #[must_use]
    pub fn as_lines(&self) -> String {
        let mut lines = format!("{}\n\n", self.title);
        for (name, typed) in self.done.lines() {
            lines.push_str(&format!("{name}: {typed}\n"));
        }
        let things: Vec<&str> = self.things.iter().map(|thing| thing.title.as_str()).collect();
        if !things.is_empty() {
            lines.push_str(&format!("Belongs to: {}\n", things.join(", ")));
        }
        format!("{lines}\n{}", self.text)
    }

    fn speaks_of(&self, is_ticked: bool) -> Subject {
        let lines = self.done.lines().into_iter().map(|(_, typed)| typed);
        let mut texts = lines.chain([self.title.as_str(), self.text.as_str()]);
        if is_ticked || texts.any(pressure::speaks_of_it) {
            Subject::Pressure
        } else {
            Subject::Usual
        }
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

/// Neither a control code nor a mark that turns the writing round, which can make a text read other
/// than it is.
pub(super) fn is_seen(c: char) -> bool {
    !c.is_control()
        && !matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn too_long(
    errors: &mut Vec<FieldError>,
    field: &'static str,
    name: &str,
    typed: &str,
    longest: usize,
) {
    let length = typed.chars().count();
    if length > longest {
        let message = format!("{name} has {length} characters; {longest} are taken.");
        errors.push(FieldError::new(field, message));
    }
}
