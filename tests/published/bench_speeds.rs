//! Reaming, countersinking and tapping speeds, small feeds and lubricants, gathered after the first tables.
//!
//! A row that nothing here goes by is named with its reason; [`every_row_is_used_or_named`] counts them.

use holewright_core::calc::countersink::RULES;
use holewright_core::calc::cutting_speed::spindle_speed;
use holewright_core::calc::drill_feed::{OF_DIAMETER, drill_feed};
use holewright_core::calc::reaming::feed;
use holewright_core::calc::setting::SetTo;
use holewright_core::calculators::speeds::{self, Question, Tool, Work};
use holewright_core::tables::materials::{self, Material, SpeedRange, feeds};
use holewright_core::tables::reaming::{Drive, allowances};
use holewright_core::tables::reaming_pairs::{HALF, RULE, pairs};
use holewright_core::units::{
    in_inch, in_metres_per_minute, in_mm, in_rpm, inch, metres_per_minute, mm,
};

use crate::replay::{Differences, Family, Kind, NotHeld, Row, read, replay};

const FOOT: f64 = 0.3048;

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "limits_speeds/reaming_speeds.csv",
        context: &["kind", "material", "condition", "unit"],
        unused: &[],
        replay: reaming,
    },
    Family {
        file: "limits_speeds/countersink_speeds.csv",
        context: &["operation", "basis"],
        unused: &[],
        replay: countersinking,
    },
    Family {
        file: "limits_speeds/small_drill_feeds.csv",
        context: &["d_from", "d_to", "d_unit", "feed_unit", "condition"],
        unused: &[],
        replay: small_feed,
    },
    Family {
        file: "limits_speeds/stainless_303_speeds.csv",
        context: &["grade_AISI", "quantity", "unit", "condition"],
        unused: &[],
        replay: stainless,
    },
    Family {
        file: "limits_speeds/tapping_speeds_hand_machine.csv",
        context: &["material", "unit", "tool_or_condition", "fluid_printed"],
        unused: &[],
        replay: tapping,
    },
    Family {
        file: "limits_speeds/lubricants_hand.csv",
        context: &["material", "operation"],
        unused: &[],
        replay: lubricant,
    },
    Family {
        file: "limits_speeds/drill_oversize_published.csv",
        context: &[],
        unused: &[],
        replay: oversize,
    },
];

fn material(slug: &str) -> &'static Material {
    materials::find(slug).expect("a material")
}

fn answer(slug: &str, work: Work, millimetres: f64) -> speeds::Answer {
    let question = Question::new(material(slug), work, Tool::Size(mm(millimetres)));
    speeds::answer(question).expect("an answer")
}

/// Pairs as held; the rules; what a reamer is run and fed at; what is left for it.
fn reaming(row: &mut Row) {
    match row.text("kind") {
        "speed pair HSS" => pair(row),
        "rule" => reaming_rule(row),
        "stock" => stock(row),
        "feed" => {
            let [low, high] = feed(mm(12.0)).expect("a feed").map(in_mm);
            let within = low >= 0.2 && high <= 2.0;
            let got = format!("12 mm: {low:.3} to {high:.3}");
            row.claim("reaming", Kind::Bounds, "0.2-2", got, within);
        }
        _ => reaming_speed(row),
    }
}

fn pair(row: &mut Row) {
    let figures = ["drilling", "reaming"].map(|column| row.number(column));
    let held = pairs().iter().find(|pair| {
        pair.printed_as == row.text("material")
            && pair.condition == row.text("condition")
            && figures == [Some(pair.drilling), Some(pair.reaming)]
    });
    let Some(pair) = held else {
        let printed = row.text("reaming").to_owned();
        return row.claim("reaming", Kind::Table, printed, "no pair", false);
    };
    row.check("drilling", Kind::Table, pair.drilling);
    row.check("reaming", Kind::Table, pair.reaming);
    row.check("reaming_over_drilling", Kind::Formula, pair.fraction());
}

fn reaming_rule(row: &mut Row) {
    let printed = row.text("reaming").to_owned();
    let (got, agrees) = match printed.as_str() {
        "about 1/2 of drilling speed" => {
            (HALF.least, HALF.least == HALF.most && near(HALF.most, 0.5))
        }
        "1/3 to 1/2 of drilling speed" => {
            (RULE.least, near(RULE.least, 1.0 / 3.0) && near(RULE.most, 1.0 / 2.0))
        }
        "slower speed and higher feed than a drill of the diameter" => {
            let [reamed, drilled] =
                [Work::Reaming, Work::Drilling].map(|work| answer("bright-mild-steel", work, 6.0));
            let slower = reamed.low < drilled.low && reamed.high < drilled.high;
            let more = reamed
                .feed
                .zip(drilled.feed)
                .is_some_and(|(a, b)| a.low > b.low && a.high > b.high);
            (in_rpm(reamed.low) / in_rpm(drilled.low), slower && more)
        }
        _ => return row.leave_out("a rule nobody reads here"),
    };
    row.claim("reaming", Kind::Formula, printed, got, agrees);
}

