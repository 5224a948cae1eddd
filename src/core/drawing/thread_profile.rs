//! The true form of a thread: two pitches of the screw, to scale, dimensioned.
//!
//! Where the standard gives the nut another minor diameter its line is drawn too. Leaves out limits
//! and the nut's own metal.

use std::f64::consts::FRAC_PI_2;

use crate::calc::thread_form::{self, Geometry};
use crate::drawing::dimension::{DimensionLines, OVERSHOOT, start_centred};
use crate::drawing::frame::{self, Caption, LINE, MARGIN, WIDTH};
use crate::drawing::hatch::{Lean, hatch};
use crate::drawing::label::{self, Label, Line};
use crate::drawing::svg::{Element, Path, Point, Turn, at};
use crate::drawing::{Dimension, DrawingIds};
use crate::tables::threads::{Finish, Thread};
use crate::units::{Length, Pitch, in_mm, print};

/// Edges of the metal shown.
const LEFT: f64 = 26.0;
/// The crest line.
const MAJOR_AT: f64 = 46.0;
/// Metal shown under the roots.
const BELOW: f64 = 24.0;
/// Room for the lines that lead to the labels.
const LEAD: f64 = 22.0;
/// From line to line of the section lining.
const LINING: f64 = 8.0;
/// The axial rise of a taper of 1 in 16 on diameter.
const TAPER: f64 = 1.0 / 32.0;

/// The profile of a thread, as one SVG document.
#[must_use]
pub fn thread_profile(thread: &Thread, ids: DrawingIds<'_>) -> String {
    let geometry = thread_form::geometry(thread);
    let lines = diameters(thread, &geometry);
    let widest = lines.iter().flat_map(|line| &line.label.lines).map(Line::width);
    let labels_at = WIDTH - MARGIN - widest.fold(0.0, f64::max);
    let profile = Profile::new(thread, &geometry, labels_at - LEAD);
    let mut parts = profile.metal();
    let mut dimensions = DimensionLines::default();
    profile.diameter_lines(&mut dimensions, lines, labels_at);
    profile.pitch(&mut dimensions, pitch(thread, &geometry));
    profile.angle(&mut dimensions, &geometry);
    let mut end = profile.depth(&mut dimensions, depth(thread, &geometry));
    parts.push(profile.effective_line(&geometry));
    parts.extend(dimensions.elements());
    if thread.taper.is_some() {
        end += LINE;
        let note = Element::new("text").with("x", MARGIN).with("y", end);
        parts.push(frame::lettering("note ink", vec![note.text(TAPER_NOTE)]));
    }
    frame::sheet(ids, (end + MARGIN).ceil(), caption(thread), parts)
}

/// Every dimension a thread's profile shows.
///
/// # Examples
/// BS 93, 5 BA.
/// ```
/// use holewright_core::{drawing::thread_profile::dimensions, tables::threads::find};
/// let drawn: Vec<String> =
///     dimensions(find("ba", "5").unwrap()).iter().map(|dimension| dimension.drawn()).collect();
/// assert_eq!(drawn[0], "pitch 0.59 mm");
/// assert_eq!(drawn[1], "thread angle 47.5°");
/// assert_eq!(drawn[2], "thread depth 0.355 mm");
/// assert_eq!(drawn[4], "effective ⌀2.845 mm");
/// ```
#[must_use]
pub fn dimensions(thread: &Thread) -> Vec<Dimension> {
    let geometry = thread_form::geometry(thread);
    let mut dimensions = vec![
        pitch(thread, &geometry),
        Dimension::angle("thread angle", geometry.thread_angle),
        depth(thread, &geometry),
    ];
    dimensions.extend(diameters(thread, &geometry).into_iter().map(|line| line.dimension));
    dimensions
}

const TAPER_NOTE: &str = "Taper 1 in 16; diameters at the gauge plane.";

fn pitch(thread: &Thread, geometry: &Geometry) -> Dimension {
    match thread.pitch {
        Pitch::Mm(_) => Dimension::length("pitch", geometry.pitch),
        Pitch::PerInch(threads) => {
            let label = format!("pitch ({} tpi)", print::trimmed(threads, 1));
            Dimension::length(label, geometry.pitch)
        }
    }
}

/// The depth of the screw's thread, crest to root.
fn depth(thread: &Thread, geometry: &Geometry) -> Dimension {
    let label = if has_two_minors(thread) { "thread depth of screw" } else { "thread depth" };
    Dimension::length(label, (geometry.major - geometry.minor) / 2.0)
}

/// True of the forms whose nut does not reach the screw's root.
fn has_two_minors(thread: &Thread) -> bool {
    thread.form().shape().minors.are_two()
}

/// A line of the profile named for its diameter.
struct DiameterLine {
    dimension: Dimension,
    /// Below the crest.
    below: Length,
    label: Label,
}

