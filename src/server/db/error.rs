//! What can go wrong with the database.

use std::io;
use std::path::{Path, PathBuf};

use super::{FILE_NAME, room};

/// SQLite's primary result codes that pass by themselves or when a person makes room: busy, locked,
/// read-only, I/O error (a full disk under a file size limit), full, cannot open.
const PASSING: [u32; 6] = [5, 6, 8, IO, FULL, 14];
const IO: u32 = 10;
const CORRUPT: u32 = 11;
const FULL: u32 = 13;
const NOT_OURS: u32 = 26;
/// The extended code of a commit that our own hook refused.
const UNDONE: u32 = 531;

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
    #[error("cannot open the database {}: {source}; {}", file.display(), cure(file, user, source))]
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
    /// There is no database where one is needed.
    #[error("there is no database in {}: name its folder with --data-dir, or start the server, which makes it", folder.display())]
    NoClub {
        /// The folder.
        folder: PathBuf,
    },
    /// The file was written by a newer program.
    #[error("{FILE_NAME} has schema {found}, this program knows schemas up to {known}: run the newer program, or {}", way_back(folder, copy.as_deref()))]
    NewerSchema {
        /// The schema of the file.
        found: i64,
        /// The newest schema of this program.
        known: i64,
        /// The data folder.
        folder: PathBuf,
        /// The newest copy that this program can read.
        copy: Option<PathBuf>,
    },
    /// The file has an older schema, and a server that may know no other is at work on it.
    #[error("{FILE_NAME} has {}, this program would bring it to {known}, and another holewright is at work in {}: use the program that serves, or stop it first", schema(*found), folder.display())]
    OlderSchemaInUse {
        /// The schema of the file; none where the server is about to make it.
        found: Option<i64>,
        /// The newest schema of this program.
        known: i64,
        /// The data folder.
        folder: PathBuf,
    },
    /// The disk has too little room for a note.
    #[error("there is no room on the disk of {}: make some", folder.display())]
    NoRoom {
        /// The data folder.
        folder: PathBuf,
    },
    /// Another program holds the folder.
    #[error("another holewright is at work in {}: stop it first, or choose another folder with --data-dir", folder.display())]
    InUse {
        /// The folder.
        folder: PathBuf,
    },
    /// The folder cannot be held.
    #[error("cannot lock the data folder {}: {source}; choose another with --data-dir", folder.display())]
    Lock {
        /// The folder.
        folder: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A copy cannot be written or read.
    #[error("cannot make the copy {}: {source}", file.display())]
    Copy {
        /// The copy.
        file: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// What is in a file does not hang together.
    #[error("{} is damaged: {found}{cure}", file.display())]
    Unsound {
        /// The file.
        file: PathBuf,
        /// The first fault.
        found: String,
        /// How to put it right, where that is known.
        cure: String,
    },
    /// The database is no longer the one that is open.
    #[error("{} is no longer what the server has open: it was moved, deleted or replaced. Nothing is written until it is back", file.display())]
    Gone {
        /// The first that is not as it was.
        file: PathBuf,
    },
    /// No sound copy could be made, so the schema is left as it is.
    #[error(
        "{FILE_NAME} is left as it is, because no copy of it could be made before its schema is brought up to date: {0}"
    )]
    Uncopied(#[source] Box<Error>),
    /// The schema cannot be brought up to date.
    #[error("cannot bring {FILE_NAME} up to date: {0}")]
    Migrate(#[source] sqlx::migrate::MigrateError),
    /// A statement failed.
    #[error("the database failed: {0}")]
    Statement(#[from] sqlx::Error),
}

/// What to do about a file that cannot be opened.
fn cure(file: &Path, user: &str, source: &sqlx::Error) -> String {
    let folder = file.parent().unwrap_or(file);
    match code(source) {
        Some(FULL | IO) if !room::is_there(folder) => {
            "there is no room on its disk: make some and start again".to_owned()
        }
        Some(CORRUPT | NOT_OURS) => restore(folder),
        _ => format!(
            "user {user} must be able to write the file and its folder, or choose another with --data-dir"
        ),
    }
}

/// How a damaged database is put right.
fn restore(folder: &Path) -> String {
    let folder = folder.display();
    format!(
        "put back a backup: holewright restore --data-dir {folder} FILE; what is there is kept aside"
    )
}

fn way_back(folder: &Path, copy: Option<&Path>) -> String {
    let command = format!("holewright restore --data-dir {}", folder.display());
    match copy {
        Some(copy) => {
            format!("put back the newest copy this one reads: {command} {}", copy.display())
        }
        None => format!("put back a backup made before it first ran: {command} FILE"),
    }
}

fn schema(found: Option<i64>) -> String {
    found.map_or_else(|| "no schema yet".to_owned(), |found| format!("schema {found}"))
}

impl Error {
    /// The database itself is damaged.
    pub(super) fn unsound(file: &Path, found: &str) -> Self {
        let cure = format!("; {}", restore(file.parent().unwrap_or(file)));
        Self::Unsound { file: file.to_owned(), found: found.to_owned(), cure }
    }

    /// Whether trying again later may help.
    #[must_use]
    pub fn is_passing(&self) -> bool {
        match self {
            Self::Statement(sqlx::Error::PoolTimedOut)
            | Self::NoRoom { .. }
            | Self::Gone { .. } => true,
            Self::Statement(error) => {
                extended(error) == Some(UNDONE)
                    || code(error).is_some_and(|code| PASSING.contains(&code))
            }
            _ => false,
        }
    }

    /// Whether the disk has no room.
    #[must_use]
    pub fn is_full(&self) -> bool {
        matches!(self, Self::Statement(error) if code(error) == Some(FULL))
    }
}

/// SQLite's primary result code.
fn code(error: &sqlx::Error) -> Option<u32> {
    Some(extended(error)? & 0xff)
}

fn extended(error: &sqlx::Error) -> Option<u32> {
    let sqlx::Error::Database(error) = error else { return None };
    error.code()?.parse().ok()
}
