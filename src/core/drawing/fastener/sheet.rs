//! The two views on the sheet, and their dimension lines.

use super::{DrawnHead, FastenerView, fastener_dimensions};
use crate::drawing::dimension::{Dimension, DimensionLines, OVERSHOOT, TAIL, start_centred};
use crate::drawing::frame::{self, LINE, MARGIN, WIDTH};
use crate::drawing::hatch::{Lean, hatch};
use crate::drawing::label::{Line, width};
use crate::drawing::svg::{Element, Path, Point, Turn, at};
use crate::units::{Length, in_mm};

/// As wide as the figure may stand on the sheet, leaving room for one upright dimension at its right.
const ACROSS: f64 = 170.0;
/// As high as the two views may stand together.
const HIGH: f64 = 250.0;
/// The plate, as a part of the screw.
const PLATE: f64 = 1.5;
/// How much of the screw stands out below the plate, as a part of it.
const BELOW: f64 = 0.5;
/// How far the plate goes on beside the widest part, as a part of the screw.
const BESIDE: f64 = 0.6;
/// From a view to its dimension line, and from one dimension line to the next.
const ROW: f64 = 24.0;
/// From line to line of the lining.
const LINING: f64 = 7.0;
/// How far a centre line passes what it is of.
const BEYOND: f64 = 6.0;

/// Where everything lies on the sheet.
pub(super) struct Sheet {
    /// What a millimetre takes.
    pub(super) scale: f64,
    middle: f64,
    /// The centre of the view from above.
    above: f64,
    /// The top of the head, the face, the underside of the plate, the end of the screw.
    top: f64,
    face: f64,
    under: f64,
    end: f64,
    /// Half of the plate.
    half: f64,
}

impl Sheet {
    pub(super) fn of(view: &FastenerView) -> Self {
        let screw = in_mm(view.screw).max(0.01);
        let head = view.head;
        let bore = match head {
            DrawnHead::Cap { counterbore, .. } => in_mm(counterbore),
            _ => 0.0,
        };
        let widest = head.wide().max(bore).max(in_mm(view.hole));
        let corners = head.wide().max(screw) * 1.1547;
        let plate = screw * PLATE + head.sunk();
        let total = corners + head.proud() + plate + screw * BELOW;
        let half = widest / 2.0 + screw * BESIDE;
        let scale = (ACROSS / (half * 2.0)).min(HIGH / total);
        let middle = MARGIN + ACROSS / 2.0;
        let above = MARGIN + LINE + ROW + corners / 2.0 * scale;
        let top = above + corners / 2.0 * scale + ROW;
        let face = top + head.proud() * scale;
        let under = face + plate * scale;
        Self {
            scale,
            middle,
            above,
            top,
            face,
            under,
            end: under + screw * BELOW * scale,
            half: half * scale,
        }
    }

    /// Half of a width, on the sheet.
    fn half_of(&self, width: Length) -> f64 {
        in_mm(width) / 2.0 * self.scale
    }

    fn circle(&self, path: &mut Path, diameter: Length) {
        let radius = self.half_of(diameter);
        let (left, right) =
            (at(self.middle - radius, self.above), at(self.middle + radius, self.above));
        path.start(left);
        path.arc_to(radius, Turn::Clockwise, right);
        path.arc_to(radius, Turn::Clockwise, left);
        path.close();
    }

    /// A hexagon with two of its flats upright.
    fn hexagon(&self, path: &mut Path, across_flats: Length) {
        let half = self.half_of(across_flats);
        let corner = half * 2.0 / libm::sqrt(3.0);
        let (x, y) = (self.middle, self.above);
        path.polyline([
            at(x, y - corner),
            at(x + half, y - corner / 2.0),
            at(x + half, y + corner / 2.0),
            at(x, y + corner),
            at(x - half, y + corner / 2.0),
            at(x - half, y - corner / 2.0),
        ]);
        path.close();
    }

