//! Drill sizes of the four series, in inches and millimetres.

use holewright_core::tables::drills::{Drill, Series, find};
use holewright_core::units::{in_inch, in_mm};

use crate::drill::{Name, held, name};
use crate::replay::{Family, Kind, Row};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/drill_number.csv",
        context: &["number"],
        unused: &[],
        replay: |row| inch_drill(row, Series::Number, "number"),
    },
    Family {
        file: "drills_materials/drill_letter.csv",
        context: &["letter"],
        unused: &[],
        replay: |row| inch_drill(row, Series::Letter, "letter"),
    },
    Family {
        file: "drills_materials/drill_fraction.csv",
        context: &["fraction"],
        unused: &[],
        replay: fraction,
    },
    Family {
        file: "drills_materials/drill_metric.csv",
        context: &["series"],
        unused: &[],
        replay: metric,
    },
];

fn inch_drill(row: &mut Row, series: Series, column: &str) {
    let size = row.text(column).to_lowercase();
    let Some(drill) = held(row, &Name::Size(series, size)) else { return };
    row.check("inch", Kind::Table, in_inch(drill.diameter));
    library(row, in_inch(drill.diameter));
    row.check("mm_as_printed", Kind::Conversion, in_mm(drill.diameter));
    row.check("mm_exact_from_inch_x25.4", Kind::Conversion, in_mm(drill.diameter));
}

/// The library drops closing noughts; number and letter drills have four places, so it is held to
/// four: a size it rounded to three is a difference.
fn library(row: &mut Row, inches: f64) {
    let column = "library_inch_bd_warehouse";
    if let Some(held) = row.number(column) {
        row.used(column);
        row.check_printed(column, &format!("{held:.4}"), Kind::Table, inches);
    }
}

fn fraction(row: &mut Row) {
    let wanted = name(row.text("fraction"));
    let Some(drill) = held(row, &wanted) else { return };
    let inches = in_inch(drill.diameter);
    row.check("n_64ths", Kind::Table, inches * 64.0);
    row.check("inch_as_printed_4dp", Kind::Conversion, inches);
    row.check("inch_exact", Kind::Conversion, inches);
    row.check("mm_as_printed_2dp", Kind::Conversion, in_mm(drill.diameter));
    row.check("mm_exact", Kind::Conversion, in_mm(drill.diameter));
}

fn metric(row: &mut Row) {
    let size = row.text("mm").to_owned();
    match find(Series::Metric, &size) {
        Some(Drill { diameter, .. }) => row.check("mm", Kind::Table, in_mm(*diameter)),
        None => {
            row.used("mm");
            row.miss("drills/metric", size);
        }
    }
}
