//! Who may read the data: its owner alone. The database holds the hashes of passwords, the secrets of
//! second factors and what members keep to themselves.

use std::fs::{self, DirBuilder, Permissions};
use std::io;
use std::os::unix::fs::{DirBuilderExt, PermissionsExt};
use std::path::{Path, PathBuf};

use super::FILE_NAME;

const FOLDER: u32 = 0o700;
const FILE: u32 = 0o600;
/// Whatever anybody but the owner may do.
const OTHERS: u32 = 0o077;
/// A folder that everybody writes in, such as `/tmp`: not ours to close.
const STICKY: u32 = 0o1000;

/// Makes a folder for its owner alone, if it is not there.
pub(super) fn make_folder(folder: &Path) -> io::Result<()> {
    DirBuilder::new().recursive(true).mode(FOLDER).create(folder)
}

/// Whether this process may write there.
pub(super) fn check_writable(path: &Path) -> io::Result<()> {
    Ok(rustix::fs::access(path, rustix::fs::Access::WRITE_OK)?)
}

/// Closes the data folder and what is ours in it to everybody else, where an earlier program, a copy by
/// hand or the user's own settings left it open. Where that is not allowed, the log says so.
pub(super) fn mend(folder: &Path, copies: &Path) {
    let close = |path: &Path, mode| {
        if let Err(error) = close(path, mode)
            // Then nothing can be served either, and that is said.
            && error.kind() != io::ErrorKind::ReadOnlyFilesystem
        {
            tracing::warn!(%error, "others may read {}, and that cannot be changed", path.display());
        }
    };
    for folder in [folder, copies] {
        close(folder, FOLDER);
    }
    for file in ours(folder).into_iter().chain(files(copies)) {
        close(&file, FILE);
    }
}

fn close(path: &Path, mode: u32) -> io::Result<()> {
    let found = match fs::symlink_metadata(path) {
        Ok(found) => found,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(()),
        Err(error) => return Err(error),
    };
    let is = found.permissions().mode();
    if found.is_symlink() || is & OTHERS == 0 || is & STICKY != 0 {
        return Ok(());
    }
    fs::set_permissions(path, Permissions::from_mode(mode))
}

/// The database, its log, and the databases that a restore kept aside.
fn ours(folder: &Path) -> Vec<PathBuf> {
    let is_ours = |path: &PathBuf| {
        path.file_name().is_some_and(|name| name.to_string_lossy().starts_with(FILE_NAME))
    };
    files(folder).into_iter().filter(is_ours).collect()
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(folder) else { return Vec::new() };
    let entries = entries.filter_map(Result::ok);
    entries.map(|entry| entry.path()).filter(|path| path.is_file()).collect()
}
