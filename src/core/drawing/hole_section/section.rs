//! What a section through a tapped hole shows, and its dimensions as text.
//!
//! Leaves out how it is laid out ([`super::axial`]) and drawn ([`super::hole_section`]).

use crate::drawing::Dimension;
use crate::plan::{Hole, HolePlan};
use crate::tables::drills::{Drill, Series};
use crate::units::{Angle, Length};

/// A tapped hole, complete enough to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// The thread as the trade writes it: `5 BA`.
    pub designation: String,
    /// Major diameter of the thread.
    pub major: Length,
    /// The hole that is tapped.
    pub tapping: Drilled,
    /// Included angle of the drill's point.
    pub point_angle: Angle,
    /// What is at the far end.
    pub bottom: Bottom,
    /// The part screwed down on top, in a two-part plan.
    pub upper: Option<Upper>,
}

/// A drilled hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Drilled {
    /// Its diameter.
    pub diameter: Length,
    /// The drill's name where that is more than its size in millimetres: `No. 36`.
    pub name: Option<String>,
}

/// The far end of the hole. A depth or thickness that was not given is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bottom {
    /// Open.
    Through {
        /// Thickness of the tapped part.
        thickness: Option<Length>,
    },
    /// Stopped.
    Blind {
        /// Depths from the tapped part's face.
        depths: Option<BlindDepths>,
        /// Thickness of the tapped part.
        part_thickness: Option<Length>,
    },
}

/// Depths of a blind hole from the tapped part's face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BlindDepths {
    /// Length of full thread.
    pub full_thread: Length,
    /// To the end of the full diameter of the drill.
    pub drill_full_diameter: Length,
    /// To the tip of the drill's point.
    pub drill_to_point: Length,
}

/// The part screwed down.
#[derive(Clone, Debug, PartialEq)]
pub struct Upper {
    /// Its thickness, where known.
    pub thickness: Option<Length>,
    /// The clearance hole in it.
    pub clearance: Drilled,
}

/// Every dimension the drawing of a section shows, from the top of the drawing down.
///
/// # Examples
/// ```
/// use holewright_core::drawing::{Bottom, Drilled, Section, dimensions};
/// use holewright_core::units::{degrees, mm};
/// let section = Section {
///     designation: "M6".into(),
///     major: mm(6.0),
///     tapping: Drilled { diameter: mm(5.0), name: None },
///     point_angle: degrees(118.0),
///     bottom: Bottom::Through { thickness: Some(mm(10.0)) },
///     upper: None,
/// };
/// let drawn: Vec<String> = dimensions(&section).iter().map(|dimension| dimension.drawn()).collect();
/// assert_eq!(drawn, ["M6 major diameter ⌀6 mm", "thickness 10 mm", "tapping size ⌀5 mm"]);
/// ```
#[must_use]
pub fn dimensions(section: &Section) -> Vec<Dimension> {
    let mut dimensions = Vec::new();
    if let Some(upper) = &section.upper {
        dimensions.push(clearance(upper));
    }
    dimensions.push(thread(section));
    dimensions.extend(levels(section).into_iter().map(|level| level.dimension));
    dimensions.push(tapping(section));
    dimensions
}

pub(super) fn thread(section: &Section) -> Dimension {
    Dimension::diameter(format!("{} major diameter", section.designation), section.major)
}

pub(super) fn tapping(section: &Section) -> Dimension {
    drilled("tapping size", &section.tapping)
}

pub(super) fn clearance(upper: &Upper) -> Dimension {
    drilled("clearance", &upper.clearance)
}

/// A depth that was given.
pub(super) struct GivenDepth {
    /// What it is measured to.
    pub(super) mark: Mark,
    /// From the tapped part's face, downwards.
    pub(super) depth: Length,
    pub(super) dimension: Dimension,
}

/// What a depth is measured to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    UpperFace,
    Face,
    FullThread,
    FullDiameter,
    Point,
    FarFace,
}

/// The depths that were given.
pub(super) fn levels(section: &Section) -> Vec<GivenDepth> {
    let mut levels = Vec::new();
    let mut level = |mark, depth, dimension| levels.push(GivenDepth { mark, depth, dimension });
    if let Some(thickness) = section.upper.as_ref().and_then(|upper| upper.thickness) {
        let dimension = Dimension::length("upper part", thickness);
        level(Mark::UpperFace, -thickness, dimension);
    }
    let thickness = match section.bottom {
        Bottom::Through { thickness } => thickness,
        Bottom::Blind { depths, part_thickness } => {
            if let Some(depths) = depths {
                let BlindDepths { full_thread, drill_full_diameter, drill_to_point } = depths;
                let dimension = Dimension::length("full thread", full_thread);
                level(Mark::FullThread, full_thread, dimension);
                let dimension = Dimension::depth("drill to full diameter", drill_full_diameter);
                level(Mark::FullDiameter, drill_full_diameter, dimension.shown_as("drill"));
                let dimension = Dimension::depth("drill to point", drill_to_point);
                level(Mark::Point, drill_to_point, dimension.shown_as("to point"));
            }
            part_thickness
        }
    };
    if let Some(thickness) = thickness {
        level(Mark::FarFace, thickness, Dimension::length("thickness", thickness));
    }
    levels
}

fn drilled(what: &str, hole: &Drilled) -> Dimension {
    let label = match &hole.name {
        Some(name) => format!("{what} {name}"),
        None => what.to_owned(),
    };
    Dimension::diameter(label, hole.diameter)
}

impl From<&HolePlan<'_>> for Section {
    fn from(plan: &HolePlan<'_>) -> Self {
        let spec = plan.spec;
        let depths = plan.depths;
        let bottom = match spec.hole {
            Hole::Through => Bottom::Through {
                thickness: spec.depth.or(spec.part_thickness).or(depths.full_thread),
            },
            Hole::Blind => Bottom::Blind {
                depths: blind_depths(depths.full_thread, depths.stop, depths.set_to_point()),
                part_thickness: spec.part_thickness,
            },
        };
        Self {
            designation: spec.thread.designation.to_owned(),
            major: plan.geometry.major,
            tapping: Drilled::with(plan.tapping.planned().drill),
            point_angle: spec.point_angle,
            bottom,
            upper: spec.over.map(|over| Upper {
                thickness: over.thickness,
                clearance: plan.clearance.drill.map_or_else(
                    || Drilled { diameter: plan.clearance.hole.hole, name: None },
                    Drilled::with,
                ),
            }),
        }
    }
}

fn blind_depths(
    full_thread: Option<Length>,
    drill_full_diameter: Option<Length>,
    drill_to_point: Option<Length>,
) -> Option<BlindDepths> {
    Some(BlindDepths {
        full_thread: full_thread?,
        drill_full_diameter: drill_full_diameter?,
        drill_to_point: drill_to_point?,
    })
}

impl Drilled {
    /// The hole a drill is meant to leave.
    #[must_use]
    pub fn with(drill: &Drill) -> Self {
        let name = (drill.series != Series::Metric).then(|| drill.label.clone());
        Self { diameter: drill.diameter, name }
    }
}
