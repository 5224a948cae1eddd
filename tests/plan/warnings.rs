//! What a plan says of its drill, its hole and its machine, word by word where the words turn on a figure.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::calc::aim::Aim;
use holewright_core::calc::engagement::{hole_for, percent};
use holewright_core::calc::thread_form::geometry;
use holewright_core::plan::{Action, HoleSpec, Level, Over, Tap, UpperHole, build};
use holewright_core::tables::drills::Series;
use holewright_core::tables::{materials, threads};
use holewright_core::units::{Length, mm};

use super::cases::{machines, only, pump_cover, spec};

/// The warnings of a plan that hold these words.
fn warnings(spec: &HoleSpec, words: &str) -> Vec<(Level, String)> {
    let plan = build(spec).unwrap();
    let found = plan.every_caution().filter(|warning| warning.text.contains(words));
    found.map(|warning| (warning.level, warning.text.to_string())).collect()
}

#[track_caller]
fn check(spec: &HoleSpec, words: &str, level: Level, expected: &str) {
    assert_eq!(warnings(spec, words), [(level, expected.to_owned())]);
}

fn metric(size: &str) -> (Series, &str) {
    (Series::Metric, size)
}

/// M8 in brass, where 74 % is aimed for: 6.8 mm leaves 73.9 %.
fn m8(drill: &str) -> HoleSpec {
    HoleSpec { at_hand: only(&[metric(drill)]), ..spec("metric", "m8", "free-cutting-brass") }
}

#[test]
fn a_drill_beyond_the_standard_is_called_so() {
    let thin = HoleSpec { depth: Some(mm(3.0)), ..spec("metric", "m4", "copper") };
    check(
        &thin,
        "beyond the largest hole",
        Level::Note,
        "No. 29 is 0.032 mm beyond the largest hole of 6H (3.422 mm): usual in small model work, outside the standard.",
    );
    assert!(warnings(&thin, "No standard limit").is_empty());
    // BS 93 ends at 16 BA.
    let older = spec("ba", "17", "free-cutting-brass");
    assert_eq!(warnings(&older, "No standard limit").len(), 1);
    assert!(warnings(&older, "beyond the largest hole").is_empty());
    // All that keeps to BS 84 leaves over 83 %.
    let drawer = only(&[metric("4.9"), metric("5.2")]);
    let eased = HoleSpec { at_hand: drawer, ..spec("bsw", "1-4", "bright-mild-steel") };
    check(
        &eased,
        "beyond the largest hole",
        Level::Note,
        "5.2 mm is 0.044 mm beyond the largest hole of BS 84 (5.156 mm): every drill at hand within it leaves over 83 %, which is hard on the tap.",
    );
    assert!(warnings(&m8("6.8"), "largest hole").is_empty());
}

#[test]
fn a_drill_far_from_the_aim_says_which_way_and_why() {
    let steel = HoleSpec { depth: Some(mm(15.0)), ..spec("metric", "m10", "bright-mild-steel") };
    check(
        &steel,
        "aimed for",
        Level::Note,
        "71.3 % is more than the 64 % aimed for: 6H allows no hole over 8.676 mm. The tap works harder.",
    );
    // 6.35 mm less 4.9149 over 1.626 mm of full thread on both sides.
    let tight = HoleSpec {
        at_hand: only(&[(Series::Number, "10")]),
        ..spec("bsw", "1-4", "free-cutting-brass")
    };
    check(
        &tight,
        "aimed for",
        Level::Caution,
        "88.2 % is more than the 74 % aimed for: the tap works harder. Better: get No. 7 (5.105 mm), 76.5 %.",
    );
    check(
        &m8("7"),
        "aimed for",
        Level::Note,
        "61.6 % is less than the 74 % aimed for: some thread is given up. Better: get 6.8 mm, 73.9 %.",
    );
    assert!(warnings(&m8("6.8"), "aimed for").is_empty());
}

#[test]
fn a_drill_that_would_do_better_is_named_with_its_size() {
    let fraction = |size| HoleSpec { at_hand: only(&[(Series::Fraction, size)]), ..m8("6.8") };
    check(
        &fraction("17-64"),
        "not at hand",
        Level::Note,
        "A drill not at hand comes nearer the aim of 74.0 %: 6.8 mm, 73.9 %. With yours, the tap works harder for a little more thread.",
    );
    // Over 83 % is hard on the tap, and stands at the head.
    check(
        &m8("6.6"),
        "aimed for",
        Level::Caution,
        "86.2 % is more than the 74 % aimed for: the tap works harder. Better: get 6.8 mm, 73.9 %.",
    );
    // Over 90 % is no thread to tap: that drill will not do.
    check(
        &m8("6.5"),
        "would leave",
        Level::Caution,
        "No drill at hand will do: get 6.8 mm, 73.9 %. The nearest at hand, 6.5 mm, would leave 92.4 %, too much for a hand tap.",
    );
    // What is no size in millimetres by its name has it behind.
    let drawer = HoleSpec { at_hand: only(&[(Series::Number, "38")]), ..pump_cover() };
    let [(_, said)] = &warnings(&drawer, "Better")[..] else { panic!("one is better") };
    assert!(said.ends_with("Better: get No. 36 (2.705 mm), 69.9 %."), "{said}");
}

