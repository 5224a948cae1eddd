//! The choice of a tapping drill, rule by rule, each with a drawer of the few drills it turns on.

#![expect(clippy::unwrap_used, reason = "a thread that has no drill ends its test")]

use holewright_core::calc::Error;
use holewright_core::calc::aim::{Aim, base_percent};
use holewright_core::calc::tapping::{
    DrillChoice, Question, Remark, candidates, choose, choose_forming, usual, usual_of,
};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::tables::materials::{self, Group};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::{in_mm, mm, print};

fn thread(system: &str, size: &str) -> &'static Thread {
    threads::find(system, size).unwrap()
}

/// Drills by their names on the drill stand, smallest first.
fn drawer(labels: &[&str]) -> Vec<&'static Drill> {
    let held: Vec<_> =
        drills::all().iter().filter(|drill| labels.contains(&drill.label.as_str())).collect();
    assert_eq!(held.len(), labels.len(), "{labels:?}");
    held
}

fn question(system: &str, size: &str, slug: &str, aim: Aim) -> Question<'static> {
    let material = materials::find(slug).unwrap();
    Question { thread: thread(system, size), material, thread_length: None, aim }
}

fn choice(question: Question<'_>, labels: &[&str]) -> DrillChoice {
    choose(question, drawer(labels)).unwrap()
}

fn chosen(question: Question<'_>, labels: &[&str]) -> &'static str {
    choice(question, labels).chosen.drill.label.as_str()
}

/// A thread of which no largest hole is held, so that the aim alone decides: 6 mm, 1.5 mm of full thread
/// on both sides.
fn unlimited(slug: &str, aim: Aim) -> Question<'static> {
    question("loewenherz", "6", slug, aim)
}

#[test]
fn two_drills_as_near_are_a_tie_that_tough_metal_settles_for_the_larger() {
    // 73.33 and 66.67 % about 70: both 3.33 off.
    let pair = ["4.9 mm", "5 mm"];
    let thin = Question { thread_length: Some(mm(5.0)), ..unlimited("copper", Aim::Strong) };
    assert_eq!(chosen(thin, &pair), "5 mm");
    assert_eq!(chosen(unlimited("gunmetal", Aim::Usual), &pair), "4.9 mm");
    // 60.00 and 52.02 % about 56: the larger is nearer, by less than a tie counts.
    let easy = unlimited("bright-mild-steel", Aim::Easy);
    assert_eq!(chosen(easy, &["5.1 mm", "No. 5"]), "5.1 mm");
    // 56.04 %: no tie, and the nearer is taken, whatever the metal.
    assert_eq!(chosen(easy, &["5.1 mm", "13/64 in"]), "13/64 in");
    assert_eq!(chosen(thin, &["4.9 mm", "5.1 mm"]), "4.9 mm");
}

#[test]
fn of_two_drills_of_one_size_the_first_is_taken() {
    let pair = drawer(&["Letter E", "1/4 in"]);
    assert!(pair.iter().all(|drill| (in_mm(drill.diameter) - 6.35).abs() < 1e-9));
    let m7 = question("metric", "m7", "copper", Aim::Usual);
    assert_eq!(chosen(m7, &["Letter E", "1/4 in"]), "Letter E");
}

#[test]
fn a_drill_at_the_limit_keeps_to_it() {
    // The largest hole of 7 BA is 2.1 mm; the allowance of tough metal at 2.5 mm is 0.05.
    let strong = question("ba", "7", "copper", Aim::Strong);
    let remarks = |question, label| choice(question, &[label]).remarks;
    assert!(!remarks(strong, "2.1 mm").contains(&Remark::NoneWithinStandard));
    assert!(remarks(strong, "2.15 mm").contains(&Remark::NoneWithinStandard));
    let tough = question("ba", "7", "copper", Aim::Usual);
    assert!(!remarks(tough, "2.15 mm").contains(&Remark::NoneWithinStandard));
    let usual = question("ba", "7", "gunmetal", Aim::Usual);
    assert!(remarks(usual, "2.15 mm").contains(&Remark::NoneWithinStandard));
    let within = |label| choice(usual, &[label]).chosen.within_standard;
    assert_eq!((within("2.1 mm"), within("2.15 mm")), (Some(true), Some(false)));
    // M12 is past 6 mm and has no allowance.
    let m12 = question("metric", "m12", "copper", Aim::Usual);
    assert!(remarks(m12, "10.5 mm").contains(&Remark::NoneWithinStandard));
}

