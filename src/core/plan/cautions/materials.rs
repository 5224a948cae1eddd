//! What each material of a plan asks for in the work that the plan does, said under its name.

use super::{Found, Job, Place};
use crate::plan::{Action, Hole, HoleSpec, Level, Operation, Part, UpperHole};
use crate::tables::materials::{Caution, Material, Work};
use crate::units::{Length, mm, print};

/// A hole wider than this is worked up to. Common practice, no source.
const WIDE: Length = mm(8.0);

/// Whether a material is the one that is tapped, or the one on top.
fn parts(spec: &HoleSpec) -> impl Iterator<Item = (Part, &'static Material)> {
    let lower = std::iter::once((Part::Lower, spec.material));
    lower.chain(spec.over.map(|over| (Part::Upper, over.material)))
}

/// Each material of a plan, once.
pub(super) fn each(spec: &HoleSpec) -> impl Iterator<Item = &'static Material> {
    let over = spec.over.map(|over| over.material).filter(|over| over.slug != spec.material.slug);
    std::iter::once(spec.material).chain(over)
}

/// What the materials that are cut say of some work, each under its name; what two share is said once,
/// under both.
pub(super) fn by_name(spec: &HoleSpec, work: Work) -> Vec<(Level, String)> {
    let mut said = Saying::default();
    for (_, material) in parts(spec).filter(|(part, _)| is_drilled(spec, *part)) {
        for (level, caution) in stated(material).filter(|(_, caution)| caution.work == work) {
            said.add(Place::Standing, level, material, caution.advice.text);
        }
    }
    said.0.into_iter().map(|sentence| (sentence.level, sentence.words())).collect()
}

pub(super) fn cautions(job: &Job<'_>, found: &mut Found) {
    let mut said = Saying::default();
    for (part, material) in parts(job.spec) {
        for (level, caution) in stated(material) {
            if let Some(place) = place(job, part, level, caution) {
                said.add(place, level, material, caution.advice.text);
            }
        }
        if material.work_hardens && is_drilled(job.spec, part) {
            said.add(
                Place::Drilling,
                Level::Caution,
                material,
                "Hardens under a rubbing drill: keep it cutting, never dwell.",
            );
        }
    }
    for sentence in said.0 {
        found.say(sentence.place, sentence.level, sentence.words());
    }
}

fn stated(material: &'static Material) -> impl Iterator<Item = (Level, &'static Caution)> {
    let dangers = material.dangers.iter().map(|danger| (Level::Danger, danger));
    dangers.chain(material.cautions.iter().map(|caution| (Level::Caution, caution)))
}

/// Where a plan says a material's caution; nowhere, where it does not do that work.
fn place(job: &Job<'_>, part: Part, level: Level, caution: &Caution) -> Option<Place> {
    let spec = job.spec;
    let drilled = is_drilled(spec, part);
    let lower = part == Part::Lower;
    let opened = Place::At(Action::OpenOut, Part::Upper);
    match caution.work {
        Work::MarkingOut => drilled.then_some(Place::First(part)),
        Work::Popping if lower && spec.over.is_some() => Some(Place::At(Action::SpotThrough, part)),
        Work::Popping => Some(Place::At(Action::MarkOut, part)),
        Work::Drilling | Work::Fume | Work::Holding => drilled.then_some(Place::Drilling),
        Work::BreakThrough if lower => (spec.hole == Hole::Through).then_some(Place::Drilling),
        // It goes on into the lower part, and comes out when it is opened alone.
        Work::BreakThrough => drilled.then_some(opened),
        Work::Threads => lower.then_some(Place::Head),
        Work::OpeningOut if lower => is_worked_up(job).then_some(Place::Drilling),
        Work::OpeningOut => drilled.then_some(opened),
        Work::Clearing => (!lower).then_some(opened),
        Work::WideDrilling => {
            let is_wide = job.hole >= WIDE;
            (drilled && is_wide).then_some(Place::Drilling)
        }
        Work::Tapping => lower.then_some(Place::FirstTap),
        Work::Edges if lower => Some(Place::At(Action::Chamfer, Part::Lower)),
        Work::Edges => drilled.then_some(Place::At(Action::Chamfer, Part::Upper)),
        Work::Screwing => lower.then_some(Place::At(Action::TryScrew, Part::Lower)),
        Work::Lubrication => {
            let alone = drilled && !(lower && is_drilled_together(spec));
            let alone_at = if lower { Place::Drilling } else { opened };
            alone.then_some(alone_at)
        }
        Work::Shuns(_) => drilled.then_some(Place::Drilling),
        Work::Paraffin => {
            meets(job, part, |text| text.contains("paraffin")).then_some(Place::Standing)
        }
        Work::Fluid => meets(job, part, is_wet).then_some(Place::Standing),
        Work::Swarf | Work::Hands | Work::Lead | Work::Dust => drilled.then_some(Place::Standing),
        Work::Stock => (level == Level::Danger).then_some(Place::Standing),
        // Fire is said at the head.
        Work::Fire
        | Work::Reckoned
        | Work::Design
        | Work::Service
        | Work::Heat
        | Work::Grinding
        | Work::OtherCuts
        | Work::Background => None,
    }
}

/// A part that comes with its hole is not drilled.
fn is_drilled(spec: &HoleSpec, part: Part) -> bool {
    part == Part::Lower || is_drilled_together(spec)
}

fn is_drilled_together(spec: &HoleSpec) -> bool {
    spec.over.is_some_and(|over| over.hole == UpperHole::Tapping)
}

/// Whether the tapping drill opens a hole that an earlier one left.
fn is_worked_up(job: &Job<'_>) -> bool {
    job.operations.iter().filter(|step| step.action == Action::Drill).count() > 1
}

/// Whether some step on this part is done with a lubricant like this.
fn meets(job: &Job<'_>, part: Part, like: impl Fn(&str) -> bool) -> bool {
    let on_part = |step: &&Operation| super::covers(step.part, part);
    let mut lubricants = job.operations.iter().filter(on_part).filter_map(|step| step.lubricant);
    lubricants.any(|text| like(&text.to_lowercase()))
}

/// Whether something is put on the cut that is bad for the skin, in small letters.
fn is_wet(lubricant: &str) -> bool {
    const WET: [&str; 6] = ["oil", "compound", "paraffin", "spirit", "fluid", "coolant"];
    // Behind these stands what must not be put on.
    let put_on = ["; no ", " never ", ": it needs no "]
        .into_iter()
        .fold(lubricant, |text, mark| text.split(mark).next().unwrap_or_default());
    WET.into_iter().any(|wet| put_on.contains(wet))
}

/// Sentences with the names they are said under.
#[derive(Default)]
struct Saying(Vec<Sentence>);

struct Sentence {
    place: Place,
    level: Level,
    names: Vec<&'static str>,
    text: &'static str,
}

impl Saying {
    fn add(&mut self, place: Place, level: Level, material: &'static Material, text: &'static str) {
        match self.0.iter_mut().find(|sentence| sentence.text == text) {
            Some(sentence) if sentence.names.contains(&material.name) => {}
            Some(sentence) => sentence.names.push(material.name),
            None => self.0.push(Sentence { place, level, names: vec![material.name], text }),
        }
    }
}

impl Sentence {
    fn words(&self) -> String {
        let names = print::sentence(&self.names.join(" and "));
        format!("{names}: {}", print::running(self.text))
    }
}
