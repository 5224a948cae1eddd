//! A wording kept on its author's desk, or sent in. The same form sent twice makes one note.

use std::collections::HashSet;

use sqlx::{Sqlite, Transaction};

use super::wordings::{self, Written};
use super::{Error, current, read};
use crate::db::{Database, acts};
use crate::rules::auth::{MemberId, SignedIn};
use crate::rules::clock::UnixSeconds;
use crate::rules::notes::again::{Comes, MadeFrom, Newest, Stands, comes};
use crate::rules::notes::state::{Act, OnItsWay, Refused, StandIns};
use crate::rules::notes::tips::Tip;
use crate::rules::notes::wording::{Aim, Wording};
use crate::rules::notes::{NoteId, VersionId};

/// A form of a note as it was sent.
#[derive(Clone, Copy, Debug)]
pub struct Sent<'a> {
    /// The wording.
    pub wording: &'a Wording,
    /// What its author wants with it.
    pub aim: Aim,
    /// Drawn with the form.
    pub form_key: &'a str,
    /// What the form was filled with.
    pub made_from: MadeFrom<'a>,
}

/// What became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[must_use]
pub enum Outcome {
    /// It stands, in this note.
    Kept(NoteId),
    /// Nothing was written: its author has not read what stands in this note.
    Late(NoteId),
    /// Nothing was written: these very words were declined, in this note.
    Declined(NoteId),
}

/// Keeps a new note, or finds what the form made the first time it was sent with these words. With other
/// words it makes another note: whoever goes back in the browser and writes anew loses nothing. Where its
/// words were kept and their author has gone on from them, what they wrote since is not touched.
///
/// # Errors
/// The form is another member's, the rules are against it, or the database cannot be written.
pub async fn new(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    sent: Sent<'_>,
) -> Result<Outcome, Error> {
    let mut transaction = database.write().await?;
    let stand_ins = current::stand_ins(&mut transaction, by.id).await?;
    let outcome = one(&mut transaction, now, (by, stand_ins), sent).await?;
    database.commit(transaction).await?;
    Ok(outcome)
}

/// What became of several.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Put {
    /// In which note each stands, if it does, in their order.
    pub stand: Vec<Option<NoteId>>,
    /// How many notes were made: the others stood already.
    pub made: usize,
}

