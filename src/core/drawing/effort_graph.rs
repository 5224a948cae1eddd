//! How effort and strength fall as the hole grows: two curves over the hole, the drills marked.
//!
//! Both are parts of what they are with the drill that was chosen, so that they meet there.

use crate::calc::engagement::{hole_for, percent};
use crate::calc::tap_effort::Compared;
use crate::calc::thread_form::Geometry;
use crate::drawing::DrawingIds;
use crate::drawing::frame::{self, Caption, LINE, MARGIN, WIDTH};
use crate::drawing::label;
use crate::drawing::svg::{Element, Path, Point, at};
use crate::tables::threads::Form;
use crate::units::{Length, in_mm, print};

/// A drill on the graph.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Its name.
    pub name: String,
    /// The hole it drills.
    pub hole: Length,
    /// Its effort, of the effort with the chosen drill.
    pub effort_percent: f64,
    /// Its strength, of the strength with the chosen drill.
    pub strength_percent: f64,
}

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct EffortGraph {
    /// The thread's name.
    pub thread: &'static str,
    /// Its form.
    pub form: Form,
    /// Its figures.
    pub geometry: Geometry,
    /// The chosen drill first, then the larger ones.
    pub marks: Vec<Marked>,
}

/// The plot on the sheet.
const LEFT: f64 = 52.0;
const RIGHT: f64 = WIDTH - 12.0;
const TOP: f64 = 34.0;
const BOTTOM: f64 = 184.0;
/// Points of engagement drawn on the small and on the large side of the chosen drill.
const BEFORE: f64 = 8.0;
const BEHIND: f64 = 26.0;
/// The key over the plot: its level, and the length of line it shows.
const KEY: f64 = 12.0;
const SAMPLE: f64 = 22.0;
/// The line of the thread that holds.
const DASHES: &str = "6 3";
/// Points of a curve.
const STEPS: u32 = 24;

/// The graph as one SVG document; what a hole has of the chosen one is asked of the calculation.
#[must_use]
pub fn effort_graph(
    graph: &EffortGraph,
    of: &dyn Fn(Length) -> Compared,
    ids: DrawingIds<'_>,
) -> String {
    let Some(plot) = Plot::of(graph, of) else {
        return frame::sheet(ids, TOP, caption(graph), []);
    };
    let mut parts = plot.axes();
    parts.extend(plot.curves(of));
    parts.extend(plot.marks(&graph.marks));
    frame::sheet(ids, BOTTOM + LINE * 3.0 + MARGIN, caption(graph), parts)
}

/// Where a hole and a percentage lie on the sheet.
struct Plot {
    from: Length,
    to: Length,
    most: f64,
}

impl Plot {
    /// The range about the chosen drill and the marks.
    fn of(graph: &EffortGraph, of: &dyn Fn(Length) -> Compared) -> Option<Self> {
        let chosen = graph.marks.first()?;
        let engaged = percent(graph.form, &graph.geometry, chosen.hole);
        let hole = |percent: f64| hole_for(graph.form, &graph.geometry, percent);
        let from = hole(engaged + BEFORE);
        let last = graph
            .marks
            .last()
            .map_or(engaged, |mark| percent(graph.form, &graph.geometry, mark.hole));
        let to = hole((engaged - BEHIND).min(last - 2.0).max(1.0));
        Some(Self { from, to, most: of(from).effort_percent.max(110.0) })
    }

    fn point(&self, hole: Length, percent: f64) -> Point {
        let along = in_mm(hole - self.from) / in_mm(self.to - self.from);
        at(LEFT + along * (RIGHT - LEFT), BOTTOM - percent / self.most * (BOTTOM - TOP))
    }

    /// The frame of the plot, with lines at every fifty percent.
    fn axes(&self) -> Vec<Element> {
        let mut lines = Path::default();
        let mut figures = Vec::new();
        for percent in [0.0, 50.0, 100.0] {
            let level = self.point(self.from, percent).y;
            lines.segment(at(LEFT, level), at(RIGHT, level));
            let words = format!("{} %", print::trimmed(percent, 0));
            let x = LEFT - 4.0 - label::width(&words);
            figures.push(words_at(x, level + 4.0, words));
        }
        lines.segment(at(LEFT, TOP), at(LEFT, BOTTOM));
        vec![frame::thin("dimension", lines), frame::lettering("note ink", figures)]
    }