#[test]
fn a_hole_that_comes_out_large_may_leave_too_little_thread() {
    let of = |drill: &str, tap| HoleSpec {
        tap,
        at_hand: only(&[metric(drill)]),
        ..spec("metric", "m2", "copper")
    };
    let words = "If the drill cuts as large as drills usually do";
    // 3.175 mm leaves M3.5 × 0.35 71.5 %; cut 0.076 mm larger, 54.7 %, and no other drill 55.
    let fine = HoleSpec { aim: Aim::Strong, ..spec("metric-fine", "m3.5x0.35", "gunmetal") };
    let [(Level::Caution, said)] = &warnings(&fine, words)[..] else { panic!("no caution") };
    assert!(said.contains("only about 55 % of thread is left"), "{said}");
    assert!(warnings(&of("1.75", Tap::Hand), words).is_empty(), "another is to be got");
    assert!(warnings(&of("1.6", Tap::Hand), words).is_empty(), "77 %");
    assert!(warnings(&of("1.8", Tap::Forming), words).is_empty(), "a formed thread grows inwards");
}

#[test]
fn a_measured_hole_is_judged_by_what_it_leaves() {
    let measured = |hole: Length| {
        let spec = HoleSpec { measured_hole: Some(hole), ..pump_cover() };
        let [(level, said)] = &warnings(&spec, "The hole as measured leaves")[..] else {
            panic!("said once")
        };
        (*level, said.clone())
    };
    // 5 BA: 0.708 mm is 100 %.
    let (level, said) = measured(mm(2.89));
    assert_eq!((level, said.contains("43.8 % of thread")), (Level::Caution, true), "{said}");
    assert_eq!(measured(mm(2.87)).0, Level::Note, "46.6 %");
    // At the limit itself it is enough.
    let thread = threads::all()
        .find(|thread| {
            let figures = geometry(thread);
            let hole = hole_for(thread.form(), &figures, 45.0);
            thread.taper.is_none()
                && percent(thread.form(), &figures, hole).total_cmp(&45.0).is_eq()
                && build(&HoleSpec::new(thread, materials::find("gunmetal").unwrap())).is_ok()
        })
        .unwrap();
    let at = HoleSpec {
        measured_hole: Some(hole_for(thread.form(), &geometry(thread), 45.0)),
        ..HoleSpec::new(thread, materials::find("gunmetal").unwrap())
    };
    let [(level, _)] = &warnings(&at, "The hole as measured leaves 45.0 %")[..] else {
        panic!("said once")
    };
    assert_eq!(*level, Level::Note);
}

#[test]
fn a_part_drilled_already_does_not_slow_the_drill_below_it() {
    // 2000 rev/min suits 5 mm in brass, and is too fast in stainless steel.
    let with = |hole| HoleSpec {
        over: Some(Over {
            material: materials::find("stainless-304").unwrap(),
            thickness: Some(mm(4.0)),
            hole,
        }),
        at_hand: only(&[metric("5"), metric("6.6")]),
        machines: machines("2000"),
        ..spec("metric", "m6", "free-cutting-brass")
    };
    let words = "is too fast for the 5 mm drill";
    let [(_, said)] = &warnings(&with(UpperHole::Tapping), words)[..] else { panic!("too fast") };
    assert!(said.contains("The largest drill it suits in stainless steel 304 is"), "{said}");
    assert!(warnings(&with(UpperHole::Clearance), words).is_empty());
}

#[test]
fn what_one_metal_of_two_has_is_said_of_it_alone() {
    let spec = HoleSpec {
        over: Some(Over {
            material: materials::find("bright-mild-steel").unwrap(),
            thickness: Some(mm(4.0)),
            hole: UpperHole::Tapping,
        }),
        ..pump_cover()
    };
    let [(_, said)] = &warnings(&spec, "sharp strings")[..] else { panic!("said once") };
    assert!(said.starts_with("Bright mild steel: the swarf"), "{said}");
}

#[test]
fn every_step_has_a_word_for_addresses_and_words_for_the_page() {
    let expected = [
        (Action::MarkOut, "mark-out", "Mark out"),
        (Action::Spot, "spot", "Spot"),
        (Action::SpotThrough, "spot-through", "Spot through"),
        (Action::Register, "register", "Hold in register"),
        (Action::Drill, "drill", "Drill"),
        (Action::Separate, "separate", "Separate"),
        (Action::Deburr, "deburr", "Deburr"),
        (Action::Chamfer, "chamfer", "Chamfer"),
        (Action::Tap, "tap", "Tap"),
        (Action::OpenOut, "open-out", "Open out"),
        (Action::Seat, "seat", "Seat the head"),
        (Action::TryScrew, "try-screw", "Try the screw"),
        (Action::NextHole, "next-hole", "The next hole"),
    ];
    for (action, slug, words) in expected {
        assert_eq!((action.slug(), action.words()), (slug, words));
    }
    assert_eq!(
        [Level::Note, Level::Caution, Level::Danger].map(Level::slug),
        ["note", "caution", "danger"]
    );
}
