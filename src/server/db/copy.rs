//! A copy of a whole database, made while others use it, and what a copy holds.
//!
//! The file may have an older schema than this program, so nothing here is checked against the
//! schema when the program is built.

use std::io;
use std::path::Path;
use std::str::FromStr;

use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection};
use sqlx::{ConnectOptions, Connection};

use super::{Error, connection, migrate, whole_schema};
use crate::rules::clock::UnixSeconds;
use crate::rules::plain::line;
use crate::whole_file::{WholeFile, with_suffix};

/// What a database holds, found by reading all of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Contents {
    /// Its schema, as the time in the name of its last migration.
    pub schema: i64,
    /// How many members.
    pub members: i64,
    /// How many notes, shown or not.
    pub notes: i64,
}

/// What was found of a database that is to be moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Folded {
    /// Its log is folded in, and nobody uses it.
    Whole,
    /// It is damaged: its log is left beside it.
    Damaged,
}

/// Writes this database, as it is at one moment, into a file on its way. Others may read and write
/// it all the while. An ordinary connection does it, because one that cannot write leaves its log
/// behind; it writes nothing.
///
/// # Errors
/// The database cannot be read, or the copy cannot be written.
pub async fn make(from: &Path, to: &WholeFile) -> Result<(), Error> {
    let failed = |source| Error::Copy { file: to.path().to_owned(), source };
    // A name that begins with "file:" would mean something else.
    let path = std::path::absolute(to.path()).map_err(failed)?;
    let path = path.to_str().ok_or_else(|| {
        failed(io::Error::new(io::ErrorKind::InvalidFilename, "its name is not UTF-8"))
    })?;
    let mut connection = connection::beside(from).connect().await?;
    sqlx::query("VACUUM INTO ?").bind(path).execute(&mut connection).await?;
    connection.close().await?;
    Ok(())
}

/// Reads a copy through: its pages, its indexes, its references, its schema.
///
/// # Errors
/// It is damaged, or no database of ours.
pub async fn examine(file: &Path) -> Result<Contents, Error> {
    let unsound = |found: String| Error::Unsound {
        file: file.to_owned(),
        found: line(&found),
        cure: String::new(),
    };
    let mut connection = still(file).await.map_err(|error| unsound(error.to_string()))?;
    let contents = examine_through(&mut connection).await;
    connection.close().await?;
    match contents {
        Ok(Ok(contents)) => Ok(contents),
        Ok(Err(found)) => Err(unsound(found)),
        Err(error) => Err(unsound(error.to_string())),
    }
}

async fn examine_through(
    connection: &mut SqliteConnection,
) -> sqlx::Result<Result<Contents, String>> {
    let Some(schema) = migrate::schema_of(connection).await? else {
        return Ok(Err("it is no database of holewright".to_owned()));
    };
    // A newer one is refused by whoever would use it.
    if schema <= migrate::newest_schema()
        && let Some(difference) = whole_schema::difference(connection, schema).await?
    {
        return Ok(Err(difference));
    }
    let fault: String =
        sqlx::query_scalar("PRAGMA integrity_check(1)").fetch_one(&mut *connection).await?;
    if fault != "ok" {
        return Ok(Err(fault.replace('\n', ", ")));
    }
    let astray: Option<String> =
        sqlx::query_scalar("SELECT \"table\" FROM pragma_foreign_key_check LIMIT 1")
            .fetch_optional(&mut *connection)
            .await?;
    if let Some(table) = astray {
        return Ok(Err(format!("a row of {table} belongs to none that is there")));
    }
    let (members, notes) = counts(connection).await?;
    Ok(Ok(Contents { schema, members, notes }))
}

/// How many members and notes; none where the schema is from before them.
async fn counts(connection: &mut SqliteConnection) -> sqlx::Result<(i64, i64)> {
    let mut found = [0, 0];
    for (count, (table, question)) in found
        .iter_mut()
        .zip([("member", "SELECT count(*) FROM member"), ("note", "SELECT count(*) FROM note")])
    {
        if has_table(connection, table).await? {
            *count = sqlx::query_scalar(question).fetch_one(&mut *connection).await?;
        }
    }
    let [members, notes] = found;
    Ok((members, notes))
}

async fn has_table(connection: &mut SqliteConnection, name: &str) -> sqlx::Result<bool> {
    sqlx::query_scalar("SELECT count(*) > 0 FROM sqlite_schema WHERE type = 'table' AND name = ?")
        .bind(name)
        .fetch_one(connection)
        .await
}

