//! Torque and thrust: two tap makers' formulas, the handbook's drill, and another maker's.

use holewright_core::calc::drill_force::{
    DrillCut, Factors, factors, forces_by, power, rough_torque as rough_drill,
};
use holewright_core::calc::engagement::hole_for;
use holewright_core::calc::strip::StripSizes;
use holewright_core::calc::tap_effort::{rough_torque, tap_strength, torque};
use holewright_core::calc::thread_form::geometry;
use holewright_core::calc::tool_steel::ToolSteel;
use holewright_core::tables::drill_force::{
    RESISTANCES, Resistance, USUAL_CHISEL, WEAR, constants,
};
use holewright_core::tables::tapping_force::{Column, RoughForce, all, all_rough};
use holewright_core::tables::threads::find;
use holewright_core::units::{
    degrees, in_mm2, in_newton_metres, in_newtons, in_newtons_per_mm2, in_watts, mm, newton_metres,
    newtons_per_mm2, rpm,
};

use crate::replay::{Family, Kind, Row, read};
use crate::size;

const ANOTHER_WEB: &str = "another web's chisel edge: the usual twist drill is reckoned with";
const EXOTIC: &str = "no such metal is held";
const OTHER_TAP: &str = "another tap: the effort is that of a second tap by hand";
const ONE_TEST: &str = "one maker's test of one size, of taps that are not reckoned";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/tapping_torque.csv",
        context: &["quantity", "material_or_case", "condition", "unit"],
        unused: &[],
        replay: tapping,
    },
    Family {
        file: "drills_materials/drill_thrust_torque_factors.csv",
        context: &["factor", "at", "units", "system"],
        unused: &[],
        replay: drill_factor,
    },
    Family {
        file: "drills_materials/drill_material_constant_K.csv",
        context: &["material", "HB"],
        unused: &[],
        replay: constant,
    },
    Family {
        file: "drills_materials/tap_breaking_torque.csv",
        context: &["size", "kind"],
        unused: &[],
        replay: clutch,
    },
];

fn tapping(row: &mut Row) {
    let quantity = row.text("quantity").to_owned();
    let case = row.text("material_or_case").to_owned();
    if quantity.starts_with("kc for Md") {
        let held = all_rough().find(|held| held.printed_as == case);
        let force = held.map_or(f64::NAN, |held| in_newtons_per_mm2(held.force));
        return row.check("value", Kind::Table, force);
    }
    if quantity.starts_with("kc for Tc") {
        let mark = case.split(' ').next().unwrap_or_default();
        let held = all().find(|held| held.printed_as == mark);
        let force = held.map_or(f64::NAN, |held| in_newtons_per_mm2(held.force));
        return row.check("value", Kind::Table, force);
    }
    match quantity.as_str() {
        "K correction coefficient" => correction(row, &case),
        "computed torque Md=p^2*D*kc/8000" => {
            let size = case.rsplit(' ').next().unwrap_or_default().to_owned();
            let thread = size::thread(row, &size::metric(&size));
            let force = newtons_per_mm2(named(row.text("condition"), "kc"));
            // The sums are made with the tables' own figures.
            let held =
                *all_rough().find(|held| held.force == force).expect("a figure of the table");
            let figures = geometry(&thread);
            let found = rough_torque(&held, figures.major, figures.pitch);
            row.check("value", Kind::Formula, in_newton_metres(found));
        }
        "computed torque Yamawa equation" => {
            let size = case.rsplit(' ').next().unwrap_or_default().to_owned();
            let thread = size::thread(row, &size::metric(&size));
            let given = row.text("condition").to_owned();
            let [hole, force, by] = ["Do", "kc", "K"].map(|name| named(&given, name));
            held_beside(row, &case, force);
            let major = geometry(&thread).major;
            let found = torque(degrees(60.0), newtons_per_mm2(force), by, major, mm(hole));
            row.check("value", Kind::Formula, in_newton_metres(found));
        }
        _ if quantity.starts_with("strength gain") => row.check("value", Kind::Formula, gain()),
        _ => row.leave_out(ONE_TEST),
    }
}

