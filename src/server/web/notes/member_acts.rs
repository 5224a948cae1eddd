//! What a member does to a note on its page: count a verdict, report a danger, correct, withdraw.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::super::apart::aside;
use super::back::Back;
use super::judged::verdict_fields;
use super::kept::{Sent, given_back};
use super::number::Number;
use super::page::{did, may_write};
use super::show::{Seen, again, answer, seen};
use super::text_form::TextForm;
use crate::db::notes::decide::Reviewed;
use crate::db::notes::verdicts::{self, Verdict};
use crate::db::notes::{after, lists, read};
use crate::extract::{Fields, Member, Reader, WORD, room};
use crate::rules::auth::{MemberId, Rights, SignedIn};
use crate::rules::deed::Deed;
use crate::rules::notes::found::{Found, Sense};
use crate::rules::notes::state::{Subject, may_pass};
use crate::rules::notes::{NoteId, VersionId, pressure, wording};
use crate::{App, Error};
use holewright_pages::FieldError;

/// The longest material or size of a verdict.
const LONGEST_LINE: usize = 100;
/// The longest line of why.
const LONGEST_WHY: usize = 200;
/// The field of that line.
const WHY: &str = "reason";
/// Why a verdict may not say so.
const FOR_THE_INSPECTOR: &str = "Leave boilers, steam and pressure out here: material and size are shown \
     unread. Say it in the line below, or write a note on it: an inspector reads those first.";

const REPORT: TextForm = TextForm {
    act: "report",
    deed: Deed::Reported,
    name: "danger",
    label: "What could hurt somebody",
    missing: "Say what could hurt somebody.",
    longest: 2000,
};
const WITHDRAW: TextForm = TextForm {
    act: "withdraw",
    deed: Deed::Withdrew,
    name: "why",
    label: "Why it is withdrawn",
    missing: "Say why it is withdrawn.",
    longest: 2000,
};
const CORRECT: TextForm = TextForm {
    act: "correct",
    deed: Deed::Corrected,
    name: "correction",
    label: "What is right instead",
    missing: "Write what is right instead.",
    longest: 5000,
};

/// The bytes of what was found, in what material, under the field's old name too, at what size, why, of which
/// wording, and of whose verdict is taken away.
pub const VERDICT: u64 =
    room(&[WORD, LONGEST_LINE, LONGEST_LINE, LONGEST_LINE, LONGEST_WHY, WORD, WORD, WORD]);
/// The bytes of a report and of the wording that was read.
pub const REPORTED: u64 = room(&[REPORT.longest, WORD]);
/// The bytes of a correction and of the wording that was read.
pub const CORRECTED: u64 = room(&[CORRECT.longest, WORD]);
/// The bytes of why a note is withdrawn, and of the wording that was read.
pub const WITHDRAWN: u64 = room(&[WITHDRAW.longest, WORD]);

