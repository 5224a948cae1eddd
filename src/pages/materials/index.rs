//! `/materials`: the metals and plastics, with how much thread each asks for.

use askama::Template;

use crate::calc::aim::base_percent;
use crate::pages::form::sentence_case;
use crate::pages::layout::{Door, Frame};
use crate::pages::link::Link;
use crate::pages::{Answer, Visit};
use crate::tables::materials::{self, Material};
use crate::units::print;

#[derive(Template)]
#[template(path = "materials/index.html")]
struct MaterialsPage {
    frame: Frame,
    rows: Vec<Row>,
}

struct Row {
    id: &'static str,
    link: Link,
    designations: String,
    aim: String,
    group: String,
}

/// The list of materials.
pub(in crate::pages) fn index(visit: &Visit<'_>) -> Answer {
    let description = "The metals and plastics of the workshop: speeds, lubricants, tapping and what to watch for.";
    let frame = Frame::new(visit, Door::Materials, "Materials", description);
    let rows = materials::all().iter().map(row).collect();
    Answer::html(200, &MaterialsPage { frame, rows })
}

fn row(material: &'static Material) -> Row {
    let designations: Vec<&str> =
        material.designations.iter().map(|designation| designation.mark).collect();
    Row {
        id: material.slug,
        link: Link::material(material),
        designations: designations.join(", "),
        aim: print::trimmed(base_percent(material.group), 0),
        group: sentence_case(&material.group.to_string()),
    }
}
