//! The lines that name the drawer on a page it affects, and what a drill outside it would do better.

use super::Drawer;
use super::fill::Filled;
use crate::link::Link;
use holewright_core::calc::tapping::Candidate;
use holewright_core::tables::drills::{Drill, SAME_SIZE};
use holewright_core::units::{Length, in_mm, print};

/// What a page says of the reader's drawer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Notice {
    /// `By your drawer: drills 1–60, 1–6 × 0.1 mm.`
    pub line: String,
    /// Whole sentences: what a drill outside the drawer would do better.
    pub better: Vec<String>,
    /// What to do about it.
    pub links: Vec<Link>,
}

/// Two engagements nearer than this are one, percent: the last printed place.
const SAME_PERCENT: f64 = 0.05;

impl Notice {
    /// The notice of a page that chooses drills or speeds: what the drawer filled, or that the address
    /// stands in its place. None where no drawer is in use or it has no part in the page.
    ///
    /// `without` is the page's address with every drill at hand, `with` the one that holds what the
    /// drawer filled.
    pub(crate) fn of_choice(filled: &Filled<'_>, without: &str, with: &str) -> Option<Self> {
        let drawer = filled.drawer()?;
        let drills = filled.chooses_drills().then(|| format!("drills {}", drawer.drills.words()));
        let speeds = filled
            .has("spindle_speeds")
            .then(|| format!("machine speeds {}", drawer.speeds.text()));
        let parts: Vec<String> = [drills, speeds].into_iter().flatten().collect();
        let by_address =
            !filled.query.get("owned").is_empty() || !filled.query.get("series").is_empty();
        let mut line = Vec::new();
        if !parts.is_empty() {
            line.push(format!("By your drawer: {}.", parts.join("; ")));
        }
        if by_address && !filled.chooses_drills() && !drawer.drills.held().is_empty() {
            line.push("By the drills listed in this address, not your drawer.".to_owned());
        }
        if line.is_empty() {
            return None;
        }
        let every =
            filled.chooses_drills().then(|| Link::new(without, "Use every drill on this page"));
        let shared = filled.changed().then(|| Link::new(with, "A link that carries them"));
        let links = [Some(change()), every, shared].into_iter().flatten().collect();
        Some(Self { line: line.join(" "), better: Vec::new(), links })
    }

    /// The notice of a page that marks what is in the drawer. None where no drawer is in use or it
    /// holds no drills.
    pub(crate) fn of_marks(drawer: Option<&Drawer>) -> Option<Self> {
        let drawer = drawer.filter(|drawer| !drawer.drills.held().is_empty())?;
        let line =
            format!("By your drawer: drills {}; they are marked yours.", drawer.drills.words());
        Some(Self { line, better: Vec::new(), links: vec![change()] })
    }

    /// The notice of a page that says what the reader's own machine is set to. None where no drawer
    /// is in use or it holds no speeds.
    pub(crate) fn of_speeds(drawer: Option<&Drawer>) -> Option<Self> {
        let drawer = drawer.filter(|drawer| !drawer.speeds.machines().is_empty())?;
        let line = format!("By your drawer: machine speeds {}.", drawer.speeds.text());
        Some(Self { line, better: Vec::new(), links: vec![change()] })
    }

    /// The notice of a drill's page: whether the drawer has it, and a reamer of its size.
    pub(crate) fn of_drill(drawer: Option<&Drawer>, drill: &Drill) -> Option<Self> {
        let drawer = drawer?;
        let has = if drawer.drills.has(drill) { "has" } else { "does not have" };
        let held =
            (!drawer.drills.held().is_empty()).then(|| format!("Your drawer {has} this drill."));
        let reamer = drawer.reamers.has(drill.diameter);
        let reamer = reamer.then(|| "Your drawer has a reamer of this size.".to_owned());
        let line: Vec<String> = [held, reamer].into_iter().flatten().collect();
        let notice = Self { line: line.join(" "), better: Vec::new(), links: vec![change()] };
        (!line.is_empty()).then_some(notice)
    }

    /// The same with one more thing to do.
    pub(crate) fn offering(mut self, link: Link) -> Self {
        self.links.push(link);
        self
    }

    /// The same with these sentences.
    pub(crate) fn saying(self, better: impl IntoIterator<Item = String>) -> Self {
        Self { better: better.into_iter().collect(), ..self }
    }
}

/// To where the drawer is changed.
fn change() -> Link {
    Link::new("/drawer", "Change the drawer or switch it off")
}

/// What is lost with the drawer's drill against the best of every drill; none where nothing is.
pub(crate) fn better_tapping(
    aim_percent: f64,
    best: &Candidate,
    mine: Option<&Candidate>,
) -> Option<String> {
    let off = |candidate: &Candidate| (candidate.engagement_percent - aim_percent).abs();
    let name = format!("{}, {}", best.drill.label, print::percent(best.engagement_percent));
    let Some(mine) = mine else {
        return Some(format!("{name}, would do; it is not in your drawer."));
    };
    if is_one_size(best.drill, mine.drill) {
        None
    } else if off(mine) - off(best) > SAME_PERCENT {
        let aim = print::trimmed(aim_percent, 1);
        Some(format!("{name}, would be nearer the aim of {aim} %; it is not in your drawer."))
    } else if best.within_standard == Some(true) && mine.within_standard == Some(false) {
        Some(format!(
            "{name}, would keep within the standard’s largest hole; it is not in your drawer."
        ))
    } else if mine.below_minor && !best.below_minor {
        Some(format!(
            "{name}, would not be below the nut’s least minor diameter; it is not in your drawer."
        ))
    } else {
        None
    }
}

/// The drill of every series that comes nearer a clearance hole than the drawer's; none where the
/// drawer's is as near.
pub(crate) fn better_clearance(
    hole: Length,
    best: Option<&Drill>,
    mine: Option<&Drill>,
) -> Option<String> {
    let best = best?;
    let says_mm = best.is_named_in_mm();
    let size = if says_mm { String::new() } else { format!(", {},", print::mm(best.diameter, 3)) };
    let hole = print::mm(hole, 3);
    let would = match mine {
        Some(mine) if is_one_size(best, mine) => return None,
        Some(_) => format!("would be nearer the hole of {hole}"),
        None => format!("would do for the hole of {hole}"),
    };
    Some(format!("For clearance {}{size} {would}; it is not in your drawer.", best.label))
}

fn is_one_size(a: &Drill, b: &Drill) -> bool {
    in_mm(a.diameter - b.diameter).abs() < in_mm(SAME_SIZE)
}
