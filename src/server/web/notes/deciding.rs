//! What is sent from the queue: a decision about a wording, the words of a reason to change first, and the reports of
//! one member settled together.

use std::sync::Arc;

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::Response;

use super::inspection;
use super::kept::{Sent, given_back};
use super::number::Number;
use super::page::{did, may_write};
use super::queue::{NOT_THEIRS, Said, TO_PUT_RIGHT, ToChange, answer, decides};
use super::queued::Trouble;
use super::show::state;
use super::typed::{PARTS, Typed};
use crate::db::notes::decide::{self, Reviewed};
use crate::db::notes::queue;
use crate::db::notes::read::{self, Note, WordingState};
use crate::db::notes::read_to::ReadTo;
use crate::db::notes::reports::{self, AsRead, MOST_AT_ONCE, Of};
use crate::db::notes::{self, after, undo};
use crate::extract::{Fields, Member, WORD, room};
use crate::rules::auth::{MemberId, Rights, SignedIn};
use crate::rules::deed::{Deed, Did};
use crate::rules::notes::decision::Decision;
use crate::rules::notes::seen::is_blank;
use crate::rules::notes::state::sees_waiting;
use crate::rules::notes::{NoteId, VersionId};
use crate::{App, Error};
use holewright_pages::field::{Field, Kind};

/// The longest reason.
const LONGEST: usize = 2000;

/// The bytes of a decision; and of what was read, a reason that was chosen and one that was typed, for each wording of
/// the page: they are sent together, so that what was typed at one is not lost over another.
pub const DECIDED: u64 =
    room(&[WORD; 4]) + (PARTS as u64 + 1) * room(&[WORD, WORD, WORD, WORD, LONGEST]);
/// The bytes of whose reports are settled, up to which, and of the notes as they were read.
pub const SETTLED: u64 = room(&[WORD, WORD, MOST_AT_ONCE * WORD]);

/// A decision about the wording that was read.
///
/// # Errors
/// It is not theirs to decide. Where it was decided meanwhile, the queue comes back as it stands, with
/// what was typed. It comes back too where something was typed at other notes, which a page sent for would lose.
pub async fn decide(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(NoteId(id)): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let typed = Typed::read(&fields, id);
    let (reason, beside) = (typed.reason(), typed.beside());
    let member = match member {
        Ok(Member(member)) if decides(member.rights) => member,
        Ok(Member(other)) => return given_back(&app, Some(&other), NOT_THEIRS, sent(&typed)),
        Err(error) => return given_back(&app, None, error, sent(&typed)),
    };
    let said = |heading, words: String| {
        let mut reasons = beside.clone();
        reasons.insert(typed.place.clone(), reason.clone());
        let place = typed.place.clone();
        let trouble = Some(Trouble { id, place, heading, words, reason: reason.clone() });
        let part = Some(queue::Part::With(NoteId(id)));
        let read = typed.read_wordings();
        Said { trouble, reasons, part, read, ..Said::default() }
    };
    let like = if typed.points() { queue::like(&app.database, NoteId(id)).await? } else { None };
    let told = typed.told(like.as_ref());
    if let Some(words) = to_put_right(&typed, &told) {
        let said = said(TO_PUT_RIGHT, words);
        return answer(&app, member, StatusCode::UNPROCESSABLE_ENTITY, said).await;
    }
    let done = async {
        if typed.is_to_change {
            still_waits(&app, &typed).await?;
            return Ok(None);
        }
        may_write(&app, &member)?;
        carry_out(&app, &member, &typed, &told).await.map(Some)
    };
    match done.await {
        Ok(None) => {
            let part = Some(queue::Part::With(NoteId(id)));
            let said = Said { part, ..to_change(&typed, told) };
            answer(&app, member, StatusCode::OK, said).await
        }
        Ok(Some(deed)) => {
            let done = Did { deed, of: Some(id) };
            // What was undone stands there again, and else the next one.
            let is_undone = typed.what == Some(Decision::Undo);
            let next = if is_undone { Some(id) } else { typed.next() };
            if beside.is_empty() {
                let open = next.map(|id| format!("?open={id}")).unwrap_or_default();
                return did(&app, &format!("/queue{open}"), done);
            }
            let part = next.map(|id| queue::Part::With(NoteId(id)));
            let did = Some(done);
            let read = typed.read_wordings();
            let said = Said { is_done: true, reasons: beside, part, did, read, ..Said::default() };
            answer(&app, member, StatusCode::OK, said).await
        }
        Err(Error::Conflict(words)) => {
            let now = match read::note(&app.database, NoteId(id)).await? {
                Some(note) => stands(&app, &note, member.rights).await?,
                None => String::new(),
            };
            let mut said = said("Changed meanwhile", format!("Nothing was done: {words}. {now}"));
            // It stands below as it is now, to be read.
            said.read.remove(&typed.place);
            answer(&app, member, StatusCode::CONFLICT, said).await
        }
        Err(error) => given_back(&app, Some(&member), error, sent(&typed)),
    }
}

/// What is wrong with what was typed for this decision, if anything is.
fn to_put_right(typed: &Typed<'_>, told: &str) -> Option<String> {
    let tells_why = typed.what.is_some_and(Decision::tells_why);
    let length = told.chars().count();
    if typed.is_to_change && typed.ready.is_none() {
        return Some(
            "The queue knows no such reason: choose one of those that stand there.".to_owned(),
        );
    }
    if !tells_why && !is_blank(&typed.reason()) {
        let words = "This button tells its author nothing, and what you wrote would be lost: ask for a change or \
                     decline, or empty the field.";
        return Some(words.to_owned());
    }
    match length {
        0..=LONGEST if tells_why && is_blank(told) => {
            Some("Say what to change, or why: its author is told.".to_owned())
        }
        0..=LONGEST => None,
        _ => Some(format!("That is {length} characters; {LONGEST} are taken.")),
    }
}