/// Counts what the member found, or changes what they said before; or takes it away.
///
/// # Errors
/// The note is not there for them, or is their own.
pub async fn judge(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    // A form that was open before the field had its name still says which it was.
    let material = [fields.as_typed("material"), fields.as_typed("metal")]
        .into_iter()
        .find(|typed| !typed.trim().is_empty());
    let said = [material.unwrap_or_default(), fields.as_typed("size"), fields.as_typed("reason")];
    let said = said.map(wording::line);
    let found = Found::read(fields.as_typed("found"));
    let sent = |sense| Sent {
        action: format!("/notes/{}/verdict", id.0),
        fields: verdict_fields(sense, found, said.each_ref().map(String::as_str)),
        known: [("version", fields.as_typed("version").chars().take(20).collect::<String>())]
            .into_iter()
            .filter(|(_, held)| !held.is_empty())
            .collect(),
        carried: Vec::new(),
    };
    let member = match member {
        Ok(Member(member)) => member,
        Err(error) => return given_back(&app, None, error, sent(sense(&app, id).await)),
    };
    if fields.as_typed("do") == "away" {
        return take_away(&app, &member, id, fields.as_typed("of")).await;
    }
    let (typed, rights) = (said.clone(), member.rights);
    let errors = aside(move || trouble(found, &typed, rights)).await?;
    let typed = {
        let [material, size, why] = said.clone();
        let found = ("found", fields.as_typed("found").to_owned());
        vec![found, ("material", material), ("size", size), ("reason", why)]
    };
    let (Some(found), []) = (found, errors.as_slice()) else {
        let back = Back { errors, typed, ..Back::default() };
        return answer(&app, Reader(Some(member)), id, back).await;
    };
    let [material, size, why] = said.clone();
    let verdict = Verdict { found, material, size };
    // A form that was open before it had this field says nothing of it.
    let read = match fields.as_typed("version") {
        "" => None,
        typed => Some(VersionId(typed.parse().unwrap_or_default())),
    };
    let done = async {
        may_write(&app, &member)?;
        Ok(verdicts::judge(&app.database, app.clock.now(), &member, (id, read), (&verdict, &why))
            .await?)
    };
    match done.await {
        Ok(()) => {
            let deed = if why.is_empty() { Deed::Judged } else { Deed::JudgedWithWhy };
            did(&app, &format!("/notes/{}", id.0), deed.into())
        }
        Err(error) => {
            if let Error::Conflict(words) = &error {
                let errors = vec![FieldError::new("found", format!("Nothing was done: {words}."))];
                let back = Back { errors, typed, status: Some(error.status()), did: None };
                if let Some(page) = again(&app, &member, id, back).await? {
                    return Ok(page);
                }
            }
            given_back(&app, Some(&member), error, sent(sense(&app, id).await))
        }
    }
}

/// In which sense the note asks, as everybody reads it; of one that readers do not see nobody learns here.
async fn sense(app: &App, id: NoteId) -> Sense {
    let sense = lists::sense(&app.database, id).await;
    sense.ok().flatten().unwrap_or_default()
}

/// What is wrong with a verdict. Nobody reads its material and size before they are shown: what speaks of pressure there
/// is the inspector's to say. Why it was so waits to be read.
fn trouble(found: Option<Found>, said: &[String; 3], rights: Rights) -> Vec<FieldError> {
    let mut errors = Vec::new();
    if found.is_none() {
        errors.push(FieldError::new("found", "Say whether it did or did not."));
    }
    let hears = !may_pass(Subject::Pressure, rights);
    let fields = [("material", LONGEST_LINE), ("size", LONGEST_LINE), (WHY, LONGEST_WHY)];
    for ((field, longest), typed) in fields.into_iter().zip(said) {
        if typed.chars().count() > longest {
            errors.push(FieldError::new(field, format!("{longest} characters are taken here.")));
        } else if field != WHY && hears && pressure::subject(typed) == Subject::Pressure {
            errors.push(FieldError::new(field, FOR_THE_INSPECTOR));
        }
    }
    // A word of one field and the next of another are a pair too.
    let [material, size, _] = said;
    let unread = format!("{material} {size}");
    if errors.is_empty() && hears && pressure::subject(&unread) == Subject::Pressure {
        errors.push(FieldError::new("size", FOR_THE_INSPECTOR));
    }
    errors
}

/// Takes a verdict away: the member's own, or that of the member with this number.
async fn take_away(
    app: &Arc<App>,
    member: &SignedIn,
    id: NoteId,
    of: &str,
) -> Result<Response, Error> {
    let deed = if of.is_empty() { Deed::TookBack } else { Deed::TookAway };
    let of = if of.is_empty() { Some(member.id) } else { of.parse().ok().map(MemberId) };
    let of = of.ok_or(Error::NotFound("there is no such verdict"))?;
    may_write(app, member)?;
    verdicts::take_away(&app.database, app.clock.now(), member, id, of).await?;
    did(app, &format!("/notes/{}", id.0), deed.into())
}

/// Hides the note at once, until somebody has looked.
///
/// # Errors
/// As [`judge`].
pub async fn report(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let form = &REPORT;
    let (member, danger) = match begun(&app, member, id, (form, &fields)).await? {
        Begun::Typed(member, danger) => (member, danger),
        Begun::Answered(answer) => return Ok(answer),
    };
    let done = async {
        may_write(&app, &member)?;
        Ok(after::report(&app.database, app.clock.now(), &member, id, &danger).await?)
    };
    finish(&app, &member, id, done.await, (form, &fields)).await
}