/// The force a sum was made with is the one that is held.
fn held_beside(row: &mut Row, case: &str, force: f64) {
    let mark = case.split(' ').next().unwrap_or_default();
    let held = all().find(|held| held.printed_as == mark);
    let ours = held.map_or(f64::NAN, |held| in_newtons_per_mm2(held.force));
    row.claim("condition: kc", Kind::Table, force, ours, (ours - force).abs() < 1e-9);
}

/// What 72 % of full thread has more of the screw's strip area than 60 %, percent, in M6.
fn gain() -> f64 {
    let six = find("metric", "m6").expect("M6");
    let figures = geometry(six);
    let area = |percent: f64| {
        let hole = hole_for(six.form(), &figures, percent);
        in_mm2(StripSizes::of(six, &figures, hole).screw_area(mm(6.0)))
    };
    (area(72.0) / area(60.0) - 1.0) * 100.0
}

fn correction(row: &mut Row, case: &str) {
    if case != "hand tap plug 5P" {
        return row.leave_out(OTHER_TAP);
    }
    let condition = row.text("condition").to_owned();
    let (metal, pitch) = condition.rsplit_once(' ').expect("a metal and a pitch");
    let column = match metal {
        "steel" => Column::Steel,
        "cast iron/aluminium" => Column::IronOrAluminium,
        "brass" => Column::Brass,
        other => panic!("{other:?} is no column"),
    };
    row.check("value", Kind::Table, column.correction(pitch == "fine"));
}

/// `Do=5 kc=3900 K=1.35`, `kc=2300 N/mm2; p=1 mm; D=6 mm`, `S20C K=2.22; D=6 mm`.
fn named(text: &str, name: &str) -> f64 {
    let words = text.split([' ', ';', '(', ')']);
    let mut held = words.filter_map(|word| word.strip_prefix(name)?.strip_prefix('='));
    held.find_map(|value| value.parse().ok()).unwrap_or_else(|| panic!("no {name} in {text:?}"))
}

fn drill_factor(row: &mut Row) {
    let (factor, at) = (row.text("factor").to_owned(), row.text("at").to_owned());
    match factor.as_str() {
        "work material factor Kd" => return resistance(row, &at),
        "tool wear factor W" => {
            let held = WEAR.iter().find(|wear| wear.printed_as == at);
            return row.check(
                "value_as_printed",
                Kind::Table,
                held.map_or(f64::NAN, |wear| wear.factor),
            );
        }
        _ if factor.starts_with("chisel edge factor") => return chisel(row, &factor, &at),
        _ => {}
    }
    // The inch tables hold the same powers, of the size in inches.
    let (_, size) = at.split_once('=').expect("a size");
    let size = mm(size.split(' ').next().unwrap_or_default().parse().expect("a figure"));
    let found = factors(size, size);
    let got = match factor.as_str() {
        "feed factor Ff" => found.feed,
        "diameter factor FT thrust" => found.thrust,
        "diameter factor FM torque" => found.torque,
        other => panic!("no factor {other}"),
    };
    row.check("value_as_printed", Kind::Formula, got);
}

fn chisel(row: &mut Row, factor: &str, at: &str) {
    if at != "c/d=0.18" {
        return row.leave_out(ANOTHER_WEB);
    }
    let got = match factor {
        "chisel edge factor A torque" => USUAL_CHISEL.torque,
        "chisel edge factor B thrust" => USUAL_CHISEL.thrust,
        "chisel edge factor J thrust" => USUAL_CHISEL.web,
        other => panic!("no factor {other}"),
    };
    row.check("value_as_printed", Kind::Table, got);
}