/// Sends in several notes at once, all or none. One whose words were declined, or whose note was withdrawn, stays as
/// it is.
///
/// # Errors
/// As [`new`].
pub async fn several(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    tips: &[Tip],
) -> Result<Put, Error> {
    let mut transaction = database.write().await?;
    let stand_ins = current::stand_ins(&mut transaction, by.id).await?;
    let newest = sqlx::query_scalar!(r#"SELECT coalesce(max(id), 0) AS "id!: i64" FROM note"#)
        .fetch_one(&mut *transaction)
        .await?;
    let mut stand = Vec::with_capacity(tips.len());
    for Tip { wording, form_key } in tips {
        let sent = Sent { wording, aim: Aim::SendIn, form_key, made_from: MadeFrom::Nothing };
        match one(&mut transaction, now, (by, stand_ins), sent).await {
            Ok(Outcome::Kept(note)) => stand.push(Some(note)),
            Ok(Outcome::Late(_) | Outcome::Declined(_)) | Err(Error::Refused(_)) => {
                stand.push(None)
            }
            Err(error) => return Err(error),
        }
    }
    database.commit(transaction).await?;
    let made = stand.iter().flatten().filter(|note| note.0 > newest).collect::<HashSet<_>>().len();
    Ok(Put { stand, made })
}

async fn one(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    (by, stand_ins): (&SignedIn, StandIns),
    sent: Sent<'_>,
) -> Result<Outcome, Error> {
    let mut key = sent.form_key.to_owned();
    let note = loop {
        let note = match made_by(transaction, now, by, &key).await? {
            Made::Now(note) => break note,
            Made::Before(note) => note,
        };
        let versions = read::versions(transaction, note).await?;
        let is_it = |version: &read::Version| version.wording == *sent.wording;
        if versions.last().is_none_or(is_it) {
            break note;
        }
        if versions.iter().any(is_it) {
            return Ok(Outcome::Kept(note));
        }
        key = sent.wording.key_beside(&key);
    };
    put(transaction, now, (by, stand_ins), note, sent).await
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

/// Keeps another wording of a note.
///
/// # Errors
/// As [`new`].
pub async fn edit(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    note: NoteId,
    sent: Sent<'_>,
) -> Result<Outcome, Error> {
    let mut transaction = database.write().await?;
    let stand_ins = current::stand_ins(&mut transaction, by.id).await?;
    let outcome = put(&mut transaction, now, (by, stand_ins), note, sent).await?;
    database.commit(transaction).await?;
    Ok(outcome)
}

async fn put(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    (by, stand_ins): (&SignedIn, StandIns),
    note: NoteId,
    sent: Sent<'_>,
) -> Result<Outcome, Error> {
    let current = current::one_of_many(transaction, note, by, stand_ins).await?;
    let act = match sent.aim {
        Aim::Draft => Act::Save,
        Aim::SendIn => Act::SendIn(sent.wording.subject),
    };
    let after = current.check(act, by)?;
    let subject = match after.on_its_way {
        Some(OnItsWay::Waiting(subject)) => subject,
        _ => sent.wording.subject,
    };
    let wording = &Wording { subject, ..sent.wording.clone() };
    let sent = Sent { wording, ..sent };
    match becomes(transaction, note, sent).await? {
        Comes::New => {}
        Comes::Twice => return Ok(Outcome::Kept(note)),
        Comes::Late => return Ok(Outcome::Late(note)),
        Comes::Declined => return Ok(Outcome::Declined(note)),
    }
    match (current.state.on_its_way, current.on_its_way, sent.aim) {
        (Some(OnItsWay::Draft), Some(version), Aim::Draft) => {
            wordings::write(transaction, now, VersionId(version), written(sent)).await?;
        }
        // Somebody may have read what is there: the waiting one, or one that came back to the desk with
        // what to change. It goes, and what comes has another number, so that nobody decides about what
        // they did not read.
        (_, Some(version), _) => {
            sqlx::query!("DELETE FROM note_version WHERE id = ?", version)
                .execute(&mut **transaction)
                .await?;
            insert(transaction, now, note, sent).await?;
        }
        (_, None, _) => insert(transaction, now, note, sent).await?,
    }
    if sent.aim == Aim::SendIn {
        let subject = format!("note/{}", note.0);
        let by = Some((by.id, by.name.as_str()));
        acts::record(transaction, now, by, "note-sent-in", &subject, &wording.title).await?;
    }
    Ok(Outcome::Kept(note))
}

/// What becomes of a form beside the newest wording of its note.
async fn becomes(
    transaction: &mut Transaction<'_, Sqlite>,
    note: NoteId,
    sent: Sent<'_>,
) -> Result<Comes, Error> {
    let versions = read::versions(transaction, note).await?;
    let Some(newest) = versions.last() else { return Ok(Comes::New) };
    let mark = newest.mark();
    let beside = Newest {
        stands: match newest.state {
            read::WordingState::Draft => Stands::Desk,
            read::WordingState::Waiting => Stands::Queue,
            read::WordingState::Shown | read::WordingState::Replaced => Stands::Shown,
            read::WordingState::Declined => Stands::Declined,
        },
        mark: &mark,
        is_the_same: newest.wording == *sent.wording,
        is_of_this_form: newest.form_key == sent.form_key,
        has_reason: !newest.reason.is_empty(),
    };
    Ok(comes(sent.aim, sent.made_from, beside))
}

async fn insert(
    transaction: &mut Transaction<'_, Sqlite>,
    now: UnixSeconds,
    NoteId(note): NoteId,
    sent: Sent<'_>,
) -> Result<(), Error> {
    let id = sqlx::query_scalar!(
        r#"INSERT INTO note_version (note_id, state, title, text, made_at, saved_at)
           VALUES (?1, 'draft', '', '', ?2, ?2) RETURNING id AS "id!""#,
        note,
        now
    )
    .fetch_one(&mut **transaction)
    .await?;
    wordings::write(transaction, now, VersionId(id), written(sent)).await
}

/// As the database has it.
const fn written(sent: Sent<'_>) -> Written<'_> {
    let Sent { wording, aim, form_key, .. } = sent;
    let state = match aim {
        Aim::Draft => "draft",
        Aim::SendIn => "waiting",
    };
    Written { wording, state, form_key }
}
