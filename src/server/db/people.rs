//! The members as the secretary sees them, and what the secretary does.
//!
//! A club always keeps a secretary who can sign in: what would take the last one away changes
//! nothing, and is looked at in the transaction of the change itself.

use sqlx::{Sqlite, Transaction};

use super::notes::{remarks, verdicts};
use super::{Database, Error, acts, feeds, sessions, spare_codes};
use crate::rules::auth::{MemberId, Rights, SignedIn};
use crate::rules::clock::UnixSeconds;

/// A member in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Person {
    /// Number.
    pub id: MemberId,
    /// The name shown.
    pub name: String,
    /// Rights.
    pub rights: Rights,
    /// When they joined.
    pub joined_at: UnixSeconds,
    /// When the secretary stopped them signing in.
    pub stopped_at: Option<UnixSeconds>,
    /// Whether a second factor is set up.
    pub has_second_factor: bool,
    /// When they were last seen, to the hour, if a session of theirs stands.
    pub seen_at: Option<UnixSeconds>,
    /// Notes they have written.
    pub notes: i64,
}

/// What came of a change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// It is done.
    Done,
    /// It would leave the club without a secretary: nothing is changed.
    LastSecretary,
    /// There is no such member.
    NoSuchMember,
}

/// What becomes of a leaver's notes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Notes {
    /// They stay, as those of a former member.
    Keep,
    /// They go.
    Remove,
}

/// The flags of a row as rights.
pub(super) fn rights(moderator: i64, inspector: i64, secretary: i64) -> Rights {
    Rights { moderator: moderator != 0, inspector: inspector != 0, secretary: secretary != 0 }
}

/// The rights in words for the record: `member, moderator`.
pub(super) fn in_words(rights: Rights) -> String {
    let named = [
        ("moderator", rights.moderator),
        ("inspector", rights.inspector),
        ("secretary", rights.secretary),
    ];
    let held = named.iter().filter(|(_, held)| *held).map(|(name, _)| *name);
    ["member"].into_iter().chain(held).collect::<Vec<_>>().join(", ")
}

/// How many secretaries can sign in.
pub(super) async fn secretaries(transaction: &mut Transaction<'_, Sqlite>) -> Result<i64, Error> {
    Ok(sqlx::query_scalar!(
        "SELECT COUNT(*) FROM member WHERE is_secretary = 1 AND stopped_at IS NULL"
    )
    .fetch_one(&mut **transaction)
    .await?)
}

/// Every member, by name.
///
/// # Errors
/// The database cannot be read.
pub async fn all(database: &Database) -> Result<Vec<Person>, Error> {
    let rows = sqlx::query!(
        r#"SELECT id AS "id!", name AS "name!", is_moderator AS "is_moderator!",
             is_inspector AS "is_inspector!", is_secretary AS "is_secretary!",
             joined_at AS "joined_at!", stopped_at,
             totp_secret IS NOT NULL AS "has_second_factor!: bool",
             (SELECT MAX(seen_at) FROM session WHERE session.member_id = member.id)
               AS "seen_at: i64",
             (SELECT COUNT(*) FROM note WHERE note.author_id = member.id) AS "notes!: i64"
           FROM member ORDER BY name_key"#
    )
    .fetch_all(&database.readers)
    .await?;
    let person = rows.into_iter().map(|row| Person {
        id: MemberId(row.id),
        name: row.name,
        rights: rights(row.is_moderator, row.is_inspector, row.is_secretary),
        joined_at: row.joined_at,
        stopped_at: row.stopped_at,
        has_second_factor: row.has_second_factor,
        seen_at: row.seen_at,
        notes: row.notes,
    });
    Ok(person.collect())
}

/// One member.
///
/// # Errors
/// The database cannot be read.
pub async fn one(database: &Database, id: MemberId) -> Result<Option<Person>, Error> {
    // A club has some hundred members: the list is one page of the file.
    Ok(all(database).await?.into_iter().find(|person| person.id == id))
}

