//! Where a plan changes its mind: each rule just short of its limit, at it, and just beyond.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::calc;
use holewright_core::plan::{
    Action, Error, Hole, HolePlan, HoleSpec, Level, Over, Tap, TapSteel, UpperHole, build,
};
use holewright_core::tables::drills::Series;
use holewright_core::tables::materials;
use holewright_core::tables::threads::read::Hand;
use holewright_core::units::{Length, in_mm, mm, print};

use super::cases::{machines, only, pump_cover, spec};

fn over(material: &str, thickness: Option<f64>, hole: UpperHole) -> Option<Over> {
    let material = materials::find(material).unwrap();
    Some(Over { material, thickness: thickness.map(mm), hole })
}

/// Whether a plan warns in these words, at this level and at no other.
#[track_caller]
fn warns(spec: &HoleSpec, level: Level, words: &str) -> bool {
    let plan = build(spec).unwrap();
    let found = plan.every_caution().filter(|warning| warning.text.contains(words));
    let levels: Vec<Level> = found.map(|warning| warning.level).collect();
    assert!(levels.iter().all(|found| *found == level), "{words}: {levels:?}");
    !levels.is_empty()
}

#[test]
fn a_thread_is_one_pitch_to_sixty_diameters_long() {
    let of_depth = |depth| HoleSpec { depth: Some(depth), ..spec("metric", "m3", "gunmetal") };
    let refused = |spec: &HoleSpec| matches!(build(spec), Err(Error::Calc(calc::Error::OutOfRange { quantity, .. })) if quantity == "depth");
    for (depth, is_refused) in
        [(mm(0.49), true), (mm(0.5), false), (mm(180.0), false), (mm(180.1), true)]
    {
        assert_eq!(refused(&of_depth(depth)), is_refused, "{}", in_mm(depth));
    }
    let thick = HoleSpec {
        over: over("gunmetal", Some(180.1), UpperHole::Tapping),
        ..spec("metric", "m3", "gunmetal")
    };
    let Err(Error::Calc(error)) = build(&thick) else { panic!("no such part") };
    let calc::Error::OutOfRange { quantity, least, most, .. } = error else { panic!("{error}") };
    assert_eq!((quantity, least, most), ("thickness of the upper part", mm(0.5), mm(180.0)));
}

#[test]
fn a_hole_is_smaller_than_its_thread() {
    let of = |hole| HoleSpec { measured_hole: Some(mm(hole)), ..pump_cover() };
    assert!(build(&of(3.199)).is_ok());
    assert!(matches!(build(&of(3.2)), Err(Error::NothingLeft { .. })));
}

#[test]
fn a_small_tap_in_a_tough_or_a_hardening_metal_is_named() {
    let small =
        |size, material| warns(&spec("metric", size, material), Level::Caution, "A small tap in");
    assert!(small("m2.5", "copper"), "tough");
    assert!(small("m2.5", "phosphor-bronze-drawn"), "hardens");
    assert!(!small("m3", "copper") && !small("m3", "phosphor-bronze-drawn"), "not small");
    assert!(!small("m2.5", "bright-mild-steel"), "neither");
}

#[test]
fn each_kind_of_tap_has_its_warning() {
    let m3 = spec("metric", "m3", "copper");
    let says = |spec: &HoleSpec| {
        let carbon = warns(spec, Level::Caution, "A carbon steel tap snaps without warning");
        [
            warns(spec, Level::Note, "must all be left-hand"),
            warns(spec, Level::Caution, "never for a cutting tap"),
            carbon,
            warns(spec, Level::Danger, "turn the chuck by hand"),
        ]
    };
    assert_eq!(says(&m3), [false, false, false, true]);
    let left = HoleSpec { hand: Hand::Left, tap: Tap::Machine, ..m3.clone() };
    assert_eq!(says(&left), [true, false, false, false]);
    let forming = HoleSpec { tap: Tap::Forming, ..m3.clone() };
    assert_eq!(says(&forming), [false, true, false, false]);
    let carbon = HoleSpec { tap_steel: TapSteel::Carbon, ..m3 };
    assert_eq!(says(&carbon), [false, false, true, true]);
}

