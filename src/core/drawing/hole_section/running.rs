//! The dimensions around a section: diameters in rows above and below, depths at the right.

use crate::drawing::dimension::{ARROW, DimensionLines, OVERSHOOT, Points, TAIL, start_centred};
use crate::drawing::frame::{LINE, MARGIN, WIDTH};
use crate::drawing::hole_section::section::{self, Bottom, Mark};
use crate::drawing::hole_section::sheet::{EDGE, Measured, Sheet};
use crate::drawing::label::{self, Line};
use crate::drawing::svg::at;
use crate::units::mm;

/// From an edge to the start of its extension line.
const GAP: f64 = 2.0;
/// From a face to the dimension line that runs along it.
const ROW: f64 = 14.0;
/// The diameter at the top of the hole: the thread's, or the clearance hole's.
pub(super) fn top_row(sheet: &Sheet<'_>, lines: &mut DimensionLines) {
    let (radius, words) = match &sheet.section.upper {
        Some(upper) => (sheet.clearance, Line::Words(section::clearance(upper).drawn())),
        None => (sheet.thread, Line::Name(sheet.section.designation.clone())),
    };
    let face = sheet.y(sheet.levels.top);
    let row = face - ROW;
    let (left, right) = (sheet.centre - radius, sheet.centre + radius);
    for x in [left, right] {
        lines.line([at(x, face - GAP), at(x, row - OVERSHOOT)]);
    }
    lines.across(left, right, row);
    let baseline = row - OVERSHOOT - 4.0;
    lines.text(at(start_centred(&words, sheet.centre), baseline), words);
}

/// The tapping size below the metal, its words at the right of it. Gives the lowest edge used.
pub(super) fn bottom_row(sheet: &Sheet<'_>, lines: &mut DimensionLines, used: f64) -> f64 {
    let dimension = section::tapping(sheet.section);
    let end_of_hole = sheet.y(sheet.levels.full_diameter.min(sheet.levels.bottom));
    let bottom = sheet.y(sheet.levels.bottom);
    let row = (bottom + GAP).max(used) + LINE + 4.0;
    let (left, right) = (sheet.centre - sheet.hole, sheet.centre + sheet.hole);
    for x in [left, right] {
        lines.line([at(x, end_of_hole + GAP), at(x, row + OVERSHOOT)]);
    }
    lines.across(left, right, row);
    let words_at = right + TAIL + 2.0;
    let one_line = Line::Words(dimension.drawn());
    let fits = words_at + one_line.width() <= WIDTH - MARGIN;
    let (above, below) = if fits {
        (one_line, None)
    } else {
        (Line::Words(dimension.short), Some(Line::Words(dimension.mm)))
    };
    lines.line([at(right, row), at(words_at + above.width(), row)]);
    lines.text(at(words_at, row - 4.0), above);
    match below {
        Some(words) => {
            lines.text(at(words_at, row + LINE), words);
            row + LINE + OVERSHOOT
        }
        None => row + OVERSHOOT,
    }
}

/// The depths and their labels. Gives the lowest edge used.
pub(super) fn depths(sheet: &Sheet<'_>, lines: &mut DimensionLines) -> f64 {
    let face = sheet.y(mm(0.0));
    let tops = label::spread(sheet.named.iter().map(|named| &named.label), MARGIN);
    let mut columns = sheet.columns.map(|x| Column { x, end: None });
    let through = matches!(sheet.section.bottom, Bottom::Through { .. });
    let mut datum_end = sheet.right;
    let mut used = 0.0_f64;
    for (named, top) in sheet.named.iter().zip(tops) {
        let middle = top + named.label.height() / 2.0;
        lines.label(at(sheet.labels_at, top), &named.label);
        used = used.max(top + named.label.height());
        let before_label = sheet.labels_at - label::BEFORE;
        let lead = at(before_label, label::lead(named.y, middle));
        let from = at(start(sheet, named.mark), named.y);
        let [inner, outer] = &mut columns;
        match named.measured {
            Measured::Between => {
                // Over a through hole the two thicknesses stand in two columns, so that the arrowheads of
                // thin parts cannot meet.
                let column = if named.y < face && through { inner.x } else { outer.x };
                let (above, below) = (named.y.min(face), named.y.max(face));
                used = used.max(lines.upright(column, above, below));
                datum_end = datum_end.max(column + OVERSHOOT);
                lines.line([from, at(column + OVERSHOOT, named.y)]);
                let half = at(column + GAP, f64::midpoint(above, below));
                let lead = label::lead(half.y, middle);
                if (half.y - lead).abs() > 0.01 {
                    lines.line([half, at(before_label, lead)]);
                }
            }
            Measured::Origin => {
                lines.line([at(outer.x + OVERSHOOT, face), lead]);
                datum_end = outer.x + OVERSHOOT;
            }
            Measured::Running => {
                let column = if inner.room_for(named.y) { inner } else { outer };
                used = used.max(column.arrow(lines, face, named.y));
                lines.line([from, at(column.x + OVERSHOOT, named.y), lead]);
                datum_end = datum_end.max(column.x + OVERSHOOT);
            }
        }
    }
    for column in columns {
        if let Some(end) = column.end {
            lines.line([at(column.x, face), at(column.x, end)]);
            lines.origin(at(column.x, face));
        }
    }
    lines.line([at(sheet.right + EDGE, face), at(datum_end, face)]);
    used
}

/// A column of running dimensions and how far down it has come.
struct Column {
    x: f64,
    end: Option<f64>,
}

impl Column {
    /// True where one more arrowhead keeps clear of the last.
    fn room_for(&self, y: f64) -> bool {
        self.end.is_none_or(|end| y - end > ARROW + 2.0)
    }

    /// An arrowhead pointing away from the face, or back at it where they are too near. Gives the
    /// lowest edge used.
    fn arrow(&mut self, lines: &mut DimensionLines, face: f64, y: f64) -> f64 {
        self.end = Some(self.end.map_or(y, |end| end.max(y)));
        if y - face > ARROW + 3.0 {
            lines.arrowhead(at(self.x, y), Points::Down);
            y
        } else {
            lines.line([at(self.x, y), at(self.x, y + TAIL)]);
            lines.arrowhead(at(self.x, y), Points::Up);
            y + TAIL
        }
    }
}

/// Where the extension line of a depth begins: at the edge it names.
fn start(sheet: &Sheet<'_>, mark: Mark) -> f64 {
    match mark {
        Mark::UpperFace | Mark::Face | Mark::FarFace => sheet.right + EDGE,
        Mark::FullThread => sheet.centre + sheet.thread + GAP,
        Mark::FullDiameter => sheet.centre + sheet.hole + GAP,
        Mark::Point => sheet.centre + GAP,
    }
}