fn diameters(thread: &Thread, geometry: &Geometry) -> Vec<DiameterLine> {
    let mut named = vec![("major", geometry.major), ("effective", geometry.effective)];
    if has_two_minors(thread) {
        named.push(("minor, nut", geometry.minor_internal));
        named.push(("minor, screw", geometry.minor));
    } else {
        named.push(("minor", geometry.minor));
    }
    let line = |(name, diameter): (&str, Length)| {
        let dimension = Dimension::diameter(name, diameter);
        let lines = [dimension.short.clone(), dimension.mm.clone()].map(Line::Words);
        let label = Label { lines: lines.into(), wanted: 0.0 };
        DiameterLine { dimension, below: (geometry.major - diameter) / 2.0, label }
    };
    named.into_iter().map(line).collect()
}

fn caption(thread: &Thread) -> Caption {
    let name = thread.designation;
    let mut description = format!("Two pitches of the thread form of {name}, to scale.");
    for dimension in dimensions(thread) {
        let (label, mm, inch) = (dimension.label, dimension.mm, dimension.inch);
        description.push_str(&match mm == inch {
            true => format!(" {label}: {mm}."),
            false => format!(" {label}: {mm} ({inch})."),
        });
    }
    if thread.taper.is_some() {
        description.push(' ');
        description.push_str(TAPER_NOTE);
    }
    Caption { title: format!("{name}, thread form"), description }
}

/// The profile in drawing units: roots at the ends and the middle, crests between.
struct Profile {
    right: f64,
    pitch: f64,
    scale: f64,
    half_angle: f64,
    crest: Tip,
    root: Tip,
    depth: f64,
    taper: f64,
}

/// A crest or root: how much of the sharp corner is gone, and how it is finished.
#[derive(Clone, Copy)]
struct Tip {
    cut: f64,
    end: Finish,
}

impl Profile {
    fn new(thread: &Thread, geometry: &Geometry, right: f64) -> Self {
        let pitch = (right - LEFT) / 2.0;
        let scale = pitch / in_mm(geometry.pitch);
        let half_angle = geometry.thread_angle.value / 2.0;
        let sharp = pitch / (2.0 * libm::tan(half_angle));
        let depth = scale * in_mm(geometry.major - geometry.minor) / 2.0;
        let shape = thread.form().shape();
        // The 60° forms cut an eighth off the crest (ISO 68-1, ASME B1.1); the rest cut both ends alike.
        let crest_cut = if has_two_minors(thread) { sharp / 8.0 } else { (sharp - depth) / 2.0 };
        Self {
            right,
            pitch,
            scale,
            half_angle,
            crest: Tip { cut: crest_cut, end: shape.crest },
            root: Tip { cut: sharp - depth - crest_cut, end: shape.root },
            depth,
            taper: if thread.taper.is_some() { TAPER } else { 0.0 },
        }
    }

    fn y(&self, below: Length) -> f64 {
        MAJOR_AT + self.scale * in_mm(below)
    }

    /// A taper thread leans along its cone: the screw grows towards the right.
    ///
    /// Leaning the whole form turns its flanks by less than half a degree, one each way, so the angle
    /// between them stays; the true form differs by half the width of a thick line.
    fn lean(&self, point: Point) -> Point {
        at(point.x, point.y - self.taper * (point.x - f64::midpoint(LEFT, self.right)))
    }

    /// Half the width of a tip, and how far its corners stand from the sharp corner along the depth.
    fn corner(&self, tip: Tip) -> (f64, f64) {
        let tangent = libm::tan(self.half_angle);
        match tip.end {
            Finish::Flat => (tip.cut * tangent, tip.cut),
            Finish::Round => {
                let half = self.radius(tip) * libm::cos(self.half_angle);
                (half, half / tangent)
            }
        }
    }

    /// A round tip touches both flanks and lies its cut short of the sharp corner.
    fn radius(&self, tip: Tip) -> f64 {
        tip.cut / (1.0 / libm::sin(self.half_angle) - 1.0)
    }

    /// Crests and roots in order from the left edge: the middle of each and which it is.
    fn tips(&self) -> [(f64, Tip, f64); 5] {
        let crest = (self.crest, -1.0);
        let root = (self.root, 1.0);
        [(0.0, root), (0.5, crest), (1.0, root), (1.5, crest), (2.0, root)]
            .map(|(along, (tip, side))| (LEFT + along * self.pitch, tip, side))
    }

