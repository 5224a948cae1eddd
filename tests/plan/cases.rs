//! Plans whose every figure is worked out beside them.

#![expect(
    clippy::panic,
    clippy::unwrap_used,
    reason = "a helper that finds no thread or metal ends its test"
)]

use holewright_core::calc::aim::Aim;
use holewright_core::calc::depth::LastTap;
use holewright_core::calc::machines::Machines;
use holewright_core::plan::{
    Action, AtHand, Error, Hole, HolePlan, HoleSpec, Level, Over, Part, Tap, TapSteel, UpperHole,
    build,
};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::tables::{materials, threads};
use holewright_core::units::{in_mm, in_rpm, inch, mm, print};

pub(crate) fn of_series(series: &[Series]) -> AtHand {
    AtHand::Only(drills::all().iter().filter(|drill| series.contains(&drill.series)).collect())
}

pub(crate) fn only(drills: &[(Series, &str)]) -> AtHand {
    AtHand::Only(drills.iter().map(|&(series, size)| drill(series, size)).collect())
}

pub(crate) fn drill(series: Series, size: &str) -> &'static Drill {
    drills::find(series, size).unwrap_or_else(|| panic!("no {series} {size} drill"))
}

pub(crate) fn spec(system: &str, size: &str, material: &str) -> HoleSpec {
    HoleSpec::new(
        threads::find(system, size).unwrap_or_else(|| panic!("no thread {system} {size}")),
        materials::find(material).unwrap_or_else(|| panic!("no material {material}")),
    )
}

/// 5 BA in gunmetal, blind, 8 mm of thread, under a brass cover 4 mm thick.
pub(crate) fn pump_cover() -> HoleSpec {
    HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(8.0)),
        over: Some(Over {
            material: materials::find("free-cutting-brass").unwrap(),
            thickness: Some(mm(4.0)),
            hole: UpperHole::Tapping,
        }),
        at_hand: of_series(&[Series::Number, Series::Metric]),
        ..spec("ba", "5", "gunmetal")
    }
}

pub(crate) fn machines(speeds: &str) -> Machines {
    Machines::read(speeds).unwrap()
}

fn actions(plan: &HolePlan<'_>) -> Vec<(Action, Part)> {
    plan.operations.iter().map(|step| (step.action, step.part)).collect()
}

#[track_caller]
fn check_drill(plan: &HolePlan<'_>, label: &str, percent: &str) {
    let chosen = plan.tapping.chosen;
    assert_eq!(chosen.drill.label, label);
    assert_eq!(print::percent(chosen.engagement_percent), percent);
}

#[test]
fn the_pump_cover_hole_is_right_throughout() {
    let spec = pump_cover();
    let plan = build(&spec).unwrap();
    check_drill(&plan, "No. 36", "69.9 %");
    let stronger = plan.tapping.stronger.unwrap();
    assert_eq!(stronger.drill.label, "2.65 mm");
    assert_eq!(print::percent(stronger.engagement_percent), "77.7 %");
    assert_eq!(stronger.within_standard, Some(true));
    let easier = plan.tapping.easier.unwrap();
    assert_eq!(easier.drill.label, "2.75 mm");
    assert_eq!(print::percent(easier.engagement_percent), "63.6 %");
    assert_eq!(easier.within_standard, Some(false), "2.75 passes BS 93's 2.711");
    assert_eq!(plan.clearance.drill.unwrap().label, "3.4 mm");
    assert_eq!(print::fixed(in_mm(plan.clearance.float.unwrap()), 3), "0.200");
}

#[test]
fn the_upper_part_is_drilled_at_tapping_size_and_opened_last() {
    let spec = pump_cover();
    let plan = build(&spec).unwrap();
    let steps = actions(&plan);
    let together = steps.iter().position(|step| *step == (Action::Drill, Part::Both)).unwrap();
    let last_tap = steps.iter().rposition(|step| *step == (Action::Tap, Part::Lower)).unwrap();
    let opened = steps.iter().position(|step| *step == (Action::OpenOut, Part::Upper)).unwrap();
    assert!(together < last_tap && last_tap < opened, "{steps:?}");
    let drilled = &plan.operations[together];
    assert_eq!(drilled.drill.unwrap().label, "No. 36");
    let lower = plan.depths.drill_full_diameter.unwrap();
    assert_eq!(drilled.depth, Some(lower + mm(4.0)), "stop = upper + depth");
    assert_eq!(plan.operations[opened].drill.unwrap().label, "3.4 mm");
}

#[test]
fn a_chamfer_comes_before_the_tap() {
    for spec in [pump_cover(), spec("ba", "5", "gunmetal")] {
        let plan = build(&spec).unwrap();
        let steps = actions(&plan);
        let chamfer =
            steps.iter().position(|step| *step == (Action::Chamfer, Part::Lower)).unwrap();
        let tap = steps.iter().position(|step| step.0 == Action::Tap).unwrap();
        assert!(chamfer < tap);
    }
}

