//! The worst case of two holes whose centres are off: seen along the axis, the screw where it stands in
//! what the holes leave open. Leaves out a lean, which is counted in how far they are off.

use crate::drawing::DrawingIds;
use crate::drawing::dimension::{Dimension, DimensionLines, OVERSHOOT, start_centred};
use crate::drawing::frame::{self, Caption, LINE, MARGIN, WIDTH};
use crate::drawing::hatch::{Lean, hatch};
use crate::drawing::label::Line;
use crate::drawing::svg::{Element, Path, Point, Turn, at};
use crate::units::{Length, in_mm, print};

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorstCase {
    /// The clearance hole in the upper part.
    pub hole: Length,
    /// The clearance hole in the lower part; none where that is tapped.
    pub lower: Option<Length>,
    /// The screw.
    pub screw: Length,
    /// How far the centres are apart.
    pub off: Length,
    /// Whether the screw goes in.
    pub goes_together: bool,
}

/// As wide as the circles may stand on the sheet.
const ACROSS: f64 = 190.0;
/// From a circle to the first dimension line.
const CLEAR: f64 = 12.0;
/// From one dimension line to the next.
const ROW: f64 = 28.0;
/// From line to line of the screw's lining.
const LINING: f64 = 7.0;
/// How far a centre line passes its circle.
const BEYOND: f64 = 6.0;
/// Sides of the polygon that a circle is lined by.
const SIDES: u32 = 72;
/// Sizes beyond these are typing slips; they are drawn at the limit so that nothing overflows.
const SMALLEST: f64 = 0.01;
const LARGEST: f64 = 10_000.0;

/// Every dimension the drawing shows, from the top down.
///
/// # Examples
/// ```
/// use holewright_core::drawing::{WorstCase, worst_case_dimensions};
/// use holewright_core::units::mm;
/// let (hole, screw, off) = (mm(3.4), mm(3.0), mm(0.3));
/// let worst = WorstCase { hole, lower: None, screw, off, goes_together: false };
/// let drawn: Vec<String> = worst_case_dimensions(&worst).iter().map(|size| size.drawn()).collect();
/// assert_eq!(drawn, ["hole ⌀3.4 mm", "apart 0.3 mm", "screw ⌀3 mm"]);
/// ```
#[must_use]
pub fn worst_case_dimensions(worst: &WorstCase) -> Vec<Dimension> {
    let lower = worst.lower.map(|hole| Dimension::diameter("lower hole", hole));
    let upper = if lower.is_some() { "upper hole" } else { "hole" };
    [Dimension::diameter(upper, worst.hole)]
        .into_iter()
        .chain([Dimension::length("apart", worst.off), Dimension::diameter("screw", worst.screw)])
        .chain(lower)
        .collect()
}

/// The worst case, as one SVG document.
#[must_use]
pub fn worst_case(worst: &WorstCase, ids: DrawingIds<'_>) -> String {
    let view = View::of(worst);
    let mut parts = view.circles();
    let mut lines = DimensionLines::default();
    let bottom = view.dimensions(worst, &mut lines);
    parts.extend(lines.elements());
    let mut height = bottom;
    let notes = notes(worst).map(|note| {
        height += LINE;
        Element::new("text").with("x", MARGIN).with("y", height).text(note)
    });
    parts.push(frame::lettering("note ink", notes.into()));
    frame::sheet(ids, (height + MARGIN).ceil(), caption(worst), parts)
}

const fn notes(worst: &WorstCase) -> [&'static str; 2] {
    let fits = if worst.goes_together { "The screw goes in." } else { "The screw fouls the hole." };
    [fits, "Seen along the axis, to scale."]
}

fn caption(worst: &WorstCase) -> Caption {
    let mut description = "Two holes at the worst.".to_owned();
    for Dimension { label, mm, inch, .. } in worst_case_dimensions(worst) {
        description.push_str(&format!(" {label}: {mm} ({inch})."));
    }
    let screw = print::mm(worst.screw, 3);
    Caption {
        title: format!("{screw} screw in holes that are out, at the worst"),
        description: format!("{description} {}", notes(worst).join(" ")),
    }
}

/// A circle on the sheet.
#[derive(Clone, Copy)]
struct Circle {
    centre: Point,
    radius: f64,
}

/// The circles on the sheet.
struct View {
    upper: Circle,
    lower: Option<Circle>,
    screw: Circle,
    top: f64,
    bottom: f64,
}

