//! Putting back what a saved file holds, keeping aside what is there now.
//!
//! At every moment either the old database or the new one stands in its place, whole: the old one
//! gets a second name before the new one takes the first, and a log that belongs to the old one is
//! gone before that (SQLite would replay it into the new one). What is kept aside is what the server
//! would have read: the old database with its log folded in.

use std::fmt;
use std::fs::{self, Metadata};
use std::io;
use std::os::unix::fs::PermissionsExt;
use std::path::{Path, PathBuf};

use super::manifest::utc;
use super::source::{Held, readable, unpack};
use super::{Error, name_of};
use crate::db::copy::{self, Folded};
use crate::db::{FILE_NAME, FolderLock};
use crate::rules::clock::Clock;
use crate::whole_file::{BESIDE_DATABASE, WholeFile, give, sync_folder_of, with_suffix};

/// What was put back, and where what was there is now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Restored {
    /// The file it came from.
    pub from: PathBuf,
    /// What it holds.
    pub held: Held,
    /// The database it is now.
    pub database: PathBuf,
    /// The database that was there, if one was.
    pub aside: Option<Aside>,
}

/// What was in the place of a restored database.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Where it is now.
    pub file: PathBuf,
    /// A damaged one is kept with its log, for whoever may want to rescue something.
    pub state: Folded,
}

/// Puts a saved database into this folder.
///
/// # Errors
/// A server runs there, the file is not sound or newer than this program, or the disk is full:
/// what was there still is.
pub async fn restore(data: &Path, saved: &Path, clock: Clock) -> Result<Restored, Error> {
    readable(saved)?;
    let _lock = FolderLock::take(data)?;
    let database = data.join(FILE_NAME);
    let failed = |source| Error::Write { file: database.clone(), source };
    let mut new = WholeFile::begin(&with_suffix(&database, ".restored")).map_err(failed)?;
    let held = unpack(saved, &mut new).await?;
    copy::make_ready(new.path(), clock.now(), &name_of(saved)).await?;
    let old = fs::metadata(&database).ok();
    give_to_owner(new.path(), old.as_ref(), data).map_err(failed)?;
    new.file().sync_all().map_err(failed)?;

    let aside = aside(&database, &utc(clock.now()));
    let kept = if old.is_some() {
        let state = copy::fold(&database).await?;
        second_name(&database, &aside).map_err(failed)?;
        Some(Aside { file: aside.clone(), state })
    } else {
        None
    };
    for suffix in BESIDE_DATABASE {
        match fs::rename(with_suffix(&database, suffix), with_suffix(&aside, suffix)) {
            // Most often there is none; and a connection that was refused a damaged database is
            // closed by a thread of its own, which may still be clearing away what it made.
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            moved => moved.map_err(failed)?,
        }
    }
    sync_folder_of(&database).map_err(failed)?;
    new.finish_as(&database).map_err(failed)?;
    Ok(Restored { from: saved.to_owned(), held, database, aside: kept })
}

/// A name for the old database that nothing has yet.
fn aside(database: &Path, now: &str) -> PathBuf {
    let now: String = now.chars().filter(|c| !"-:".contains(*c)).collect();
    let first = with_suffix(database, &format!(".before-restore-{now}"));
    let mut aside = first.clone();
    let mut count = 1;
    while aside.exists() {
        count += 1;
        aside = with_suffix(&first, &format!("-{count}"));
    }
    aside
}

/// Gives the file a second name; where the file system knows no such thing, a copy has it.
fn second_name(file: &Path, name: &Path) -> io::Result<()> {
    if fs::hard_link(file, name).is_err() {
        fs::copy(file, name)?;
        give(name, &fs::metadata(file)?)?;
        fs::File::open(name)?.sync_all()?;
    }
    sync_folder_of(name)
}

/// The server may run as another user than whoever restores: the new database is made its own.
fn give_to_owner(new: &Path, old: Option<&Metadata>, folder: &Path) -> io::Result<()> {
    fs::set_permissions(new, fs::Permissions::from_mode(0o600))?;
    let theirs = match old {
        Some(old) => old.clone(),
        None => fs::metadata(folder)?,
    };
    give(new, &theirs)
}

impl fmt::Display for Restored {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { from, held, database, aside } = self;
        write!(out, "restored {} from {}: {held}", database.display(), from.display())?;
        match aside {
            Some(Aside { file, state }) => {
                let state = match state {
                    Folded::Whole => "",
                    Folded::Damaged => ", which is damaged,",
                };
                write!(out, "\nwhat was there before{state} is kept in {}", file.display())
            }
            None => write!(out, "\nthere was no database before"),
        }
    }
}