    fn metal(&self) -> Vec<Element> {
        let bottom = MAJOR_AT + self.depth + BELOW;
        let mut outline = Path::default();
        let mut region = Vec::new();
        for (middle, tip, side) in self.tips() {
            let (half, back) = self.corner(tip);
            let level = if side > 0.0 { MAJOR_AT + self.depth } else { MAJOR_AT };
            let corner_y = level + side * (tip.cut - back);
            let (from, to) = ((middle - half).max(LEFT), (middle + half).min(self.right));
            let edge = |x: f64| if (x - middle).abs() < 0.01 { level } else { corner_y };
            let (start, end) = (at(from, edge(from)), at(to, edge(to)));
            if region.is_empty() {
                outline.start(self.lean(start));
            } else {
                outline.line_to(self.lean(start));
            }
            region.push(self.lean(start));
            match tip.end {
                Finish::Flat => outline.line_to(self.lean(end)),
                Finish::Round => {
                    let turn = if side > 0.0 { Turn::Anticlockwise } else { Turn::Clockwise };
                    outline.arc_to(self.radius(tip), turn, self.lean(end));
                    let arc = self.along_arc(at(middle, level), tip, side);
                    region.extend(arc.filter(|point| point.x > from && point.x < to));
                }
            }
            region.push(self.lean(end));
        }
        let mut breaks = Path::default();
        let (low_left, low_right) = (at(LEFT, bottom), at(self.right, bottom));
        frame::break_line(&mut breaks, low_left, low_right);
        for corner in [low_left, low_right] {
            breaks.segment(self.lean(at(corner.x, MAJOR_AT + self.depth)), corner);
        }
        region.extend([low_right, low_left]);
        let mut lining = Path::default();
        hatch(&mut lining, &region, Lean::Right, LINING);
        vec![
            frame::lining(lining),
            frame::thick("outline", outline),
            frame::thin("break-line", breaks),
        ]
    }

    /// Points on a round tip, for the edge of the lining.
    fn along_arc(&self, tip_at: Point, tip: Tip, side: f64) -> impl Iterator<Item = Point> {
        let radius = self.radius(tip);
        let reach = FRAC_PI_2 - self.half_angle;
        [-0.75, -0.5, -0.25, 0.0, 0.25, 0.5, 0.75].into_iter().map(move |part| {
            let angle = part * reach;
            let rise = radius * (1.0 - libm::cos(angle));
            self.lean(at(tip_at.x + radius * libm::sin(angle), tip_at.y - side * rise))
        })
    }

    fn effective_line(&self, geometry: &Geometry) -> Element {
        let y = self.y((geometry.major - geometry.effective) / 2.0);
        let mut path = Path::default();
        path.segment(self.lean(at(LEFT, y)), self.lean(at(self.right, y)));
        frame::chain("centre-line", path)
    }

    fn diameter_lines(
        &self,
        dimensions: &mut DimensionLines,
        mut lines: Vec<DiameterLine>,
        labels_at: f64,
    ) {
        for line in &mut lines {
            line.label.wanted = self.lean(at(self.right, self.y(line.below))).y;
        }
        let tops = label::spread(lines.iter().map(|line| &line.label), MARGIN);
        for (line, top) in lines.iter().zip(tops) {
            let y = self.y(line.below);
            let level = self.lean(at(self.right + 2.0 * OVERSHOOT, y));
            let lead = label::lead(level.y, top + line.label.height() / 2.0);
            let from = if line.dimension.short == "effective" { self.right } else { LEFT };
            dimensions.line([self.lean(at(from, y)), level, at(labels_at - label::BEFORE, lead)]);
            dimensions.label(at(labels_at, top), &line.label);
        }
    }

    /// From crest to crest, above.
    fn pitch(&self, dimensions: &mut DimensionLines, dimension: Dimension) {
        let (left, right) = (LEFT + self.pitch / 2.0, LEFT + self.pitch * 1.5);
        let row = MAJOR_AT - LINE - 2.0;
        for x in [left, right] {
            let crest = self.lean(at(x, MAJOR_AT - OVERSHOOT));
            dimensions.line([crest, at(x, row - OVERSHOOT)]);
        }
        dimensions.across(left, right, row);
        let words = Line::Words(dimension.drawn());
        let place = at(start_centred(&words, f64::midpoint(left, right)), row - OVERSHOOT - 4.0);
        dimensions.text(place, words);
    }

    /// Between the flanks of the middle groove.
    fn angle(&self, dimensions: &mut DimensionLines, geometry: &Geometry) {
        let middle = LEFT + self.pitch;
        let apex = at(middle, MAJOR_AT + self.depth + self.root.cut);
        let arc_top = MAJOR_AT + LINE + 6.0;
        dimensions.angle_arc(apex, apex.y - arc_top, geometry.thread_angle / 2.0);
        let words = Line::Words(Dimension::angle("", geometry.thread_angle).mm);
        dimensions.text(at(start_centred(&words, middle), arc_top - 4.0), words);
    }

    /// From crest to root, at the left, the words below. Gives the lowest edge used.
    fn depth(&self, dimensions: &mut DimensionLines, dimension: Dimension) -> f64 {
        let x = MARGIN + 8.0;
        let (crest, root) = (at(LEFT, MAJOR_AT), at(LEFT, MAJOR_AT + self.depth));
        let (crest, root) = (self.lean(crest), self.lean(root));
        for level in [crest.y, root.y] {
            dimensions.line([at(LEFT - 2.0, level), at(x - OVERSHOOT, level)]);
        }
        dimensions.upright(x, crest.y, root.y);
        let end = MAJOR_AT + self.depth + BELOW + LINE + 4.0;
        dimensions.line([at(x, root.y), at(x, end)]);
        dimensions.text(at(x + 4.0, end), Line::Words(dimension.drawn()));
        end + OVERSHOOT
    }
}