impl View {
    fn of(worst: &WorstCase) -> Self {
        let sane = |length: Length| in_mm(length).clamp(SMALLEST, LARGEST);
        let off = in_mm(worst.off).clamp(0.0, LARGEST);
        let (hole, screw, lower) = (sane(worst.hole), sane(worst.screw), worst.lower.map(sane));
        let widest = [hole, screw, lower.unwrap_or(0.0)].into_iter().fold(0.0, f64::max);
        let scale = ACROSS / (widest + off);
        let middle = WIDTH / 2.0;
        let top = MARGIN + LINE + ROW + CLEAR;
        let y = top + widest / 2.0 * scale;
        let circle = |diameter: f64, x: f64| Circle {
            centre: at(middle + x * scale, y),
            radius: diameter / 2.0 * scale,
        };
        Self {
            upper: circle(hole, -off / 2.0),
            lower: lower.map(|lower| circle(lower, off / 2.0)),
            // In the middle of what two holes leave open; off with the tapped part, where one is tapped.
            screw: circle(screw, lower.map_or(off / 2.0, |lower| (hole - lower) / 4.0)),
            top,
            bottom: y + widest / 2.0 * scale,
        }
    }

    fn circles(&self) -> Vec<Element> {
        let mut outline = Path::default();
        for circle in [Some(self.upper), self.lower].into_iter().flatten() {
            circle.draw(&mut outline);
        }
        let mut screw = Path::default();
        self.screw.draw(&mut screw);
        let mut lining = Path::default();
        hatch(&mut lining, &self.screw.polygon(), Lean::Right, LINING);
        let mut centres = Path::default();
        let other = self.lower.unwrap_or(self.screw);
        for circle in [self.upper, other] {
            let (x, reach) = (circle.centre.x, circle.radius + BEYOND);
            centres.segment(at(x, circle.centre.y - reach), at(x, circle.centre.y + reach));
        }
        let left = self.upper.left().min(other.left()) - BEYOND;
        let right = self.upper.right().max(other.right()) + BEYOND;
        centres.segment(at(left, self.upper.centre.y), at(right, self.upper.centre.y));
        vec![
            frame::lining(lining),
            frame::thick("outline", outline),
            frame::thin("thread", screw),
            frame::chain("centre-line", centres),
        ]
    }

    /// The dimension lines; gives the lowest edge used.
    fn dimensions(&self, worst: &WorstCase, lines: &mut DimensionLines) -> f64 {
        let words = worst_case_dimensions(worst);
        let mut words = words.iter().map(|dimension| Line::Words(dimension.drawn()));
        let mut across = |left: f64, right: f64, from: f64, row: f64| {
            let past = if row < from { -OVERSHOOT } else { OVERSHOOT };
            for x in [left, right] {
                lines.line([at(x, from), at(x, row + past)]);
            }
            lines.across(left, right, row);
            if let Some(words) = words.next() {
                let start = start_centred(&words, f64::midpoint(left, right));
                lines.text(at(start, row - OVERSHOOT - 2.0), words);
            }
        };
        let y = self.upper.centre.y;
        let above = self.top - CLEAR;
        across(self.upper.left(), self.upper.right(), y, above - ROW);
        let other = self.lower.unwrap_or(self.screw);
        across(self.upper.centre.x, other.centre.x, y, above);
        let mut row = self.bottom + CLEAR + LINE;
        across(self.screw.left(), self.screw.right(), y, row);
        if let Some(lower) = self.lower {
            row += ROW;
            across(lower.left(), lower.right(), y, row);
        }
        row + OVERSHOOT + LINE
    }
}

impl Circle {
    fn left(&self) -> f64 {
        self.centre.x - self.radius
    }

    fn right(&self) -> f64 {
        self.centre.x + self.radius
    }

    fn draw(&self, path: &mut Path) {
        let (left, right) = (at(self.left(), self.centre.y), at(self.right(), self.centre.y));
        path.start(left);
        path.arc_to(self.radius, Turn::Clockwise, right);
        path.arc_to(self.radius, Turn::Clockwise, left);
        path.close();
    }

    fn polygon(&self) -> Vec<Point> {
        let corner = |side: u32| {
            let angle = f64::from(side) / f64::from(SIDES) * std::f64::consts::TAU;
            let (across, down) = (libm::cos(angle) * self.radius, libm::sin(angle) * self.radius);
            at(self.centre.x + across, self.centre.y + down)
        };
        (0..SIDES).map(corner).collect()
    }
}