    fn curves(&self, of: &dyn Fn(Length) -> Compared) -> Vec<Element> {
        let holes = (0..=STEPS)
            .map(|step| self.from + (self.to - self.from) * (f64::from(step) / f64::from(STEPS)));
        let held: Vec<(Length, Compared)> = holes.map(|hole| (hole, of(hole))).collect();
        let mut effort = Path::default();
        effort.polyline(held.iter().map(|(hole, it)| self.point(*hole, it.effort_percent)));
        let mut strength = Path::default();
        strength.polyline(held.iter().map(|(hole, it)| self.point(*hole, it.strength_percent)));
        let (mut solid, mut dashed) = (Path::default(), Path::default());
        let [effort_at, thread_at] = [LEFT, LEFT + 88.0];
        solid.segment(at(effort_at, KEY), at(effort_at + SAMPLE, KEY));
        dashed.segment(at(thread_at, KEY), at(thread_at + SAMPLE, KEY));
        let named = |x: f64, words: &str| words_at(x + SAMPLE + 5.0, KEY + 4.0, words.to_owned());
        let names = vec![named(effort_at, "effort"), named(thread_at, "thread that holds")];
        vec![
            frame::thick("outline", effort),
            frame::thin("outline", strength).with("stroke-dasharray", DASHES),
            frame::thick("outline", solid),
            frame::thin("outline", dashed).with("stroke-dasharray", DASHES),
            frame::lettering("note ink", names),
        ]
    }

    /// A chain line at each drill, a dot on each curve; the names below, each on a line of its own, the
    /// largest drill's first, so that no line runs through a name; the chosen one heavy.
    fn marks(&self, marks: &[Marked]) -> Vec<Element> {
        let (mut lines, mut dots, mut names) = (Path::default(), Vec::new(), Vec::new());
        let mut level = BOTTOM;
        for (place, mark) in marks.iter().enumerate().rev() {
            level += LINE;
            let foot = self.point(mark.hole, 0.0);
            lines.segment(at(foot.x, TOP - 6.0), at(foot.x, level - LINE + 2.0));
            for percent in [mark.effort_percent, mark.strength_percent] {
                dots.push(dot(self.point(mark.hole, percent)));
            }
            let words =
                if place == 0 { format!("{}, chosen", mark.name) } else { mark.name.clone() };
            let x = foot.x.min(RIGHT - label::width(&words) * 1.12).max(MARGIN);
            let name = words_at(x, level, words);
            names.push(if place == 0 { name.with("font-weight", "bold") } else { name });
        }
        let mut parts = vec![frame::chain("centre-line", lines)];
        parts.extend(dots);
        parts.push(frame::lettering("note ink", names));
        parts
    }
}

fn dot(point: Point) -> Element {
    Element::new("circle")
        .with("class", "origin paper")
        .with("cx", point.x)
        .with("cy", point.y)
        .with("r", 3.0)
        .with("fill", "#fff")
}

fn words_at(x: f64, y: f64, words: String) -> Element {
    Element::new("text").with("x", x).with("y", y).text(words)
}

fn caption(graph: &EffortGraph) -> Caption {
    let mut description = format!(
        "Effort of the tap and strength of the thread of {} over the size of the hole, as parts of both with the chosen drill. The effort falls steeply, the strength more slowly.",
        graph.thread
    );
    for (place, mark) in graph.marks.iter().enumerate() {
        let chosen = if place == 0 { ", chosen" } else { "" };
        let [effort, strength] =
            [mark.effort_percent, mark.strength_percent].map(|percent| print::fixed(percent, 0));
        description.push_str(&format!(
            " {}{chosen}: effort {effort} %, strength {strength} %.",
            mark.name
        ));
    }
    Caption { title: format!("Effort and strength of {} by the hole", graph.thread), description }
}