/// `24000`, or `24000 for torque; 35000 for thrust`.
fn resistance(row: &mut Row, metal: &str) {
    let printed = row.text("value_as_printed").to_owned();
    let figures: Vec<f64> =
        printed.split([' ', ';']).filter_map(|word| word.parse().ok()).collect();
    let (Some(torque), Some(thrust)) = (figures.first(), figures.last()) else {
        panic!("{printed:?}")
    };
    let found = RESISTANCES
        .iter()
        .any(|held: &Resistance| near(held.torque, *torque) && near(held.thrust, *thrust));
    if !found {
        return row.leave_out(EXOTIC);
    }
    row.claim("value_as_printed", Kind::Table, format!("{metal}: {printed}"), "held", found);
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

fn constant(row: &mut Row) {
    let (name, tensile) = (row.text("material").to_owned(), row.number("UTS_MPa"));
    let held = constants().iter().find(|held| {
        held.printed_as == name
            && tensile.is_some_and(|tensile| near(in_newtons_per_mm2(held.tensile), tensile))
    });
    row.check("UTS_MPa", Kind::Table, held.map_or(f64::NAN, |it| in_newtons_per_mm2(it.tensile)));
    row.check("K", Kind::Table, held.map_or(f64::NAN, |held| held.value));
}

/// A clutch slips before the tap breaks: the estimate of its strength must lie above.
fn clutch(row: &mut Row) {
    let thread = size::thread(row, &size::metric(row.text("size")));
    let breaks = in_newton_metres(tap_strength(geometry(&thread).minor, ToolSteel::HighSpeed));
    let slips = row.number("value_N_m").expect("a torque");
    let got = format!("{breaks:.2} N·m");
    row.claim("value_N_m", Kind::Bounds, format!("more than {slips}"), got, breaks > slips);
}

const SAME: &str = "its inputs stand in a row that was not copied";

/// The worked examples of torque, thrust and power.
pub(crate) fn example(row: &mut Row) {
    let id = row.text("id").to_owned();
    let inputs = row.text("inputs").to_owned();
    let kind = id.trim_end_matches(|last: char| last.is_ascii_digit());
    match (id.as_str(), kind) {
        (_, "LU") if inputs.contains("Md=") => {
            let watts = in_watts(power(newton_metres(named(&inputs, "Md")), rpm(200.0)));
            row.check("answer", Kind::Formula, watts / 1000.0);
        }
        (_, "LU") => {
            let [force, pitch, major] = ["kc", "p", "D"].map(|name| named(&inputs, name));
            let held = RoughForce { force: newtons_per_mm2(force), ..*any_rough() };
            let found = rough_torque(&held, mm(major), mm(pitch));
            row.check("answer", Kind::Formula, in_newton_metres(found));
        }
        (_, "YT") => {
            let [force, by, major, hole] = ["kc", "K", "D", "Do"].map(|name| named(&inputs, name));
            let angle = degrees(2.0 * named(&inputs, "theta"));
            let found = torque(angle, newtons_per_mm2(force), by, mm(major), mm(hole));
            row.check("answer", Kind::Formula, in_newton_metres(found));
        }
        (_, "MHD") => row.leave_out("recalled, in pounds and inches: the metric formulas are ours"),
        ("TG1M" | "TG4M", _) => {
            let [value, drill, feed] = ["K", "D", "f"].map(|name| named(&inputs, name));
            let held = holewright_core::tables::drill_force::Constant { value, ..constants()[0] };
            let found = rough_drill(&held, mm(drill), mm(feed));
            row.check("answer", Kind::Formula, in_newton_metres(found));
        }
        _ if id.starts_with("SI") => handbook(row, &id),
        _ if id.starts_with("TG") => row.leave_out(SAME),
        _ => row.leave_out("a turning tool's specific force: no figure of ours goes by it"),
    }
}

fn any_rough() -> &'static RoughForce {
    all_rough().next().expect("a figure")
}

/// The sum is made with the printed factors, rounded as the tables have them.
fn handbook(row: &mut Row, id: &str) {
    let of_thrust = format!("{}T", &id[..id.len() - 1]);
    let rows = read("drills_materials/worked_examples.csv");
    let first = rows.iter().find(|(_, cells)| cells["id"] == of_thrust);
    let Some((_, first)) = first else { return row.leave_out(SAME) };
    let inputs = first["inputs"].clone();
    let number = |name| named(&inputs, name);
    let own = row.text("inputs").to_owned();
    let cut = DrillCut {
        drill: mm(number("D")),
        feed: mm(number("f")),
        resistance: Resistance { torque: number("Kd"), thrust: number("Kd"), ..RESISTANCES[0] },
        chisel: USUAL_CHISEL,
        wear: number("W"),
    };
    let of_torque = id.ends_with('M');
    let torque = if of_torque { named(&own, "FM") } else { f64::NAN };
    let found = forces_by(&cut, Factors { feed: number("Ff"), thrust: number("FT"), torque });
    let got = if of_torque { in_newton_metres(found.torque) } else { in_newtons(found.thrust) };
    row.check("answer", Kind::Formula, got);
}
