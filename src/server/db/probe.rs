//! Whether the database can be read and written now.

use super::{Database, Error};
use crate::clock::UnixSeconds;

/// Reads the probe row and writes it.
///
/// # Errors
/// The database cannot be read or written.
pub async fn read_and_write(database: &Database, now: UnixSeconds) -> Result<(), Error> {
    sqlx::query_scalar!("SELECT written_at FROM write_probe WHERE id = 1")
        .fetch_one(&database.readers)
        .await?;
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE write_probe SET written_at = ? WHERE id = 1", now)
        .execute(&mut *transaction)
        .await?;
    Ok(transaction.commit().await?)
}
