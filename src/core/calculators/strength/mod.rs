//! `/calculators/strength`: what a screwed joint bears, what gives way first, and how long a thread must be.
//!
//! No strength is given for what holds steam or pressure: that goes by its code.

mod answer;
mod fields;
mod words;

use super::usual_hole::HOLE;
use super::{AnswerKind, Declaration, Finding, Form, Measure, Output, Plain};
use crate::asking::{OWNED, SERIES};
use crate::calc::strength::{Joint, proof_load};
use crate::calc::strip;
use crate::tables::screw_metals::SIX_TENTHS;
use crate::tables::source::Source;
use crate::units::{in_mm2, in_newtons, print};
use answer::Answer;
use fields::{DUTY, ENGAGED, MATERIAL, SCREW, THREAD, answer};
use words::strength_words;

/// The calculator.
pub(super) static DECLARATION: Declaration = Declaration {
    slug: "strength",
    title: "Strength of a thread",
    answers: "What a screw and its thread bear in a hole, which gives way first, and how much thread it takes until the screw breaks before it strips.",
    finding: Finding {
        title: "Strength of a thread",
        why: "what a screw and its thread bear, which gives way first, and how much thread it takes",
        names: &["strength", "thread strength", "strip", "tensile area", "proof load"],
        words: &["stripping", "stripped", "load", "bears", "weakest", "class"],
    },
    form: Form {
        first: &[&THREAD, &MATERIAL, &SCREW, &DUTY],
        rest_heading: "Length of thread, hole, drills at hand",
        rest: &[&ENGAGED, &HOLE, &SERIES, &OWNED],
        begun_by: &[&THREAD, &MATERIAL],
        button: "Find the strength",
    },
    answer: AnswerKind::Rows(&Plain {
        answer,
        heading: |found| format!("{} in {}", found.thread.designation, found.material.name),
        outputs: &OUTPUTS,
        notes: |found| found.notes(),
        drawing: None,
    }),
};

const LEAST: &str = "The least of the three below; a pull along the screw, slowly and once";
/// Where the tensile areas come from.
const TENSILE: Source = Source::published(
    "ISO 898-1 and Machinery's Handbook 31st ed., tensile stress areas; for other forms the circle midway between effective and minor",
);
const PRACTICE: Source = Source::common_practice("the next distinct size at hand");
const METALS: Source = Source::common_practice("the least tensile strength in print for the metal");