fn reaming_speed(row: &mut Row) {
    let printed = row.text("reaming").to_owned();
    match (row.text("material"), row.text("condition")) {
        ("aluminium alloys", "straight holes") => {
            let most =
                in_metres_per_minute(answer("aluminium-6082", Work::Reaming, 6.0).basis.high)
                    / FOOT;
            row.claim("reaming", Kind::Bounds, printed, most, most <= 400.0);
        }
        ("general", _) => {
            let slow =
                in_metres_per_minute(answer("bright-mild-steel", Work::Reaming, 6.0).basis.low);
            row.claim("reaming", Kind::Bounds, printed, slow, (3.0..=20.0).contains(&slow));
        }
        _ => row.leave_out("taper holes: no taper reamer is sized here"),
    }
}

/// `machine reaming, final size mm 5-20`
fn stock(row: &mut Row) {
    let condition = row.text("condition").to_owned();
    if condition.starts_with("hand/aviation") {
        return row.leave_out("a sizing reamer’s cut, less than a drill of the size cuts large");
    }
    let printed = row.text("reaming").to_owned();
    let figures = printed.split(' ').next().unwrap_or_default();
    let (least, most) = figures.split_once('-').unwrap_or((figures, figures));
    let [least, most] = [least, most].map(|figure| figure.parse::<f64>().expect("a figure"));
    let metric = row.text("unit") == "mm";
    let of = |length| if metric { in_mm(length) } else { in_inch(length) };
    let size = condition.rsplit(' ').next().and_then(|band| band.split('-').next());
    let size = size.and_then(|size| size.parse::<f64>().ok());
    let from = match (condition.contains("< 5"), condition.contains("final size"), size) {
        (true, ..) => Some(mm(0.0)),
        (_, true, Some(size)) => Some(mm(size)),
        _ => None,
    };
    let held = allowances().iter().find(|held| {
        held.drive == Drive::Machine
            && held.from == from
            && near(of(held.least), least)
            && near(of(held.most), most)
    });
    row.claim("reaming", Kind::Table, printed, format!("{held:?}"), held.is_some());
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

fn countersinking(row: &mut Row) {
    let figure = row.text("figure").to_owned();
    let rule = |factor: [f64; 2], midway: bool| {
        RULES.iter().find(|rule| {
            let same = rule.factor.into_iter().zip(factor).all(|(a, b)| near(a, b));
            same && rule.midway == midway
        })
    };
    let (got, agrees) = match figure.as_str() {
        "80-85 % of the speeds and feeds for drills" => {
            let found = rule([0.80, 0.85], false);
            (format!("{found:?}"), found.is_some())
        }
        "same speeds and feeds as drills (100 %)" => {
            let found = rule([1.0, 1.0], true);
            (format!("{found:?}"), found.is_some())
        }
        words if words.starts_with("relatively low speed, to avoid chatter") => {
            let set = answer("bright-mild-steel", Work::Countersinking, 6.0).setting;
            (set.words(), set.to == SetTo::SlowestThatCutsClean(None))
        }
        _ => return row.leave_out("a training quiz, weak; another textbook’s quarter is shown"),
    };
    row.claim("figure", Kind::Table, figure, got, agrees);
}

/// The list's own row, what it makes of the diameter, and ours below it.
fn small_feed(row: &mut Row) {
    let source = row.text("source").to_owned();
    match row.text("feed_unit") {
        "in/rev" if source.starts_with("Proto") => {
            row.leave_out("another maker’s range, coarser; the plan goes by the finest list")
        }
        "in/rev" => {
            let to = if row.text("d_to") == "1/8" { 0.125 } else { 0.25 };
            let held = feeds::for_drill(inch(to)).expect("a feed");
            row.check("feed_min", Kind::Table, in_inch(held.low));
            row.check("feed_max", Kind::Table, in_inch(held.high));
        }
        "% of D" => {
            let drill = match row.text("d_from") {
                "1/8" => 0.125,
                "1/16" => 0.0625,
                _ => 0.0135,
            };
            let held = feeds::for_drill(inch(drill)).expect("a feed");
            let part = |length| 100.0 * in_inch(length) / drill;
            row.check("feed_min", Kind::Formula, part(held.low));
            row.check("feed_max", Kind::Formula, part(held.high));
            // Ours is held to the size, or by feel.
            let ours = drill_feed(inch(drill)).map(|feed| part(feed.high));
            let most = 100.0 * OF_DIAMETER[1];
            let held = ours.is_none_or(|ours| ours <= most + 1e-9) || drill > 0.118;
            row.claim("feed_max: held to 2 %", Kind::Bounds, most, format!("{ours:?}"), held);
        }
        _ => {
            row.leave_out("a speed of a production drilling machine, which no bench machine turns")
        }
    }
}

/// Drilling and reaming speeds of stainless steels by grade and condition, and the tapping speeds.
fn stainless(row: &mut Row) {
    let grades: Vec<&str> = row.text("grade_AISI").split([' ', '-', ',', '/']).collect();
    let quantity = row.text("quantity").to_owned();
    let hardness: String =
        row.text("condition").split(' ').next().unwrap_or("").replace('-', " to ");
    let of = |material: &Material| -> &'static [SpeedRange] {
        match quantity.as_str() {
            "drilling HSS" => material.drilling,
            "reaming HSS" => material.reaming,
            "tapping" => material.tapping,
            _ => &[],
        }
    };
    if quantity.starts_with("turning") {
        return row.leave_out("turning: no lathe speed is asked for here");
    }
    if quantity == "machinability" {
        return row.leave_out("a machinability rating: the materials hold their own from a mill’s list, and no speed goes by it");
    }
    let figures = ["value_min", "value_max"].map(|column| row.number(column));
    let feet = |speed| in_metres_per_minute(speed) / FOOT;
    let slugs = ["stainless-303", "stainless-304", "stainless-316", "stainless-416"];
    let held = slugs.into_iter().filter(|slug| grades.iter().any(|grade| slug.ends_with(grade)));
    let held = held.flat_map(|slug| of(material(slug))).find(|range| {
        let same = range.printed_as.contains(&hardness) || quantity == "tapping";
        same && figures.map(|figure| figure.map(f64::round))
            == [range.low, range.high].map(|end| Some(feet(end).round()))
    });
    let Some(range) = held else {
        let printed = row.text("value_min").to_owned();
        return row.claim("value_min", Kind::Table, printed, "no range", false);
    };
    row.check("value_min", Kind::Table, feet(range.low));
    row.check("value_max", Kind::Table, feet(range.high));
}

