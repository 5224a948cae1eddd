//! Published figures, replayed.
//!
//! `data/` holds copies of figures transcribed from standards, handbooks, makers' tables and
//! general-purpose libraries, as printed, misprints included. Every row is replayed against the
//! library, every figure within half of its last printed place. A figure that differs for a known
//! reason stands in `data/differences.csv`, a size we do not hold in `data/not_held.csv`; an entry
//! nobody needs fails as well as a missing one. `summary.md` is written from the replay.
//!
//! Not copied, because nothing here goes by them yet: measuring over wires (`three_wire_*`),
//! hole circles (`chord_factors`, `bolt_circle_coordinates`), the power of turning tools (`power_constants_Kp`,
//! `specific_cutting_force_kc1`), `drill_speed_adjustment`, and tools the plan does not size
//! (`centre_drills`, `centre_holes`, `drill_flute_length_din338`, `drill_tolerance_h8`).

#![expect(clippy::print_stdout, reason = "a line for every file is what the runner is for")]
#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a copied row of the wrong shape must stop the test"
)]

mod bench_speeds;
mod clearance;
mod common_practice;
mod cutting;
mod dimensions;
mod drill;
mod drills;
mod fasteners;
mod form;
mod form_constants;
mod limits;
mod materials;
mod nut_limits;
mod ranges;
#[path = "../readings.rs"]
mod readings;
#[path = "../readme_table.rs"]
mod readme_table;
mod reaming;
mod replay;
mod rescue;
mod size;
mod statements;
mod strength;
mod stress_area;
mod tapping;
mod torque;
mod worked_examples;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use replay::{
    Differences, Family, NotHeld, by_folder, data_folder, line, markdown, replay, totals,
};

/// Rows read in a source that this issue asks for, and how many of them must test a formula.
const ROWS_ASKED: usize = 2_000;
const FORMULA_ROWS_ASKED: usize = 1_200;

fn families() -> Vec<&'static Family> {
    let rest = [
        form_constants::FAMILIES,
        limits::FAMILIES,
        nut_limits::FAMILIES,
        strength::FAMILIES,
        stress_area::FAMILIES,
        torque::FAMILIES,
        clearance::FAMILIES,
        bench_speeds::FAMILIES,
        cutting::FAMILIES,
        materials::FAMILIES,
        reaming::FAMILIES,
        rescue::FAMILIES,
        drills::FAMILIES,
        fasteners::FAMILIES,
        worked_examples::FAMILIES,
        statements::FAMILIES,
        common_practice::FAMILIES,
    ];
    let mut families: Vec<_> = dimensions::families()
        .chain(tapping::families())
        .chain(rest.into_iter().flatten())
        .collect();
    families.sort_by_key(|family| family.file);
    families
}

#[test]
fn every_published_figure_is_replayed() {
    let families = families();
    let (mut differences, mut not_held) = (Differences::read(), NotHeld::read());
    let outcomes: Vec<_> =
        families.iter().map(|family| replay(family, &mut differences, &mut not_held)).collect();
    for outcome in &outcomes {
        println!("{}", line(outcome));
        outcome.recalled.iter().for_each(|figure| println!("  memory differs: {figure}"));
    }
    let sum = totals(&outcomes);
    println!("all: {sum:?}");
    let mut failures: Vec<_> =
        outcomes.iter().flat_map(|outcome| outcome.failures.clone()).collect();
    failures.extend(differences.stale());
    failures.extend(not_held.stale());
    assert!(failures.is_empty(), "{} failures:\n{}", failures.len(), failures.join("\n"));
    assert!(sum.rows >= ROWS_ASKED, "{} rows replayed, {ROWS_ASKED} asked", sum.rows);
    assert!(sum.formula >= FORMULA_ROWS_ASKED, "{} test a formula", sum.formula);

    let written = markdown(&families, &outcomes, &differences, &not_held);
    println!("--- summary.md ---\n{written}--- end of summary.md ---");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/published/summary.md");
    if readme_table::is_to_be_written() {
        fs::write(&path, &written).expect("summary.md is written");
    }
    let committed = fs::read_to_string(&path).unwrap_or_default();
    assert!(written == committed, "summary.md is old: WRITE_README=1 writes it anew");
    readme_table::hold(&by_folder(&outcomes));
}

#[test]
fn every_copied_file_is_replayed() {
    let replayed: BTreeSet<_> = families().iter().map(|family| family.file.to_owned()).collect();
    let ledgers = ["differences.csv", "not_held.csv"].map(str::to_owned);
    let mut copied = BTreeSet::new();
    for entry in walk(&data_folder()) {
        let path = entry.strip_prefix(data_folder()).expect("below data").to_owned();
        copied.insert(path.to_str().expect("a plain name").to_owned());
    }
    copied.retain(|file| !ledgers.contains(file));
    assert_eq!(copied, replayed);
}

fn walk(folder: &Path) -> Vec<std::path::PathBuf> {
    let entries = fs::read_dir(folder).expect("a folder");
    let paths = entries.map(|entry| entry.expect("an entry").path());
    paths.flat_map(|path| if path.is_dir() { walk(&path) } else { vec![path] }).collect()
}
