//! The tables of figures in the README: compared with what the tests count, and written when asked.

#![expect(clippy::expect_used, reason = "a README that is not as expected ends its test")]

use std::fs;
use std::path::Path;

/// Set, the README's tables and `tests/published/summary.md` are written anew instead of compared.
const WRITE: &str = "WRITE_README";

/// Whether they are to be written.
pub(crate) fn is_to_be_written() -> bool {
    std::env::var_os(WRITE).is_some()
}

/// The README holds this table; it is known by the headings of all its columns but the first.
pub(crate) fn hold(table: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../README.md");
    let readme = fs::read_to_string(&path).expect("a README");
    let lines: Vec<&str> = readme.split_inclusive('\n').collect();
    let sought = headings(table);
    let first = lines.iter().position(|line| line.starts_with("| ") && headings(line) == sought);
    let first = first.expect("the README has a table with these headings");
    let (before, rest) = lines.split_at(first);
    let length = rest.iter().take_while(|line| line.starts_with('|')).count();
    let (held, after) = rest.split_at(length);
    if is_to_be_written() {
        let written = [&before.concat(), table, &after.concat()].concat();
        fs::write(&path, written).expect("the README is written");
    } else {
        assert!(held.concat() == table, "the README's table is old: {WRITE}=1 writes it anew");
    }
}

fn headings(table: &str) -> Vec<&str> {
    table.lines().next().unwrap_or_default().split('|').skip(2).map(str::trim).collect()
}
