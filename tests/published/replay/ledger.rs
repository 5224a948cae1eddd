//! The two ledgers: figures that differ for a known reason, and sizes we do not hold.
//!
//! An entry that is not needed any more is as wrong as a missing one.

use std::collections::{BTreeMap, BTreeSet};

use super::row::Figure;
use super::{decimal, read};

/// `differences.csv`: printed figures that are not ours, each with ours and the reason.
pub(crate) struct Differences {
    entries: BTreeMap<(String, u64, String), Difference>,
    used: BTreeSet<(String, u64, String)>,
}

/// What a source prints, what we say, and why.
struct Difference {
    printed: String,
    ours: String,
    reason: String,
}

impl Difference {
    /// Whether the entry still is about this figure: what is printed, and what we answer. An entry
    /// that let any other answer pass would hide a fault of ours.
    fn is_of(&self, figure: &Figure) -> bool {
        let same = match (decimal(&self.ours), figure.got.parse()) {
            (Some(ours), Ok(got)) => ours.agrees(got),
            _ => self.ours == figure.got,
        };
        same && self.printed == figure.expected
    }
}

impl Differences {
    /// Reads the ledger.
    pub(crate) fn read() -> Self {
        let mut entries = BTreeMap::new();
        for (line, cells) in read("differences.csv") {
            let row = cells["line"].parse().unwrap_or_else(|_| panic!("differences.csv:{line}"));
            let key = (cells["file"].clone(), row, cells["quantity"].clone());
            assert!(!cells["reason"].is_empty(), "differences.csv:{line} gives no reason");
            let [printed, ours, reason] =
                ["printed", "ours", "reason"].map(|name| cells[name].clone());
            let twice = entries.insert(key, Difference { printed, ours, reason });
            assert!(twice.is_none(), "differences.csv:{line} stands twice");
        }
        Self { entries, used: BTreeSet::new() }
    }

    /// Whether this figure is known to differ, and differs as the ledger says.
    pub(crate) fn explains(&mut self, file: &str, line: u64, figure: &Figure) -> bool {
        let key = (file.to_owned(), line, figure.quantity.clone());
        let known = self.entries.get(&key).is_some_and(|entry| entry.is_of(figure));
        if known {
            self.used.insert(key);
        }
        known
    }

    /// Entries no figure differed by.
    pub(crate) fn stale(&self) -> Vec<String> {
        self.entries
            .keys()
            .filter(|key| !self.used.contains(*key))
            .map(|(file, line, quantity)| {
                format!(
                    "differences.csv: {file}:{line} {quantity} does not differ, or not as it says"
                )
            })
            .collect()
    }

    /// How many times each reason is given, in a file.
    pub(crate) fn reasons(&self, file: &str) -> BTreeMap<&str, usize> {
        let mut reasons = BTreeMap::new();
        for ((of, _, _), Difference { reason, .. }) in &self.entries {
            if of == file {
                *reasons.entry(reason.as_str()).or_default() += 1;
            }
        }
        reasons
    }
}

/// `not_held.csv`: sizes a source names and our tables do not hold, each with the reason.
pub(crate) struct NotHeld {
    entries: BTreeMap<(String, String), String>,
    used: BTreeSet<(String, String)>,
}

impl NotHeld {
    /// Reads the ledger.
    pub(crate) fn read() -> Self {
        let mut entries = BTreeMap::new();
        for (line, cells) in read("not_held.csv") {
            assert!(!cells["reason"].is_empty(), "not_held.csv:{line} gives no reason");
            let key = (cells["table"].clone(), cells["size"].clone());
            let twice = entries.insert(key, cells["reason"].clone());
            assert!(twice.is_none(), "not_held.csv:{line} stands twice");
        }
        Self { entries, used: BTreeSet::new() }
    }

    /// Why we do not hold a size, if the ledger says so.
    pub(crate) fn explains(&mut self, table: &str, size: &str) -> bool {
        let key = (table.to_owned(), size.to_owned());
        let known = self.entries.contains_key(&key);
        if known {
            self.used.insert(key);
        }
        known
    }

    /// Entries that are held, or that no source names.
    pub(crate) fn stale(&self) -> Vec<String> {
        self.entries
            .keys()
            .filter(|key| !self.used.contains(*key))
            .map(|(table, size)| format!("not_held.csv: {table} {size} was not missed by any row"))
            .collect()
    }

    /// How many sizes each reason covers.
    pub(crate) fn reasons(&self) -> BTreeMap<(&str, &str), usize> {
        let mut reasons = BTreeMap::new();
        for ((table, _), reason) in &self.entries {
            *reasons.entry((table.as_str(), reason.as_str())).or_default() += 1;
        }
        reasons
    }
}