#[test]
fn an_upper_part_over_four_drills_thick_may_lead_the_drill_astray() {
    // Four times 2.65 mm is 10.6 mm.
    let thick = |thickness, hole| {
        let spec = HoleSpec {
            over: over("free-cutting-brass", Some(thickness), hole),
            at_hand: only(&[(Series::Metric, "2.65"), (Series::Metric, "3.4")]),
            ..pump_cover()
        };
        warns(&spec, Level::Caution, "over four drill diameters thick")
    };
    assert!(!thick(10.6, UpperHole::Tapping) && thick(10.7, UpperHole::Tapping));
    assert!(!thick(10.7, UpperHole::Clearance), "it is drilled already");
}

#[test]
fn what_is_not_known_of_an_upper_part_is_said() {
    let of = |thickness| HoleSpec {
        over: over("free-cutting-brass", thickness, UpperHole::Tapping),
        ..pump_cover()
    };
    let unknown = "upper part's thickness was not given";
    assert!(warns(&of(None), Level::Note, unknown) && !warns(&of(Some(4.0)), Level::Note, unknown));
    let none_clears = "No drill at hand is right for the screw to pass: the hole wants 3.328 mm";
    assert!(!warns(&of(Some(4.0)), Level::Caution, none_clears));
    let few = HoleSpec { at_hand: only(&[(Series::Metric, "2.65")]), ..of(Some(4.0)) };
    assert!(warns(&few, Level::Caution, none_clears));
    // 4 mm is further over the hole than 1/64 in and than a tenth of it; 3.7 mm is not.
    for (drill, is_right) in [("3.7", true), ("3.8", false), ("4", false)] {
        let at_hand = only(&[(Series::Metric, "2.65"), (Series::Metric, drill)]);
        let spec = HoleSpec { at_hand, ..of(Some(4.0)) };
        assert_eq!(!warns(&spec, Level::Caution, none_clears), is_right, "{drill}");
    }
    let alone = HoleSpec { over: None, ..few };
    assert!(!warns(&alone, Level::Caution, none_clears), "nothing is screwed down");
}

#[test]
fn steam_and_pressure_are_named_where_a_metal_of_the_plan_meets_them() {
    let named = |spec: &HoleSpec| warns(spec, Level::Danger, "Steam, boilers, pressure");
    assert!(named(&spec("ba", "5", "gunmetal")) && !named(&spec("ba", "5", "gauge-plate")));
    let covered = HoleSpec {
        over: over("gunmetal", Some(4.0), UpperHole::Tapping),
        ..spec("ba", "5", "gauge-plate")
    };
    assert!(named(&covered));
}

#[test]
fn what_two_metals_share_is_said_once() {
    let heard = |upper: &str, lower: &str| -> Vec<String> {
        let spec =
            HoleSpec { over: over(upper, Some(4.0), UpperHole::Tapping), ..spec("ba", "5", lower) };
        let plan = build(&spec).unwrap();
        let of_skin = plan.every_caution().filter(|warning| warning.text.contains("dermatitis"));
        of_skin.map(|warning| warning.text.to_string()).collect()
    };
    let [said] = &heard("bright-mild-steel", "gunmetal")[..] else { panic!("said twice") };
    assert!(said.starts_with("Gunmetal and bright mild steel: cutting fluid"), "{said}");
    let [said] = &heard("gunmetal", "gunmetal")[..] else { panic!("said twice") };
    assert!(said.starts_with("Gunmetal: cutting fluid"), "{said}");
    let hardens = |upper: &str, lower: &str| {
        let spec =
            HoleSpec { over: over(upper, Some(4.0), UpperHole::Tapping), ..spec("ba", "5", lower) };
        let plan = build(&spec).unwrap();
        plan.every_caution().filter(|warning| warning.text.contains("never dwell")).count()
    };
    let counts = [
        hardens("gunmetal", "gunmetal"),
        hardens("stainless-304", "gunmetal"),
        hardens("stainless-304", "stainless-304"),
        hardens("stainless-304", "stainless-316"),
    ];
    assert_eq!(counts, [0, 1, 1, 1]);
}

/// 5 BA in gunmetal, blind.
fn blind(depth: Option<f64>) -> HoleSpec {
    HoleSpec { over: None, depth: depth.map(mm), ..pump_cover() }
}

#[test]
fn a_blind_hole_without_a_depth_is_given_one_and_a_half_diameters() {
    let words = "No depth was given: 4.8 mm of full thread";
    assert!(warns(&blind(None), Level::Note, words));
    assert!(!warns(&blind(Some(4.8)), Level::Note, "No depth was given"));
    let through = HoleSpec { hole: Hole::Through, ..blind(None) };
    assert!(!warns(&through, Level::Note, "No depth was given"));
    let plan_spec = blind(None);
    let taken = build(&plan_spec).unwrap().depths.full_thread.unwrap();
    assert!((in_mm(taken) - 1.5 * 3.2).abs() < 1e-9);
}

