//! The summary: a line per file for the terminal, and the table the README links.

use std::fmt::Write;

use super::{Differences, Family, NotHeld, Outcome};

/// The sums over every file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Totals {
    /// Rows read in a source and replayed.
    pub(crate) rows: usize,
    /// Of these, rows that agree in every figure.
    pub(crate) equal: usize,
    /// Of these, rows that differ for a known reason.
    pub(crate) different: usize,
    /// Of these, rows that test a formula.
    pub(crate) formula: usize,
    /// Of the formula rows, those whose formula is only held between bounds.
    pub(crate) bounds: usize,
    /// Of these, rows that name a size we do not hold.
    pub(crate) not_held: usize,
    /// Figures compared.
    pub(crate) figures: usize,
    /// Rows read that nothing here goes by.
    pub(crate) left_out: usize,
    /// Rows recalled, replayed apart.
    pub(crate) memory: usize,
    /// Of these, rows that differ.
    pub(crate) memory_different: usize,
}

/// Sums up.
pub(crate) fn totals(outcomes: &[Outcome]) -> Totals {
    outcomes.iter().fold(Totals::default(), |sum, outcome| Totals {
        rows: sum.rows + outcome.rows,
        equal: sum.equal + outcome.equal,
        different: sum.different + outcome.different,
        formula: sum.formula + outcome.formula,
        bounds: sum.bounds + outcome.bounds,
        not_held: sum.not_held + outcome.not_held,
        figures: sum.figures + outcome.figures,
        left_out: sum.left_out + outcome.left_out.len(),
        memory: sum.memory + outcome.memory,
        memory_different: sum.memory_different + outcome.memory_different,
    })
}

/// One file in one line.
pub(crate) fn line(outcome: &Outcome) -> String {
    format!(
        "{}: {} rows, {} equal, {} DIFFERENCE ({} figures, {} rows by formula, {} not held, {} not used, {} memory)",
        outcome.file,
        outcome.rows,
        outcome.equal,
        outcome.different,
        outcome.figures,
        outcome.formula,
        outcome.not_held,
        outcome.left_out.len(),
        outcome.memory,
    )
}

/// The whole summary as Markdown.
pub(crate) fn markdown(
    families: &[&Family],
    outcomes: &[Outcome],
    differences: &Differences,
    not_held: &NotHeld,
) -> String {
    let mut out = String::from(HEAD);
    table(&mut out, outcomes);
    out.push_str("\n## Why figures differ\n\n");
    for outcome in outcomes {
        for (reason, count) in differences.reasons(outcome.file) {
            push(&mut out, format_args!("- `{}` ({count}): {reason}", outcome.file));
        }
    }
    out.push_str("\n## Sizes the sources name and the tables do not hold\n\n");
    for ((table, reason), count) in not_held.reasons() {
        push(&mut out, format_args!("- {table} ({count}): {reason}"));
    }
    out.push_str("\n## Printed figures that nothing here goes by\n\n");
    for (family, outcome) in families.iter().zip(outcomes) {
        for (column, reason) in family.unused {
            push(&mut out, format_args!("- `{}`, column `{column}`: {reason}", family.file));
        }
        let mut reasons = outcome.left_out.iter().map(|(_, reason)| *reason).collect::<Vec<_>>();
        reasons.sort_unstable();
        for group in reasons.chunk_by(|a, b| a == b) {
            let (count, reason) = (group.len(), group.first().copied().unwrap_or_default());
            push(&mut out, format_args!("- `{}`, rows: {count}: {reason}", family.file));
        }
    }
    out
}

const HEAD: &str = "\
# Published figures, replayed

Written by `tests/published`; do not edit. Every printed figure is compared within half of its last
printed place. *Equal* and *DIFFERENCE* count rows read in a source; a row differs if one of its
figures does, and the reason stands below. *By formula* counts rows with at least one figure that
`calc` works out; the others are table figures and conversions. In brackets: the rows among these
whose source prints no figure for the formula, so that its answer is held between bounds (the
engagement of a tapping list, 20 to 110 %; a forming tap's hole, within what makers print). *Not
held* counts rows, among the first number, that name a size our tables do not hold: their formulas
are replayed all the same. *Not used* counts further rows by which nothing here goes, each with its
reason at the end. *Memory* rows were recalled and not read: replayed, counted apart, never
decisive. The two rows of `common_practice.csv` are in no source and say so.

";

/// The same by folder, for the README.
pub(crate) fn by_folder(outcomes: &[Outcome]) -> String {
    let mut out = String::new();
    head(&mut out, "figures from");
    let folder = |outcome: &Outcome| outcome.file.split('/').next().unwrap_or_default();
    for group in outcomes.chunk_by(|a, b| folder(a) == folder(b)) {
        let name = group.first().map_or("", folder);
        cells(&mut out, &format!("`{name}`"), &totals(group));
    }
    cells(&mut out, "**all**", &totals(outcomes));
    out
}

fn head(out: &mut String, first: &str) {
    push(
        out,
        format_args!(
            "| {first} | rows | equal | DIFFERENCE | by formula (bounds) | figures | not held | not used | memory (differ) |"
        ),
    );
    push(out, format_args!("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |"));
}

fn table(out: &mut String, outcomes: &[Outcome]) {
    head(out, "file");
    for outcome in outcomes {
        let one = totals(std::slice::from_ref(outcome));
        cells(out, &format!("`{}`", outcome.file), &one);
    }
    cells(out, "**all**", &totals(outcomes));
}

fn cells(out: &mut String, name: &str, sum: &Totals) {
    push(
        out,
        format_args!(
            "| {name} | {} | {} | {} | {} ({}) | {} | {} | {} | {} ({}) |",
            sum.rows,
            sum.equal,
            sum.different,
            sum.formula,
            sum.bounds,
            sum.figures,
            sum.not_held,
            sum.left_out,
            sum.memory,
            sum.memory_different,
        ),
    );
}

fn push(out: &mut String, line: std::fmt::Arguments) {
    writeln!(out, "{line}").expect("writing to a string");
}
