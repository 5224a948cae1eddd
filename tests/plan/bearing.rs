//! What the tap takes and what the thread carries, on a plan.

use holewright_core::calc::strength::Member;
use holewright_core::calc::tap_effort::Band;
use holewright_core::plan::{Hole, HolePlan, HoleSpec, Tap, TapSteel, build};
use holewright_core::tables::materials;
use holewright_core::tables::screw_metals::class;
use holewright_core::units::{in_mm, in_newton_metres, in_newtons, mm, print};

use crate::cases::{pump_cover, spec};

fn with_screw(material: &str) -> HoleSpec {
    let screw = class("8.8").map(|class| class.screw());
    HoleSpec { screw, depth: Some(mm(6.0)), ..spec("metric", "m6", material) }
}

fn assumed(plan: &HolePlan<'_>) -> String {
    plan.cautions.assumed.iter().map(|said| said.text.to_string()).collect()
}

#[test]
fn the_tap_takes_what_the_maker_s_formula_says() {
    // tan 23.75° · 2300 · 1.6 (3.2 − 2.7051)² (3.2 + 2 · 2.7051) / 24 000, in No. 36.
    let spec = pump_cover();
    let plan = build(&spec).expect("a plan");
    let effort = plan.effort.expect("a hand tap in gunmetal");
    assert_eq!(print::fixed(in_newton_metres(effort.cutting), 4), "0.1423");
    assert_eq!((effort.margin.likely, effort.margin.at_worst), (Band::Ample, Band::Fair));
    let easier = effort.easier.expect("2.75 mm is at hand");
    assert!(easier.effort_percent < easier.strength_percent && easier.strength_percent < 100.0);
}

#[test]
fn a_hole_as_measured_decides() {
    let of = |measured| {
        let spec = HoleSpec { measured_hole: measured, ..pump_cover() };
        in_newton_metres(build(&spec).expect("a plan").effort.expect("an effort").cutting)
    };
    assert!(of(Some(mm(2.8))) < of(None) && of(None) < of(Some(mm(2.6))));
}

#[test]
fn other_taps_and_plastics_have_no_effort_and_carbon_steel_has_less_margin() {
    let effort = |spec: HoleSpec| build(&spec).expect("a plan").effort;
    assert!(effort(HoleSpec { tap: Tap::Machine, ..pump_cover() }).is_none());
    let copper = HoleSpec { tap: Tap::Forming, ..spec("metric", "m6", "copper") };
    assert!(effort(copper).is_none());
    assert!(effort(spec("metric", "m6", "nylon")).is_none());
    let [fast, carbon] = [TapSteel::HighSpeed, TapSteel::Carbon]
        .map(|tap_steel| HoleSpec { tap_steel, ..spec("metric", "m6", "medium-carbon-steel") })
        .map(|spec| effort(spec).expect("an effort").margin);
    assert!(carbon.likely < fast.likely, "{carbon} {fast}");
}

#[test]
fn strength_is_given_with_a_screw_and_a_length_alone() {
    let named = with_screw("aluminium-6082");
    let plan = build(&named).expect("a plan");
    let strength = plan.strength.expect("aluminium speaks of no pressure");
    // 0.6 · 290 N/mm² on 73.145 mm², in print for 6g in 6H.
    assert_eq!(strength.loads.weakest(), Member::TappedThread);
    assert!((in_newtons(strength.loads.least()) - 12_727.0).abs() < 1.0);
    assert_eq!(print::fixed(in_mm(strength.holding_length.expect("a length")), 2), "7.59");
    assert!(!assumed(&plan).contains("screw is named"));
    for spec in [
        HoleSpec { screw: None, ..named.clone() },
        HoleSpec { depth: None, hole: Hole::Through, ..named },
    ] {
        assert!(build(&spec).expect("a plan").strength.is_none());
    }
}

/// In every metal: a plan that speaks of steam or pressure has no strength, and says why.
#[test]
fn no_strength_stands_where_steam_or_pressure_is_spoken_of() {
    let (mut with, mut without) = (0, 0);
    for material in materials::all().iter().filter(|material| material.refused.is_none()) {
        let spec = with_screw(material.slug);
        let plan = build(&spec).expect("a plan");
        let speaks =
            plan.cautions.standing.iter().any(|said| said.text.contains("boiler inspector"));
        assert!(!(speaks && plan.strength.is_some()), "{}", material.slug);
        if speaks {
            assert!(assumed(&plan).contains("go by their code"), "{}", material.slug);
            without += 1;
        }
        with += usize::from(plan.strength.is_some());
    }
    assert!(with > 8 && without > 20, "{with} {without}");
}
