//! The sheet: its size, its ink, its name for those who cannot see it.

use crate::drawing::DrawingIds;
use crate::drawing::svg::{Element, Path, Point, at};

/// Width of every sheet, so that one unit is one CSS pixel on the narrowest telephone.
pub(super) const WIDTH: f64 = 320.0;
/// Nothing is drawn nearer the edge than this.
pub(super) const MARGIN: f64 = 6.0;
/// Height of lettering.
pub(super) const FONT: f64 = 12.0;
/// From the baseline of a line of text to the next.
pub(super) const LINE: f64 = 14.0;
/// Width of a visible edge; thin lines are half of it, as ISO 128 has them.
pub(super) const THICK: f64 = 1.6;

/// Half the length of the kink in a break line.
pub(super) const KINK: f64 = 3.0;

const INK: &str = "#1b2733";
const PAPER: &str = "#fff";
const THIN: f64 = 0.7;

/// A finished sheet.
pub(super) fn sheet(
    ids: DrawingIds<'_>,
    height: f64,
    caption: Caption,
    parts: impl IntoIterator<Item = Element>,
) -> String {
    let (title, description) = (ids.id("title"), ids.id("desc"));
    Element::new("svg")
        .with("xmlns", "http://www.w3.org/2000/svg")
        .with("class", "drawing")
        .with("role", "img")
        .with("aria-labelledby", format!("{title} {description}"))
        .with("viewBox", format!("0 0 320 {}", super::svg::number(height)))
        .with("width", WIDTH)
        .with("height", height)
        .with("fill", "none")
        .with("stroke", INK)
        .with("stroke-width", THIN)
        .with("stroke-linejoin", "round")
        .with("font-family", "sans-serif")
        .with("font-size", FONT)
        .child(Element::new("title").with("id", title).text(caption.title))
        .child(Element::new("desc").with("id", description).text(caption.description))
        .child(
            Element::new("rect")
                .with("class", "paper")
                .with("width", WIDTH)
                .with("height", height)
                .with("fill", PAPER)
                .with("stroke", "none"),
        )
        .children(parts)
        .to_string()
}

/// What the sheet shows, in words, for those who cannot see it.
pub(super) struct Caption {
    pub(super) title: String,
    pub(super) description: String,
}

/// Thin lines of one kind.
pub(super) fn thin(class: &'static str, path: Path) -> Element {
    Element::new("path").with("class", class).with("d", path)
}

/// Section lining, the thinnest of all so that it stays in the background.
pub(super) fn lining(path: Path) -> Element {
    thin("hatch", path).with("stroke-width", 0.5)
}

/// Visible edges.
pub(super) fn thick(class: &'static str, path: Path) -> Element {
    thin(class, path).with("stroke-width", THICK)
}

/// A chain-dotted line.
pub(super) fn chain(class: &'static str, path: Path) -> Element {
    thin(class, path).with("stroke-dasharray", "12 3 2 3")
}

/// Something filled with ink; the last word of its class is `ink`.
pub(super) fn filled(class: &'static str, path: Path) -> Element {
    thin(class, path).with("fill", INK).with("stroke", "none")
}

/// Lettering.
pub(super) fn lettering(class: &'static str, texts: Vec<Element>) -> Element {
    Element::new("g").with("class", class).with("fill", INK).with("stroke", "none").children(texts)
}

/// A thin line with a kink in its middle: the part goes on beyond it.
pub(super) fn break_line(path: &mut Path, from: Point, to: Point) {
    let length = libm::hypot(to.x - from.x, to.y - from.y);
    if length < 6.0 * KINK {
        path.segment(from, to);
        return;
    }
    let along = at((to.x - from.x) / length * KINK, (to.y - from.y) / length * KINK);
    let middle = at(f64::midpoint(from.x, to.x), f64::midpoint(from.y, to.y));
    let kink = |along_by: f64, aside_by: f64| {
        at(
            middle.x + along.x * along_by - along.y * aside_by,
            middle.y + along.y * along_by + along.x * aside_by,
        )
    };
    path.polyline([from, kink(-1.0, 0.0), kink(-0.5, 1.4), kink(0.5, -1.4), kink(1.0, 0.0), to]);
}
