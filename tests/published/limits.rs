//! Limits of the nut: its least and its largest minor diameter, BS 93, 6H, 5H and 2B.

use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::screw_limits::{LeastPair, least_pair};
use holewright_core::calc::thread_form::{Geometry, geometry};
use holewright_core::tables::threads::{Thread, all, system};
use holewright_core::units::{Length, Pitch, in_inch, in_mm};

use crate::replay::{Family, Kind, Row};
use crate::size;
use crate::strength::LARGEST;

const SCREW: &str = "the close class is in no figure of ours: strength goes by the normal one";
const MINOR: &str = "the screw's least minor diameter is in no figure of ours";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/ba_tolerances.csv",
        context: &["class", "applies_to", "part"],
        unused: &[("minor_tolerance_formula_mm", MINOR)],
        replay: ba,
    },
    Family {
        file: "metric_unified/iso965_tolerances.csv",
        context: &["designation"],
        unused: &[
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
        unused: &[
            ("major_max_mm", LARGEST),
            ("pitch_dia_max_mm", LARGEST),
            ("minor_max_mm", LARGEST),
            ("minor_min_mm", MINOR),
        ],
        replay: metric,
    },
    Family {
        file: "metric_unified/iso_metric_limits_6g6H_inch.csv",
        context: &["designation"],
        unused: &[
            ("d_max_in", LARGEST),
            ("d2_max_in", LARGEST),
            ("d1_max_in", LARGEST),
            ("d1_min_in", MINOR),
        ],
        replay: metric_in_inches,
    },
    Family {
        file: "metric_unified/unified_2B_limits.csv",
        context: &["designation"],
        unused: &[("D1_max_3B_in", "class 3B is in no limit the plan uses")],
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
        let rule = |pitch: f64| 0.12 * pitch + 0.03;
        return ba_pair(
            row,
            "effective_tolerance_formula_mm",
            "0.12p+0.03",
            [0, 16],
            |pair| (pair.nut_effective, 1.0),
            rule,
        );
    }
    if row.text("class") == "Close" {
        return row.leave_out(SCREW);
    }
    let larger = row.text("applies_to").starts_with("0BA");
    let (sizes, part, allowance) =
        if larger { ([0, 10], 0.20, 0.025) } else { ([11, 16], 0.25, 0.0) };
    let printed = if larger { "0.20" } else { "0.25" };
    ba_pair(
        row,
        "major_tolerance_formula_mm",
        printed,
        sizes,
        |pair| (pair.screw_major, -1.0),
        move |pitch| part * pitch + allowance,
    );
    if !row.text("allowance_mm").is_empty() {
        let printed = row.number("allowance_mm").expect("an allowance");
        row.claim(
            "allowance_mm",
            Kind::Table,
            printed,
            allowance,
            (printed - allowance).abs() < 1e-9,
        );
    }
    if !row.text("effective_tolerance_formula_mm").is_empty() {
        ba_pair(
            row,
            "effective_tolerance_formula_mm",
            "0.10p+0.025",
            sizes,
            |pair| (pair.screw_effective, -1.0),
            move |pitch| 0.10 * pitch + 0.025 + allowance,
        );
    }
}

/// A tolerance of BS 93, held against the sizes it is for: how far a diameter of the least pair is off the
/// basic one, up or down.
#[track_caller]
fn ba_pair(
    row: &mut Row,
    column: &str,
    formula: &str,
    [from, to]: [u8; 2],
    of: fn(&LeastPair) -> (Length, f64),
    rule: impl Fn(f64) -> f64,
) {
    let printed = row.text(column).to_owned();
    assert!(printed.starts_with(formula), "{printed:?}");
    let sizes = system("ba").expect("BA").threads.iter();
    let named = sizes
        .filter(|thread| thread.size.parse::<u8>().is_ok_and(|size| (from..=to).contains(&size)));
    let (mut right, mut count) = (0, 0);
    for thread in named {
        let figures = geometry(thread);
        let pair = least_pair(thread, &figures);
        let (diameter, way) = of(&pair);
        let basic = if column.starts_with("major") { figures.major } else { figures.effective };
        let off = in_mm(diameter - basic) * way;
        count += 1;
        right += u8::from((off - rule(in_mm(figures.pitch))).abs() <= MICROMETRE / 2.0 + 1e-9);
    }
    let got = format!("{formula} in {right} of {count} sizes");
    row.claim(column, Kind::Formula, printed, got, right == count && count == to - from + 1);
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
    let thread = size::thread(row, &size::metric(row.text("designation")));
    let figures = geometry(&thread);
    let pair = least_pair(&thread, &figures);
    if row.text("kind") == "external" {
        if pair.is_basic {
            return row
                .leave_out("a pitch whose limits are not held: its basic sizes stand for them");
        }
        row.check("major_min_mm", Kind::Formula, in_mm(pair.screw_major));
        return row.check("pitch_dia_min_mm", Kind::Formula, in_mm(pair.screw_effective));
    }
    row.check("pitch_dia_max_mm", Kind::Formula, in_mm(pair.nut_effective));
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
    let pair = least_pair(&thread, &figures);
    row.check("d_min_in", Kind::Formula, in_inch(pair.screw_major));
    row.check("d2_min_in", Kind::Formula, in_inch(pair.screw_effective));
    row.check("D2_max_in", Kind::Formula, in_inch(pair.nut_effective));
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
    let pair = least_pair(&thread, &figures);
    row.check("D2_max_2B_in", Kind::Formula, in_inch(pair.nut_effective));
}

/// ASME B1.1 rounds the least minor diameter of 1B and 2B to three places from No. 6 up, and sets
/// a nought in the fourth: 0.1042 is printed 0.1040.
fn least_2b(major: f64, minor: f64) -> f64 {
    if major < 0.138 - 1e-9 { minor } else { (minor * 1000.0).round() / 1000.0 }
}
