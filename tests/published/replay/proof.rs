//! The runner itself put to the test: what must fail does.

use super::{Differences, Family, Kind, NotHeld, Outcome, Row, replay};

/// Replays the small file of our own in a way of our own.
fn outcome(replay_row: fn(&mut Row)) -> Outcome {
    let family = Family {
        file: "common_practice.csv",
        context: &["thread", "drill"],
        unused: &[],
        replay: replay_row,
    };
    replay(&family, &mut Differences::read(), &mut NotHeld::read())
}

#[test]
fn a_figure_that_differs_fails_by_file_and_line() {
    let wrong = outcome(|row| row.check("percent", Kind::Formula, 76.9));
    assert_eq!((wrong.rows, wrong.equal), (2, 0));
    let [first, second] = wrong.failures.as_slice() else { panic!("{:?}", wrong.failures) };
    let start = "common_practice.csv:2 percent: expected 76.8, got 76.9, tolerance 0.05";
    assert!(first.starts_with(start), "{first}");
    assert!(second.starts_with("common_practice.csv:3 percent: expected 78.1"), "{second}");
}

#[test]
fn a_row_with_nothing_compared_fails() {
    assert_eq!(outcome(|_| ()).failures.len(), 2);
}

#[test]
fn a_cell_nobody_accounts_for_fails() {
    let silent = outcome(|row| row.claim("grade", Kind::Table, "", "", true));
    assert!(silent.failures.iter().all(|line| line.contains("percent")), "{:?}", silent.failures);
    assert_eq!(silent.failures.len(), 2);
}

#[test]
fn a_size_we_do_not_hold_fails_without_a_reason() {
    let missed = outcome(|row| {
        row.miss("threads/ba", "7");
        row.leave_out("a test of the runner");
    });
    assert!(missed.failures[0].contains("threads/ba 7 is not held"), "{:?}", missed.failures);
}

#[test]
fn an_entry_nobody_needs_is_stale() {
    assert!(!Differences::read().stale().is_empty());
    assert!(!NotHeld::read().stale().is_empty());
}
