//! What a saved file gives back: the database in an archive of ours, or a bare copy such as the
//! program makes before it changes the schema.

use std::fmt;
use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use super::archive::Target;
use super::{Error, Manifest, archive};
use crate::db::copy::{self, Contents};
use crate::db::newest_schema;
use crate::whole_file::{BESIDE_DATABASE, WholeFile, with_suffix};

/// How every SQLite file begins.
const BARE: &[u8; 16] = b"SQLite format 3\0";

/// What a file holds, all of it read and checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Held {
    /// Its manifest; a bare copy has none.
    pub manifest: Option<Manifest>,
    /// What is in its database.
    pub contents: Contents,
}

/// Takes the database out of a saved file and checks it.
pub(super) async fn unpack(saved: &Path, into: &mut WholeFile) -> Result<Held, Error> {
    let damaged = |fault: String| Error::Damaged { file: saved.to_owned(), fault };
    let manifest = if is_bare(saved)? {
        copy_bare(saved, into)?;
        None
    } else {
        let mut database = [Target { name: archive::DATABASE, to: into.file(), may_lack: false }];
        Some(archive::read(saved, &mut database)?)
    };
    let contents = copy::examine(into.path()).await.map_err(|error| match error {
        // It speaks of the file that the reader gave, not of the one that goes in a moment.
        crate::db::Error::Unsound { found, .. } => damaged(found),
        error => error.into(),
    })?;
    if manifest.as_ref().is_some_and(|manifest| manifest.contents() != contents) {
        return Err(damaged("its database holds other than its manifest says".to_owned()));
    }
    let (found, known) = (contents.schema, newest_schema());
    if found > known {
        return Err(Error::NewerSchema { file: saved.to_owned(), found, known });
    }
    Ok(Held { manifest, contents })
}

/// Whether there is such a file, asked before anything is written.
pub(super) fn readable(saved: &Path) -> Result<(), Error> {
    match File::open(saved) {
        Ok(_) => Ok(()),
        Err(source) => Err(Error::Read { file: saved.to_owned(), source }),
    }
}

fn is_bare(saved: &Path) -> Result<bool, Error> {
    let failed = |source| Error::Read { file: saved.to_owned(), source };
    let mut start = Vec::new();
    let file = File::open(saved).map_err(failed)?;
    file.take(16).read_to_end(&mut start).map_err(failed)?;
    Ok(start == BARE)
}

fn copy_bare(saved: &Path, into: &mut WholeFile) -> Result<(), Error> {
    // A database with a log is in use, or was: the file alone is not all of it.
    for suffix in BESIDE_DATABASE {
        let beside = with_suffix(saved, suffix);
        if beside.exists() {
            let why = format!("{} beside it says that it is a database in use", beside.display());
            return Err(Error::NotOurs { file: saved.to_owned(), why });
        }
    }
    let mut file =
        File::open(saved).map_err(|source| Error::Read { file: saved.to_owned(), source })?;
    match io::copy(&mut file, into.file()) {
        Ok(_) => Ok(()),
        Err(source) => Err(Error::Write { file: into.path().to_owned(), source }),
    }
}

impl fmt::Display for Held {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Contents { schema, members, notes } = self.contents;
        write!(out, "{members} members, {notes} notes, schema {schema}")?;
        match &self.manifest {
            Some(Manifest { program, saved_at, .. }) => {
                write!(out, ", saved {saved_at} by holewright {program}")
            }
            None => Ok(()),
        }
    }
}