#[test]
fn one_owned_drill_is_the_drill() {
    let spec = HoleSpec { at_hand: only(&[(Series::Metric, "2.65")]), ..pump_cover() };
    let plan = build(&spec).unwrap();
    check_drill(&plan, "2.65 mm", "77.7 %");
    assert_eq!(plan.tapping.stronger, None);
    assert_eq!(plan.tapping.easier, None);
    assert!(plan.clearance.drill.is_none(), "nothing at hand clears 3.2 mm");
}

#[test]
fn metric_only_offers_no_number_drill() {
    let spec = HoleSpec { at_hand: of_series(&[Series::Metric]), ..pump_cover() };
    let plan = build(&spec).unwrap();
    let offered = [Some(plan.tapping.chosen), plan.tapping.stronger, plan.tapping.easier];
    for candidate in offered.into_iter().flatten() {
        assert_eq!(candidate.drill.series, Series::Metric);
    }
    let drills = plan.operations.iter().filter_map(|step| step.drill);
    assert!(drills.clone().count() > 0);
    for drill in drills {
        assert_eq!(drill.series, Series::Metric);
    }
}

#[test]
fn one_part_has_no_upper_operation() {
    let spec = HoleSpec { over: None, ..pump_cover() };
    let plan = build(&spec).unwrap();
    assert!(actions(&plan).iter().all(|step| step.1 == Part::Lower));
}

#[test]
fn a_millimetre_more_thread_is_a_millimetre_more_hole() {
    let shallow = pump_cover();
    let deep = HoleSpec { depth: Some(mm(9.0)), ..pump_cover() };
    let depth = |spec: &HoleSpec| in_mm(build(spec).unwrap().depths.drill_full_diameter.unwrap());
    assert!((depth(&deep) - depth(&shallow) - 1.0).abs() < 1e-9);
}

#[test]
fn a_hole_of_thread_and_no_room_says_what_would_fit() {
    // 3/16 in of thread in a part 3/16 in thick, blind.
    let spec = HoleSpec {
        hole: Hole::Blind,
        depth: Some(inch(0.1875)),
        part_thickness: Some(inch(0.1875)),
        ..spec("ba", "5", "gunmetal")
    };
    let error = build(&spec).unwrap_err();
    let Error::PartTooThin { most: Some(most), .. } = error else { panic!("{error:?}") };
    let shorter = HoleSpec { depth: Some(most), ..spec };
    assert!(most > mm(0.59), "at least one turn: {}", in_mm(most));
    assert!(build(&shorter).unwrap().depths.wall.unwrap() > mm(0.0), "what it offers is possible");
}

#[test]
fn a_through_hole_needs_no_stop_and_no_plug_tap() {
    let spec = HoleSpec { depth: Some(mm(4.0)), ..spec("ba", "5", "free-cutting-brass") };
    let plan = build(&spec).unwrap();
    assert_eq!(plan.depths.drill_full_diameter, Some(mm(4.0)));
    assert_eq!(plan.depths.wall, None);
    let taps: Vec<_> = plan.operations.iter().filter(|step| step.action == Action::Tap).collect();
    assert_eq!(taps.len(), 1, "4 mm of brass wants the taper tap alone");
}

#[test]
fn a_blind_hole_ends_with_the_plug_tap_unless_told() {
    let plug = pump_cover();
    let taps = |spec: &HoleSpec| {
        let plan = build(spec).unwrap();
        plan.operations
            .iter()
            .filter(|step| step.action == Action::Tap)
            .map(|step| step.tool.to_string())
            .collect::<Vec<_>>()
    };
    assert!(taps(&plug).last().unwrap().contains("plug tap"));
    let second = HoleSpec { finish: Some(LastTap::Second), ..pump_cover() };
    assert!(taps(&second).last().unwrap().contains("second tap"));
    let lead = |spec: &HoleSpec| build(spec).unwrap().depths.tap_lead;
    assert!(lead(&second) > lead(&plug));
}

#[test]
fn a_master_that_comes_at_clearance_is_spotted_through() {
    let over = Over { hole: UpperHole::Clearance, ..pump_cover().over.unwrap() };
    let spec = HoleSpec { over: Some(over), ..pump_cover() };
    let plan = build(&spec).unwrap();
    let steps = actions(&plan);
    assert!(steps.contains(&(Action::SpotThrough, Part::Lower)));
    assert!(!steps.iter().any(|step| step.0 == Action::OpenOut));
    assert!(!steps.contains(&(Action::Drill, Part::Both)));
}

