//! `/notes/new` and `/notes/{id}/edit`: what becomes of a note that is written: previewed, kept on the
//! desk, sent in, or given back with everything typed.
//!
//! The form carries a key made with it, so that sending it twice makes one note. Leaves out how the
//! form looks, which is in [`super::form`].

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::header::RETRY_AFTER;
use axum::http::{HeaderValue, StatusCode};
use axum::response::Response;

use super::super::apart::aside;
use super::at_hand::AtHand;
use super::form::{Place, Remarks, Writer, asks, form_with, signed_out, typed};
use super::last_machine;
use super::late::{self, Late, Why};
use super::number::Number;
use super::page::{did, may_write};
use crate::db::notes::alike;
use crate::db::notes::read::{self, Note, Version};
use crate::db::notes::write::{self, Outcome, Sent};
use crate::extract::{Fields, JustDid, Member, Reader, WORD, room};
use crate::rules::auth::{SignedIn, Token};
use crate::rules::deed::{Deed, Did};
use crate::rules::limits::Client;
use crate::rules::notes::NoteId;
use crate::rules::notes::again::MadeFrom;
use crate::rules::notes::belongs::{self, Group};
use crate::rules::notes::fields::{Done, NoteField, TITLE, longest_of_all};
use crate::rules::notes::meant::{Answer, Question};
use crate::rules::notes::wording::{Aim, Typed, Wording};
use crate::{App, Error};
use holewright_pages::{FieldError, Query};

/// The bytes of all fields of a note, what it belongs to, its key, what it was made from, two ticks, three
/// answers and what is to be done.
pub const TAKES: u64 =
    room(&[longest_of_all(), belongs::MOST * belongs::LONGEST]) + room(&[WORD; 8]);

/// The form on the thing named in the address, `?on=materials/gunmetal`, and with what the address says
/// of a job, by the names of the fields: `?thread=5+BA&drill=No.+36`, and the machine that was typed last in this
/// browser; or with the newest words of a note of
/// one's own, `?from=12`. It is only filled in: nothing is kept before it is sent.
///
/// # Errors
/// Nobody is signed in, or that note is not theirs.
pub async fn begin(
    State(app): State<Arc<App>>,
    Member(member): Member,
    at_hand: AtHand,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    if let Ok(from) = query.get("from").parse() {
        let note = authored(&app, &member, NoteId(from)).await?;
        let newest = note.on_its_way().or_else(|| note.versions.last());
        let key = new_key()?;
        let typed = newest.map(|version| version.wording.typed(&key));
        let typed = typed.unwrap_or_else(|| Typed { form_key: key, ..Typed::default() });
        let writer = Writer { member, at_hand };
        return form_with(&app, writer, &Place::New, &typed, Remarks::default());
    }
    let things: Vec<_> = belongs::read(query.get("on")).into_iter().collect();
    let title = |group: Group| {
        let thing = things.iter().find(|thing| group.holds(thing));
        thing.map(|thing| thing.title.clone()).unwrap_or_default()
    };
    let said = |field: NoteField| -> String {
        field.filled_in(|name| query.get(name)).chars().take(field.longest).collect()
    };
    let machine = at_hand.machine.clone().unwrap_or_default();
    let known = |field: NoteField| match said(field) {
        nothing if nothing.is_empty() && field.name == last_machine::FIELD => machine.clone(),
        nothing if nothing.is_empty() => field.group.map(title).unwrap_or_default(),
        said => said,
    };
    let typed = Typed {
        form_key: new_key()?,
        title: said(TITLE),
        on: belongs::typed(&things),
        done: Done::from_each(known),
        ..Typed::default()
    };
    form_with(&app, Writer { member, at_hand }, &Place::New, &typed, Remarks::default())
}

