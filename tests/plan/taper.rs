//! Plans for taper pipe threads.

use holewright_core::calc::depth::LastTap;
use holewright_core::plan::{
    Action, AtHand, Error, Hole, HoleSpec, Lips, Plan, Tap, build, build_either, build_taper,
};
use holewright_core::tables::drills::Series;
use holewright_core::tables::lists::TaperHole;
use holewright_core::tables::threads;
use holewright_core::units::{in_mm, mm, print};

use super::cases::{only, spec};

#[test]
fn every_taper_thread_is_planned_and_no_other() {
    for thread in threads::all() {
        let spec = HoleSpec { hole: Hole::Blind, ..spec_of(thread) };
        let plan = build_either(&spec);
        if thread.taper.is_some() {
            let Ok(Plan::Taper(plan)) = plan else { panic!("{}", thread.designation) };
            assert!(build(&spec).is_err(), "{}", thread.designation);
            let actions: Vec<Action> = plan.operations.iter().map(|step| step.action).collect();
            assert!(actions.starts_with(&[Action::MarkOut, Action::Spot, Action::Drill]));
            assert!(actions.ends_with(&[Action::Tap, Action::TryScrew]));
            let standing = &plan.cautions.standing;
            assert!(
                standing.iter().any(|said| said.text.contains("boiler inspector")),
                "{}: a pipe thread is for pressure",
                thread.designation
            );
        } else {
            assert!(matches!(build_taper(&spec), Err(Error::NotTaper { .. })));
        }
    }
}

fn spec_of(thread: &'static threads::Thread) -> HoleSpec {
    HoleSpec { thread, ..spec("bspt", "1-8", "free-cutting-brass") }
}

#[test]
fn an_eighth_taper_is_drilled_by_the_list_and_tapped_to_the_gauge_length() {
    let asked = HoleSpec { hole: Hole::Blind, ..spec("bspt", "1-8", "free-cutting-brass") };
    let plan = build_taper(&asked).expect("a plan");
    // A tap maker's list: 8.2 mm at most; ISO 7-1: gauge length 4.0 mm, recalled; 28 threads an inch.
    assert_eq!(plan.drill.expect("a drill").label, "8.2 mm");
    assert_eq!(plan.hole.way, TaperHole::Straight);
    assert!((in_mm(plan.depths.hand_tight) - 4.0).abs() < 1e-9);
    assert!((in_mm(plan.depths.thread) - (4.0 + 3.0 * 25.4 / 28.0)).abs() < 1e-9);
    assert!((in_mm(plan.depths.drill) - (4.0 + 7.0 * 25.4 / 28.0)).abs() < 1e-9);
    let ways: Vec<_> = plan.others.iter().map(|hole| hole.way).collect();
    assert_eq!(ways, [TaperHole::Reamed, TaperHole::ParallelThread]);
    let tap = plan.operations.iter().find(|step| step.action == Action::Tap).expect("a tap");
    assert!(tap.text.contains("enters about 4 mm by hand"), "{}", tap.text);
    let drill = plan.operations.iter().rfind(|step| step.action == Action::Drill).expect("a drill");
    assert!(drill.text.contains("drill 8.1 mm instead and ream"), "{}", drill.text);
}

#[test]
fn what_a_taper_thread_cannot_have_is_said() {
    let brass = || spec("npt", "1-8", "free-cutting-brass");
    let powered = HoleSpec { tap: Tap::Machine, ..brass() };
    assert!(matches!(build_taper(&powered), Err(Error::TaperWantsHandTaps { .. })));
    let few = HoleSpec { at_hand: only(&[(Series::Metric, "9")]), ..brass() };
    let plan = build_taper(&few).expect("a plan");
    assert_eq!(plan.drill, None);
    let drill = plan.operations.iter().find(|step| step.action == Action::Drill).expect("a step");
    assert!(
        drill.text.starts_with("No drill at hand is near enough: get Letter Q."),
        "{}",
        drill.text
    );
    let deep =
        HoleSpec { hole: Hole::Blind, depth: Some(mm(20.0)), at_hand: AtHand::All, ..brass() };
    let plan = build_taper(&deep).expect("a plan");
    let [said] = &plan.cautions.assumed[..] else { panic!("{:?}", plan.cautions.assumed) };
    assert!(said.text.contains("depth asked for is not used"), "{}", said.text);
    // 0.1615 in and three threads of 27 an inch.
    assert_eq!(print::mm(plan.depths.thread, 2), "6.92 mm");
    let thin = HoleSpec { depth: Some(mm(3.0)), ..brass() };
    let plan = build_taper(&thin).expect("a plan");
    let [said] = &plan.cautions.head[..] else { panic!("{:?}", plan.cautions.head) };
    assert!(said.text.contains("thinner than the thread is long, 6.9 mm"), "{}", said.text);
    let model = spec("model-taper-pipe", "1-4x40", "free-cutting-brass");
    let plan = build_taper(&model).expect("a plan");
    assert!(
        plan.cautions.assumed.iter().any(|said| said.text.contains("No gauge length is printed"))
    );
}

#[test]
fn a_drill_in_a_metal_that_grabs_has_dubbed_lips_in_a_taper_plan_too() {
    for material in ["gunmetal", "leaded-bronze", "naval-brass", "high-tensile-brass", "acrylic"] {
        let asked = spec("bspt", "3-8", material);
        let plan = build_taper(&asked).expect("a plan");
        let drilled = plan.operations.iter().filter(|step| step.action == Action::Drill);
        let lips: Vec<_> = drilled.map(|step| (step.lips, step.text.contains("Dub the"))).collect();
        // A pilot, half way, size.
        assert_eq!(lips, [(Some(Lips::Dubbed), true); 3], "{material}");
    }
    let steel = spec("bspt", "3-8", "bright-mild-steel");
    let plan = build_taper(&steel).expect("a plan");
    assert!(plan.operations.iter().all(|step| step.lips.is_none()));
}

#[test]
fn a_blind_taper_hole_has_a_stop_and_must_end_in_the_part() {
    let blind = HoleSpec { hole: Hole::Blind, ..spec("bspt", "1-8", "free-cutting-brass") };
    let plan = build_taper(&blind).expect("a plan");
    let drill = plan.operations.iter().rfind(|step| step.action == Action::Drill).expect("a drill");
    // 10.35 mm as a stop is set.
    assert_eq!(drill.stop.map(|stop| print::mm(stop, 2)).as_deref(), Some("10.4 mm"));
    assert!(drill.lips.is_some(), "brass grabs");
    let thin = HoleSpec { part_thickness: Some(mm(5.0)), ..blind.clone() };
    assert!(matches!(build_taper(&thin), Err(Error::PartTooThin { .. })));
    let thick = HoleSpec { part_thickness: Some(mm(15.0)), ..blind.clone() };
    assert!(build_taper(&thick).is_ok());
    let asked = HoleSpec { measured_hole: Some(mm(8.3)), finish: Some(LastTap::Plug), ..blind };
    let plan = build_taper(&asked).expect("a plan");
    let said = plan.cautions.assumed.iter().find(|said| said.text.starts_with("Not used here"));
    assert!(said.expect("said").text.ends_with("the hole as measured, the last tap."));
}
