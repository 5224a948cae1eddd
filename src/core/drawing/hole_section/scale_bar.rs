//! The scale bar: a round number of millimetres at the drawing's own scale.

use crate::drawing::frame::{self, LINE};
use crate::drawing::svg::{Element, Path, at};
use crate::units::{in_mm, mm, print};

/// Lengths a bar may have, longest first.
const BARS: [f64; 18] = [
    5000.0, 2000.0, 1000.0, 500.0, 200.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1,
    0.05, 0.02, 0.01,
];
/// The longest bar drawn.
const LONGEST: f64 = 90.0;
const HEIGHT: f64 = 4.0;

/// A bar with its left end at `x`, its top at `y`, and its length in words beside it; `scale` is what a
/// millimetre takes on the sheet.
pub(in crate::drawing) fn scale_bar(scale: f64, x: f64, y: f64) -> Vec<Element> {
    let fits = |bar: &f64| scale * bar <= LONGEST;
    let bar = mm(BARS.into_iter().find(fits).unwrap_or(0.01));
    let end = x + scale * in_mm(bar);
    let (middle, bottom) = ((x + end) / 2.0, y + HEIGHT);
    let mut outline = Path::default();
    outline.polyline([at(x, y), at(end, y), at(end, bottom), at(x, bottom)]);
    outline.close();
    let mut half = Path::default();
    half.polyline([at(x, y), at(middle, y), at(middle, bottom), at(x, bottom)]);
    half.close();
    let words = Element::new("text")
        .with("x", end + 5.0)
        .with("y", y + LINE / 2.0 + 1.0)
        .text(format!("scale bar {}", print::mm(bar, 2)));
    vec![
        frame::thin("scale-bar", outline),
        frame::filled("scale-bar ink", half),
        frame::lettering("note ink", vec![words]),
    ]
}
