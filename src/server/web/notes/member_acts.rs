//! What a member does to a note on its page: count a verdict, report a danger, correct, withdraw.

use std::sync::Arc;

use axum::extract::State;
use axum::response::Response;

use super::number::Number;
use super::page::{may_write, see_other};
use super::show::{Back, Seen, answer, seen};
use crate::db::notes::after::{self, Found, Verdict};
use crate::db::notes::decide::Reviewed;
use crate::db::notes::{Words, read};
use crate::extract::{Fields, Member, Reader};
use crate::rules::auth::SignedIn;
use crate::rules::notes::wording;
use crate::rules::notes::{NoteId, VersionId};
use crate::{App, Error};
use holewright_pages::FieldError;

/// The longest material or size of a verdict.
const LONGEST_LINE: usize = 100;
/// The longest reason or report.
const LONGEST_REASON: usize = 2000;
/// The longest correction.
const LONGEST_CORRECTION: usize = 5000;

/// Counts what the member found, or changes what they said before.
///
/// # Errors
/// The note is not there for them, or is their own.
pub async fn judge(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let [material, size] = ["material", "size"].map(|name| wording::line(fields.as_typed(name)));
    let found = match fields.as_typed("found") {
        "worked" => Some(Found::Worked),
        "did-not" => Some(Found::DidNot),
        _ => None,
    };
    let mut errors = Vec::new();
    if found.is_none() {
        errors.push(FieldError::new("found", "Say whether it worked or did not."));
    }
    for (field, typed) in [("material", &material), ("size", &size)] {
        if typed.chars().count() > LONGEST_LINE {
            errors
                .push(FieldError::new(field, format!("{LONGEST_LINE} characters are taken here.")));
        }
    }
    let (Some(found), []) = (found, errors.as_slice()) else {
        let back =
            Back { errors, typed: vec![("material", material), ("size", size)], status: None };
        return answer(&app, Reader(Some(member)), id, back).await;
    };
    may_write(&app, &member)?;
    let verdict = Verdict { found, material, size };
    after::judge(&app.database, app.clock.now(), &member, id, &verdict).await?;
    app.shown.changed();
    see_other(&format!("/notes/{}", id.0))
}

/// Hides the note at once, until somebody has looked.
///
/// # Errors
/// As [`judge`].
pub async fn report(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let danger = match reason(&fields, "danger", "Say what could hurt somebody.", LONGEST_REASON) {
        Ok(danger) => danger,
        Err(back) => return answer(&app, Reader(Some(member)), id, back).await,
    };
    may_write(&app, &member)?;
    let done = after::report(&app.database, app.clock.now(), &member, id, &danger).await;
    finish(&app, member, id, done.map_err(Error::from), ("danger", danger)).await
}

/// Takes the note back, with the reason.
///
/// # Errors
/// As [`judge`], or it takes a moderator.
pub async fn withdraw(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let why =
        match reason(&fields, "why", "Say why: readers of its address are told.", LONGEST_REASON) {
            Ok(why) => why,
            Err(back) => return answer(&app, Reader(Some(member)), id, back).await,
        };
    may_write(&app, &member)?;
    let done = after::withdraw(&app.database, app.clock.now(), &member, id, &why).await;
    finish(&app, member, id, done.map_err(Error::from), ("why", why)).await
}

/// Puts a correction above the text.
///
/// # Errors
/// As [`withdraw`]; or another wording stands there meanwhile.
pub async fn correct(
    State(app): State<Arc<App>>,
    Member(member): Member,
    Number(id): Number,
    fields: Fields,
) -> Result<Response, Error> {
    let said =
        match reason(&fields, "correction", "Write what is right instead.", LONGEST_CORRECTION) {
            Ok(said) => said,
            Err(back) => return answer(&app, Reader(Some(member)), id, back).await,
        };
    may_write(&app, &member)?;
    let version = VersionId(fields.as_typed("version").parse().unwrap_or_default());
    let words = match words(&app, &member, id, version, &said).await {
        Ok(words) => words,
        Err(error) => return finish(&app, member, id, Err(error), ("correction", said)).await,
    };
    let reading = Reviewed { note: id, version, by: &member, now: app.clock.now() };
    let done = after::correct(&app.database, reading, &said, &words).await.map_err(Error::from);
    finish(&app, member, id, done, ("correction", said)).await
}

/// Back to the note after something was done; where it could not be done as things stand, with what was
/// typed.
async fn finish(
    app: &Arc<App>,
    member: SignedIn,
    id: NoteId,
    done: Result<(), Error>,
    (name, typed): (&'static str, String),
) -> Result<Response, Error> {
    match done {
        Ok(()) => {
            app.shown.changed();
            see_other(&format!("/notes/{}", id.0))
        }
        Err(error @ (Error::Conflict(_) | Error::Unavailable(_) | Error::Full(_))) => {
            if let Error::Unavailable(source) | Error::Full(source) = &error {
                tracing::warn!(%source, "what a member did could not be kept");
            }
            let errors = vec![FieldError::new(name, format!("Nothing was done: {error}."))];
            let back = Back { errors, typed: vec![(name, typed)], status: Some(error.status()) };
            answer(app, Reader(Some(member)), id, back).await
        }
        Err(error) => Err(error),
    }
}

/// The words by which the note will be found, with this correction above the others.
async fn words(
    app: &App,
    member: &SignedIn,
    id: NoteId,
    version: VersionId,
    correction: &str,
) -> Result<Words, Error> {
    const NOTHING: Error = Error::NotFound("there is no note at this address");
    let note = read::note(&app.database, id).await?.ok_or(NOTHING)?;
    if matches!(seen(&note, Some(member)), Seen::Nothing) {
        return Err(NOTHING);
    }
    let corrections = note.standing_corrections().map(|said| said.text.as_str());
    let held = note.versions.iter().find(|held| held.id == version);
    let words =
        held.map(|held| Words::of(&held.wording, [correction].into_iter().chain(corrections)));
    words.ok_or_else(|| {
        Error::Conflict("the note has been changed meanwhile: read it first".to_owned())
    })
}

/// A text that must be given.
fn reason(
    fields: &Fields,
    name: &'static str,
    missing: &str,
    longest: usize,
) -> Result<String, Back> {
    let text = wording::text(fields.as_typed(name));
    let length = text.chars().count();
    let message = match length {
        _ if text.trim().is_empty() => missing.to_owned(),
        _ if length > longest => format!("That is {length} characters; {longest} are taken."),
        _ => return Ok(text),
    };
    Err(Back {
        errors: vec![FieldError::new(name, message)],
        typed: vec![(name, text)],
        status: None,
    })
}
