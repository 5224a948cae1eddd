//! Whether the files that are open are still the ones in the data folder: somebody may move, delete or
//! replace them under a running server, and what it then wrote would be found by nobody.

use std::fs;
use std::os::unix::fs::MetadataExt;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use crate::whole_file::{BESIDE_DATABASE, with_suffix};

/// The folder and the files of an open database, by device and number. Until they are noted down they
/// count as standing.
#[derive(Clone, Debug, Default)]
pub(super) struct Standing(Arc<OnceLock<Vec<(PathBuf, Number)>>>);

/// Device and number of a file.
type Number = (u64, u64);

impl Standing {
    /// Notes down the database with what stands beside it, once every connection has it open.
    pub(super) fn note_down(&self, folder: &Path, file: &Path) {
        let beside = BESIDE_DATABASE.map(|suffix| with_suffix(file, suffix));
        let all = [folder, file].map(Path::to_owned).into_iter().chain(beside);
        let all = all.filter_map(|path| Some((number(&path)?, path)));
        let _ = self.0.set(all.map(|(number, path)| (path, number)).collect());
    }

    /// The first that is no longer what it was. It costs a few millionths of a second.
    pub(super) fn gone(&self) -> Option<&Path> {
        let noted = self.0.get()?;
        noted.iter().find(|(path, was)| number(path) != Some(*was)).map(|(path, _)| path.as_path())
    }
}

fn number(path: &Path) -> Option<Number> {
    let found = fs::metadata(path).ok()?;
    Some((found.dev(), found.ino()))
}