#[test]
fn aims_move_the_drill_the_right_way() {
    let hole = |aim| {
        let spec = HoleSpec { aim, ..pump_cover() };
        build(&spec).unwrap().tapping.chosen.drill.diameter
    };
    assert!(hole(Aim::Strong) < hole(Aim::Usual));
    assert!(hole(Aim::Usual) < hole(Aim::Easy));
}

#[test]
fn a_forming_tap_gets_its_own_hole_or_a_refusal() {
    let forming = |thread: (&str, &str), material| HoleSpec {
        tap: Tap::Forming,
        ..spec(thread.0, thread.1, material)
    };
    // D − 0.0068 p · 65 % = 3 − 0.221 = 2.779 mm; the nearest drill of any series is 2.794 mm or 2.8 mm.
    let copper = forming(("metric", "m3"), "copper");
    let plan = build(&copper).unwrap();
    assert!((in_mm(plan.tapping.chosen.drill.diameter) - 2.779).abs() < 0.025);
    assert!(matches!(
        build(&forming(("metric", "m3"), "grey-cast-iron")),
        Err(Error::FormingNeedsDuctile { .. })
    ));
    assert!(matches!(
        build(&forming(("ba", "5"), "copper")),
        Err(Error::FormingNeedsSixtyDegrees { .. })
    ));
}

#[test]
fn a_drawer_with_nothing_near_says_what_would_do() {
    let spec = HoleSpec { at_hand: only(&[(Series::Metric, "6")]), ..pump_cover() };
    let plan = build(&spec).unwrap();
    let get = plan.tapping.get.unwrap().drill;
    assert_eq!(get.label, "No. 36", "of every drill, No. 36 comes nearest 70 %, at 69.9");
    let drilled = plan.operations.iter().find(|step| step.action == Action::Drill).unwrap();
    assert_eq!(drilled.drill, Some(get), "the steps are for the drill to get");
}

#[test]
fn a_hole_as_large_as_the_thread_is_refused() {
    let spec = HoleSpec { measured_hole: Some(mm(3.2)), ..pump_cover() };
    assert!(matches!(build(&spec), Err(Error::NothingLeft { .. })));
}

#[track_caller]
fn check_warns(spec: &HoleSpec, level: Level, words: &str) {
    let plan = build(spec).unwrap();
    let found =
        plan.every_caution().any(|warning| warning.level == level && warning.text.contains(words));
    assert!(
        found,
        "no {} with {words:?} in {:#?}",
        level.slug(),
        plan.every_caution().collect::<Vec<_>>()
    );
}

#[test]
fn the_warnings_are_there() {
    let deep = |depth| HoleSpec { depth: Some(mm(depth)), over: None, ..pump_cover() };
    check_warns(&deep(14.0), Level::Caution, "diameters deep");
    check_warns(&deep(30.0), Level::Caution, "wanders and packs");
    let tiny = spec("ba", "10", "stainless-304");
    check_warns(&tiny, Level::Caution, "small tap");
    check_warns(&tiny, Level::Caution, "never dwell");
    let carbon = HoleSpec { tap_steel: TapSteel::Carbon, ..pump_cover() };
    check_warns(&carbon, Level::Caution, "alum");
    let iron = HoleSpec { tap_steel: TapSteel::Carbon, ..spec("ba", "5", "grey-cast-iron") };
    check_warns(&iron, Level::Caution, "Never put iron or steel work in alum");
    check_warns(&pump_cover(), Level::Danger, "boiler inspector");
    check_warns(&pump_cover(), Level::Danger, "Eyes");
    let slow = HoleSpec { machines: machines("100-500"), ..spec("ba", "10", "free-cutting-brass") };
    check_warns(&slow, Level::Note, "No machine at hand is as fast as the No. 54 drill would take");
    let thin = HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(5.0)),
        part_thickness: Some(mm(8.4)),
        ..spec("ba", "5", "gunmetal")
    };
    check_warns(&thin, Level::Caution, "left under the point");
    let drawer = HoleSpec { at_hand: only(&[(Series::Number, "38")]), ..pump_cover() };
    check_warns(&drawer, Level::Caution, "Better: get No. 36");
    let lone = HoleSpec { lone_thickness: Some(mm(4.0)), over: None, ..pump_cover() };
    check_warns(&lone, Level::Note, "this plan is for one part");
    let measured = HoleSpec { measured_hole: Some(mm(2.75)), ..pump_cover() };
    check_warns(&measured, Level::Note, "63.6 %");
}

#[test]
fn danger_is_for_people_alone() {
    let plan_spec = pump_cover();
    let plan = build(&plan_spec).unwrap();
    let standing = &plan.cautions.standing;
    let dangers = standing.iter().take_while(|warning| warning.level == Level::Danger).count();
    assert!(dangers > 0 && standing[dangers..].iter().all(|other| other.level != Level::Danger));
    for warning in plan.every_caution().filter(|warning| warning.level == Level::Danger) {
        assert!(!warning.text.contains("thread"), "{}", warning.text);
    }
}

