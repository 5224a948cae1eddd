//! One program at a time has a data folder: whoever serves it, or puts back a copy, holds a lock on
//! the folder itself. The lock leaves no file and goes with the process, however that ends.
//!
//! Reading and copying need no lock, nor does a command that writes a row beside the server, unless it
//! has to bring the schema up to date first.

use std::fs::{File, TryLockError};
use std::path::Path;

use super::{Error, make};

/// The lock on a data folder, held for as long as this lives.
#[derive(Debug)]
pub struct FolderLock {
    _folder: File,
}

impl FolderLock {
    /// Locks this folder, made if it is not there.
    ///
    /// # Errors
    /// Another program holds it, or it cannot be made or locked.
    pub fn take(folder: &Path) -> Result<Self, Error> {
        make(folder)?;
        let refused = |source| Error::Lock { folder: folder.to_owned(), source };
        let held = File::open(folder).map_err(refused)?;
        match held.try_lock() {
            Ok(()) => Ok(Self { _folder: held }),
            Err(TryLockError::WouldBlock) => Err(Error::InUse { folder: folder.to_owned() }),
            Err(TryLockError::Error(source)) => Err(refused(source)),
        }
    }
}
