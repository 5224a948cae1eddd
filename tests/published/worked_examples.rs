//! Worked examples and rules in print: limits, clearance, depth, speed.

use holewright::calc::clearance::{float, hole_for_errors};
use holewright::calc::cutting_speed::{feed_rate, spindle_speed};
use holewright::calc::depth::{BlindDepths, BlindHole, LastTap, blind, point_length};
use holewright::calc::engagement::{percent, percent_of_internal_height};
use holewright::calc::limits::largest_hole;
use holewright::calc::thread_form::{full_depth, geometry};
use holewright::tables::threads::{SystemId, Thread, find};
use holewright::units::{
    Pitch, Printed, Velocity, degrees, in_inch, in_metres_per_minute, in_mm, in_rpm, inch,
    metres_per_minute, mm, rpm,
};

use crate::replay::{Family, Kind, Row};
use crate::{limits, size};

const STRENGTH: &str = "strength belongs to a later issue";
const WIRES: &str = "measuring over wires belongs to a later issue";
const CIRCLE: &str = "hole circles belong to a later issue";
const TORQUE: &str = "thrust, torque and power belong to a later issue";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/worked_examples.csv",
        context: &["id", "quantity", "inputs", "unit", "tolerance"],
        later: &[],
        replay: threads,
    },
    Family {
        file: "drills_materials/worked_examples.csv",
        context: &["id", "quantity", "inputs", "unit", "tolerance"],
        later: &[],
        replay: workshop,
    },
    Family {
        file: "drills_materials/blind_hole_depth.csv",
        context: &["rule", "applies"],
        later: &[],
        replay: depth,
    },
    Family {
        file: "drills_materials/drill_point_length.csv",
        context: &["point_angle_deg", "formula"],
        later: &[],
        replay: point,
    },
    Family {
        file: "drills_materials/thread_engagement.csv",
        context: &["statement", "unit"],
        later: &[],
        replay: statements,
    },
    Family {
        file: "british/engagement.csv",
        context: &["statement"],
        later: &[],
        replay: british_statements,
    },
    Family {
        file: "common_practice.csv",
        context: &["thread", "drill"],
        later: &[],
        replay: common_practice,
    },
];

fn threads(row: &mut Row) {
    // 19/64 - 36, as Machinery's Handbook works its internal thread through.
    let example =
        size::made_up(SystemId::Uns, Printed::Inch(0.2969), Pitch::PerInch(36.0));
    let figures = geometry(&example);
    let least = in_inch(figures.minor_internal);
    let largest =
        largest_hole(&example, &figures).map_or(f64::NAN, |limit| in_inch(limit.diameter));
    let none = mm(0.0);
    let got = match row.text("id") {
        "WE13" | "WE14" => least,
        "WE15" => return row.leave_out("a step on the way: the library gives the limit, WE16"),
        "WE16" => largest,
        "WE17" => in_inch(figures.effective),
        "WE18" => in_inch(figures.major - figures.minor_internal),
        "WE19" => in_mm(float(mm(20.0), mm(19.95)) + float(mm(10.0), mm(9.95))),
        "WE20" => in_mm(float(mm(3.94), mm(3.5))) / 2.0,
        "WE21" => in_mm(float(mm(3.94), mm(3.5))),
        "WE22" => in_mm(hole_for_errors(mm(10.1), none, none) - mm(10.1)),
        "WE01" | "WE02" | "WE03" | "WE04" | "WE06" => return row.leave_out(WIRES),
        "WE07" | "WE08" | "WE24" | "WE25" | "WE26" => return row.leave_out(CIRCLE),
        "WE11" | "WE12" | "WE27" | "WE28" | "WE31" | "WE32" => return row.leave_out(STRENGTH),
        other => panic!("no example {other}"),
    };
    row.check("answer", Kind::Formula, got);
}

fn feet_per_minute(feet: f64) -> Velocity {
    metres_per_minute(feet * 0.3048)
}

