//! How a connection is set up: the same for every connection of both pools.
//!
//! The log is written ahead and synced at each commit, so an acknowledged note survives a power
//! cut. Foreign keys hold, the schema is not trusted, cells are checked, no page is mapped into
//! memory, temporary tables stay in memory (a container's root may be read-only).

use std::path::Path;
use std::time::Duration;

use sqlx::Connection;
use sqlx::sqlite::{
    SqliteConnectOptions, SqliteConnection, SqliteJournalMode, SqlitePool, SqlitePoolOptions,
    SqliteSynchronous,
};

use super::Error;
use super::standing::Standing;

/// How many reads run at once.
pub const READERS: u32 = 4;
/// How long a statement waits for another program's lock, and a request for a connection.
pub const PATIENCE: Duration = Duration::from_secs(5);
/// The log shrinks to this after a checkpoint.
pub const LOG_LIMIT_BYTES: u32 = 16 * 1024 * 1024;
/// The first release without the race that could corrupt a file as its log was reset.
const LEAST_VERSION: [u32; 3] = [3, 51, 3];

/// The one connection that writes. It makes no file, and commits nothing to files that are no longer the
/// ones in the data folder.
pub(super) async fn writer(file: &Path, standing: &Standing) -> sqlx::Result<SqlitePool> {
    let standing = standing.clone();
    // The planner's figures are brought up to date by the one connection that may write them.
    let options = contract(file).create_if_missing(false).optimize_on_close(true, Some(400));
    pool(1)
        .after_connect(move |connection, _| {
            let standing = standing.clone();
            Box::pin(async move {
                is_ours(&standing)?;
                let mut handle = connection.lock_handle().await?;
                handle.set_commit_hook(move || standing.gone().is_none());
                Ok(())
            })
        })
        .after_release(|connection, _| Box::pin(is_at_rest(connection)))
        .connect_with(options)
        .await
}

/// The connections that read and cannot write. All are opened at once: one that is opened later could
/// find another file under the name.
pub(super) async fn readers(file: &Path, standing: &Standing) -> sqlx::Result<SqlitePool> {
    let standing = standing.clone();
    pool(READERS)
        .after_connect(move |_, _| {
            let ours = is_ours(&standing);
            Box::pin(async move { ours })
        })
        .connect_with(contract(file).create_if_missing(false).pragma("query_only", "ON"))
        .await
}

fn is_ours(standing: &Standing) -> sqlx::Result<()> {
    match standing.gone() {
        Some(_) => Err(sqlx::Error::Io(std::io::ErrorKind::NotFound.into())),
        None => Ok(()),
    }
}

/// Whether a connection that comes back may be given to the next. SQLite itself ends a transaction
/// that meets a full disk; the driver's own rollback then fails, and it would count that transaction as
/// open for ever and refuse every later one. Such a connection is closed, and a new one is opened.
async fn is_at_rest(connection: &mut SqliteConnection) -> sqlx::Result<bool> {
    // A rollback may still wait its turn.
    connection.ping().await?;
    Ok(!connection.is_in_transaction())
}

/// Refuses a SQLite without the fix that our journal mode needs.
pub(super) async fn check_version(writer: &SqlitePool) -> Result<(), Error> {
    let found = sqlx::query_scalar!(r#"SELECT sqlite_version() AS "version!: String""#)
        .fetch_one(writer)
        .await?;
    let parts: Vec<u32> = found.split('.').filter_map(|part| part.parse().ok()).collect();
    if parts.as_slice() < LEAST_VERSION.as_slice() {
        return Err(Error::OldSqlite { found });
    }
    Ok(())
}

fn pool(connections: u32) -> SqlitePoolOptions {
    SqlitePoolOptions::new()
        .min_connections(connections)
        .max_connections(connections)
        .acquire_timeout(PATIENCE)
        .idle_timeout(None)
        .max_lifetime(None)
}

fn contract(file: &Path) -> SqliteConnectOptions {
    beside(file).journal_mode(SqliteJournalMode::Wal)
}

/// The contract for a connection beside the pools, which leaves the file's way of keeping a log as
/// it finds it: the whole database is to be copied or moved.
pub(super) fn beside(file: &Path) -> SqliteConnectOptions {
    SqliteConnectOptions::new()
        .filename(file)
        .synchronous(SqliteSynchronous::Full)
        .foreign_keys(true)
        .busy_timeout(PATIENCE)
        .pragma("trusted_schema", "OFF")
        .pragma("cell_size_check", "ON")
        .pragma("mmap_size", "0")
        .pragma("temp_store", "MEMORY")
        .pragma("journal_size_limit", LOG_LIMIT_BYTES.to_string())
}
