//! `/notes/new` and `/notes/{id}/edit`: what becomes of a note that is written: previewed, kept on the
//! desk, sent in, or given back with everything typed.
//!
//! The form carries a key made with it, so that sending it twice makes one note. Leaves out how the
//! form looks, which is in [`super::form`].

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::HeaderValue;
use axum::http::header::RETRY_AFTER;
use axum::response::Response;

use super::super::apart::aside;
use super::form::{Place, Remarks, form_with, signed_out, typed};
use super::number::Number;
use super::page::{may_write, see_other};
use crate::db::notes::read::{self, Note};
use crate::db::notes::write;
use crate::extract::{Fields, Member, Reader, WORD, room};
use crate::rules::auth::{SignedIn, Token};
use crate::rules::notes::NoteId;
use crate::rules::notes::belongs::{self, Group};
use crate::rules::notes::fields::{Done, NoteField, TITLE, longest_of_all};
use crate::rules::notes::wording::{Aim, Typed, Wording};
use crate::{App, Error};
use holewright_pages::{FieldError, Query};

/// The bytes of all fields of a note, what it belongs to, its key, a tick and what is to be done.
pub const TAKES: u64 =
    room(&[longest_of_all(), belongs::MOST * belongs::LONGEST, WORD, WORD, WORD]);

