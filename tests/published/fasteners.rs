//! Hexagons, heads, washers and spanners, row by row, and the blank for a die.

use holewright_core::calc::fastener::{ba_across_flats, die_blank, single_point_depth};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::fasteners::{
    Head, HeadKind, Hexagon, HexagonPattern, heads, hexagons, washers,
};
use holewright_core::tables::threads::{HeadFamily, SystemId};
use holewright_core::units::{Length, Pitch, Printed, in_inch, in_mm, inch, mm};

use crate::replay::{Family, Kind, Row, decimal};
use crate::size::{self, fraction};

pub(crate) const FAMILIES: &[Family] = &[
    Family { file: "british/ba_hexagon.csv", context: &["designation"], unused: &[], replay: ba },
    Family {
        file: "british/bsw_bsf_hexagon.csv",
        context: &["designation", "series"],
        unused: &[
            ("af_min_in", "the least across flats is not held"),
            ("head_min_in", "the least height of the head is not held"),
            ("nut_min_in", "the least thickness of the nut is not held"),
            ("locknut_max_in", "lock nuts are not held"),
            ("locknut_min_in", "lock nuts are not held"),
            ("shank_max_in", "the shank is not held"),
            ("shank_min_in", "the shank is not held"),
        ],
        replay: whitworth,
    },
    Family {
        file: "metric_unified/hex_dimensions.csv",
        context: &["designation", "standard"],
        unused: &[],
        replay: metric,
    },
    Family {
        file: "metric_unified/screw_heads.csv",
        context: &["part", "standard", "designation", "unit"],
        unused: &[],
        replay: part,
    },
    Family {
        file: "lathe_layout/washers.csv",
        context: &["standard", "thread", "unit"],
        unused: &[],
        replay: washer,
    },
    Family {
        file: "lathe_layout/spanner_sizes.csv",
        context: &["unit", "fits"],
        unused: &[],
        replay: spanner,
    },
    Family {
        file: "lathe_layout/blanks_for_dies.csv",
        context: &["thread", "unit"],
        unused: &[(
            "blank_in_brackets",
            "a second figure whose meaning the source does not make plain",
        )],
        replay: blank,
    },
    Family {
        file: "lathe_layout/screwcutting_depth.csv",
        context: &["form", "side", "pitch_or_tpi"],
        unused: &[
            ("passes", "the passes are the turner's to choose"),
            ("first_cut_mm", "the passes are the turner's to choose"),
            ("last_cut_mm", "the passes are the turner's to choose"),
        ],
        replay: single_point,
    },
];

const INTERNAL: &str = "an internal thread: the card is of a screw";
const PARTIAL: &str =
    "an insert whose one nose serves several pitches, or a sharp tool: not the form's own depth";
const OTHER_WASHERS: &str = "a washer of another series, not held: only the normal one is";
const OLD_AMERICAN: &str = "an older American rule or list, older than the standard";
const NO_TABLE: &str = "the standard could not be read: no figure is printed";

fn same(a: Length, b: Length) -> bool {
    in_mm(a - b).abs() < 1e-6
}

fn held(pattern: HexagonPattern, nominal: Length) -> Option<&'static Hexagon> {
    hexagons().find(|row| row.pattern == pattern && same(row.nominal.length(), nominal))
}

fn nominal(name: &str) -> Length {
    let name = name.trim_matches(['(', ')']);
    let name = name.split([' ', 'x']).next().unwrap_or(name);
    if let Some(millimetres) = name.strip_prefix('M') {
        return mm(decimal(millimetres).expect("a diameter").value);
    }
    match name.strip_prefix('#') {
        Some(number) => inch(0.060 + 0.013 * number.parse::<f64>().expect("a screw number")),
        None => inch(fraction(name).expect("a fraction").inches()),
    }
}

fn ba(row: &mut Row) {
    let name = row.text("designation").to_owned();
    let printed_rule = row.text("rule").to_owned();
    if name == "all" {
        let ours = in_mm(ba_across_flats(mm(1.0)));
        let factor = printed_rule.trim_start_matches("across flats = ");
        let factor = factor.split(' ').next().unwrap_or_default().to_owned();
        row.used("rule");
        return row.check_printed("rule", &factor, Kind::Formula, ours);
    }
    row.used("rule");
    let thread = size::thread(row, &size::ba(&name));
    let flats = ba_across_flats(geometry(&thread).major);
    row.check("across_flats_mm", Kind::Formula, in_mm(flats));
    row.check("across_flats_in", Kind::Formula, in_inch(flats));
}

