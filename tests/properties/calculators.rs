//! What must hold of every calculator, whatever is asked: one property test a calculator, its name first.

use holewright_core::calc::clearance::Fit;
use holewright_core::calc::countersink::sink_depth;
use holewright_core::calc::cutting_speed::{spindle_speed, surface_speed};
use holewright_core::calc::engagement::percent;
use holewright_core::calc::machines::Machines;
use holewright_core::calc::reaming;
use holewright_core::calc::setting::bench_fastest;
use holewright_core::calc::speed_choice::{Reach, SpeedBand, Verdict};
use holewright_core::calc::spindle::{Spindle, on_a_dial};
use holewright_core::calc::thread_form::{full_depth, geometry, geometry_of};
use holewright_core::calc::tool_steel::ToolSteel;
use holewright_core::calculators::clearance::{self, Screw};
use holewright_core::calculators::speeds::{self, Detail, Question, Tool, Work};
use holewright_core::calculators::tapping::{self, Subject};
use holewright_core::tables::drills::{self, Drill};
use holewright_core::tables::materials::{self, Material};
use holewright_core::tables::threads::{self, AnySize, Basic, Form};
use holewright_core::units::{
    Pitch, degrees, in_metres_per_minute, in_mm, in_rpm, in_seconds, mm, rpm,
};
use proptest::prelude::*;

fn any_material() -> impl Strategy<Value = &'static Material> {
    proptest::sample::select(materials::all().iter().collect::<Vec<_>>())
}

fn any_form() -> impl Strategy<Value = Form> {
    let asked = |form: &Form| matches!(form.shape().any_size, AnySize::Word(..));
    proptest::sample::select(Form::ALL.iter().copied().filter(asked).collect::<Vec<_>>())
}

fn any_drawer() -> impl Strategy<Value = Vec<&'static Drill>> {
    proptest::collection::btree_set(0..drills::all().len(), 0..40).prop_map(|picked| {
        picked.into_iter().filter_map(|index| drills::all().get(index)).collect()
    })
}

