//! Backups night after night in one folder: each has the date in its name, and the oldest may go.

use std::fs;
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};

use super::{Error, archive};
use crate::whole_file::sync_folder_of;

const BEGINNING: &str = "holewright-";
const END: &str = ".tar";
/// The letters of a date.
const DATE: usize = "2026-11-30".len();

/// A name in this folder for a backup of this day that nothing has yet: of several on one day, the later
/// ones are counted.
pub(super) fn name_in(folder: &Path, day: &str) -> PathBuf {
    let first = folder.join(format!("{BEGINNING}{day}{END}"));
    let mut name = first;
    let mut count = 1_u32;
    while name.symlink_metadata().is_ok() {
        count += 1;
        name = folder.join(format!("{BEGINNING}{day}-{count}{END}"));
    }
    name
}

/// Deletes all but the newest of those that were saved to be counted; which.
///
/// # Errors
/// The folder cannot be read, or one that should go cannot be deleted.
pub(super) fn keep_newest(folder: &Path, keep: NonZeroUsize) -> Result<Vec<PathBuf>, Error> {
    let failed = |source| Error::Read { file: folder.to_owned(), source };
    let mut counted = Vec::new();
    for entry in fs::read_dir(folder).map_err(failed)? {
        let entry = entry.map_err(failed)?;
        let Some(age) = entry.file_name().to_str().and_then(age) else { continue };
        // A link is not followed, and what cannot be read is somebody else's.
        let is_file = entry.file_type().is_ok_and(|kind| kind.is_file());
        if is_file && archive::manifest_of(&entry.path()).is_ok_and(|manifest| manifest.is_counted)
        {
            counted.push((age, entry.path()));
        }
    }
    counted.sort_unstable_by(|one, other| other.cmp(one));
    let mut deleted = Vec::new();
    for (_, file) in counted.into_iter().skip(keep.get()) {
        fs::remove_file(&file).map_err(|source| Error::Delete { file: file.clone(), source })?;
        deleted.push(file);
    }
    if let Some(file) = deleted.first() {
        sync_folder_of(file).map_err(failed)?;
    }
    Ok(deleted)
}

/// The day in a name of ours, and the how-manieth of that day.
fn age(name: &str) -> Option<(String, u32)> {
    let named = name.strip_prefix(BEGINNING)?.strip_suffix(END)?;
    let (day, count) = named.split_at_checked(DATE)?;
    let is_date = day.char_indices().all(|(at, letter)| match at {
        4 | 7 => letter == '-',
        _ => letter.is_ascii_digit(),
    });
    let count = match count.strip_prefix('-') {
        Some(count) => count.parse().ok().filter(|count| *count > 1)?,
        None if count.is_empty() => 1,
        None => return None,
    };
    is_date.then(|| (day.to_owned(), count))
}

#[cfg(test)]
mod tests {
    use super::age;

    #[test]
    fn only_its_own_names_have_an_age() {
        let of = |day: &str, count| Some((day.to_owned(), count));
        for (name, expected) in [
            ("holewright-2026-11-30.tar", of("2026-11-30", 1)),
            ("holewright-2026-11-30-10.tar", of("2026-11-30", 10)),
            ("holewright-2026-11-30-1.tar", None),
            ("holewright-2026-11-30-.tar", None),
            ("holewright-2026-11-30b.tar", None),
            ("holewright-2026-11-3.tar", None),
            ("holewright-2026-11.30.tar", None),
            ("holewright-2026-11-é.tar", None),
            ("holewright-2026-11-30.tar.partial", None),
            ("Holewright-2026-11-30.tar", None),
            ("holewright.tar", None),
        ] {
            assert_eq!(age(name), expected, "{name}");
        }
        assert!(age("holewright-2026-11-30-10.tar") > age("holewright-2026-11-30-9.tar"));
    }
}
