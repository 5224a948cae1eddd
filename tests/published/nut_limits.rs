//! The largest hole of Whitworth threads by the rule of BS 84, and published advice on how much thread.
//!
//! The derived rows work the minor diameter out as D − 1.280654 p; BS 84 rounds the depth to four
//! places first, as the library does, so that a limit may part by 0.0001 in.

use holewright_core::calc::aim::{Aim, aim_percent};
use holewright_core::calc::engagement;
use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::materials;
use holewright_core::tables::threads::{Thread, find, system};
use holewright_core::units::{Length, in_inch, in_mm, inch, mm};

use crate::limits::bs_93;
use crate::replay::{Family, Kind, Row};
use crate::size::{self, Size};

const SCREW: &str = "limits of the screw are not figured";
const EFFECTIVE: &str = "limits of the effective diameter are not figured";
const SCOPE: &str = "says what the standard holds, and prints no figure";
const TORQUE: &str = "the same statement as in the tapping torques, where its figure is replayed";
const OPINION: &str = "one author's habit, beside which the aim table is common practice too";
const LENGTH: &str = "says how long a thread to make, which the person decides";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "limits_speeds/bs84_nut_limits.csv",
        context: &["series", "size", "tpi", "quantity", "unit"],
        unused: &[],
        replay: nut_limit,
    },
    Family {
        file: "limits_speeds/bs84_rule_vs_bs1157_check.csv",
        context: &["series", "size"],
        unused: &[],
        replay: drill_of_bs_1157,
    },
    Family {
        file: "limits_speeds/nut_engagement_advice.csv",
        context: &["applies_to", "unit"],
        unused: &[],
        replay: advice,
    },
];

fn nut_limit(row: &mut Row) {
    let quantity = row.text("quantity").to_owned();
    match quantity.as_str() {
        "nut minor diameter tolerance (plus)" => rule(row),
        "nut minor tolerance (plus)" => bs_93(row, "value", "0.375P"),
        "nut minor diameter min" => {
            let thread = whitworth(row);
            row.check("value", Kind::Formula, in_inch(geometry(&thread).minor_internal));
        }
        "nut minor diameter max" => {
            let thread = whitworth(row);
            row.check("value", Kind::Formula, in_inch(limit(&thread)));
        }
        "internal minor diameter min / max" => pipe(row),
        "internal minor tolerance (max - min)" => pipe_tolerance(row),
        other if other.contains("bolt") => row.leave_out(SCREW),
        other if other.contains("effective") => row.leave_out(EFFECTIVE),
        _ => row.leave_out(SCOPE),
    }
}

/// `0.2p + 0.004` for `26 and finer`: held against every Whitworth size of those threads an inch.
fn rule(row: &mut Row) {
    let printed = row.text("value").to_owned();
    let constant: f64 = printed
        .strip_prefix("0.2p + ")
        .and_then(|constant| constant.parse().ok())
        .unwrap_or_else(|| panic!("{printed:?} is no rule"));
    let of_this_row = match row.text("tpi") {
        "26 and finer" => |tpi: f64| tpi >= 26.0,
        "24 and 22" => |tpi: f64| (22.0..26.0).contains(&tpi),
        "20 and coarser" => |tpi: f64| tpi <= 20.0,
        other => panic!("{other:?} threads an inch"),
    };
    let (mut right, mut count) = (0, 0);
    for thread in ["bsw", "bsf"].iter().flat_map(|slug| system(slug).expect("Whitworth").threads) {
        let figures = geometry(thread);
        if !of_this_row(figures.threads_per_inch) {
            continue;
        }
        count += 1;
        let tolerance = in_inch(limit(thread) - figures.minor_internal);
        let rule = 0.2 / figures.threads_per_inch + constant;
        // The largest hole is rounded to four places of an inch.
        right += usize::from((tolerance - rule).abs() <= 0.000_05 + 1e-9);
    }
    let got = format!("{printed} in {right} of {count} sizes");
    row.claim("value", Kind::Formula, printed, got, right == count && count > 0);
}

fn limit(thread: &Thread) -> Length {
    largest_hole(thread, &geometry(thread)).map_or(mm(f64::NAN), |limit| limit.diameter)
}

