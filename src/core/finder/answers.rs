//! The pages that answer a line: what is asked of the thread, the size and the materials in it.

use super::gather::Gathered;
use super::line::Line;
use super::phrases::Work;
use super::reading::{Reading, What};
use super::score::{ANSWER, LESS, Score};
use super::thing::{Thing, material_called};
use super::{Hit, Kind, pages, size};
use crate::calculators::speeds::{LARGEST_TOOL, SMALLEST_TOOL};
use crate::plan::Hole;
use crate::tables::drills::Drill;
use crate::tables::materials::Material;
use crate::tables::threads::Thread;
use crate::tables::threads::read::{AsMeant, Hand};
use crate::units::print;
use crate::units::read::{Bare, length};

/// Of the materials a word could mean, so many get an address of their own.
const MOST_MATERIALS: usize = 8;

/// The hits of a line of which all is understood; none where it is not. Says whether the first is the one
/// thing that can be meant.
pub(super) fn gather(text: &str, gathered: &mut Gathered) -> bool {
    let Some(line) = Line::of(text) else { return false };
    let (line, readings) = match Reading::all_of(&line) {
        readings if readings.is_empty() && !Reading::is_of_names(&line) => {
            match line.without_parts() {
                Some(line) => {
                    let readings = Reading::all_of(&line);
                    (line, readings)
                }
                None => (line, readings),
            }
        }
        readings => (line, readings),
    };
    let mut answers = Answers { line: &line, said: said(&line), score: ANSWER, gathered };
    let mut is_sure = false;
    for reading in &readings {
        match &reading.what {
            What::Thread(read) => {
                answers.of_thread(read, reading);
                for other in read.taken.iter().flat_map(|taken| &taken.others) {
                    answers.add(Thing::Thread(other).hit());
                }
                let is_plain = read.taken.is_none() && reading.materials.is_empty();
                is_sure = line.work.is_none() && is_plain;
            }
            What::Size(drills, typed) => answers.of_size(drills, typed, reading),
            What::Systems(systems) => {
                let hits = systems.iter().map(|id| Thing::System(id.system()).hit());
                hits.for_each(|hit| answers.add(hit));
            }
            What::Material => answers.of_materials(reading),
        }
    }
    // "Reaming a bush".
    if line.subject.is_empty() && !pages::is_about_one(text) {
        answers.said.clear();
        answers.work_page(line.work);
    }
    is_sure
}