/// Each list's row among the material's own, in its own words and with its own figures; the worked speeds.
fn tapping(row: &mut Row) {
    if row.text("unit") == "rpm" {
        return tap_revolutions(row);
    }
    let printed = row.text("material").to_owned();
    let reason = match printed.as_str() {
        "any" => "taper threads are tapped by hand here",
        "Nimonic" => "no such metal is held",
        "Fibre" => "vulcanised fibre is not held",
        steel if steel.starts_with("S50C") => "the conditions of a torque test, no advice",
        _ => "",
    };
    if !reason.is_empty() {
        return row.leave_out(reason);
    }
    let metres = row.text("unit") == "m/min";
    let of = |speed| in_metres_per_minute(speed) / if metres { 1.0 } else { FOOT };
    let figures = ["speed_min", "speed_max"].map(|column| row.number(column));
    let is_row = |range: &&SpeedRange| {
        let same = [range.low, range.high].map(|end| Some((of(end) * 1000.0).round() / 1000.0));
        words(range.printed_as) == words(&printed) && same == figures
    };
    let of_materials = || materials::all().iter().flat_map(|material| material.tapping);
    let Some(range) = of_materials().find(is_row) else {
        let figure = row.text("speed_min").to_owned();
        return row.claim("speed_min", Kind::Table, figure, "no range", false);
    };
    row.check("speed_min", Kind::Table, of(range.low));
    row.check("speed_max", Kind::Table, of(range.high));
}

/// The words of a name, in the order of the alphabet; two lists name some metals another way.
fn words(text: &str) -> Vec<String> {
    let text = text.to_lowercase();
    let text = match text.as_str() {
        "ductile iron" => "ductile cast iron",
        "zinc die casting" => "die casting zinc",
        "thermoplastic" => "plastic, thermoplastic",
        same => same,
    };
    let split = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let mut words: Vec<String> = split.map(str::to_owned).collect();
    words.sort_unstable();
    words
}