    pub(super) fn plan(&self, view: &FastenerView) -> Vec<Element> {
        let mut outline = Path::default();
        match view.head {
            DrawnHead::Unknown => self.circle(&mut outline, view.screw),
            DrawnHead::Hexagon { across_flats, .. } => {
                self.hexagon(&mut outline, across_flats);
                self.circle(&mut outline, across_flats);
            }
            DrawnHead::Round { diameter, .. } => self.circle(&mut outline, diameter),
            DrawnHead::Countersunk { mouth, .. } => self.circle(&mut outline, mouth),
            DrawnHead::Cap { diameter, key, .. } => {
                self.circle(&mut outline, diameter);
                if let Some(key) = key {
                    self.hexagon(&mut outline, key);
                }
            }
        }
        let reach = view.head.wide().max(in_mm(view.screw)) / 2.0 * 1.1547 * self.scale + BEYOND;
        let mut centres = Path::default();
        centres.segment(at(self.middle, self.above - reach), at(self.middle, self.above + reach));
        centres.segment(at(self.middle - reach, self.above), at(self.middle + reach, self.above));
        vec![frame::thick("outline", outline), frame::chain("centre-line", centres)]
    }

    /// The edge of the plate's right half from the face down, as far as from the middle.
    fn edge(&self, view: &FastenerView) -> Vec<(f64, f64)> {
        let hole = self.half_of(view.hole);
        match view.head {
            DrawnHead::Countersunk { mouth, depth } => vec![
                (self.half_of(mouth), self.face),
                (hole, self.face + in_mm(depth) * self.scale),
                (hole, self.under),
            ],
            DrawnHead::Cap { counterbore, height, .. } => {
                let (bore, floor) =
                    (self.half_of(counterbore), self.face + in_mm(height) * self.scale);
                vec![(bore, self.face), (bore, floor), (hole, floor), (hole, self.under)]
            }
            _ => vec![(hole, self.face), (hole, self.under)],
        }
    }

    pub(super) fn cut(&self, view: &FastenerView) -> Vec<Element> {
        let (mut outline, mut lining, mut ends) =
            (Path::default(), Path::default(), Path::default());
        for side in [-1.0, 1.0] {
            let x = |from_middle: f64| self.middle + side * from_middle;
            let edge = self.edge(view);
            let inner: Vec<Point> = edge.iter().map(|(from, y)| at(x(*from), *y)).collect();
            let outer = [at(x(self.half), self.under), at(x(self.half), self.face)];
            let region: Vec<Point> = inner.iter().copied().chain(outer).collect();
            hatch(&mut lining, &region, Lean::Right, LINING);
            let [low, high] = outer;
            outline.polyline([high].into_iter().chain(inner).chain([low]));
            frame::break_line(&mut ends, high, low);
        }
        self.screw(view, &mut outline);
        let mut thread = Path::default();
        let (core, neck) = (self.half_of(view.minor), self.neck(view));
        for side in [-1.0, 1.0] {
            let x = self.middle + side * core;
            thread.segment(at(x, neck), at(x, self.end));
        }
        let screw = self.half_of(view.screw);
        let (left, right) = (at(self.middle - screw, self.end), at(self.middle + screw, self.end));
        frame::break_line(&mut ends, left, right);
        let mut centre = Path::default();
        centre.segment(at(self.middle, self.top - BEYOND), at(self.middle, self.end + BEYOND));
        vec![
            frame::lining(lining),
            frame::thick("outline", outline),
            frame::thin("thread", thread),
            frame::thin("break-line", ends),
            frame::chain("centre-line", centre),
        ]
    }

    /// The bottom of what is let into the face, or the face.
    fn floor(&self, view: &FastenerView) -> f64 {
        self.face + view.head.sunk() * self.scale
    }

    /// Where the screw comes out of its head: a cone goes on to it below where it meets the hole.
    fn neck(&self, view: &FastenerView) -> f64 {
        match view.head {
            DrawnHead::Countersunk { mouth, depth } if mouth > view.hole => {
                let on = in_mm(mouth - view.screw) / in_mm(mouth - view.hole);
                self.face + in_mm(depth) * on * self.scale
            }
            _ => self.floor(view),
        }
    }

