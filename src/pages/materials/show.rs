//! `/materials/{slug}`: one material – how much thread, how fast, what to put on it, what to watch for.

use askama::Template;

use super::names::{Marks, marks};
use super::properties::{PropertyRow, rows};
use super::speeds::{DrillRow, PrintedSpeed, printed, usual};
use super::telling::{Telling, telling};
use crate::cited::Cited;
use crate::drawer::Notice;
use crate::field::Field;
use crate::layout::{Frame, Section};
use crate::plan::short_form_in;
use crate::warnings::{WarningGroup, by_level};
use crate::{Reply, Visit, not_found, query};
use holewright_core::calc::aim::base_percent;
use holewright_core::plan::Level;
use holewright_core::tables::materials::{self, FormingTap, Material, PressureWork, read};
use holewright_core::units::print;
use holewright_core::units::print::sentence as sentence_case;

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
    telling: Telling,
    warnings: Vec<WarningGroup>,
    broken_tap: Vec<Cited>,
    inspector: bool,
    plan_fields: Vec<Field>,
}

/// One material. An alias or another name is sent on to its own address.
pub(crate) fn show(visit: &Visit<'_>, slug: &str) -> Reply {
    match materials::find(slug) {
        Some(material) if material.slug == slug => Reply::html(200, &page(visit, material)),
        Some(material) => Reply::moved(&material.path()),
        None => match read::read(&slug.replace('-', " ")) {
            Ok(material) => Reply::moved(&material.path()),
            Err(_) => not_found::near(visit, slug),
        },
    }
}

fn page(visit: &Visit<'_>, material: &'static Material) -> MaterialPage {
    // Field by field, so that what a material gains does not compile before it has a place here.
    let &Material {
        slug,
        name,
        aliases: _,
        known_as,
        designations: _,
        met_in,
        refused,
        group,
        family: _,
        chips: _,
        grabs: _,
        work_hardens: _,
        closes_in: _,
        properties,
        drilling,
        tapping,
        reaming,
        feeds: _,
        drilling_lubricant,
        tapping_lubricant,
        back_off,
        drill_advice,
        tap_advice,
        forming_tap,
        broken_tap,
        pressure_work,
        behaviour,
        not_for,
        salvage,
        cautions,
        dangers,
    } = material;
    let name = sentence_case(name);
    let aim = print::trimmed(base_percent(group), 0);
    let drilling = printed(drilling);
    let speed =
        drilling.first().map_or_else(String::new, |speed| format!("drill at {}, ", speed.range));
    let (title, description) = match refused {
        Some(refused) => (format!("{name}: leave it alone"), refused.text.to_owned()),
        None => (
            format!("{name}: {speed}aim at {aim} % of thread"),
            format!("{name}: {}", drilling_lubricant.text),
        ),
    };
    let cited = |advice: &[_]| advice.iter().map(Cited::advice).collect();
    let at = |level| move |advice| (level, Cited::advice(advice));
    let dangers = dangers.iter().map(at(Level::Danger));
    let cautions = cautions.iter().map(at(Level::Caution));
    MaterialPage {
        frame: Frame::new(visit, Section::Materials, &title, &description)
            .with_drawer(Notice::of_speeds(visit.drawer())),
        also: known_as.join(", "),
        marks: marks(material),
        refused: refused.as_ref().map(Cited::advice),
        met_in: cited(met_in),
        aim,
        group: group.to_string(),
        drills: usual(material, visit.drawer()),
        speeds: query::address("/calculators/speeds", [("material", slug)]),
        drilling,
        reaming: printed(reaming),
        properties: rows(properties),
        tapping: printed(tapping),
        drilling_lubricant: Cited::advice(&drilling_lubricant),
        tapping_lubricant: Cited::advice(&tapping_lubricant),
        back_off: Cited::advice(&back_off),
        forming: match forming_tap {
            FormingTap::Suits => "A forming tap may be used, on 60° threads.",
            FormingTap::Refuse => "No forming tap: cut the thread.",
        },
        drill_advice: cited(drill_advice),
        tap_advice: cited(tap_advice),
        behaviour: cited(behaviour),
        not_for: cited(not_for),
        salvage: cited(salvage),
        telling: telling(material),
        warnings: by_level(dangers.chain(cautions)),
        broken_tap: cited(broken_tap.advice()),
        inspector: pressure_work == PressureWork::Plausible,
        plan_fields: short_form_in(material),
        name,
    }
}