/// `1682 / 611 / 1834` for 55, 20 and 60 ft/min at a No. 5 and a No. 8 screw.
fn tap_revolutions(row: &mut Row) {
    // A No. 5 screw is 0.125 in, a No. 8 is 0.164.
    let major = if row.text("material").contains("No.5") { 0.125 } else { 0.164 };
    let printed = row.text("speed_min").to_owned();
    for (figure, feet) in printed.split(" / ").zip([55.0, 20.0, 60.0]) {
        let ours = in_rpm(spindle_speed(metres_per_minute(feet * FOOT), inch(major)));
        let wanted: f64 = figure.parse().expect("a figure");
        // Printed with π short: within a part in a thousand.
        let agrees = (ours / wanted - 1.0).abs() < 0.001;
        row.claim("speed_min", Kind::Formula, figure, ours, agrees);
    }
}

/// What a row of the lists must find in the words of the shed, or why it does not bind them.
fn lubricant(row: &mut Row) {
    let [drill, tap] = [true, false].map(|drill| {
        move |slug: &str| {
            let material = material(slug);
            let advice = if drill { material.on_the_drill() } else { material.on_the_tap() };
            advice.text.to_lowercase()
        }
    });
    let printed = row.text("advice").to_owned();
    let key = (row.text("material"), row.text("operation"));
    let (got, word) = match key {
        ("Plastics", "machine tapping") => (vec![tap("acetal")], "dry"),
        ("Steel", "hand tapping and dies") => (vec![tap("bright-mild-steel")], "oil"),
        ("Aluminium", "hand tapping") => (vec![tap("aluminium-6082")], "paraffin"),
        ("Aluminium", "boring, threading, reaming") => (vec![drill("aluminium-6082")], "paraffin"),
        ("Wrought iron and steel", "reaming") | ("Wrought iron", "drilling") => {
            (vec![drill("black-mild-steel")], "oil")
        }
        ("Cast iron and brass", "reaming") | ("Cast iron, brass, aluminium", "cutting") => {
            (vec![drill("grey-cast-iron"), drill("free-cutting-brass")], "dry")
        }
        ("Brass, copper, aluminium", "cutting") => (vec![drill("free-cutting-brass")], "dry"),
        ("Chilled cast iron", "drilling") | ("Cast iron", "rose/roughing reaming") => {
            (vec![drill("grey-cast-iron")], "dry")
        }
        ("Magnesium alloy", _) => {
            return row.leave_out(
                "soluble oil on magnesium is refused here: water and its chips make fire",
            );
        }
        ("Brass", "hand tapping") | ("Cast iron", "tapping") => {
            return row
                .leave_out("one list’s paraffin; the shed has a smear of cutting oil, or dry");
        }
        (_, "machine tapping") => {
            return row.leave_out("a mixture for flood cooling under power; the handbook’s stands on the material’s page");
        }
        ("Hardened steel", _) => return row.leave_out("hardened steel is not drilled here"),
        _ => {
            return row.leave_out("an old mixture of lard and turpentine or soda, kept in no shed");
        }
    };
    let agrees = got.iter().all(|words| words.contains(word));
    row.claim("advice", Kind::Table, printed, got.join("; "), agrees);
}

fn oversize(row: &mut Row) {
    if row.text("d_unit") == "mm" {
        row.leave_out("a machining firm’s tolerance for any diameter, weak; the plan goes by size");
    } else {
        row.leave_out(
            "text only: the handbook’s table could not be read, so ours stays unconfirmed",
        );
    }
}

/// How many rows of each file are replayed, and how many are named as unused with their reason.
const ACCOUNT: [(&str, usize, usize); 7] = [
    ("limits_speeds/reaming_speeds.csv", 42, 2),
    ("limits_speeds/countersink_speeds.csv", 3, 1),
    ("limits_speeds/small_drill_feeds.csv", 5, 2),
    ("limits_speeds/stainless_303_speeds.csv", 15, 22),
    ("limits_speeds/tapping_speeds_hand_machine.csv", 37, 5),
    ("limits_speeds/lubricants_hand.csv", 11, 12),
    ("limits_speeds/drill_oversize_published.csv", 0, 3),
];

#[test]
fn every_row_is_used_or_named() {
    let mut found = Vec::new();
    for family in FAMILIES {
        let (mut differences, mut not_held) = (Differences::read(), NotHeld::read());
        let outcome = replay(family, &mut differences, &mut not_held);
        assert_eq!(outcome.failures, Vec::<String>::new(), "{}", family.file);
        let (used, named) = (outcome.rows, outcome.left_out.len());
        assert_eq!(used + named, read(family.file).len(), "{} loses rows", family.file);
        assert!(outcome.left_out.iter().all(|(_, reason)| !reason.is_empty()));
        found.push((family.file, used, named));
    }
    assert_eq!(found, ACCOUNT, "rows used, rows named");
}
