//! Which machine and which speed a step says, and what it says where no figure would help.
//!
//! Common practice, no source: slower does no harm; a countersink takes the slowest that cuts clean; a bench
//! machine turns no faster than 3,000 rev/min. The cutting speeds are those of the materials' rows.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::calc::setting::{SetTo, bench_fastest};
use holewright_core::plan::{Action, HoleSpec, Operation, Over, Tap, UpperHole, build};
use holewright_core::tables::materials::{self, Family, Material, Rubbing};
use holewright_core::tables::threads;
use holewright_core::units::{in_mm, mm};

use super::cases::{machines, spec};

fn steps(spec: &HoleSpec, action: Action) -> Vec<Operation> {
    let plan = build(spec).unwrap();
    plan.operations.iter().filter(|step| step.action == action).cloned().collect()
}

/// The words of the last drilling step, which is the tapping drill's.
fn words(spec: &HoleSpec) -> String {
    steps(spec, Action::Drill).last().unwrap().speed.as_ref().unwrap().words()
}

#[test]
fn the_plan_says_which_machine_and_its_speed() {
    // M6 in silver steel: some 930 to 1120 rev/min (50 to 60 ft/min).
    let with = |speeds: &str| HoleSpec {
        machines: machines(speeds),
        ..spec("metric", "m6", "silver-steel")
    };
    let shed = "lathe: 350, 500, 1000; bench drill: 600-2000";
    assert_eq!(words(&with(shed)), "1000 rev/min on the lathe");
    let other = "bench drill: 600-2000; lathe: 350, 500, 1000";
    assert!(words(&with(other)).ends_with("rev/min on the bench drill"), "{}", words(&with(other)));
    // Neither goes as fast: the faster of them, and what the metal would take beside it.
    let slow = with("lathe: 350, 500; bench drill: 600");
    assert_eq!(words(&slow), "600 rev/min on the bench drill");
    // Neither goes as slowly.
    let fast = with("lathe: 2000; bench drill: 1800");
    assert_eq!(words(&fast), "slower than 1800 rev/min on the bench drill");
}

#[test]
fn a_job_stays_on_one_machine() {
    // M10 in stainless 303: the tapping drill goes at some 500 rev/min, the pilot at three times that.
    let with = |speeds: &str| HoleSpec {
        machines: machines(speeds),
        ..spec("metric", "m10", "stainless-303")
    };
    let used = |spec: &HoleSpec| -> Vec<String> {
        let plan = build(spec).unwrap();
        let settings = plan.operations.iter().filter_map(|step| step.speed.as_ref());
        settings.filter_map(|set| set.on_machine()?.machine.clone()).collect()
    };
    let shed = used(&with("lathe: 130, 250, 500, 1000; bench drill: 600-2900"));
    assert!(shed.len() >= 3, "{shed:?}");
    assert!(shed.iter().all(|machine| machine == "lathe"), "{shed:?}");
    // The one that serves the tapping drill best, whichever is listed first.
    let other = used(&with("mill: 1500-2900; drill: 300-900"));
    assert!(other.iter().all(|machine| machine == "drill"), "{other:?}");
    // A step that this machine cannot do says so.
    let fast = with("mill: 60; bench drill: 500-2900");
    let chamfer = steps(&fast, Action::Chamfer).remove(0).speed.unwrap();
    assert_eq!(chamfer.on_machine().unwrap().machine.as_deref(), Some("bench drill"));
    let fast = HoleSpec { tap: Tap::Machine, ..fast };
    let plan = build(&fast).unwrap();
    let said = plan.every_caution().find(|warning| warning.text.contains("too fast for the tap"));
    assert!(said.unwrap().text.contains("500 rev/min on the bench drill"), "{said:?}");
}

#[test]
fn a_machine_that_is_nearly_fast_enough_is_not_spoken_of_and_a_slow_one_once() {
    let said = |speeds: &str| {
        let over = Over {
            material: materials::find("silver-steel").unwrap(),
            thickness: Some(mm(4.0)),
            hole: UpperHole::Tapping,
        };
        let spec = HoleSpec {
            machines: machines(speeds),
            over: Some(over),
            ..spec("metric", "m6", "silver-steel")
        };
        let plan = build(&spec).unwrap();
        plan.every_caution().filter(|warning| warning.text.contains("as fast as the")).count()
    };
    // 5 to 5.2 mm in silver steel wants some 930 to 970 rev/min, and what is opened out less.
    assert_eq!((said("850"), said("600"), said("lathe: 600")), (0, 1, 1));
    let silver = HoleSpec { machines: machines("850"), ..spec("metric", "m6", "silver-steel") };
    let drill = steps(&silver, Action::Drill).pop().unwrap().speed.unwrap();
    assert_eq!((drill.words().as_str(), drill.aside("metal")), ("850 rev/min", None));
}

