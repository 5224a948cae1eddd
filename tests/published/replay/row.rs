//! One row under replay: its cells, and what was compared so far.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Display;
use std::panic::Location;

use super::{Printed, decimal};

/// What a figure puts to the test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Kind {
    /// A figure a table row holds as printed.
    Table,
    /// A held figure in other units.
    Conversion,
    /// A formula's answer held between bounds, where the source prints no figure for it.
    Bounds,
    /// A printed figure that follows from a formula of `calc`.
    Formula,
}

/// One comparison.
#[derive(Clone, Debug)]
pub(crate) struct Figure {
    /// The column, or the column and what was made of it.
    pub(crate) quantity: String,
    /// As printed, or as claimed.
    pub(crate) expected: String,
    /// The library's answer.
    pub(crate) got: String,
    /// In the unit of the printed figure; empty for a claim in words.
    pub(crate) tolerance: String,
    /// What it tests.
    pub(crate) kind: Kind,
    /// Whether the two agree.
    pub(crate) agrees: bool,
    /// The line of the check.
    pub(crate) place: &'static Location<'static>,
}

/// A row of a copied file.
#[derive(Debug)]
pub(crate) struct Row {
    cells: BTreeMap<String, String>,
    /// What was compared.
    pub(crate) figures: Vec<Figure>,
    /// Columns that are accounted for.
    pub(crate) touched: BTreeSet<String>,
    /// Threads and drills the row names and we do not hold.
    pub(crate) not_held: Vec<(String, String)>,
    /// Why no figure of the row is replayed.
    pub(crate) left_out: Option<&'static str>,
}

impl Row {
    /// A row with nothing compared yet.
    pub(crate) fn new(cells: BTreeMap<String, String>) -> Self {
        Self {
            cells,
            figures: Vec::new(),
            touched: BTreeSet::new(),
            not_held: Vec::new(),
            left_out: None,
        }
    }

    /// The cell as printed; empty where the source is silent.
    pub(crate) fn text(&self, column: &str) -> &str {
        self.cells.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    /// Whether the file has this column.
    pub(crate) fn has(&self, column: &str) -> bool {
        self.cells.contains_key(column)
    }

    /// The cell's figure, where it prints one.
    pub(crate) fn number(&self, column: &str) -> Option<f64> {
        decimal(self.text(column)).map(|printed| printed.value)
    }

    /// Whether the figure was recalled and not read: such a row never decides.
    pub(crate) fn is_memory(&self) -> bool {
        self.text("grade") == "memory"
    }

    /// Every column and its cell.
    pub(crate) fn cells(&self) -> impl Iterator<Item = (&str, &str)> {
        self.cells.iter().map(|(column, cell)| (column.as_str(), cell.as_str()))
    }

    /// Compares the figure of a cell, where there is one, with ours.
    #[track_caller]
    pub(crate) fn check(&mut self, column: &str, kind: Kind, got: f64) {
        let printed = self.text(column).to_owned();
        self.touched.insert(column.to_owned());
        if !printed.is_empty() {
            self.check_printed(column, &printed, kind, got);
        }
    }

    /// Compares a figure printed inside a cell of words with ours.
    #[track_caller]
    pub(crate) fn check_printed(&mut self, quantity: &str, printed: &str, kind: Kind, got: f64) {
        let figure = decimal(printed)
            .unwrap_or_else(|| panic!("{quantity} {printed:?} is not a decimal: {self:?}"));
        let Printed { tolerance, .. } = figure;
        self.push(quantity, kind, printed, got, tolerance.to_string(), figure.agrees(got));
    }

    /// Records a claim in words: what ought to hold, and what was found.
    #[track_caller]
    pub(crate) fn claim(
        &mut self,
        column: &str,
        kind: Kind,
        expected: impl Display,
        got: impl Display,
        agrees: bool,
    ) {
        let base = column.split(':').next().unwrap_or(column);
        self.touched.insert(base.to_owned());
        self.push(column, kind, &expected.to_string(), got, String::new(), agrees);
    }

    /// Says that no figure of this row is replayed, and why.
    pub(crate) fn leave_out(&mut self, reason: &'static str) {
        self.left_out = Some(reason);
    }

    /// Accounts for a column whose figure is used as an input of another check.
    pub(crate) fn used(&mut self, column: &str) {
        self.touched.insert(column.to_owned());
    }

    /// Notes that the row names something our tables do not hold: `threads/ba` and the size.
    pub(crate) fn miss(&mut self, table: impl Into<String>, size: impl Into<String>) {
        let entry = (table.into(), size.into());
        if !self.not_held.contains(&entry) {
            self.not_held.push(entry);
        }
    }

    #[track_caller]
    fn push(
        &mut self,
        quantity: &str,
        kind: Kind,
        expected: &str,
        got: impl Display,
        tolerance: String,
        agrees: bool,
    ) {
        self.figures.push(Figure {
            quantity: quantity.to_owned(),
            expected: expected.to_owned(),
            got: got.to_string(),
            tolerance,
            kind,
            agrees,
            place: Location::caller(),
        });
    }
}