/// The form on the thing named in the address, `?on=materials/gunmetal`, and with what the address says
/// of a job, by the names of the fields: `?thread=5+BA&drill=No.+36`. It is only filled in: nothing is
/// kept before it is sent.
///
/// # Errors
/// Nobody is signed in.
pub async fn begin(
    State(app): State<Arc<App>>,
    Member(member): Member,
    RawQuery(query): RawQuery,
) -> Result<Response, Error> {
    let query = Query::read(query.as_deref().unwrap_or_default());
    let things: Vec<_> = belongs::read(query.get("on")).into_iter().collect();
    let title = |group: Group| {
        let thing = things.iter().find(|thing| group.holds(thing));
        thing.map(|thing| thing.title.clone()).unwrap_or_default()
    };
    let said = |field: NoteField| -> String {
        field.filled_in(|name| query.get(name)).chars().take(field.longest).collect()
    };
    let known = |field: NoteField| match said(field) {
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
    form_with(&app, member, &Place::New, &typed, Remarks::default())
}

/// The form filled with the newest wording.
///
/// # Errors
/// Nobody is signed in, or the note is another member's.
pub async fn edit(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(NoteId(id)): Number,
) -> Result<Response, Error> {
    let note = own(&app, &member, NoteId(id)).await?;
    let newest = note.on_its_way().or_else(|| note.versions.last());
    let typed = newest.map(|version| version.wording.typed(&new_key().unwrap_or_default()));
    let asked = newest.map(|version| version.reason.clone()).filter(|reason| !reason.is_empty());
    let said = Remarks { asked, ..Remarks::default() };
    form_with(&app, member, &Place::Edit(NoteId(id)), &typed.unwrap_or_default(), said)
}

/// A new note: previewed, kept on the desk or sent in.
///
/// # Errors
/// It cannot be kept. A form that cannot be read comes back with what was typed.
pub async fn create(
    State(app): State<Arc<App>>,
    reader: Reader,
    fields: Fields,
) -> Result<Response, Error> {
    receive(&app, reader, Place::New, &fields).await
}

/// Another wording of a note: previewed, kept on the desk or sent in.
///
/// # Errors
/// As [`create`].
pub async fn change(
    State(app): State<Arc<App>>,
    reader: Reader,
    Number(NoteId(id)): Number,
    fields: Fields,
) -> Result<Response, Error> {
    receive(&app, reader, Place::Edit(NoteId(id)), &fields).await
}

async fn receive(
    app: &Arc<App>,
    reader: Reader,
    place: Place,
    fields: &Fields,
) -> Result<Response, Error> {
    let mut typed = typed(fields);
    let Reader(Some(member)) = reader else {
        return signed_out(app, &place, typed, fields.as_typed("do"));
    };
    // A key that no form of ours made makes a note of its own.
    if !is_key(&typed.form_key) {
        typed.form_key = new_key()?;
    }
    let aim = match fields.as_typed("do") {
        "send" => Aim::SendIn,
        _ => Aim::Draft,
    };
    let work = move || (Wording::read(&typed, aim), typed);
    let (read, typed) = aside(work).await?;
    let wording = match read {
        Ok(wording) => wording,
        Err(errors) => {
            return form_with(
                app,
                member,
                &place,
                &typed,
                Remarks { errors, ..Remarks::default() },
            );
        }
    };
    if let Place::Edit(id) = place
        && let Err(error) = own(app, &member, id).await
    {
        return not_kept(app, member, &place, &typed, error);
    }
    if fields.as_typed("do") == "preview" {
        let said = Remarks { preview: Some(wording), ..Remarks::default() };
        let app = Arc::clone(app);
        return aside(move || form_with(&app, member, &place, &typed, said)).await?;
    }
    match keep(app, &member, &place, (&typed.form_key, &wording, aim)).await {
        Ok(NoteId(id)) if aim == Aim::Draft => see_other(&format!("/notes/{id}/edit")),
        Ok(NoteId(id)) => see_other(&format!("/notes/mine#note-{id}")),
        Err(error) => not_kept(app, member, &place, &typed, error),
    }
}

async fn keep(
    app: &Arc<App>,
    member: &SignedIn,
    place: &Place,
    (form_key, wording, aim): (&str, &Wording, Aim),
) -> Result<NoteId, Error> {
    may_write(app, member)?;
    let (now, given) = (app.clock.now(), (wording, aim));
    match *place {
        Place::New => Ok(write::new(&app.database, now, member, form_key, given).await?),
        Place::Edit(id) => {
            write::edit(&app.database, now, member, id, given).await?;
            Ok(id)
        }
    }
}

/// The form with everything typed, where the note could not be kept: the disk is full, another program
/// holds the file, the note was withdrawn meanwhile, too much came at once. What is nobody's fault must
/// cost nobody their text.
fn not_kept(
    app: &App,
    member: SignedIn,
    place: &Place,
    typed: &Typed,
    error: Error,
) -> Result<Response, Error> {
    let words = match &error {
        Error::TooManyActs { .. } => {
            format!("The note was not kept: {error}. What you typed is below.")
        }
        Error::Unavailable(_) => {
            "The note could not be kept just now. Nothing is lost: send it again in a few seconds."
                .to_owned()
        }
        Error::Full(_) => {
            "The note could not be kept: the server’s disk is full. What you typed is \
                           below; send it again once whoever runs the server has made room."
                .to_owned()
        }
        Error::Conflict(words) => {
            format!("The note was not kept: {words}. What you typed is below.")
        }
        // Nothing is theirs there, perhaps because they signed in as another: it can be a note of its own.
        Error::NotFound(_) => {
            let typed = Typed { form_key: new_key()?, ..typed.clone() };
            let words = "The note was not kept: this form belongs to a note that is not yours, or is gone. \
                         What you typed is below: sent from here it makes a note of its own.";
            let errors = vec![FieldError::new(TITLE.name, words)];
            let said = Remarks { errors, status: Some(error.status()), ..Remarks::default() };
            return form_with(app, member, &Place::New, &typed, said);
        }
        // The fault is ours: the log then says what it was.
        _ => return Err(error),
    };
    if let Error::Unavailable(source) | Error::Full(source) = &error {
        tracing::warn!(%source, "a note could not be kept");
    }
    let errors = vec![FieldError::new(TITLE.name, words)];
    let said = Remarks { errors, status: Some(error.status()), ..Remarks::default() };
    let mut response = form_with(app, member, place, typed, said)?;
    if let Some(seconds) = error.retry_after() {
        response.headers_mut().insert(RETRY_AFTER, HeaderValue::from(seconds));
    }
    Ok(response)
}

/// A note of the member's own that can still be changed. Of another's nobody learns here whether it
/// exists.
async fn own(app: &App, member: &SignedIn, id: NoteId) -> Result<Note, Error> {
    let note = read::note(&app.database, id).await?;
    let note = note.filter(|note| note.is_by(member.id));
    let note = note.ok_or(Error::NotFound("there is no note of yours at this address"))?;
    if note.withdrawn_why.is_some() {
        return Err(Error::Conflict("the note is withdrawn: write another".to_owned()));
    }
    Ok(note)
}

/// Whether it could be a key that a form of ours was made with.
fn is_key(text: &str) -> bool {
    (16..=64).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_graphic())
}

fn new_key() -> Result<String, Error> {
    let token = Token::new().map_err(|error| Error::Internal(error.into()))?;
    Ok(token.secret().to_owned())
}