#[test]
fn room_to_drill_deeper_is_spoken_of_to_hand_taps_in_blind_holes() {
    let says = |spec: &HoleSpec, words: &str| {
        let plan = build(spec).unwrap();
        plan.operations.iter().any(|step| step.action == Action::Drill && step.why.contains(words))
    };
    // Half a diameter for the pointed centre, one for the swarf.
    let words = "up to 1.6 mm more lets a tap with a pointed male centre reach the bottom";
    assert!(says(&blind(Some(8.0)), words));
    assert!(says(&blind(Some(8.0)), "up to 3.2 mm more gives the swarf"));
    let machine = HoleSpec { tap: Tap::Machine, ..blind(Some(8.0)) };
    let through = HoleSpec { hole: Hole::Through, ..blind(Some(8.0)) };
    for other in [machine, through] {
        assert!(!says(&other, "metal to spare"));
    }
    // A tap over 3/8 in has no pointed centre.
    let large =
        HoleSpec { hole: Hole::Blind, depth: Some(mm(15.0)), ..spec("metric", "m10", "gunmetal") };
    assert!(says(&large, "drill deeper: up to 10 mm more gives the swarf"));
}

#[test]
fn half_a_drill_of_wall_is_enough() {
    let of = |part| HoleSpec { part_thickness: Some(part), ..blind(Some(5.0)) };
    let known_spec = of(mm(20.0));
    let plan = build(&known_spec).unwrap();
    let to_point = plan.depths.drill_to_point.unwrap();
    // No. 36 is 2.7051 mm.
    assert!((in_mm(plan.depths.least_wall) - 1.352_55).abs() < 1e-9);
    assert_eq!(plan.depths.wall, Some(mm(20.0) - to_point));
    let thin = |part: Length| warns(&of(part), Level::Caution, "left under the point of the drill");
    assert!(thin(to_point + mm(1.3)) && !thin(to_point + mm(1.4)));
    // Just half a drill is enough. The sum of two lengths is not always exact: there one that is.
    let exact = (30..80).map(f64::from).find_map(|tenths| {
        let asked = mm(tenths / 10.0);
        let spec = HoleSpec { depth: Some(asked), part_thickness: Some(mm(30.0)), ..blind(None) };
        let depths = build(&spec).unwrap().depths;
        let (needed, least) = (depths.drill_to_point?, depths.least_wall);
        (needed + least - needed == least).then_some((asked, needed + least))
    });
    let (asked, part) = exact.unwrap();
    let just = HoleSpec { depth: Some(asked), part_thickness: Some(part), ..blind(None) };
    assert!(!warns(&just, Level::Caution, "left under the point of the drill"));
    // At no wall at all the drill comes through.
    assert!(matches!(build(&of(to_point)), Err(Error::PartTooThin { .. })));
    assert!(build(&of(to_point + mm(0.01))).is_ok());
}

#[test]
fn what_a_part_would_hold_is_offered_where_it_is_a_turn_at_least() {
    let most = |part| match build(&HoleSpec { part_thickness: Some(mm(part)), ..blind(Some(5.0)) })
    {
        Err(Error::PartTooThin { most, needed, part_thickness, .. }) => {
            assert!(needed >= part_thickness);
            most.map(in_mm)
        }
        other => panic!("{other:?}"),
    };
    // Of the part: two turns of lead, one to spare, the point (0.3004 d) and half a drill of wall.
    let spent = 3.0 * 0.59 + 2.7051 * (0.300_430 + 0.5);
    let offered = most(5.0).unwrap();
    assert!((offered - (5.0 - spent)).abs() < 1e-4, "{offered}");
    assert_eq!(most(4.5), None, "less than a turn of 0.59 mm");
    let text = |part| {
        let spec = HoleSpec { part_thickness: Some(mm(part)), ..blind(Some(5.0)) };
        build(&spec).unwrap_err().to_string()
    };
    assert!(text(5.0).contains(&print::mm(mm(offered), 2)), "{}", text(5.0));
    assert!(!text(4.5).is_empty() && text(4.5) != text(5.0));
}

