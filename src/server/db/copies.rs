//! The copies that the program makes by itself, each before it brings the schema up to date.

use std::fs;
use std::path::{Path, PathBuf};

use super::{Error, FILE_NAME, copy, make};
use crate::whole_file::{WholeFile, give};

/// Their folder in the data folder.
const FOLDER: &str = "copies";
/// How many are kept.
const KEPT: usize = 3;

/// Where they are.
pub(super) fn folder_in(data: &Path) -> PathBuf {
    data.join(FOLDER)
}

/// Copies the database as it is before its schema becomes this one, and drops the oldest copies.
///
/// # Errors
/// The copy cannot be made, or is not sound.
pub(super) async fn keep(data: &Path, next: i64) -> Result<PathBuf, Error> {
    let folder = folder_in(data);
    make(&folder)?;
    let place = folder.join(format!("before-{next}.sqlite"));
    let failed = |source| Error::Copy { file: place.clone(), source };
    let owner = fs::metadata(data).map_err(failed)?;
    give(&folder, &owner).map_err(failed)?;
    let begun = WholeFile::begin(&place).map_err(failed)?;
    copy::make(&data.join(FILE_NAME), &begun).await?;
    copy::examine(begun.path()).await?;
    give(begun.path(), &owner).map_err(failed)?;
    begun.finish().map_err(failed)?;
    for old in newest_first(data).into_iter().skip(KEPT) {
        // One too many does no harm.
        let _ = fs::remove_file(old);
    }
    Ok(place)
}

/// The newest copy whose schema is not newer than this one.
pub(super) async fn newest_up_to(data: &Path, known: i64) -> Option<PathBuf> {
    for file in newest_first(data) {
        if let Ok(Some(found)) = copy::schema(&file).await
            && found <= known
        {
            return Some(file);
        }
    }
    None
}

/// Every copy; the schema in the name is its age.
fn newest_first(data: &Path) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(folder_in(data)) else { return Vec::new() };
    let mut copies: Vec<(i64, PathBuf)> = entries
        .filter_map(|entry| {
            let path = entry.ok()?.path();
            let name = path.file_name()?.to_str()?;
            let next = name.strip_prefix("before-")?.strip_suffix(".sqlite")?.parse().ok()?;
            Some((next, path))
        })
        .collect();
    copies.sort_unstable_by(|a, b| b.cmp(a));
    copies.into_iter().map(|(_, path)| path).collect()
}
