//! What was typed for any thread's tapping size, and what it describes.

use super::answer::{Answer, Subject, answer};
use super::percent::percent;
use super::pitch;
use crate::calculators::asked::Asked;
use crate::calculators::at_hand;
use crate::controls::{Word, word};
use crate::diameter::{self, Diameter};
use crate::form::thread_error;
use crate::typed::{Typed, keep};
use crate::{FieldError, Query};
use holewright_core::calc::aim::base_percent;
use holewright_core::calc::engagement;
use holewright_core::calc::thread_form::full_depth;
use holewright_core::export::threads::GROUP;
use holewright_core::tables::drills::Drill;
use holewright_core::tables::threads::{self, Basic, Form, Thread, read};
use holewright_core::units::{Length, Pitch, print};

/// The fields by their names in the address, in the order a person thinks.
const NAMES: [&str; 8] =
    ["thread", "form", "major", "pitch", "hole", "engagement", "series", "owned"];

/// The fields one of which must be filled.
pub(super) const THREAD: [&str; 4] = ["thread", "form", "major", "pitch"];

/// `form`: empty is the form of the thread named.
pub(super) static FORMS: &[Word<Option<Form>>] = &[
    word("metric", "ISO metric, 60°", Some(Form::IsoMetric)),
    word("unified", "Unified, 60°", Some(Form::Unified)),
    word("whitworth", "Whitworth, 55°: BSW, BSF, ME", Some(Form::Whitworth)),
    word("ba", "BA, 47½°", Some(Form::BritishAssociation)),
    word("pipe", "Whitworth pipe, 55°", Some(Form::Pipe)),
    word("cycle", "Cycle, 60°", Some(Form::Cycle)),
    word("miniature", "Miniature S, 60°", Some(Form::Miniature)),
];

/// What was typed in each field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    pub(super) asked: Asked,
}

/// What a request asks.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The thread.
    pub subject: Subject,
    /// The hole to judge.
    pub hole: Option<Diameter>,
    /// Engagement wanted, percent of full thread depth.
    pub percent: f64,
    /// The drills at hand, smallest first.
    pub at_hand: Vec<&'static Drill>,
}

impl Request {
    /// Reads a query, what follows the `?`. Parameters that are no fields here are left alone.
    #[must_use]
    pub fn read(query: &str) -> Self {
        Self::of(Query::read(query))
    }

    pub(super) fn of(query: Query) -> Self {
        Self { asked: Asked::new("/calculators/tapping", &NAMES, query) }
    }

    /// What was typed in a field, trimmed; empty where nothing was.
    #[must_use]
    pub fn typed(&self, field: &str) -> &str {
        self.asked.typed(field)
    }

    /// The address at a door: the fields that were filled, in one order.
    #[must_use]
    pub fn address(&self, path: &str) -> String {
        self.asked.address(path)
    }

    /// The figures.
    ///
    /// # Errors
    /// As [`Self::question`].
    ///
    /// # Examples
    /// A thread no table holds: 0.06 in, 80 threads an inch, drilled 1.3 mm, is 54 % of ¾ H, as
    /// Machinery's Handbook 31st ed. p. 2155 prints for 0-80.
    /// ```
    /// use holewright_pages::calculators::tapping::Request;
    /// let typed = "form=unified&major=.06in&pitch=80+tpi&hole=1.3mm";
    /// let left = Request::read(typed).answer().unwrap().left.unwrap();
    /// assert_eq!(left.percent.round(), 54.0);
    /// let five = Request::read("thread=5BA&hole=No.+36").answer().unwrap();
    /// assert_eq!((five.left.unwrap().percent * 10.0).round(), 699.0);
    /// ```
    pub fn answer(&self) -> Result<Answer, Vec<FieldError>> {
        let Question { subject, hole, percent, at_hand } = self.question()?;
        Ok(answer(subject, hole.map(|hole| (hole.size, hole.drill)), percent, &at_hand))
    }

