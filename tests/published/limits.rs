//! Limits of the nut: its least and its largest minor diameter, BS 93, 6H, 5H and 2B.

use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::thread_form::{Geometry, geometry};
use holewright_core::tables::threads::{Thread, all, system};
use holewright_core::units::{Pitch, in_inch, in_mm};

use crate::replay::{Family, Kind, Row};
use crate::size;

const EFFECTIVE: &str = "limits of the effective diameter belong to a later issue";
const SCREW: &str = "limits of the screw belong to a later issue";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/ba_tolerances.csv",
        context: &["class", "applies_to", "part"],
        later: &[("effective_tolerance_formula_mm", EFFECTIVE)],
        replay: ba,
    },
    Family {
        file: "metric_unified/iso965_tolerances.csv",
        context: &["designation"],
        later: &[
            ("TD1_grade4_mm", "grade 4 is in no limit the plan uses"),
            ("TD1_grade5_mm", "grade 5 is in a limit of ours below P=0.3 only"),
            ("TD1_grade7_mm", "grade 7 is in no limit the plan uses"),
            ("EI_G_mm", "position G is in no limit the plan uses"),
        ],
        replay: iso_965,
    },
    Family {
        file: "metric_unified/iso_metric_limits_6g6H.csv",
        context: &["designation", "class", "kind"],
        later: &[("pitch_dia_max_mm", EFFECTIVE)],
        replay: metric,
    },
    Family {
        file: "metric_unified/iso_metric_limits_6g6H_inch.csv",
        context: &["designation"],
        later: &[
            ("d_max_in", SCREW),
            ("d_min_in", SCREW),
            ("d2_max_in", SCREW),
            ("d2_min_in", SCREW),
            ("d1_max_in", SCREW),
            ("d1_min_in", SCREW),
            ("D2_max_in", EFFECTIVE),
        ],
        replay: metric_in_inches,
    },
    Family {
        file: "metric_unified/unified_2B_limits.csv",
        context: &["designation"],
        later: &[
            ("D1_max_3B_in", "class 3B is in no limit the plan uses"),
            ("D2_max_2B_in", EFFECTIVE),
        ],
        replay: unified,
    },
];

/// The nut's minor diameter in millimetres, least and largest, as a maker prints them beside a
/// tapping drill.
#[track_caller]
pub(crate) fn of_nut(row: &mut Row, thread: &Thread, least: &str, largest: &str) {
    let figures = geometry(thread);
    row.check(least, Kind::Formula, in_mm(figures.minor_internal));
    if !row.text(largest).is_empty() {
        row.check(largest, Kind::Formula, largest_mm(thread, &figures));
    }
}

/// The standard's largest hole; not a number where the library has none, so that a check fails.
fn largest_mm(thread: &Thread, figures: &Geometry) -> f64 {
    largest_hole(thread, figures).map_or(f64::NAN, |limit| in_mm(limit.diameter))
}

/// BS 93 prints the tolerances as formulas of the pitch.
fn ba(row: &mut Row) {
    if row.text("part").starts_with("nut") {
        bs_93(row, "minor_tolerance_formula_mm", "0.375p");
    } else {
        row.leave_out(SCREW);
    }
}

/// The library rounds the largest hole to the place BS 93 prints, a thousandth of a millimetre.
const MICROMETRE: f64 = 0.001;

/// The tolerance of the nut's minor diameter, held against every BA size of the standard.
#[track_caller]
pub(crate) fn bs_93(row: &mut Row, column: &str, formula: &str) {
    let printed = row.text(column).to_owned();
    assert!(printed.starts_with(formula), "{printed:?}");
    let sizes = system("ba").expect("BA").threads.iter();
    let standard = sizes.filter(|thread| thread.size.parse::<u8>().is_ok_and(|size| size <= 16));
    let (mut right, mut count) = (0, 0);
    for thread in standard {
        let figures = geometry(thread);
        let tolerance = largest_mm(thread, &figures) - in_mm(figures.minor_internal);
        count += 1;
        let rule = 0.375 * in_mm(figures.pitch);
        right += u8::from((tolerance - rule).abs() <= MICROMETRE / 2.0 + 1e-9);
    }
    let got = format!("0.375p in {right} of {count} sizes, 0 to 16 BA");
    row.claim(column, Kind::Formula, printed, got, right == 17 && count == 17);
}

/// The tolerance of a grade, read back from the largest hole of a size we hold with that pitch.
fn iso_965(row: &mut Row) {
    let pitch: f64 = row.text("designation").trim_start_matches("P=").parse().expect("a pitch");
    for (column, standard) in [("TD1_grade5_mm", "5H"), ("TD1_grade6_mm", "6H")] {
        if row.text(column).is_empty() {
            continue;
        }
        let of_this_grade = all().find_map(|thread| {
            let metric = matches!(thread.system.system().slug, "metric" | "metric-fine");
            let figures = geometry(thread);
            let limit = largest_hole(thread, &figures)?;
            let found =
                metric && thread.pitch == Pitch::Mm(pitch) && limit.standard.contains(standard);
            found.then(|| in_mm(limit.diameter - figures.minor_internal))
        });
        match of_this_grade {
            Some(tolerance) => row.check(column, Kind::Formula, tolerance),
            None => assert_eq!(column, "TD1_grade5_mm", "grade 6 is every size's from P=0.3 up"),
        }
    }
}

fn metric(row: &mut Row) {
    if row.text("kind") == "external" {
        return row.leave_out(SCREW);
    }
    let thread = size::thread(row, &size::metric(row.text("designation")));
    let figures = geometry(&thread);
    row.check("major_max_mm", Kind::Table, in_mm(figures.major));
    row.check("pitch_dia_min_mm", Kind::Formula, in_mm(figures.effective));
    of_nut(row, &thread, "D1_min_mm", "D1_max_mm");
}

fn metric_in_inches(row: &mut Row) {
    let thread = size::thread(row, &size::metric(row.text("designation")));
    let figures = geometry(&thread);
    row.check("D1_min_in", Kind::Formula, in_inch(figures.minor_internal));
    row.check("D1_max_in", Kind::Formula, largest_mm(&thread, &figures) / 25.4);
    row.check("D2_min_in", Kind::Formula, in_inch(figures.effective));
}

fn unified(row: &mut Row) {
    let thread = size::thread(row, &size::unified(row.text("designation")));
    let figures = geometry(&thread);
    let least = least_2b(in_inch(figures.major), in_inch(figures.minor_internal));
    row.check("D1_min_2B_in", Kind::Formula, least);
    if !row.text("D1_max_2B_in").is_empty() {
        row.check("D1_max_2B_in", Kind::Formula, largest_mm(&thread, &figures) / 25.4);
    }
    row.check("D2_min_in", Kind::Formula, in_inch(figures.effective));
}

/// ASME B1.1 rounds the least minor diameter of 1B and 2B to three places from No. 6 up, and sets
/// a nought in the fourth: 0.1042 is printed 0.1040.
fn least_2b(major: f64, minor: f64) -> f64 {
    if major < 0.138 - 1e-9 { minor } else { (minor * 1000.0).round() / 1000.0 }
}
