//! `/materials`: the metals and plastics, with how much thread each asks for.

use askama::Template;

use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit};
use holewright_core::calc::aim::base_percent;
use holewright_core::tables::materials::{self, Family, Material};
use holewright_core::units::print;
use holewright_core::units::print::sentence as sentence_case;

/// The marks of a material in the list: a row on a telephone has room for these. The usual ones
/// stand first in the tables.
const MARKS: usize = 2;

#[derive(Template)]
#[template(path = "materials/index.html")]
struct MaterialsPage {
    frame: Frame,
    families: Vec<Kin>,
    count: usize,
}

/// The materials of one family.
struct Kin {
    id: String,
    name: String,
    rows: Vec<Row>,
}

struct Row {
    id: &'static str,
    link: Link,
    marks: Vec<&'static str>,
    aim: String,
}

/// The list of materials.
pub(crate) fn index(visit: &Visit<'_>) -> Reply {
    let description = "The metals and plastics of the workshop: speeds, lubricants, tapping and what to watch for.";
    let frame = Frame::new(visit, Section::Materials, "Materials", description);
    Reply::html(200, &MaterialsPage { frame, families: families(), count: materials::all().len() })
}

/// Families in the order of the list, each with its materials.
fn families() -> Vec<Kin> {
    let kin = |(family, materials): (Family, Vec<&'static Material>)| {
        let name = family.to_string();
        // No material's address has this form: the ids of families and rows stand on one page.
        let id = format!("family-{}", name.replace(' ', "-"));
        Kin { id, name: sentence_case(&name), rows: materials.into_iter().map(row).collect() }
    };
    materials::by_family().into_iter().map(kin).collect()
}

fn row(material: &'static Material) -> Row {
    Row {
        id: material.slug,
        link: Link::material(material),
        marks: material.designations.iter().take(MARKS).map(|known| known.mark).collect(),
        aim: match material.refused {
            Some(_) => "none".to_owned(),
            None => print::trimmed(base_percent(material.group), 0),
        },
    }
}