    /// What it asks.
    ///
    /// # Errors
    /// One [`FieldError`] for each field that makes no sense, in the order of the form.
    pub fn question(&self) -> Result<Question, Vec<FieldError>> {
        let mut errors = Vec::new();
        let thread = keep(&mut errors, thread(self.asked.at("thread")));
        let form = keep(&mut errors, self.asked.at("form").one_of(FORMS));
        let major = keep(&mut errors, self.asked.at("major").length());
        let pitch = keep(&mut errors, pitch::optional(self.asked.at("pitch")));
        // What a field in error would have filled is not asked for a second time.
        let subject = if errors.is_empty() {
            let found = self.subject(thread, form, major, pitch);
            found.map_err(|missing| errors.extend(missing)).ok()
        } else {
            None
        };
        let hole = keep(&mut errors, diameter::optional(self.asked.at("hole")));
        if let (Some(subject), Some(hole)) = (&subject, hole)
            && hole.size >= subject.geometry.major
        {
            errors.push(self.asked.at("hole").error(format!(
                "A hole of {} leaves nothing of a thread of {}.",
                print::mm(hole.size, 3),
                print::mm(subject.geometry.major, 3)
            )));
        }
        let wanted = keep(&mut errors, self.asked.at("engagement").optional(percent));
        let at_hand = at_hand::drills(&self.asked, &mut errors);
        match subject {
            Some(subject) if errors.is_empty() => Ok(Question {
                subject,
                hole,
                percent: wanted.unwrap_or_else(|| base_percent(GROUP)),
                at_hand,
            }),
            _ => Err(errors),
        }
    }

    /// What was written of form, diameter and pitch; the thread named fills what was not.
    fn subject(
        &self,
        thread: Option<&'static Thread>,
        form: Option<Form>,
        major: Option<Length>,
        pitch: Option<Pitch>,
    ) -> Result<Subject, Vec<FieldError>> {
        let form = form.or_else(|| thread.map(|thread| thread.form().of_any_size()));
        let major = major.or_else(|| thread.and_then(basic_major));
        let pitch = pitch.or_else(|| thread.map(|thread| thread.pitch));
        let (Some(form), Some(major), Some(pitch)) = (form, major, pitch) else {
            let missing = [
                form.is_none().then(|| {
                    self.asked.at("form").error("Choose the form, or name a thread that has it.")
                }),
                major.is_none().then(|| {
                    self.asked
                        .at("major")
                        .error("Write the diameter over the thread: 3.2 mm, 1/4 in.")
                }),
                pitch
                    .is_none()
                    .then(|| self.asked.at("pitch").error("Write the pitch: 0.6 mm, or 40 tpi.")),
            ];
            return Err(missing.into_iter().flatten().collect());
        };
        if full_depth(form, pitch.length()) * 2.0 >= major {
            return Err(vec![self.asked.at("pitch").error(format!(
                "A pitch of {} cuts deeper than a thread of {} is thick.",
                print::mm(pitch.length(), 3),
                print::mm(major, 3)
            ))]);
        }
        let custom = Subject::custom(form, major, pitch);
        // What is written may be a thread that has a name: the one named first, then any held here. The
        // miniature form stands for ISO 1501, so ASME B1.10M's thread is never meant unnamed.
        let unnamed = |thread: &&Thread| {
            engagement::applies(thread) && thread.form().of_any_size() == thread.form()
        };
        let held = thread.into_iter().chain(threads::all().filter(unnamed));
        let known = held.map(Subject::known).find(|known| known.is_like(&custom));
        Ok(known.unwrap_or(custom))
    }
}

fn basic_major(thread: &Thread) -> Option<Length> {
    match thread.basic {
        Basic::Major(major) => Some(major.length()),
        Basic::EffectiveAtGauge(_) => None,
    }
}

fn thread(typed: Typed<'_>) -> Result<Option<&'static Thread>, FieldError> {
    if typed.text.is_empty() {
        return Ok(None);
    }
    let thread = read::read(typed.text).map_err(|error| thread_error(typed.field, &error))?;
    if engagement::applies(thread) {
        Ok(Some(thread))
    } else {
        Err(typed.error(format!(
            "{} is a taper thread, which has no engagement figure: drill by its standard’s list.",
            thread.designation
        )))
    }
}
