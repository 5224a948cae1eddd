//! What to leave for a reamer, and how deep a countersink goes to a point.

use holewright_core::calc::countersink::sink_depth;
use holewright_core::tables::countersinks;
use holewright_core::tables::reaming::{Allowance, Drive, allowances};
use holewright_core::units::{Length, degrees, in_inch, in_mm, inch, mm};

use crate::readings;
use crate::replay::{Family, Kind, Row};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/reaming_allowance.csv",
        context: &["d_from", "d_to", "unit", "kind"],
        unused: &[],
        replay: allowance,
    },
    Family {
        file: "drills_materials/countersinks.csv",
        context: &["included_angle_deg", "use"],
        unused: &[],
        replay: countersink,
    },
];

/// The row of ours for the same way of turning and the same band of sizes.
fn allowance(row: &mut Row) {
    let metric = row.text("unit") == "mm";
    let size = |value: f64| if metric { mm(value) } else { inch(value) };
    let drive = match row.text("kind") {
        kind if kind.starts_with("machine") => Drive::Machine,
        kind if kind.contains("hand") => Drive::Hand,
        _ => Drive::Either,
    };
    let (from, to) = (row.number("d_from").map(size), row.number("d_to").map(size));
    let source =
        row.text("source").split([' ', ',']).next().unwrap_or("").trim_matches('\'').to_owned();
    let ours = |held: &&Allowance| {
        held.drive == drive
            && held.from == from
            && held.to == to
            && readings::of(held.source.cite)
                .iter()
                .any(|read| read.starts_with(source.split('/').next().unwrap_or("")))
    };
    let Some(held) = allowances().iter().find(ours) else {
        let printed = row.text("left_on_diameter_min").to_owned();
        return row.claim("left_on_diameter_min", Kind::Table, printed, "no row", false);
    };
    let of = |length: Length| if metric { in_mm(length) } else { in_inch(length) };
    for (column, left) in
        [("left_on_diameter_min", held.least), ("left_on_diameter_max", held.most)]
    {
        match row.text(column).split_once('/') {
            Some((above, below)) => {
                let printed = above.parse::<f64>().expect("a number")
                    / below.parse::<f64>().expect("a number");
                let agrees = (of(left) - printed).abs() < 1e-9;
                row.claim(column, Kind::Table, row.text(column).to_owned(), of(left), agrees);
            }
            None => row.check(column, Kind::Table, of(left)),
        }
    }
}

/// Every angle is held, and its depth follows from it.
fn countersink(row: &mut Row) {
    let angle = row.number("included_angle_deg").expect("an angle");
    let held =
        countersinks::all().iter().any(|held| (f64::from(held.angle_degrees) - angle).abs() < 1e-9);
    assert!(held, "{angle} is not held");
    let depth = in_mm(sink_depth(mm(1.0), mm(0.0), degrees(angle)));
    row.check("depth_per_diameter_to_sharp_point", Kind::Formula, depth);
}