/// A size of BS 1083, or what a spanner or a nut is told to be.
fn whitworth(row: &mut Row) {
    let name = row.text("designation").to_owned();
    let series = row.text("series").to_owned();
    let first = name.split(' ').next().unwrap_or_default();
    let size = inch(fraction(first).expect("a fraction").inches());
    if series.starts_with("spanner marking") {
        // The mark is the old hexagon of the first size and the new one of the second.
        let ours = held(HexagonPattern::OldWhitworth, size).expect("an old hexagon").across_flats;
        row.check("af_max_in", Kind::Table, in_inch(ours.length()));
        row.check("af_mm", Kind::Conversion, in_mm(ours.length()));
        let second = name.rsplit(' ').nth(1).expect("a second size");
        let second = inch(fraction(second).expect("a fraction").inches());
        if let Some(new) = held(HexagonPattern::Bs1083, second) {
            let alike = same(new.across_flats.length(), ours.length());
            row.claim("af_max_in: new", Kind::Table, "alike", format!("{new:?}"), alike);
        }
        return;
    }
    let Some(ours) = held(HexagonPattern::Bs1083, size) else {
        row.miss("hexagons/bs-1083", &name);
        return row.leave_out("the size is not held");
    };
    row.check("af_mm", Kind::Table, in_mm(ours.across_flats.length()));
    let columns = [
        ("af_max_in", Some(ours.across_flats)),
        ("across_corners_max_in", ours.across_corners),
        ("head_max_in", ours.head),
        ("nut_max_in", ours.nut),
    ];
    for (column, size) in columns {
        let printed = row.text(column).to_owned();
        row.used(column);
        let Some(size) = size.filter(|_| !printed.is_empty()) else { continue };
        // A hyphen that stands for a decimal point is flagged so, and read as one.
        row.check_printed(
            column,
            &printed.replacen('-', ".", 1),
            Kind::Table,
            in_inch(size.length()),
        );
    }
}

fn metric(row: &mut Row) {
    let size = nominal(row.text("designation"));
    let old = row.text("standard").starts_with("DIN");
    let pattern = if old { HexagonPattern::OldMetric } else { HexagonPattern::Iso };
    let Some(ours) = held(pattern, size).or_else(|| held(HexagonPattern::Iso, size)) else {
        row.miss("hexagons/iso", row.text("designation").to_owned());
        return row.leave_out("the size is not held");
    };
    row.check("AF_s_max_mm", Kind::Table, in_mm(ours.across_flats.length()));
    optional(row, "AC_e_min_mm", ours.across_corners);
    if old {
        row.used("head_height_k_mm");
        row.used("nut_height_m_mm");
        return;
    }
    optional(row, "head_height_k_mm", ours.head);
    optional(row, "nut_height_m_mm", ours.nut);
}

/// A figure that we may hold none of: printed and not held, it fails.
#[track_caller]
fn optional(row: &mut Row, column: &str, ours: Option<Printed>) {
    let printed = row.text(column).to_owned();
    row.used(column);
    match ours {
        _ if printed.is_empty() => {}
        Some(size) => row.check(column, Kind::Table, in_mm(size.length())),
        None => row.claim(column, Kind::Table, printed, "none", false),
    }
}

/// What the library of parts holds of heads and nuts.
fn part(row: &mut Row) {
    let size = nominal(row.text("designation"));
    let standard = row.text("standard").to_owned();
    let (part, numbered) = (row.text("part").to_owned(), standard.ends_with("machine screw"));
    let pattern = match (standard.as_str(), numbered) {
        (_, true) => HexagonPattern::UnifiedSmall,
        ("ISO 4014" | "ISO 4032", _) => HexagonPattern::Iso,
        ("ASME B18.2.1" | "ASME B18.2.2", _) => HexagonPattern::UnifiedBolt,
        _ => return head(row, &part, &standard, size),
    };
    let ours = held(pattern, size).expect("a hexagon");
    let flats = in_mm(ours.across_flats.length());
    if part == "nut" && pattern != HexagonPattern::Iso {
        // The library prints a nut’s least or its mean width: less than the spanner’s.
        let printed = row.number("diameter").expect("a width");
        let flats = ours.nut_across_flats.map_or(flats, |size| in_mm(size.length()));
        let holds = printed <= flats && printed > flats * 0.965;
        let expected = format!("{printed}, just below the spanner’s");
        row.claim("diameter", Kind::Bounds, expected, format!("{flats} mm"), holds);
    } else {
        row.check("diameter", Kind::Table, flats);
    }
    row.used("height");
    row.used("nut_thickness");
    for (column, size) in [("height", ours.head), ("nut_thickness", ours.nut)] {
        if let Some(size) = size {
            row.check(column, Kind::Table, in_mm(size.length()));
        }
    }
}