#[test]
fn every_pair_of_thread_and_metal_gives_a_plan_or_says_why() {
    for thread in threads::all() {
        for material in materials::all() {
            let spec = HoleSpec { hole: Hole::Blind, ..HoleSpec::new(thread, material) };
            match build(&spec) {
                Ok(plan) => {
                    let percent = plan.tapping.chosen.engagement_percent;
                    assert!((40.0..=100.0).contains(&percent), "{} {percent}", thread.designation);
                    assert!(plan.operations.iter().all(|step| !step.text.is_empty()));
                }
                Err(Error::Refused { material: refused }) => {
                    assert_eq!((refused.slug, material.slug), ("beryllium-copper", refused.slug));
                }
                Err(error) => assert!(
                    thread.taper.is_some() || beyond_drills(thread),
                    "{} in {}: {error}",
                    thread.designation,
                    material.name
                ),
            }
        }
    }
}

/// Larger than a 1 in drill can serve, or smaller than the smallest.
fn beyond_drills(thread: &threads::Thread) -> bool {
    let hole = holewright_core::calc::thread_form::geometry(thread).minor_internal;
    hole > inch(1.0) || hole < mm(0.15)
}

/// The speed of the tapping drill's step, in rev/min.
fn tapping_drill_speed(spec: &HoleSpec) -> String {
    let plan = build(spec).unwrap();
    let drill = plan.tapping.chosen.drill;
    let step = plan.operations.iter().find(|step| {
        step.action == Action::Drill && step.drill.is_some_and(|used| used.label == drill.label)
    });
    let set = step.unwrap().speed.clone().unwrap();
    let held = set.on_machine().map(|held| held.speed);
    print::trimmed(in_rpm(held.or(set.speed()).unwrap()), 6)
}

#[test]
fn the_plan_sets_a_speed_the_machine_has() {
    // Silver steel goes by 50 to 60 ft/min (Jet): 15.24 to 18.29 m/min. M6 takes a drill of about
    // 5.2 mm there, so the range is some 930 to 1120 rev/min.
    let with =
        |speeds| HoleSpec { machines: machines(speeds), ..spec("metric", "m6", "silver-steel") };
    let plan_spec = with("500");
    let drill = in_mm(build(&plan_spec).unwrap().tapping.chosen.drill.diameter);
    let low = 15_240.0 / (std::f64::consts::PI * drill);
    assert!((900.0..1000.0).contains(&low), "{drill} mm: {low}");
    // With nothing said, the slow end as a dial reads it.
    let usual = tapping_drill_speed(&spec("metric", "m6", "silver-steel"));
    assert_eq!(usual, print::trimmed(print::significant(low, 2), 0));
    // The slowest in the range; else the next below it; else the slowest, with a warning.
    assert_eq!(tapping_drill_speed(&with("350, 1000, 1050, 2000")), "1000");
    assert_eq!(tapping_drill_speed(&with("350, 700, 1420, 2000")), "700");
    assert_eq!(tapping_drill_speed(&with("1420, 2000")), "1420");
    check_warns(&with("1420, 2000"), Level::Caution, "slowest speed, 1420 rev/min, is too fast");
    // 18.288 m/min at 1420 rev/min is 4.1 mm.
    check_warns(
        &with("1420, 2000"),
        Level::Caution,
        "The largest drill it suits in silver steel is 4.1 mm",
    );
    for fits in ["350, 700, 1420", "350, 1000", "200-2000"] {
        let plan_spec = with(fits);
        let plan = build(&plan_spec).unwrap();
        assert!(plan.every_caution().all(|warning| !warning.text.contains("too fast")), "{fits}");
    }
    check_warns(&with("100, 300"), Level::Note, "No machine at hand is as fast");
}

#[test]
fn a_tap_under_power_is_set_to_a_speed_the_machine_has() {
    // The gentlest in print for steel is 4 to 15 m/min in a lathe (GTZ, thread cutting, example 5.4): 1/4 in
    // turns at 201 to 752.
    let with = |speeds: &str| HoleSpec {
        tap: Tap::Machine,
        machines: machines(speeds),
        ..spec("bsw", "1-4", "bright-mild-steel")
    };
    let speed = |speeds: &str| {
        let plan_spec = with(speeds);
        let plan = build(&plan_spec).unwrap();
        let tap = plan.operations.iter().find(|step| step.action == Action::Tap);
        print::trimmed(in_rpm(tap.unwrap().speed.as_ref().unwrap().speed().unwrap()), 6)
    };
    assert_eq!((speed("350, 720, 900"), speed("100, 1420")), ("350".into(), "100".into()));
    check_warns(
        &with("1420"),
        Level::Caution,
        "is too fast for the tap (about 200 rev/min): turn it by hand",
    );
}
