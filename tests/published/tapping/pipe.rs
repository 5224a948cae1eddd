//! BSP and NPT lists. A parallel thread has an engagement; for a taper thread the drill stands.

use holewright_core::tables::threads::find;
use holewright_core::units::{Printed, mm};

use crate::drill;
use crate::replay::{Family, Kind, Row, decimal};
use crate::size::{self, Size};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/bsp_tapping.csv",
        context: &["designation", "series"],
        unused: &[],
        replay: bsp,
    },
    Family {
        file: "metric_unified/npt_tapping.csv",
        context: &["designation"],
        unused: &[],
        replay: npt,
    },
];

/// `G`, `BSPP` and `Rp` are parallel, `BSPT` and `Rc` taper.
fn bsp(row: &mut Row) {
    let series = row.text("series").to_owned();
    let system = if series == "BSPT" || series.starts_with("Rc") { "bspt" } else { "bspp" };
    let bored = series.contains("bored hole");
    let named = size::pipe(system, row.text("designation"));
    let parallel = find("bspp", &named.slug);
    let size = match parallel {
        Some(thread) if find(system, &named.slug).is_none() => Size {
            major: Some(Printed::Mm(holewright_core::units::in_mm(
                holewright_core::calc::thread_form::geometry(thread).major,
            ))),
            pitch: Some(thread.pitch),
            ..named
        },
        _ => named,
    };
    let thread = size::thread(row, &size);
    let printed = row.text("tapping_mm").to_owned();
    // A bored hole is a limit for boring, not the size of a drill.
    if bored {
        row.used("tapping_mm");
    } else {
        super::held_metric(row, "tapping_mm", &printed);
    }
    let hole = decimal(&printed).expect("a diameter").value;
    super::engages(row, "tapping_mm", &thread, mm(hole));
    // Our lists stand by what the hole is for: Rp and Rc are of ISO 7, with the taper threads. The
    // maker's second column, with incomplete threads, is no list of ours.
    let listed = if series.starts_with('R') { find("bspt", &size.slug) } else { Some(&thread) };
    if let Some(listed) = listed.filter(|_| !series.contains("(with incomplete threads)")) {
        super::listed::check(row, "tapping_mm", listed, mm(hole));
    }
}

/// The drill exists; where the source gives both names, they agree.
fn npt(row: &mut Row) {
    let name = row.text("designation").to_owned();
    if name.contains("NPSM") {
        return row.leave_out("straight pipe threads (NPSM) are not covered");
    }
    let size = size::pipe("npt", &name);
    match find(size.system, &size.slug) {
        Some(thread) => {
            row.check("tpi", Kind::Table, thread.pitch.threads_per_inch());
            if let Some(drill) = super::labelled(row, thread, "tap_drill") {
                super::listed::check(row, "tap_drill", thread, drill.diameter);
            }
        }
        None => {
            row.miss(format!("threads/{}", size.system), size.slug);
            let printed = row.text("tap_drill").to_owned();
            row.used("tpi");
            row.used("tap_drill");
            drill::named(row, "tap_drill", &printed);
        }
    }
}