/// Takes the note back, with the reason.
///
/// # Errors
/// As [`judge`], or it takes a moderator.
pub async fn withdraw(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let form = &WITHDRAW;
    let (member, why) = match begun(&app, member, id, (form, &fields)).await? {
        Begun::Typed(member, why) => (member, why),
        Begun::Answered(answer) => return Ok(answer),
    };
    let done = async {
        may_write(&app, &member)?;
        Ok(after::withdraw(&app.database, app.clock.now(), &member, id, &why).await?)
    };
    finish(&app, &member, id, done.await, (form, &fields)).await
}

/// Puts a correction above the text.
///
/// # Errors
/// As [`withdraw`]; or another wording stands there meanwhile.
pub async fn correct(
    State(app): State<Arc<App>>,
    member: Result<Member, Error>,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let form = &CORRECT;
    let (member, said) = match begun(&app, member, id, (form, &fields)).await? {
        Begun::Typed(member, said) => (member, said),
        Begun::Answered(answer) => return Ok(answer),
    };
    let version = VersionId(fields.as_typed("version").parse().unwrap_or_default());
    let done = async {
        may_write(&app, &member)?;
        check_seen(&app, &member, id).await?;
        let reading = Reviewed { note: id, version, by: &member, now: app.clock.now() };
        Ok(after::correct(&app.database, reading, &said).await?)
    };
    finish(&app, &member, id, done.await, (form, &fields)).await
}

/// How far a form with one text came before anything was done.
pub(super) enum Begun {
    /// It holds this text.
    Typed(SignedIn, String),
    /// It was given back.
    Answered(Response),
}

/// Reads a form with one text. Without a member, or where the text will not do, it goes back as typed.
pub(super) async fn begun(
    app: &Arc<App>,
    member: Result<Member, Error>,
    id: NoteId,
    (form, fields): (&TextForm, &Fields),
) -> Result<Begun, Error> {
    let member = match member {
        Ok(Member(member)) => member,
        Err(error) => {
            return given_back(app, None, error, form.sent(id, fields)).map(Begun::Answered);
        }
    };
    match form.read(fields) {
        Ok(text) => Ok(Begun::Typed(member, text)),
        Err(back) => answer(app, Reader(Some(member)), id, back).await.map(Begun::Answered),
    }
}

/// Where a member goes on: to the note, or to their own notes where it is there no more.
async fn after_it(
    app: &App,
    member: &SignedIn,
    id: NoteId,
    deed: Deed,
) -> Result<(String, Deed), Error> {
    let note = read::note(&app.database, id).await?;
    let is_there = note.is_some_and(|note| !matches!(seen(&note, Some(member)), Seen::Nothing));
    Ok(match (is_there, deed) {
        (true, _) => (format!("/notes/{}", id.0), deed),
        // A note that readers never saw is gone with its withdrawal.
        (false, _) => ("/notes/mine".to_owned(), Deed::Discarded),
    })
}

/// Back to the note after something was done; where it could not be done as things stand, with what was
/// typed: on the note's page, where that still has the form.
pub(super) async fn finish(
    app: &Arc<App>,
    member: &SignedIn,
    id: NoteId,
    done: Result<(), Error>,
    (form, fields): (&TextForm, &Fields),
) -> Result<Response, Error> {
    let error = match done {
        Ok(()) => {
            let (address, deed) = after_it(app, member, id, form.deed).await?;
            return did(app, &address, deed.into());
        }
        Err(error) => error,
    };
    if let Error::Conflict(words) = &error {
        let errors = vec![FieldError::new(form.name, format!("Nothing was done: {words}."))];
        let typed = vec![(form.name, wording::text(fields.as_typed(form.name)))];
        let back = Back { errors, typed, status: Some(error.status()), did: None };
        if let Some(page) = again(app, member, id, back).await? {
            return Ok(page);
        }
    }
    given_back(app, Some(member), error, form.sent(id, fields))
}

/// Nobody corrects what they may not see.
async fn check_seen(app: &App, member: &SignedIn, id: NoteId) -> Result<(), Error> {
    match read::note(&app.database, id).await? {
        Some(note) if !matches!(seen(&note, Some(member)), Seen::Nothing) => Ok(()),
        _ => Err(Error::NotFound("there is no note at this address")),
    }
}