fn head(row: &mut Row, part: &str, standard: &str, size: Length) {
    let kind = match part {
        "cap" => HeadKind::Cap,
        "cheese" => HeadKind::Cheese,
        "countersunk" => HeadKind::Countersunk,
        other => panic!("no head {other}"),
    };
    let family = if standard.starts_with("ISO") { HeadFamily::Metric } else { HeadFamily::Unified };
    let is_it = |head: &&Head| {
        head.kind == kind && head.family == family && same(head.nominal.length(), size)
    };
    let ours = heads().find(is_it).expect("a head");
    row.check("diameter", Kind::Table, in_mm(ours.diameter.length()));
    row.check("sharp_diameter", Kind::Table, in_mm(ours.diameter.length()));
    let height = in_mm(ours.height.length());
    if family == HeadFamily::Unified && kind == HeadKind::Cap {
        // The library prints the mean height; ours is the largest.
        let printed = row.number("height").expect("a height");
        let holds = printed <= height && height - printed < 0.11;
        let expected = format!("{printed}, the mean, at most 0.11 mm below");
        row.claim("height", Kind::Bounds, expected, format!("{height} mm"), holds);
    } else {
        row.check("height", Kind::Table, height);
    }
    let mean = row.number("key_mean");
    row.used("key_mean");
    if let (Some(mean), Some(key)) = (mean, ours.key) {
        // The socket is a little wider than the key that goes in.
        let key = in_mm(key.length());
        let holds = key < mean && mean - key < 0.2;
        row.claim("key_mean", Kind::Bounds, format!("{mean}, over the key"), key, holds);
    }
}

fn washer(row: &mut Row) {
    let standard = row.text("standard").to_owned();
    if row.is_memory() {
        return row.leave_out(NO_TABLE);
    }
    if standard.starts_with("US trade list") {
        return row.leave_out(OLD_AMERICAN);
    }
    let family = match standard.as_str() {
        "ISO 7089 normal, no chamfer" => HeadFamily::Metric,
        "ASME B18.21.1 type B regular" => HeadFamily::Unified,
        _ => return row.leave_out(OTHER_WASHERS),
    };
    let size = nominal(row.text("thread"));
    let ours = washers()
        .find(|washer| washer.family == family && same(washer.nominal.length(), size))
        .expect("a washer");
    let columns =
        [("inside", ours.inside), ("outside", ours.outside), ("thickness", ours.thickness)];
    for (column, size) in columns {
        let printed = row.text(column).split(' ').next().unwrap_or_default().to_owned();
        row.used(column);
        row.check_printed(column, &printed, Kind::Table, in_mm(size.length()));
    }
}

fn spanner(row: &mut Row) {
    let (mark, fits) = (row.text("spanner_mark").to_owned(), row.text("fits").to_owned());
    row.used("spanner_mark");
    if mark.starts_with("US") {
        return row.leave_out(OLD_AMERICAN);
    }
    if mark.contains(" W ") {
        let [old, new] =
            [(HexagonPattern::OldWhitworth, 1.0 / 4.0), (HexagonPattern::Bs1083, 5.0 / 16.0)]
                .map(|(pattern, size)| held(pattern, inch(size)).expect("a hexagon").across_flats);
        let alike = same(old.length(), new.length());
        return row.claim("spanner_mark", Kind::Table, mark, format!("{old:?} {new:?}"), alike);
    }
    let flats = if mark.ends_with('W') {
        held(HexagonPattern::OldWhitworth, nominal(&mark)).expect("an old hexagon")
    } else {
        let old = fits.contains("DIN");
        let pattern = if old { HexagonPattern::OldMetric } else { HexagonPattern::Iso };
        held(pattern, nominal(&fits)).expect("a hexagon")
    };
    row.check("across_flats", Kind::Table, in_mm(flats.across_flats.length()));
}

/// The blank lies in the range that is printed for it.
fn blank(row: &mut Row) {
    let (Some(low), Some(high)) = (row.number("blank_low"), row.number("blank_high")) else {
        row.used("thread");
        return row.leave_out("what a die maker says of his dies: no blank is printed");
    };
    let pitch = row.number("pitch").expect("a pitch");
    let ours = in_mm(die_blank(nominal(row.text("thread")), mm(pitch)));
    row.used("pitch");
    row.used("blank_high");
    let holds = ours >= low && ours <= high;
    row.claim("blank_low", Kind::Bounds, format!("{low} to {high}"), format!("{ours:.4}"), holds);
}

/// The depth of an external thread cut with a tool of the form's own shape.
fn single_point(row: &mut Row) {
    if row.text("side").starts_with("internal") {
        return row.leave_out(INTERNAL);
    }
    let system = match row.text("form") {
        "60 ISO metric" => SystemId::Metric,
        "60 Unified" => SystemId::Unc,
        _ => return row.leave_out(PARTIAL),
    };
    let (number, unit) = row.text("pitch_or_tpi").split_once(' ').expect("a pitch");
    let number: f64 = number.parse().expect("a pitch");
    let pitch = if unit == "tpi" { Pitch::PerInch(number) } else { Pitch::Mm(number) };
    let thread = size::made_up(system, Printed::Mm(30.0), pitch);
    let depth = in_mm(single_point_depth(&geometry(&thread)));
    row.check("total_depth_mm", Kind::Formula, depth);
}
