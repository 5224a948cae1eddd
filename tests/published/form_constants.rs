//! Constants of the thread forms, at a pitch of one.

use holewright_core::calc::thread_form::{Geometry, geometry, thread_angle};
use holewright_core::tables::threads::{Form, system};
use holewright_core::units::{in_degrees, in_mm};

use crate::form::unit_profile;
use crate::replay::{Family, Kind, Row};

pub(crate) const FAMILIES: &[Family] = &[Family {
    file: "british/form_constants.csv",
    context: &["thread_form", "quantity", "unit"],
    unused: &[],
    replay: constant,
}];

fn constant(row: &mut Row) {
    let form = match row.text("thread_form") {
        "Whitworth" | "ME (Model Engineer)" => Form::Whitworth,
        "BA" => Form::BritishAssociation,
        "BSCy/CEI" => Form::Cycle,
        other => panic!("no form {other}"),
    };
    let shape = unit_profile(form);
    row.used("value");
    let got = match row.text("quantity") {
        "p" => return ba_rule(row, "0.9^n mm", pitch_by_rule),
        "D" => return ba_rule(row, "6p^1.2 mm", major_by_rule),
        "flank angle" => in_degrees(thread_angle(form)),
        "H" => shape.height,
        "h = 2/3 H" | "h" | "depth" => shape.depth,
        "H/6" => shape.height / 6.0,
        "r" => shape.radius,
        "truncation s" | "shortening" => shape.truncation,
        "straight flank depth h-2e" => shape.straight,
        core if core.starts_with("core") => 2.0 * shape.depth,
        effective if effective.starts_with("effective") => shape.depth,
        other => panic!("no quantity {other}"),
    };
    let printed = row.text("value").to_owned();
    if printed == "2p/11" {
        let agrees = (2.0 / 11.0 - got).abs() <= 0.00005;
        return row.claim("value", Kind::Formula, printed, format!("{got:.5}p"), agrees);
    }
    row.check_printed("value", printed.trim_end_matches(['p', 'P']), Kind::Formula, got);
}

/// The rule of BS 93, held against every BA size of the table.
fn ba_rule(row: &mut Row, printed: &str, agrees: fn(f64, &Geometry) -> bool) {
    assert_eq!(row.text("value"), printed);
    let sizes = system("ba").expect("BA").threads;
    let right = sizes.iter().filter(|thread| {
        let number: f64 = thread.size.parse().expect("a BA number");
        agrees(libm::pow(0.9, number), &geometry(thread))
    });
    let right = right.count();
    let got = format!("so in {right} of {} sizes", sizes.len());
    row.claim("value", Kind::Table, printed, got, right == 26 && sizes.len() == 26);
}

/// The pitch is the power of 0.9 to the nearest hundredth of a millimetre.
fn pitch_by_rule(power: f64, figures: &Geometry) -> bool {
    (in_mm(figures.pitch) - power).abs() <= 0.005
}

/// The major diameter is 6 p^1.2 of the unrounded pitch, to a tenth, below 1 mm to a hundredth.
fn major_by_rule(power: f64, figures: &Geometry) -> bool {
    let rule = 6.0 * libm::pow(power, 1.2);
    let place = if rule < 0.95 { 0.01 } else { 0.1 };
    (in_mm(figures.major) - rule).abs() <= place / 2.0
}
