//! One note in the queue: what was reported of it, what waits of it, and what this reader may do about it.

use std::collections::BTreeMap;

use super::super::when::day;
use super::history::Difference;
use super::item::author;
use super::lines::{age, kind};
use super::text::{AtOnce, Text};
use crate::db::notes::queue::{Asked, Queued};
use crate::db::notes::read::{Note, Sender, Version, WordingState};
use crate::db::notes::reports::{self, MOST_AT_ONCE};
use crate::rules::auth::{Right, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::decision::Decision;
use crate::rules::notes::difference::Effort;
use crate::rules::notes::markdown;
use crate::rules::notes::ready::{READY, Ready, Sends};
use crate::rules::notes::state::{Act, Others, Refused, StandIns, Subject, done_by};

/// What stood in the way of a decision, with what was typed.
pub(super) struct Trouble {
    /// The note it was about.
    pub(super) id: i64,
    /// Where on the page its wording stood.
    pub(super) place: String,
    pub(super) heading: &'static str,
    pub(super) words: String,
    pub(super) reason: String,
}

/// What was typed at each wording, by its place.
pub(super) type Reasons = BTreeMap<String, String>;

/// Where on the page what waits stands of a note that is reported; anything else of it has the note's number.
pub(super) fn new_place(id: i64) -> String {
    format!("{id}-new")
}

/// Whether it could be such a place.
pub(super) fn is_place(text: &str) -> bool {
    text.strip_suffix("-new").unwrap_or(text).parse::<i64>().is_ok()
}

/// A member who hid several notes.
pub(super) struct SenderShown {
    pub(super) member: i64,
    pub(super) name: String,
    /// How many they hid.
    pub(super) count: usize,
    /// As many are settled at once.
    pub(super) together: usize,
    /// Those of them that do not stand on this page: number and title.
    pub(super) elsewhere: Vec<(i64, String)>,
    pub(super) last: i64,
    /// The notes as they stand on this page.
    pub(super) read: String,
}

impl SenderShown {
    /// As a page shows it where these notes stand.
    pub(super) fn of(sender: reports::Sender, here: &[i64]) -> Self {
        let count = sender.notes.len();
        let notes = sender.notes.into_iter().take(MOST_AT_ONCE);
        let (notes, read): (Vec<_>, Vec<String>) = notes
            .map(|note| {
                let read = format!("{}.{}.{}", note.id, note.version, note.correction);
                ((note.id, note.title), read)
            })
            .unzip();
        let (member, name, last) = (sender.member.0, sender.name, sender.last);
        let together = notes.len();
        let elsewhere = notes.into_iter().filter(|(id, _)| !here.contains(id)).collect();
        Self { member, name, count, together, elsewhere, last, read: read.join(" ") }
    }
}

/// A report and who sent it.
pub(super) struct ReportShown {
    pub(super) by: String,
    pub(super) text: String,
}

/// A correction that stands above a text.
pub(super) struct CorrectionShown {
    pub(super) day: String,
    /// Made by [`markdown::html`], and so safe.
    pub(super) html: String,
}

/// A button, by what it decides and what it says.
#[derive(Clone, Copy)]
pub(super) struct Button {
    pub(super) decides: Decision,
    pub(super) words: &'static str,
}

/// What was asked of an earlier wording, and what changed since.
pub(super) struct AskedShown {
    pub(super) heading: String,
    pub(super) reason: String,
    pub(super) difference: Difference,
}

/// One wording to decide about.
pub(super) struct Part {
    pub(super) version: i64,
    /// Where it stands: the end of the names of its fields.
    pub(super) place: String,
    /// What was asked before.
    pub(super) asked: Option<AskedShown>,
    /// An earlier note that says much the same: number and title.
    pub(super) like: Option<(i64, String)>,
    /// The reasons at one tap: what they do, and each of them.
    pub(super) ready: Vec<(&'static str, Vec<&'static Ready>)>,
    /// Whether this reader may show it with a small fix.
    pub(super) may_mend: bool,
    /// What changed since the shown wording.
    pub(super) difference: Option<Difference>,
    /// What stands above it.
    pub(super) corrections: Vec<CorrectionShown>,
    /// What stands above the shown wording, and goes with it.
    pub(super) goes: Vec<CorrectionShown>,
    pub(super) text: Text,
    /// What a reader who may not pass it is told.
    pub(super) words: Option<String>,
    pub(super) buttons: Vec<Button>,
    pub(super) reason: String,
}

/// One note to look at.
pub(super) struct Item {
    pub(super) id: i64,
    pub(super) title: String,
    pub(super) by: String,
    /// For how long it has waited.
    pub(super) age: String,
    /// What sort of note it is.
    pub(super) kind: String,
    /// Whether the page shows it whole at once.
    pub(super) is_open: bool,
    /// Open reports: the note is then hidden.
    pub(super) reports: Vec<ReportShown>,
    /// The newest of them: what comes later was not read.
    pub(super) last: i64,
    /// The newest correction, the same.
    pub(super) correction: i64,
    /// Whether this reader may put a correction above what was reported.
    pub(super) may_correct: bool,
    /// What was reported.
    pub(super) reported: Option<Part>,
    /// What waits.
    pub(super) waiting: Option<Part>,
}

impl Part {
    pub(super) fn can_withdraw(&self) -> bool {
        self.buttons.iter().any(|button| button.decides == Decision::Withdraw)
    }
}

impl Item {
    pub(super) fn may_mend(&self) -> bool {
        self.waiting.as_ref().is_some_and(|part| part.may_mend)
    }

    /// Names the wordings that were read in place of those that stand now.
    pub(super) fn name_read(&mut self, read: &BTreeMap<String, i64>) {
        for part in self.reported.iter_mut().chain(&mut self.waiting) {
            part.version = read.get(&part.place).copied().unwrap_or(part.version);
        }
    }

    /// What harms there and then in it, each line once: a new wording mostly says what the reported one does.
    pub(super) fn at_once(&self) -> Vec<AtOnce> {
        let mut lines: Vec<AtOnce> = Vec::new();
        for line in self.parts().filter_map(|part| part.text.at_once()) {
            if lines.iter().all(|said| said.materials != line.materials) {
                lines.push(line);
            }
        }
        lines
    }

    /// What there is to decide about: what was reported first.
    pub(super) fn parts(&self) -> impl Iterator<Item = &Part> {
        self.reported.iter().chain(&self.waiting)
    }
}

/// Whoever reads the queue, and who else could decide.
type Decider<'a> = (&'a SignedIn, StandIns);

