//! Bringing the schema up to date, forward only, each step in a transaction of its own.

use sqlx::migrate::{MigrateError, Migrator};
use sqlx::sqlite::SqlitePool;

use super::Error;

static STEPS: Migrator = sqlx::migrate!();

/// The newest schema this program knows, as the time in its migration's name.
#[must_use]
pub fn newest_schema() -> i64 {
    STEPS.iter().map(|step| step.version).max().unwrap_or_default()
}

/// Runs the steps that the file has not seen.
pub(super) async fn up(writer: &SqlitePool) -> Result<(), Error> {
    STEPS.run(writer).await.map_err(|error| match error {
        MigrateError::VersionMissing(found) if found > newest_schema() => {
            Error::NewerSchema { found, known: newest_schema() }
        }
        error => Error::Migrate(error),
    })
}
