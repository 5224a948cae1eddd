//! `/calculators/tap-effort`: how hard a tap is to turn, what it may bear, and what a larger drill alters.

mod answer;
mod fields;

use super::usual_hole::HOLE;
use super::{AnswerKind, Declaration, Finding, Form, Measure, Output, Plain};
use crate::asking::{OWNED, SERIES};
use crate::calc::strip;
use crate::calc::tap_effort::STRENGTH_SOURCE;
use crate::tables::drill_force::CHISEL_SOURCE;
use crate::tables::source::Source;
use crate::tables::tapping_force::{BORROWED_SOURCE, ROUGH_SOURCE, SOURCE};
use crate::units::print;
use answer::{Answer, At};
use fields::{MATERIAL, TAP_STEEL, THREAD, answer};

/// The calculator.
pub(super) static DECLARATION: Declaration = Declaration {
    slug: "tap-effort",
    title: "Effort of a tap",
    answers: "How hard a tap is to turn in a hole, how near that is to what the tap bears, and what the next larger drills alter.",
    finding: Finding {
        title: "Effort of a tap",
        why: "how hard a tap turns, how near it is to breaking, and what a larger drill alters",
        names: &["tap effort", "tapping torque", "tap torque", "effort"],
        words: &["torque", "thrust", "breaking"],
    },
    form: Form {
        first: &[&THREAD, &MATERIAL, &HOLE],
        rest_heading: "Steel of the tap, drills at hand",
        rest: &[&TAP_STEEL, &SERIES, &OWNED],
        begun_by: &[&THREAD, &MATERIAL],
        button: "Find the effort",
    },
    answer: AnswerKind::Rows(&Plain {
        answer,
        heading: |found| format!("Tapping {} in {}", found.thread.designation, found.material.name),
        outputs: &OUTPUTS,
        notes: |found| found.notes(),
        drawing: Some(|found| found.graph()),
    }),
};

const MAKER: &str = "Tc = tan(a) · kc · K · (D − Do)² · (D + 2 Do) / 24 000: a half the thread angle, D the thread, Do the hole, kc and K of the metal; written for 60° and taken here at the thread’s own angle";
const LARGER: &str = "The next drill at hand that leaves at least 2½ points less thread";
const RELATIVE_EFFORT: &str = "The same formula, as a part of the effort with the first drill";
const RELATIVE_STRENGTH: &str = "Strip area of the screw’s thread, as a part of that with the first drill; it falls more slowly than the effort";
const DRILL: &str = "With the handbook’s exponents, a sharp drill of the usual web, fed by hand: at the fine end of its feed";
/// Where the choice of a larger drill comes from.
const PRACTICE: Source = Source::common_practice("the next distinct size at hand");

static OUTPUTS: [Output<Answer>; 16] = [
    Output {
        key: "margin",
        name: "What is left to the tap",
        description: "What is left between the cut and the tap's own strength, in words",
        value: Measure::Words(|found| print::sentence(&found.margin().to_string())),
        rule: "Both sides are estimates, so it is told in words: spent, scant, fair or ample; two of them where the metal’s figure is borrowed or the rougher formula leaves less",
        source: STRENGTH_SOURCE,
    },
    Output {
        key: "advice",
        name: "So",
        description: "What to do about it",
        value: Measure::Words(|found| found.margin().advice()),
        rule: "By the margin as reckoned; the lesser word is there where the metal’s figure is borrowed or the rougher formula leaves less",
        source: STRENGTH_SOURCE,
    },
    Output {
        key: "drill",
        name: "Hole",
        description: "The hole and the engagement it leaves",
        value: Measure::Words(|found| found.chosen.words()),
        rule: "As asked, or the usual drill for this thread and metal",
        source: PRACTICE,
    },
    Output {
        key: "effort",
        name: "Effort of the second tap",
        description: "Torque of a second tap by hand",
        value: Measure::Torque(|found| Some(found.effort())),
        rule: MAKER,
        source: SOURCE,
    },
    Output {
        key: "metal",
        name: "Metal reckoned with",
        description: "The metal whose figure is taken",
        value: Measure::Words(Answer::metal),
        rule: "The maker’s own row where it prints the metal, else the nearest",
        source: BORROWED_SOURCE,
    },
    Output {
        key: "rough_effort",
        name: "By a rougher formula",
        description: "The torque by another maker's formula, which asks nothing of the hole",
        value: Measure::Torque(|found| found.rough()),
        rule: "Md = p² · D · kc / 8000 with its own kc: a cross-check that asks nothing of hole and form, so that one may be twice the other and more",
        source: ROUGH_SOURCE,
    },
    Output {
        key: "tap_strength",
        name: "The tap’s own strength, about",
        description: "About what breaks the tap: an estimate, and no promise",
        value: Measure::Torque(|found| Some(found.strength())),
        rule: "A round bar of the thread’s core, cut down to about a third for the flutes",
        source: STRENGTH_SOURCE,
    },
    Output {
        key: "one_larger",
        name: "One drill larger",
        description: "The next larger drill at hand and the engagement it leaves",
        value: Measure::SomeWords(|found| found.larger(0).map(At::words)),
        rule: LARGER,
        source: PRACTICE,
    },
    Output {
        key: "one_larger_effort",
        name: "Effort with it",
        description: "Effort with that drill, of the effort with the first",
        value: Measure::SomePercent(|found| found.compared(0).map(|it| it.effort_percent)),
        rule: RELATIVE_EFFORT,
        source: SOURCE,
    },
    Output {
        key: "one_larger_strength",
        name: "Thread that holds with it",
        description: "Strip area of the screw's thread with that drill, of that with the first",
        value: Measure::SomePercent(|found| found.compared(0).map(|it| it.strength_percent)),
        rule: RELATIVE_STRENGTH,
        source: strip::SOURCE,
    },
    Output {
        key: "two_larger",
        name: "Two drills larger",
        description: "The drill after that and the engagement it leaves",
        value: Measure::SomeWords(|found| found.larger(1).map(At::words)),
        rule: LARGER,
        source: PRACTICE,
    },
    Output {
        key: "two_larger_effort",
        name: "Effort with that",
        description: "Effort with that drill, of the effort with the first",
        value: Measure::SomePercent(|found| found.compared(1).map(|it| it.effort_percent)),
        rule: RELATIVE_EFFORT,
        source: SOURCE,
    },
    Output {
        key: "two_larger_strength",
        name: "Thread that holds with that",
        description: "Strip area of the screw's thread with that drill, of that with the first",
        value: Measure::SomePercent(|found| found.compared(1).map(|it| it.strength_percent)),
        rule: RELATIVE_STRENGTH,
        source: strip::SOURCE,
    },
    Output {
        key: "drill_thrust",
        name: "Thrust of the drill, fed by hand",
        description: "Thrust on the tapping drill",
        value: Measure::Force(|found| found.drilling().map(|it| it.thrust)),
        rule: DRILL,
        source: CHISEL_SOURCE,
    },
    Output {
        key: "drill_torque",
        name: "Torque of the drill",
        description: "Torque of the tapping drill",
        value: Measure::Torque(|found| found.drilling().map(|it| it.torque)),
        rule: DRILL,
        source: CHISEL_SOURCE,
    },
    Output {
        key: "drill_power",
        name: "Power at the drill",
        description: "Power at the tapping drill, at the slow end of its speeds",
        value: Measure::Power(|found| found.drill_power()),
        rule: "Torque by speed, at the slow end of the speeds in print for the metal",
        source: CHISEL_SOURCE,
    },
];
