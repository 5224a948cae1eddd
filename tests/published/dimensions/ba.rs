//! BA: every printed diameter, depth and radius, in millimetres and inches.

use holewright_core::calc::thread_form::geometry;
use holewright_core::units::{in_inch, in_mm};

use crate::form::profile;
use crate::replay::{Family, Kind, Row};
use crate::size;

pub(crate) const FAMILIES: &[Family] = &[Family {
    file: "british/ba_dimensions.csv",
    context: &["designation"],
    unused: &[],
    replay: dimensions,
}];

fn dimensions(row: &mut Row) {
    let size = size::ba(row.text("designation"));
    let thread = size::thread(row, &size);
    let figures = geometry(&thread);
    row.check("pitch_mm", Kind::Table, in_mm(figures.pitch));
    row.check("major_mm", Kind::Table, in_mm(figures.major));
    row.check("effective_mm", Kind::Formula, in_mm(figures.effective));
    row.check("minor_mm", Kind::Formula, in_mm(figures.minor));
    row.check("depth_mm", Kind::Formula, in_mm(figures.thread_depth));
    row.check("radius_mm", Kind::Formula, profile(thread.form(), figures.pitch).radius);
    row.check("tpi_approx", Kind::Conversion, figures.threads_per_inch);
    row.check("pitch_in", Kind::Conversion, in_inch(figures.pitch));
    row.check("major_in", Kind::Conversion, in_inch(figures.major));
    row.check("minor_in", Kind::Formula, in_inch(figures.minor));
}