fn named(row: &Row) -> Size {
    let size = row.text("size").to_owned();
    match row.text("series") {
        "BSW" => size::british("bsw", &size, None),
        "BSF" => size::british("bsf", &size, None),
        series if series.starts_with("Whitworth form 40/32/26") => {
            size::model_engineer(&format!("{size}x{}", row.text("tpi")))
        }
        series => panic!("{series:?} is no Whitworth series"),
    }
}

#[track_caller]
fn whitworth(row: &mut Row) -> Thread {
    let size = named(row);
    size::thread(row, &size)
}

/// `8.566 / 8.848` of `G 1/8`.
fn pipe(row: &mut Row) {
    let size = size::pipe("bspp", row.text("size"));
    let thread = size::thread(row, &size);
    let printed = row.text("value").to_owned();
    let (least, largest) = printed.split_once(" / ").expect("two limits");
    let figures = geometry(&thread);
    row.used("value");
    row.check_printed("value: least", least, Kind::Formula, in_mm(figures.minor_internal));
    row.check_printed("value: largest", largest, Kind::Formula, in_mm(limit(&thread)));
}

fn pipe_tolerance(row: &mut Row) {
    let tpi = row.number("tpi").expect("threads an inch");
    let threads = system("bspp").expect("pipe").threads.iter();
    let thread = threads
        .map(|thread| (thread, geometry(thread)))
        .find(|(_, figures)| (figures.threads_per_inch - tpi).abs() < 1e-9);
    let (thread, figures) = thread.unwrap_or_else(|| panic!("no pipe thread of {tpi} an inch"));
    row.check("value", Kind::Formula, in_mm(limit(thread) - figures.minor_internal));
}

/// The drill that BS 1157 recommends lies within the limits of BS 84.
fn drill_of_bs_1157(row: &mut Row) {
    let thread = whitworth(row);
    let figures = geometry(&thread);
    let drill = mm(row.number("bs1157_drill_mm").expect("a drill"));
    row.used("bs1157_drill_mm");
    row.check("minor_min_mm", Kind::Formula, in_mm(figures.minor_internal));
    row.check("minor_max_mm_by_rule", Kind::Formula, in_mm(limit(&thread)));
    let inside = drill >= figures.minor_internal
        && largest_hole(&thread, &figures).is_some_and(|limit| limit.admits(drill));
    let verdict = row.text("verdict").to_owned();
    let got = if inside { "inside" } else { "outside" };
    row.claim("verdict", Kind::Formula, &verdict, got, verdict == got);
}

/// The aim of a metal at a depth, of a 6 mm thread, percent.
fn aim(slug: &str, diameters: f64) -> f64 {
    let material = materials::find(slug).expect("a metal of ours");
    aim_percent(material, mm(6.0), Some(mm(6.0 * diameters)), Aim::Usual)
}

fn advice(row: &mut Row) {
    let to = row.text("applies_to").to_owned();
    match to.as_str() {
        "average" => {
            let ours = aim("free-cutting-brass", 1.25);
            row.claim("figure", Kind::Bounds, "about 75", ours, (ours - 75.0).abs() <= 2.0);
        }
        "small or deep holes" => {
            let ours = aim("copper", 3.0);
            row.claim("figure", Kind::Bounds, "50-53", ours, (50.0..=53.0).contains(&ours));
        }
        "any size, maximum" => {
            let material = materials::find("free-cutting-brass").expect("brass");
            let ours = aim_percent(material, mm(6.0), Some(mm(3.0)), Aim::Strong);
            row.check("figure", Kind::Formula, ours);
        }
        "stainless steel" => {
            let ours = aim("stainless-304", 0.5).max(aim("stainless-303", 0.5));
            row.claim("figure", Kind::Bounds, "75 maximum", ours, ours <= 75.0);
        }
        _ if to.ends_with("-28 stainless") || to.contains("-24 stainless") => drills(row, &to),
        _ if to.starts_with("Whitworth ") => least_of_whitworth(row, &to),
        _ if to.starts_with("BA: ") => {
            let five = find("ba", "5").expect("5 BA");
            row.check("figure", Kind::Formula, exact_least(five));
        }
        _ if to.starts_with('M') && to.contains(" 6H: ") => least_of_metric(row, &to),
        _ if to.starts_with("1020 steel") => row.leave_out(TORQUE),
        _ if to.starts_with("75 % thread") => row.leave_out(LENGTH),
        _ if to.starts_with("load held") => row
            .leave_out("a range that says neither metal nor length: strength is reckoned for both"),
        _ if to.starts_with("tough materials") => {
            let (tough, brass) = (aim("stainless-304", 2.1), aim("free-cutting-brass", 2.1));
            let got = format!("aims {tough} and {brass}");
            row.claim("figure", Kind::Bounds, "a larger drill", got, tough < brass);
        }
        _ if to.starts_with("tapping into thin stock") => {
            let (thin, thick) = (aim("bright-mild-steel", 0.5), aim("bright-mild-steel", 1.25));
            let got = format!("{thin} and {thick}");
            row.claim("figure", Kind::Bounds, "larger percentages", got, thin > thick);
        }
        _ => row.leave_out(OPINION),
    }
}