/// The note as this reader sees it in the queue now.
pub(super) fn item(
    Queued { line, note, asked, like }: &Queued,
    decider: Decider<'_>,
    reasons: &Reasons,
    (effort, now): (&mut Effort, UnixSeconds),
) -> Option<Item> {
    let is_hidden = note.hidden.is_some();
    let shown = note.in_state(WordingState::Shown);
    let waiting = note.in_state(WordingState::Waiting);
    let (reported, first) = if is_hidden { (shown, shown?) } else { (None, waiting?) };
    let id = note.id.0;
    let [old, new] = [id.to_string(), new_place(id)];
    let typed = |place: &str| reasons.get(place).cloned();
    // What was typed at a place that is no more stands at the other.
    let other = |is_there: bool, place: &str| if is_there { None } else { typed(place) };
    let reported = reported.map(|version| Part {
        version: version.id.0,
        place: old.clone(),
        asked: None,
        like: None,
        ready: Vec::new(),
        may_mend: false,
        difference: None,
        corrections: standing(note),
        goes: Vec::new(),
        text: Text::prompting(&version.wording)
            .of_place(&old)
            .struck(note.standing_corrections().next().is_some()),
        words: told(note, decider, Act::Settle),
        buttons: offered(note, decider, &SETTLES),
        reason: typed(&old).or_else(|| other(waiting.is_some(), &new)).unwrap_or_default(),
    });
    let waiting = waiting.map(|version| Part {
        version: version.id.0,
        place: if is_hidden { new.clone() } else { old.clone() },
        asked: asked_before(note, version, asked.as_ref(), effort),
        like: like.clone(),
        ready: if may(note, decider, Act::Decline).is_ok() { ready() } else { Vec::new() },
        may_mend: may(note, decider, Act::Mend(Subject::Usual)).is_ok(),
        difference: shown.map(|shown| Difference::of(Some(shown), version, effort)),
        corrections: Vec::new(),
        goes: if shown.is_some() { standing(note) } else { Vec::new() },
        text: Text::prompting(&version.wording).of_place(if is_hidden { &new } else { &old }),
        words: told(note, decider, Act::Pass)
            .or_else(|| version.is_turned_back.then(|| TURNED_BACK.to_owned())),
        buttons: offered(note, decider, if is_hidden { &REPLACES } else { &DECIDES }),
        reason: match is_hidden {
            true => typed(&new),
            false => typed(&old).or_else(|| typed(&new)),
        }
        .unwrap_or_default(),
    });
    Some(Item {
        id,
        title: first.wording.title.clone(),
        by: author(note.author.as_ref().map(|author| author.name.as_str())),
        age: age(line.since, now),
        kind: kind(line),
        is_open: reasons.contains_key(&old) || reasons.contains_key(&new),
        last: note.reports.iter().map(|report| report.id).max().unwrap_or_default(),
        correction: note.last_correction,
        may_correct: is_hidden && may(note, decider, Act::Correct(Subject::Usual)).is_ok(),
        reports: note
            .reports
            .iter()
            .map(|report| {
                if is_kept_from(note, decider) {
                    return ReportShown { by: "A member".to_owned(), text: KEPT.to_owned() };
                }
                ReportShown { by: sender(&report.by), text: report.text.clone() }
            })
            .collect(),
        reported,
        waiting,
    })
}

/// What an author reads in the place of a report.
const KEPT: &str = "what was said is for whoever decides about it";

/// Whether reports are kept from this reader: an author who decides about the notes of others learns no more of who
/// reported their own than any author does.
fn is_kept_from(note: &Note, decider: Decider<'_>) -> bool {
    note.is_by(decider.0.id) && may(note, decider, Act::Settle).is_err()
}

