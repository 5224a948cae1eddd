//! Clearance holes: the standards' rows as printed, and the club lists that stand beside our rule.

use holewright_core::calc::clearance::float;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::clearance::{Holes as Held, Standard, all};
use holewright_core::tables::threads::Thread;
use holewright_core::units::{Length, Printed, in_inch, in_mm, inch, mm};

use crate::drill::{self, Name, held, metric, name};
use crate::replay::{Family, Kind, Row, decimal};
use crate::size::{self, fraction};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/iso273_clearance.csv",
        context: &["designation", "standard"],
        unused: &[],
        replay: |row| {
            let columns = ["fine_close_mm", "medium_normal_mm", "coarse_free_mm"];
            standard(row, Standard::Iso273, "clearance/iso-273", columns);
        },
    },
    Family {
        file: "metric_unified/bs4186_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| {
            let columns = ["close_fit_mm", "medium_fit_mm", "free_fit_mm"];
            standard(row, Standard::Bs4186, "clearance/bs-4186", columns);
        },
    },
    Family {
        file: "metric_unified/asme_b18_2_8_inch_clearance.csv",
        context: &["designation"],
        unused: &[("loose_max_in", "the largest the loose hole may come out is not held")],
        replay: asme,
    },
    Family {
        file: "british/ba_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| list(row, &size::ba(row.text("designation"))),
    },
    Family {
        file: "british/bsw_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| list(row, &size::british("bsw", row.text("designation"), None)),
    },
    Family {
        file: "british/bsf_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| list(row, &size::british("bsf", row.text("designation"), None)),
    },
];

/// A row of a metric standard by its nominal diameter: fine, medium, coarse.
fn standard(row: &mut Row, standard: Standard, table: &'static str, columns: [&str; 3]) {
    let name = row.text("designation").to_lowercase();
    let nominal = decimal(name.trim_start_matches('m')).expect("a diameter").value;
    let Some(ours) = row_of(standard, mm(nominal)) else {
        row.miss(table, name);
        return row.leave_out("the diameter is in no row of ours, see the sizes not held");
    };
    for (column, fit) in columns.into_iter().zip([ours.close, ours.medium, ours.free]) {
        // The standards print tenths; some copies drop a closing nought, and are held to it.
        let printed = row.text(column).to_owned();
        let tenths = if printed.contains('.') { printed } else { format!("{printed}.0") };
        row.used(column);
        if tenths != ".0" {
            row.check_printed(column, &tenths, Kind::Table, in_mm(fit.length()));
        }
    }
}

fn row_of(standard: Standard, nominal: Length) -> Option<&'static Held> {
    all().find(|row| row.standard == standard && same(row.nominal.length(), nominal))
}

fn same(a: Length, b: Length) -> bool {
    in_mm(a - b).abs() < 1e-6
}

/// Inch screws: drills by name, the least loose hole, and the two lists in millimetres.
fn asme(row: &mut Row) {
    let screw = row.text("designation").to_owned();
    let nominal = match screw.strip_prefix('#') {
        Some(number) => inch(0.060 + 0.013 * number.parse::<f64>().expect("a screw number")),
        None => inch(fraction(&screw).expect("a fraction").inches()),
    };
    let ours = row_of(Standard::AsmeB1828, nominal).or(row_of(Standard::Unofficial, nominal));
    let Some(ours) = ours else { return row.miss("clearance/asme-b18.2.8", screw) };
    for (column, fit) in [("normal_drill", ours.medium), ("close_drill", ours.close)] {
        let printed = row.text(column).to_owned();
        row.used(column);
        if !printed.is_empty() {
            drill_size(row, column, &printed, fit);
        }
    }
    let loose = row.text("note").strip_prefix("loose drill ").map(str::to_owned);
    if let Some(loose) = loose {
        drill_size(row, "note", &loose, ours.free);
    }
    row.check("loose_min_in", Kind::Table, in_inch(ours.free.length()));
    // The handbook names metric drills; the library rounds the standard's inch hole to a tenth.
    let handbook = row.text("note").contains("metric drill sizes");
    let listed = if handbook { row_of(Standard::AsmeB1828Metric, nominal) } else { Some(ours) };
    let kind = if handbook { Kind::Table } else { Kind::Conversion };
    let columns = ["close_mm", "normal_mm", "loose_mm"];
    match listed {
        Some(ours) => {
            for (column, fit) in columns.into_iter().zip([ours.close, ours.medium, ours.free]) {
                row.check(column, kind, in_mm(fit.length()));
            }
        }
        None => row.miss("clearance/asme-b18.2.8-metric", screw),
    }
}

/// A drill the source names and the size our row holds.
#[track_caller]
fn drill_size(row: &mut Row, column: &str, printed: &str, ours: Printed) {
    let (expected, found) = match (fraction(printed), name(printed)) {
        (Some(inches), _) => (inch(inches.inches()), true),
        (None, Name::Inches(_)) => {
            return row.check_printed(column, printed, Kind::Table, in_inch(ours.length()));
        }
        (None, size) => match held(row, &size) {
            Some(drill) => (drill.diameter, true),
            None => (mm(0.0), false),
        },
    };
    let got = format!("{:.4} in", in_inch(ours.length()));
    row.claim(column, Kind::Table, printed, got, found && same(expected, ours.length()));
}

fn list(row: &mut Row, size: &size::Size) {
    let thread = size::thread(row, size);
    entry(row, &thread, "clearance_label", "clearance_mm");
    if row.has("tpi") {
        row.check("tpi", Kind::Table, thread.pitch.threads_per_inch());
    }
    if row.has("clearance_in") {
        in_inches(row);
    }
}

/// A club's clearance size: the drills exist, their names agree, and the screw passes through.
pub(crate) fn entry(row: &mut Row, thread: &Thread, label: &str, millimetres: &str) {
    let (named, printed) = (row.text(label).to_owned(), row.text(millimetres).to_owned());
    row.used(label);
    row.used(millimetres);
    let mut diameter = None;
    if !named.is_empty() {
        let inches = fraction(named.trim_end_matches(" in")).map(|inches| inch(inches.inches()));
        diameter = drill::named(row, label, &named).map(|drill| drill.diameter).or(inches);
        if let Some(diameter) = diameter {
            clears(row, label, thread, diameter);
        }
    }
    if !printed.is_empty() {
        let size = decimal(&printed).expect("a diameter").value;
        match diameter {
            Some(diameter) => row.check(millimetres, Kind::Conversion, in_mm(diameter)),
            None => {
                if let Some(drill) = held(row, &metric(&printed)) {
                    row.check(millimetres, Kind::Table, in_mm(drill.diameter));
                }
            }
        }
        clears(row, millimetres, thread, mm(size));
    }
}

/// The screw passes: the hole is not below its major diameter.
#[track_caller]
fn clears(row: &mut Row, column: &str, thread: &Thread, hole: Length) {
    let float = in_mm(float(hole, geometry(thread).major));
    let quantity = format!("{column}: float");
    row.claim(&quantity, Kind::Conversion, "0 or more", format!("{float:.3} mm"), float >= 0.0);
}

/// The same hole in inches, beside a label or beside millimetres.
fn in_inches(row: &mut Row) {
    let label = row.text("clearance_label").trim_end_matches(" in").to_owned();
    let inches = match (row.number("clearance_mm"), fraction(&label)) {
        (Some(millimetres), _) => Some(in_inch(mm(millimetres))),
        (None, Some(inches)) => Some(inches.inches()),
        (None, None) => None,
    };
    match inches {
        Some(inches) => row.check("clearance_in", Kind::Conversion, inches),
        None => row.used("clearance_in"),
    }
}
