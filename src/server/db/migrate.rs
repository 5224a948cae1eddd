//! Bringing the schema up to date, forward only, each step in a transaction of its own.

use std::path::Path;

use sqlx::migrate::Migrator;
use sqlx::sqlite::{SqliteConnection, SqlitePool};
use sqlx::{ConnectOptions, Connection};

use super::{Error, connection};

pub(super) static STEPS: Migrator = sqlx::migrate!("../../migrations");

/// The newest schema this program knows, as the time in its migration's name.
#[must_use]
pub fn newest_schema() -> i64 {
    STEPS.iter().map(|step| step.version).max().unwrap_or_default()
}

/// The schema of the file behind this connection; none where no step was ever run.
pub(super) async fn schema_of(connection: &mut SqliteConnection) -> sqlx::Result<Option<i64>> {
    let is_ours: bool = sqlx::query_scalar(
        "SELECT count(*) > 0 FROM sqlite_schema WHERE name = '_sqlx_migrations'",
    )
    .fetch_one(&mut *connection)
    .await?;
    if !is_ours {
        return Ok(None);
    }
    sqlx::query_scalar("SELECT max(version) FROM _sqlx_migrations").fetch_one(connection).await
}

/// Makes a database of the newest schema in this empty file. It keeps no log beside it, so that the file
/// alone is all of it once this is done.
pub(super) async fn make(file: &Path) -> Result<(), Error> {
    let mut connection = connection::beside(file).connect().await?;
    STEPS.run(&mut connection).await.map_err(Error::Migrate)?;
    Ok(connection.close().await?)
}

/// Runs the steps that the file has not seen.
pub(super) async fn up(writer: &SqlitePool) -> Result<(), Error> {
    STEPS.run(writer).await.map_err(Error::Migrate)
}
