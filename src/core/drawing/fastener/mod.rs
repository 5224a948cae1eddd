//! A screw in its clearance hole: the head from above, and the plate cut through the hole below it.
//! Leaves out the tapped part.

mod sheet;

use crate::drawing::DrawingIds;
use crate::drawing::dimension::{Dimension, DimensionLines};
use crate::drawing::frame::{self, Caption, LINE, MARGIN};
use crate::drawing::hole_section::scale_bar::scale_bar;
use crate::drawing::svg::Element;
use crate::units::{Length, in_mm, print};
use sheet::Sheet;

/// The head that is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrawnHead {
    /// None is held.
    Unknown,
    /// A hexagon that stands on the face.
    Hexagon {
        /// Across flats.
        across_flats: Length,
        /// Its height; not drawn from the side without it.
        height: Option<Length>,
    },
    /// A round head that stands on the face.
    Round {
        /// Its diameter.
        diameter: Length,
        /// Its height.
        height: Length,
    },
    /// A cone that lies flush with the face.
    Countersunk {
        /// Its largest diameter.
        mouth: Length,
        /// From the face to where it meets the hole.
        depth: Length,
    },
    /// A round head with a socket, let into the face.
    Cap {
        /// Its diameter.
        diameter: Length,
        /// Its height, and the depth of its counterbore.
        height: Length,
        /// The counterbore.
        counterbore: Length,
        /// Across flats of the socket's key, where it is held.
        key: Option<Length>,
    },
}

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FastenerView {
    /// The screw over its thread.
    pub screw: Length,
    /// The core of its thread.
    pub minor: Length,
    /// The clearance hole.
    pub hole: Length,
    /// The head.
    pub head: DrawnHead,
}

impl DrawnHead {
    /// The widest it is, and its place across flats in the view from above.
    fn wide(self) -> f64 {
        match self {
            Self::Unknown => 0.0,
            Self::Hexagon { across_flats, .. } => in_mm(across_flats),
            Self::Round { diameter, .. } => in_mm(diameter),
            Self::Countersunk { mouth, .. } => in_mm(mouth),
            Self::Cap { diameter, .. } => in_mm(diameter),
        }
    }

    /// How far it stands over the face.
    fn proud(self) -> f64 {
        match self {
            Self::Hexagon { height, .. } => height.map_or(0.0, in_mm),
            Self::Round { height, .. } => in_mm(height),
            Self::Unknown | Self::Countersunk { .. } | Self::Cap { .. } => 0.0,
        }
    }

    /// How far it goes into the face.
    fn sunk(self) -> f64 {
        match self {
            Self::Countersunk { depth, .. } => in_mm(depth),
            Self::Cap { height, .. } => in_mm(height),
            Self::Unknown | Self::Hexagon { .. } | Self::Round { .. } => 0.0,
        }
    }
}

/// Every dimension the drawing shows, from the top down.
///
/// # Examples
/// ```
/// use holewright_core::drawing::{DrawnHead, FastenerView, fastener_dimensions};
/// use holewright_core::units::mm;
/// let head = DrawnHead::Hexagon { across_flats: mm(10.0), height: Some(mm(4.0)) };
/// let view = FastenerView { screw: mm(6.0), minor: mm(4.773), hole: mm(6.6), head };
/// let drawn: Vec<String> = fastener_dimensions(&view).iter().map(|size| size.drawn()).collect();
/// assert_eq!(drawn, ["across flats 10 mm", "head 4 mm", "hole ⌀6.6 mm", "screw ⌀6 mm"]);
/// ```
#[must_use]
pub fn fastener_dimensions(view: &FastenerView) -> Vec<Dimension> {
    let top = match view.head {
        DrawnHead::Unknown => None,
        DrawnHead::Hexagon { across_flats, .. } => {
            Some(Dimension::length("across flats", across_flats))
        }
        DrawnHead::Round { diameter, .. } | DrawnHead::Cap { diameter, .. } => {
            Some(Dimension::diameter("head", diameter))
        }
        DrawnHead::Countersunk { mouth, .. } => Some(Dimension::diameter("mouth", mouth)),
    };
    let upright = match view.head {
        DrawnHead::Unknown => None,
        DrawnHead::Hexagon { height, .. } => height.map(|height| Dimension::length("head", height)),
        DrawnHead::Round { height, .. } => Some(Dimension::length("head", height)),
        DrawnHead::Countersunk { depth, .. } => Some(Dimension::depth("sunk", depth)),
        DrawnHead::Cap { height, .. } => Some(Dimension::depth("bore", height)),
    };
    let bore = match view.head {
        DrawnHead::Cap { counterbore, .. } => Some(Dimension::diameter("counterbore", counterbore)),
        _ => None,
    };
    let below = [Dimension::diameter("hole", view.hole), Dimension::diameter("screw", view.screw)];
    top.into_iter().chain(upright).chain(bore).chain(below).collect()
}

/// The fastener, as one SVG document.
#[must_use]
pub fn fastener(view: &FastenerView, ids: DrawingIds<'_>) -> String {
    let sheet = Sheet::of(view);
    let mut parts = sheet.plan(view);
    parts.extend(sheet.cut(view));
    let mut lines = DimensionLines::default();
    let bottom = sheet.dimensions(view, &mut lines);
    parts.extend(lines.elements());
    parts.extend(scale_bar(sheet.scale, MARGIN, bottom));
    let mut height = bottom + LINE * 0.7;
    let texts = notes(view).into_iter().map(|note| {
        height += LINE;
        Element::new("text").with("x", MARGIN).with("y", height).text(note)
    });
    let texts = texts.collect();
    parts.push(frame::lettering("note ink", texts));
    frame::sheet(ids, (height + MARGIN).ceil(), caption(view), parts)
}

fn notes(view: &FastenerView) -> Vec<&'static str> {
    let mut notes = vec!["From above, and the part cut through the hole."];
    match view.head {
        DrawnHead::Unknown => notes.push("No head is held: none is drawn."),
        DrawnHead::Hexagon { height: None, .. } => {
            notes.push("No height of the head is held: none is drawn.");
        }
        _ => {}
    }
    notes
}

fn caption(view: &FastenerView) -> Caption {
    let mut description = "A screw in its clearance hole.".to_owned();
    for Dimension { label, mm, inch, .. } in fastener_dimensions(view) {
        description.push_str(&format!(" {label}: {mm} ({inch})."));
    }
    let screw = print::mm(view.screw, 3);
    Caption {
        title: format!("{screw} screw, its head and its clearance hole"),
        description: format!("{description} {}", notes(view).join(" ")),
    }
}
