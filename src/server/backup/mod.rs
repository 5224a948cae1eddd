//! Saving everything the club has in one file, checking such a file, and putting it back.
//!
//! - [`archive`]: the file: a tar archive with its manifest first, so that it opens anywhere.
//! - [`manifest`]: what is in it, with the hash of each part.
//! - [`save`], [`verify`], [`restore`]: what the three commands do; `nightly`: names with a date, and how
//!   many are kept; [`last`]: when the last one was made.
//!
//! Photos will be further parts of the same archive: a part is a line in `save` and one in `source`. Leaves out: the copies that the program makes
//! by itself before it changes the schema, which [`restore`] takes as well (`db`).

pub mod archive;
mod error;
pub mod last;
pub mod manifest;
mod nightly;
mod restore;
mod save;
mod source;
mod verify;

use std::path::Path;

pub use error::Error;
pub use manifest::Manifest;
pub use restore::{Restored, restore};
pub use save::{Existing, Place, Saved, Wanted, save};
pub use source::Held;
pub use verify::{Verified, verify};

/// Runs what a command asks for: it has the thread to itself.
///
/// # Errors
/// The system has no room for it, or it fails.
pub fn alone<T>(task: impl Future<Output = Result<T, Error>>) -> Result<T, Error> {
    tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .map_err(Error::System)?
        .block_on(task)
}

fn name_of(file: &Path) -> String {
    file.display().to_string()
}
