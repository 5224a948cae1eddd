//! Worked examples in print: limits, clearance, depth, speed, engagement.

use holewright_core::calc::clearance::float;
use holewright_core::calc::countersink::sink_depth;
use holewright_core::calc::cutting_speed::{feed_rate, spindle_speed, thumb_feed};
use holewright_core::calc::depth::{BlindDepths, BlindHole, LastTap, blind, point_length};
use holewright_core::calc::engagement::{percent, percent_of_internal_height};
use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::position::{Case, Joint, Register, position};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::{SystemId, Thread};
use holewright_core::units::{
    Length, Pitch, Printed, Velocity, degrees, in_inch, in_metres_per_minute, in_mm, in_rpm, inch,
    metres_per_minute, mm, rpm,
};

use crate::replay::{Family, Kind, Row};
use crate::{size, strength, torque};

const WIRES: &str = "nothing here measures over wires yet";
const CIRCLE: &str = "no hole circle is set out here yet";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/worked_examples.csv",
        context: &["id", "quantity", "inputs", "unit", "tolerance"],
        unused: &[],
        replay: threads,
    },
    Family {
        file: "drills_materials/worked_examples.csv",
        context: &["id", "quantity", "inputs", "unit", "tolerance"],
        unused: &[],
        replay: workshop,
    },
];

fn threads(row: &mut Row) {
    // 19/64 - 36, as Machinery's Handbook works its internal thread through.
    let example = size::made_up(SystemId::Uns, Printed::Inch(0.2969), Pitch::PerInch(36.0));
    let figures = geometry(&example);
    // The ISO form has the same internal height, and is not rounded to four places on the way.
    let unrounded = geometry(&Thread { system: SystemId::MetricFine, ..example });
    let height = in_inch(unrounded.major - unrounded.minor_internal);
    let largest =
        largest_hole(&example, &figures).map_or(f64::NAN, |limit| in_inch(limit.diameter));
    let got = match row.text("id") {
        "WE13" => in_inch(figures.minor_internal),
        "WE14" => 0.2969 - height,
        "WE15" => return row.leave_out("a step on the way: the library gives the limit, WE16"),
        "WE16" => largest,
        "WE17" => in_inch(figures.effective),
        "WE18" => height,
        "WE19" => in_mm(float(mm(20.0), mm(19.95)) + float(mm(10.0), mm(9.95))),
        "WE20" => on_diameter(&joint(Case::Fixed, 3.94, 3.5)),
        "WE21" => on_diameter(&joint(Case::Floating { lower: mm(3.94) }, 3.94, 3.5)),
        "WE22" => in_mm(position(&joint(Case::Fixed, 10.1, 10.1)).hole_needed - mm(10.1)),
        "WE01" | "WE02" | "WE03" | "WE04" | "WE06" => return row.leave_out(WIRES),
        "WE07" | "WE08" | "WE24" | "WE25" | "WE26" => return row.leave_out(CIRCLE),
        id @ ("WE11" | "WE12" | "WE27" | "WE28" | "WE31" | "WE32") => strength::example(id),
        other => panic!("no example {other}"),
    };
    row.check("answer", Kind::Formula, got);
}

/// A joint whose centres are where they belong.
fn joint(case: Case, hole: f64, screw: f64) -> Joint {
    let none = mm(0.0);
    let (register, hole, screw) = (Register::Pattern, mm(hole), mm(screw));
    Joint { case, register, screw, hole, upper_error: none, lower_error: none, lean: none }
}

/// The positional tolerance that each part may have, on diameter.
fn on_diameter(joint: &Joint) -> f64 {
    position(joint).each_may_be_off.map_or(f64::NAN, in_mm) * 2.0
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
        (_, "ST") => in_rpm(spindle_speed(feet_per_minute(input(row, "V")), inch(input(row, "d")))),
        (_, "Y") => {
            let major = Printed::Mm(input(row, "D"));
            let thread = size::made_up(SystemId::Metric, major, Pitch::Mm(input(row, "pitch")));
            internal(&thread, input(row, "hole"))
        }
        (_, "TP") => {
            let major = Printed::Inch(input(row, "major"));
            let tpi = Pitch::PerInch(input(row, "tpi"));
            let thread = size::made_up(SystemId::Unc, major, tpi);
            percent(thread.form(), &geometry(&thread), inch(input(row, "drill")))
        }
        (_, "NR") => in_inch(thumb_feed(inch(input(row, "D")))),
        (_, "CS") => {
            let angle = degrees(input(row, "angle"));
            in_mm(sink_depth(mm(input(row, "D")), mm(0.0), angle))
        }
        _ => return torque::example(row),
    };
    row.check("answer", Kind::Formula, got);
}

/// The percentage on 5/8 H.
pub(crate) fn internal(thread: &Thread, hole: f64) -> f64 {
    percent_of_internal_height(thread.form(), &geometry(thread), mm(hole)).expect("a 60° form")
}

/// A bottoming tap of 1/4-20 in a hole for so much full thread.
pub(crate) fn quarter_inch(full_thread: Length) -> BlindDepths {
    blind(&quarter_inch_hole(), full_thread)
}

/// 1/4-20, its drill and a bottoming tap.
pub(crate) fn quarter_inch_hole() -> BlindHole {
    BlindHole {
        major: inch(0.25),
        pitch: inch(0.05),
        drill: inch(0.201),
        point_angle: degrees(118.0),
        last_tap: LastTap::Plug,
    }
}
