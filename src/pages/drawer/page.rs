//! `/drawer`: what is in it, the form that fills it, and the buttons that switch it off or empty it.

use askama::Template;

use super::carried::Carried;
use super::contents::{Drawer, LONGEST};
use super::sets::{DRILL_SETS, TAP_SETS};
use super::typed::Typed;
use crate::field::{Field, Kind, items};
use crate::layout::{Frame, Section};
use crate::{FieldError, Reply, Visit};

#[derive(Template)]
#[template(path = "drawer/show.html")]
struct DrawerPage {
    frame: Frame,
    errors: Vec<FieldError>,
    /// What the browser holds cannot be read.
    unreadable: bool,
    held: Option<Held>,
    groups: Vec<FieldGroup>,
    most: usize,
}

/// What is in the drawer that is kept.
struct Held {
    on: bool,
    rows: Vec<(&'static str, String)>,
    weight: usize,
}

/// Fields under one heading.
struct FieldGroup {
    heading: &'static str,
    fields: Vec<Field>,
}

/// The page.
pub(crate) fn show(visit: &Visit<'_>) -> Reply {
    let description = "What you own: drills, taps, reamers and machine speeds. Pages then choose from it. Kept on your device, no account needed.";
    let frame = Frame::new(visit, Section::None, "My drawer", description);
    Reply::html(200, &page(visit, frame, &Typed::of(&visit.context.drawer), Vec::new()))
}

/// The page over what was sent and could not be used.
pub(super) fn refuse(visit: &Visit<'_>, typed: &Typed, errors: Vec<FieldError>) -> Reply {
    let description = "Something could not be used; everything typed is kept.";
    let frame = Frame::new(visit, Section::None, "Error: my drawer", description).of_a_mistake();
    Reply::html(422, &page(visit, frame, typed, errors))
}

fn page(visit: &Visit<'_>, frame: Frame, typed: &Typed, errors: Vec<FieldError>) -> DrawerPage {
    let carried = &visit.context.drawer;
    DrawerPage {
        frame,
        unreadable: *carried == Carried::Unreadable,
        held: carried.drawer().map(held),
        groups: groups(typed, &errors),
        errors,
        most: LONGEST,
    }
}

fn held(drawer: &Drawer) -> Held {
    let drills = drawer.drills.held().len();
    let taps = drawer.taps.held().len();
    let count = |words: String, count: usize| match (words.as_str(), count) {
        ("", _) => words,
        (_, 1) => format!("{words} (1 in all)"),
        _ => format!("{words} ({count} in all)"),
    };
    let rows = [
        ("Drills", count(drawer.drills.words(), drills)),
        ("Taps", count(drawer.taps.words(), taps)),
        ("Reamers", drawer.reamers.words()),
        ("Machine speeds, rev/min", drawer.speeds.text()),
    ];
    let rows = rows.into_iter().filter(|(_, words)| !words.is_empty()).collect();
    Held { on: drawer.on, rows, weight: drawer.weight() }
}

fn groups(typed: &Typed, errors: &[FieldError]) -> Vec<FieldGroup> {
    let drill_sets = DRILL_SETS.iter().map(|set| (set.item, set.label));
    let tap_sets = TAP_SETS.iter().map(|set| (set.item, set.words));
    let groups = [
        (
            "Drills",
            vec![
                ticks("drill_set", "Sets of drills", &typed.drill_sets, drill_sets),
                Field::text(
                    "drills",
                    "Other drills",
                    "A list, with ranges where there are many: No. 46, 2.05mm, 7/64, 3-5x0.5mm",
                    &typed.drills,
                ),
            ],
        ),
        (
            "Taps",
            vec![
                ticks("tap_set", "Sets of taps", &typed.tap_sets, tap_sets),
                Field::text(
                    "taps",
                    "Other taps",
                    "A list of threads: 7 BA, 1/4 x 40 ME, M3 x 0.35, M6 LH",
                    &typed.taps,
                ),
            ],
        ),
        (
            "Reamers and machines",
            vec![
                Field::text(
                    "reamers",
                    "Reamers",
                    "A list of sizes, in mm if no unit: 3, 1/8 in, 6 mm",
                    &typed.reamers,
                ),
                Field::text(
                    "speeds",
                    "Machine speeds",
                    "In rev/min: 350, 500, 1000; or 200-2000 for any between. Several machines by name, the one you would sooner use first: lathe: 350, 500, 1000; bench drill: 600-2000",
                    &typed.speeds,
                ),
            ],
        ),
    ];
    let judge = |field: Field| field.judged(errors, |_, _| "/drawer".to_owned());
    groups
        .into_iter()
        .map(|(heading, fields)| FieldGroup {
            heading,
            fields: fields.into_iter().map(judge).collect(),
        })
        .collect()
}

/// Sets to tick; the first has the field's own id, so that an error's link finds it.
fn ticks(
    name: &'static str,
    label: &'static str,
    ticked: &[String],
    sets: impl Iterator<Item = (&'static str, &'static str)>,
) -> Field {
    let choices =
        sets.map(|(item, words)| (item, words, ticked.iter().any(|ticked| ticked == item)));
    Field::new(name, label, "Tick the sets you have", Kind::Ticks(items(choices)))
}
