//! The file that everything is saved in: an uncompressed tar archive, the manifest first. Any tar
//! program opens it; this one reads the parts it knows by their names and unpacks nothing else.
//!
//! A part that is listed and unknown is read through and checked like the others. Whether it may then
//! be left out is for the manifest to say: what cannot be put back must not be lost in silence.

use std::collections::HashSet;
use std::fs::File;
use std::io::{self, BufReader, Read, Seek, Write};
use std::path::Path;

use sha2::{Digest, Sha256};
use tar::{Archive, Builder, Entries, Entry, EntryType, Header};

use super::manifest::{FORM, Manifest, Part};
use super::{Error, name_of};
use crate::db::FILE_NAME;
use crate::rules::plain::line;

/// The first part.
pub const MANIFEST: &str = "manifest.json";
/// The part that holds the database.
pub const DATABASE: &str = FILE_NAME;

/// More than any manifest needs: a broken length must not fill the memory.
const LONGEST_MANIFEST: u64 = 1024 * 1024;
const PIECE: usize = 64 * 1024;

/// A part to be written: its name and its bytes.
pub struct Source<'a> {
    /// Its name.
    pub name: &'static str,
    /// Its bytes: a file, or a cursor over what is in memory.
    pub bytes: &'a mut dyn Rewound,
    /// A program that does not know it may put the others back without it.
    pub may_be_left_out: bool,
}

/// What can be read more than once.
pub trait Rewound: Read + Seek {}

impl<T: Read + Seek> Rewound for T {}

/// Where a part goes that is read.
pub struct Target<'a> {
    /// Its name.
    pub name: &'static str,
    /// What takes its bytes.
    pub to: &'a mut dyn Write,
    /// An archive of before there was such a part lacks it, and is read all the same.
    pub may_lack: bool,
}

