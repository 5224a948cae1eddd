//! What a field of a note nearly names: a metal misspelt, a thread written in an unusual way, a size that several
//! threads have; a kind of metal and not one of it. Its author is asked, and what was typed stays as it was typed.

use holewright_core::finder;
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::materials::{self, asked};

use super::belongs::{Group, Thing};
use super::fields::Done;
use super::within::{all_of, bare, beside_figures, is_too_long, of_kind, usual_thread, within};

/// What stands before the text that the finder took a misspelt one for.
const READ_AS: &str = "; read as ";

/// An answer to one of the questions, by the field that asks it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Nothing was said yet.
    Open,
    /// That is what was meant.
    Yes,
    /// It stays as it was typed.
    No,
    /// Of a kind, the material with this slug.
    This(&'static str),
    /// Of the drills of a bare number, the one of this series.
    OfSeries(Series),
    /// Of a kind, they do not know which: it stays as it was typed.
    Unknown,
}

impl Answer {
    /// As a form says it.
    #[must_use]
    pub fn read(typed: &str) -> Self {
        match typed {
            "yes" => Self::Yes,
            "no" => Self::No,
            "unknown" => Self::Unknown,
            slug => {
                let mut all = materials::all().iter();
                let material = all.find(|held| held.slug == slug).map(|held| Self::This(held.slug));
                let series = || Series::from_slug(slug).map(Self::OfSeries);
                material.or_else(series).unwrap_or(Self::Open)
            }
        }
    }

    /// As a form sends it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Open => "",
            Self::Yes => "yes",
            Self::No => "no",
            Self::This(slug) => slug,
            Self::OfSeries(series) => series.slug(),
            Self::Unknown => "unknown",
        }
    }
}

/// The answers of a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answers([Answer; 3]);

impl Default for Answers {
    fn default() -> Self {
        Self([Answer::Open; 3])
    }
}

/// What is asked of each group, by the field of the answer.
const ASKED: [(Group, &str); 3] = [
    (Group::Materials, "meant_material"),
    (Group::Threads, "meant_thread"),
    (Group::Drills, "meant_drill"),
];

impl Answers {
    /// Those that a form holds, which this gives by the name of a field.
    pub fn read<'a>(typed: impl Fn(&str) -> &'a str) -> Self {
        Self(ASKED.map(|(_, field)| Answer::read(typed(field))))
    }

    /// Each with its field.
    pub fn each(self) -> impl Iterator<Item = (&'static str, Answer)> {
        ASKED.into_iter().map(|(_, field)| field).zip(self.0)
    }

    fn of(self, field: &str) -> Answer {
        let mut all = self.each();
        all.find(|(asked, _)| *asked == field).map_or(Answer::Open, |(_, answer)| answer)
    }
}

/// One question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// The field of its answer.
    pub field: &'static str,
    /// What was typed.
    pub typed: String,
    /// What that may mean: one thing, or all of a kind with the commonest first.
    pub things: Vec<Thing>,
    /// What was answered to this question.
    pub answer: Answer,
}

impl Question {
    fn of(field: &'static str, typed: &str, things: Vec<Thing>, answer: Answer) -> Self {
        let mut question = Self { field, typed: typed.to_owned(), things, answer };
        let is_answer = match answer {
            Answer::Open => true,
            Answer::Yes | Answer::No => !question.is_of_a_kind(),
            Answer::Unknown => question.is_of_a_kind(),
            Answer::This(_) | Answer::OfSeries(_) => {
                question.is_of_a_kind() && question.meant().is_some()
            }
        };
        // What was answered before another text was typed is no answer.
        if !is_answer {
            question.answer = Answer::Open;
        }
        question
    }

    /// Whether a kind was typed, and one of it is asked for.
    #[must_use]
    pub fn is_of_a_kind(&self) -> bool {
        self.things.len() > 1
    }

    /// What was meant, as they say.
    #[must_use]
    pub fn meant(&self) -> Option<&Thing> {
        match self.answer {
            Answer::Yes => self.things.first(),
            Answer::This(slug) => self.things.iter().find(|thing| is_material(thing, slug)),
            Answer::OfSeries(series) => self.things.iter().find(|thing| is_drill(thing, series)),
            Answer::Open | Answer::No | Answer::Unknown => None,
        }
    }
}