/// The form filled with the newest wording.
///
/// # Errors
/// Nobody is signed in, or the note is another member's.
pub async fn edit(
    State(app): State<Arc<App>>,
    Member(member): Member,
    at_hand: AtHand,
    JustDid(did): JustDid,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    let note = own(&app, &member, NoteId(id)).await?;
    let newest = note.on_its_way().or_else(|| note.versions.last());
    let key = new_key()?;
    let filled =
        |version: &Version| Typed { made_from: version.mark(), ..version.wording.typed(&key) };
    let typed = newest.map(filled);
    let asked = newest.map(|version| version.reason.clone()).filter(|reason| !reason.is_empty());
    let said = Remarks { asked, did, ..Remarks::default() };
    let writer = Writer { member, at_hand };
    form_with(&app, writer, &Place::Edit(NoteId(id)), &typed.unwrap_or_default(), said)
}

/// A new note: previewed, kept on the desk or sent in.
///
/// # Errors
/// It cannot be kept. A form that cannot be read comes back with what was typed.
pub async fn create(
    State(app): State<Arc<App>>,
    reader: Reader,
    at_hand: AtHand,
    fields: Fields,
) -> Result<Response, Error> {
    receive(&app, (reader, at_hand), Place::New, &fields).await
}

/// Another wording of a note: previewed, kept on the desk or sent in.
///
/// # Errors
/// As [`create`].
pub async fn change(
    State(app): State<Arc<App>>,
    reader: Reader,
    at_hand: AtHand,
    Number(NoteId(id)): Number,
    fields: Fields,
) -> Result<Response, Error> {
    receive(&app, (reader, at_hand), Place::Edit(NoteId(id)), &fields).await
}

async fn receive(
    app: &Arc<App>,
    (reader, at_hand): (Reader, AtHand),
    place: Place,
    fields: &Fields,
) -> Result<Response, Error> {
    let mut typed = typed(fields);
    let Reader(Some(member)) = reader else {
        return signed_out(app, &place, typed, fields.as_typed("do"));
    };
    let writer = Writer { member, at_hand };
    // A key that no form of ours made makes a note of its own.
    if !is_key(&typed.form_key) {
        typed.form_key = new_key()?;
    }
    let aim = match fields.as_typed("do") {
        "send" => Aim::SendIn,
        _ => Aim::Draft,
    };
    let work = move || (Wording::read(&typed, aim), Wording::questions(&typed), typed);
    let (read, questions, typed) = aside(work).await?;
    let asked = match asked(app, &writer.member, &place).await {
        Err(error) => return not_kept(app, writer, &place, &typed, error).await,
        Ok(asked) => asked,
    };
    let told = |errors| {
        let (asked, questions) = (asked.clone(), questions.clone());
        Remarks { errors, asked, questions, ..Remarks::default() }
    };
    let wording = match read {
        Ok(wording) => wording,
        Err(errors) => return form_with(app, writer, &place, &typed, told(errors)),
    };
    if fields.as_typed("do") == "preview" {
        let own = if let Place::Edit(id) = place { Some(id) } else { None };
        let like = alike::find(&app.database, writer.member.id, own, &wording).await?;
        let said = Remarks { preview: Some(wording), asked, questions, like, ..Remarks::default() };
        let app = Arc::clone(app);
        return aside(move || form_with(&app, writer, &place, &typed, said)).await?;
    }
    // What nearly names something is not sent in before its author has said whether it is that.
    let open: Vec<FieldError> = match aim {
        Aim::Draft => Vec::new(),
        Aim::SendIn => {
            let open = questions.iter().filter(|question| question.answer == Answer::Open);
            open.map(|question| FieldError::new(question.field, asks(question))).collect()
        }
    };
    if !open.is_empty() {
        return form_with(app, writer, &place, &typed, told(open));
    }
    match keep(app, &writer.member, &place, (&typed, &wording, aim)).await {
        Ok(Outcome::Kept(NoteId(id))) if aim == Aim::Draft => {
            let saved = did(app, &format!("/notes/{id}/edit"), Deed::Saved.into())?;
            last_machine::remembered(app, &wording, saved)
        }
        Ok(Outcome::Kept(NoteId(id))) => {
            point_out(app, &writer.member, &[(NoteId(id), &wording)]).await;
            let sent = Did { deed: Deed::SentIn, of: Some(id) };
            let sent = did(app, &format!("/notes/mine#note-{id}"), sent)?;
            last_machine::remembered(app, &wording, sent)
        }
        Ok(Outcome::Late(id)) => {
            too_late(app, writer, (id, Why::Unread), (wording, aim, typed)).await
        }
        Ok(Outcome::Declined(id)) => {
            too_late(app, writer, (id, Why::Declined), (wording, aim, typed)).await
        }
        Err(error) => not_kept(app, writer, &place, &typed, error).await,
    }
}

