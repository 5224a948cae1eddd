//! BA, BSW, BSF, brass and Model Engineer lists.

use crate::clearance;
use crate::replay::{Family, Kind, Row};
use crate::size::{self, Size};

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "british/ba_tapping.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| list(row, &size::ba(row.text("designation"))),
    },
    Family {
        file: "british/bsw_tapping.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| list(row, &inch_size(row, "bsw")),
    },
    Family { file: "british/bsf_tapping.csv", context: &["designation"], unused: &[], replay: bsf },
    Family {
        file: "british/bsb_tapping_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| both(row, &inch_size(row, "bsb")),
    },
    Family {
        file: "british/me_tapping_clearance.csv",
        context: &["designation"],
        unused: &[],
        replay: |row| both(row, &size::model_engineer(row.text("designation"))),
    },
];

fn inch_size(row: &Row, system: &'static str) -> Size {
    size::british(system, row.text("designation"), None)
}

fn list(row: &mut Row, size: &Size) {
    let thread = size::thread(row, size);
    super::entry(row, &thread, "tapping_label", "tapping_mm");
    if row.has("tapping_in") {
        super::inches(row, "tapping_label", "tapping_mm", "tapping_in");
    }
    if row.has("tpi") {
        row.check("tpi", Kind::Table, thread.pitch.threads_per_inch());
    }
}

fn bsf(row: &mut Row) {
    let size = inch_size(row, "bsf");
    list(row, &size);
}

/// A list with tapping and clearance sizes in one row.
fn both(row: &mut Row, size: &Size) {
    list(row, size);
    let thread = size::thread(row, size);
    clearance::entry(row, &thread, "clearance_label", "clearance_mm");
}
