//! A blind hole: its depths are the plan's, its verdict follows from its wall, and what is said to make it
//! possible does.

#![expect(clippy::panic, reason = "an answer that lacks a row must stop the test")]

use holewright_core::calc::blind_hole::{Change, Question, TapEnd, Verdict, Way, answer, changed};
use holewright_core::calc::depth::{BlindHole, LastTap, blind, least_wall};
use holewright_core::calculators::blind_hole::{DECLARATION, answer_to};
use holewright_core::calculators::{AnswerKind, Figure, Value};
use holewright_core::plan::{Hole, HoleSpec, build};
use holewright_core::tables::{materials, threads};
use holewright_core::units::{Length, degrees, in_mm, mm};
use proptest::prelude::*;

fn same(a: Length, b: Length) -> bool {
    in_mm(a - b).abs() < 1e-9
}

prop_compose! {
    fn any_question()(
        major in 1.0f64..12.0,
        pitch_part in 0.08f64..0.25,
        drill_part in 0.7f64..0.95,
        angle in 60.0f64..179.0,
        last_tap in proptest::sample::select(LastTap::ALL.to_vec()),
        has_centre in any::<bool>(),
        turns in 1.0f64..25.0,
        thickness in 0.5f64..60.0,
    ) -> (Question, Length) {
        let pitch = mm(major * pitch_part);
        let hole = BlindHole {
            major: mm(major),
            pitch,
            drill: mm(major * drill_part),
            point_angle: degrees(angle),
            last_tap,
        };
        let tap_end = if has_centre { TapEnd::MaleCentre } else { TapEnd::Flat };
        let full_thread = pitch * turns;
        let part_thickness = Some(mm(thickness));
        (Question { hole, tap_end, full_thread, part_thickness }, mm(thickness))
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn blind_hole_adds_up_and_is_judged_by_its_wall((asked, thickness) in any_question()) {
        let found = answer(&asked);
        let plain = blind(&asked.hole, asked.full_thread);
        prop_assert!(same(found.full_diameter, plain.drill_full_diameter + found.for_centre));
        prop_assert!(same(found.to_point - found.full_diameter, plain.point));
        let centre = if asked.tap_end == TapEnd::Flat { mm(0.0) } else { asked.hole.major / 2.0 };
        prop_assert!(same(found.for_centre, centre));
        let part = found.in_part.clone().expect("a part of known thickness");
        prop_assert!(same(part.wall, thickness - found.to_point));
        let (wall, least) = (in_mm(part.wall), in_mm(least_wall(asked.hole.drill)));
        match part.verdict {
            Verdict::Possible => prop_assert!(wall > least - 1e-3 && part.ways.is_empty()),
            Verdict::ThinWall => prop_assert!(wall > 0.0 && wall < least),
            Verdict::ComesThrough => prop_assert!(wall < 1e-3),
        }
    }

    #[test]
    fn blind_hole_keeps_what_its_ways_promise((asked, _) in any_question()) {
        let part = answer(&asked).in_part.expect("a part of known thickness");
        let mut enough = false;
        for way @ Way { change, .. } in &part.ways {
            let then = answer(&changed(&asked, *change)).in_part.expect("the same part");
            prop_assert!(same(then.wall, way.wall) && way.wall >= part.wall, "{way:?}");
            prop_assert_eq!(then.verdict == Verdict::Possible, way.is_enough);
            prop_assert_eq!(then.most_full_thread, way.most_full_thread);
            let is_sum = *change == Change::Together;
            prop_assert!(!is_sum || !enough, "the sum is for where no one of them is enough");
            prop_assert!(!is_sum || part.ways.iter().all(|one| one.wall <= way.wall));
            enough |= way.is_enough;
        }
        let untried = asked.hole.last_tap != LastTap::Plug || asked.tap_end == TapEnd::MaleCentre;
        let is_possible = part.verdict == Verdict::Possible;
        prop_assert!(is_possible || !untried || !part.ways.is_empty(), "a way was left out");
    }

    #[test]
    fn blind_hole_leaves_just_the_least_wall_under_the_most_full_thread((asked, _) in any_question()) {
        let part = answer(&asked).in_part.expect("a part of known thickness");
        let verdict = |full_thread| {
            let again = answer(&Question { full_thread, ..asked });
            again.in_part.map(|part| part.verdict)
        };
        match part.most_full_thread {
            Some(most) => {
                prop_assert!(most >= asked.hole.pitch);
                prop_assert_eq!(verdict(most), Some(Verdict::Possible));
                prop_assert_ne!(verdict(most + mm(0.002)), Some(Verdict::Possible));
            }
            None => prop_assert_ne!(verdict(asked.hole.pitch + mm(0.002)), Some(Verdict::Possible)),
        }
    }
}

/// One rule, two doors: a plan and the calculator drill to the same depth, and leave the same wall.
#[test]
fn blind_hole_is_as_deep_as_in_a_plan() {
    for (system, size, metal, depth, finish) in [
        ("ba", "5", "gunmetal", 8.0, LastTap::Plug),
        ("ba", "2", "silver-steel", 5.0, LastTap::Second),
        ("metric", "m3", "aluminium-6082", 6.0, LastTap::Taper),
        ("me-40", "1-4", "free-cutting-brass", 6.3, LastTap::Plug),
    ] {
        let thread = threads::find(system, size).expect("a thread");
        let usual = HoleSpec::new(thread, materials::find(metal).expect("a metal"));
        let spec = HoleSpec {
            hole: Hole::Blind,
            depth: Some(mm(depth)),
            part_thickness: Some(mm(30.0)),
            finish: Some(finish),
            ..usual
        };
        let planned = build(&spec).expect("a plan").depths;
        let (depth, finish) = (format!("{depth} mm"), finish.slug());
        let asked = DECLARATION.asked([
            ("thread", thread.designation),
            ("material", metal),
            ("depth", &*depth),
            ("finish", finish),
            ("part_thickness", "30 mm"),
        ]);
        let found = answer_to(&asked).expect("an answer").answer;
        assert_eq!(
            planned.drill_full_diameter,
            Some(found.full_diameter),
            "{}",
            thread.designation
        );
        assert_eq!(planned.drill_to_point, Some(found.to_point), "{}", thread.designation);
        let wall = found.in_part.map(|part| part.wall);
        assert_eq!(planned.wall, wall, "{}", thread.designation);
        assert_eq!(planned.least_wall, found.least_wall, "{}", thread.designation);
    }
}

/// The rows of an answer.
fn figures(pairs: &[(&'static str, &str)]) -> Vec<Figure> {
    let AnswerKind::Rows(rows) = DECLARATION.answer else { panic!("it answers in rows") };
    rows.answer(&DECLARATION.asked(pairs.iter().copied())).expect("an answer").figures
}

/// A row in sentences.
fn sentences(figures: &[Figure], key: &str) -> Vec<String> {
    let found = figures.iter().find(|figure| figure.key == key).map(|figure| &figure.value);
    let Some(Value::Sentences(said)) = found else { panic!("{key} is no row of sentences") };
    said.clone()
}

/// The verdict, and what would make it possible.
fn said(pairs: &[(&'static str, &str)]) -> (String, Vec<String>) {
    let figures = figures(pairs);
    let verdict = figures.iter().find(|figure| figure.key == "verdict").map(|it| &it.value);
    let Some(Value::Words(verdict)) = verdict else { panic!("no verdict") };
    (verdict.clone(), sentences(&figures, "ways"))
}

/// 3/16 in of thread in a part 3/16 in thick, as drawings ask for.
#[test]
fn blind_hole_in_a_part_as_thick_as_its_thread_is_not_possible_and_says_what_is() {
    let (verdict, ways) = said(&[
        ("thread", "5 BA"),
        ("depth", "3/16"),
        ("part_thickness", "3/16"),
        ("finish", "second"),
    ]);
    assert!(verdict.starts_with("not possible: the drill comes through by "), "{verdict}");
    assert!(ways.iter().any(|way| way.starts_with("Run the plug (bottoming) tap")), "{ways:?}");
    assert!(ways.iter().any(|way| way.contains("point of 135°")), "{ways:?}");
    assert!(ways.iter().any(|way| way.contains("full thread")), "{ways:?}");
    assert!(ways.iter().any(|way| way.starts_with("Drill right through")), "{ways:?}");
    let (verdict, ways) =
        said(&[("thread", "5 BA"), ("depth", "3/16"), ("part_thickness", "1/2 in")]);
    assert_eq!((verdict.as_str(), ways.len()), ("possible", 0));
}

/// A tap up to 3/8 in may have a male centre still: it is spoken of where it was not counted.
#[test]
fn blind_hole_speaks_of_a_male_centre_that_was_not_counted() {
    let speaks = |pairs: &[(&'static str, &str)]| {
        let before = sentences(&figures(pairs), "before_tapping");
        before.iter().any(|said| said.contains("a male centre still on it wants up to 1.6 mm"))
    };
    assert!(speaks(&[("thread", "5 BA")]));
    assert!(!speaks(&[("thread", "5 BA"), ("tap_end", "male-centre")]));
    assert!(!speaks(&[("thread", "M12")]));
}

/// Ten threads are ten pitches.
#[test]
fn blind_hole_takes_its_thread_by_count_or_by_length() {
    let deep = |depth: &str| {
        let asked = DECLARATION.asked([("thread", "5 BA"), ("depth", depth)]);
        answer_to(&asked).expect("an answer").question.full_thread
    };
    assert!(same(deep("10 threads"), mm(5.9)));
    assert!(same(deep("5.9 mm"), mm(5.9)));
    assert!(same(deep(""), mm(4.8)));
    for wrong in ["0 threads", "100 threads", "0.1 mm", "1.9 m", "half a turn"] {
        let asked = DECLARATION.asked([("thread", "5 BA"), ("depth", wrong)]);
        let errors = answer_to(&asked).expect_err(wrong);
        assert_eq!(errors.first().map(|error| error.field), Some("depth"), "{wrong}");
    }
}
