//! Speeds and feeds by material, leads of taps, and the oversize of drilled holes.

use holewright_core::calc::depth::LastTap;
use holewright_core::calc::oversize::likely;
use holewright_core::tables::materials::feeds::{self, FeedRange};
use holewright_core::tables::materials::{self, SpeedRange};
use holewright_core::tables::reaming::speed_rule;
use holewright_core::units::{in_inch, in_metres_per_minute, in_mm, inch, mm};

use crate::readings;
use crate::replay::{Family, Kind, Row};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/feeds.csv",
        context: &["operation", "material", "d_from", "d_to", "d_unit", "feed_unit"],
        unused: &[],
        replay: feed,
    },
    Family {
        file: "drills_materials/cutting_speeds.csv",
        context: &["operation", "material", "hardness_HB", "condition_or_tool", "unit"],
        unused: &[],
        replay: speed,
    },
    Family {
        file: "drills_materials/tap_chamfers.csv",
        context: &["standard", "form", "use"],
        unused: &[],
        replay: lead,
    },
    Family {
        file: "drills_materials/drill_oversize.csv",
        context: &["d_from_in", "d_to_in", "what"],
        unused: &[],
        replay: oversize,
    },
];

/// The two tables the library holds: by diameter for metals in general, and by material.
fn feed(row: &mut Row) {
    if row.text("operation") == "reaming" {
        let (factor, source) = speed_rule();
        let printed = row.text("feed_unit").to_owned();
        let agrees = near(factor, 0.5)
            && readings::of(source.cite)
                .iter()
                .any(|read| row.text("source").starts_with(read.split(',').next().unwrap_or("")));
        return row.claim(
            "feed_unit",
            Kind::Table,
            printed,
            factor,
            agrees && row.text("feed_unit") == "half the drill speed",
        );
    }
    let printed_as = row.text("material").to_lowercase();
    let held = if row.text("source").starts_with("US Navy") {
        feeds::general().iter().find(|range| same_band(row, range))
    } else if row.text("source").starts_with("'Nominal tutorial") {
        let of_materials = materials::all().iter().flat_map(|material| material.feeds);
        of_materials.into_iter().find(|range| {
            let diameter = row.number("d_from").map(mm);
            range.printed_as == printed_as && diameter == Some(range.from)
        })
    } else {
        return row.leave_out("another source's range; the plan goes by the two tables named");
    };
    let Some(held) = held else {
        let printed = row.text("feed_min").to_owned();
        return row.claim("feed_min", Kind::Table, printed, "no feed", false);
    };
    let inches = row.text("feed_unit") == "in/rev";
    let of = |feed| if inches { in_inch(feed) } else { in_mm(feed) };
    row.check("feed_min", Kind::Table, of(held.low));
    row.check("feed_max", Kind::Table, of(held.high));
    row.check("mm_rev_min", Kind::Conversion, in_mm(held.low));
    row.check("mm_rev_max", Kind::Conversion, in_mm(held.high));
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

/// A band of diameters in inches; the first starts at No. 80, the last has no end.
fn same_band(row: &Row, range: &FeedRange) -> bool {
    let number_80 = row.text("d_from") == "No.80";
    let from = if number_80 { Some(0.0135) } else { row.number("d_from") };
    from.map(inch) == Some(range.from) && row.number("d_to").map(inch) == range.to
}

/// The surface speeds our materials go by, each in the words of its source.
fn speed(row: &mut Row) {
    let operation = row.text("operation").to_owned();
    let held = materials::all().iter().find_map(|material| {
        let ranges = match operation.as_str() {
            "drilling HSS" => material.drilling,
            "tapping" => material.tapping,
            "reaming HSS" => material.reaming,
            _ => return None,
        };
        ranges.iter().find(|range| names(row, range))
    });
    let Some(range) = held else {
        return row.leave_out("no material of ours goes by this row");
    };
    let metres = row.text("unit") == "m/min";
    let of = |speed| in_metres_per_minute(speed) / if metres { 1.0 } else { 0.3048 };
    row.check("speed_min", Kind::Table, of(range.low));
    row.check("speed_max", Kind::Table, of(range.high));
    row.check("m_per_min_min", Kind::Conversion, in_metres_per_minute(range.low));
    row.check("m_per_min_max", Kind::Conversion, in_metres_per_minute(range.high));
}

/// Whether a range of ours is this row: the same source, and the same words, whatever their
/// order; a steel by its grade and hardness.
fn names(row: &Row, range: &SpeedRange) -> bool {
    let source = words(row.text("source"));
    let same_source =
        readings::of(range.source.cite).iter().any(|read| source.first() == words(read).first());
    let (printed, ours) = (words(row.text("material")), words(range.printed_as));
    let hardness = words(row.text("hardness_HB"));
    let same_words = || {
        let (mut printed, mut ours) = (printed.clone(), ours.clone());
        printed.sort_unstable();
        ours.sort_unstable();
        printed == ours
    };
    let same_steel = || {
        let hard = !hardness.is_empty() && hardness.iter().all(|figure| ours.contains(figure));
        hard && printed.iter().any(|grade| ours.first() == Some(grade))
    };
    same_source && (same_words() || same_steel())
}

fn words(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_owned).collect()
}

/// Taper, second and plug; the American plug is the British second.
fn lead(row: &mut Row) {
    let tap = match (row.text("standard"), row.text("form")) {
        ("hand (US names)", "taper") => LastTap::Taper,
        ("hand (US names)" | "ANSI", "plug") => LastTap::Second,
        ("ANSI", "bottoming") => LastTap::Plug,
        _ => return row.leave_out("a chamfer of machine taps or of another maker's hand taps"),
    };
    row.check("threads_min", Kind::Table, tap.lead().fewest);
    row.check("threads_max", Kind::Table, tap.lead().most);
}

fn oversize(row: &mut Row) {
    let drill = row.number("d_from_in");
    if !row.text("what").starts_with("oversize average") {
        return row.leave_out("a tolerance of drilled holes, not the size they come out at");
    }
    let drill = inch(drill.expect("a drill"));
    let hole = likely(drill);
    row.check("plus_or_max", Kind::Table, in_inch(hole.largest - drill));
    row.check("minus_or_min", Kind::Table, in_inch(hole.least - drill));
    row.check("mean", Kind::Table, in_inch(hole.mean - drill));
}
