//! Which drill is taken: the policy, worked by hand beside the program.
//!
//! # Source
//! Common practice, no source (the policy). The percentages follow from BS 93, BS 84, BS 811 and ISO
//! 68-1, the likely ones from a table of oversizes that is recalled, unconfirmed.

use holewright_core::calc::aim::Aim;
use holewright_core::calc::tapping::Remark;
use holewright_core::plan::{AtHand, Error, Hole, HoleSpec, build};
use holewright_core::tables::drills::Series;
use holewright_core::units::{mm, print};

use crate::cases::{of_series, only, spec};

/// A plan asked for by thread, metal and depth, and the drill that was reckoned apart for it.
struct Worked {
    thread: (&'static str, &'static str),
    material: &'static str,
    depth_mm: f64,
    aim: Aim,
    drill: &'static str,
    percent: &'static str,
    likely: Option<&'static str>,
}

const fn worked(
    thread: (&'static str, &'static str),
    material: &'static str,
    depth_mm: f64,
    drill: &'static str,
    percent: &'static str,
) -> Worked {
    Worked { thread, material, depth_mm, aim: Aim::Usual, drill, percent, likely: None }
}

impl Worked {
    const fn likely(self, likely: &'static str) -> Self {
        Self { likely: Some(likely), ..self }
    }

    const fn easy(self) -> Self {
        Self { aim: Aim::Easy, ..self }
    }
}

/// Series number and metric at hand.
const WORKED: [Worked; 12] = [
    worked(("ba", "5"), "gunmetal", 8.0, "No. 36", "69.9 %").likely("60.7 %"),
    worked(("ba", "2"), "free-cutting-mild-steel", 10.0, "4 mm", "72.0 %").likely("63.5 %"),
    worked(("ba", "1"), "bright-mild-steel", 6.0, "4.5 mm", "74.1 %").likely("66.0 %"),
    worked(("ba", "2"), "bright-mild-steel", 6.0, "4 mm", "72.0 %"),
    worked(("metric", "m3"), "stainless-303", 3.0, "No. 38", "65.0 %").likely("55.4 %"),
    worked(("me-40", "1-4"), "free-cutting-brass", 6.3, "5.7 mm", "79.9 %"),
    worked(("bsw", "1-4"), "bright-mild-steel", 12.0, "No. 7", "76.5 %"),
    worked(("ba", "8"), "stainless-304", 12.0, "No. 49", "67.0 %"),
    worked(("ba", "10"), "silver-steel", 3.0, "1.4 mm", "71.4 %"),
    worked(("ba", "4"), "copper", 3.0, "3.1 mm", "63.1 %"),
    worked(("metric", "m2"), "phosphor-bronze-drawn", 4.0, "1.65 mm", "67.4 %"),
    worked(("metric", "m3"), "bright-mild-steel", 6.0, "2.65 mm", "53.9 %").easy().likely("44.1 %"),
];

fn asked(case: &Worked) -> HoleSpec {
    let (system, size) = case.thread;
    HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(case.depth_mm)),
        aim: case.aim,
        at_hand: of_series(&[Series::Number, Series::Metric]),
        ..spec(system, size, case.material)
    }
}