/// `No.4 .2090 88; No.3 .2130 80`: each drill's printed percentage, of the 3/4 H that we use.
fn drills(row: &mut Row, to: &str) {
    let printed = row.text("figure").to_owned();
    row.used("figure");
    let name = to.split(' ').next().unwrap_or_default();
    let thread = size::thread(row, &size::unified(name));
    for entry in printed.split("; ") {
        // "Q .3320 70 (printed; by formula about 79)" is cut at its own semicolon.
        let entry = entry.split(" (").next().unwrap_or(entry);
        let words: Vec<&str> = entry.split(' ').collect();
        let [.., percent] = words[..] else { continue };
        let Some(hole) = words.iter().rev().skip(1).find_map(|word| diameter(word)) else {
            continue;
        };
        let figures = geometry(&thread);
        let ours = engagement::percent(thread.form(), &figures, hole);
        row.check_printed(&format!("figure: {entry}"), percent, Kind::Formula, ours);
    }
}

/// `.2090` or `29/64`, in inches.
fn diameter(word: &str) -> Option<Length> {
    if let Some((over, under)) = word.split_once('/') {
        return Some(inch(over.parse::<f64>().ok()? / under.parse::<f64>().ok()?));
    }
    word.starts_with('.').then(|| word.parse().ok().map(inch)).flatten()
}

/// Engagement at the standard's largest hole.
fn least(thread: &Thread) -> f64 {
    engagement::percent(thread.form(), &geometry(thread), limit(thread))
}

/// The same of BS 93's formula, before the hole is rounded: 1 − 0.375 / 1.2.
fn exact_least(thread: &Thread) -> f64 {
    let figures = geometry(thread);
    let tolerance = (limit(thread) - figures.minor_internal) / figures.pitch;
    (1.0 - (tolerance.value * 1000.0).round() / 1000.0 / 1.2) * 100.0
}

fn least_of_whitworth(row: &mut Row, to: &str) {
    let tpi = to.split(' ').nth(1).expect("threads an inch");
    let threads_per_inch: f64 = tpi.parse().expect("a number");
    let threads =
        ["bsw", "bsf", "me-40"].iter().flat_map(|slug| system(slug).expect("held").threads);
    let thread = threads
        .filter(|thread| (geometry(thread).threads_per_inch - threads_per_inch).abs() < 1e-9)
        .find(|thread| thread.size == first_of(tpi));
    let thread = thread.unwrap_or_else(|| panic!("no size of {tpi} threads an inch"));
    row.check("figure", Kind::Formula, least(thread));
}

/// The smallest BSW or BSF size of a pitch in the table of limits.
fn first_of(tpi: &str) -> &'static str {
    match tpi {
        "40" => "1-8",
        "32" | "24" => "3-16",
        "22" => "5-16",
        "20" => "1-4",
        "16" => "3-8",
        "10" => "3-4",
        "8" => "1",
        other => panic!("{other} threads an inch"),
    }
}

/// `M3 6H: …`: of 1.0825 p, five eighths of H on both sides.
fn least_of_metric(row: &mut Row, to: &str) {
    let name = to.split(' ').next().unwrap_or_default();
    let thread = size::thread(row, &size::metric(name));
    let figures = geometry(&thread);
    let part = (figures.major - limit(&thread)) / (figures.major - figures.minor_internal);
    row.check("figure", Kind::Formula, part.value * 100.0);
}
