//! Rules and statements in print: blind depth, point length, engagement.

use holewright_core::calc::blind_hole;
use holewright_core::calc::depth::point_length;
use holewright_core::calc::thread_form::{full_depth, geometry};
use holewright_core::tables::threads::{SystemId, find};
use holewright_core::units::{Length, Pitch, Printed, degrees, in_inch, in_mm, inch, mm};

use crate::replay::{Family, Kind, Row};
use crate::worked_examples::{internal, quarter_inch, quarter_inch_hole};
use crate::{limits, size};

const RULE_OF_THUMB: &str =
    "one rule for all sizes and metals: what a thread bears is reckoned size by size";
const ADVICE: &str = "advice, not a figure: the aim table is our own policy";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/blind_hole_depth.csv",
        context: &["rule", "applies"],
        unused: &[],
        replay: depth,
    },
    Family {
        file: "drills_materials/drill_point_length.csv",
        context: &["point_angle_deg", "formula"],
        unused: &[],
        replay: point,
    },
    Family {
        file: "drills_materials/thread_engagement.csv",
        context: &["statement", "unit"],
        unused: &[],
        replay: statements,
    },
    Family {
        file: "british/engagement.csv",
        context: &["statement"],
        unused: &[],
        replay: british_statements,
    },
];

/// Rules in words, held against the depths of one hole.
fn depth(row: &mut Row) {
    let depths = quarter_inch(inch(0.5));
    let beyond = in_inch(depths.drill_full_diameter - depths.full_thread);
    let lead = in_inch(depths.tap_lead);
    let printed = row.text("value").to_owned();
    let (got, agrees) = match row.text("rule") {
        "minimum drill depth" => {
            (format!("thread + {beyond:.3} in, lead {lead:.3}"), near(beyond, lead + 0.05))
        }
        "extra for swarf with straight-flute hand taps" => {
            let room = in_inch(depths.swarf_room);
            (format!("{room:.3} in for 1/4"), near(room, 0.25))
        }
        "extra for taps with external centre (up to 3/8 in)" => {
            let centre = depths.male_centre.map_or(f64::NAN, in_inch);
            (format!("up to {centre:.3} in for 1/4"), near(centre, 0.125))
        }
        "tap depth" => {
            let centre = depths.male_centre.map_or(f64::NAN, in_inch);
            let whole = in_inch(with_male_centre() - depths.full_thread);
            (format!("thread + {whole:.3} in"), near(whole, lead + 0.05 + centre))
        }
        "drill point length" => {
            row.used("value");
            let ratio = in_mm(point_length(mm(1.0), degrees(118.0)));
            let figure = printed.split(' ').next().unwrap_or("").to_owned();
            return row.check_printed("value", &figure, Kind::Formula, ratio);
        }
        other => panic!("no rule {other}"),
    };
    row.claim("value", Kind::Formula, printed, got, agrees);
}

/// The same hole for a tap with a male centre.
fn with_male_centre() -> Length {
    let question = blind_hole::Question {
        hole: quarter_inch_hole(),
        tap_end: blind_hole::TapEnd::MaleCentre,
        full_thread: inch(0.5),
        part_thickness: None,
    };
    blind_hole::answer(&question).full_diameter
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

fn point(row: &mut Row) {
    let angle = degrees(row.number("point_angle_deg").expect("an angle"));
    row.check("L_over_D", Kind::Formula, in_mm(point_length(mm(1.0), angle)));
}

fn statements(row: &mut Row) {
    let made = |major: f64, pitch: f64| {
        size::made_up(SystemId::Metric, Printed::Mm(major), Pitch::Mm(pitch))
    };
    let unit = made(10.0, 1.0);
    let figures = geometry(&unit);
    row.used("value");
    match row.text("statement") {
        "Yamawa JIS 6H M3 0.5: drill 2.5 engagement" => {
            row.check("value", Kind::Formula, internal(&made(3.0, 0.5), 2.5));
        }
        "Yamawa M10x1.5 hole 8.376-8.676" => {
            assert_eq!(row.text("value"), "100-81.5");
            let ten = made(10.0, 1.5);
            row.check_printed("value", "100", Kind::Formula, internal(&ten, 8.376));
            row.check_printed("value: largest", "81.5", Kind::Formula, internal(&ten, 8.676));
        }
        "hole size for percent X of thread, Unified" => {
            assert_eq!(row.text("value"), "D - 1.08253*P*X");
            let got = in_mm(figures.major - figures.minor_internal);
            row.check_printed("value", "1.08253", Kind::Formula, got);
        }
        "hole size for percent X, American National" => {
            assert_eq!(row.text("value"), "D - 1.29904*P*X");
            let got = 2.0 * in_mm(full_depth(unit.form(), figures.pitch));
            row.check_printed("value", "1.29904", Kind::Formula, got);
        }
        "engagement for a 75 % thread, nut material steel" | "load held by 50-65 % thread" => {
            row.leave_out(RULE_OF_THUMB);
        }
        "average thread depth" | "small or deep holes" => {
            row.leave_out(ADVICE);
        }
        other => panic!("no statement {other}"),
    }
}

fn british_statements(row: &mut Row) {
    let statement = row.text("statement").to_owned();
    row.used("value");
    if statement.starts_with("M6: hole for 100% depth / depth with 5 mm drill") {
        assert_eq!(row.text("value"), "4.77 mm / 82%");
        let six = find("metric", "m6").expect("M6");
        let figures = geometry(six);
        row.check_printed("value", "4.77", Kind::Formula, in_mm(figures.minor));
        // The author counts the screw's own depth as the whole.
        let depth = in_mm(figures.major - figures.minor);
        row.check_printed("value: 5 mm", "82", Kind::Formula, 100.0 * (6.0 - 5.0) / depth);
    } else if statement == "BS 93 internal minor tolerance" {
        limits::bs_93(row, "value", "0.375p");
    } else {
        row.leave_out(ADVICE);
    }
}
