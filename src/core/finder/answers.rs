//! The pages that answer a line: what is asked of the thread, the size and the materials in it.

use super::gather::Gathered;
use super::line::Line;
use super::phrases::Work;
use super::reading::{Reading, What};
use super::score::{ANSWER, LESS, Score};
use super::thing::{Thing, material_called};
use super::{Hit, Kind, pages, size};
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::units::read::{Bare, length};

/// Of the materials a word could mean, so many get an address of their own.
const MOST_MATERIALS: usize = 8;

/// The hits of a line of which all is understood; none where it is not. Says whether the first is the one
/// thing that can be meant.
pub(super) fn gather(text: &str, gathered: &mut Gathered) -> bool {
    let Some(line) = Line::of(text) else { return false };
    let Some(reading) = Reading::of(&line) else { return false };
    let mut answers = Answers { said: said(&line), score: ANSWER, gathered };
    match &reading.what {
        What::Thread(read) => {
            answers.of_thread(read.thread, line.work, &reading);
            for other in read.taken.iter().flat_map(|taken| &taken.others) {
                answers.add(Thing::Thread(other).hit());
            }
            let is_sure = read.taken.is_none() && reading.materials.is_empty();
            return line.work.is_none() && is_sure;
        }
        What::Size(drills, typed) => answers.of_size(drills, typed, line.work, &reading),
        What::Material => answers.of_materials(line.work, &reading),
    }
    false
}

/// The hits as they are found, the first the best.
struct Answers<'a> {
    /// What was understood, where it is not plain.
    said: String,
    score: Score,
    gathered: &'a mut Gathered,
}

impl Answers<'_> {
    /// Adds the next best.
    fn add(&mut self, hit: Hit) {
        let why =
            if self.said.is_empty() { hit.why } else { format!("{}; {}", hit.why, self.said) };
        self.gathered.add(self.score, Hit { why, ..hit });
        self.score = self.score.saturating_sub(1);
    }

    fn of_thread(&mut self, thread: &'static Thread, work: Option<Work>, reading: &Reading) {
        let materials = || to_be_cut(reading);
        match work {
            Some(Work::Clearance) => self.add(clearance(thread)),
            Some(Work::Speed | Work::Countersinking) => {
                let work = if work == Some(Work::Speed) { "tapping" } else { "countersinking" };
                materials().for_each(|it| self.add(speed(thread.designation, work, Some(it))));
            }
            _ => materials().for_each(|it| self.add(plan(thread, it, reading.depth.as_deref()))),
        }
        self.add(Thing::Thread(thread).hit());
        if !matches!(work, Some(Work::Clearance)) {
            self.add(clearance(thread));
        }
        self.name_materials(reading);
    }

    fn of_size(
        &mut self,
        drills: &[&'static Drill],
        typed: &str,
        work: Option<Work>,
        reading: &Reading,
    ) {
        let materials = || to_be_cut(reading);
        let by_speed = match work {
            Some(Work::Reaming) => Some("reaming"),
            Some(Work::Countersinking) => Some("countersinking"),
            Some(Work::Spotting) => Some("spotting"),
            Some(Work::Speed) => Some("drilling"),
            _ => None,
        };
        if let Some(work) = by_speed {
            materials().for_each(|it| self.add(speed(typed, work, Some(it))));
        }
        drills.iter().for_each(|drill| self.add(Thing::Drill(drill).hit()));
        if by_speed.is_none() {
            materials().for_each(|it| self.add(speed(typed, "drilling", Some(it))));
        }
        self.work_page(work);
        self.name_materials(reading);
        self.score = self.score.saturating_sub(LESS);
        if let [] = drills
            && let Ok(size) = length(typed, Bare::Mm)
        {
            size::gather_near_drills(size, typed, self.gathered);
        }
    }

    fn of_materials(&mut self, work: Option<Work>, reading: &Reading) {
        self.name_materials(reading);
        self.work_page(work);
    }

    /// The page of a work that asks for the rest.
    fn work_page(&mut self, work: Option<Work>) {
        let name = match work {
            Some(Work::Speed) => "speeds",
            Some(Work::Reaming) => "reaming",
            Some(Work::Countersinking) => "countersinking",
            Some(Work::Spotting) => "spotting",
            Some(Work::Clearance) => "clearance",
            Some(Work::Tapping) => "hole plan",
            Some(Work::Counterboring | Work::Drilling | Work::OfMaterial) | None => return,
        };
        if let Some(page) = pages::named(name) {
            self.add(Thing::Page(page).hit());
        }
    }

    fn name_materials(&mut self, reading: &Reading) {
        for material in &reading.materials {
            self.add(material_called(material, &reading.typed_material));
        }
    }
}