/// The page on which the words of a ready-made reason stand in the field, with what was typed.
fn to_change(typed: &Typed<'_>, told: String) -> Said {
    let place = typed.place.clone();
    let mut reasons = typed.beside();
    reasons.insert(place.clone(), told);
    let to_change = typed.what.map(|decides| ToChange { place, decides });
    Said { reasons, to_change, read: typed.read_wordings(), ..Said::default() }
}

/// Nothing, while the wording that was read still waits.
async fn still_waits(app: &App, typed: &Typed<'_>) -> Result<(), Error> {
    let note = read::note(&app.database, NoteId(typed.id)).await?;
    let waiting = note.as_ref().and_then(|note| note.in_state(WordingState::Waiting));
    let read = typed.of_it("version").parse().map(VersionId).ok();
    match waiting {
        Some(version) if Some(version.id) == read => Ok(()),
        _ => Err(notes::Error::OutOfDate.into()),
    }
}

/// Settles every report of one member's that was read.
///
/// # Errors
/// It is for moderators and an inspector; or there is none of them that is theirs to settle.
pub async fn settle_all(
    State(app): State<Arc<App>>,
    Member(member): Member,
    fields: Fields,
) -> Result<Response, Error> {
    if !decides(member.rights) {
        return Err(NOT_THEIRS);
    }
    let number = |name| fields.as_typed(name).parse::<i64>().ok();
    let of = number("of").zip(number("last"));
    let of = of.map(|(member, last)| Of { member: MemberId(member), last });
    let of = of.ok_or(Error::NotFound("the queue knows no such reports"))?;
    may_write(&app, &member)?;
    let notes: Vec<AsRead> = fields.as_typed("read").split(' ').filter_map(as_read).collect();
    match reports::settle_all(&app.database, app.clock.now(), &member, of, &notes).await? {
        0 => Err(Error::Conflict(
            "no report of theirs is yours to settle now, or the notes have changed meanwhile: read them first"
                .to_owned(),
        )),
        _ => did(&app, "/queue", Deed::SettledAll.into()),
    }
}

/// A note as the form has it: its number, that of its wording and that of its newest correction.
fn as_read(typed: &str) -> Option<AsRead> {
    let mut numbers = typed.split('.').map(|number| number.parse::<i64>().ok());
    let mut next = || numbers.next().flatten();
    let (note, version, correction) = (next()?, next()?, next()?);
    Some(AsRead { note: NoteId(note), version: VersionId(version), correction })
}

/// The decision as it was sent.
fn sent(typed: &Typed<'_>) -> Sent {
    let short = |typed: &str| typed.chars().take(20).collect();
    let known = |name| (name, short(typed.of_the_note(name)));
    let label = "What to change, or why not";
    let beside = typed.beside().into_iter();
    Sent {
        action: format!("/queue/{}", typed.id),
        fields: vec![Field::new("reason", label, "", Kind::Long(typed.reason()))],
        known: vec![
            ("place", typed.place.clone()),
            ("version", short(typed.of_it("version"))),
            ("ready", short(typed.of_it("ready"))),
            known("last"),
            known("correction"),
            ("do", short(typed.fields.as_typed("do"))),
        ],
        carried: beside.map(|(place, reason)| (format!("reason-{place}"), reason)).collect(),
    }
}

async fn carry_out(
    app: &App,
    member: &SignedIn,
    typed: &Typed<'_>,
    reason: &str,
) -> Result<Deed, Error> {
    let note = NoteId(typed.id);
    let version = VersionId(typed.of_it("version").parse().unwrap_or_default());
    let reading = Reviewed { note, version, by: member, now: app.clock.now() };
    let number = |name| typed.of_the_note(name).parse().unwrap_or_default();
    let read_to = ReadTo { report: number("last"), correction: number("correction") };
    let database = &app.database;
    let what = typed.what.ok_or(Error::NotFound("the queue knows no such decision"))?;
    Ok(match what {
        Decision::Pass => {
            decide::pass(database, reading, read_to).await?;
            Deed::Showed
        }
        Decision::HandOver => {
            decide::hand_over(database, reading).await?;
            Deed::HandedOver
        }
        Decision::TurnBack => {
            decide::turn_back(database, reading).await?;
            Deed::TurnedBack
        }
        Decision::Change => {
            decide::ask_for_change(database, reading, reason).await?;
            Deed::AskedBack
        }
        Decision::Decline => {
            decide::decline(database, reading, reason).await?;
            Deed::TurnedDown
        }
        Decision::Settle => {
            after::settle(database, reading, read_to).await?;
            Deed::Settled
        }
        Decision::Undo => {
            undo::undo(database, reading.now, member, note).await?;
            Deed::Undid
        }
        Decision::Withdraw => {
            after::withdraw(database, reading.now, member, note, reason).await?;
            Deed::Withdrew
        }
    })
}

/// How a note stands now, for somebody who came too late; nothing of what was never theirs to read.
async fn stands(app: &App, note: &Note, rights: Rights) -> Result<String, Error> {
    let Some(newest) = note.versions.last() else { return Ok("The note is gone.".to_owned()) };
    if !sees_waiting(newest.wording.subject, rights) {
        return Ok(String::new());
    }
    let awaited = inspection::of(app, note, newest).await?;
    Ok(match state(note, newest, awaited) {
        Some(_) if newest.state == WordingState::Draft => "It is with its author.".to_owned(),
        Some(words) => format!("It now reads: {words}"),
        None => "It is shown.".to_owned(),
    })
}