/// The reasons at one tap, by what they do.
fn ready() -> Vec<(&'static str, Vec<&'static Ready>)> {
    let of = |sends| READY.iter().filter(move |ready| ready.sends == sends).collect();
    vec![
        ("Ask for a change at one tap, with what you typed after it:", of(Sends::Back)),
        ("Decline at one tap:", of(Sends::Away)),
    ]
}

/// What was asked of an earlier wording that its author has changed since; or why it was not taken.
fn asked_before(
    note: &Note,
    waits: &Version,
    asked: Option<&Asked>,
    effort: &mut Effort,
) -> Option<AskedShown> {
    let now = waits.wording.as_lines();
    let shown = note.in_state(WordingState::Shown).map(|shown| shown.id.0).unwrap_or_default();
    let declined = note.in_state(WordingState::Declined).filter(|before| before.id.0 > shown);
    let since = declined.and_then(|before| before.decided_at);
    let is_later = |asked: &&Asked| since.is_none_or(|since| asked.at > since);
    if let Some(Asked { reason, at, by, words }) = asked.filter(is_later) {
        let heading = format!("{} asked for a change, {}", author(by.as_deref()), day(*at));
        let difference = Difference::of_lines(words, &now, effort);
        return Some(AskedShown { heading, reason: reason.clone(), difference });
    }
    let declined = declined?;
    let at = day(declined.decided_at.unwrap_or(declined.saved_at));
    Some(AskedShown {
        heading: format!("Declined before, {at}"),
        reason: declined.reason.clone(),
        difference: Difference::of_lines(&declined.wording.as_lines(), &now, effort),
    })
}

/// What a moderator is told of what the inspector had before.
const TURNED_BACK: &str = "An inspector has looked, and turned it back: it is not about pressure.";

const fn button(decides: Decision, words: &'static str) -> Button {
    Button { decides, words }
}

const OVER: Button = button(Decision::HandOver, "Hand it to an inspector");
const BACK: Button = button(Decision::TurnBack, "Not about pressure: back to the moderators");
const CHANGE: Button = button(Decision::Change, "Ask for a change");
const DECLINE: Button = button(Decision::Decline, "Decline");

/// About a note that waits.
const DECIDES: [Button; 5] = [button(Decision::Pass, "Show it"), CHANGE, DECLINE, OVER, BACK];
/// About a reported note.
const SETTLES: [Button; 4] = [
    button(Decision::Settle, "Nothing against it: show it again"),
    button(Decision::Withdraw, "Withdraw it"),
    OVER,
    BACK,
];
/// About what waits to take the place of a reported one.
const REPLACES: [Button; 3] =
    [button(Decision::Pass, "Show the new wording in its place"), CHANGE, DECLINE];

fn may(note: &Note, (member, stand_ins): Decider<'_>, act: Act) -> Result<(), Refused> {
    let who = (note.is_by(member.id), member.rights);
    done_by(act, note.state(), who, stand_ins).map(|_| ())
}

fn offered(note: &Note, decider: Decider<'_>, buttons: &[Button]) -> Vec<Button> {
    let is_theirs =
        |button: &&Button| button.decides.act().is_some_and(|act| may(note, decider, act).is_ok());
    buttons.iter().filter(is_theirs).copied().collect()
}

/// Who decides, where this reader does not, or why they may though it is their own.
fn told(note: &Note, decider: Decider<'_>, act: Act) -> Option<String> {
    let (member, stand_ins) = decider;
    let is_own = note.is_by(member.id);
    let pressure = note.state().asks(act) == Subject::Pressure;
    let (sort, others) = if pressure {
        ("inspector", stand_ins.inspectors)
    } else {
        ("moderator", stand_ins.moderators)
    };
    match may(note, decider, act) {
        Ok(()) if is_own => Some(
            "Your own note. Nobody else in the club could decide about it, so you may.".to_owned(),
        ),
        Ok(()) => None,
        Err(_) if is_own => {
            let none = match others {
                Others::Can => "",
                Others::Nobody if member.rights.may(Right::Manage) => {
                    " The club has no other: give somebody the right."
                }
                Others::Nobody => {
                    " The club has no other: ask the secretary to give somebody the right."
                }
            };
            Some(format!("Your own note. Another {sort} decides about it.{none}"))
        }
        Err(Refused::Inspector) => {
            Some("For an inspector: only an inspector passes it.".to_owned())
        }
        Err(Refused::Moderator) => Some("For a moderator: only a moderator passes it.".to_owned()),
        Err(_) => None,
    }
}

fn standing(note: &Note) -> Vec<CorrectionShown> {
    let shown = note.standing_corrections();
    shown
        .map(|said| CorrectionShown { day: day(said.made_at), html: markdown::html(&said.text) })
        .collect()
}

fn sender(by: &Sender) -> String {
    match by {
        Sender::Member(name) => name.clone(),
        Sender::Former => author(None),
        Sender::Program => "The program".to_owned(),
    }
}
