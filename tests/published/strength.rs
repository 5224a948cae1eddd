//! What threads bear: strip areas, proof loads, and the limits they are reckoned at.

use holewright_core::calc::limits::largest_hole;
use holewright_core::calc::screw_limits::least_pair;
use holewright_core::calc::strength::proof_load;
use holewright_core::calc::strip::{StripSizes, length_for, load};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::screw_limits::effective_limit;
use holewright_core::tables::screw_metals::classes;
use holewright_core::tables::threads::{Thread, all, find};
use holewright_core::units::{
    Length, Pitch, in_inch, in_mm, in_mm2, in_newtons, mm, newtons, newtons_per_mm2, print,
};

use crate::replay::{Family, Kind, Row};
use crate::size;

const FOUR: &str = "a 4g screw and a 4H or 5H nut are in no figure of ours";
pub(crate) const LARGEST: &str =
    "the largest screw is in no figure of ours: strength goes by the least";

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/thread_shear_area.csv",
        context: &["designation", "engagement_Le_mm"],
        unused: &[("bolt_external_thread_strip_area_6H4g6g_mm2", FOUR)],
        replay: strip_area,
    },
    Family {
        file: "metric_unified/iso898_proof_loads.csv",
        context: &["designation"],
        unused: &[],
        replay: class_loads,
    },
    Family {
        file: "metric_unified/iso965_TD2_coarse.csv",
        context: &["designation"],
        unused: &[("TD2_4H_um", FOUR), ("TD2_5H_um", FOUR)],
        replay: effective_tolerance,
    },
    Family {
        file: "metric_unified/unified_2A_limits.csv",
        context: &["designation", "series"],
        unused: &[
            ("d_max_2A_in", LARGEST),
            ("d2_max_in", LARGEST),
            ("UNR_minor_max_in", LARGEST),
            ("d1_min_in", "the screw's least minor diameter is in no figure of ours"),
        ],
        replay: screw_2a,
    },
];

/// A thread in its largest hole.
fn sizes(thread: &Thread) -> StripSizes {
    let figures = geometry(thread);
    let hole = largest_hole(thread, &figures).map_or(mm(f64::NAN), |limit| limit.diameter);
    StripSizes::of(thread, &figures, hole)
}

fn strip_area(row: &mut Row) {
    let thread = size::thread(row, &size::metric(row.text("designation")));
    let engaged = mm(row.number("engagement_Le_mm").expect("a length"));
    let sizes = sizes(&thread);
    let [screw, nut] = [sizes.screw_area(engaged), sizes.nut_area(engaged)].map(in_mm2);
    row.check("bolt_external_thread_strip_area_6H6g_mm2", Kind::Formula, screw);
    row.check("nut_internal_thread_strip_area_mm2", Kind::Formula, nut);
}

/// Printed to three figures.
fn class_loads(row: &mut Row) {
    let thread = size::thread(row, &size::metric(row.text("designation")));
    let area = geometry(&thread).tensile_area;
    for class in classes() {
        let Some(proof) = class.proof else { continue };
        let force = print::significant(in_newtons(proof_load(area, proof)), 3);
        row.check(&format!("{}_N", class.mark), Kind::Formula, force);
    }
}

/// The nut's effective tolerance of a coarse thread that has this pitch.
fn effective_tolerance(row: &mut Row) {
    let pitch: f64 = row.text("designation").trim_start_matches("P=").parse().expect("a pitch");
    if row.text("TD2_6H_um").is_empty() {
        return;
    }
    let coarse = all()
        .find(|thread| thread.system.system().slug == "metric" && thread.pitch == Pitch::Mm(pitch));
    let thread = coarse.unwrap_or_else(|| panic!("no coarse thread of {pitch} mm"));
    let limit = effective_limit(geometry(thread).major, mm(pitch));
    let micrometres = limit.map_or(f64::NAN, |limit| in_mm(limit.nut) * 1000.0);
    row.check("TD2_6H_um", Kind::Table, micrometres);
}

fn screw_2a(row: &mut Row) {
    let thread = size::thread(row, &size::unified(row.text("designation")));
    let pair = least_pair(&thread, &geometry(&thread));
    row.check("d_min_2A_in", Kind::Formula, in_inch(pair.screw_major));
    row.check("d2_min_in", Kind::Formula, in_inch(pair.screw_effective));
}

/// The worked examples of strength: `WE11`, `WE12` and the strip areas.
pub(crate) fn example(id: &str) -> f64 {
    let area = |name: &str, engaged: f64, of_screw: bool| {
        let sizes = sizes(find("metric", name).expect("held"));
        let engaged = mm(engaged);
        in_mm2(if of_screw { sizes.screw_area(engaged) } else { sizes.nut_area(engaged) })
    };
    match id {
        "WE11" => in_newtons(load(mm(58.0) * mm(1.0), newtons_per_mm2(1200.0))),
        "WE12" => in_mm(length_by_largest_screw()),
        "WE27" => area("m10", 10.0, true),
        "WE28" => area("m10", 10.0, false),
        "WE31" => area("m5", 5.0, true),
        "WE32" => area("m5", 5.0, false),
        other => panic!("no example {other}"),
    }
}

/// The handbook's example takes the largest 6g screw, 9.968 mm, and calls it the least.
fn length_by_largest_screw() -> Length {
    let ten = find("metric", "m10").expect("M10");
    let mut sizes = sizes(ten);
    sizes.pair.screw_major = mm(9.968);
    let on = mm(1.0);
    length_for(newtons(69_600.0), newtons_per_mm2(130.0), sizes.nut_area(on), on)
}
