//! What must hold for every thread, metal, depth and drawer.

use holewright_core::calc::aim::{Aim, aim_percent};
use holewright_core::calc::clearance::{self, Fit};
use holewright_core::calc::depth::{BlindHole, LastTap, blind, usual_point_angle};
use holewright_core::calc::thread_form::geometry;
use holewright_core::calc::{engagement, limits, tapping};
use holewright_core::plan::{AtHand, Hole, HoleSpec, build};
use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::{in_mm, mm};
use proptest::prelude::*;

fn any_thread() -> impl Strategy<Value = &'static Thread> {
    let threads: Vec<_> = threads::all().filter(|thread| engagement::applies(thread)).collect();
    proptest::sample::select(threads)
}

fn any_material() -> impl Strategy<Value = &'static Material> {
    proptest::sample::select(materials::all().iter().collect::<Vec<_>>())
}

fn any_aim() -> impl Strategy<Value = Aim> {
    proptest::sample::select(vec![Aim::Strong, Aim::Usual, Aim::Easy])
}

fn any_drawer() -> impl Strategy<Value = Vec<&'static Drill>> {
    proptest::collection::btree_set(0..drills::all().len(), 1..40).prop_map(|picked| {
        picked.into_iter().filter_map(|index| drills::all().get(index)).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn engagement_falls_as_the_hole_grows(thread in any_thread(), a in 0.2f64..30.0, b in 0.2f64..30.0) {
        prop_assume!((a - b).abs() > 1e-6);
        let (small, large) = if a < b { (a, b) } else { (b, a) };
        let form = thread.form();
        let figures = geometry(thread);
        prop_assert!(
            engagement::percent(form, &figures, mm(small)) > engagement::percent(form, &figures, mm(large))
        );
    }

    #[test]
    fn the_hole_for_an_engagement_has_it(thread in any_thread(), percent in 40.0f64..100.0) {
        let figures = geometry(thread);
        let hole = engagement::hole_for(thread.form(), &figures, percent);
        prop_assert!((engagement::percent(thread.form(), &figures, hole) - percent).abs() < 1e-9);
    }

    #[test]
    fn more_depth_never_shortens_the_drill(
        thread in any_thread(), material in any_material(), short in 0.5f64..5.0, more in 0.0f64..5.0,
    ) {
        let major = geometry(thread).major;
        let deep = |diameters: f64| {
            let spec = HoleSpec {
                hole: Hole::Blind,
                depth: Some(major * diameters),
                ..HoleSpec::new(thread, material)
            };
            build(&spec).ok().and_then(|plan| plan.depths.drill_full_diameter)
        };
        if let (Some(first), Some(second)) = (deep(short), deep(short + more)) {
            prop_assert!(second >= first);
        }
    }

    #[test]
    fn a_longer_lead_never_shortens_the_drill(thread in any_thread(), length in 1.0f64..50.0) {
        let figures = geometry(thread);
        let depth = |last_tap| {
            let hole = BlindHole {
                major: figures.major,
                pitch: figures.pitch,
                drill: figures.minor_internal,
                point_angle: usual_point_angle(),
                last_tap,
            };
            blind(&hole, mm(length)).drill_full_diameter
        };
        prop_assert!(depth(LastTap::Plug) < depth(LastTap::Second));
        prop_assert!(depth(LastTap::Second) < depth(LastTap::Taper));
    }

    #[test]
    fn a_stronger_aim_never_takes_a_larger_drill(
        thread in any_thread(), material in any_material(), drawer in any_drawer(),
    ) {
        let drill = |aim| {
            let spec = HoleSpec {
                aim, at_hand: AtHand::Only(drawer.clone()), ..HoleSpec::new(thread, material)
            };
            build(&spec).ok().map(|plan| plan.tapping.chosen.drill.diameter)
        };
        if let (Some(strong), Some(easy)) = (drill(Aim::Strong), drill(Aim::Easy)) {
            prop_assert!(in_mm(strong) <= in_mm(easy) + 1e-9);
        }
    }

    #[test]
    fn the_drawer_changes_the_choice_and_no_figure(
        thread in any_thread(), material in any_material(), drawer in any_drawer(),
    ) {
        let all = HoleSpec::new(thread, material);
        let mine = HoleSpec { at_hand: AtHand::Only(drawer.clone()), ..all.clone() };
        let (Ok(all), Ok(mine)) = (build(&all), build(&mine)) else { return Ok(()) };
        prop_assert_eq!(all.geometry, mine.geometry);
        prop_assert_eq!(all.clearance.hole, mine.clearance.hole);
        prop_assert!((all.tapping.aim_percent - mine.tapping.aim_percent).abs() < 1e-12);
        let chosen = mine.tapping.chosen;
        prop_assert!(drawer.contains(&chosen.drill));
        let limit = limits::largest_hole(thread, &mine.geometry);
        prop_assert_eq!(chosen, tapping::judge(thread, &mine.geometry, limit, chosen.drill));
    }

    #[test]
    fn neighbours_stand_on_their_own_sides(
        thread in any_thread(), material in any_material(), drawer in any_drawer(),
    ) {
        let spec = HoleSpec { at_hand: AtHand::Only(drawer), ..HoleSpec::new(thread, material) };
        let Ok(plan) = build(&spec) else { return Ok(()) };
        let chosen = plan.tapping.planned().engagement_percent;
        if let Some(stronger) = plan.tapping.stronger {
            prop_assert!(stronger.engagement_percent >= chosen + 2.5);
        }
        if let Some(easier) = plan.tapping.easier {
            prop_assert!(easier.engagement_percent <= chosen - 2.5);
        }
    }

    #[test]
    fn the_aim_keeps_its_bounds(
        thread in any_thread(), material in any_material(), aim in any_aim(), length in 0.1f64..100.0,
    ) {
        let percent = aim_percent(material, geometry(thread).major, Some(mm(length)), aim);
        prop_assert!((52.0..=83.0).contains(&percent));
    }

    #[test]
    fn a_freer_fit_is_a_larger_hole_and_each_clears_the_screw(thread in any_thread()) {
        let major = geometry(thread).major;
        let hole = |fit| clearance::hole(thread, major, fit).hole;
        prop_assert!(major < hole(Fit::Close));
        prop_assert!(hole(Fit::Close) <= hole(Fit::Medium));
        prop_assert!(hole(Fit::Medium) <= hole(Fit::Free));
        if let Some(drill) = clearance::drill_for(hole(Fit::Close), drills::all().iter()) {
            prop_assert!(drill.diameter > major);
        }
    }
}
