//! What must hold of every calculator, whatever is asked: one property test a calculator, its name first.

use holewright::calc::clearance::Fit;
use holewright::calc::cutting_speed::{spindle_speed, surface_speed};
use holewright::calc::engagement::percent;
use holewright::calc::thread_form::{full_depth, geometry, geometry_of};
use holewright::pages::calculators::clearance::{self, Question, Screw};
use holewright::pages::calculators::speeds::{self, Reach, Spindle, Tool, Verdict, Work};
use holewright::pages::calculators::tapping::{self, Subject};
use holewright::tables::drills::{self, Drill};
use holewright::tables::materials::{self, Material};
use holewright::tables::threads::{self, Basic, Form, SystemId};
use holewright::units::{Pitch, in_metres_per_minute, in_mm, in_rpm, mm};
use proptest::prelude::*;

fn any_material() -> impl Strategy<Value = &'static Material> {
    proptest::sample::select(materials::all().iter().collect::<Vec<_>>())
}

fn any_form() -> impl Strategy<Value = Form> {
    proptest::sample::select(vec![
        Form::BritishAssociation,
        Form::Whitworth,
        Form::Pipe,
        Form::IsoMetric,
        Form::Unified,
        Form::Miniature,
        Form::Cycle,
    ])
}

fn any_drawer() -> impl Strategy<Value = Vec<&'static Drill>> {
    proptest::collection::btree_set(0..drills::all().len(), 0..40).prop_map(|picked| {
        picked.into_iter().filter_map(|index| drills::all().get(index)).collect()
    })
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn speeds_gives_the_range_and_the_machines_best(
        material in any_material(),
        diameter in 0.2f64..40.0,
        listed in proptest::collection::vec(10u32..30_000, 0..8),
        tapped in any::<bool>(),
    ) {
        let work = if tapped { Work::Tapping } else { Work::Drilling };
        let typed: Vec<String> = listed.iter().map(u32::to_string).collect();
        let spindle = Spindle::read(&typed.join(", ")).unwrap();
        let Some(found) = speeds::answer(material, work, Tool::Size(mm(diameter)), &spindle) else {
            prop_assert!(tapped && material.tapping.is_empty(), "{}", material.slug);
            return Ok(());
        };
        // The speeds are those of the published range, and no others.
        let surface = |speed| in_metres_per_minute(surface_speed(speed, mm(diameter)));
        prop_assert!(near(surface(found.low), in_metres_per_minute(found.range.low)));
        prop_assert!(near(surface(found.high), in_metres_per_minute(found.range.high)));
        // A larger tool turns more slowly.
        let larger = speeds::answer(material, work, Tool::Size(mm(diameter * 1.1)), &spindle);
        prop_assert!(larger.is_some_and(|larger| larger.low < found.low));
        // Each speed is judged, and the one to set is the best of them.
        for held in &found.at_hand {
            prop_assert!(near(in_metres_per_minute(held.surface), surface(held.speed)));
            prop_assert!(near(in_rpm(spindle_speed(found.range.high, held.largest)), in_rpm(held.speed)));
        }
        let holds = |verdict| found.at_hand.iter().any(|held| held.verdict == verdict);
        let reach = match (holds(Verdict::Slow), holds(Verdict::Within), holds(Verdict::Fast)) {
            (_, true, _) => Reach::Within,
            (true, false, true) => Reach::Between,
            (true, false, false) => Reach::TooSlow,
            (false, false, true) => Reach::TooFast,
            (false, false, false) => Reach::NotSaid,
        };
        prop_assert_eq!(found.reach, reach);
        if let Some(set) = found.set {
            let fast = set.verdict == Verdict::Fast;
            prop_assert!(!fast || found.at_hand.iter().all(|held| held.verdict == Verdict::Fast));
        }
    }

    #[test]
    fn tapping_turns_engagement_to_hole_and_back(
        form in any_form(),
        major in 0.5f64..40.0,
        part in 0.05f64..0.6,
        inches in any::<bool>(),
        wanted in 30.0f64..100.0,
        at_hand in any_drawer(),
    ) {
        let pitch = mm(major * part);
        prop_assume!(full_depth(form, pitch) * 2.0 < mm(major * 0.9));
        let pitch = if inches { Pitch::PerInch(25.4 / in_mm(pitch)) } else { Pitch::Mm(in_mm(pitch)) };
        let subject = Subject::custom(form, mm(major), pitch);
        let found = tapping::answer(subject, None, wanted, &at_hand);
        let again = tapping::answer(subject, Some((found.hole, None)), wanted, &at_hand);
        prop_assert!((again.left.unwrap().percent - wanted).abs() < 1e-9);
        // No drill at hand comes nearer than the nearest.
        let off = |drill: &Drill| (percent(form, &subject.geometry, drill.diameter) - wanted).abs();
        let least = at_hand.iter().map(|drill| off(drill)).fold(f64::INFINITY, f64::min);
        match found.nearest {
            Some(nearest) => prop_assert!((off(nearest.drill) - least).abs() < 1e-9),
            None => prop_assert!(least > 10.0),
        }
        let engagements: Vec<f64> =
            found.candidates.iter().map(|candidate| candidate.engagement_percent).collect();
        prop_assert!(engagements.is_sorted_by(|a, b| a >= b));
        prop_assert!(engagements.iter().all(|percent| (50.0..=90.0).contains(percent)));
    }

    #[test]
    fn clearance_lets_the_screw_in(
        major in 0.5f64..20.0,
        upper in 0.0f64..1.0,
        lower in 0.0f64..1.0,
        at_hand in any_drawer(),
        fit in proptest::sample::select(Fit::ALL.to_vec()),
    ) {
        let screw = Screw { thread: None, major: mm(major), measured: None };
        let (upper_error, lower_error) = (mm(upper), mm(lower));
        let question = Question { screw, fit, upper_error, lower_error, at_hand };
        let found = clearance::answer(question);
        let holes: Vec<f64> = found.fits.iter().map(|(_, fit)| in_mm(fit.hole.hole)).collect();
        prop_assert!(holes.is_sorted() && holes.iter().all(|hole| *hole > major));
        for (_, fit) in &found.fits {
            if let (Some(drill), Some(float)) = (fit.drill, fit.float) {
                prop_assert!(drill.diameter > fit.hole.hole - drills::SAME_SIZE);
                prop_assert!(in_mm(float) > 0.0);
            }
        }
        let least = major + 2.0 * (upper + lower);
        prop_assert!(in_mm(found.hole()) > major && found.hole() >= found.asked.hole.hole);
        prop_assert!(found.drill().is_some() || in_mm(found.hole()) > least - 1e-5);
        // With both centres as far off as said, the drilled hole still takes the screw.
        if let Some(drill) = found.drill() {
            prop_assert!(in_mm(drill.diameter) > major + 2.0 * (upper + lower) - 1e-5);
            prop_assert!(drill.diameter > found.asked.hole.hole - drills::SAME_SIZE);
        }
    }
}

#[test]
fn tapping_gives_every_thread_held_the_figures_of_its_table() {
    for thread in threads::all().filter(|thread| thread.taper.is_none()) {
        let Basic::Major(major) = thread.basic else { panic!("{}", thread.designation) };
        let custom = geometry_of(thread.form(), major.length(), thread.pitch);
        // ASME B1.10M's miniature thread is deeper in the nut than ISO 1501's, which the form stands for.
        let alike = custom == geometry(thread);
        assert_eq!(alike, thread.system != SystemId::Unm, "{}", thread.designation);
    }
}
