//! Where the metal, the columns of dimensions and the labels of a section stand.

use crate::drawing::frame::{MARGIN, WIDTH};
use crate::drawing::hole_section::axial::{self, Axial, Levels, sane};
use crate::drawing::hole_section::section::{self, Bottom, Mark, Section};
use crate::drawing::label::{Label, Line};
use crate::units::{Length, in_mm, mm};

/// Room above the metal for a dimension with its words.
const TOP_ROW: f64 = 32.0;
/// Room for the lines that lead from the columns to the labels.
const LEAD: f64 = 14.0;
/// From one column of dimensions to the next.
const COLUMN: f64 = 11.0;
/// From the metal to the first column.
const CLEAR: f64 = 10.0;
/// Room at the metal's edge for its break line.
pub(super) const EDGE: f64 = 4.0;

/// The layout of one section.
pub(super) struct Sheet<'section> {
    pub(super) section: &'section Section,
    pub(super) levels: Levels,
    pub(super) axial: Axial,
    /// The axis of the hole.
    pub(super) centre: f64,
    /// Edges of the metal shown.
    pub(super) left: f64,
    pub(super) right: f64,
    /// Radii as drawn.
    pub(super) hole: f64,
    pub(super) thread: f64,
    pub(super) clearance: f64,
    /// Columns of running dimensions.
    pub(super) columns: [f64; 2],
    /// The depths with their labels, from the top.
    pub(super) named: Vec<PlacedDepth>,
    pub(super) labels_at: f64,
}

impl<'section> Sheet<'section> {
    pub(super) fn lay_out(section: &'section Section) -> Self {
        let levels = axial::levels(section);
        let words = words(section, levels);
        let widths = words.iter().flat_map(|words| &words.lines).map(Line::width);
        let labels_at = WIDTH - MARGIN - widths.fold(0.0, f64::max);
        let outer = labels_at - LEAD;
        let inner = outer - COLUMN;
        let (left, right) = (MARGIN + EDGE, inner - CLEAR);
        let axial = axial::lay_out(section, right - left, MARGIN + TOP_ROW);
        let radius = |diameter: Length| axial.scale.of(sane(diameter)) / 2.0;
        let hole = radius(section.tapping.diameter);
        let face = axial.y(mm(0.0));
        let named = words.into_iter().map(|WordedDepth { mark, depth, lines }| {
            let y = axial.y(depth);
            let measured = match (mark, section.bottom) {
                (Mark::Face, _) => Measured::Origin,
                (Mark::UpperFace, _) | (Mark::FarFace, Bottom::Through { .. }) => Measured::Between,
                _ => Measured::Running,
            };
            let wanted = match measured {
                Measured::Between => f64::midpoint(face, y),
                Measured::Origin | Measured::Running => y,
            };
            PlacedDepth { mark, measured, y, label: Label { lines, wanted } }
        });
        Self {
            section,
            levels,
            centre: f64::midpoint(left, right),
            left,
            right,
            hole,
            thread: radius(section.major).max(hole),
            clearance: section.upper.as_ref().map_or(0.0, |upper| radius(upper.clearance.diameter)),
            columns: [inner, outer],
            named: named.collect(),
            labels_at,
            axial,
        }
    }

    pub(super) fn y(&self, depth: Length) -> f64 {
        self.axial.y(depth)
    }
}

/// A depth on the sheet.
pub(super) struct PlacedDepth {
    pub(super) mark: Mark,
    pub(super) measured: Measured,
    pub(super) y: f64,
    pub(super) label: Label,
}

/// How a depth is dimensioned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Measured {
    /// From face to face, an arrowhead at each end and the words at the middle.
    Between,
    /// Where the running dimensions begin.
    Origin,
    /// From the origin, the words at the end.
    Running,
}

/// What is said of a depth.
struct WordedDepth {
    mark: Mark,
    depth: Length,
    lines: Vec<Line>,
}

/// The depths and what is said of each, shallowest first.
fn words(section: &Section, levels: Levels) -> Vec<WordedDepth> {
    let mut words: Vec<WordedDepth> = section::levels(section)
        .into_iter()
        .map(|level| WordedDepth {
            mark: level.mark,
            depth: level.depth,
            lines: vec![Line::Words(level.dimension.drawn())],
        })
        .collect();
    let mut say = |mark, depth, lines: &[&str]| {
        let lines = lines.iter().map(|&line| Line::Words(line.to_owned())).collect();
        words.push(WordedDepth { mark, depth, lines });
    };
    match section.bottom {
        Bottom::Through { thickness: None } => {
            say(Mark::FarFace, levels.bottom, &["thickness", "not given"]);
        }
        Bottom::Through { .. } => {}
        Bottom::Blind { depths, .. } => {
            say(Mark::Face, mm(0.0), &["depths from here"]);
            if depths.is_none() {
                say(Mark::FullThread, levels.full_thread, &["depth not given"]);
            }
        }
    }
    if section.upper.as_ref().is_some_and(|upper| upper.thickness.is_none()) {
        say(Mark::UpperFace, levels.top, &["upper part,", "thickness not given"]);
    }
    words.sort_by(|a, b| in_mm(a.depth).total_cmp(&in_mm(b.depth)));
    if section.upper.is_some() {
        // With a part on top the clearance hole has the row above, so the thread is named at its end.
        let first = words.iter_mut().find(|words| words.depth > mm(0.0));
        if let Some(WordedDepth { lines, .. }) = first {
            lines.insert(0, Line::Name(section.designation.clone()));
        }
    }
    words
}
