//! What members found of a note, on its page: in how many words, and the form that asks it.

use super::back::Back;
use crate::db::notes::read::{Judged, Note};
use crate::db::notes::verdicts::Verdict;
use crate::rules::notes::elsewhere;
use crate::rules::notes::found::{Found, Sense};
use holewright_pages::field::{Field, Kind, items};

/// A verdict on the page that says more than yes or no.
pub(super) struct VerdictShown {
    pub(super) words: String,
    /// Whose it is, for whoever may take it away.
    pub(super) of: Option<i64>,
}

/// What is asked of a reader.
pub(super) struct Asked {
    pub(super) question: &'static str,
    /// Each answer as its button sends it, and in words; none where the reader has answered.
    pub(super) buttons: Vec<(&'static str, &'static str)>,
    /// What the reader said of this wording.
    pub(super) said: Option<String>,
    /// The form with all there is to say.
    pub(super) fields: Vec<Field>,
}

/// The answers as a form sends them.
const ANSWERS: [(&str, Found); 2] = [("worked", Found::Worked), ("did-not", Found::DidNot)];

impl Asked {
    /// What is asked, as the member said before.
    pub(super) fn of(sense: Sense, own: Option<&Verdict>, back: &Back) -> Self {
        let buttons = ANSWERS.map(|(value, found)| (value, sense.answer(found)));
        Self {
            question: sense.question(),
            buttons: if own.is_some() { Vec::new() } else { buttons.to_vec() },
            said: own.map(|own| in_words(sense, own)),
            fields: judge_fields(sense, own, back),
        }
    }
}

/// How many found that the shown wording works, and how many that it does not: on what it is about, or elsewhere.
pub(super) fn found(note: &Note, is_elsewhere: bool) -> (i64, i64) {
    let count = |what| {
        let of_it = note.verdicts_of(true).filter(|judged| judged.is_elsewhere == is_elsewhere);
        of_it.filter(|judged| judged.verdict.found == what).map(|_| 1_i64).sum::<i64>()
    };
    (count(Found::Worked), count(Found::DidNot))
}

/// What was found beside that: elsewhere, and of earlier wordings.
pub(super) fn beside(note: &Note, sense: Sense) -> Vec<String> {
    sense.elsewhere(found(note, true)).into_iter().chain(earlier(note)).collect()
}

/// What was found of the wordings before the shown one, each sense for itself.
fn earlier(note: &Note) -> Vec<String> {
    let sense_of = |judged: &Judged| {
        let of_it = note.versions.iter().find(|version| version.id == judged.of);
        of_it.map_or(Sense::Way, |version| version.wording.sense)
    };
    let words = [Sense::Way, Sense::Warning].into_iter().filter_map(|sense| {
        let found = |what| {
            let of_it = note.verdicts_of(false).filter(|judged| sense_of(judged) == sense);
            of_it.filter(|judged| judged.verdict.found == what).map(|_| 1_i64).sum::<i64>()
        };
        sense.earlier((found(Found::Worked), found(Found::DidNot)))
    });
    words.collect()
}

/// The form of a verdict: as it came back, else as the member said before.
fn judge_fields(sense: Sense, own: Option<&Verdict>, back: &Back) -> Vec<Field> {
    let came_back = back.typed.iter().any(|(name, _)| *name == "material");
    let own = own.filter(|_| !came_back);
    let material = own.map_or_else(|| back.typed("material"), |own| own.material.as_str());
    let size = own.map_or_else(|| back.typed("size"), |own| own.size.as_str());
    let why = back.typed("reason");
    let found = own.map_or_else(|| Found::read(back.typed("found")), |own| Some(own.found));
    let fields = verdict_fields(sense, found, [material, size, why]);
    fields.into_iter().map(|field| field.judged(&back.errors, |_, _| String::new())).collect()
}

/// What readers see of a field that nobody reads first.
const SHOWN_UNREAD: &str =
    "Readers see a name that the reference knows; anything else goes into the line below";

/// The fields of a verdict, filled in.
pub(super) fn verdict_fields(
    sense: Sense,
    found: Option<Found>,
    [material, size, why]: [&str; 3],
) -> Vec<Field> {
    let choices =
        ANSWERS.map(|(value, one)| (value, sense.answer(one).to_owned(), found == Some(one)));
    vec![
        Field::new("found", "What you found", "", Kind::Pick(items(choices))),
        Field::text("material", "In what material", SHOWN_UNREAD, material),
        Field::text("size", "At what size", "A thread, a drill: 6 BA, 1.9 mm", size),
        Field::text(
            "reason",
            "Why, or how, in one line",
            "Somebody who decides about notes reads the line before it is shown below as a remark of yours, with \
             your name.",
            why,
        ),
    ]
}

/// The verdicts on the shown wording that say more than yes or no. Nobody reads them before they are shown: readers see
/// what the reference knows of what was typed, those who may take a verdict away see all of it.
pub(super) fn verdicts(note: &Note, sense: Sense, may_take_away: bool) -> Vec<VerdictShown> {
    let says_more = note.verdicts_of(true).filter(|judged| {
        let Verdict { material, size, .. } = &judged.verdict;
        let typed = [material, size];
        let is_for_all = || typed.into_iter().all(|typed| elsewhere::is_read(typed));
        typed.into_iter().any(|typed| !typed.is_empty()) && (may_take_away || is_for_all())
    });
    let shown = |judged: &Judged| VerdictShown {
        words: in_words(sense, &judged.verdict),
        of: may_take_away.then_some(judged.by.0),
    };
    says_more.map(shown).collect()
}

/// A verdict in words, with all it says.
fn in_words(sense: Sense, verdict: &Verdict) -> String {
    let where_to = [verdict.material.as_str(), verdict.size.as_str()];
    let where_to: Vec<&str> = where_to.into_iter().filter(|typed| !typed.is_empty()).collect();
    let mut words = sense.told(verdict.found).to_owned();
    if !where_to.is_empty() {
        words.push_str(&format!(": {}", where_to.join(", ")));
    }
    words
}
