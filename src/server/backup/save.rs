//! Saving everything in one file while the server runs.

use std::fmt;
use std::io::{self, Seek, Write};
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};

use super::archive::{Source, Target};
use super::manifest::{FORM, utc};
use super::{Error, Manifest, archive, last, nightly};
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

/// Where to save.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// A file of this name.
    File(PathBuf),
    /// A file with the date in its name, in this folder.
    Folder(PathBuf),
    /// Standard output.
    Output,
}

/// How to save.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Where.
    pub place: Place,
    /// What becomes of a file of that name.
    pub existing: Existing,
    /// How many are kept in the folder; all, where it is not said.
    pub keep: Option<NonZeroUsize>,
}

impl Place {
    /// What was typed: the folder one stands in, where nothing was.
    #[must_use]
    pub fn read(typed: Option<PathBuf>) -> Self {
        match typed {
            None => Self::Folder(PathBuf::from(".")),
            Some(typed) if typed.as_os_str() == "-" => Self::Output,
            Some(typed) if typed.is_dir() => Self::Folder(typed),
            Some(typed) => Self::File(typed),
        }
    }
}

/// What was saved, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// The file; none where it went to standard output.
    pub file: Option<PathBuf>,
    /// Its size.
    pub bytes: u64,
    /// What it holds.
    pub manifest: Manifest,
    /// The older ones that went.
    pub deleted: Vec<PathBuf>,
}

/// Saves the database of this folder in a file, checked before it has its name. What was
/// acknowledged before the beginning is in it.
///
/// # Errors
/// There is no database, the file is there already, the disk is full, the copy is not sound, or an older
/// one cannot be deleted.
pub async fn save(data: &Path, wanted: Wanted, clock: Clock) -> Result<Saved, Error> {
    let now = clock.now();
    let day: String = utc(now).chars().take_while(|letter| *letter != 'T').collect();
    let file = match (&wanted.place, wanted.keep) {
        (Place::Folder(folder), _) => nightly::name_in(folder, &day),
        (Place::File(file), None) => file.clone(),
        // On its way out it stands where there is room for the database besides.
        (Place::Output, None) => data.join("output.tar"),
        (Place::File(file), Some(_)) => return Err(Error::Uncounted { file: file.clone() }),
        (Place::Output, Some(_)) => return Err(Error::Uncounted { file: PathBuf::from("-") }),
    };
    let (mut whole, manifest) = write(data, &file, &wanted, clock).await?;
    let failed = |source| Error::Write { file: file.clone(), source };
    let bytes = whole.file().metadata().map_err(failed)?.len();
    let saved = if wanted.place == Place::Output {
        let failed = |source| Error::Write { file: PathBuf::from("standard output"), source };
        whole.file().rewind().map_err(failed)?;
        io::copy(whole.file(), &mut io::stdout().lock()).map_err(failed)?;
        io::stdout().flush().map_err(failed)?;
        None
    } else {
        refuse_existing(&file, wanted.existing)?;
        whole.finish().map_err(failed)?;
        Some(file)
    };
    // It is saved all the same; the age that is shown is then too high, and somebody looks.
    let _ = last::note_down(data, now);
    let deleted = match (wanted.place, wanted.keep) {
        (Place::Folder(folder), Some(keep)) => nightly::keep_newest(&folder, keep)?,
        _ => Vec::new(),
    };
    Ok(Saved { file: saved, bytes, manifest, deleted })
}

/// Writes the archive beside its place, and reads it again before anybody may take it for a copy.
async fn write(
    data: &Path,
    file: &Path,
    wanted: &Wanted,
    clock: Clock,
) -> Result<(WholeFile, Manifest), Error> {
    let failed = |source| Error::Write { file: file.to_owned(), source };
    let source = data.join(FILE_NAME);
    if !source.is_file() {
        return Err(Error::NoDatabase { folder: data.to_owned() });
    }
    refuse_existing(file, wanted.existing)?;
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
        is_counted: wanted.keep.is_some(),
        parts,
    };
    archive::write(whole.file(), &manifest, &mut sources).map_err(failed)?;
    let mut nowhere = [Target { name: archive::DATABASE, to: &mut io::sink(), may_lack: false }];
    if archive::read(whole.path(), &mut nowhere)? != manifest {
        let fault = "what was written reads differently".to_owned();
        return Err(Error::Damaged { file: file.to_owned(), fault });
    }
    Ok((whole, manifest))
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
        let Self { file, bytes, manifest, deleted } = self;
        // Nothing but the archive itself belongs on standard output then.
        let Some(file) = file else { return Ok(()) };
        let Manifest { members, notes, schema, .. } = manifest;
        write!(
            out,
            "saved in {}: {members} members, {notes} notes, schema {schema}, {bytes} bytes",
            file.display()
        )?;
        deleted.iter().try_for_each(|older| write!(out, "\ndeleted {}", older.display()))
    }
}
