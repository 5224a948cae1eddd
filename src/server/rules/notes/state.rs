//! The states of a note, and every act on it: who may do it, and what the note is then.
//!
//! A wording goes draft → waiting → shown. While a changed wording waits, the shown one stays. A
//! report of danger hides the note until it is settled, or until another wording is passed in its place; a
//! withdrawn note stays withdrawn.

pub use super::refused::Refused;
use crate::rules::auth::{Right, Rights};

/// What a wording speaks of, and so whose it is to pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A moderator passes it.
    Usual,
    /// Boilers, steam or pressure: the inspector passes it.
    Pressure,
}

impl Subject {
    /// What both together speak of.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        match (self, other) {
            (Self::Usual, Self::Usual) => Self::Usual,
            _ => Self::Pressure,
        }
    }
}

/// A wording that readers do not see yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnItsWay {
    /// On its author's desk.
    Draft,
    /// In the queue.
    Waiting(Subject),
}

/// How a note stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct NoteState {
    /// The wording on its way, if there is one.
    pub on_its_way: Option<OnItsWay>,
    /// The wording that readers see, or saw until the note was hidden or withdrawn.
    pub shown: Option<Subject>,
    /// A report that it could hurt somebody is open: of pressure where the inspector says so, or where no
    /// inspector has read it.
    pub hidden: Option<Subject>,
    /// Taken back for good.
    pub is_withdrawn: bool,
}

/// What somebody does to a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Its author keeps a wording on the desk.
    Save,
    /// Its author sends a wording in.
    SendIn(Subject),
    /// The waiting wording is shown from now on.
    Pass,
    /// The waiting wording goes back to its author's desk, with what to change.
    AskForChange,
    /// The waiting wording is not taken, with the reason.
    Decline,
    /// A correction is put above the shown wording; what it speaks of counts beside what that does.
    Correct(Subject),
    /// The note is taken back, with the reason.
    Withdraw,
    /// A member says that the note could hurt somebody, in words that speak of this.
    Report(Subject),
    /// The reports are looked at, and the note shows again.
    Settle,
    /// A moderator hands what stands in the queue to the inspector.
    HandOver,
    /// The inspector finds that what stands in the queue is a usual note.
    TurnBack,
    /// A member says whether it worked, in words that speak of this.
    Judge(Subject),
    /// A member sends in a remark that speaks of this.
    Remark(Subject),
    /// A member takes back what they said of it.
    TakeBack,
    /// What another member said of it is taken away.
    TakeAway,
    /// Whoever decided about it takes that back, and it stands as before.
    Undo(Last),
    /// The waiting wording is shown with a small fix of whoever decides; the words then speak of this.
    Mend(Subject),
}

/// How long a decision can be undone, in seconds.
pub const UNDO: i64 = 60;

/// The last decision about a note, where nothing else has happened to it since.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Last {
    /// How the note stood before.
    pub before: NoteState,
    /// Whether it was theirs who would undo it.
    pub is_theirs: bool,
    /// How long ago it was, in seconds.
    pub seconds: i64,
}

impl Last {
    /// What it was about.
    fn subject(self) -> Subject {
        let NoteState { on_its_way, shown, hidden, .. } = self.before;
        let waiting = match on_its_way {
            Some(OnItsWay::Waiting(subject)) => subject,
            _ => Subject::Usual,
        };
        let known = |subject: Option<Subject>| subject.unwrap_or(Subject::Usual);
        waiting.with(known(shown)).with(known(hidden))
    }
}

/// Whether the club has somebody else who could decide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Others {
    /// It has.
    Can,
    /// Nobody but the one who asks.
    Nobody,
}

/// Who acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Who {
    /// Whether the note is theirs.
    pub is_author: bool,
    /// Their rights.
    pub rights: Rights,
    /// Whether somebody else could decide.
    pub others: Others,
}

/// Who else in the club could decide: somebody other than the one who asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StandIns {
    /// About a usual note.
    pub moderators: Others,
    /// About one on pressure.
    pub inspectors: Others,
}

/// How the note stands after the act of somebody with these rights.
///
/// # Errors
/// As [`after`].
pub fn done_by(
    act: Act,
    note: NoteState,
    (is_author, rights): (bool, Rights),
    stand_ins: StandIns,
) -> Result<NoteState, Refused> {
    let others = match about(act, note) {
        Subject::Usual => stand_ins.moderators,
        Subject::Pressure => stand_ins.inspectors,
    };
    after(act, note, Who { is_author, rights, others })
}

impl NoteState {
    /// What an act on it is about, and so whose it is.
    #[must_use]
    pub fn asks(self, act: Act) -> Subject {
        about(act, self)
    }
}

