//! Why a copy cannot be saved, believed or put back, in words for whoever keeps the club's data.

use std::io;
use std::path::PathBuf;

use crate::db;

/// A failure. What was there before still is.
#[derive(Debug, thiserror::Error)]
pub enum Error {
    /// The file to write is there already.
    #[error("{} is there already: choose another name, or write over it with --replace", file.display())]
    Exists {
        /// The file.
        file: PathBuf,
    },
    /// A file cannot be written.
    #[error("cannot write {}: {source}", file.display())]
    Write {
        /// The file.
        file: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// An older backup should go.
    #[error("the backup is saved, but {} cannot be deleted: {source}", file.display())]
    Delete {
        /// The older one.
        file: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// Backups are counted by names of their own.
    #[error("--keep counts the backups of one folder by the dates in their names: give the folder, not {}", file.display())]
    Uncounted {
        /// What was given.
        file: PathBuf,
    },
    /// A file cannot be read.
    #[error("cannot read {}: {source}", file.display())]
    Read {
        /// The file.
        file: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// There is nothing to save.
    #[error("there is no database in {}: name its folder with --data-dir", folder.display())]
    NoDatabase {
        /// The folder.
        folder: PathBuf,
    },
    /// What the file holds is not what was saved in it.
    #[error("{} is damaged: {fault}; use another copy", file.display())]
    Damaged {
        /// The file.
        file: PathBuf,
        /// What is wrong.
        fault: String,
    },
    /// The file was never saved by this program.
    #[error("{} is not a file that holewright saved: {why}", file.display())]
    NotOurs {
        /// The file.
        file: PathBuf,
        /// How one can tell.
        why: String,
    },
    /// The file is laid out as a newer program does it.
    #[error("{} was saved by holewright {program}, in a form this program ({}) does not know: use the newer program", file.display(), env!("CARGO_PKG_VERSION"))]
    NewerForm {
        /// The file.
        file: PathBuf,
        /// The program that saved it.
        program: String,
    },
    /// What the file holds is newer than this program.
    #[error("{} has schema {found}, this program knows schemas up to {known}: use the newer program", file.display())]
    NewerSchema {
        /// The file.
        file: PathBuf,
        /// Its schema.
        found: i64,
        /// The newest schema of this program.
        known: i64,
    },
    /// The database, or the lock on its folder.
    #[error(transparent)]
    Database(#[from] db::Error),
    /// The system refuses something every program needs.
    #[error("the system refuses what a program needs: {0}")]
    System(io::Error),
}