/// The version of the SQLite that is compiled in.
///
/// # Errors
/// It cannot be asked.
pub async fn sqlite_version() -> Result<String, Error> {
    let mut connection = SqliteConnectOptions::from_str("sqlite::memory:")?.connect().await?;
    let version = sqlx::query_scalar("SELECT sqlite_version()").fetch_one(&mut connection).await?;
    connection.close().await?;
    Ok(version)
}

/// The schema of the database at this place, none where there is no file or no step was ever run.
/// The file is not written: only a change that was cut off half-way is rolled back first.
///
/// # Errors
/// It is no database, or cannot be read.
pub async fn schema(file: &Path) -> sqlx::Result<Option<i64>> {
    if !file.exists() {
        return Ok(None);
    }
    let mut connection = unwritten(file).await?;
    let found = migrate::schema_of(&mut connection).await;
    connection.close().await?;
    found
}

/// The first fault in the pages of the database at this place, in SQLite's words. The file is written no
/// more than [`schema`] does.
///
/// # Errors
/// It is no database, or cannot be read.
pub(super) async fn first_fault(file: &Path) -> sqlx::Result<Option<String>> {
    let mut connection = unwritten(file).await?;
    let found = sqlx::query_scalar("PRAGMA quick_check(1)").fetch_one(&mut connection).await;
    connection.close().await?;
    let found: String = found?;
    Ok((found != "ok").then(|| found.replace('\n', ", ")))
}

async fn unwritten(file: &Path) -> sqlx::Result<SqliteConnection> {
    let has = |suffix| with_suffix(file, suffix).exists();
    if has("-journal") {
        connection::beside(file).connect().await
    } else if has("-wal") {
        connection::beside(file).read_only(true).connect().await
    } else {
        still(file).await
    }
}

/// Makes a copy ready to be served in place of another database: whoever was signed in then must
/// sign in again, because a session ended since would stand once more. The record says so.
///
/// # Errors
/// The copy cannot be written.
pub async fn make_ready(file: &Path, now: UnixSeconds, detail: &str) -> Result<(), Error> {
    // As much as the record takes.
    let detail: String = detail.chars().take(500).collect();
    let mut connection = connection::beside(file).connect().await?;
    let mut transaction = connection.begin_with("BEGIN IMMEDIATE").await?;
    if has_table(&mut transaction, "session").await? {
        sqlx::query("DELETE FROM session").execute(&mut *transaction).await?;
    }
    // An address of a feed that was made void since would be good once more.
    if has_table(&mut transaction, "feed").await? {
        sqlx::query("DELETE FROM feed").execute(&mut *transaction).await?;
    }
    if has_table(&mut transaction, "act").await? {
        sqlx::query("INSERT INTO act (at, what, detail) VALUES (?, 'restored', ?)")
            .bind(now.max(1))
            .bind(detail)
            .execute(&mut *transaction)
            .await?;
    }
    transaction.commit().await?;
    Ok(connection.close().await?)
}

/// Folds a database's log into it, so that the one file is all of it.
///
/// # Errors
/// Another program has it open, or it cannot be written.
pub async fn fold(file: &Path) -> Result<Folded, Error> {
    // Only the last connection to a database may change how it keeps its log.
    match fold_alone(file).await {
        Ok(()) => Ok(Folded::Whole),
        Err(error) if is(&error, BUSY) => {
            let folder = file.parent().unwrap_or(file).to_owned();
            Err(Error::InUse { folder })
        }
        Err(error) if is(&error, DAMAGED) => Ok(Folded::Damaged),
        Err(error) => Err(error.into()),
    }
}

/// Busy and locked.
const BUSY: [u32; 2] = [5, 6];
/// Malformed, and no database at all.
const DAMAGED: [u32; 2] = [11, 26];

async fn fold_alone(file: &Path) -> sqlx::Result<()> {
    let mut connection = connection::beside(file).connect().await?;
    let folded = sqlx::query("PRAGMA journal_mode = DELETE").execute(&mut connection).await;
    connection.close().await?;
    folded.map(|_| ())
}

fn is(error: &sqlx::Error, codes: [u32; 2]) -> bool {
    let sqlx::Error::Database(error) = error else { return false };
    error
        .code()
        .and_then(|code| code.parse::<u32>().ok())
        .is_some_and(|code| codes.contains(&(code & 0xff)))
}

/// A connection to a file that nobody changes: nothing is locked, and nothing written beside it.
async fn still(file: &Path) -> sqlx::Result<SqliteConnection> {
    connection::beside(file).read_only(true).immutable(true).connect().await
}
