//! A dimension: in words and figures for the page, in lines and arrowheads for the sheet.

use crate::drawing::frame::{self, LINE};
use crate::drawing::label::{Label, Line};
use crate::drawing::svg::{Element, Path, Point, Turn, at};
use crate::units::{Angle, Length, in_degrees, print};

/// One dimension of a drawing, as text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dimension {
    /// What is measured: `drill to full diameter`.
    pub label: String,
    /// The same as the drawing has room for: `drill`.
    pub short: String,
    /// Its size in millimetres, unit included: `8 mm`, `⌀2.65 mm`.
    pub mm: String,
    /// Its size in inches, unit included: `0.315 in`, `⌀0.1043 in`.
    pub inch: String,
}

impl Dimension {
    /// A depth to set on a machine: millimetres to two places, inches to three.
    #[must_use]
    pub fn depth(label: impl Into<String>, depth: Length) -> Self {
        Self::new(label.into(), print::mm(depth, 2), print::inch(depth, 3))
    }

    /// A length: millimetres to three places, inches to four.
    #[must_use]
    pub fn length(label: impl Into<String>, length: Length) -> Self {
        Self::new(label.into(), print::mm(length, 3), print::inch(length, 4))
    }

    /// A diameter: millimetres to three places, inches to four.
    #[must_use]
    pub fn diameter(label: impl Into<String>, diameter: Length) -> Self {
        let (mm, inch) = (print::mm(diameter, 3), print::inch(diameter, 4));
        Self::new(label.into(), format!("⌀{mm}"), format!("⌀{inch}"))
    }

    /// An angle, the same in both columns.
    #[must_use]
    pub fn angle(label: impl Into<String>, angle: Angle) -> Self {
        let words = format!("{}°", print::trimmed(in_degrees(angle), 1));
        Self::new(label.into(), words.clone(), words)
    }

    fn new(label: String, mm: String, inch: String) -> Self {
        Self { short: label.clone(), label, mm, inch }
    }

    /// The same under a shorter name on the drawing.
    #[must_use]
    pub(super) fn shown_as(mut self, short: impl Into<String>) -> Self {
        self.short = short.into();
        self
    }

    /// The dimension on one line, as a drawing shows it: `drill 10.15 mm`.
    #[must_use]
    pub fn drawn(&self) -> String {
        format!("{} {}", self.short, self.mm)
    }
}

/// Length of an arrowhead.
pub(super) const ARROW: f64 = 9.0;
/// Half its width: ISO 129 asks for 15° to 30° at the tip.
const ARROW_HALF: f64 = 1.9;
/// How far a dimension line runs on past an arrowhead that stands outside.
pub(super) const TAIL: f64 = 16.0;
/// How far an extension line passes its dimension line.
pub(super) const OVERSHOOT: f64 = 3.0;

/// The dimension lines of one sheet as they gather.
#[derive(Default)]
pub(super) struct DimensionLines {
    lines: Path,
    arrowheads: Path,
    texts: Vec<Element>,
    origins: Vec<Element>,
}

/// The way an arrowhead points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Points {
    Up,
    Down,
    Left,
    Right,
}

impl DimensionLines {
    /// A thin line through points.
    pub(super) fn line(&mut self, points: impl IntoIterator<Item = Point>) {
        self.lines.polyline(points);
    }

    /// A filled arrowhead with its tip at a point.
    pub(super) fn arrowhead(&mut self, tip: Point, points: Points) {
        let (back, half) = match points {
            Points::Up => (at(0.0, ARROW), at(ARROW_HALF, 0.0)),
            Points::Down => (at(0.0, -ARROW), at(ARROW_HALF, 0.0)),
            Points::Left => (at(ARROW, 0.0), at(0.0, ARROW_HALF)),
            Points::Right => (at(-ARROW, 0.0), at(0.0, ARROW_HALF)),
        };
        self.arrowheads.polyline([
            tip,
            at(tip.x + back.x + half.x, tip.y + back.y + half.y),
            at(tip.x + back.x - half.x, tip.y + back.y - half.y),
        ]);
        self.arrowheads.close();
    }

