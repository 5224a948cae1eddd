//! What is asked of any thread's tapping size, and the thread it describes.

use super::answer::{Answer, Subject, answer};
use super::pitch::pitch;
use crate::asking::{
    self, About, Asked, Choice, Control, Diameter, Field, FieldError, Limits, Need, OWNED, Reading,
    SERIES, Typed, Word, at_hand, diameter, diameter_taken, quoted, thread_taken, word,
};
use crate::calc::engagement;
use crate::calc::thread_form::full_depth;
use crate::calculators::{self, AnswerKind, Declaration, Finding};
use crate::tables::drills::Drill;
use crate::tables::threads::{self, AnySize, Basic, Form, Thread};
use crate::units::read::{Bare, length, plain, take};
use crate::units::{Length, Pitch, in_mm, print};

/// The calculator.
pub static DECLARATION: Declaration = Declaration {
    slug: "tapping",
    title: "Tapping size of any thread",
    answers: "Engagement of a hole, hole for an engagement and the drills that would do, for threads no table holds too.",
    finding: Finding {
        title: "Tapping size of any thread",
        why: "engagement of a hole, and the hole for an engagement, for any diameter and pitch",
        names: &["tapping size", "tapping drill", "engagement", "percent of thread"],
        words: &["tapping", "custom", "pitch", "percent"],
    },
    form: calculators::Form {
        first: &[&THREAD, &FORM, &MAJOR, &PITCH, &HOLE],
        rest_heading: "Engagement wanted, drills at hand",
        rest: &[&ENGAGEMENT, &SERIES, &OWNED],
        begun_by: &[&THREAD, &FORM, &MAJOR, &PITCH],
        button: "Find hole and thread",
    },
    answer: AnswerKind::Tapping,
};

/// `form`: empty is the form of the thread named.
pub static FORMS: &[Word<Option<Form>>] = &WORDS;

/// The words of the forms that have one, in their order.
const WORDS: [Word<Option<Form>>; ASKED_FOR] = words();
const ASKED_FOR: usize = {
    let (mut count, mut forms) = (0, Form::ALL);
    while let [form, rest @ ..] = forms {
        if matches!(form.shape().any_size, AnySize::Word(..)) {
            count += 1;
        }
        forms = rest;
    }
    count
};

const fn words() -> [Word<Option<Form>>; ASKED_FOR] {
    let mut words = [word("", "", None); ASKED_FOR];
    let (mut room, mut forms): (&mut [Word<Option<Form>>], _) = (&mut words, Form::ALL);
    while let [form, rest @ ..] = forms {
        forms = rest;
        if let AnySize::Word(slug, name) = form.shape().any_size
            && let [place, behind @ ..] = room
        {
            *place = word(slug, name, Some(*form));
            room = behind;
        }
    }
    words
}

static THREAD: Field<&Thread> = Field::new(
    About {
        name: "thread",
        label: "Thread, if it has a name",
        hint: "5 BA, M3, 1/4 x 40 ME; it fills what is left empty below",
        description: "A thread, in any usual spelling; it fills what is left out below",
        example: "5 BA",
        need: Need::Open,
        limits: Limits::None,
    },
    thread,
)
.taking(|typed, _| thread_taken(typed));

static FORM: Field<Option<Form>> = Field::words(
    About {
        name: "form",
        label: "Form",
        hint: "",
        description: "Form of a thread no table holds",
        example: "ba",
        need: Need::Open,
        limits: Limits::None,
    },
    Control::OpenList("As the thread named"),
    FORMS,
);

