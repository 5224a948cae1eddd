//! A table as comma-separated values by RFC 4180: one head row, CRLF, quotes where a cell needs them.
//!
//! Leaves out what stands in the cells. By hand, because the `csv` crate would bring six more into a
//! library that needs a dozen, and leaves a cell that begins or ends with a space without quotes.

use crate::units::{Length, in_inch, in_mm, print};

/// One cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Cell {
    /// Words.
    Text(String),
    /// A number as the page prints it, without its unit: that stands in the column's name.
    Number(String),
    /// Nothing to say here.
    Empty,
}

/// A table with its column names; a name ends in the unit, `major_mm`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Table {
    /// The names, in order.
    pub columns: &'static [&'static str],
    /// The rows; each has a cell for every column.
    pub rows: Vec<Vec<Cell>>,
}

impl Cell {
    /// Words; none make an empty cell.
    pub(super) fn text(words: impl Into<String>) -> Self {
        let words = words.into();
        if words.is_empty() { Self::Empty } else { Self::Text(words) }
    }

    /// A number already printed.
    pub(super) fn number(printed: impl Into<String>) -> Self {
        Self::Number(printed.into())
    }

    /// A whole number.
    pub(super) fn count(count: usize) -> Self {
        Self::Number(count.to_string())
    }

    /// Yes or no; empty where it is not known.
    pub(super) fn yes_or_no(answer: Option<bool>) -> Self {
        match answer {
            Some(true) => Self::text("yes"),
            Some(false) => Self::text("no"),
            None => Self::Empty,
        }
    }

    /// A length in millimetres to a micrometre, as the tables of the pages print it.
    pub(super) fn mm(length: Length) -> Self {
        Self::Number(print::fixed(in_mm(length), 3))
    }

    /// A length in inches to a tenth of a thou, as the tables of the pages print it.
    pub(super) fn inch(length: Length) -> Self {
        Self::Number(print::fixed(in_inch(length), 4))
    }

    /// A cell, or an empty one.
    pub(super) fn or_empty(cell: Option<Self>) -> Self {
        cell.unwrap_or(Self::Empty)
    }
}

impl Table {
    /// The file.
    ///
    /// A spreadsheet takes a text that starts with `=`, `+`, `-`, `@`, a tab or a line end for a
    /// formula, be it behind a mark that is not seen, so such a text gets an apostrophe in front. Numbers stay as they are: `-0.02` is one.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::export::{Cell, Table};
    /// let rows = vec![
    ///     vec![Cell::Text("5 BA, close".into()), Cell::Number("-0.02".into())],
    ///     vec![Cell::Text("=1+1".into()), Cell::Empty],
    ///     vec![Cell::Text("a 1/4\" drill".into()), Cell::Number("6.350".into())],
    /// ];
    /// let table = Table { columns: &["name", "size_mm"], rows };
    /// assert_eq!(
    ///     table.csv(),
    ///     "name,size_mm\r\n\"5 BA, close\",-0.02\r\n'=1+1,\r\n\"a 1/4\"\" drill\",6.350\r\n"
    /// );
    /// ```
    #[must_use]
    pub fn csv(&self) -> String {
        let mut file = String::new();
        line(&mut file, self.columns.iter().map(|name| (*name).to_owned()));
        for row in &self.rows {
            line(&mut file, row.iter().map(written));
        }
        file
    }
}

/// One line of the file.
fn line(file: &mut String, cells: impl Iterator<Item = String>) {
    for (place, cell) in cells.enumerate() {
        if place > 0 {
            file.push(',');
        }
        file.push_str(&cell);
    }
    file.push_str("\r\n");
}

fn written(cell: &Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Number(printed) => printed.clone(),
        Cell::Text(words) => {
            quoted(if is_formula(words) { format!("'{words}") } else { words.clone() })
        }
    }
}

/// Whether a spreadsheet might take the text for a formula. One may look past spaces and past marks that
/// nobody sees, and take a sign in full width for the sign.
fn is_formula(words: &str) -> bool {
    let fillers = ['\u{115f}', '\u{1160}', '\u{3164}', '\u{ffa0}'];
    let start = words.trim_start_matches(|c: char| {
        fillers.contains(&c) || !(c.is_alphanumeric() || c.is_ascii_graphic() || SIGNS.contains(&c))
    });
    words.starts_with(['\t', '\r', '\n']) || start.starts_with(SIGNS)
}

/// What a formula begins with.
const SIGNS: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// In quotes where the text holds a comma, a quote or a line end, or could lose a space at an end.
fn quoted(text: String) -> String {
    let needs = text.contains([',', '"', '\r', '\n']) || text.trim() != text;
    if needs { format!("\"{}\"", text.replace('"', "\"\"")) } else { text }
}
