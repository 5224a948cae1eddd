//! A file that has its name only once it is whole: it is written beside its place under another
//! name, synced, and then renamed. What a killed program leaves goes, and the next makes its own; what
//! anybody else put in its way is neither followed nor written into.

use std::ffi::OsString;
use std::fs::{self, File, Metadata, OpenOptions, Permissions, TryLockError};
use std::io;
use std::os::unix::fs::{MetadataExt, OpenOptionsExt, PermissionsExt};
use std::path::{Path, PathBuf};

/// What SQLite may put beside a database while it works.
pub const BESIDE_DATABASE: [&str; 3] = ["-journal", "-wal", "-shm"];

/// Its owner may read and write it, and nobody else.
const MODE: u32 = 0o600;
/// Who else could do anything with a file.
const OTHERS: u32 = 0o077;

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
    /// The folder cannot be written, another program is writing the same file, or something that no
    /// program of ours left has its name.
    pub fn begin(place: &Path) -> io::Result<Self> {
        let path = with_suffix(place, ".partial");
        clear(&path)?;
        let mut made = OpenOptions::new();
        made.read(true).write(true).create_new(true).mode(MODE);
        let file = made.open(&path).map_err(|error| match error.kind() {
            io::ErrorKind::AlreadyExists => busy(),
            _ => error,
        })?;
        // Whatever the umask.
        file.set_permissions(Permissions::from_mode(MODE))?;
        lock(&file)?;
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
            fs::symlink_metadata(&self.path).is_ok_and(|there| number(&ours) == number(&there))
        });
        if is_ours {
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// Takes away what a killed program of ours left under this name.
fn clear(path: &Path) -> io::Result<()> {
    let found = match fs::symlink_metadata(path) {
        Ok(found) => found,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(()),
        Err(error) => return Err(error),
    };
    if !is_left_over(path, &found)? {
        let said = format!("{} is in the way: look what it is, and delete it", path.display());
        return Err(io::Error::new(io::ErrorKind::AlreadyExists, said));
    }
    // Whoever is at work on it holds it.
    let left = match File::open(path) {
        Ok(left) => left,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Err(busy()),
        Err(error) => return Err(error),
    };
    lock(&left)?;
    let (left, there) = (left.metadata()?, fs::symlink_metadata(path).map_err(|_| busy())?);
    if number(&left) != number(&there) || number(&left) != number(&found) {
        return Err(busy());
    }
    fs::remove_file(path)
}

/// Whether it can only be a file of ours: a plain one, under this one name, closed to others, and of the
/// user who runs the program or owns the folder.
fn is_left_over(path: &Path, found: &Metadata) -> io::Result<bool> {
    if !found.is_file() || found.nlink() != 1 || found.mode() & OTHERS != 0 {
        return Ok(false);
    }
    let owner = found.uid();
    Ok(owner == rustix::process::geteuid().as_raw()
        || owner == fs::metadata(folder_of(path))?.uid())
}

fn lock(file: &File) -> io::Result<()> {
    match file.try_lock() {
        Ok(()) => Ok(()),
        Err(TryLockError::WouldBlock) => Err(busy()),
        Err(TryLockError::Error(error)) => Err(error),
    }
}

fn busy() -> io::Error {
    io::Error::new(io::ErrorKind::ResourceBusy, "another program is writing it")
}

fn number(of: &Metadata) -> (u64, u64) {
    (of.dev(), of.ino())
}

/// Brings the names in a file's folder to the disk.
///
/// # Errors
/// The disk fails.
pub fn sync_folder_of(file: &Path) -> io::Result<()> {
    File::open(folder_of(file))?.sync_all()
}

/// The folder that a file stands in.
#[must_use]
pub fn folder_of(file: &Path) -> &Path {
    match file.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// Gives what was made to the user of what it belongs to: root may run a command on the data of the
/// server's own user, who must be able to write there afterwards.
///
/// # Errors
/// The owner differs, and cannot be changed.
pub fn give(made: &Path, like: &Metadata) -> io::Result<()> {
    let ours = fs::metadata(made)?;
    if (ours.uid(), ours.gid()) != (like.uid(), like.gid()) {
        std::os::unix::fs::chown(made, Some(like.uid()), Some(like.gid()))?;
    }
    Ok(())
}

/// The path with this after its last letter.
#[must_use]
pub fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(suffix);
    PathBuf::from(name)
}