/// Writes an archive of these parts, which the manifest describes in the same order.
///
/// # Errors
/// The disk is full or fails.
pub fn write(out: &mut File, manifest: &Manifest, sources: &mut [Source<'_>]) -> io::Result<()> {
    let mut builder = Builder::new(out);
    let text = serde_json::to_vec_pretty(manifest)?;
    let length = u64::try_from(text.len()).map_err(io::Error::other)?;
    append(&mut builder, MANIFEST, length, text.as_slice())?;
    for (part, source) in manifest.parts.iter().zip(sources) {
        source.bytes.rewind()?;
        append(&mut builder, source.name, part.bytes, &mut source.bytes)?;
    }
    builder.into_inner()?.flush()
}

fn append(
    builder: &mut Builder<&mut File>,
    name: &str,
    bytes: u64,
    from: impl Read,
) -> io::Result<()> {
    let mut header = Header::new_gnu();
    header.set_entry_type(EntryType::Regular);
    header.set_mode(0o600);
    header.set_size(bytes);
    builder.append_data(&mut header, name, from)
}

/// Reads an archive through, writes each part that is wanted where it belongs, and checks the size
/// and hash of all of them.
///
/// # Errors
/// It is not one of ours or not whole, it lacks a part that is wanted or has one that a newer program
/// must put back, or a part cannot be written.
pub fn read(archive: &Path, targets: &mut [Target<'_>]) -> Result<Manifest, Error> {
    let failed = |source| Error::Read { file: archive.to_owned(), source };
    let damaged = |fault: String| Error::Damaged { file: archive.to_owned(), fault };
    let mut tar = Archive::new(BufReader::new(File::open(archive).map_err(failed)?));
    let mut entries = entries(&mut tar).map_err(failed)?;
    let manifest = manifest(archive, entries.next())?;
    check_parts(archive, &manifest, targets)?;

    let mut parts = manifest.parts.iter();
    for entry in entries {
        let mut entry = entry.map_err(|error| damaged(error.to_string()))?;
        let Some(part) = parts.next() else {
            return Err(damaged(format!("{} is not in its manifest", shown(&name(&entry)))));
        };
        if name(&entry) != part.name || entry.header().entry_type() != EntryType::Regular {
            let (found, listed) = (shown(&name(&entry)), shown(&part.name));
            return Err(damaged(format!("{found} stands where {listed} should")));
        }
        let differs = || damaged(format!("{} is not what was saved", shown(&part.name)));
        if entry.size() != part.bytes {
            return Err(differs());
        }
        let mut nowhere = io::sink();
        let to: &mut dyn Write = match targets.iter_mut().find(|target| target.name == part.name) {
            Some(target) => &mut *target.to,
            None => &mut nowhere,
        };
        let found = copy_hashed(&mut entry, to).map_err(|fault| match fault {
            Fault::Reading(error) => damaged(format!("{}: {error}", shown(&part.name))),
            Fault::Writing(error) => Error::Write { file: archive.to_owned(), source: error },
        })?;
        if found != (part.bytes, part.sha256.clone()) {
            return Err(differs());
        }
    }
    match parts.next() {
        Some(part) => Err(damaged(format!("{} is missing", shown(&part.name)))),
        None => Ok(manifest),
    }
}

/// What an archive says of itself, the rest unread.
///
/// # Errors
/// It cannot be read, or is not one of ours.
pub fn manifest_of(archive: &Path) -> Result<Manifest, Error> {
    let failed = |source| Error::Read { file: archive.to_owned(), source };
    let mut tar = Archive::new(BufReader::new(File::open(archive).map_err(failed)?));
    let first = entries(&mut tar).map_err(failed)?.next();
    manifest(archive, first)
}

/// The parts as they stand: a header that announces a longer name for the next would be read into
/// memory, however long.
fn entries<R: Read>(tar: &mut Archive<R>) -> io::Result<Entries<'_, R>> {
    Ok(tar.entries()?.raw(true))
}

/// What the manifest says of these parts.
///
/// # Errors
/// One cannot be read.
pub fn describe(sources: &mut [Source<'_>]) -> io::Result<Vec<Part>> {
    sources.iter_mut().map(described).collect()
}

fn described(source: &mut Source<'_>) -> io::Result<Part> {
    source.bytes.rewind()?;
    let (bytes, sha256) =
        copy_hashed(&mut source.bytes, &mut io::sink()).map_err(|fault| match fault {
            Fault::Reading(error) | Fault::Writing(error) => error,
        })?;
    Ok(Part {
        name: source.name.to_owned(),
        bytes,
        sha256,
        may_be_left_out: source.may_be_left_out,
    })
}

/// Whether every part that is wanted is listed once, and every other may be left out.
fn check_parts(archive: &Path, manifest: &Manifest, targets: &[Target<'_>]) -> Result<(), Error> {
    let damaged = |fault: String| Error::Damaged { file: archive.to_owned(), fault };
    let mut names = HashSet::new();
    if let Some(twice) = manifest.parts.iter().find(|part| !names.insert(part.name.as_str())) {
        return Err(damaged(format!("{} lists {} twice", name_of(archive), shown(&twice.name))));
    }
    let is_lacking = |target: &&Target<'_>| !target.may_lack && !names.contains(target.name);
    if let Some(lacking) = targets.iter().find(is_lacking) {
        return Err(damaged(format!("{} lists no {}", name_of(archive), lacking.name)));
    }
    let is_known = |part: &&Part| targets.iter().any(|target| target.name == part.name);
    match manifest.parts.iter().find(|part| !is_known(part) && !part.may_be_left_out) {
        Some(_) => {
            Err(Error::NewerForm { file: archive.to_owned(), program: shown(&manifest.program) })
        }
        None => Ok(()),
    }
}

fn manifest<R: Read>(
    archive: &Path,
    first: Option<io::Result<Entry<'_, R>>>,
) -> Result<Manifest, Error> {
    let damaged = |fault: String| Error::Damaged { file: archive.to_owned(), fault };
    let not_ours = |why: &str| Error::NotOurs { file: archive.to_owned(), why: why.to_owned() };
    let entry = match first {
        Some(Ok(entry)) if name(&entry) == MANIFEST => entry,
        Some(Ok(_)) => return Err(not_ours("its first part is no manifest")),
        Some(Err(_)) | None => return Err(not_ours("it is no tar archive")),
    };
    let mut text = Vec::new();
    entry
        .take(LONGEST_MANIFEST)
        .read_to_end(&mut text)
        .map_err(|error| damaged(format!("{MANIFEST}: {error}")))?;
    let value: serde_json::Value = serde_json::from_slice(&text)
        .map_err(|error| damaged(format!("{MANIFEST} cannot be read: {error}")))?;
    // A later form may lack what this one has: its number is looked at before the rest.
    let form = value.get("form").and_then(serde_json::Value::as_u64).unwrap_or_default();
    if form > u64::from(FORM) {
        let program = value.get("program").and_then(serde_json::Value::as_str).unwrap_or("(newer)");
        return Err(Error::NewerForm { file: archive.to_owned(), program: shown(program) });
    }
    let manifest: Manifest = serde_json::from_value(value)
        .map_err(|error| damaged(format!("{MANIFEST} cannot be read: {error}")))?;
    let words = [&manifest.program, &manifest.sqlite, &manifest.saved_at];
    if let Some(word) = words.into_iter().find(|word| shown(word) != **word) {
        return Err(damaged(format!("{MANIFEST} holds {}", shown(word))));
    }
    Ok(manifest)
}

/// What another program wrote, fit for a line on a terminal.
fn shown(written: &str) -> String {
    const LONGEST: usize = 100;
    line(&written.chars().take(LONGEST).collect::<String>())
}

enum Fault {
    Reading(io::Error),
    Writing(io::Error),
}

/// Copies all of it; its length and SHA-256.
fn copy_hashed(from: &mut dyn Read, to: &mut dyn Write) -> Result<(u64, String), Fault> {
    let (mut piece, mut bytes, mut hasher) = (vec![0; PIECE], 0_u64, Sha256::new());
    loop {
        let length = match from.read(&mut piece) {
            Ok(0) => break,
            Ok(length) => length,
            Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
            Err(error) => return Err(Fault::Reading(error)),
        };
        let read = piece.get(..length).unwrap_or_default();
        hasher.update(read);
        to.write_all(read).map_err(Fault::Writing)?;
        bytes += u64::try_from(length).unwrap_or_default();
    }
    let sha256 = hasher.finalize().iter().map(|byte| format!("{byte:02x}")).collect();
    Ok((bytes, sha256))
}

fn name(entry: &Entry<'_, impl Read>) -> String {
    String::from_utf8_lossy(&entry.path_bytes()).into_owned()
}

#[cfg(test)]
mod tests {
    use super::{DATABASE, Error, File, Manifest, Path, Source, Target, describe, io, read, write};
    use std::io::Cursor;

    const PHOTO: &str = "photos/1.jpg";

    /// An archive of a database and a photo, and what its manifest says.
    fn archive(file: &Path, may_be_left_out: bool) -> Manifest {
        let (mut database, mut photo) = (Cursor::new(b"rows"), Cursor::new(vec![0xff; 100_000]));
        let mut sources = [
            Source { name: DATABASE, bytes: &mut database, may_be_left_out: false },
            Source { name: PHOTO, bytes: &mut photo, may_be_left_out },
        ];
        let parts = describe(&mut sources).expect("parts in memory can be read");
        let (program, sqlite) = ("9.9.9".to_owned(), "3".to_owned());
        let saved_at = "2026-11-25T03:15:00Z".to_owned();
        let (form, schema, members, notes) = (1, 1, 0, 0);
        let is_counted = false;
        let manifest =
            Manifest { form, program, sqlite, saved_at, schema, members, notes, is_counted, parts };
        let mut out = File::create(file).expect("a file in the folder for passing files");
        write(&mut out, &manifest, &mut sources).expect("room for the archive");
        manifest
    }

    #[test]
    fn a_second_part_is_written_and_read_like_the_first() {
        let file = std::env::temp_dir().join(format!("parts-{}.tar", std::process::id()));
        let manifest = archive(&file, false);
        let (mut database, mut photo) = (Vec::new(), Vec::new());
        let mut both = [
            Target { name: DATABASE, to: &mut database, may_lack: false },
            Target { name: PHOTO, to: &mut photo, may_lack: false },
        ];
        assert_eq!(read(&file, &mut both).ok(), Some(manifest.clone()));
        assert_eq!((database.as_slice(), photo.len()), (b"rows".as_slice(), 100_000));

        // A program that does not know it refuses, unless it may be left out; it is checked all the same.
        let alone = |file: &Path| {
            read(file, &mut [Target { name: DATABASE, to: &mut io::sink(), may_lack: false }])
        };
        assert!(
            matches!(alone(&file), Err(Error::NewerForm { program, .. }) if program == "9.9.9")
        );
        let manifest = archive(&file, true);
        assert_eq!(alone(&file).ok(), Some(manifest));
        let mut bytes = std::fs::read(&file).expect("the archive");
        let middle = bytes.len() / 2;
        if let Some(byte) = bytes.get_mut(middle) {
            *byte ^= 1;
        }
        std::fs::write(&file, bytes).expect("room for the archive");
        assert!(matches!(alone(&file), Err(Error::Damaged { .. })));
        let wanted = &mut [Target { name: "photos/2.jpg", to: &mut io::sink(), may_lack: false }];
        assert!(matches!(read(&file, wanted), Err(Error::Damaged { .. })));
        archive(&file, true);
        let mut database = Vec::new();
        let later = &mut [
            Target { name: DATABASE, to: &mut database, may_lack: false },
            Target { name: "photos/2.jpg", to: &mut io::sink(), may_lack: true },
        ];
        assert!(read(&file, later).is_ok(), "an archive of before there was such a part");
        assert_eq!(database, b"rows");
        let _ = std::fs::remove_file(&file);
    }
}
