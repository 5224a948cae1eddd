//! Holes whose centres are off: the sum against circles laid over each other, and what is said to do.

#![expect(clippy::panic, reason = "an answer that lacks a row must stop the test")]

use holewright_core::calc::position::{
    Case, Duty, Joint, Position, Register, Remedy, Stage, hole_alike, position, remedies,
};
use holewright_core::calculators::position::DECLARATION;
use holewright_core::calculators::{AnswerKind, Answered, Value};
use holewright_core::units::{in_mm, mm};
use proptest::prelude::*;

/// Whether some place of the screw's axis lies in both holes' reach; both are intervals on one line, since
/// the worst is that each is off away from the other.
fn circles_meet(joint: &Joint) -> bool {
    let reach = |hole: f64| (hole - in_mm(joint.screw)) / 2.0;
    let upper = (-in_mm(joint.upper_error), reach(in_mm(joint.hole)));
    let below = in_mm(joint.lower_error + joint.lean);
    let lower = match joint.case {
        Case::Fixed => (below, 0.0),
        Case::Floating { lower } => (below, reach(in_mm(lower))),
    };
    let ends = |(centre, reach): (f64, f64)| (centre - reach, centre + reach);
    let ((a, b), (c, d)) = (ends(upper), ends(lower));
    a.max(c) <= b.min(d) + 1e-9
}

