//! ISO metric and miniature threads, and the factors of the ISO profile.

use holewright_core::calc::thread_form::{full_depth, geometry};
use holewright_core::tables::threads::{Form, SystemId};
use holewright_core::units::{Pitch, Printed, in_mm};

use crate::form::profile;
use crate::replay::{Family, Kind, Row, decimal};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[
    Family {
        file: "metric_unified/iso_metric_dimensions.csv",
        context: &["designation", "series"],
        unused: &[],
        replay: dimensions,
    },
    Family {
        file: "metric_unified/iso_miniature_dimensions.csv",
        context: &["designation"],
        unused: &[],
        replay: miniature,
    },
    Family {
        file: "metric_unified/iso_profile_factors.csv",
        context: &["designation"],
        unused: &[],
        replay: factors,
    },
];

fn dimensions(row: &mut Row) {
    let size = size::metric(row.text("designation"));
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    let height = profile(thread.form(), figures.pitch).height;
    row.check("d_mm", Kind::Table, in_mm(figures.major));
    row.check("pitch_mm", Kind::Table, in_mm(figures.pitch));
    row.check("d2_D2_mm", Kind::Formula, in_mm(figures.effective));
    row.check("d3_external_minor_mm", Kind::Formula, in_mm(figures.minor));
    row.check("D1_internal_minor_mm", Kind::Formula, in_mm(figures.minor_internal));
    row.check("h3_mm", Kind::Formula, in_mm(figures.major - figures.minor) / 2.0);
    row.check("H1_mm", Kind::Formula, in_mm(figures.major - figures.minor_internal) / 2.0);
    row.check("root_radius_mm", Kind::Formula, height / 6.0);
}

fn miniature(row: &mut Row) {
    let size = size::miniature(row.text("designation"));
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    row.check("d_mm", Kind::Table, in_mm(figures.major));
    row.check("pitch_mm", Kind::Table, in_mm(figures.pitch));
    row.check("d2_mm", Kind::Formula, in_mm(figures.effective));
    row.check("D1_mm", Kind::Formula, in_mm(figures.minor_internal));
}

/// `P=0.35`, and `P=1 (multipliers)`.
fn factors(row: &mut Row) {
    let name = row.text("designation").trim_start_matches("P=");
    let pitch = decimal(name.split(' ').next().unwrap_or(name)).expect("a pitch").value;
    let made = size::made_up(SystemId::Metric, Printed::Mm(10.0), Pitch::Mm(pitch));
    let figures = geometry(&made);
    let height = profile(Form::IsoMetric, figures.pitch).height;
    let internal = in_mm(figures.major - figures.minor_internal);
    row.check("H_8_mm", Kind::Formula, height / 8.0);
    row.check("H_4_mm", Kind::Formula, height / 4.0);
    row.check("3H_8_mm", Kind::Formula, in_mm(full_depth(Form::IsoMetric, figures.pitch)) / 2.0);
    row.check("H_2_mm", Kind::Formula, height / 2.0);
    row.check("5H_8_mm", Kind::Formula, internal / 2.0);
    row.check("0.711325H_mm", Kind::Formula, 0.711_325 * height);
    row.check("3H_4_mm", Kind::Formula, in_mm(figures.major - figures.effective));
    row.check("11H_12_mm", Kind::Formula, 11.0 * height / 12.0);
    row.check("H_mm", Kind::Formula, height);
    row.check("5H_4_mm", Kind::Formula, internal);
}
