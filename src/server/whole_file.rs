//! A file that has its name only once it is whole: it is written beside its place under another
//! name, synced, and then renamed. What a killed program leaves is written over by the next.

use std::ffi::OsString;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io;
use std::os::unix::fs::{MetadataExt, OpenOptionsExt};
use std::path::{Path, PathBuf};

/// What SQLite may put beside a database while it works.
pub const BESIDE_DATABASE: [&str; 3] = ["-journal", "-wal", "-shm"];

/// A file on its way. Dropped before it is finished, it goes.
#[derive(Debug)]
pub struct WholeFile {
    place: PathBuf,
    path: PathBuf,
    /// Locked, so that no other program writes the same file at the same time.
    file: File,
}

impl WholeFile {
    /// Begins a file that is to stand at this place; nobody but its owner may read it.
    ///
    /// # Errors
    /// The folder cannot be written, or another program is writing the same file.
    pub fn begin(place: &Path) -> io::Result<Self> {
        let path = with_suffix(place, ".partial");
        let file = OpenOptions::new()
            .read(true)
            .write(true)
            .create(true)
            .truncate(false)
            .mode(0o600)
            .open(&path)?;
        let busy = || io::Error::new(io::ErrorKind::ResourceBusy, "another program is writing it");
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(busy()),
            Err(TryLockError::Error(error)) => return Err(error),
        }
        // Its last owner may have renamed it between the opening and the lock: it is no longer ours.
        let (ours, there) = (file.metadata()?, fs::metadata(&path).map_err(|_| busy())?);
        if (ours.dev(), ours.ino()) != (there.dev(), there.ino()) {
            return Err(busy());
        }
        file.set_len(0)?;
        let begun = Self { place: place.to_owned(), path, file };
        begun.remove_beside();
        Ok(begun)
    }

    /// Where it stands until it is finished.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The file, to write and read.
    pub const fn file(&mut self) -> &mut File {
        &mut self.file
    }

    /// Brings it to the disk and gives it its name, over a file that has it already.
    ///
    /// # Errors
    /// The disk is full or fails: what stood at its place still does.
    pub fn finish(self) -> io::Result<()> {
        let place = self.place.clone();
        self.finish_as(&place)
    }

    /// As [`WholeFile::finish`], under this name in the same folder.
    ///
    /// # Errors
    /// The disk is full or fails: what stood at its place still does.
    pub fn finish_as(self, place: &Path) -> io::Result<()> {
        self.file.sync_all()?;
        self.remove_beside();
        fs::rename(&self.path, place)?;
        sync_folder_of(place)
    }

    fn remove_beside(&self) {
        for suffix in BESIDE_DATABASE {
            // Most often there is none.
            let _ = fs::remove_file(with_suffix(&self.path, suffix));
        }
    }
}

impl Drop for WholeFile {
    fn drop(&mut self) {
        self.remove_beside();
        // Finished, it has moved away, and the name may be another program's by now.
        let is_ours = self.file.metadata().is_ok_and(|ours| {
            fs::metadata(&self.path)
                .is_ok_and(|there| (ours.dev(), ours.ino()) == (there.dev(), there.ino()))
        });
        if is_ours {
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// Brings the names in a file's folder to the disk.
///
/// # Errors
/// The disk fails.
pub fn sync_folder_of(file: &Path) -> io::Result<()> {
    let folder = match file.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    File::open(folder)?.sync_all()
}

/// The path with this after its last letter.
#[must_use]
pub fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(suffix);
    PathBuf::from(name)
}
