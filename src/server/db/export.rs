//! The compiled tables as a SQLite file of their own, made in memory. Nothing is read from the
//! server's database: what members write can never get into it.

use std::str::FromStr;

use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection};

use super::Error;

/// Its tables, with every column described, and how they are filled from the one JSON document.
const SCHEMA_AND_ROWS: &str = include_str!("export.sql");

/// The bytes of the file that holds these tables, given as one JSON document.
///
/// # Errors
/// SQLite refuses, or the document lacks a table.
pub async fn file(tables: &str) -> Result<Vec<u8>, Error> {
    let mut connection =
        SqliteConnectOptions::from_str("sqlite::memory:")?.foreign_keys(true).connect().await?;
    // A temporary table is not part of the file.
    sqlx::raw_sql("CREATE TEMP TABLE given (tables TEXT NOT NULL)")
        .execute(&mut connection)
        .await?;
    sqlx::query("INSERT INTO given VALUES (?)").bind(tables).execute(&mut connection).await?;
    sqlx::raw_sql(SCHEMA_AND_ROWS).execute(&mut connection).await?;
    let bytes = connection.serialize(None).await?.to_vec();
    connection.close().await?;
    Ok(bytes)
}