static MAJOR: Field<Length> = Field::new(
    About {
        name: "major",
        label: "Major diameter",
        hint: "Over the thread: mm, 1/4 in, or No. 10 of Unified or BA. A pipe’s size is not its diameter: G 1/8 is 9.728 mm",
        description: "Major diameter; a bare number is mm; `No. 10` is the number of a Unified or BA thread, by the form",
        example: "3.2 mm",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    |typed| major_of(typed, None),
)
.measured(|it| in_mm(*it));

static PITCH: Field<Pitch> = Field::new(
    About {
        name: "pitch",
        label: "Pitch",
        hint: "0.6 mm, or threads in an inch: 40 tpi",
        description: "Pitch in mm, or threads per inch",
        example: "0.59 mm",
        need: Need::Open,
        limits: Limits::OfReader {
            taken: &["0.0001 mm", "7.9", "1 tpi", "500 tpi"],
            refused: &["0", "8", "0.9 tpi", "501 tpi"],
        },
    },
    pitch,
);

static HOLE: Field<Diameter> = Field::new(
    About {
        name: "hole",
        label: "Hole to judge",
        hint: "A drill or a size: No. 36, 2.7 mm; may be left empty",
        description: "A hole to judge: a drill by any name, or a size",
        example: "No. 36",
        need: Need::Open,
        limits: Limits::LENGTH,
    },
    diameter,
)
.taking(|typed, _| diameter_taken(typed));

static ENGAGEMENT: Field<f64> = Field::new(
    About {
        name: "engagement",
        label: "Engagement wanted",
        hint: "Percent of full thread depth",
        description: "Engagement wanted, as a percentage of the full thread",
        example: "70",
        need: Need::Usually("70"),
        limits: Limits::OfReader { taken: &["0.1 %", "1", "100"], refused: &["0", "0.9", "100.1"] },
    },
    percent,
);

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

/// The figures.
///
/// # Errors
/// As [`question`].
///
/// # Examples
/// A thread no table holds: 0.06 in, 80 threads an inch, drilled 1.3 mm, is 54 % of ¾ H, as
/// Machinery's Handbook 31st ed. p. 2155 prints for 0-80.
/// ```
/// use holewright_core::calculators::tapping::{DECLARATION, answer_to};
/// let typed = [("form", "unified"), ("major", ".06in"), ("pitch", "80 tpi"), ("hole", "1.3mm")];
/// let left = answer_to(&DECLARATION.asked(typed)).unwrap().left.unwrap();
/// assert_eq!(left.percent.round(), 54.0);
/// let five = answer_to(&DECLARATION.asked([("thread", "5BA"), ("hole", "No. 36")])).unwrap();
/// assert_eq!((five.left.unwrap().percent * 10.0).round(), 699.0);
/// ```
pub fn answer_to(asked: &Asked) -> Result<Answer, Vec<FieldError>> {
    let Question { subject, hole, percent, at_hand } = question(asked)?;
    Ok(answer(subject, hole.map(|hole| (hole.size, hole.drill)), percent, &at_hand))
}

/// What is asked.
///
/// # Errors
/// One [`FieldError`] for each field that makes no sense, in the order of the form.
fn question(asked: &Asked) -> Result<Question, Vec<FieldError>> {
    let mut reading = Reading::of(asked);
    let thread = reading.optional(&THREAD);
    let form = reading.or_default(&FORM);
    let numbered = form.or_else(|| thread.map(|thread| thread.form().of_any_size()));
    let typed_major = reading.typed(&MAJOR);
    let major = if is_numbered(typed_major.text) {
        reading.keep(major_of(typed_major, numbered))
    } else {
        reading.optional(&MAJOR)
    };
    let pitch = reading.optional(&PITCH);
    // What a field in error would have filled is not asked for a second time.
    let subject = if reading.is_clean() {
        match subject(thread, form, major, pitch) {
            Ok(subject) => Some(subject),
            Err(missing) => {
                missing.into_iter().for_each(|error| reading.refuse(error));
                None
            }
        }
    } else {
        None
    };
    let hole = reading.optional(&HOLE);
    if let (Some(subject), Some(hole)) = (&subject, hole)
        && hole.size >= subject.geometry.major
    {
        reading.refuse(HOLE.error(format!(
            "A hole of {} leaves nothing of a thread of {}.",
            print::mm(hole.size, 3),
            print::mm(subject.geometry.major, 3)
        )));
    }
    let percent = reading.optional(&ENGAGEMENT);
    let at_hand = at_hand(&mut reading);
    let found = subject.zip(percent);
    reading.answered(found.map(|(subject, percent)| Question { subject, hole, percent, at_hand }))
}

/// What was written of form, diameter and pitch; the thread named fills what was not.
fn subject(
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
            form.is_none().then(|| FORM.error("Choose the form, or name a thread that has it.")),
            major
                .is_none()
                .then(|| MAJOR.error("Write the diameter over the thread: 3.2 mm, 1/4 in.")),
            pitch.is_none().then(|| PITCH.error("Write the pitch: 0.6 mm, or 40 tpi.")),
        ];
        return Err(missing.into_iter().flatten().collect());
    };
    if full_depth(form, pitch.length()) * 2.0 >= major {
        return Err(vec![PITCH.error(format!(
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

fn basic_major(thread: &Thread) -> Option<Length> {
    match thread.basic {
        Basic::Major(major) => Some(major.length()),
        Basic::EffectiveAtGauge(_) => None,
    }
}

fn thread(typed: Typed<'_>) -> Result<&'static Thread, FieldError> {
    let thread = asking::thread(typed)?;
    if engagement::applies(thread) {
        Ok(thread)
    } else {
        Err(typed.error(format!(
            "{} is a taper thread, which has no engagement figure: drill by its standard’s list.",
            thread.designation
        )))
    }
}

/// Whether a diameter was typed as a thread's number.
fn is_numbered(text: &str) -> bool {
    let text = plain(text);
    ["no", "#", "number"].iter().any(|mark| text.starts_with(mark))
}

/// A major diameter: a length, or the number of a Unified or a British Association thread, which the
/// form tells apart.
fn major_of(typed: Typed<'_>, form: Option<Form>) -> Result<Length, FieldError> {
    if !is_numbered(typed.text) {
        return typed.read(|text| length(text, Bare::Mm));
    }
    let text = plain(typed.text);
    let digits = text.trim_start_matches(|mark: char| !mark.is_ascii_digit());
    let named = |form: Form| {
        let is_named = |thread: &&Thread| {
            let size = thread.size.split('-').next();
            // "1-8" is one inch, "1-64" is No. 1.
            let is_number = form != Form::Unified || thread.designation.starts_with("No.");
            thread.form() == form && size == Some(digits) && is_number
        };
        threads::all().filter(is_named).find_map(basic_major)
    };
    let [unified, ba] = [Form::Unified, Form::BritishAssociation].map(named);
    let chosen = match form {
        Some(Form::Unified) => unified,
        Some(Form::BritishAssociation) => ba,
        _ => None,
    };
    chosen.ok_or_else(|| {
        let inches = unified.map(|size| (print::inch(size, 4), "Unified"));
        let millimetres = ba.map(|size| (print::mm(size, 3), "BA"));
        let found = inches.into_iter().chain(millimetres);
        let choice = |(value, name): (String, &str)| Choice {
            words: format!("{value}, No. {digits} {name}"),
            value,
        };
        let choices: Vec<Choice> = found.map(choice).collect();
        let message = match choices.as_slice() {
            [] => format!(
                "{} is the number of no Unified or BA thread held here. Write a diameter: 3.2 mm, 1/4 in.",
                quoted(typed.text)
            ),
            _ => format!("{} is a number in more than one form: choose.", quoted(typed.text)),
        };
        FieldError { choices, ..typed.error(message) }
    })
}

/// An engagement in percent, above 0 and up to 100. A bare figure below one is most likely a share of
/// one, and is asked.
fn percent(typed: Typed<'_>) -> Result<f64, FieldError> {
    let text = plain(typed.text);
    if let Some((share, "")) = take(&text)
        && share.value > 0.0
        && share.value < 1.0
    {
        let percent = print::trimmed(share.value * 100.0, 2);
        let choice = Choice { words: format!("{percent} %"), value: percent };
        let message = format!(
            "{} is less than 1 %: is {} meant? Write a percentage.",
            quoted(typed.text),
            choice.words
        );
        return Err(FieldError { choices: vec![choice], ..typed.error(message) });
    }
    let found = take(&text).filter(|(number, rest)| {
        matches!(rest.trim(), "" | "%" | "percent" | "per cent")
            && number.value > 0.0
            && number.value <= 100.0
    });
    found.map(|(number, _)| number.value).ok_or_else(|| {
        typed.error(format!(
            "{} is no engagement. Write a percentage above 0 and up to 100: 70, 65 %.",
            quoted(typed.text)
        ))
    })
}

#[cfg(test)]
mod tests {
    use super::{ENGAGEMENT, Need, Typed, percent};
    use crate::asking::AnyField;
    use crate::calc::aim::{MIDDLE_GROUP, base_percent};

    fn read(text: &str) -> Option<f64> {
        percent(Typed { field: "engagement", text }).ok()
    }

    #[test]
    fn the_usual_engagement_is_the_middle_of_the_aims() {
        let usual = Need::Usually("70");
        assert_eq!(ENGAGEMENT.about().need, usual);
        assert_eq!(read("70"), Some(base_percent(MIDDLE_GROUP)));
    }

    #[test]
    fn a_percentage_is_read_with_its_sign_or_without() {
        assert_eq!(read("70"), Some(70.0));
        assert_eq!(read("62.5 %"), Some(62.5));
        assert_eq!(read("100 per cent"), Some(100.0));
        for wrong in ["0", "101", "-5", "most", "70 mm"] {
            assert!(read(wrong).is_none(), "{wrong}");
        }
    }
}