static OUTPUTS: [Output<Answer>; 18] = [
    Output {
        key: "weakest",
        name: "What gives way",
        description: "What gives way first; not named without the screw's metal",
        value: Measure::Words(|found| found.weakest()),
        rule: "The member that bears least at this length of thread; none is named without the screw’s metal",
        source: strip::SOURCE,
    },
    Output {
        key: "joint_load",
        name: "The joint bears about",
        description: "What the weakest member bears",
        value: Measure::Force(|found| found.loads().map(|loads| loads.least())),
        rule: LEAST,
        source: strip::SOURCE,
    },
    Output {
        key: "holding_length",
        name: "Thread until the screw breaks first",
        description: "Length of engagement at which the screw breaks before a thread strips",
        value: Measure::SomeLength(|found| found.joint()?.holding_length()),
        rule: "The screw’s tensile load over what each thread bears on its length; a handbook takes one half where six tenths is taken here, and comes out longer",
        source: strip::SOURCE,
    },
    Output {
        key: "engaged",
        name: "Thread engaged",
        description: "Length of thread reckoned with",
        value: Measure::SomeLength(|found| Some(found.engaged)),
        rule: "As asked, or one diameter",
        source: Source::common_practice("one diameter of thread"),
    },
    Output {
        key: "hole",
        name: "Hole",
        description: "The hole and the engagement it leaves",
        value: Measure::Words(|found| found.hole_words()),
        rule: "As asked, or the usual drill for this thread and metal; a drill below the nut’s minor diameter counts as that",
        source: PRACTICE,
    },
    Output {
        key: "tensile_area",
        name: "Tensile area of the screw",
        description: "Tensile area of the screw",
        value: Measure::Area(|found| found.geometry.tensile_area),
        rule: "The circle of the diameter that its standard gives",
        source: TENSILE,
    },
    Output {
        key: "screw_strip_area",
        name: "Strip area of the screw’s thread",
        description: "Area of the screw's thread that must shear",
        value: Measure::Area(|found| found.sizes.screw_area(found.engaged)),
        rule: "As = π n L Kn (1/2n + tan(a) (Es − Kn)): Kn the hole, Es the screw’s effective diameter",
        source: strip::SOURCE,
    },
    Output {
        key: "tapped_strip_area",
        name: "Strip area of the thread in the hole",
        description: "Area of the thread in the hole that must shear",
        value: Measure::Area(|found| found.sizes.nut_area(found.engaged)),
        rule: "An = π n L Ds (1/2n + tan(a) (Ds − En)): Ds the screw, En the hole’s effective diameter",
        source: strip::SOURCE,
    },
    Output {
        key: "pair",
        name: "Reckoned for",
        description: "The screw and nut reckoned for",
        value: Measure::Words(|found| print::sentence(found.sizes.pair.words)),
        rule: "The smallest screw and the slackest thread that the standard allows, where its limits are held",
        source: Source::published(
            "ISO 965-1, ASME B1.1 and BS 93, limits of the screw and of the effective diameter",
        ),
    },
    Output {
        key: "tapped_metal",
        name: "Metal tapped",
        description: "The strength reckoned with for the tapped metal",
        value: Measure::Words(|found| found.tapped_metal()),
        rule: "The least in print for it; its thread shears at six tenths of that, cast iron at about the whole, unconfirmed",
        source: METALS,
    },
    Output {
        key: "screw_metal",
        name: "Metal of the screw",
        description: "The strength reckoned with for the screw",
        value: Measure::SomeWords(|found| {
            found.screw.map(|screw| strength_words(screw.name, &screw.tensile))
        }),
        rule: "By the mark on its head, or the least in print for the metal it is turned from",
        source: METALS,
    },
    Output {
        key: "screw_load",
        name: "The screw breaks at",
        description: "What breaks the screw",
        value: Measure::Force(|found| found.loads().map(|loads| loads.screw)),
        rule: "Tensile area by tensile strength",
        source: TENSILE,
    },
    Output {
        key: "screw_thread_load",
        name: "Its thread strips at",
        description: "What strips the screw's thread",
        value: Measure::Force(|found| found.loads().map(|loads| loads.screw_thread)),
        rule: "Strip area by six tenths of the screw’s tensile strength",
        source: SIX_TENTHS,
    },
    Output {
        key: "tapped_thread_load",
        name: "The thread in the hole strips at",
        description: "What strips the thread in the hole",
        value: Measure::Force(|found| Some(found.tapped_load())),
        rule: "Strip area by what the tapped metal shears at",
        source: SIX_TENTHS,
    },
    Output {
        key: "proof_load",
        name: "Proof load of the screw",
        description: "What a screw of the class bears without stretching for good",
        value: Measure::Force(|found| {
            let proof = found.screw?.proof?;
            Some(proof_load(found.geometry.tensile_area, proof))
        }),
        rule: "Tensile area to three figures by the proof stress of the class",
        source: Source::published("ISO 898-1, proof loads"),
    },
    Output {
        key: "one_larger",
        name: "One drill larger",
        description: "The next larger drill at hand and the engagement it leaves",
        value: Measure::SomeWords(|found| found.larger.map(|drill| found.drill_words(drill))),
        rule: "The next drill at hand that leaves at least 2½ points less thread",
        source: PRACTICE,
    },
    Output {
        key: "one_larger_strip",
        name: "The screw’s thread then holds",
        description: "Strip area of the screw's thread with that drill, of that with the first",
        value: Measure::SomePercent(|found| {
            let larger = found.at_larger()?.screw_area(found.engaged);
            Some(100.0 * in_mm2(larger) / in_mm2(found.sizes.screw_area(found.engaged)))
        }),
        rule: "The same formula, as a part of what it is with the first drill",
        source: strip::SOURCE,
    },
    Output {
        key: "one_larger_joint",
        name: "The joint then bears",
        description: "What the joint bears with that drill, of what it bears with the first",
        value: Measure::SomePercent(|found| {
            let sizes = found.at_larger()?;
            let joint = Joint { sizes, ..found.joint()? };
            let larger = in_newtons(joint.loads(found.engaged).least());
            Some(100.0 * larger / in_newtons(found.loads()?.least()))
        }),
        rule: "Unaltered where the screw or the thread in the hole gives way first",
        source: strip::SOURCE,
    },
];
