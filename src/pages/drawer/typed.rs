//! The form that fills a drawer, as it was typed and ticked.

use form_urlencoded::parse;

use super::carried::Carried;
use super::contents::{Drawer, LONGEST};
use super::reading::{Drills, Reamers, Speeds, Taps};
use super::sets::{DRILL_SETS, TAP_SETS};
use crate::FieldError;
use holewright_core::tables::drills::owned::in_millimetres;

/// Everything that was typed and ticked.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Typed {
    pub(super) drill_sets: Vec<String>,
    pub(super) drills: String,
    pub(super) tap_sets: Vec<String>,
    pub(super) taps: String,
    pub(super) reamers: String,
    pub(super) speeds: String,
    /// Which button.
    pub(super) act: String,
}

impl Typed {
    /// Reads a form. Never fails: bytes that are no text become the replacement character.
    pub(super) fn read(form: &[u8]) -> Self {
        let mut typed = Self::default();
        for (name, value) in parse(form) {
            let value = value.trim();
            match name.as_ref() {
                "drill_set" => typed.drill_sets.push(value.to_owned()),
                "drills" => value.clone_into(&mut typed.drills),
                "tap_set" => typed.tap_sets.push(value.to_owned()),
                "taps" => value.clone_into(&mut typed.taps),
                "reamers" => value.clone_into(&mut typed.reamers),
                "speeds" => value.clone_into(&mut typed.speeds),
                "act" => value.clone_into(&mut typed.act),
                _ => {}
            }
        }
        typed
    }

    /// A drawer as its form is filled.
    pub(super) fn of(carried: &Carried) -> Self {
        carried.drawer().map_or_else(Self::default, |drawer| Self {
            drill_sets: drawer.drills.sets().map(|set| set.item.to_owned()).collect(),
            drills: drawer.drills.singles(),
            tap_sets: drawer.taps.sets().map(|set| set.item.to_owned()).collect(),
            taps: drawer.taps.singles(),
            reamers: drawer.reamers.text(),
            speeds: drawer.speeds.text(),
            act: String::new(),
        })
    }

    /// The drawer that it makes, switched on or off.
    ///
    /// # Errors
    /// The fields that make none.
    pub(super) fn drawer(&self, on: bool) -> Result<Drawer, Vec<FieldError>> {
        let mut errors = Vec::new();
        // Bare sizes that are all millimetres are kept with their unit: beside a set they would be asked.
        let singles = in_millimetres(&self.drills).unwrap_or_else(|| self.drills.clone());
        let drills = joined(&self.drill_sets, &singles);
        let taps = joined(&self.tap_sets, &self.taps);
        let drawer = Drawer {
            drills: kept(&mut errors, "drills", Drills::read(&drills)),
            taps: kept(&mut errors, "taps", Taps::read(&taps)),
            reamers: kept(&mut errors, "reamers", Reamers::read(&self.reamers)),
            speeds: kept(&mut errors, "speeds", Speeds::read(&self.speeds)),
            on,
        };
        for (field, ticked, known) in [
            ("drill_set", &self.drill_sets, DRILL_SETS.map(|set| set.item).as_slice()),
            ("tap_set", &self.tap_sets, TAP_SETS.map(|set| set.item).as_slice()),
        ] {
            if ticked.iter().any(|item| !known.contains(&item.as_str())) {
                errors.push(FieldError::new(field, "A set was sent that is not one of these."));
            }
        }
        if errors.is_empty() && drawer.weight() > LONGEST {
            errors.push(too_much(&drawer));
        }
        if errors.is_empty() { Ok(drawer) } else { Err(errors) }
    }
}

/// The error at the part that takes most room.
fn too_much(drawer: &Drawer) -> FieldError {
    let parts = [
        ("drills", drawer.drills.text()),
        ("taps", drawer.taps.text()),
        ("reamers", drawer.reamers.text()),
        ("speeds", drawer.speeds.text()),
    ];
    let longest = parts.iter().max_by_key(|(_, text)| text.len());
    let field = longest.map_or("drills", |(field, _)| *field);
    let weight = drawer.weight();
    FieldError::new(
        field,
        format!(
            "The drawer takes {weight} bytes written out, and {LONGEST} are the most. Write ranges for single drills, 1-60 or 1-6x0.1mm, and tick the sets you have."
        ),
    )
}

fn kept<T: Default>(
    errors: &mut Vec<FieldError>,
    field: &'static str,
    read: Result<T, String>,
) -> T {
    read.unwrap_or_else(|message| {
        errors.push(FieldError::new(field, message));
        T::default()
    })
}

fn joined(sets: &[String], typed: &str) -> String {
    let sets = sets.iter().map(String::as_str);
    sets.chain([typed]).collect::<Vec<_>>().join("; ")
}