prop_compose! {
    fn any_joint()(
        screw in 1.0f64..12.0,
        wider in 0.0f64..1.5,
        wider_below in 0.0f64..1.5,
        is_fixed in any::<bool>(),
        upper_error in 0.0f64..0.6,
        lower_error in 0.0f64..0.6,
        lean in 0.0f64..0.3,
    ) -> Joint {
        let lower = mm(screw + wider_below);
        Joint {
            case: if is_fixed { Case::Fixed } else { Case::Floating { lower } },
            register: Register::Pattern,
            screw: mm(screw),
            hole: mm(screw + wider),
            upper_error: mm(upper_error),
            lower_error: mm(lower_error),
            lean: mm(lean),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn position_is_that_of_circles_laid_over_each_other(joint in any_joint()) {
        let found = position(&joint);
        let near = in_mm(found.room - found.off).abs() < 1e-3;
        prop_assert!(near || found.goes_together == circles_meet(&joint), "{found:?}");
        let located = Joint { register: Register::Located, ..joint };
        prop_assert_eq!(position(&located), found, "a spigot shares no error either");
    }

    #[test]
    fn position_names_the_hole_that_just_does(joint in any_joint()) {
        let found = position(&joint);
        let with = |hole| Joint { hole, ..joint };
        prop_assert!(position(&with(found.hole_needed)).goes_together, "{found:?}");
        if found.hole_needed > joint.screw + mm(0.01) {
            prop_assert!(!position(&with(found.hole_needed - mm(0.005))).goes_together);
        }
        let alike = hole_alike(joint.screw, found.off);
        let both = |hole| Joint { hole, case: Case::Floating { lower: hole }, ..joint };
        prop_assert!(position(&both(alike)).goes_together);
        prop_assert!(found.off < mm(0.01) || !position(&both(alike - mm(0.005))).goes_together);
    }

    #[test]
    fn position_says_how_far_each_centre_may_be_off(joint in any_joint()) {
        let Some(each) = position(&joint).each_may_be_off else {
            return Err(TestCaseError::fail("a pattern has its errors"));
        };
        let with = |error| position(&Joint { upper_error: error, lower_error: error, ..joint });
        if each > mm(0.0) {
            prop_assert!(with(each).goes_together);
            prop_assert!(!with(each + mm(0.002)).goes_together);
        } else {
            prop_assert!(!with(mm(0.002)).goes_together);
        }
    }

    #[test]
    fn position_of_one_hole_and_free_parts_turns_on_the_lean_alone(joint in any_joint()) {
        let free = |upper_error| position(&Joint { register: Register::Free, upper_error, ..joint });
        let (here, there) = (free(joint.upper_error), free(mm(50.0)));
        prop_assert_eq!(here, there);
        let Position { off, each_may_be_off, .. } = here;
        prop_assert!((in_mm(off * 2.0) - in_mm(joint.lean)).abs() < 1e-12);
        prop_assert_eq!(each_may_be_off, None);
    }
}

/// A hole that is smaller than its screw is passed by none, whatever the other hole gives.
#[test]
fn position_lets_no_screw_through_a_hole_that_is_smaller() {
    let joint = Joint {
        case: Case::Floating { lower: mm(5.0) },
        register: Register::Pattern,
        screw: mm(3.0),
        hole: mm(2.9),
        upper_error: mm(0.0),
        lower_error: mm(0.0),
        lean: mm(0.0),
    };
    assert!(!position(&joint).goes_together);
    assert!(position(&Joint { hole: mm(3.0), ..joint }).goes_together);
}

const STAGES: [Stage; 3] = [Stage::Marked, Stage::Cone, Stage::Drilled];
const DUTIES: [Duty; 3] = [Duty::Holds, Duty::Locates, Duty::Pressure];

#[test]
fn position_offers_nothing_that_the_stage_or_the_duty_forbids() {
    for stage in STAGES {
        for duty in DUTIES {
            let offered = remedies(stage, duty);
            let has = |remedy| offered.contains(&remedy);
            let cuts = [Remedy::Open, Remedy::Elongate, Remedy::Dowel, Remedy::Plug];
            assert!(!offered.is_empty(), "{stage:?} {duty:?}");
            assert_eq!(has(Remedy::DrawOver), stage == Stage::Cone, "only a cone can be drawn");
            assert!(duty != Duty::Pressure || !cuts.into_iter().any(has), "{stage:?}");
            let asks = duty == Duty::Pressure && stage != Stage::Marked;
            assert_eq!(has(Remedy::AskInspector), asks, "{stage:?} {duty:?}");
            let first = offered.first() == Some(&Remedy::AskInspector);
            assert_eq!(first, asks, "nothing is cut before: {stage:?} {duty:?}");
            let widens = has(Remedy::Open) || has(Remedy::Elongate);
            assert!(duty != Duty::Locates || !widens, "a hole that locates is not opened");
            assert!(stage == Stage::Drilled || !cuts.into_iter().any(has), "{stage:?} {duty:?}");
        }
    }
}

fn found(pairs: &[(&'static str, &str)]) -> Answered {
    let AnswerKind::Rows(rows) = DECLARATION.answer else { panic!("it answers in rows") };
    rows.answer(&DECLARATION.asked(pairs.iter().copied())).expect("an answer")
}

fn value<'a>(found: &'a Answered, key: &str) -> &'a Value {
    let figure = found.figures.iter().find(|figure| figure.key == key);
    &figure.expect("a row of that key").value
}

/// 2.7 mm on a 2.5 mm stud is 0.1 mm to one side, shared by both parts (needs no source: half the difference).
#[test]
fn position_shares_the_float_between_both_parts() {
    let stud = [("diameter", "2.5 mm"), ("hole", "2.7 mm")];
    let with = |upper, lower| {
        let errors = [("upper_error", upper), ("lower_error", lower)];
        found(&stud.into_iter().chain(errors).collect::<Vec<_>>())
    };
    let fits = with("0.05 mm", "0.05 mm");
    assert_eq!(value(&fits, "what_to_do"), &Value::Sentences(Vec::new()));
    assert_eq!(value(&fits, "short_by_mm"), &Value::Nothing);
    let Value::Length(each) = value(&fits, "each_may_be_off_mm") else { panic!("a length") };
    assert!((in_mm(*each) - 0.05).abs() < 1e-9);
    let fouls = with("0.1 mm", "0.05 mm");
    let Value::Sentences(to_do) = value(&fouls, "what_to_do") else { panic!("sentences") };
    assert!(to_do[0].starts_with("Open the clearance hole to 2.8 mm, drill 2.8 mm"), "{to_do:?}");
    assert_eq!(value(&fouls, "spare_mm"), &Value::Nothing);
    let Value::Length(short) = value(&fouls, "short_by_mm") else { panic!("a length") };
    assert!((in_mm(*short) - 0.05).abs() < 1e-9);
}

/// The head of an M3 screw is 5.5 mm across: it would fall through the hole that would do.
#[test]
fn position_opens_no_hole_that_the_head_would_not_cover() {
    let far = found(&[("thread", "M3"), ("upper_error", "3"), ("lower_error", "0")]);
    let Value::Sentences(to_do) = value(&far, "what_to_do") else { panic!("sentences") };
    assert!(to_do[0].contains("not opened so far"), "{to_do:?}");
    assert!(!to_do.iter().any(|said| said.starts_with("Open ")), "{to_do:?}");
    let near = found(&[("thread", "M3"), ("upper_error", "0.4"), ("lower_error", "0")]);
    let Value::Sentences(to_do) = value(&near, "what_to_do") else { panic!("sentences") };
    assert!(to_do[0].starts_with("Open the clearance hole to 3.8 mm"), "{to_do:?}");
}

#[test]
fn position_on_a_pressure_part_stops_for_the_inspector() {
    let asked =
        [("thread", "5 BA"), ("upper_error", "0.5"), ("lower_error", "0.5"), ("duty", "pressure")];
    let stopped = found(&asked);
    let Value::Sentences(to_do) = value(&stopped, "what_to_do") else { panic!("sentences") };
    assert_eq!(to_do.len(), 1);
    assert!(to_do[0].starts_with("Stop.") && to_do[0].contains("inspector"), "{to_do:?}");
}

/// What cannot be together is refused at the field to be changed.
#[test]
fn position_refuses_what_cannot_be_together() {
    let AnswerKind::Rows(rows) = DECLARATION.answer else { panic!("it answers in rows") };
    for (pairs, field) in [
        (&[("thread", "M3"), ("hole", "2.9 mm")][..], "hole"),
        (&[("thread", "M3"), ("case", "floating"), ("lower_hole", "2.5 mm")], "lower_hole"),
        (&[("thread", "M3"), ("case", "fixed"), ("lower_hole", "3.4 mm")], "lower_hole"),
        (&[("upper_error", "0.1")], "thread"),
    ] {
        let asked = DECLARATION.asked(pairs.iter().copied());
        let errors = rows.answer(&asked).expect_err("it cannot be together");
        assert_eq!(
            errors.iter().map(|error| error.field).collect::<Vec<_>>(),
            [field],
            "{pairs:?}"
        );
    }
}

/// A lower clearance hole that is given is there, and a lean shows over the part's thickness or the screw's.
#[test]
fn position_takes_what_is_said_of_the_lower_hole_and_the_lean() {
    let room = |pairs: &[(&'static str, &str)]| {
        let answered = found(&[&[("thread", "M4"), ("hole", "4.4 mm")], pairs].concat());
        let length = |key: &str| match value(&answered, key) {
            Value::Length(length) => (in_mm(*length) * 1e4).round() / 1e4,
            other => panic!("{other:?}"),
        };
        (length("room_mm"), length("off_mm"))
    };
    assert_eq!(room(&[]), (0.2, 0.0));
    assert_eq!(room(&[("lower_hole", "4.2 mm")]), (0.3, 0.0));
    assert_eq!(room(&[("case", "floating")]), (0.4, 0.0));
    // 4 and 10 mm times the tangent of 1°.
    assert_eq!(room(&[("lean", "1")]), (0.2, 0.0698));
    assert_eq!(room(&[("lean", "1"), ("thickness", "10")]), (0.2, 0.1746));
}

/// Every dimension of the drawing is lettered on it, within the sheet.
#[test]
fn position_is_drawn_with_its_sizes_within_the_sheet() {
    for pairs in [
        &[("thread", "M3"), ("upper_error", "0.1"), ("lower_error", "0.05")][..],
        &[("thread", "M3"), ("upper_error", "0.6"), ("lower_error", "0.6")],
        &[
            ("thread", "M12"),
            ("case", "floating"),
            ("hole", "13"),
            ("lower_hole", "12.5"),
            ("upper_error", "2"),
        ],
        &[("diameter", "0.5"), ("upper_error", "1000"), ("lower_error", "2000")],
        &[("thread", "10 BA")],
    ] {
        let drawing = found(pairs).drawing.expect("a drawing");
        let document = roxmltree::Document::parse(&drawing).expect("XML");
        let texts = || document.descendants().filter(|node| node.has_tag_name("text"));
        let lettered: Vec<&str> = texts().filter_map(|text| text.text()).collect();
        for name in ["screw ⌀", "apart ", "hole ⌀"] {
            assert!(lettered.iter().any(|text| text.contains(name)), "{name}: {lettered:?}");
        }
        let size =
            |name: &str| document.root_element().attribute(name).and_then(|it| it.parse().ok());
        let (wide, high): (f64, f64) =
            (size("width").expect("a width"), size("height").expect("a height"));
        for text in texts() {
            let place = |name: &str| text.attribute(name).and_then(|it| it.parse::<f64>().ok());
            let (x, y) = (place("x").expect("x"), place("y").expect("y"));
            assert!((0.0..wide).contains(&x) && (0.0..high).contains(&y), "{:?}", text.text());
        }
    }
}
