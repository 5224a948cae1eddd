//! The file that everything is saved in: an uncompressed tar archive, the manifest first. Any tar
//! program opens it; this one reads the parts it knows by their names and unpacks nothing else.

use std::fs::File;
use std::io::{self, BufReader, Read, Write};
use std::path::Path;

use sha2::{Digest, Sha256};
use tar::{Archive, Builder, Entry, EntryType, Header};

use super::manifest::{FORM, Manifest, Part};
use super::{Error, name_of};
use crate::db::FILE_NAME;

/// The first part.
pub const MANIFEST: &str = "manifest.json";
/// The part that holds the database.
pub const DATABASE: &str = FILE_NAME;

/// More than any manifest needs: a broken length must not fill the memory.
const LONGEST_MANIFEST: u64 = 1024 * 1024;
const PIECE: usize = 64 * 1024;

/// Writes an archive of this database, which the manifest describes.
///
/// # Errors
/// The disk is full or fails.
pub fn write(out: &mut File, manifest: &Manifest, database: &mut File) -> io::Result<()> {
    let mut builder = Builder::new(out);
    let text = serde_json::to_vec_pretty(manifest)?;
    let length = u64::try_from(text.len()).map_err(io::Error::other)?;
    append(&mut builder, MANIFEST, length, text.as_slice())?;
    let length = database.metadata()?.len();
    append(&mut builder, DATABASE, length, database)?;
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

/// Reads an archive through, writes its database there, and checks the size and hash of every part.
///
/// # Errors
/// It is not one of ours or not whole, or the database cannot be written.
pub fn read(archive: &Path, database: &mut dyn Write) -> Result<Manifest, Error> {
    let failed = |source| Error::Read { file: archive.to_owned(), source };
    let damaged = |fault: String| Error::Damaged { file: archive.to_owned(), fault };
    let not_ours = |why: &str| Error::NotOurs { file: archive.to_owned(), why: why.to_owned() };
    let mut tar = Archive::new(BufReader::new(File::open(archive).map_err(failed)?));
    let mut entries = tar.entries().map_err(failed)?;

    let mut first = match entries.next() {
        Some(Ok(entry)) if name(&entry) == MANIFEST => entry,
        Some(Ok(_)) => return Err(not_ours("its first part is no manifest")),
        Some(Err(_)) | None => return Err(not_ours("it is no tar archive")),
    };
    let manifest = manifest(archive, &mut first)?;

    let mut parts = manifest.parts.iter();
    for entry in entries {
        let mut entry = entry.map_err(|error| damaged(error.to_string()))?;
        let Some(part) = parts.next() else {
            return Err(damaged(format!("{} is not in its manifest", name(&entry))));
        };
        if name(&entry) != part.name || entry.header().entry_type() != EntryType::Regular {
            return Err(damaged(format!("{} stands where {} should", name(&entry), part.name)));
        }
        let found = copy_hashed(&mut entry, database).map_err(|fault| match fault {
            Fault::Reading(error) => damaged(format!("{}: {error}", part.name)),
            Fault::Writing(error) => Error::Write { file: archive.to_owned(), source: error },
        })?;
        if found != (part.bytes, part.sha256.clone()) {
            return Err(damaged(format!("{} is not what was saved", part.name)));
        }
    }
    match parts.next() {
        Some(part) => Err(damaged(format!("{} is missing", part.name))),
        None => Ok(manifest),
    }
}

/// The part that describes this file.
///
/// # Errors
/// The file cannot be read.
pub fn describe(part: &str, file: &mut File) -> io::Result<Part> {
    let (bytes, sha256) = copy_hashed(file, &mut io::sink()).map_err(|fault| match fault {
        Fault::Reading(error) | Fault::Writing(error) => error,
    })?;
    Ok(Part { name: part.to_owned(), bytes, sha256 })
}

fn manifest(archive: &Path, entry: &mut Entry<'_, impl Read>) -> Result<Manifest, Error> {
    let damaged = |fault: String| Error::Damaged { file: archive.to_owned(), fault };
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
        return Err(Error::NewerForm { file: archive.to_owned(), program: program.to_owned() });
    }
    let manifest: Manifest = serde_json::from_value(value)
        .map_err(|error| damaged(format!("{MANIFEST} cannot be read: {error}")))?;
    let names: Vec<&str> = manifest.parts.iter().map(|part| part.name.as_str()).collect();
    if names != [DATABASE] {
        return Err(damaged(format!("{} lists other parts than {DATABASE}", name_of(archive))));
    }
    Ok(manifest)
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
