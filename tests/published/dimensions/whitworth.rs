//! BSW, BSF, brass and cycle threads.

use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::{Thread, find};
use holewright_core::units::{in_inch, in_mm};

use crate::form::profile;
use crate::replay::{Family, Kind, Row};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/bsw_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| dimensions(row, "bsw"),
    },
    Family {
        file: "british/bsf_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| dimensions(row, "bsf"),
    },
    Family {
        file: "british/bscy_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: cycle,
    },
    Family {
        file: "british/whitworth_tpi.csv",
        context: &["diameter_in"],
        unused: &[],
        replay: threads_per_inch,
    },
];

fn dimensions(row: &mut Row, system: &'static str) {
    let tpi = row.number("tpi");
    let size = size::british(system, row.text("designation"), tpi);
    let thread = size::thread(row, &size);
    row.check("tpi", Kind::Table, thread.pitch.threads_per_inch());
    shape(row, &thread);
}

/// The columns of both files; a file has the ones its sources print.
fn shape(row: &mut Row, thread: &Thread) {
    let figures = geometry(thread);
    let radius = profile(thread.form(), figures.pitch).radius / in_mm(figures.pitch)
        * in_inch(figures.pitch);
    let columns = [
        ("pitch_in", Kind::Conversion, in_inch(figures.pitch)),
        ("pitch_mm", Kind::Conversion, in_mm(figures.pitch)),
        ("major_in", Kind::Conversion, in_inch(figures.major)),
        ("major_mm", Kind::Conversion, in_mm(figures.major)),
        ("depth_in", Kind::Formula, in_inch(figures.thread_depth)),
        ("effective_in", Kind::Formula, in_inch(figures.effective)),
        ("minor_in", Kind::Formula, in_inch(figures.minor)),
        ("radius_in", Kind::Formula, radius),
    ];
    for (column, kind, got) in columns {
        if row.has(column) {
            row.check(column, kind, got);
        }
    }
}

/// `1/4x26 BSC`.
fn cycle(row: &mut Row) {
    let name = row.text("designation").trim_end_matches(" BSC").to_owned();
    let thread = size::thread(row, &size::cycle(&name));
    let figures = geometry(&thread);
    row.check("tpi", Kind::Table, figures.threads_per_inch);
    row.check("pitch_in", Kind::Conversion, in_inch(figures.pitch));
    row.check("major_in", Kind::Conversion, in_inch(figures.major));
    row.check("core_in", Kind::Formula, in_inch(figures.minor));
}

/// A chart of threads per inch by diameter: `-` and `*` say that a system has no such size, a
/// figure in brackets that the size is seldom made.
fn threads_per_inch(row: &mut Row) {
    for (column, system) in [("bsw_tpi", "bsw"), ("bsf_tpi", "bsf"), ("bsb_tpi", "bsb")] {
        let printed = row.text(column).to_owned();
        let name = row.text("diameter_in").to_owned();
        let slug = size::british(system, &name, None).slug;
        let held = find(system, &slug);
        match printed.trim_matches(['(', ')']) {
            "" => {}
            "-" | "*" => absent(row, column, held),
            tpi => match held {
                Some(thread) => {
                    row.used(column);
                    row.check_printed(column, tpi, Kind::Table, thread.pitch.threads_per_inch());
                }
                None => {
                    row.used(column);
                    row.miss(format!("threads/{system}"), slug);
                }
            },
        }
    }
}

fn absent(row: &mut Row, column: &str, held: Option<&'static Thread>) {
    let got = held.map_or("none".into(), |thread| thread.designation.to_owned());
    let printed = row.text(column).to_owned();
    row.claim(column, Kind::Table, printed, got, held.is_none());
}
