//! What the browser of whoever writes a note knows of their shed, offered in the form: the machine that was typed
//! last, the machines and the drills of their drawer, and which of these the plan takes for the note's thread.

use std::convert::Infallible;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;

use super::last_machine;
use crate::extract::Personal;
use crate::rules::notes::belongs::{self, Group, Thing};
use crate::rules::notes::wording::Typed;
use holewright_core::plan::{AtHand as Drills, HoleSpec, Plan, build_either};
use holewright_core::tables::drills::Drill;
use holewright_core::tables::{materials, threads};
use holewright_pages::drawer::{Carried, Drawer};
use holewright_pages::field::Field;

/// The fields that something is offered for.
const MACHINE: &str = last_machine::FIELD;
const DRILL: &str = "drill";

/// What the browser knows.
#[derive(Clone, Debug, Default)]
pub struct AtHand {
    drawer: Carried,
    /// The machine that was typed last.
    pub(super) machine: Option<String>,
}

impl<S: Sync> FromRequestParts<S> for AtHand {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let personal = parts.extensions.get::<Personal>();
        let drawer = personal.map(|Personal(drawer)| drawer.clone()).unwrap_or_default();
        Ok(Self { drawer, machine: last_machine::read(&parts.headers) })
    }
}

impl AtHand {
    /// The fields with what a drawer in use offers for them.
    pub(super) fn offered(&self, fields: Vec<Field>, typed: &Typed) -> Vec<Field> {
        let Some(drawer) = self.drawer.in_use() else { return fields };
        let offer = |field: Field| match field.name {
            MACHINE => self.machines(drawer, field),
            DRILL => drills(drawer, field, typed),
            _ => field,
        };
        fields.into_iter().map(offer).collect()
    }

    /// The machine of last time, then those of the drawer. What a browser offers is only seen in an empty field: the
    /// words below the label say it too.
    fn machines(&self, drawer: &Drawer, field: Field) -> Field {
        let each = drawer.speeds.machines().each.iter();
        let names: Vec<String> = each.filter_map(|machine| machine.name.clone()).collect();
        if names.is_empty() {
            return field;
        }
        let hint = format!("In your drawer: {}", names.join(", "));
        let mut offered: Vec<String> = self.machine.iter().cloned().collect();
        offered.extend(names.into_iter().filter(|name| Some(name) != self.machine.as_ref()));
        Field { hint: hint.into(), ..field.offering(offered) }
    }
}

/// The drills of the drawer by size; before them the one that the plan takes of them.
fn drills(drawer: &Drawer, field: Field, typed: &Typed) -> Field {
    let held = drawer.drills.held();
    let Some((drill, hole)) = planned(held, typed) else {
        return field.offering(held.iter().map(|drill| drill.label.clone()).collect());
    };
    let others = held.iter().filter(|held| held.label != drill.label);
    let offered = std::iter::once(drill).chain(others.copied()).map(|drill| drill.label.clone());
    let hint = format!("{}. Of your drawer the plan takes {} for {hole}.", field.hint, drill.label);
    Field { hint: hint.into(), ..field.offering(offered.collect()) }
}

/// The drill that the plan takes of these for the thread and the metal of the note, if it has both and one will do.
fn planned(held: &[&'static Drill], typed: &Typed) -> Option<(&'static Drill, String)> {
    if held.is_empty() {
        return None;
    }
    let on = belongs::list(&typed.on).unwrap_or_default();
    let thing = |group: Group, field: &str| -> Option<Thing> {
        let typed = typed.done.text(field);
        // What is typed and not read is another thread than the page the note is on.
        if !typed.trim().is_empty() {
            return group.named(typed);
        }
        on.iter().find(|thing| group.holds(thing)).cloned()
    };
    let thread = thing(Group::Threads, "thread")?;
    let material = thing(Group::Materials, "material")?;
    let (system, size) = thread.id.strip_prefix("threads/")?.split_once('/')?;
    let mut spec = HoleSpec::new(
        threads::find(system, size)?,
        materials::find(material.id.strip_prefix("materials/")?)?,
    );
    spec.at_hand = Drills::Only(held.to_vec());
    let drill = match build_either(&spec).ok()? {
        Plan::Parallel(plan) => plan.tapping.planned().drill,
        Plan::Taper(plan) => plan.drill?,
    };
    let metal = belongs::in_words(std::slice::from_ref(&material));
    let drill = held.iter().find(|held| held.label == drill.label)?;
    Some((drill, format!("{} in {metal}", thread.title)))
}
