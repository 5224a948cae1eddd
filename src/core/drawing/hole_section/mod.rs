//! A tapped hole cut through its axis, dimensioned: through, blind, or with a part on top.
//!
//! Depths are running dimensions (ISO 129-1): all measured from the open circle at the tapped part's
//! face, each ending at its arrowhead with its figure beside it. The thread is drawn by the convention
//! of ISO 6410-1: crests thick, roots thin, the end of full thread a thick line. Leaves out the screw.

mod axial;
mod metal;
mod running;
pub(super) mod scale_bar;
mod section;
mod sheet;

pub use section::{BlindDepths, Bottom, Drilled, Section, Upper, dimensions};

use crate::drawing::DrawingIds;
use crate::drawing::dimension::DimensionLines;
use crate::drawing::frame::{self, Caption, LINE, MARGIN};
use crate::drawing::svg::Element;
use crate::plan::HolePlan;
use crate::units::{in_degrees, mm, print};
use axial::Broken;
use sheet::Sheet;

/// The section of a plan's hole, as one SVG document.
#[must_use]
pub fn hole_section(plan: &HolePlan<'_>, ids: DrawingIds<'_>) -> String {
    draw(&Section::from(plan), ids)
}

/// A section, as one SVG document.
#[must_use]
pub fn draw(section: &Section, ids: DrawingIds<'_>) -> String {
    let sheet = Sheet::lay_out(section);
    let mut parts = metal::metal(&sheet);
    let mut dimensions = DimensionLines::default();
    running::top_row(&sheet, &mut dimensions);
    let used = running::depths(&sheet, &mut dimensions);
    let bar_top = running::bottom_row(&sheet, &mut dimensions, used) + LINE;
    parts.extend(dimensions.elements());
    parts.extend(scale_bar::scale_bar(sheet.axial.scale.of(mm(1.0)), MARGIN, bar_top));
    let notes = notes(sheet.axial.broken());
    let mut height = bar_top + LINE * 0.7;
    let mut lettering = Vec::new();
    for note in &notes {
        height += LINE;
        let text = Element::new("text").with("x", MARGIN).with("y", height);
        lettering.push(text.text(*note));
    }
    if !lettering.is_empty() {
        parts.push(frame::lettering("note ink", lettering));
    }
    frame::sheet(ids, (height + MARGIN).ceil(), caption(section, &notes), parts)
}

fn notes(broken: Broken) -> Vec<&'static str> {
    let mut notes = Vec::new();
    if broken.too_long {
        notes.push("Cut short at the break: not to scale there.");
    }
    if broken.unknown {
        notes.push("Broken where a length was not given.");
    }
    notes
}

fn caption(section: &Section, notes: &[&str]) -> Caption {
    let name = &section.designation;
    let hole = match section.bottom {
        Bottom::Through { .. } => "through hole",
        Bottom::Blind { .. } => "blind hole",
    };
    let on_top = if section.upper.is_some() { ", with a part on top" } else { "" };
    let mut description = format!("Section through the axis of a {hole} tapped {name}{on_top}.");
    for dimension in dimensions(section) {
        let (label, mm, inch) = (dimension.label, dimension.mm, dimension.inch);
        description.push_str(&format!(" {label}: {mm} ({inch})."));
    }
    if matches!(section.bottom, Bottom::Blind { .. }) {
        let angle = print::trimmed(in_degrees(section.point_angle), 1);
        description.push_str(&format!(" The drill's point is {angle}°."));
    }
    description.push_str(" Depths are from the face of the tapped part, which is chamfered.");
    for note in notes {
        description.push(' ');
        description.push_str(note);
    }
    Caption { title: format!("{name}, {hole} in section{on_top}"), description }
}