/// Points out in the queue what is like the notes that were sent in. They stand whether or not that can be done.
pub(super) async fn point_out(app: &App, member: &SignedIn, sent: &[(NoteId, &Wording)]) {
    let mut found = Vec::new();
    for (note, wording) in sent {
        match alike::find(&app.database, member.id, Some(*note), wording).await {
            Ok(like) => found.extend(like.map(|like| (*note, like.note))),
            Err(error) => {
                tracing::warn!(%error, note = note.0, "what a note is like could not be looked for");
            }
        }
    }
    if let Err(error) = alike::keep(&app.database, &found).await {
        tracing::warn!(%error, "what notes are like could not be pointed out");
    }
}

async fn keep(
    app: &Arc<App>,
    member: &SignedIn,
    place: &Place,
    (typed, wording, aim): (&Typed, &Wording, Aim),
) -> Result<Outcome, Error> {
    may_write(app, member)?;
    let made_from = match (place, typed.made_from.as_str()) {
        (Place::New, _) => MadeFrom::Nothing,
        (Place::Edit(_), "") => MadeFrom::Untold,
        (Place::Edit(_), mark) => MadeFrom::Mark(mark),
    };
    let sent = Sent { wording, aim, form_key: &typed.form_key, made_from };
    let now = app.clock.now();
    Ok(match *place {
        Place::New => write::new(&app.database, now, member, sent).await?,
        Place::Edit(id) => write::edit(&app.database, now, member, id, sent).await?,
    })
}

/// The form with everything typed beside what stands in the note, which it now knows: sent from there it is
/// kept.
async fn too_late(
    app: &Arc<App>,
    writer: Writer,
    (id, why): (NoteId, Why),
    (wording, aim, typed): (Wording, Aim, Typed),
) -> Result<Response, Error> {
    let note = authored(app, &writer.member, id).await?;
    let made_from = note.versions.last().map(Version::mark).unwrap_or_default();
    let state = late::stands(app, &note).await?;
    let known = Typed { made_from, form_key: new_key()?, ..typed.clone() };
    let by = Some(Client::Member(writer.member.id));
    let (again, sent) = (writer.clone(), typed);
    let (place, here) = (Place::Edit(id), Arc::clone(app));
    // As for a history: what takes long to compare waits for its turn.
    let work = move || {
        let late = Late::of((&note, state), why, (&wording, aim));
        let said =
            Remarks { late: Some(late), status: Some(StatusCode::CONFLICT), ..Remarks::default() };
        form_with(&here, writer, &place, &known, said)
    };
    match app.apart.run(by, work).await {
        // No turn came: the form without what stands, to be sent again.
        Err(error @ Error::Occupied) => not_kept(app, again, &Place::Edit(id), &sent, error).await,
        done => done?,
    }
}