    /// An arc with an arrowhead at each end: an angle's dimension line.
    pub(super) fn angle_arc(&mut self, apex: Point, radius: f64, half: Angle) {
        let (sine, cosine) = (libm::sin(half.value), libm::cos(half.value));
        let end = |side: f64| at(apex.x + side * radius * sine, apex.y - radius * cosine);
        self.lines.start(end(-1.0));
        self.lines.arc_to(radius, Turn::Clockwise, end(1.0));
        for side in [-1.0, 1.0] {
            // The head lies along the chord of its own length, turned back from the tangent by half of it.
            let back = half.value - ARROW / radius / 2.0;
            let (along, down) = (libm::cos(back), libm::sin(back));
            let (tip, tail) = (end(side), at(-side * along * ARROW, -down * ARROW));
            let aside = at(down * ARROW_HALF, -side * along * ARROW_HALF);
            self.arrowheads.polyline([
                tip,
                at(tip.x + tail.x + aside.x, tip.y + tail.y + aside.y),
                at(tip.x + tail.x - aside.x, tip.y + tail.y - aside.y),
            ]);
            self.arrowheads.close();
        }
    }

    /// The open circle that marks where running dimensions are measured from.
    pub(super) fn origin(&mut self, centre: Point) {
        self.origins.push(
            Element::new("circle")
                .with("class", "origin paper")
                .with("cx", centre.x)
                .with("cy", centre.y)
                .with("r", 2.5)
                .with("fill", "#fff"),
        );
    }

    /// A dimension line from left to right, its arrowheads outside where there is no room between.
    pub(super) fn across(&mut self, left: f64, right: f64, y: f64) {
        if right - left > 2.5 * ARROW {
            self.line([at(left, y), at(right, y)]);
            self.arrowhead(at(left, y), Points::Left);
            self.arrowhead(at(right, y), Points::Right);
        } else {
            self.line([at(left - TAIL, y), at(right + TAIL, y)]);
            self.arrowhead(at(left, y), Points::Right);
            self.arrowhead(at(right, y), Points::Left);
        }
    }

    /// A dimension line from top to bottom, likewise. Gives its lowest point.
    pub(super) fn upright(&mut self, x: f64, top: f64, bottom: f64) -> f64 {
        if bottom - top > 2.5 * ARROW {
            self.line([at(x, top), at(x, bottom)]);
            self.arrowhead(at(x, top), Points::Up);
            self.arrowhead(at(x, bottom), Points::Down);
            bottom
        } else {
            self.line([at(x, top - TAIL), at(x, bottom + TAIL)]);
            self.arrowhead(at(x, top), Points::Down);
            self.arrowhead(at(x, bottom), Points::Up);
            bottom + TAIL
        }
    }

    /// A line of lettering that begins at a point on its baseline.
    pub(super) fn text(&mut self, place: Point, line: Line) {
        let text = Element::new("text").with("x", place.x).with("y", place.y);
        self.texts.push(match line {
            Line::Name(words) => text.with("font-weight", "bold").text(words),
            Line::Words(words) => text.text(words),
        });
    }

    /// A label, its top left corner at a point.
    pub(super) fn label(&mut self, place: Point, label: &Label) {
        let lines: f64 = label.lines.iter().map(|_| LINE).sum();
        let mut baseline = place.y + (label.height() - lines) / 2.0 + LINE * 0.79;
        for line in &label.lines {
            self.text(at(place.x, baseline), line.clone());
            baseline += LINE;
        }
    }

    /// Everything gathered, lines first.
    pub(super) fn elements(self) -> Vec<Element> {
        let mut elements = Vec::new();
        if !self.lines.is_empty() {
            elements.push(frame::thin("dimension", self.lines));
        }
        if !self.arrowheads.is_empty() {
            elements.push(frame::filled("arrowhead ink", self.arrowheads));
        }
        elements.extend(self.origins);
        if !self.texts.is_empty() {
            elements.push(frame::lettering("dimension-text ink", self.texts));
        }
        elements
    }
}

/// Where a line centred on `x` begins so that it stays on the sheet.
pub(super) fn start_centred(line: &Line, x: f64) -> f64 {
    let width = line.width();
    (x - width / 2.0).min(frame::WIDTH - frame::MARGIN - width).max(frame::MARGIN)
}
