//! Replaying a family: every row gets one outcome, every unexplained difference a line.

use super::row::Figure;
use super::{Differences, Family, Kind, NotHeld, Row, read};

/// What became of the rows of one file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Outcome {
    /// The file.
    pub(crate) file: &'static str,
    /// Rows read in a source with at least one figure compared.
    pub(crate) rows: usize,
    /// Of these, rows with every figure equal.
    pub(crate) equal: usize,
    /// Of these, rows with a figure that differs for a known reason.
    pub(crate) different: usize,
    /// Of these, rows with at least one figure out of a formula.
    pub(crate) formula: usize,
    /// Of the formula rows, those whose formula is only held between bounds.
    pub(crate) bounds: usize,
    /// Of these, rows that name a thread or a drill we do not hold.
    pub(crate) not_held: usize,
    /// Figures compared in these rows.
    pub(crate) figures: usize,
    /// Rows read in a source with no figure that belongs to this issue.
    pub(crate) left_out: Vec<(u64, &'static str)>,
    /// Rows recalled and not read, replayed apart.
    pub(crate) memory: usize,
    /// Of these, rows with a figure that differs.
    pub(crate) memory_different: usize,
    /// Recalled figures that differ: worth a look, never decisive.
    pub(crate) recalled: Vec<String>,
    /// What nobody has explained.
    pub(crate) failures: Vec<String>,
}

/// Replays every row of a file.
pub(crate) fn replay(
    family: &Family,
    differences: &mut Differences,
    not_held: &mut NotHeld,
) -> Outcome {
    let mut outcome = Outcome { file: family.file, ..Outcome::default() };
    for (line, cells) in read(family.file) {
        let mut row = Row::new(cells);
        (family.replay)(&mut row);
        settle(family, line, &row, &mut outcome, differences, not_held);
    }
    outcome
}

fn settle(
    family: &Family,
    line: u64,
    row: &Row,
    outcome: &mut Outcome,
    differences: &mut Differences,
    not_held: &mut NotHeld,
) {
    let file = family.file;
    for (table, size) in &row.not_held {
        if !not_held.explains(table, size) {
            let fault = "is not held and not_held.csv does not say why";
            outcome.failures.push(format!("{file}:{line} {table} {size} {fault}"));
        }
    }
    if row.is_memory() {
        outcome.memory += 1;
        let differ = row.figures.iter().filter(|figure| !figure.agrees).collect::<Vec<_>>();
        outcome.memory_different += usize::from(!differ.is_empty());
        outcome.recalled.extend(differ.iter().map(|figure| difference(file, line, figure)));
        return;
    }
    if row.figures.is_empty() {
        match row.left_out.or_else(|| unused_only(family, row)) {
            Some(reason) => outcome.left_out.push((line, reason)),
            None => outcome.failures.push(format!("{file}:{line} nothing is compared: {row:?}")),
        }
        return;
    }
    for (column, cell) in row.cells() {
        let accounted = cell.is_empty()
            || row.touched.contains(column)
            || family.is_context(column)
            || family.is_unused(column);
        if !accounted {
            outcome.failures.push(format!("{file}:{line} {column} {cell:?} is not replayed"));
        }
    }
    let differ = row.figures.iter().filter(|figure| !figure.agrees).collect::<Vec<_>>();
    for figure in &differ {
        if !differences.explains(file, line, figure) {
            outcome.failures.push(difference(file, line, figure));
        }
    }
    outcome.rows += 1;
    outcome.figures += row.figures.len();
    outcome.equal += usize::from(differ.is_empty());
    outcome.different += usize::from(!differ.is_empty());
    outcome.not_held += usize::from(!row.not_held.is_empty());
    let by = |kind| row.figures.iter().any(|figure| figure.kind == kind);
    outcome.formula += usize::from(by(Kind::Formula) || by(Kind::Bounds));
    outcome.bounds += usize::from(by(Kind::Bounds) && !by(Kind::Formula));
}

/// The reason of the columns that wait, where a row has figures in no others.
fn unused_only(family: &Family, row: &Row) -> Option<&'static str> {
    let mut waiting = row.cells().filter(|(column, cell)| {
        !cell.is_empty() && !family.is_context(column) && !row.touched.contains(*column)
    });
    let (first, _) = waiting.next()?;
    let reason = family.unused.iter().find(|(column, _)| *column == first)?.1;
    waiting.all(|(column, _)| family.is_unused(column)).then_some(reason)
}

fn difference(file: &str, line: u64, figure: &Figure) -> String {
    let Figure { quantity, expected, got, tolerance, place, .. } = figure;
    let tolerance =
        if tolerance.is_empty() { String::new() } else { format!(", tolerance {tolerance}") };
    format!("{file}:{line} {quantity}: expected {expected}, got {got}{tolerance} ({place})")
}
