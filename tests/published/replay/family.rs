//! One copied file and how its rows are replayed.

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::Row;

/// A copied file: what its columns are for, and the replay of one row.
pub(crate) struct Family {
    /// Path below `data/`.
    pub(crate) file: &'static str,
    /// Columns that name, explain or flag, and carry no figure.
    pub(crate) context: &'static [&'static str],
    /// Columns with a figure that nothing here goes by, each with the reason.
    pub(crate) unused: &'static [(&'static str, &'static str)],
    /// Compares the figures of one row.
    pub(crate) replay: fn(&mut Row),
}

/// Columns that carry no figure in any file.
const CONTEXT: [&str; 6] =
    ["authority", "source", "grade", "misprint_flag", "note", "engagement_note"];

impl Family {
    /// Whether this column carries no figure.
    pub(crate) fn is_context(&self, column: &str) -> bool {
        CONTEXT.contains(&column) || self.context.contains(&column)
    }

    /// Whether nothing here goes by the figures of this column.
    pub(crate) fn is_unused(&self, column: &str) -> bool {
        self.unused.iter().any(|(unused, _)| *unused == column)
    }
}

/// Where the copied files and the ledgers are.
pub(crate) fn data_folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/published/data")
}

/// The rows of a file below `data/`, each with its line number.
pub(crate) fn read(file: &str) -> Vec<(u64, BTreeMap<String, String>)> {
    let path = data_folder().join(file);
    let mut reader = csv::Reader::from_path(&path)
        .unwrap_or_else(|error| panic!("{} cannot be read: {error}", path.display()));
    let headers = reader.headers().expect("a header line").clone();
    reader
        .records()
        .map(|record| {
            let record = record.unwrap_or_else(|error| panic!("{file}: {error}"));
            let line = record.position().expect("a position").line();
            let cells = headers.iter().zip(&record);
            (line, cells.map(|(name, cell)| (name.into(), cell.trim().into())).collect())
        })
        .collect()
}