fn is_material(thing: &Thing, slug: &str) -> bool {
    thing.id.strip_prefix("materials/") == Some(slug)
}

fn is_drill(thing: &Thing, series: Series) -> bool {
    thing.id.starts_with(&format!("drills/{}/", series.slug()))
}

/// What is to be asked of these fields, with what was answered; nothing about things that the note belongs to anyway.
#[must_use]
pub fn questions(done: &Done, things: &[Thing], answers: Answers) -> Vec<Question> {
    let asked = done.filled().filter_map(|(field, typed)| {
        let group = field.group?;
        let (_, asks) = ASKED.into_iter().find(|(held, _)| *held == group)?;
        let found = may_mean(group, typed);
        let is_known = found.iter().any(|thing| things.contains(thing));
        (!is_known && !found.is_empty()).then(|| Question::of(asks, typed, found, answers.of(asks)))
    });
    asked.collect()
}

/// What a text can mean that names nothing outright: one thing, or several of which one is asked for.
fn may_mean(group: Group, typed: &str) -> Vec<Thing> {
    let several = match group {
        Group::Materials => of_kind(typed),
        Group::Threads => Vec::new(),
        Group::Drills => of_a_number(typed),
    };
    if !several.is_empty() {
        return several;
    }
    if let Some(thing) = meant(group, typed) {
        return vec![thing];
    }
    let misspelt = if group == Group::Materials { of_misspelt_kind(typed) } else { Vec::new() };
    if !misspelt.is_empty() {
        return misspelt;
    }
    match within(group, typed) {
        Some(thing) => vec![thing],
        None if group == Group::Materials => beside_figures(typed),
        None => Vec::new(),
    }
}

/// The drills that a bare number can be, the metric one first: the 6 mm drill, or No. 6.
fn of_a_number(typed: &str) -> Vec<Thing> {
    let Err(drills::read::ReadError::Ambiguous { mut candidates, .. }) = drills::read::read(typed)
    else {
        return Vec::new();
    };
    candidates.sort_by_key(|drill| drill.series != Series::Metric);
    let paths = candidates.into_iter().map(drills::Drill::path);
    paths.filter_map(|path| super::belongs::at(path.trim_start_matches('/'))).collect()
}

/// The materials of a kind that a text misspells.
fn of_misspelt_kind(typed: &str) -> Vec<Thing> {
    let is_read = is_too_long(typed) || Group::Materials.named(typed).is_some();
    if is_read { Vec::new() } else { all_of(&asked::of_misspelt_kind(typed)) }
}

/// The thing of a group that a text nearly names; none where it names one outright, or is far from any.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::belongs::Group;
/// use holewright_server::rules::notes::meant::meant;
/// let title = |group, typed| meant(group, typed).map(|thing| thing.title);
/// assert_eq!(title(Group::Materials, "silver stel"), Some("Silver steel".to_owned()));
/// assert_eq!(title(Group::Materials, "silver steel"), None);
/// assert_eq!(title(Group::Materials, "the blue bar"), None);
/// ```
#[must_use]
pub fn meant(group: Group, typed: &str) -> Option<Thing> {
    if is_too_long(typed) || group.named(typed).is_some() {
        return None;
    }
    let bare = bare(group, typed);
    let typed = bare.as_str();
    let without_stops = typed.replace('.', " ");
    let plain = [without_stops, typed.replace('.', "")].into_iter().filter(|text| text != typed);
    plain
        .filter_map(|text| group.named(&text))
        .next()
        .or_else(|| usual_thread(group, typed))
        .or_else(|| typed_twice(group, typed))
        .or_else(|| misspelt(group, typed))
}

/// The thing that is named where the last letter stands once: "8 BAA". A figure is no slip of a thread or a material, but
/// of a drill, whose numbers end at eighty.
fn typed_twice(group: Group, typed: &str) -> Option<Thing> {
    let last = typed.chars().next_back()?;
    let once = typed.strip_suffix(last).filter(|once| once.ends_with(last))?;
    let is_slip = match group {
        Group::Drills => last.is_ascii_digit(),
        // Millimetres are none.
        Group::Threads | Group::Materials => last.is_alphabetic() && last != 'm',
    };
    group.named(once).filter(|_| is_slip)
}

