//! `/materials/{slug}`: one material – how much thread, how fast, what to put on it, what to watch for.

use askama::Template;

use super::names::{Marks, marks};
use super::properties::{PropertyRow, rows};
use super::speeds::{DrillRow, PrintedSpeed, printed, usual};
use crate::cited::Cited;
use crate::drawer::Notice;
use crate::field::Field;
use crate::form::sentence_case;
use crate::layout::{Frame, Section};
use crate::plan::short_form_in;
use crate::warnings::{WarningGroup, by_level};
use crate::{Answer, Visit, not_found, query};
use holewright_core::calc::aim::base_percent;
use holewright_core::plan::Level;
use holewright_core::tables::materials::{self, FormingTap, Material, PressureWork, read};
use holewright_core::units::print;

#[derive(Template)]
#[template(path = "materials/show.html")]
struct MaterialPage {
    frame: Frame,
    name: String,
    also: String,
    marks: Vec<Marks>,
    /// Why it is not to be cut: it then stands in the place of every figure for doing so.
    refused: Option<Cited>,
    met_in: Vec<Cited>,
    aim: String,
    group: String,
    drills: Vec<DrillRow>,
    /// The speed calculator with this metal chosen.
    speeds: String,
    drilling: Vec<PrintedSpeed>,
    reaming: Vec<PrintedSpeed>,
    tapping: Vec<PrintedSpeed>,
    properties: Vec<PropertyRow>,
    drilling_lubricant: Cited,
    tapping_lubricant: Cited,
    back_off: Cited,
    forming: &'static str,
    drill_advice: Vec<Cited>,
    tap_advice: Vec<Cited>,
    behaviour: Vec<Cited>,
    not_for: Vec<Cited>,
    salvage: Vec<Cited>,
    warnings: Vec<WarningGroup>,
    broken_tap: Vec<Cited>,
    inspector: bool,
    plan_fields: Vec<Field>,
}

/// One material. An alias or another name is sent on to its own address.
pub(crate) fn show(visit: &Visit<'_>, slug: &str) -> Answer {
    match materials::find(slug) {
        Some(material) if material.slug == slug => Answer::html(200, &page(visit, material)),
        Some(material) => Answer::moved(&material.path()),
        None => match read::read(&slug.replace('-', " ")) {
            Ok(material) => Answer::moved(&material.path()),
            Err(_) => not_found::near(visit, slug),
        },
    }
}

fn page(visit: &Visit<'_>, material: &'static Material) -> MaterialPage {
    let name = sentence_case(material.name);
    let aim = print::trimmed(base_percent(material.group), 0);
    let drilling = printed(material.drilling);
    let speed =
        drilling.first().map_or_else(String::new, |speed| format!("drill at {}, ", speed.range));
    let (title, description) = match material.refused {
        Some(refused) => (format!("{name}: leave it alone"), refused.text.to_owned()),
        None => (
            format!("{name}: {speed}aim at {aim} % of thread"),
            format!("{name}: {}", material.drilling_lubricant.text),
        ),
    };
    let cited = |advice: &[_]| advice.iter().map(Cited::advice).collect();
    let at = |level| move |advice| (level, Cited::advice(advice));
    let dangers = material.dangers.iter().map(at(Level::Danger));
    let cautions = material.cautions.iter().map(at(Level::Caution));
    MaterialPage {
        frame: Frame::new(visit, Section::Materials, &title, &description)
            .with_drawer(Notice::of_speeds(visit.drawer())),
        also: material.known_as.join(", "),
        marks: marks(material),
        refused: material.refused.as_ref().map(Cited::advice),
        met_in: cited(material.met_in),
        aim,
        group: material.group.to_string(),
        drills: usual(material, visit.drawer()),
        speeds: query::address("/calculators/speeds", [("material", material.slug)]),
        drilling,
        reaming: printed(material.reaming),
        properties: rows(material.properties),
        tapping: printed(material.tapping),
        drilling_lubricant: Cited::advice(&material.drilling_lubricant),
        tapping_lubricant: Cited::advice(&material.tapping_lubricant),
        back_off: Cited::advice(&material.back_off),
        forming: match material.forming_tap {
            FormingTap::Suits => "A forming tap may be used, on 60° threads.",
            FormingTap::Refuse => "No forming tap: cut the thread.",
        },
        drill_advice: cited(material.drill_advice),
        tap_advice: cited(material.tap_advice),
        behaviour: cited(material.behaviour),
        not_for: cited(material.not_for),
        salvage: cited(material.salvage),
        warnings: by_level(dangers.chain(cautions)),
        broken_tap: cited(material.broken_tap.advice()),
        inspector: material.pressure_work == PressureWork::Plausible,
        plan_fields: short_form_in(material),
        name,
    }
}