/// The name of a member who was removed, as the record has it.
///
/// # Errors
/// The database cannot be read.
pub async fn removed(database: &Database, MemberId(id): MemberId) -> Result<Option<String>, Error> {
    let subject = format!("member/{id}");
    let detail = sqlx::query_scalar!(
        "SELECT detail FROM act WHERE subject = ? AND what = 'member-removed' ORDER BY id DESC LIMIT 1",
        subject
    )
    .fetch_optional(&database.readers)
    .await?;
    Ok(detail.and_then(|detail| Some(detail.rsplit_once(": ")?.0.to_owned())))
}

/// Gives a member these rights. Their sessions end, so that a new one bears the new rights; the
/// secretary's own, where it is their own rights that change, is left.
///
/// # Errors
/// The database cannot be written.
pub async fn set_rights(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    member: MemberId,
    rights: Rights,
) -> Result<Change, Error> {
    let id = member.0;
    let mut transaction = database.write().await?;
    let changed = sqlx::query!(
        "UPDATE member SET is_moderator = ?, is_inspector = ?, is_secretary = ? WHERE id = ?",
        rights.moderator,
        rights.inspector,
        rights.secretary,
        id
    )
    .execute(&mut *transaction)
    .await?;
    if changed.rows_affected() == 0 {
        return Ok(Change::NoSuchMember);
    }
    let act = Act { now, by, member, what: "rights-given", detail: &in_words(rights) };
    if !rights.secretary {
        end_slips_by(&mut transaction, member).await?;
    }
    sessions::end_all(&mut transaction, member).await?;
    act.finish(database, transaction).await
}

/// Stops a member signing in. Whoever is signed in is out at the next request.
///
/// # Errors
/// The database cannot be written.
pub async fn stop(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    member: MemberId,
) -> Result<Change, Error> {
    let id = member.0;
    let mut transaction = database.write().await?;
    let changed = sqlx::query!(
        "UPDATE member SET stopped_at = COALESCE(stopped_at, ?) WHERE id = ?",
        now,
        id
    )
    .execute(&mut *transaction)
    .await?;
    if changed.rows_affected() == 0 {
        return Ok(Change::NoSuchMember);
    }
    sessions::end_all(&mut transaction, member).await?;
    // As their sessions: allowed again, they ask for another address.
    feeds::forget(&mut transaction, member).await?;
    end_slips_by(&mut transaction, member).await?;
    Act { now, by, member, what: "member-stopped", detail: "" }.finish(database, transaction).await
}

/// Lets a member sign in again.
///
/// # Errors
/// The database cannot be written.
pub async fn allow(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    member: MemberId,
) -> Result<Change, Error> {
    let id = member.0;
    let mut transaction = database.write().await?;
    let changed = sqlx::query!("UPDATE member SET stopped_at = NULL WHERE id = ?", id)
        .execute(&mut *transaction)
        .await?;
    if changed.rows_affected() == 0 {
        return Ok(Change::NoSuchMember);
    }
    Act { now, by, member, what: "member-allowed", detail: "" }.finish(database, transaction).await
}

/// Takes a member's second factor away: their device is lost. They set up another.
///
/// # Errors
/// The database cannot be written.
pub async fn drop_second_factor(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    member: MemberId,
) -> Result<Change, Error> {
    let id = member.0;
    let mut transaction = database.write().await?;
    let changed =
        sqlx::query!("UPDATE member SET totp_secret = NULL, totp_step = NULL WHERE id = ?", id)
            .execute(&mut *transaction)
            .await?;
    if changed.rows_affected() == 0 {
        return Ok(Change::NoSuchMember);
    }
    spare_codes::drop_all(&mut transaction, member).await?;
    sessions::end_all(&mut transaction, member).await?;
    Act { now, by, member, what: "second-factor-dropped", detail: "" }
        .finish(database, transaction)
        .await
}

