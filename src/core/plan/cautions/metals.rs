//! What each metal of a plan asks for, said under its name.

use super::say;
use crate::plan::{HoleSpec, Level, Warning};
use crate::tables::materials::{Advice, Material};
use crate::units::print;

pub(super) fn cautions(spec: &HoleSpec, found: &mut Vec<Warning>) {
    say_by_metal(spec, |material| material.cautions, Level::Caution, found);
    for material in each(spec).filter(|material| material.work_hardens) {
        say(
            found,
            Level::Caution,
            format!(
                "{} hardens under a rubbing drill: keep it cutting, never dwell.",
                print::sentence(material.name)
            ),
        );
    }
}

pub(super) fn each(spec: &HoleSpec) -> impl Iterator<Item = &'static Material> {
    let over = spec.over.map(|over| over.material).filter(|over| over.slug != spec.material.slug);
    std::iter::once(spec.material).chain(over)
}

/// Each metal's advice under its name; what two metals share is said once, under both.
pub(super) fn say_by_metal(
    spec: &HoleSpec,
    advice: impl Fn(&'static Material) -> &'static [Advice],
    level: Level,
    found: &mut Vec<Warning>,
) {
    let mut said: Vec<&str> = Vec::new();
    for text in each(spec).flat_map(&advice).map(|advice| advice.text) {
        if said.contains(&text) {
            continue;
        }
        said.push(text);
        let names: Vec<&str> = each(spec)
            .filter(|material| advice(material).iter().any(|advice| advice.text == text))
            .map(|material| material.name)
            .collect();
        say(
            found,
            level,
            format!("{}: {}", print::sentence(&names.join(" and ")), print::running(text)),
        );
    }
}
