//! Pipe threads: BSP parallel and taper in millimetres, NPT in inches.

use holewright_core::calc::thread_form::{full_depth, geometry};
use holewright_core::tables::threads::{Form, Thread, find};
use holewright_core::units::{Pitch, Printed, in_inch, in_mm};

use crate::limits;
use crate::replay::{Family, Kind, Row};
use crate::size::{self, Size};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/bsp_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: bsp,
    },
    Family {
        file: "metric_unified/g_pipe_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: iso_228,
    },
    Family {
        file: "metric_unified/npt_dimensions.csv",
        context: &["designation"],
        unused: &[("pipe_OD_in", "the pipe's outside diameter is no figure of the thread")],
        replay: npt,
    },
];

/// `G` is parallel, `R` and `Rc` taper; a bare size is printed for both.
fn bsp(row: &mut Row) {
    let name = row.text("designation").to_owned();
    let system = if name.starts_with('R') { "bspt" } else { "bspp" };
    let size = sized(size::pipe(system, &name), row);
    let thread = size::thread(row, &size);
    shape(row, &thread);
    row.check("depth_mm", Kind::Formula, in_mm(geometry(&thread).thread_depth));
    row.check("major_in", Kind::Conversion, in_inch(geometry(&thread).major));
    row.check("minor_mm", Kind::Formula, in_mm(geometry(&thread).minor_internal));
    if !row.text("gauge_length_mm").is_empty() {
        gauge_length(row, &size.slug);
    }
}

/// The gauge length is a figure of the taper thread of the same size.
fn gauge_length(row: &mut Row, slug: &str) {
    match find("bspt", slug).and_then(|thread| thread.taper?.gauge_length) {
        Some(length) => row.check("gauge_length_mm", Kind::Table, in_mm(length.length())),
        None => row.miss("threads/bspt gauge length", slug),
    }
}

fn iso_228(row: &mut Row) {
    let size = sized(size::pipe("bspp", row.text("designation")), row);
    let thread = size::thread(row, &size);
    shape(row, &thread);
    limits::of_nut(row, &thread, "D1_min_mm", "D1_max_mm");
}

/// A pipe size's name says nothing of its diameter: it comes from the row, else from the parallel
/// thread of the same bore.
fn sized(size: Size, row: &Row) -> Size {
    let printed = row.number("major_mm").map(Printed::Mm);
    let parallel =
        find("bspp", &size.slug).map(|thread| Printed::Mm(in_mm(geometry(thread).major)));
    let held = find(size.system, &size.slug).is_some();
    let (major, pitch) = if held {
        (None, None)
    } else {
        (printed.or(parallel), row.number("tpi").map(Pitch::PerInch))
    };
    Size { major, pitch, ..size }
}

fn shape(row: &mut Row, thread: &Thread) {
    let figures = geometry(thread);
    row.check("tpi", Kind::Table, figures.threads_per_inch);
    row.check("major_mm", Kind::Table, in_mm(figures.major));
    row.check("pitch_dia_mm", Kind::Formula, in_mm(figures.effective));
    if row.has("pitch_mm") {
        row.check("pitch_mm", Kind::Conversion, in_mm(figures.pitch));
    }
}

/// NPT: E0, E1, E2, E3 and E5 are effective diameters along the taper of 1 in 16, at the distances
/// L1 to L5 the row prints beside them; K0 is the minor diameter at the small end.
fn npt(row: &mut Row) {
    let size = size::pipe("npt", row.text("designation"));
    let held = find(size.system, &size.slug);
    if held.is_none() {
        row.miss(format!("threads/{}", size.system), size.slug);
    }
    let small_end = held.map_or_else(|| on_the_taper(row, "E3_in", "L3_in", 1.0), small_end);
    let depth = held.map_or_else(
        || row.number("h_in"),
        |thread| Some(in_inch(full_depth(Form::TaperPipe, thread.pitch.length()))),
    );
    if let Some(thread) = held {
        let figures = geometry(thread);
        row.check("tpi", Kind::Table, figures.threads_per_inch);
        row.check("pitch_in", Kind::Conversion, in_inch(figures.pitch));
        row.check("E1_in", Kind::Table, in_inch(figures.effective));
        if let Some(length) = thread.taper.and_then(|taper| taper.gauge_length) {
            row.check("L1_in", Kind::Table, in_inch(length.length()));
        }
        row.check("h_in", Kind::Formula, in_inch(full_depth(thread.form(), figures.pitch)));
    } else {
        // No pitch in the row: the depth is taken as printed, for K0.
        row.used("h_in");
    }
    let Some(small_end) = small_end else { return };
    for (effective, distance) in [("E2_in", "L2_in"), ("E5_in", "L5_in")] {
        if let Some(distance) = row.number(distance) {
            row.check(effective, Kind::Formula, small_end + distance / 16.0);
        }
    }
    if let Some(thread) = held {
        // L3 is three threads; printed to four places it is too coarse to work E3 out of.
        let three = in_inch(thread.pitch.length() * 3.0);
        row.check("L3_in", Kind::Formula, three);
        row.check("E3_in", Kind::Formula, small_end - three / 16.0);
    }
    for distance in ["L2_in", "L3_in", "L4_in", "L5_in", "E3_in"] {
        row.used(distance);
    }
    row.check("E0_in", Kind::Formula, small_end);
    if let Some(depth) = depth {
        row.check("K0_in", Kind::Formula, small_end - depth);
    }
}

/// The effective diameter at the small end, in inches, of a thread we hold.
fn small_end(thread: &Thread) -> Option<f64> {
    let length = thread.taper?.gauge_length?.length();
    Some(in_inch(geometry(thread).effective - length / 16.0))
}

fn on_the_taper(row: &Row, effective: &str, distance: &str, sign: f64) -> Option<f64> {
    Some(row.number(effective)? + sign * row.number(distance)? / 16.0)
}