/// Removes a member: by the secretary, or by themselves.
///
/// # Errors
/// The database cannot be written.
pub async fn remove(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    member: MemberId,
    notes: Notes,
) -> Result<Change, Error> {
    let id = member.0;
    let mut transaction = database.write().await?;
    match notes {
        Notes::Keep => drop_drafts(&mut transaction, id).await?,
        Notes::Remove => drop_notes(&mut transaction, id).await?,
    }
    let detail = match notes {
        Notes::Keep => "notes kept",
        Notes::Remove => "notes removed",
    };
    verdicts::forget(&mut transaction, member).await?;
    remarks::forget(&mut transaction, member, notes == Notes::Keep).await?;
    end_slips_by(&mut transaction, member).await?;
    // Written before the member goes, so that a leaver's own act still points at them.
    let act = Act { now, by, member, what: "member-removed", detail };
    act.record(&mut transaction).await?;
    let removed =
        sqlx::query!("DELETE FROM member WHERE id = ?", id).execute(&mut *transaction).await?;
    if removed.rows_affected() == 0 {
        return Ok(Change::NoSuchMember);
    }
    commit_with_a_secretary(database, transaction).await
}

/// Makes void every open slip that this member made: who may no longer let anybody in has let nobody in.
async fn end_slips_by(
    transaction: &mut Transaction<'_, Sqlite>,
    MemberId(member): MemberId,
) -> Result<(), Error> {
    sqlx::query!("DELETE FROM slip WHERE made_by = ? AND used_at IS NULL", member)
        .execute(&mut **transaction)
        .await?;
    Ok(())
}

/// What was never sent in is nobody's business but the leaver's.
async fn drop_drafts(transaction: &mut Transaction<'_, Sqlite>, id: i64) -> Result<(), Error> {
    sqlx::query!(
        "DELETE FROM note WHERE author_id = ? AND NOT EXISTS
           (SELECT 1 FROM note_version WHERE note_id = note.id AND state <> 'draft')",
        id
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!(
        "DELETE FROM note_version WHERE state = 'draft'
           AND note_id IN (SELECT id FROM note WHERE author_id = ?)",
        id
    )
    .execute(&mut **transaction)
    .await?;
    Ok(())
}

async fn drop_notes(transaction: &mut Transaction<'_, Sqlite>, id: i64) -> Result<(), Error> {
    sqlx::query!(
        "DELETE FROM note_text WHERE rowid IN (SELECT id FROM note WHERE author_id = ?)",
        id
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!("DELETE FROM note WHERE author_id = ?", id).execute(&mut **transaction).await?;
    Ok(())
}

/// An act of the secretary on a member.
struct Act<'a> {
    now: UnixSeconds,
    by: &'a SignedIn,
    member: MemberId,
    what: &'static str,
    detail: &'a str,
}

impl Act<'_> {
    async fn record(&self, transaction: &mut Transaction<'_, Sqlite>) -> Result<(), Error> {
        let MemberId(id) = self.member;
        let name = sqlx::query_scalar!("SELECT name FROM member WHERE id = ?", id)
            .fetch_optional(&mut **transaction)
            .await?
            .unwrap_or_default();
        let by = Some((self.by.id, self.by.name.as_str()));
        let detail = [name.as_str(), self.detail].map(str::to_owned);
        let detail: Vec<String> = detail.into_iter().filter(|part| !part.is_empty()).collect();
        let subject = format!("member/{id}");
        acts::record(transaction, self.now, by, self.what, &subject, &detail.join(": ")).await
    }

    async fn finish(
        self,
        database: &Database,
        mut transaction: Transaction<'static, Sqlite>,
    ) -> Result<Change, Error> {
        self.record(&mut transaction).await?;
        commit_with_a_secretary(database, transaction).await
    }
}

/// Commits, unless the club would be left without a secretary: then all is as it was.
async fn commit_with_a_secretary(
    database: &Database,
    mut transaction: Transaction<'static, Sqlite>,
) -> Result<Change, Error> {
    if secretaries(&mut transaction).await? == 0 {
        transaction.rollback().await?;
        return Ok(Change::LastSecretary);
    }
    database.commit(transaction).await?;
    Ok(Change::Done)
}
