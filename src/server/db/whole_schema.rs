//! Whether a database has the schema that this program's own steps make, and no more: a trigger, a view or an
//! index that somebody added would run with the server's rights, and what is missing would fail in its hands.

use std::collections::BTreeMap;
use std::str::FromStr;

use sqlx::sqlite::{SqliteConnectOptions, SqliteConnection};
use sqlx::{ConnectOptions, Connection};

use super::migrate::STEPS;

/// Type and name of everything there is, and the statement that makes it. Left out is what SQLite keeps
/// for its own planner.
const OBJECTS: &str = "SELECT type || ' ' || name, tbl_name || char(10) || coalesce(sql, '')
    FROM sqlite_schema WHERE name NOT IN ('sqlite_stat1', 'sqlite_stat4')";

/// The first thing in which the database differs from what the steps up to its schema make, in words.
///
/// # Errors
/// It cannot be read.
pub(super) async fn difference(
    connection: &mut SqliteConnection,
    schema: i64,
) -> sqlx::Result<Option<String>> {
    if let Some(step) = first_wrong_step(connection, schema).await? {
        return Ok(Some(step));
    }
    let mut fresh = SqliteConnectOptions::from_str("sqlite::memory:")?.connect().await?;
    STEPS
        .run_to(schema, &mut fresh)
        .await
        .map_err(|error| sqlx::Error::Migrate(Box::new(error)))?;
    let expected = objects(&mut fresh).await?;
    fresh.close().await?;
    let found = objects(connection).await?;
    let wrong = expected.iter().find_map(|(name, made)| match found.get(name) {
        None => Some(format!("{name} is missing")),
        Some(found) if found != made => Some(format!("{name} is not as this program makes it")),
        Some(_) => None,
    });
    Ok(wrong.or_else(|| {
        let other = found.keys().find(|name| !expected.contains_key(*name))?;
        Some(format!("{other} is none of this program's"))
    }))
}

/// The first step that was not run as this program has it.
async fn first_wrong_step(
    connection: &mut SqliteConnection,
    schema: i64,
) -> sqlx::Result<Option<String>> {
    let run: Vec<(i64, Vec<u8>, bool)> =
        sqlx::query_as("SELECT version, checksum, success FROM _sqlx_migrations ORDER BY version")
            .fetch_all(connection)
            .await?;
    let run: BTreeMap<i64, _> = run
        .into_iter()
        .map(|(version, checksum, success)| (version, (checksum, success)))
        .collect();
    let mut known = Vec::new();
    for step in STEPS.iter().filter(|step| step.version <= schema) {
        known.push(step.version);
        let is_ours = run
            .get(&step.version)
            .is_some_and(|(checksum, success)| *success && checksum.as_slice() == &*step.checksum);
        if !is_ours {
            return Ok(Some(format!("step {} of its schema is not this program's", step.version)));
        }
    }
    let other = run.keys().find(|version| !known.contains(version));
    Ok(other.map(|version| format!("step {version} of its schema is none of this program's")))
}

async fn objects(connection: &mut SqliteConnection) -> sqlx::Result<BTreeMap<String, String>> {
    let rows: Vec<(String, String)> = sqlx::query_as(OBJECTS).fetch_all(connection).await?;
    Ok(rows.into_iter().collect())
}
