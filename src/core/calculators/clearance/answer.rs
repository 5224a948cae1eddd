//! The figures: from a screw, a fit and the drills at hand to hole and float.

use crate::calc::clearance::{
    ClearanceHole, Fit, also_printed, drill_for, float, hole, hole_by_rule, hole_for_errors,
    model_hole, ruling,
};
use crate::calc::thread_form::geometry;
use crate::tables::clearance::Holes;
use crate::tables::drills::{Drill, SAME_SIZE};
use crate::tables::threads::Thread;
use crate::units::Length;

/// The screw that passes through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Its thread, where it has a name.
    pub thread: Option<&'static Thread>,
    /// The diameter the hole goes by: the thread's major, or what was written.
    pub major: Length,
    /// The diameter as measured, where both were given: float goes by it.
    pub measured: Option<Length>,
}

impl Screw {
    /// The diameter that has to pass.
    #[must_use]
    pub fn size(&self) -> Length {
        self.measured.unwrap_or(self.major)
    }

    /// The major diameter of a thread held here.
    #[must_use]
    pub fn major_of(thread: &Thread) -> Length {
        geometry(thread).major
    }
}

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// The screw.
    pub screw: Screw,
    /// How freely it passes.
    pub fit: Fit,
    /// How far the clearance hole's centre may be off, radially.
    pub upper_error: Length,
    /// How far the tapped hole's centre may be off, radially.
    pub lower_error: Length,
    /// The drills at hand, smallest first.
    pub at_hand: Vec<&'static Drill>,
}

/// A hole and the drill taken for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drilled {
    /// The hole asked for, and what it goes by.
    pub hole: ClearanceHole,
    /// The smallest drill at hand that is not smaller and comes near it.
    pub drill: Option<&'static Drill>,
    /// How far the screw can shift in the drilled hole, on diameter.
    pub float: Option<Length>,
}

/// The hole that lets the screw in when both centres are as far off as said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForErrors {
    /// The hole.
    pub hole: Length,
    /// The smallest drill at hand that is not smaller and comes near it.
    pub drill: Option<&'static Drill>,
    /// The hole of the fit as it is made, drilled or bored, is large enough for them already.
    pub fit_will_do: bool,
}

/// Everything the page says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The screw.
    pub screw: Screw,
    /// The fit asked for.
    pub fit: Fit,
    /// Its hole.
    pub asked: Drilled,
    /// The three fits, closest first.
    pub fits: [(Fit, Drilled); 3],
    /// The smaller hole of model work, for small metric screws.
    pub model: Option<Drilled>,
    /// What the centre errors ask for; none where no error was given.
    pub for_errors: Option<ForErrors>,
    /// The row in print that rules.
    pub ruling: Option<&'static Holes>,
    /// The other rows in print for this screw.
    pub also_printed: Vec<&'static Holes>,
}

impl Answer {
    /// The drill to take: large enough for the fit and for the errors.
    #[must_use]
    pub fn drill(&self) -> Option<&'static Drill> {
        match self.for_errors {
            Some(errors) if !errors.fit_will_do => errors.drill,
            _ => self.asked.drill,
        }
    }

    /// The hole to make, before a drill is chosen for it.
    #[must_use]
    pub fn hole(&self) -> Length {
        match self.for_errors {
            Some(errors) if !errors.fit_will_do => errors.hole,
            _ => self.asked.hole.hole,
        }
    }
}

/// The figures.
///
/// # Source
/// ISO 273 for metric coarse and fine, ASME B18.2.8 for Unified; elsewhere the stated rule (common
/// practice, no source). Centre errors: ASME Y14.5 appendix B, fixed fastener, H = F + T1 + T2.
///
/// # Examples
/// M3 medium is 3.4 mm (ISO 273); with no error allowed the hole is the screw (tip 110 on ASME
/// Y14.5M-1994), and 0.2 mm off in each part asks for 3.8.
/// ```
/// use holewright_core::calc::clearance::Fit;
/// use holewright_core::calculators::clearance::{Question, Screw, answer};
/// use holewright_core::tables::{drills, threads};
/// use holewright_core::units::{mm, print};
/// let m3 = threads::find("metric", "m3").unwrap();
/// let screw = Screw { thread: Some(m3), major: mm(3.0), measured: None };
/// let at_hand = drills::all().iter().collect();
/// let (upper_error, lower_error) = (mm(0.2), mm(0.2));
/// let found = answer(Question { screw, fit: Fit::Medium, upper_error, lower_error, at_hand });
/// assert_eq!(print::mm(found.asked.hole.hole, 3), "3.4 mm");
/// assert_eq!(print::mm(found.for_errors.unwrap().hole, 3), "3.8 mm");
/// assert_eq!(found.drill().unwrap().label, "3.8 mm");
/// ```
#[must_use]
pub fn answer(question: Question) -> Answer {
    let Question { screw, fit, upper_error, lower_error, at_hand } = question;
    let drilled = |hole: ClearanceHole| {
        let drill = drill_for(hole.hole, at_hand.iter().copied());
        let float = drill.map(|drill| float(drill.diameter, screw.size()));
        Drilled { hole, drill, float }
    };
    let hole_of = |fit| match screw.thread {
        Some(thread) => hole(thread, screw.major, fit),
        None => hole_by_rule(screw.major, fit),
    };
    let asked = drilled(hole_of(fit));
    let none = Length::default();
    let for_errors = (upper_error > none || lower_error > none).then(|| {
        let hole = hole_for_errors(screw.size(), upper_error, lower_error);
        let drill = drill_for(hole, at_hand.iter().copied());
        let made = asked.drill.map_or(asked.hole.hole, |drill| drill.diameter);
        let fit_will_do = made > hole - SAME_SIZE;
        ForErrors { hole, drill, fit_will_do }
    });
    Answer {
        screw,
        fit,
        asked,
        fits: Fit::ALL.map(|fit| (fit, drilled(hole_of(fit)))),
        model: screw.thread.and_then(|thread| model_hole(thread.system, screw.major)).map(drilled),
        for_errors,
        ruling: screw.thread.and_then(ruling),
        also_printed: screw.thread.map_or_else(Vec::new, |thread| also_printed(thread).collect()),
    }
}
