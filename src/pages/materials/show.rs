//! `/materials/{slug}`: one material – how much thread, how fast, what to put on it, what to watch for.

use askama::Template;

use super::names::{Marks, marks};
use super::properties::{PropertyRow, rows};
use super::speeds::{DrillRow, PrintedSpeed, printed, range, usual};
use super::telling::{Telling, telling};
use crate::drawer::Notice;
use crate::field::Field;
use crate::key::{Key, KeyLine, PRACTICE, Sign, Signed};
use crate::layout::{Frame, Section};
use crate::plan::short_form_in;
use crate::rescue::broken_tap_in;
use crate::warnings::{WarningGroup, by_level};
use crate::{Reply, Visit, not_found, query};
use holewright_core::calc::aim::base_percent;
use holewright_core::plan::Level;
use holewright_core::tables::materials::{
    self, Advice, Caution, FormingTap, Material, PressureWork, read,
};
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
    refused: Option<Signed>,
    met_in: Vec<Signed>,
    aim: String,
    group: String,
    /// Where the aim comes from.
    aim_sign: Sign,
    drills: Vec<DrillRow>,
    /// The speed calculator with this metal chosen.
    speeds: String,
    drilling: Vec<PrintedSpeed>,
    reaming: Vec<PrintedSpeed>,
    tapping: Vec<PrintedSpeed>,
    properties: Vec<PropertyRow>,
    on_the_drill: Signed,
    on_the_tap: Signed,
    feed_when_slow: &'static str,
    drilling_lubricant: Signed,
    tapping_lubricant: Signed,
    back_off: Signed,
    forming: &'static str,
    drill_advice: Vec<Signed>,
    tap_advice: Vec<Signed>,
    behaviour: Vec<Signed>,
    not_for: Vec<Signed>,
    salvage: Vec<Signed>,
    telling: Telling,
    warnings: Vec<WarningGroup<Signed>>,
    broken_tap: Vec<Signed>,
    /// The page of a tap broken in it.
    rescue: String,
    inspector: bool,
    plan_fields: Vec<Field>,
    /// What the signs of the page stand for.
    key: Vec<KeyLine>,
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
        tapping: _,
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
    let mut key = Key::default();
    // What is said of the work stands on no page of a material that is not to be cut.
    let mut unsaid = Key::default();
    let speed =
        drilling.first().map_or_else(String::new, |speed| format!("drill at {}, ", range(speed)));
    let (title, description) = match refused {
        Some(refused) => (format!("{name}: leave it alone"), refused.text.to_owned()),
        None => (
            format!("{name}: {speed}aim at {aim} % of thread"),
            format!("{name}: {}", material.on_the_drill().text.to_lowercase()),
        ),
    };
    // In the order of the page, so that its signs run from a.
    let refused = refused.as_ref().map(|why| key.advice(why));
    let is_refused = refused.is_some();
    let shown_advice: &[_] = if is_refused { &[] } else { drill_advice };
    let already_said: Vec<&str> = shown_advice.iter().map(|advice| advice.text).collect();
    let of_work = if is_refused { &mut unsaid } else { &mut key };
    let aim_sign = of_work.sign(PRACTICE);
    let on_the_drill = of_work.advice(&material.on_the_drill());
    let on_the_tap = of_work.advice(&material.on_the_tap());
    let drilling_lubricant = of_work.advice(&drilling_lubricant);
    let tapping_lubricant = of_work.advice(&tapping_lubricant);
    let drill_advice = of_work.all(drill_advice);
    let back_off = of_work.advice(&back_off);
    let tap_advice = of_work.all(tap_advice);
    // What is said of the drill is not said again.
    let behaviour = behaviour.iter().filter(|said| !already_said.contains(&said.text));
    let behaviour = behaviour.map(|advice| key.advice(advice)).collect();
    let dangers = key.all(said(dangers)).into_iter().map(|danger| (Level::Danger, danger));
    let cautions = key.all(said(cautions)).into_iter().map(|caution| (Level::Caution, caution));
    let not_for = key.all(not_for);
    let met_in = key.all(met_in);
    let telling = telling(material, &mut key);
    let salvage = key.all(salvage);
    let broken_tap = if is_refused { &mut unsaid } else { &mut key }.all(broken_tap.advice());
    let marks = marks(material, &mut key);
    let properties = rows(properties, &mut key);
    let of_work = if is_refused { &mut unsaid } else { &mut key };
    let [drilling, reaming] = [drilling, reaming].map(|ranges| printed(ranges, of_work));
    let tapping = printed(material.tapping_gentlest_first(), of_work);
    MaterialPage {
        frame: Frame::new(visit, Section::Materials, &title, &description)
            .with_drawer(Notice::of_speeds(visit.drawer())),
        also: known_as.join(", "),
        refused,
        aim,
        group: group.to_string(),
        aim_sign,
        drills: usual(material, visit.drawer()),
        speeds: query::address("/calculators/speeds", [("material", slug)]),
        on_the_drill,
        on_the_tap,
        feed_when_slow: material.feed_when_slow(),
        drilling_lubricant,
        tapping_lubricant,
        back_off,
        forming: match forming_tap {
            FormingTap::Suits => "A forming tap may be used, on 60° threads.",
            FormingTap::Refuse => "No forming tap: cut the thread.",
        },
        drill_advice,
        tap_advice,
        behaviour,
        telling,
        warnings: by_level(dangers.chain(cautions)),
        inspector: pressure_work == PressureWork::Plausible,
        not_for,
        met_in,
        salvage,
        broken_tap,
        rescue: broken_tap_in(material, None),
        plan_fields: short_form_in(material),
        marks,
        properties,
        drilling,
        reaming,
        tapping,
        key: key.lines(),
        name,
    }
}

/// The words of cautions, whatever work they are for.
fn said(cautions: &[Caution]) -> impl Iterator<Item = &Advice> {
    cautions.iter().map(|caution| &caution.advice)
}
