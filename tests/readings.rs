//! Where exactly each source was read: pages tell a maker by its kind, the tests by its name.

#![expect(clippy::expect_used, reason = "a file that cannot be read ends its test")]

use std::path::Path;

/// One source: as pages give it, and as it was read.
pub(crate) struct Reading {
    pub(crate) page: String,
    pub(crate) read_in: String,
}

/// Every source whose words on a page are not those it was read under.
pub(crate) fn all() -> Vec<Reading> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/published/sources.csv");
    let mut rows = csv::Reader::from_path(path).expect("the file of sources");
    let records = rows.records().map(|record| record.expect("a row of two cells"));
    records
        .map(|record| {
            let cell = |place| record.get(place).expect("two cells").to_owned();
            Reading { page: cell(0), read_in: cell(1) }
        })
        .collect()
}

/// What a source was read in: as it stands where no other words are kept.
pub(crate) fn of(cite: &str) -> Vec<String> {
    let held = all().into_iter().filter(|reading| reading.page == cite);
    let mut read: Vec<_> = held.map(|reading| reading.read_in).collect();
    if read.is_empty() {
        read.push(cite.to_owned());
    }
    read
}
