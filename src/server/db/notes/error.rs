//! Why a note cannot be written.

use crate::db;
use crate::rules::notes::state::Refused;

/// Why a note cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The rules are against it.
    #[error(transparent)]
    Refused(#[from] Refused),
    /// There is no such note.
    #[error("there is no note at this address")]
    Nothing,
    /// The wording that was read is no longer the one that would be decided about.
    #[error("the note has been changed meanwhile: read it first")]
    OutOfDate,
    /// The database failed.
    #[error(transparent)]
    Database(#[from] db::Error),
}

impl From<sqlx::Error> for Error {
    fn from(error: sqlx::Error) -> Self {
        Self::Database(error.into())
    }
}