    fn screw(&self, view: &FastenerView, outline: &mut Path) {
        let (half, neck) = (self.half_of(view.screw), self.neck(view));
        for side in [-1.0, 1.0] {
            let x = self.middle + side * half;
            outline.segment(at(x, neck), at(x, self.end));
        }
        let sides = |half: f64| (self.middle - half, self.middle + half);
        match view.head {
            DrawnHead::Unknown | DrawnHead::Hexagon { height: None, .. } => {}
            DrawnHead::Hexagon { across_flats: wide, .. }
            | DrawnHead::Round { diameter: wide, .. }
            | DrawnHead::Cap { diameter: wide, .. } => {
                let (left, right) = sides(self.half_of(wide));
                outline.polyline([
                    at(left, self.top),
                    at(right, self.top),
                    at(right, neck),
                    at(left, neck),
                ]);
                outline.close();
                if matches!(view.head, DrawnHead::Hexagon { .. }) {
                    outline.segment(at(self.middle, self.top), at(self.middle, neck));
                }
            }
            DrawnHead::Countersunk { mouth, .. } => {
                let (left, right) = sides(self.half_of(mouth));
                outline.segment(at(left, self.face), at(right, self.face));
                let hole = sides(self.half_of(view.hole));
                for (from, to) in [(hole.0, self.middle - half), (hole.1, self.middle + half)] {
                    outline.segment(at(from, self.floor(view)), at(to, neck));
                }
            }
        }
    }

    /// The dimension lines; gives the lowest edge used.
    pub(super) fn dimensions(&self, view: &FastenerView, lines: &mut DimensionLines) -> f64 {
        let sizes = fastener_dimensions(view);
        let mut sizes = sizes.iter().map(Dimension::drawn);
        let across = |lines: &mut DimensionLines, width: Length, from: f64, row: f64| {
            let half = self.half_of(width);
            let (left, right) = (self.middle - half, self.middle + half);
            let past = if row < from { -OVERSHOOT } else { OVERSHOOT };
            for x in [left, right] {
                lines.line([at(x, from), at(x, row + past)]);
            }
            lines.across(left, right, row);
        };
        let top = match view.head {
            DrawnHead::Unknown => None,
            DrawnHead::Hexagon { across_flats: wide, .. }
            | DrawnHead::Round { diameter: wide, .. }
            | DrawnHead::Cap { diameter: wide, .. }
            | DrawnHead::Countersunk { mouth: wide, .. } => Some(wide),
        };
        if let Some((wide, words)) = top.zip(if top.is_some() { sizes.next() } else { None }) {
            let row = MARGIN + LINE + 2.0;
            across(lines, wide, self.above, row);
            let words = Line::Words(words);
            let start = start_centred(&words, self.middle);
            lines.text(at(start, row - OVERSHOOT - 2.0), words);
        }
        let (from, to) = (self.top, self.floor(view));
        if to > from + 0.01
            && let Some(words) = sizes.next()
        {
            self.upright(lines, from, to, words);
        }
        let bore = match view.head {
            DrawnHead::Cap { counterbore, .. } => Some(counterbore),
            _ => None,
        };
        let widest = bore.unwrap_or(view.hole);
        // Beside the lines, so that none runs through the words.
        let beside = self.middle + self.half_of(widest) + TAIL + OVERSHOOT;
        let mut row = self.end + ROW;
        let bore = bore.map(|bore| (bore, self.floor(view)));
        let below = [(view.hole, self.under), (view.screw, self.end)];
        for ((width, from), words) in bore.into_iter().chain(below).zip(sizes) {
            across(lines, width, from, row);
            lines.text(at(beside, row + 4.0), Line::Words(words));
            row += ROW;
        }
        row - ROW + LINE * 1.5
    }

    /// A height at the right of the plate.
    fn upright(&self, lines: &mut DimensionLines, from: f64, to: f64, words: String) {
        let x = self.middle + self.half + ROW;
        for y in [from, to] {
            lines.line([at(self.middle + self.half * 0.4, y), at(x + OVERSHOOT, y)]);
        }
        lines.upright(x, from, to);
        let room = WIDTH - MARGIN - width(&words);
        lines.text(
            at((x + OVERSHOOT * 2.0).min(room), f64::midpoint(from, to) + 4.0),
            Line::Words(words),
        );
    }
}