/// The hits as they are found, the first the best.
struct Answers<'a> {
    /// What was typed, taken to pieces.
    line: &'a Line,
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

    fn of_thread(&mut self, read: &AsMeant, reading: &Reading) {
        let thread = read.thread;
        let materials = || to_be_cut(reading);
        let work = reading.work;
        let said = Said::of(self.line, read.hand, work);
        match work {
            Some(Work::Clearance) if passes_through(thread) => self.add(clearance(thread)),
            Some(Work::Notes) => self.add(notes(&Thing::Thread(thread).hit())),
            Some(Work::Card(head)) if passes_through(thread) => {
                self.add(card(thread, head, materials().next()));
            }
            Some(Work::Speed | Work::Countersinking) => {
                let slug = if work == Some(Work::Speed) { "tapping" } else { "countersinking" };
                materials().for_each(|it| self.add(speed(thread.designation, slug, Some(it))));
                if work == Some(Work::Countersinking) && materials().next().is_none() {
                    self.add(speed(thread.designation, slug, None));
                }
            }
            Some(Work::Depth | Work::Counterboring | Work::Forming)
                if reading.materials.is_empty() =>
            {
                self.add(plan(thread, None, &said));
            }
            // Nothing that was said of the hole is dropped.
            _ if reading.materials.is_empty() && said.depth.is_some() => {
                self.add(plan(thread, None, &said));
            }
            // The plan of what is not to be cut says why not.
            _ => reading
                .materials
                .iter()
                .take(MOST_MATERIALS)
                .for_each(|it| self.add(plan(thread, Some(it), &said))),
        }
        self.add(Thing::Thread(thread).hit());
        if reading.materials.is_empty() && said.depth.is_none() && said.hole.is_some() {
            self.add(plan(thread, None, &said));
        }
        if passes_through(thread) && !matches!(work, Some(Work::Clearance)) {
            self.add(clearance(thread));
        }
        self.name_materials(reading);
    }

    fn of_size(&mut self, drills: &[&'static Drill], typed: &str, reading: &Reading) {
        let work = reading.work;
        let is_no_tool = length(typed, Bare::Mm)
            .is_ok_and(|size| !(SMALLEST_TOOL..=LARGEST_TOOL).contains(&size));
        let materials = || to_be_cut(reading).filter(|_| !is_no_tool);
        let by_speed = match work {
            Some(Work::Reaming) => Some("reaming"),
            Some(Work::Countersinking) => Some("countersinking"),
            Some(Work::Spotting) => Some("spotting"),
            Some(Work::Speed) => Some("drilling"),
            _ => None,
        };
        if work == Some(Work::Notes) {
            drills.iter().for_each(|drill| self.add(notes(&Thing::Drill(drill).hit())));
        }
        if let Some(work) = by_speed {
            materials().for_each(|it| self.add(speed(typed, work, Some(it))));
            if work != "drilling" && reading.materials.is_empty() && !is_no_tool {
                self.add(speed(typed, work, None));
            }
        }
        drills.iter().for_each(|drill| self.add(Thing::Drill(drill).hit()));
        if by_speed.is_none() {
            materials().for_each(|it| self.add(speed(typed, "drilling", Some(it))));
        }
        self.work_page(work);
        self.name_materials(reading);
        self.score = self.score.saturating_sub(LESS);
        if drills.is_empty()
            && let Ok(size) = length(typed, Bare::Mm)
        {
            size::gather_near_drills(size, typed, self.gathered);
        }
    }

    fn of_materials(&mut self, reading: &Reading) {
        let work = reading.work;
        if work == Some(Work::Notes) {
            let all = reading.materials.iter().take(MOST_MATERIALS);
            all.for_each(|material| self.add(notes(&Thing::Material(material).hit())));
        }
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
            Some(Work::Card(_)) => "fastener",
            Some(Work::Tapping | Work::Forming | Work::Depth) => "hole plan",
            Some(Work::Counterboring | Work::Drilling | Work::OfMaterial | Work::Notes) | None => {
                return;
            }
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

/// What a line says of a hole besides its thread and its material.
#[derive(Default)]
pub(super) struct Said<'a> {
    hand: Hand,
    hole: Option<Hole>,
    /// The full thread of a blind hole, or the thickness of the part.
    depth: Option<&'a str>,
    /// The head is to be let in.
    is_let_in: bool,
    /// The tap forms its thread and cuts none.
    is_formed: bool,
}

impl<'a> Said<'a> {
    fn of(line: &'a Line, hand: Hand, work: Option<Work>) -> Self {
        let thickness = line.thickness.as_deref();
        let hole = match (line.depth.is_some(), thickness.is_some()) {
            (true, _) => Some(Hole::Blind),
            (false, true) => Some(Hole::Through),
            (false, false) => None,
        };
        Self {
            hand: if line.hand == Hand::Left { Hand::Left } else { hand },
            hole: line.hole.or(hole),
            depth: line.depth.as_deref().or(thickness),
            is_let_in: work == Some(Work::Counterboring),
            is_formed: work == Some(Work::Forming),
        }
    }

    /// In a title: `, left hand, 10 mm deep`.
    fn words(&self) -> String {
        let hand = if self.hand == Hand::Left { ", left hand" } else { "" };
        let deep = match (self.depth, self.hole) {
            (Some(thick), Some(Hole::Through)) => format!(", through {thick}"),
            (Some(depth), _) => format!(", {depth} deep"),
            (None, Some(Hole::Through)) => ", through".to_owned(),
            (None, Some(Hole::Blind)) => ", blind".to_owned(),
            (None, None) => String::new(),
        };
        let head = if self.is_let_in { ", head let in" } else { "" };
        let tap = if self.is_formed { ", forming tap" } else { "" };
        format!("{hand}{deep}{head}{tap}")
    }

    /// In an address, in the plan's own order.
    fn fields(&self) -> Vec<(&'static str, &'a str)> {
        let mut fields = Vec::new();
        match self.hole {
            Some(Hole::Through) => fields.push(("hole", "through")),
            Some(Hole::Blind) => fields.push(("hole", "blind")),
            None => {}
        }
        fields.extend(self.depth.map(|depth| ("depth", depth)));
        if self.is_let_in {
            fields.push(("head", "cheese"));
        }
        if self.is_formed {
            fields.push(("tap", "forming"));
        }
        if self.hand == Hand::Left {
            fields.push(("hand", "left"));
        }
        fields
    }
}

/// What was taken off a line to understand it, where that is not plain.
fn said(line: &Line) -> String {
    let subject = line.subject.join(" ");
    let hand = if line.hand == Hand::Left { ", left hand" } else { "" };
    match (&line.depth, &line.thickness) {
        (Some(depth), _) => format!("read as {subject}{hand}, {depth} deep"),
        (None, Some(thick)) => format!("read as {subject}{hand}, {thick} thick"),
        (None, None) => format!("read as {subject}{hand}"),
    }
}

/// The plan for a thread, in a material if one is known, with what else was said of it.
pub(super) fn plan(thread: &Thread, material: Option<&Material>, said: &Said<'_>) -> Hit {
    let mut fields = vec![("thread", thread.designation)];
    fields.extend(material.map(|material| ("material", material.slug)));
    fields.extend(said.fields());
    let inside = material.map_or_else(String::new, |material| format!(" in {}", material.name));
    let words = said.words();
    Hit {
        kind: Kind::Calculator,
        title: format!("Hole plan: {}{inside}{words}", thread.designation).into(),
        url: address("/plan", &fields).into(),
        why: "tapping drill, depths, speeds and steps".to_owned(),
    }
}

/// What members wrote of a thing.
fn notes(thing: &Hit) -> Hit {
    Hit {
        kind: Kind::List,
        title: format!("Shop notes on {}", print::running(&thing.title)).into(),
        url: address("/notes", &[("on", thing.url.trim_start_matches('/'))]).into(),
        why: "what members wrote".to_owned(),
    }
}

/// Whether a screw of this thread passes through a hole: a taper one screws into its mate.
const fn passes_through(thread: &Thread) -> bool {
    thread.taper.is_none()
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

/// Everything that goes with a screw of a head.
fn card(thread: &Thread, head: &'static str, material: Option<&Material>) -> Hit {
    let mut fields = vec![("thread", thread.designation)];
    if head != "hexagon" {
        fields.push(("head", head));
    }
    fields.extend(material.map(|material| ("material", material.slug)));
    Hit {
        kind: Kind::Calculator,
        title: format!("{}, {head} head: everything that goes with it", thread.designation).into(),
        url: address("/calculators/fastener", &fields).into(),
        why: "spanner, washer, clearance, countersink and edge on one card".to_owned(),
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
