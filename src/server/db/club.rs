//! What the club says of itself, and where the server that serves it is reached.

use super::{Database, Error, acts};
use crate::rules::auth::SignedIn;
use crate::rules::clock::UnixSeconds;
use crate::rules::club::Club;

/// What the club says of itself.
///
/// # Errors
/// The database cannot be read.
pub async fn read(database: &Database) -> Result<Club, Error> {
    Ok(sqlx::query_as!(Club, "SELECT name, place, welcome, zone FROM club WHERE id = 1")
        .fetch_one(&database.readers)
        .await?)
}

/// Says it anew.
///
/// # Errors
/// The database cannot be written.
pub async fn change(
    database: &Database,
    now: UnixSeconds,
    by: &SignedIn,
    club: &Club,
) -> Result<(), Error> {
    let Club { name, place, welcome, zone } = club;
    let mut transaction = database.write().await?;
    sqlx::query!(
        "UPDATE club SET name = ?, place = ?, welcome = ?, zone = ? WHERE id = 1",
        name,
        place,
        welcome,
        zone
    )
    .execute(&mut *transaction)
    .await?;
    let detail = [name, place, welcome, zone].map(String::as_str).join("; ");
    let by = Some((by.id, by.name.as_str()));
    acts::record(&mut transaction, now, by, "club-changed", "", &detail).await?;
    database.commit(transaction).await?;
    Ok(())
}

/// Notes at which address readers see the server, for the links that commands print.
///
/// # Errors
/// The database cannot be written.
pub async fn note_address(database: &Database, base_url: &str) -> Result<(), Error> {
    if address(database).await? == base_url {
        return Ok(());
    }
    let mut transaction = database.write().await?;
    sqlx::query!("UPDATE club SET base_url = ? WHERE id = 1", base_url)
        .execute(&mut *transaction)
        .await?;
    database.commit(transaction).await?;
    Ok(())
}

/// That address; empty where no server has served this database.
///
/// # Errors
/// The database cannot be read.
pub async fn address(database: &Database) -> Result<String, Error> {
    Ok(sqlx::query_scalar!("SELECT base_url FROM club WHERE id = 1")
        .fetch_one(&database.readers)
        .await?)
}