#[test]
fn twelve_holes_reckoned_apart() {
    let mut wrong = Vec::new();
    for case in &WORKED {
        let spec = asked(case);
        let chosen = build(&spec).expect("a plan").tapping.chosen;
        let percent = print::percent(chosen.engagement_percent);
        let likely = print::percent(chosen.likely_engagement_percent);
        let found =
            (chosen.drill.label.as_str(), percent.as_str(), case.likely.map(|_| likely.as_str()));
        if found != (case.drill, case.percent, case.likely) {
            wrong.push(format!("{:?} in {}: {found:?}", case.thread, case.material));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn beyond_the_standard_by_an_allowance_in_tough_metal_alone() {
    // 8 BA in 304: No. 49 is 1.854 mm, 0.013 past BS 93.
    let by = |case: &Worked| {
        let spec = asked(case);
        let tapping = build(&spec).expect("a plan").tapping;
        let limit = tapping.largest_hole.expect("a limit");
        print::mm(tapping.chosen.drill.diameter - limit.diameter, 3)
    };
    assert_eq!(by(&WORKED[7]), "0.013 mm");
    let within = WORKED.iter().filter(|case| {
        let spec = asked(case);
        build(&spec).expect("a plan").tapping.chosen.within_standard == Some(true)
    });
    // All but 8 BA in 304, 4 BA in copper and the easy M3 in mild steel.
    assert_eq!(within.count(), 9);
}

#[test]
fn no_drill_will_do_says_which_would() {
    let halves: Vec<(Series, &str)> =
        ["1", "1.5", "2", "2.5", "3", "3.5", "4", "4.5", "5", "5.5", "6"]
            .map(|size| (Series::Metric, size))
            .to_vec();
    let spec = HoleSpec { at_hand: only(&halves), ..spec("ba", "6", "gunmetal") };
    let tapping = build(&spec).expect("a plan").tapping;
    assert_eq!(tapping.chosen.drill.label, "2.5 mm");
    assert_eq!(print::percent(tapping.chosen.engagement_percent), "47.2 %");
    assert!(tapping.remarks.contains(&Remark::LikelyThin));
    let get = tapping.get.expect("a drill to get");
    assert_eq!(get.within_standard, Some(true));
    assert!((60.0..=80.0).contains(&get.engagement_percent), "{get:?}");
    let whole = HoleSpec { at_hand: AtHand::All, ..spec.clone() };
    let whole = build(&whole).expect("a plan").tapping;
    assert_eq!((whole.chosen, whole.get), (get, None));
}

#[test]
fn nothing_usable_at_hand_is_planned_with_the_drill_to_get() {
    let of =
        |size| HoleSpec { at_hand: only(&[(Series::Metric, size)]), ..spec("ba", "6", "gunmetal") };
    for (size, words) in [
        ("6", "The nearest at hand, 6 mm, is as large as the thread or larger."),
        ("1", "The nearest at hand, 1 mm, is smaller than the core of the thread."),
    ] {
        let spec = of(size);
        let tapping = build(&spec).expect("a plan").tapping;
        assert_eq!(tapping.get.expect("a drill to get").drill.label, "2.35 mm");
        assert_eq!(tapping.nearest_in_words(), words);
    }
    let none = HoleSpec { at_hand: AtHand::Only(Vec::new()), ..of("6") };
    let Err(Error::Calc(error)) = build(&none) else { panic!("nothing is at hand") };
    assert!(error.to_string().contains(": get 2.35 mm, which leaves "), "{error}");
}

#[test]
fn the_allowance_of_an_easy_thread_serves_where_the_standard_leaves_no_room() {
    // 1/4 in BSW: 4.9 mm leaves 90 %, 5.2 mm passes BS 84 by 0.04 mm.
    let drawer = only(&[(Series::Metric, "4.8"), (Series::Metric, "4.9"), (Series::Metric, "5.2")]);
    let spec = HoleSpec { at_hand: drawer, ..spec("bsw", "1-4", "bright-mild-steel") };
    let tapping = build(&spec).expect("a plan").tapping;
    assert_eq!(tapping.chosen.drill.label, "5.2 mm");
    assert!(tapping.remarks.contains(&Remark::BeyondForEase), "{:?}", tapping.remarks);
}

#[test]
fn a_drill_beyond_the_standard_by_need_is_never_said_to_be_held_to_it() {
    for material in ["bright-mild-steel", "stainless-304"] {
        let spec = HoleSpec {
            at_hand: only(&[
                (Series::Metric, "5.3"),
                (Series::Metric, "5.4"),
                (Series::Metric, "5.5"),
            ]),
            ..spec("bsf", "1-4", material)
        };
        let plan = build(&spec).expect("a plan");
        assert!(plan.tapping.is_beyond_by_need(), "{material}");
        let reasons: Vec<_> =
            plan.listed.iter().filter_map(|row| row.why_different.as_deref()).collect();
        assert!(!reasons.is_empty(), "{material}");
        let held = |said: &str| said.contains("largest hole of the standard decides");
        assert!(!reasons.into_iter().any(held), "{material}");
        let said = plan.every_caution().map(|said| said.text.as_ref());
        assert!(!said.into_iter().any(|said| said.contains("allows no hole over")), "{material}");
    }
}
