//! What can go wrong with the database.

use std::io;
use std::path::PathBuf;

use super::FILE_NAME;

/// SQLite's primary result codes that pass by themselves or when a person makes room: busy, locked,
/// read-only, I/O error (a full disk under a file size limit), full, cannot open.
const PASSING: [u32; 6] = [5, 6, 8, 10, 13, 14];

/// A failure, in words for whoever runs the server.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The data folder cannot be made.
    #[error("cannot make the data folder {}: {source}; user {user} must be able to write there, or choose another with --data-dir", folder.display())]
    Folder {
        /// The folder.
        folder: PathBuf,
        /// Who tried.
        user: String,
        /// What the system said.
        source: io::Error,
    },
    /// The file cannot be opened.
    #[error("cannot open the database {}: {source}; user {user} must be able to write the file and its folder, or choose another with --data-dir", file.display())]
    Open {
        /// The file.
        file: PathBuf,
        /// Who tried.
        user: String,
        /// What SQLite said.
        source: sqlx::Error,
    },
    /// The SQLite compiled in has a fault that can corrupt the file.
    #[error("SQLite {found} is too old: 3.51.3 or newer is needed")]
    OldSqlite {
        /// Its version.
        found: String,
    },
    /// The file was written by a newer program.
    #[error(
        "{FILE_NAME} has schema {found}, this program knows schemas up to {known}: run the newer program, or put back the copy made before it first ran"
    )]
    NewerSchema {
        /// The schema of the file.
        found: i64,
        /// The newest schema of this program.
        known: i64,
    },
    /// The schema cannot be brought up to date.
    #[error("cannot bring {FILE_NAME} up to date: {0}")]
    Migrate(#[source] sqlx::migrate::MigrateError),
    /// A statement failed.
    #[error("the database failed: {0}")]
    Statement(#[from] sqlx::Error),
}

impl Error {
    /// Whether trying again later may help.
    #[must_use]
    pub fn is_passing(&self) -> bool {
        match self {
            Self::Statement(sqlx::Error::PoolTimedOut) => true,
            Self::Statement(sqlx::Error::Database(error)) => error
                .code()
                .and_then(|code| code.parse::<u32>().ok())
                .is_some_and(|code| PASSING.contains(&(code & 0xff))),
            _ => false,
        }
    }
}