fn about(act: Act, note: NoteState) -> Subject {
    let shown = note.shown.unwrap_or(Subject::Usual);
    let waiting = match note.on_its_way {
        Some(OnItsWay::Waiting(subject)) => subject,
        _ => Subject::Usual,
    };
    match act {
        Act::Correct(said) | Act::Remark(said) => shown.with(said),
        Act::Settle => settled(note, shown),
        Act::TakeAway => shown,
        // It takes the place of what was reported, and so answers the reports.
        Act::Pass if note.hidden.is_some() => waiting.with(settled(note, shown)),
        Act::TurnBack => Subject::Pressure,
        Act::Mend(said) => said.with(about(Act::Pass, note)),
        Act::Undo(last) => last.subject(),
        _ => waiting,
    }
}

/// What the open reports on a shown wording are about.
fn settled(note: NoteState, shown: Subject) -> Subject {
    shown.with(note.hidden.unwrap_or(Subject::Usual))
}

/// How the note stands after the act.
///
/// # Errors
/// The act is not theirs, or the note does not stand so that it can be done.
pub fn after(act: Act, note: NoteState, who: Who) -> Result<NoteState, Refused> {
    let is_for_its_author = matches!(act, Act::Save | Act::SendIn(_));
    if !who.is_author && (is_for_its_author || is_secret(act, note, who.rights)) {
        return Err(Refused::NotYours);
    }
    if note.is_withdrawn {
        return Err(Refused::Withdrawn);
    }
    match act {
        Act::Save => Ok(NoteState { on_its_way: Some(OnItsWay::Draft), ..note }),
        Act::SendIn(said) => {
            // What takes the place of a text that the inspector passed or corrected is the inspector's too.
            let subject =
                if note.shown == Some(Subject::Pressure) { Subject::Pressure } else { said };
            Ok(NoteState { on_its_way: Some(OnItsWay::Waiting(subject)), ..note })
        }
        Act::Pass => {
            waiting(note, who)?;
            let subject = about(act, note);
            decides(subject, who)?;
            Ok(NoteState { on_its_way: None, shown: Some(subject), hidden: None, ..note })
        }
        Act::Mend(_) => {
            waiting(note, who)?;
            let subject = about(act, note);
            decides(subject, who)?;
            // An author changes their own words on their own page, and those go round as every wording does.
            if who.is_author {
                return Err(Refused::Author);
            }
            Ok(NoteState { on_its_way: None, shown: Some(subject), hidden: None, ..note })
        }
        Act::Undo(last) => {
            sends_back(last.subject(), who)?;
            // Neither a clock that was put forward nor one that was put back makes a minute longer.
            if last.seconds.abs() > UNDO {
                return Err(Refused::TooLate);
            }
            if last.is_theirs { Ok(last.before) } else { Err(Refused::AnothersDecision) }
        }
        Act::AskForChange => {
            sends_back(waiting(note, who)?, who)?;
            Ok(NoteState { on_its_way: Some(OnItsWay::Draft), ..note })
        }
        Act::Decline => {
            sends_back(waiting(note, who)?, who)?;
            Ok(NoteState { on_its_way: None, ..note })
        }
        Act::Correct(said) => {
            let shown = note.shown.ok_or(Refused::NotShown)?;
            let both = shown.with(said);
            decides(both, who)?;
            // What waits to take its place is then the inspector's too.
            let on_its_way = match note.on_its_way {
                Some(OnItsWay::Waiting(waits)) if both != shown => {
                    Some(OnItsWay::Waiting(waits.with(both)))
                }
                as_it_was => as_it_was,
            };
            Ok(NoteState { shown: Some(both), on_its_way, ..note })
        }
        Act::Settle => {
            decides(settled(note, note.shown.ok_or(Refused::NotShown)?), who)?;
            if note.hidden.is_none() {
                return Err(Refused::NotHidden);
            }
            Ok(NoteState { hidden: None, ..note })
        }
        Act::Withdraw => {
            let shown = note.shown.map(|shown| settled(note, shown));
            let may = who.is_author || may_send_back(shown, who.rights);
            if !may {
                return Err(Refused::Moderator);
            }
            Ok(NoteState { is_withdrawn: true, on_its_way: None, ..note })
        }
        Act::HandOver => {
            sends_back(Subject::Usual, who)?;
            handed_on(note, Subject::Pressure)
        }
        Act::TurnBack => {
            decides(Subject::Pressure, who)?;
            handed_on(note, Subject::Usual)
        }
        Act::Report(said) => {
            others_note(note, who)?;
            let inspects = who.rights.may(Right::Inspect);
            let said = if inspects { said } else { Subject::Usual };
            Ok(NoteState { hidden: Some(said.with(note.hidden.unwrap_or(said))), ..note })
        }
        Act::Judge(said) => {
            others_note(note, who)?;
            if note.hidden.is_some() {
                return Err(Refused::Hidden);
            }
            // Nobody reads a verdict before it is shown.
            if said == Subject::Pressure && !may_pass(said, who.rights) {
                return Err(Refused::Inspector);
            }
            Ok(note)
        }
        // Somebody reads it before it is shown; its author may answer others so.
        Act::Remark(_) => {
            note.shown.ok_or(Refused::NotShown)?;
            if note.hidden.is_some() { Err(Refused::Hidden) } else { Ok(note) }
        }
        Act::TakeBack => {
            others_note(note, who)?;
            Ok(note)
        }
        Act::TakeAway => {
            sends_back(note.shown.ok_or(Refused::NotShown)?, who)?;
            Ok(note)
        }
    }
}