#[expect(clippy::expect_used, reason = "a list of whole numbers is a list of speeds")]
fn machine(speeds: &[u32]) -> Spindle {
    let typed: Vec<String> = speeds.iter().map(u32::to_string).collect();
    Spindle::read(&typed.join(", ")).expect("a list of speeds")
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
        work in proptest::sample::select(Work::ALL.to_vec()),
        carbon in any::<bool>(),
    ) {
        let machines = Machines::of(machine(&listed));
        let tool_steel = if carbon { ToolSteel::Carbon } else { ToolSteel::HighSpeed };
        let ask = |diameter| speeds::answer(Question {
            machines: machines.clone(),
            tool_steel,
            ..Question::new(material, work, Tool::Size(mm(diameter)))
        });
        let Some(found) = ask(diameter) else {
            let none = if work == Work::Tapping { material.tapping } else { material.drilling };
            prop_assert!(none.is_empty(), "{}", material.slug);
            return Ok(());
        };
        // The speeds are those of the basis, and no others; only a rule moves them off the range in print.
        let surface = |speed| in_metres_per_minute(surface_speed(speed, found.diameter));
        prop_assert!(near(surface(found.low), in_metres_per_minute(found.basis.low)));
        prop_assert!(near(surface(found.high), in_metres_per_minute(found.basis.high)));
        prop_assert!(found.basis.low <= found.basis.high);
        if found.basis.rules.is_empty() {
            prop_assert_eq!((found.basis.low, found.basis.high), (found.basis.range.low, found.basis.range.high));
        }
        prop_assert!(found.basis.high <= found.basis.range.high, "no rule makes it faster");
        // A larger tool turns more slowly.
        prop_assert!(ask(diameter * 1.1).is_some_and(|larger| larger.low < found.low));
        // Each speed is judged, and the one to set is the best of them.
        for held in &found.at_hand {
            prop_assert!(near(in_metres_per_minute(held.surface), surface(held.speed)));
            prop_assert!(near(in_rpm(spindle_speed(found.basis.high, held.largest)), in_rpm(held.speed)));
        }
        let holds = |verdict| found.at_hand.iter().any(|held| held.verdict == verdict);
        // A countersink goes by the slowest there is, whatever lies in the range.
        let slow_first = work == Work::Countersinking;
        // A reamer goes by the slow end, at it or next below it.
        let slow_end = on_a_dial(found.low);
        let at_slow_end = work == Work::Reaming
            && found.at_hand.iter().any(|held| on_a_dial(held.speed) == slow_end);
        let reach = match (holds(Verdict::Slow), holds(Verdict::Within), holds(Verdict::Fast)) {
            (true, ..) if slow_first => Reach::TooSlow,
            _ if at_slow_end => Reach::Within,
            (true, within, fast) if work == Work::Reaming => {
                if within || fast { Reach::Between } else { Reach::TooSlow }
            }
            (_, true, _) => Reach::Within,
            (true, false, true) => Reach::Between,
            (true, false, false) => Reach::TooSlow,
            (false, false, true) => Reach::TooFast,
            (false, false, false) => Reach::NotSaid,
        };
        prop_assert_eq!(found.reach, reach);
        // Nothing is set that a bench machine cannot do.
        let said = found.setting.speed();
        prop_assert!(!listed.is_empty() || said.is_none_or(|speed| speed <= bench_fastest()), "{said:?}");
        prop_assert!(said.is_none_or(|speed| listed.is_empty() || listed.iter().any(|held| rpm(f64::from(*held)) == speed)));
        if let Some(set) = found.set {
            let fast = set.verdict == Verdict::Fast;
            prop_assert!(!fast || found.at_hand.iter().all(|held| held.verdict == Verdict::Fast));
            let is_slow = |speed| on_a_dial(speed) <= slow_end;
            let none_slow = || found.at_hand.iter().all(|held| !is_slow(held.speed));
            prop_assert!(work != Work::Reaming || is_slow(set.speed) || none_slow(), "{set:?}");
        }
        // The ends are honest: at the slowest the largest tool is at the fast end, at the fastest the
        // smallest is at the slow end.
        if let Some(ends) = found.ends {
            let (slowest, largest) = ends.largest.expect("single speeds have a slowest");
            prop_assert!(near(in_rpm(spindle_speed(found.basis.high, largest)), in_rpm(slowest)));
            let (fastest, smallest) = ends.smallest;
            prop_assert!(near(in_rpm(spindle_speed(found.basis.low, smallest)), in_rpm(fastest)));
            prop_assert!(found.at_hand.iter().all(|held| held.speed >= slowest && held.speed <= fastest));
        }
    }

    #[test]
    fn more_speeds_at_hand_never_give_a_worse_choice(
        low in 20.0f64..5000.0,
        width in 1.0f64..3.0,
        listed in proptest::collection::vec(10u32..30_000, 1..6),
        more in proptest::collection::vec(10u32..30_000, 0..6),
    ) {
        let band = SpeedBand { low: rpm(low), high: rpm(low * width) };
        // In the range is best; below it the faster; above it the slower.
        let rank = |speeds: &[u32]| {
            let set = band.choose(&machine(speeds)).set.expect("a speed of those at hand");
            match band.verdict(set) {
                Verdict::Within => (2, 0.0),
                Verdict::Slow => (1, in_rpm(set)),
                Verdict::Fast => (0, -in_rpm(set)),
            }
        };
        let all: Vec<u32> = listed.iter().chain(&more).copied().collect();
        prop_assert!(rank(&all) >= rank(&listed), "{:?} after {:?}", rank(&all), rank(&listed));
        // What is set is a speed the machine has.
        let set = in_rpm(band.choose(&machine(&all)).set.expect("a speed"));
        prop_assert!(all.iter().any(|speed| near(f64::from(*speed), set)));
    }

    #[test]
    fn a_deeper_hole_takes_longer(
        material in any_material(),
        diameter in 1.0f64..30.0,
        deep in 0.1f64..50.0,
        deeper in 1.01f64..2.0,
        work in proptest::sample::select(vec![Work::Drilling, Work::Reaming]),
        speed in 10u32..20_000,
    ) {
        let ask = |depth, speed| speeds::answer(Question {
            machines: Machines::of(machine(&[speed])),
            depth: Some(mm(depth)),
            ..Question::new(material, work, Tool::Size(mm(diameter)))
        });
        let (Some(one), Some(other), Some(faster)) =
            (ask(deep, speed), ask(deep * deeper, speed), ask(deep, speed * 2))
        else {
            return Ok(());
        };
        let time = |found: &speeds::Answer| found.set.as_ref().and_then(|set| set.time).map(|time| time.map(in_seconds));
        let ([short, long], [short_deeper, long_deeper]) =
            (time(&one).expect("a feed"), time(&other).expect("a feed"));
        prop_assert!(short > 0.0 && short <= long, "{short} to {long}");
        prop_assert!(short_deeper > short && long_deeper > long);
        prop_assert!(near(time(&faster).expect("a feed")[0] * 2.0, short));
        // Every stop lies deeper than the last, and the last is the full depth.
        if let Detail::Pecks(pecks) = &one.detail {
            prop_assert!(pecks.stops.is_sorted() && !pecks.stops.is_empty());
            let full = pecks.stops.last().copied() == Some(mm(deep));
            prop_assert!(full || pecks.stops.len() == 200);
        }
    }

    #[test]
    fn the_hole_for_a_reamer_is_smaller_than_the_reamer(
        reamer in 0.5f64..40.0,
        at_hand in any_drawer(),
    ) {
        let found = reaming::reaming(mm(reamer), &at_hand);
        for leave in [&found.by_hand, &found.by_machine].into_iter().flatten() {
            prop_assert!(leave.least > mm(0.0) && leave.least <= leave.aim && leave.aim <= leave.most);
            prop_assert!(leave.smallest_hole(mm(reamer)) > mm(0.0), "{reamer}: {:?}", leave.most);
            for drill in &leave.drills {
                let left = in_mm(mm(reamer) - drill.diameter);
                prop_assert!(left > in_mm(leave.least) - 1e-5 && left < in_mm(leave.most) + 1e-5);
            }
            prop_assert_eq!(leave.take.is_none(), leave.drills.is_empty());
        }
        // A larger drawer never takes a drill further off the aim.
        let every: Vec<_> = drills::all().iter().collect();
        let all = reaming::reaming(mm(reamer), &every);
        for (few, all) in [(&found.by_hand, &all.by_hand), (&found.by_machine, &all.by_machine)] {
            let off = |leave: &Option<reaming::Leave>| {
                let leave = leave.as_ref()?;
                Some((mm(reamer) - leave.take?.diameter - leave.aim).value.abs())
            };
            prop_assert!(off(few).is_none_or(|few| off(all).is_some_and(|all| all <= few + 1e-5)));
        }
    }

    #[test]
    fn a_wider_head_is_sunk_deeper(
        head in 1.0f64..30.0,
        part in 0.0f64..1.0,
        angle in 60.0f64..150.0,
    ) {
        let depth = |head: f64, hole: f64, angle: f64| in_mm(sink_depth(mm(head), mm(hole), degrees(angle)));
        let hole = head * part;
        let sunk = depth(head, hole, angle);
        prop_assert!(sunk > 0.0 && depth(head * 1.1, hole, angle) > sunk);
        prop_assert!(depth(head, hole, angle + 5.0) < sunk, "a blunter countersink goes in less");
        prop_assert!(depth(head, head, angle) == 0.0);
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
        let question = clearance::Question { screw, fit, upper_error, lower_error, at_hand };
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
        assert_eq!(custom, geometry(thread), "{}", thread.designation);
    }
}