#[test]
fn depth_is_judged_over_both_parts() {
    let deep = |thickness| HoleSpec {
        over: over("free-cutting-brass", thickness, UpperHole::Tapping),
        ..pump_cover()
    };
    let diameters = |spec: &HoleSpec| build(spec).unwrap().depths.diameters.unwrap();
    // 9.77 mm in the lower part, 4 mm above it, over 2.7051 mm.
    assert!((diameters(&deep(Some(4.0))) - 13.77 / 2.7051).abs() < 1e-9);
    assert!((diameters(&deep(None)) - 9.77 / 2.7051).abs() < 1e-9);
}

#[test]
fn the_lists_are_shown_and_why_ours_differs() {
    let listed = |spec: &HoleSpec| -> Vec<(String, String, Option<String>)> {
        let plan: HolePlan<'_> = build(spec).unwrap();
        let of = plan.listed.into_iter();
        of.map(|listed| {
            let engagement = print::percent(listed.engagement_percent);
            (listed.row.label.to_owned(), engagement, listed.why_different)
        })
        .collect()
    };
    let m4 = spec("metric", "m4", "copper");
    let why = "A list has one size for all; here a hole that is likely to keep 50 % decides, at about 60 %."
        .to_owned();
    let expected = ("3.3 mm".to_owned(), "77.0 %".to_owned(), Some(why));
    assert_eq!(listed(&m4), [expected]);
    let forming = HoleSpec { tap: Tap::Forming, ..m4.clone() };
    let [(_, _, Some(said))] = &listed(&forming)[..] else { panic!("one list") };
    assert!(said.contains("for cutting taps"), "{said}");
    // The list's own drill is no different, nor is one within 0.02 mm of it.
    let same = HoleSpec { at_hand: only(&[(Series::Metric, "3.3")]), ..m4.clone() };
    assert!(listed(&same).iter().all(|(_, _, why)| why.is_none()));
    let near = HoleSpec { at_hand: only(&[(Series::Number, "30")]), ..m4.clone() };
    assert!(listed(&near).iter().all(|(_, _, why)| why.is_some()), "No. 30 is 3.264 mm");
    // A smaller drill than the list's leaves more thread.
    let tight = HoleSpec { at_hand: only(&[(Series::Metric, "3.2")]), ..m4 };
    let [(_, _, said)] = &listed(&tight)[..] else { panic!("one list") };
    let decides = "The drills at hand decide here: 3.2 mm leaves about 88 %.";
    assert_eq!(said.as_deref(), Some(decides));
}

#[test]
fn a_machine_too_slow_or_too_fast_is_told_of_each_drill() {
    let with = |speeds, hole| HoleSpec {
        over: over("free-cutting-brass", Some(4.0), hole),
        machines: machines(speeds),
        ..pump_cover()
    };
    let fast = |drill: &str| format!("is too fast for the {drill} drill");
    let is_fast = |spec: &HoleSpec, drill| warns(spec, Level::Caution, &fast(drill));
    let together = with("9000", UpperHole::Tapping);
    assert!(is_fast(&together, "3.4 mm"));
    // Gunmetal is drilled at 300 ft/min at most: 91.44 m/min is 9000 rev/min at 3.2 mm.
    assert!(!is_fast(&together, "No. 36"));
    let faster = with("15000", UpperHole::Tapping);
    assert!(is_fast(&faster, "3.4 mm") && is_fast(&faster, "No. 36"));
    // What comes drilled is not drilled here.
    assert!(!is_fast(&with("15000", UpperHole::Clearance), "3.4 mm"));
    let slow = |spec: &HoleSpec, drill: &str| {
        warns(spec, Level::Note, &format!("as fast as the {drill} drill would take"))
    };
    let lathe = with("500", UpperHole::Tapping);
    // Once in a plan is enough.
    assert!(slow(&lathe, "No. 36") && !slow(&lathe, "3.4 mm"));
    assert!(!slow(&with("500", UpperHole::Clearance), "3.4 mm"));
    assert!(!slow(&with("500-6000", UpperHole::Tapping), "No. 36"));
}

#[test]
fn a_tap_is_only_judged_by_the_machine_that_drives_it() {
    let too_fast = |tap, speeds| {
        let spec =
            HoleSpec { tap, machines: machines(speeds), ..spec("bsw", "1-4", "bright-mild-steel") };
        warns(&spec, Level::Caution, "is too fast for the tap")
    };
    assert!(too_fast(Tap::Machine, "1420") && !too_fast(Tap::Hand, "1420"));
    assert!(!too_fast(Tap::Machine, "720") && !too_fast(Tap::Machine, "350"));
}