/// Whether somebody with these rights sees this wording in the queue.
#[must_use]
pub fn sees_waiting(subject: Subject, rights: Rights) -> bool {
    may_send_back(Some(subject), rights)
}

/// Whether somebody with these rights could pass such a wording.
#[must_use]
pub fn may_pass(subject: Subject, rights: Rights) -> bool {
    match subject {
        Subject::Usual => rights.may(Right::Moderate),
        Subject::Pressure => rights.may(Right::Inspect),
    }
}

/// Whether somebody else may not even learn that the note exists. Whoever decides had it in the queue
/// and is told when it is no longer there.
fn is_secret(act: Act, note: NoteState, rights: Rights) -> bool {
    let decides = rights.may(Right::Moderate) || rights.may(Right::Inspect);
    let sees = match (act, note.on_its_way) {
        (
            Act::Pass
            | Act::AskForChange
            | Act::Decline
            | Act::HandOver
            | Act::TurnBack
            | Act::Undo(_)
            | Act::Mend(_),
            _,
        ) => decides,
        (Act::Correct(_) | Act::Settle, Some(OnItsWay::Waiting(subject))) => {
            sees_waiting(subject, rights)
        }
        _ => false,
    };
    note.shown.is_none() && !sees
}

fn waiting(note: NoteState, who: Who) -> Result<Subject, Refused> {
    match note.on_its_way {
        Some(OnItsWay::Waiting(subject)) => Ok(subject),
        _ if who.rights.may(Right::Moderate) || who.rights.may(Right::Inspect) => {
            Err(Refused::NotWaiting)
        }
        _ => Err(Refused::Moderator),
    }
}

/// What stands in the queue is whose to pass from now on: the hidden text with what waits to take its place, or
/// what waits alone.
fn handed_on(note: NoteState, to: Subject) -> Result<NoteState, Refused> {
    let hidden = note.shown.filter(|_| note.hidden.is_some());
    let on_its_way = match note.on_its_way {
        Some(OnItsWay::Waiting(_)) => Some(OnItsWay::Waiting(to)),
        as_it_was => as_it_was,
    };
    let after = NoteState { on_its_way, shown: hidden.map_or(note.shown, |_| Some(to)), ..note };
    match (hidden, note.on_its_way) {
        (None, None | Some(OnItsWay::Draft)) => Err(Refused::NotWaiting),
        _ if after == note => Err(Refused::HandedOn),
        _ => Ok(after),
    }
}

/// What readers see changes: it takes the right, and another's note.
fn decides(subject: Subject, who: Who) -> Result<(), Refused> {
    if !may_pass(subject, who.rights) {
        return Err(match subject {
            Subject::Usual => Refused::Moderator,
            Subject::Pressure => Refused::Inspector,
        });
    }
    not_own(who)
}

/// Nothing new is shown: a moderator may, whatever the wording speaks of.
fn sends_back(subject: Subject, who: Who) -> Result<(), Refused> {
    if !may_send_back(Some(subject), who.rights) {
        return Err(Refused::Moderator);
    }
    not_own(who)
}

fn may_send_back(subject: Option<Subject>, rights: Rights) -> bool {
    let inspects = subject == Some(Subject::Pressure) && rights.may(Right::Inspect);
    rights.may(Right::Moderate) || inspects
}

/// A secretary who is alone decides about their own note too: a club of one could show none.
fn not_own(who: Who) -> Result<(), Refused> {
    let alone = who.rights.may(Right::Manage) && who.others == Others::Nobody;
    if who.is_author && !alone { Err(Refused::OwnNote) } else { Ok(()) }
}

fn others_note(note: NoteState, who: Who) -> Result<(), Refused> {
    if who.is_author {
        return Err(Refused::Author);
    }
    note.shown.map(|_| ()).ok_or(Refused::NotShown)
}
