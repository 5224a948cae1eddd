//! Feeds by diameter and material, leads of taps, and the oversize of drilled holes.

use holewright::calc::depth::LastTap;
use holewright::calc::oversize::likely;
use holewright::tables::feeds::{by_material, general};
use holewright::tables::materials;
use holewright::units::{in_inch, in_mm, inch, mm};

use crate::replay::{Family, Kind, Row};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "drills_materials/feeds.csv",
        context: &["operation", "material", "d_from", "d_to", "d_unit", "feed_unit"],
        later: &[],
        replay: feed,
    },
    Family {
        file: "drills_materials/tap_chamfers.csv",
        context: &["standard", "form", "use"],
        later: &[],
        replay: lead,
    },
    Family {
        file: "drills_materials/drill_oversize.csv",
        context: &["d_from_in", "d_to_in", "what"],
        later: &[],
        replay: oversize,
    },
];

/// The two tables the library holds: by diameter for metals in general, and by material.
fn feed(row: &mut Row) {
    let source = row.text("source").to_owned();
    let size = row.number("d_from");
    let held = if source.starts_with("US Navy") {
        // A band: its middle, whatever its ends share with their neighbours.
        let from = size.unwrap_or(0.0135);
        let to = row.number("d_to").unwrap_or(from + 1.0);
        general(inch(f64::midpoint(from, to)))
    } else if source.starts_with("'Nominal tutorial") {
        let material = materials::find(match row.text("material") {
            "Aluminium" => "aluminium-6082",
            "Brass" => "free-cutting-brass",
            "Cast iron" => "grey-cast-iron",
            "Mild steel" => "bright-mild-steel",
            "Stainless steel" => "stainless-304",
            "Plastics" => "acetal",
            other => panic!("no material {other}"),
        });
        by_material(mm(size.expect("a diameter")), material.expect("a material of ours"))
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