/// The form with everything typed, where the note could not be kept: the disk is full, another program
/// holds the file, the note was withdrawn meanwhile, too much came at once. What is nobody's fault must
/// cost nobody their text.
async fn not_kept(
    app: &App,
    writer: Writer,
    place: &Place,
    typed: &Typed,
    error: Error,
) -> Result<Response, Error> {
    // The finder reads what was typed.
    let (asked, typed) = (typed.clone(), typed);
    let questions = aside(move || Wording::questions(&asked)).await?;
    let words = match &error {
        Error::TooManyActs { .. } => {
            format!("The note was not kept: {error}. What you typed is below.")
        }
        Error::Unavailable(_) | Error::Occupied => {
            "The note could not be kept just now. Nothing is lost: send it again in a few seconds."
                .to_owned()
        }
        Error::Full(_) => {
            "The note could not be kept: the server’s disk is full. What you typed is \
                           below; send it again once whoever runs the server has made room."
                .to_owned()
        }
        Error::Conflict(words) => {
            let words = format!("The note was not kept: {words}. What you typed is below");
            if let Some(status) = is_over(app, &writer.member, place).await?.then(|| error.status())
            {
                let words = format!("{words}: sent from here it makes a note of its own.");
                return of_its_own(app, writer, (typed, questions), (status, words));
            }
            format!("{words}.")
        }
        // Nothing is theirs there, perhaps because they signed in as another: it can be a note of its own.
        Error::NotFound(_) => {
            let words = "The note was not kept: this form belongs to a note that is not yours, or is gone. \
                         What you typed is below: sent from here it makes a note of its own.";
            return of_its_own(app, writer, (typed, questions), (error.status(), words.to_owned()));
        }
        // The fault is ours: the log then says what it was.
        _ => return Err(error),
    };
    if let Error::Unavailable(source) | Error::Full(source) = &error {
        tracing::warn!(%source, "a note could not be kept");
    }
    let errors = vec![FieldError::new(TITLE.name, words)];
    let status = Some(error.status());
    let said = Remarks { errors, status, questions, ..Remarks::default() };
    let mut response = form_with(app, writer, place, typed, said)?;
    if let Some(seconds) = error.retry_after() {
        response.headers_mut().insert(RETRY_AFTER, HeaderValue::from(seconds));
    }
    Ok(response)
}

/// The form with everything typed, as that of a note to be: its own can take it no more.
fn of_its_own(
    app: &App,
    writer: Writer,
    (typed, questions): (&Typed, Vec<Question>),
    (status, words): (StatusCode, String),
) -> Result<Response, Error> {
    let typed = Typed { form_key: new_key()?, made_from: String::new(), ..typed.clone() };
    let errors = vec![FieldError::new(TITLE.name, words)];
    let said = Remarks { errors, status: Some(status), questions, ..Remarks::default() };
    form_with(app, writer, &Place::New, &typed, said)
}

/// Whether the note that the form belongs to is withdrawn. The first form of a note is refused for nothing
/// else.
async fn is_over(app: &App, member: &SignedIn, place: &Place) -> Result<bool, Error> {
    let Place::Edit(id) = *place else { return Ok(true) };
    Ok(authored(app, member, id).await?.withdrawn.is_some())
}

/// What was asked of the newest wording of the note, which stays to be seen while its author changes it; nothing of a
/// note that is begun.
async fn asked(app: &App, member: &SignedIn, place: &Place) -> Result<Option<String>, Error> {
    let Place::Edit(id) = *place else { return Ok(None) };
    let note = own(app, member, id).await?;
    let newest = note.on_its_way().or_else(|| note.versions.last());
    Ok(newest.map(|version| version.reason.clone()).filter(|reason| !reason.is_empty()))
}

/// A note of the member's own that can still be changed.
async fn own(app: &App, member: &SignedIn, id: NoteId) -> Result<Note, Error> {
    let note = authored(app, member, id).await?;
    if note.withdrawn.is_some() {
        return Err(Error::Conflict("the note is withdrawn".to_owned()));
    }
    Ok(note)
}

/// A note of the member's own. Of another's nobody learns here whether it exists.
async fn authored(app: &App, member: &SignedIn, id: NoteId) -> Result<Note, Error> {
    let note = read::note(&app.database, id).await?;
    let note = note.filter(|note| note.is_by(member.id));
    note.ok_or(Error::NotFound("there is no note of yours at this address"))
}

/// Whether it could be a key that a form of ours was made with.
fn is_key(text: &str) -> bool {
    (16..=64).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_graphic())
}

fn new_key() -> Result<String, Error> {
    let token = Token::new().map_err(|error| Error::Internal(error.into()))?;
    Ok(token.secret().to_owned())
}
