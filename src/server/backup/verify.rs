//! Checking a saved file without touching the data.

use std::fmt;
use std::path::{Path, PathBuf};

use super::Error;
use super::source::{Held, readable, unpack};
use crate::whole_file::{WholeFile, with_suffix};

/// A file that was found sound.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verified {
    /// The file.
    pub file: PathBuf,
    /// What it holds.
    pub held: Held,
}

/// Reads a saved file through: every hash, every page, every reference. Its database is unpacked
/// beside it for as long as that takes.
///
/// # Errors
/// It is not one of ours, not sound, or newer than this program.
pub async fn verify(saved: &Path) -> Result<Verified, Error> {
    readable(saved)?;
    let mut unpacked = WholeFile::begin(&with_suffix(saved, ".check"))
        .map_err(|source| Error::Write { file: with_suffix(saved, ".check"), source })?;
    let held = unpack(saved, &mut unpacked).await?;
    Ok(Verified { file: saved.to_owned(), held })
}

impl fmt::Display for Verified {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} is sound: {}", self.file.display(), self.held)
    }
}
