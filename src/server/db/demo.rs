//! The demonstration club in the database: its members put into an empty club, and all of it taken away.
//!
//! Its members are those of the acts `demo-made`: a member's number is never used again. Its notes
//! are those whose form's key begins as [`KEY`] does, which no form that a page makes does.

use sqlx::{Sqlite, Transaction};

use super::{Database, Error, acts};
use crate::rules::auth::{MemberId, Name, Rights};
use crate::rules::clock::UnixSeconds;

/// How the form's key of each of its notes begins.
pub const KEY: &str = "demonstration-";

/// What the club says of itself: its name, its place, its welcome.
const SAYS: [&str; 3] = [
    "Marlbeck Model Engineers",
    "The Old Mill, Marlbeck",
    "An invented club, to look round in: nobody and nothing here is real.",
];

/// How many members and notes there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Counted {
    /// Members.
    pub members: i64,
    /// Notes, shown or not.
    pub notes: i64,
}

/// A member about to be made.
#[derive(Clone, Debug)]
pub struct Newcomer {
    /// Their name.
    pub name: Name,
    /// What they may do.
    pub rights: Rights,
    /// Their password's hash.
    pub password_hash: String,
    /// When they joined.
    pub joined_at: UnixSeconds,
}

/// What came of making the members.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Made {
    /// Their numbers, in the order given.
    Members(Vec<MemberId>),
    /// The club is not empty: nothing is changed.
    NotEmpty(Counted),
}

/// What came of taking the demonstration away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Removed {
    /// So much is gone.
    Gone(Counted),
    /// There is none.
    NoDemo,
    /// So many others are beside it: nothing is changed.
    Others(Counted),
}

/// Makes the members of the demonstration in a club that has neither member nor note.
///
/// # Errors
/// The database cannot be written.
pub async fn make_members(
    database: &Database,
    now: UnixSeconds,
    newcomers: &[Newcomer],
) -> Result<Made, Error> {
    let mut transaction = database.write().await?;
    let counted = count(&mut transaction).await?;
    if counted != (Counted { members: 0, notes: 0 }) {
        return Ok(Made::NotEmpty(counted));
    }
    let mut made = Vec::with_capacity(newcomers.len());
    for newcomer in newcomers {
        let (shown, key) = (newcomer.name.shown(), newcomer.name.key());
        let id = sqlx::query!(
            "INSERT INTO member (name, name_key, password_hash, is_moderator, is_inspector, is_secretary,
               joined_at) VALUES (?, ?, ?, ?, ?, ?, ?)",
            shown,
            key,
            newcomer.password_hash,
            newcomer.rights.moderator,
            newcomer.rights.inspector,
            newcomer.rights.secretary,
            newcomer.joined_at
        )
        .execute(&mut *transaction)
        .await?
        .last_insert_rowid();
        let subject = format!("member/{id}");
        acts::record(&mut transaction, now, None, "demo-made", &subject, shown).await?;
        made.push(MemberId(id));
    }
    let [name, place, welcome] = SAYS;
    sqlx::query!(
        "UPDATE club SET name = ?, place = ?, welcome = ? WHERE name = '' AND place = '' AND welcome = ''",
        name,
        place,
        welcome
    )
    .execute(&mut *transaction)
    .await?;
    database.commit(transaction).await?;
    Ok(Made::Members(made))
}

/// Takes the demonstration away, with its acts, unless anybody or anything else is in the club.
///
/// # Errors
/// The database cannot be written.
pub async fn remove(database: &Database, now: UnixSeconds) -> Result<Removed, Error> {
    let mut transaction = database.write().await?;
    let all = count(&mut transaction).await?;
    let demo = count_demo(&mut transaction).await?;
    if demo == (Counted { members: 0, notes: 0 }) {
        return Ok(Removed::NoDemo);
    }
    if demo != all {
        let (members, notes) = (all.members - demo.members, all.notes - demo.notes);
        return Ok(Removed::Others(Counted { members, notes }));
    }
    drop_all(&mut transaction).await?;
    let detail = format!("{} members, {} notes", demo.members, demo.notes);
    acts::record(&mut transaction, now, None, "demo-removed", "", &detail).await?;
    database.commit(transaction).await?;
    Ok(Removed::Gone(demo))
}

async fn count(transaction: &mut Transaction<'_, Sqlite>) -> Result<Counted, Error> {
    let counted = sqlx::query_as!(
        Counted,
        r#"SELECT (SELECT count(*) FROM member) AS "members!: i64",
             (SELECT count(*) FROM note) AS "notes!: i64""#
    )
    .fetch_one(&mut **transaction)
    .await?;
    Ok(counted)
}

async fn count_demo(transaction: &mut Transaction<'_, Sqlite>) -> Result<Counted, Error> {
    let begins = format!("{KEY}*");
    let counted = sqlx::query_as!(
        Counted,
        r#"SELECT (SELECT count(*) FROM member WHERE EXISTS
               (SELECT 1 FROM act WHERE what = 'demo-made' AND subject = 'member/' || member.id))
             AS "members!: i64",
             (SELECT count(*) FROM note WHERE form_key GLOB ?) AS "notes!: i64""#,
        begins
    )
    .fetch_one(&mut **transaction)
    .await?;
    Ok(counted)
}

/// Drops every member and note, what hangs on them, the slips they made, and the acts by and on them.
async fn drop_all(transaction: &mut Transaction<'_, Sqlite>) -> Result<(), Error> {
    // The acts and slips first: they are known by members who are still there.
    sqlx::query!(
        "DELETE FROM act WHERE member_id IS NOT NULL OR subject GLOB 'note/*' OR subject GLOB 'member/*'"
    )
    .execute(&mut **transaction)
    .await?;
    sqlx::query!("DELETE FROM slip WHERE made_by IS NOT NULL OR member_id IS NOT NULL")
        .execute(&mut **transaction)
        .await?;
    let [name, ..] = SAYS;
    sqlx::query!("UPDATE club SET name = '', place = '', welcome = '' WHERE name = ?", name)
        .execute(&mut **transaction)
        .await?;
    sqlx::query!("DELETE FROM note_text").execute(&mut **transaction).await?;
    sqlx::query!("DELETE FROM note").execute(&mut **transaction).await?;
    sqlx::query!("DELETE FROM member").execute(&mut **transaction).await?;
    Ok(())
}