#[test]
fn a_drill_that_keeps_to_the_standard_comes_before_a_nearer_one() {
    // M8: 6.912 mm at most. In copper 56 % is aimed for: 7.1 mm leaves 55.4, 7 mm 61.6, 6.9 mm 67.7.
    let m8 = question("metric", "m8", "copper", Aim::Usual);
    assert_eq!(chosen(m8, &["6.9 mm", "7.1 mm"]), "6.9 mm");
    // Where none keeps to it, the nearest that leaves the aim at least, else the nearest.
    assert_eq!(chosen(m8, &["7 mm", "7.1 mm"]), "7 mm");
    assert_eq!(chosen(m8, &["7.1 mm", "7.2 mm"]), "7.1 mm");
}

#[test]
fn a_drill_below_the_minor_diameter_is_the_last_resort() {
    // M6: 4.917 mm at least. 82 % is aimed for: 4.9 mm leaves 84.7, 5.1 mm 69.3.
    let m6 = question("metric", "m6", "free-cutting-brass", Aim::Strong);
    assert_eq!(chosen(m6, &["4.9 mm", "5.1 mm"]), "5.1 mm");
    let only = choice(m6, &["4.9 mm"]);
    assert!(only.chosen.below_minor && only.remarks.contains(&Remark::BelowMinor));
}

#[test]
fn a_drill_not_at_hand_is_named_where_it_is_a_distinct_size_nearer() {
    let better = |question, label| {
        choice(question, &[label]).remarks.into_iter().find_map(|remark| match remark {
            Remark::BetterElsewhere(better) => Some(better.drill.label.as_str()),
            _ => None,
        })
    };
    // M8 in brass, 74 %: 6.8 mm leaves 73.9, Letter H 76.5 and Letter I 70.2.
    let m8 = question("metric", "m8", "free-cutting-brass", Aim::Usual);
    assert_eq!(better(m8, "6.8 mm"), None);
    assert_eq!(better(m8, "Letter H"), None, "2.4 points nearer are no distinct size");
    assert_eq!(better(m8, "Letter I"), Some("6.8 mm"), "3.7 points are");
    // A drill beyond the standard is beaten by any that keeps to it, nearer or not: 6.912 mm at most,
    // and Letter I is 6.909.
    let copper = question("metric", "m8", "copper", Aim::Usual);
    assert_eq!(better(copper, "7 mm"), Some("Letter I"));
}

#[test]
fn the_next_drills_either_way_are_distinct_sizes() {
    // 5 BA: No. 36 leaves 69.9 %, 2.7 mm 70.6, 2.65 mm 77.7, 2.75 mm 63.6.
    let five = question("ba", "5", "gunmetal", Aim::Usual);
    let found = choice(five, &["2.6 mm", "2.65 mm", "2.7 mm", "No. 36", "2.75 mm", "2.8 mm"]);
    let label = |candidate: Option<holewright_core::calc::tapping::Candidate>| {
        candidate.map(|candidate| candidate.drill.label.as_str())
    };
    assert_eq!(found.chosen.drill.label, "No. 36");
    assert_eq!((label(found.stronger), label(found.easier)), (Some("2.65 mm"), Some("2.75 mm")));
    let few = choice(five, &["2.7 mm", "No. 36"]);
    assert_eq!((few.stronger, few.easier), (None, None));
}

#[test]
fn more_than_five_points_from_the_aim_is_said() {
    let by = |label| {
        let m8 = question("metric", "m8", "free-cutting-brass", Aim::Usual);
        choice(m8, &[label]).remarks.into_iter().find_map(|remark| match remark {
            Remark::FarFromAim { by } => Some(print::fixed(by, 1)),
            _ => None,
        })
    };
    assert_eq!((by("6.8 mm"), by("6.9 mm")), (None, Some("-6.3".to_owned())));
    assert_eq!((by("Letter H"), by("6.7 mm")), (None, Some("6.1".to_owned())));
}