#[test]
fn nothing_is_asked_for_that_a_bench_machine_cannot_do() {
    for thread in threads::all() {
        for material in materials::all() {
            for tap in [Tap::Hand, Tap::Machine] {
                let spec = HoleSpec { tap, ..HoleSpec::new(thread, material) };
                let Ok(plan) = build(&spec) else { continue };
                for set in plan.operations.iter().filter_map(|step| step.speed.as_ref()) {
                    let said = set.speed().is_none_or(|speed| speed <= bench_fastest());
                    assert!(said, "{} in {}: {}", thread.designation, material.name, set.words());
                }
            }
        }
    }
}

#[test]
fn what_the_metal_would_take_stands_beside_the_words() {
    let brass = spec("ba", "10", "free-cutting-brass");
    let drill = steps(&brass, Action::Drill).pop().unwrap();
    let set = drill.speed.unwrap();
    assert_eq!(set.words(), "as fast as the machine goes");
    let aside = set.aside("metal").unwrap();
    assert!(aside.starts_with("the metal would take about "), "{aside}");
    // A hand tap turns no spindle; under power it is the gentlest in print.
    assert!(steps(&brass, Action::Tap).iter().all(|step| step.speed.is_none()));
}

#[test]
fn a_chamfer_takes_the_slowest_that_cuts_clean() {
    let with =
        |speeds: &str| HoleSpec { machines: machines(speeds), ..spec("ba", "2", "gunmetal") };
    let set = |speeds: &str| steps(&with(speeds), Action::Chamfer).remove(0).speed.unwrap();
    assert_eq!(set("").words(), "the slowest that cuts clean");
    let shed = set("bench drill: 600; lathe: 60, 1350");
    assert_eq!(shed.words(), "the slowest that cuts clean: start at 60 rev/min on the lathe");
    assert!(matches!(set("20000").to, SetTo::NoneSlowEnough(_)));
}

#[test]
fn a_small_drill_is_fed_no_more_than_two_hundredths_of_its_size() {
    let mut small = 0;
    for thread in threads::all() {
        let spec = HoleSpec::new(thread, materials::find("bright-mild-steel").unwrap());
        let Ok(plan) = build(&spec) else { continue };
        for step in &plan.operations {
            let (Some(drill), Some(feed)) = (step.drill, step.feed) else { continue };
            if drill.diameter < mm(3.0) {
                small += 1;
                assert!(in_mm(feed) <= in_mm(drill.diameter) * 0.02 + 1e-9, "{}", drill.label);
                assert!(drill.diameter >= mm(1.0), "{} is fed by feel", drill.label);
            }
        }
    }
    assert!(small > 50, "{small}");
}

#[test]
fn a_metal_that_must_not_be_rubbed_is_never_fed_finely() {
    let keeps = |material: &&Material| {
        material.refused.is_none()
            && (material.work_hardens
                || matches!(material.family, Family::Titanium | Family::Magnesium))
    };
    for material in materials::all().iter().filter(keeps) {
        assert!(
            matches!(material.rubbing(), Rubbing::Hardens | Rubbing::Lights),
            "{}",
            material.slug
        );
        for words in [material.feed_when_slow(), material.feed_by_feel()] {
            for shy in ["finely", "lightly", "less force"] {
                assert!(!words.contains(shy), "{}: {words}", material.slug);
            }
        }
        let thread = threads::find("metric", "m2").unwrap();
        let slow = HoleSpec { machines: machines("100-500"), ..HoleSpec::new(thread, material) };
        let plan = build(&slow).unwrap();
        let said = plan.every_caution().find(|warning| warning.text.contains("as fast as the"));
        assert!(said.unwrap().text.contains("rub"), "{}: {:?}", material.slug, said);
        assert!(!said.unwrap().text.contains("lightly"), "{}", material.slug);
    }
}