/// What the finder takes a misspelt text for, where that names a thing outright. Where it leaves a word aside, that is
/// no misspelling: "about 3 mm" is no size.
fn misspelt(group: Group, typed: &str) -> Option<Thing> {
    let found = finder::find(typed);
    let mut read_as = found.hits.iter().filter_map(|hit| hit.why.split_once(READ_AS));
    let (_, read_as) = read_as.next()?;
    let count = |text: &str| text.split_whitespace().count();
    group.named(read_as).filter(|_| count(typed) <= count(read_as))
}

#[cfg(test)]
mod tests {
    use super::{Answer, Answers, meant, questions};
    use crate::rules::notes::belongs::Group;
    use crate::rules::notes::fields::Done;

    #[test]
    fn what_is_nearly_named_is_asked_and_nothing_else() {
        for (group, typed, expected) in [
            (Group::Materials, "silver stel", "Silver steel"),
            (Group::Materials, "gunmetel", "Gunmetal"),
            (Group::Materials, "gunmetal", ""),
            (Group::Materials, "the blue bar", ""),
            (Group::Materials, "bronze", ""),
            (Group::Materials, "", ""),
            (Group::Threads, "8 BA", ""),
            (Group::Threads, "no thread", ""),
            (Group::Drills, "No. 43", ""),
            (Group::Drills, "No. 500", "No. 50"),
            (Group::Threads, "8 BAA", "8 BA"),
            (Group::Threads, "1/4 x 40 MEE", "1/4 in × 40 ME"),
            (Group::Threads, "M33", ""),
            (Group::Materials, "EN1AA", "Free-cutting mild steel"),
            (Group::Drills, "about 3 mm", ""),
        ] {
            let found = meant(group, typed).map(|thing| thing.title).unwrap_or_default();
            assert_eq!(found, expected, "{typed}");
        }
        // Read outright or asked: never passed over.
        for typed in ["8 B.A", "8 B.A.", "8BA"] {
            let thing = Group::Threads.named(typed).or_else(|| meant(Group::Threads, typed));
            assert_eq!(thing.map(|thing| thing.title), Some("8 BA".to_owned()), "{typed}");
        }
    }

    #[test]
    fn a_question_knows_its_answer_and_is_not_asked_of_what_is_there() {
        let done = Done::from_each(|field| match field.name {
            "material" => "silver stel".to_owned(),
            _ => String::new(),
        });
        let answers = Answers::read(|field| if field == "meant_material" { "no" } else { "" });
        let asked = questions(&done, &[], answers);
        assert_eq!(asked.len(), 1);
        assert_eq!((asked[0].field, asked[0].answer), ("meant_material", Answer::No));
        assert_eq!(asked[0].typed, "silver stel");
        let things = asked[0].things.clone();
        assert_eq!(questions(&done, &things, Answers::default()), []);
    }

    #[test]
    fn of_a_kind_it_is_asked_which_and_an_answer_to_another_question_is_none() {
        let asked = |typed: &str, answer: &'static str| {
            let done = Done::from_each(|field| match field.name {
                "material" => typed.to_owned(),
                _ => String::new(),
            });
            let answers =
                Answers::read(|field| if field == "meant_material" { answer } else { "" });
            questions(&done, &[], answers).remove(0)
        };
        for (typed, answer, expected, meant) in [
            ("bronze", "", Answer::Open, None),
            ("bronze", "leaded-bronze", Answer::This("leaded-bronze"), Some("Leaded bronze")),
            ("bronze", "unknown", Answer::Unknown, None),
            ("bronze", "yes", Answer::Open, None),
            ("bronze", "no", Answer::Open, None),
            ("bronze", "silver-steel", Answer::Open, None),
            ("silver stel", "silver-steel", Answer::Open, None),
            ("silver stel", "unknown", Answer::Open, None),
            ("silver stel", "yes", Answer::Yes, Some("Silver steel")),
        ] {
            let question = asked(typed, answer);
            assert_eq!(question.answer, expected, "{typed}, {answer}");
            let found = question.meant().map(|thing| thing.title.as_str());
            assert_eq!(found, meant, "{typed}, {answer}");
        }
        // One of a kind that it is shown on already says which.
        let done = Done::from_each(|_| "bronze".to_owned());
        let on = crate::rules::notes::belongs::at("materials/gunmetal").unwrap();
        let left = questions(&done, &[on], Answers::default());
        assert!(left.iter().all(|question| question.field != "meant_material"), "{left:?}");
    }
}