#[test]
fn the_usual_choice_of_a_group_has_its_aim() {
    let m6 = thread("metric", "m6");
    for group in [
        Group::EasyCutting,
        Group::IronAndGunmetal,
        Group::FreeCuttingSteel,
        Group::MildSteelAndPhosphorBronze,
        Group::Tough,
    ] {
        let aim = usual(m6, group).unwrap().aim_percent;
        assert!((aim - base_percent(group)).abs() < 1e-9, "{group}");
        let few = usual_of(m6, group, drawer(&["5 mm"])).unwrap();
        assert_eq!(few.chosen.drill.label, "5 mm");
    }
}

#[test]
fn the_drills_listed_leave_half_to_nine_tenths_largest_thread_first() {
    let listed = candidates(thread("metric", "m6")).unwrap();
    let percents: Vec<f64> = listed.iter().map(|candidate| candidate.engagement_percent).collect();
    assert!(percents.is_sorted_by(|a, b| a >= b) && percents.len() > 10);
    assert!(percents.iter().all(|percent| (50.0..=90.0).contains(percent)));
    let taper = threads::all().find(|thread| thread.taper.is_some()).unwrap();
    assert!(matches!(candidates(taper), Err(Error::NoEngagement { .. })));
    let material = materials::find("gunmetal").unwrap();
    let asked = Question { thread: taper, material, thread_length: None, aim: Aim::Usual };
    assert!(matches!(choose(asked, drills::all()), Err(Error::NoEngagement { .. })));
    assert!(matches!(choose_forming(asked, drills::all()), Err(Error::NoEngagement { .. })));
}

#[test]
fn a_forming_tap_takes_the_drill_nearest_its_hole_within_a_tenth_of_the_pitch() {
    // M3: 3 − 0.0068 · 0.5 · 65 = 2.779 mm, give or take 0.05.
    let m3 = question("metric", "m3", "copper", Aim::Usual);
    let formed = |labels: &[&str]| choose_forming(m3, drawer(labels));
    let label = |labels: &[&str]| formed(labels).unwrap().chosen.drill.label.as_str();
    assert_eq!(label(&["2.75 mm", "2.8 mm"]), "2.8 mm");
    assert_eq!(label(&["2.75 mm", "2.85 mm"]), "2.75 mm");
    let found = formed(&["2.8 mm"]).unwrap();
    assert_eq!(print::percent(found.chosen.engagement_percent), "58.8 %");
    // (3 − 2.8) / (0.0068 · 0.5).
    assert_eq!(print::percent(found.aim_percent), "65.0 %");
    // The makers' tables end at 55 and 75 % as they print it: 2.813 and 2.745 mm.
    let limit = found.largest_hole.expect("the makers' range");
    assert_eq!(print::mm(limit.diameter, 3), "2.813 mm");
    assert_eq!((found.chosen.within_standard, found.chosen.below_minor), (Some(true), false));
    let tight = formed(&["No. 36"]).err();
    assert!(tight.is_some(), "2.705 mm is further than a tenth of the pitch off");
    let tight = formed(&["No. 35"]).unwrap();
    assert!(!tight.chosen.below_minor, "2.794 mm");
    let tight = choose_forming(m3, drawer(&["2.75 mm"])).unwrap();
    assert!(!tight.chosen.below_minor, "2.75 mm is within 75 %");
    let Err(Error::NoDrillAtHand { hole, would_do, .. }) = formed(&["2.7 mm", "2.85 mm"]) else {
        panic!("neither is near")
    };
    assert_eq!(print::mm(hole, 3), "2.779 mm");
    assert_eq!(would_do.map(|drill| drill.label.as_str()), Some("7/64 in"), "2.778 mm");
    assert!(drills::find(Series::Fraction, "7-64").is_some());
}
