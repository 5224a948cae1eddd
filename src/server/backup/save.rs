//! Saving everything in one file while the server runs.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use super::archive::{Source, Target};
use super::manifest::{FORM, utc};
use super::{Error, Manifest, archive};
use crate::db::{self, FILE_NAME, copy};
use crate::rules::clock::Clock;
use crate::whole_file::{WholeFile, with_suffix};

/// What becomes of a file that has the name already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Existing {
    /// It stays, and nothing is saved.
    Keep,
    /// It is replaced once the new one is whole.
    Replace,
}

/// What was saved, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// The file.
    pub file: PathBuf,
    /// Its size.
    pub bytes: u64,
    /// What it holds.
    pub manifest: Manifest,
}

/// Saves the database of this folder in a file, checked before it has its name. What was
/// acknowledged before the beginning is in it.
///
/// # Errors
/// There is no database, the file is there already, the disk is full, or the copy is not sound.
pub async fn save(
    data: &Path,
    file: &Path,
    existing: Existing,
    clock: Clock,
) -> Result<Saved, Error> {
    let failed = |source| Error::Write { file: file.to_owned(), source };
    let source = data.join(FILE_NAME);
    if !source.is_file() {
        return Err(Error::NoDatabase { folder: data.to_owned() });
    }
    refuse_existing(file, existing)?;
    // The archive's own place first: another program that saves under this name stops here.
    let mut whole = WholeFile::begin(file).map_err(failed)?;
    let mut copied = WholeFile::begin(&with_suffix(file, ".sqlite")).map_err(failed)?;

    let saved_at = utc(clock.now());
    copy::make(&source, &copied).await?;
    copied.file().sync_all().map_err(failed)?;
    let contents = copy::examine(copied.path()).await?;
    let mut sources =
        [Source { name: archive::DATABASE, bytes: copied.file(), may_be_left_out: false }];
    let parts = archive::describe(&mut sources).map_err(failed)?;
    let manifest = Manifest {
        form: FORM,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        sqlite: db::copy::sqlite_version().await?,
        saved_at,
        schema: contents.schema,
        members: contents.members,
        notes: contents.notes,
        parts,
    };
    archive::write(whole.file(), &manifest, &mut sources).map_err(failed)?;
    let bytes = whole.file().metadata().map_err(failed)?.len();

    // What was written is read again before anybody may take it for a copy.
    let mut nowhere = [Target { name: archive::DATABASE, to: &mut io::sink(), may_lack: false }];
    if archive::read(whole.path(), &mut nowhere)? != manifest {
        let fault = "what was written reads differently".to_owned();
        return Err(Error::Damaged { file: file.to_owned(), fault });
    }
    refuse_existing(file, existing)?;
    whole.finish().map_err(failed)?;
    Ok(Saved { file: file.to_owned(), bytes, manifest })
}

fn refuse_existing(file: &Path, existing: Existing) -> Result<(), Error> {
    match existing {
        Existing::Keep if file.symlink_metadata().is_ok() => {
            Err(Error::Exists { file: file.to_owned() })
        }
        _ => Ok(()),
    }
}

impl fmt::Display for Saved {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { file, bytes, manifest } = self;
        let Manifest { members, notes, schema, .. } = manifest;
        write!(
            out,
            "saved in {}: {members} members, {notes} notes, schema {schema}, {bytes} bytes",
            file.display()
        )
    }
}
