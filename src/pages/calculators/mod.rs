//! The calculators beside the plan, each a form whose query string is the answer's permanent address.
//!
//! A calculator is a [`Request`](speeds::Request) that knows nothing of templates, the pure figures of
//! its [`Answer`](speeds::Answer), and a page: the JSON door reads the same request and gives the same
//! figures. The table here names them all.

mod asked;
mod at_hand;
pub mod clearance;
mod drawer;
mod form;
mod index;
pub mod speeds;
pub mod tapping;

use super::link::Link;
use super::{Answer, Visit, not_found};

pub(super) use index::index;

/// One calculator.
struct Calculator {
    /// Its address part.
    name: &'static str,
    /// Its name on a link.
    title: &'static str,
    /// What it answers.
    answers: &'static str,
    show: fn(&Visit<'_>) -> Answer,
}

/// Every calculator, in the order the pages list them.
static CALCULATORS: [Calculator; 3] = [
    Calculator {
        name: "speeds",
        title: "Spindle speed",
        answers: "How fast to turn a drill, a reamer, a tap or a countersink, which of the machine’s speeds comes nearest, how long it cuts and when to withdraw.",
        show: speeds::show,
    },
    Calculator {
        name: "tapping",
        title: "Tapping size of any thread",
        answers: "Engagement of a hole, hole for an engagement and the drills that would do, for threads no table holds too.",
        show: tapping::show,
    },
    Calculator {
        name: "clearance",
        title: "Clearance and float",
        answers: "The hole a screw passes through, its drill, and how much larger it must be when centres are off.",
        show: clearance::show,
    },
];

impl Calculator {
    fn link(&self) -> Link {
        Link::new(format!("/calculators/{}", self.name), self.title)
    }
}

/// The name, the title and what is answered, of each: for a list that a server keeps of everything.
pub fn all() -> impl Iterator<Item = [&'static str; 3]> {
    CALCULATORS.iter().map(|calculator| [calculator.name, calculator.title, calculator.answers])
}

/// One calculator, or the list of them where there is none of this name.
pub(super) fn show(visit: &Visit<'_>, name: &str) -> Answer {
    match CALCULATORS.iter().find(|calculator| calculator.name == name) {
        Some(calculator) => (calculator.show)(visit),
        None => not_found::page(visit, CALCULATORS.iter().map(Calculator::link).collect()),
    }
}