/// The materials that a plan or a speed may be given for.
fn to_be_cut(reading: &Reading) -> impl Iterator<Item = &'static Material> {
    let cut = reading.materials.iter().copied().filter(|material| material.refused.is_none());
    cut.take(MOST_MATERIALS)
}

/// What was taken off a line to understand it, where that is not plain.
fn said(line: &Line) -> String {
    let subject = line.subject.join(" ");
    match &line.depth {
        Some(depth) => format!("read as {subject}, {depth} deep"),
        None => format!("read as {subject}"),
    }
}

/// The plan for a thread in a material.
pub(super) fn plan(thread: &Thread, material: &Material, depth: Option<&str>) -> Hit {
    let deep = depth.map_or_else(String::new, |depth| format!(", {depth} deep"));
    let mut fields = vec![("thread", thread.designation), ("material", material.slug)];
    if let Some(depth) = depth {
        fields.extend([("hole", "blind"), ("depth", depth)]);
    }
    Hit {
        kind: Kind::Calculator,
        title: format!("Hole plan: {} in {}{deep}", thread.designation, material.name).into(),
        url: address("/plan", &fields).into(),
        why: "tapping drill, depths, speeds and steps".to_owned(),
    }
}

/// The clearance hole of a thread.
fn clearance(thread: &Thread) -> Hit {
    Hit {
        kind: Kind::Calculator,
        title: format!("Clearance hole for {}", thread.designation).into(),
        url: address("/calculators/clearance", &[("thread", thread.designation)]).into(),
        why: "close, medium and free, with the drill for each".to_owned(),
    }
}

/// The speed of a work.
fn speed(tool: &str, work: &'static str, material: Option<&Material>) -> Hit {
    let mut fields = Vec::new();
    let mut inside = String::new();
    if let Some(material) = material {
        fields.push(("material", material.slug));
        inside = format!(" in {}", material.name);
    }
    if work != "drilling" {
        fields.push(("work", work));
    }
    fields.push(("diameter", tool));
    Hit {
        kind: Kind::Calculator,
        title: format!("Speed for {work} {tool}{inside}").into(),
        url: address("/calculators/speeds", &fields).into(),
        why: "speed, feed and what the machine’s speeds come to".to_owned(),
    }
}

/// An address with fields, as a form writes it.
fn address(path: &str, fields: &[(&str, &str)]) -> String {
    let fields: Vec<String> =
        fields.iter().map(|(name, value)| format!("{name}={}", coded(value))).collect();
    format!("{path}?{}", fields.join("&"))
}

/// Text as a form's query writes it: spaces as `+`, all but letters, digits and `*-._` as percent
/// codes, so that the address is the one the plan's own form makes.
fn coded(text: &str) -> String {
    let mut coded = String::with_capacity(text.len());
    for byte in text.bytes() {
        match byte {
            b' ' => coded.push('+'),
            b'*' | b'-' | b'.' | b'_' => coded.push(char::from(byte)),
            _ if byte.is_ascii_alphanumeric() => coded.push(char::from(byte)),
            _ => coded.push_str(&format!("%{byte:02X}")),
        }
    }
    coded
}