/// `D=3 mm; hole=2.5 mm` and the like.
fn input(row: &Row, name: &str) -> f64 {
    let inputs = row.text("inputs");
    inputs
        .split("; ")
        .find_map(|input| input.strip_prefix(name)?.strip_prefix('='))
        .and_then(|value| value.split(' ').next()?.parse().ok())
        .unwrap_or_else(|| panic!("no {name} in {inputs:?}"))
}

fn workshop(row: &mut Row) {
    let id = row.text("id").to_owned();
    let kind = id.trim_end_matches(|last: char| last.is_ascii_digit());
    let got = match (id.as_str(), kind) {
        ("MH1", _) => {
            return row.leave_out("speeds between two pitches are not interpolated by the library");
        }
        ("MH2", _) => {
            let speed = in_rpm(spindle_speed(feet_per_minute(60.0), inch(0.25)));
            let printed = row.text("answer").split(' ').next().unwrap_or("").to_owned();
            row.used("answer");
            return row.check_printed("answer", &printed, Kind::Formula, speed);
        }
        ("MH3", _) => in_metres_per_minute(feed_rate(inch(1.0 / 20.0), rpm(920.0))) / 0.0254,
        ("EI1", _) => in_inch(quarter_inch(inch(0.375)).drill_full_diameter),
        ("HM2", _) => in_inch(point_length(inch(input(row, "D")), degrees(135.0))),
        ("MP1", _) => {
            in_rpm(spindle_speed(feet_per_minute(input(row, "V")), inch(input(row, "D"))))
        }
        (_, "ST") => {
            in_rpm(spindle_speed(feet_per_minute(input(row, "V")), inch(input(row, "d"))))
        }
        (_, "Y") => {
            let major = Printed::Mm(input(row, "D"));
            let thread =
                size::made_up(SystemId::Metric, major, Pitch::Mm(input(row, "pitch")));
            internal(&thread, input(row, "hole"))
        }
        (_, "TP") => {
            let major = Printed::Inch(input(row, "major"));
            let tpi = Pitch::PerInch(input(row, "tpi"));
            let thread = size::made_up(SystemId::Unc, major, tpi);
            percent(thread.form(), &geometry(&thread), inch(input(row, "drill")))
        }
        (_, "NR") => return row.leave_out("a rule of thumb for feed the library does not use"),
        (_, "CS") => return row.leave_out("countersinks belong to a later issue"),
        _ => return row.leave_out(TORQUE),
    };
    row.check("answer", Kind::Formula, got);
}

/// The percentage on 5/8 H.
fn internal(thread: &Thread, hole: f64) -> f64 {
    percent_of_internal_height(thread.form(), &geometry(thread), mm(hole)).expect("a 60° form")
}

/// A bottoming tap of 1/4-20 in a hole for so much full thread.
fn quarter_inch(full_thread: holewright::units::Length) -> BlindDepths {
    let hole = BlindHole {
        major: inch(0.25),
        pitch: inch(0.05),
        drill: inch(0.201),
        point_angle: degrees(118.0),
        last_tap: LastTap::Plug,
    };
    blind(&hole, full_thread)
}

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
            let whole = beyond + centre;
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
            row.leave_out(STRENGTH);
        }
        "average thread depth" | "small or deep holes" => {
            row.leave_out("advice, not a figure: the aim table is our own policy");
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
        row.leave_out("advice, not a figure: the aim table is our own policy");
    }
}

/// `BA 7` in a drill by its address: what every club wall has, and no source prints.
fn common_practice(row: &mut Row) {
    let name = row.text("thread").to_owned();
    let thread = size::thread(row, &size::ba(&name));
    let label = row.text("drill").to_owned();
    if let Some(drill) = crate::drill::held(row, &crate::drill::name(&label)) {
        let got = crate::tapping::engagement(&thread, drill.diameter);
        row.check("percent", Kind::Formula, got);
    }
}
