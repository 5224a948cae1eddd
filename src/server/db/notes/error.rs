//! Why a note cannot be written.

use crate::db;
use crate::rules::notes::remarks;
use crate::rules::notes::reports::MOST_A_DAY;
use crate::rules::notes::state::Refused;

/// Why a note cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The rules are against it.
    #[error(transparent)]
    Refused(#[from] Refused),
    /// The rules of remarks are against it.
    #[error(transparent)]
    Remark(#[from] remarks::Refused),
    /// There is no such note.
    #[error("there is no note at this address")]
    Nothing,
    /// The wording that was read is no longer the one that would be decided about.
    #[error("the note has been changed meanwhile: read it first")]
    OutOfDate,
    /// The member has reported as many notes as one may in a day.
    #[error(
        "you have reported {MOST_A_DAY} notes within a day, which is as many as are taken: tell a moderator of \
         this one too, by telephone where somebody could be hurt today"
    )]
    TooManyReports,
    /// The database failed.
    #[error(transparent)]
    Database(#[from] db::Error),
}

impl From<sqlx::Error> for Error {
    fn from(error: sqlx::Error) -> Self {
        Self::Database(error.into())
    }
}
