//! A wording kept on its author's desk, or sent in. The same form sent twice makes one note.

use sqlx::{Sqlite, Transaction};

use super::{Error, current, read, wordings};
use crate::db::{Database, acts};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::state::{Act, OnItsWay, Refused};
use crate::rules::notes::wording::{Aim, Wording};
use crate::rules::notes::{NoteId, VersionId};

/// Keeps a new note, or finds what the form made the first time it was sent with these words. With other
/// words it makes another note: whoever goes back in the browser and writes anew loses nothing.
///
/// # Errors
/// The form is another member's, the rules are against it, or the database cannot be written.
pub async fn new(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    form_key: &str,
    given: (&Wording, Aim),
) -> Result<NoteId, Error> {
    let (wording, _) = given;
    let mut transaction = database.write().await?;
    let note = match made_by(&mut transaction, now, by, form_key).await? {
        Made::Now(note) => note,
        Made::Before(note) if holds(&mut transaction, note, wording).await? => note,
        Made::Before(_) => {
            let key = wording.key_beside(form_key);
            let (Made::Now(note) | Made::Before(note)) =
                made_by(&mut transaction, now, by, &key).await?;
            note
        }
    };
    put(&mut transaction, now, by, note, given).await?;
    database.commit(transaction).await?;
    Ok(note)
}

/// A note of the member's with this key.
enum Made {
    /// It was made for it.
    Now(NoteId),
    /// It was there.
    Before(NoteId),
}

async fn made_by(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: &SignedIn,
    form_key: &str,
) -> Result<Made, Error> {
    let MemberId(member) = by.id;
    let made = sqlx::query_scalar!(
        "INSERT INTO note (author_id, form_key, made_at) VALUES (?, ?, ?)
         ON CONFLICT (form_key) DO NOTHING RETURNING id",
        member,
        form_key,
        now
    )
    .fetch_optional(&mut **transaction)
    .await?;
    if let Some(id) = made {
        let subject = format!("note/{id}");
        let by = Some((by.id, by.name.as_str()));
        acts::record(transaction, now, by, "note-begun", &subject, "").await?;
        return Ok(Made::Now(NoteId(id)));
    }
    let before = sqlx::query_scalar!(
        r#"SELECT id AS "id!" FROM note WHERE form_key = ? AND author_id = ?"#,
        form_key,
        member
    )
    .fetch_optional(&mut **transaction)
    .await?;
    before.map(|id| Made::Before(NoteId(id))).ok_or(Refused::NotYours.into())
}

/// Whether some wording of the note has these words.
async fn holds(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
    wording: &Wording,
) -> Result<bool, Error> {
    let versions = read::versions(transaction, note).await?;
    Ok(versions.is_empty() || versions.iter().any(|version| version.wording == *wording))
}

/// Keeps another wording of a note.
///
/// # Errors
/// As [`new`].
pub async fn edit(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    given: (&Wording, Aim),
) -> Result<(), Error> {
    let mut transaction = database.write().await?;
    put(&mut transaction, now, by, note, given).await?;
    database.commit(transaction).await?;
    Ok(())
}

async fn put(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    (wording, aim): (&Wording, Aim),
) -> Result<(), Error> {
    let current = current::read(transaction, note, by).await?;
    let act = match aim {
        Aim::Draft => Act::Save,
        Aim::SendIn => Act::SendIn(wording.subject),
    };
    let after = current.check(act, by)?;
    let subject = match after.on_its_way {
        Some(OnItsWay::Waiting(subject)) => subject,
        _ => wording.subject,
    };
    let wording = &Wording { subject, ..wording.clone() };
    if is_there_already(transaction, note, wording, aim).await? {
        return Ok(());
    }
    match (current.state.on_its_way, current.on_its_way, aim) {
        (Some(OnItsWay::Draft), Some(version), Aim::Draft) => {
            wordings::write(transaction, now, VersionId(version), (wording, state(aim))).await?;
        }
        // Somebody may have read what is there: the waiting one, or one that came back to the desk with
        // what to change. It goes, and what comes has another number, so that nobody decides about what
        // they did not read.
        (_, Some(version), _) => {
            sqlx::query!("DELETE FROM note_version WHERE id = ?", version)
                .execute(&mut **transaction)
                .await?;
            insert(transaction, now, note, wording, aim).await?;
        }
        (_, None, _) => insert(transaction, now, note, wording, aim).await?,
    }
    if aim == Aim::SendIn {
        let subject = format!("note/{}", note.0);
        let by = Some((by.id, by.name.as_str()));
        acts::record(transaction, now, by, "note-sent-in", &subject, &wording.title).await?;
    }
    Ok(())
}

/// Whether the newest wording is this one and stands where it should: the form came twice.
async fn is_there_already(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
    wording: &Wording,
    aim: Aim,
) -> Result<bool, Error> {
    let versions = read::versions(transaction, note).await?;
    Ok(versions.last().is_some_and(|newest| {
        let stands = match aim {
            Aim::Draft => {
                matches!(newest.state, read::WordingState::Draft | read::WordingState::Shown)
            }
            Aim::SendIn => newest.state != read::WordingState::Draft,
        };
        stands && newest.wording == *wording
    }))
}

async fn insert(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    NoteId(note): NoteId,
    wording: &Wording,
    aim: Aim,
) -> Result<(), Error> {
    let id = sqlx::query_scalar!(
        r#"INSERT INTO note_version (note_id, state, title, text, made_at, saved_at)
           VALUES (?1, 'draft', '', '', ?2, ?2) RETURNING id AS "id!""#,
        note,
        now
    )
    .fetch_one(&mut **transaction)
    .await?;
    wordings::write(transaction, now, VersionId(id), (wording, state(aim))).await
}

/// Where the wording then stands, as the database has it.
const fn state(aim: Aim) -> &'static str {
    match aim {
        Aim::Draft => "draft",
        Aim::SendIn => "waiting",
    }
}
