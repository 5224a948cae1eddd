//! The speeds of a machine: how a list of them is read, and which of them suits.

use holewright_core::calc::machines::{Machines, MachinesError};
use holewright_core::calc::speed_choice::{Reach, SpeedBand, Verdict};
use holewright_core::calc::spindle::{SpeedStep, Spindle, SpindleError, on_a_dial};
use holewright_core::units::{Frequency, in_rpm, print, rpm};

#[track_caller]
fn read(typed: &str) -> Spindle {
    Spindle::read(typed).expect("a list of speeds")
}

fn dial(speed: Frequency) -> String {
    print::trimmed(in_rpm(speed), 3)
}

/// Each step as it would be typed: `350`, `200-2000`, and `-2000` where only the fastest is known.
fn steps(spindle: &Spindle) -> Vec<String> {
    let step = |step: &SpeedStep| match step.slowest.map(dial) {
        Some(slowest) if slowest == dial(step.fastest) => slowest,
        slowest => format!("{}-{}", slowest.unwrap_or_default(), dial(step.fastest)),
    };
    spindle.steps.iter().map(step).collect()
}

#[track_caller]
fn check(typed: &str, expected: &[&str]) {
    assert_eq!(steps(&read(typed)), expected, "{typed}");
}

#[test]
fn a_list_is_parted_at_commas_that_do_not_mark_thousands() {
    check("350, 500, 1000", &["350", "500", "1000"]);
    check("1000;350;500;;350", &["350", "500", "1000"]);
    check("350\n500", &["350", "500"]);
    // No spindle turns at 1 rev/min: a comma behind one figure and hard before three marks thousands.
    check("1,200", &["1200"]);
    check("60,120,240", &["60", "120", "240"]);
    check("1,200,350", &["350", "1200"]);
    check("1,200, 2,400", &["1200", "2400"]);
    check("5, 200", &["5", "200"]);
    check("5,20", &["5", "20"]);
    check("10,200", &["10", "200"]);
    check(" , ", &[]);
}

#[test]
fn a_drive_without_steps_is_a_range() {
    check("200-2000", &["200-2000"]);
    check("200 – 2000 rpm", &["200-2000"]);
    check("500-500", &["500"]);
    assert_eq!(Spindle::read("2000-200"), Err(SpindleError::Backwards));
    assert!(matches!(Spindle::read("fast"), Err(SpindleError::Item(_))));
    assert!(matches!(Spindle::read("200-fast"), Err(SpindleError::Item(_))));
}

#[test]
fn forty_speeds_are_the_most() {
    let list = |count: u32| (1..=count).map(|step| format!("{}", step * 10)).collect::<Vec<_>>();
    assert_eq!(read(&list(40).join(", ")).steps.len(), 40);
    assert_eq!(Spindle::read(&list(41).join(", ")), Err(SpindleError::TooMany));
}

#[test]
fn a_machine_is_held_to_its_fastest_speed() {
    let held = |typed: &str, most: f64| Ok(steps(&read(typed).held_to(Some(rpm(most)))?));
    let left = |speeds: &[&str]| Ok(speeds.iter().map(|&speed| speed.to_owned()).collect());
    assert_eq!(held("350, 500, 1000", 500.0), left(&["350", "500"]));
    assert_eq!(held("350, 500, 1000", 999.0), left(&["350", "500"]));
    assert_eq!(held("350, 500, 1000", 2000.0), left(&["350", "500", "1000"]));
    // A drive without steps is cut short.
    assert_eq!(held("200-2000", 1000.0), left(&["200-1000"]));
    assert_eq!(held("200-2000", 200.0), left(&["200"]));
    assert_eq!(held("200-2000", 199.0), Err(SpindleError::NoneLeft));
    assert_eq!(held("350", 300.0), Err(SpindleError::NoneLeft));
    // The fastest speed alone says nothing of the slowest.
    let alone = Spindle::default().held_to(Some(rpm(2000.0))).unwrap();
    assert_eq!((steps(&alone), alone.slowest()), (vec!["-2000".to_owned()], None));
    assert_eq!(read("350, 500").held_to(None), Ok(read("350, 500")));
}

#[test]
fn the_ends_of_a_machine_are_its_slowest_and_fastest_speed() {
    let ends =
        |typed: &str| [read(typed).slowest(), read(typed).fastest()].map(|end| end.map(dial));
    assert_eq!(ends("1000, 350, 500"), [Some("350".to_owned()), Some("1000".to_owned())]);
    assert_eq!(ends("200-2000, 500"), [Some("200".to_owned()), Some("2000".to_owned())]);
    assert_eq!(ends(""), [None, None]);
}

/// A 12 mm drill in silver steel: 50 to 60 ft/min, 404 to 485 rev/min.
const BAND: [f64; 2] = [404.0, 485.0];

fn band() -> SpeedBand {
    let [low, high] = BAND.map(rpm);
    SpeedBand { low, high }
}

#[test]
fn a_speed_is_judged_as_a_dial_reads_it() {
    assert_eq!(dial(on_a_dial(rpm(485.0))), "490");
    // The band reads 400 to 490.
    for (speed, verdict) in [
        (350.0, Verdict::Slow),
        (394.0, Verdict::Slow),
        (396.0, Verdict::Within),
        (400.0, Verdict::Within),
        (450.0, Verdict::Within),
        (490.0, Verdict::Within),
        (494.0, Verdict::Within),
        (496.0, Verdict::Fast),
        (1000.0, Verdict::Fast),
    ] {
        assert_eq!(band().verdict(rpm(speed)), verdict, "{speed}");
    }
}

#[test]
fn a_drive_without_steps_is_set_to_the_slow_end() {
    let nearest = |spindle: Spindle| spindle.steps.first().map(|step| dial(band().nearest(*step)));
    for (typed, speed) in
        [("200-2000", "400"), ("500-2000", "500"), ("100-300", "300"), ("350", "350")]
    {
        assert_eq!(nearest(read(typed)).as_deref(), Some(speed), "{typed}");
    }
    let alone = Spindle::default().held_to(Some(rpm(2000.0))).unwrap();
    assert_eq!(nearest(alone).as_deref(), Some("400"));
}

#[test]
fn the_slowest_speed_in_the_range_is_set_else_the_next_below() {
    for (typed, speed, reach) in [
        ("280, 470, 420, 900", Some("420"), Reach::Within),
        ("280, 350, 720, 900", Some("350"), Reach::Between),
        ("280, 350", Some("350"), Reach::TooSlow),
        ("900, 720", Some("720"), Reach::TooFast),
        ("", None, Reach::NotSaid),
    ] {
        let choice = band().choose(&read(typed));
        assert_eq!((choice.set.map(dial).as_deref(), choice.reach), (speed, reach), "{typed}");
    }
}

/// Each machine as it would be typed.
fn shed(typed: &str) -> Result<Vec<String>, MachinesError> {
    let machine = |machine: &holewright_core::calc::machines::Machine| {
        let speeds = steps(&machine.spindle).join(" ");
        machine.name.as_ref().map_or_else(|| speeds.clone(), |name| format!("{name}={speeds}"))
    };
    Ok(Machines::read(typed)?.each.iter().map(machine).collect())
}

#[test]
fn several_machines_are_parted_by_their_names() {
    let two = ["lathe=350 500 1000", "bench drill=600-2000"].map(str::to_owned).to_vec();
    for typed in [
        "lathe: 350, 500, 1000; bench drill: 600-2000",
        "lathe:350,500,1000, bench drill:600-2000",
        "lathe: 350; 500; 1000\nbench drill: 600 – 2000 rpm",
        " ; lathe : 350, 500, 1,000 ;;  bench   drill : 600-2000 ;",
    ] {
        assert_eq!(shed(typed), Ok(two.clone()), "{typed}");
    }
    // A list without a name is one machine, as it always was.
    assert_eq!(shed("1000; 350, 500"), Ok(vec!["350 500 1000".to_owned()]));
    assert_eq!(shed(" , "), Ok(Vec::new()));
}

#[test]
fn a_list_of_machines_that_makes_no_sense_is_refused() {
    assert_eq!(shed("350; lathe: 500"), Err(MachinesError::Unnamed));
    assert_eq!(shed(": 500"), Err(MachinesError::NoName));
    assert_eq!(shed("10: 500"), Err(MachinesError::NoName));
    assert_eq!(shed("<b>: 500"), Err(MachinesError::NoName));
    assert_eq!(shed(&format!("{}: 500", "a".repeat(25))), Err(MachinesError::NoName));
    assert_eq!(shed("lathe: 500; Lathe: 600"), Err(MachinesError::SameName("Lathe".to_owned())));
    assert_eq!(shed("lathe: ; drill: 600"), Err(MachinesError::NoSpeeds("lathe".to_owned())));
    assert!(matches!(shed("lathe: fast"), Err(MachinesError::Speeds(_))));
    let seven: Vec<String> = ('a'..='g').map(|name| format!("{name}: 500")).collect();
    assert_eq!(shed(&seven.join("; ")), Err(MachinesError::TooMany));
}

#[test]
fn machines_are_held_to_the_fastest_speed() {
    let held = |typed: &str, most: f64| Machines::read(typed).unwrap().held_to(Some(rpm(most)));
    let two = held("lathe: 350, 1000; bench drill: 600-2000", 700.0).unwrap();
    assert_eq!(two.fastest(), Some(rpm(700.0)));
    assert_eq!(two.slowest().map(|(_, speed)| speed), Some(rpm(350.0)));
    let one = held("lathe: 350; bench drill: 600", 400.0).unwrap();
    assert_eq!(one.each.len(), 1);
    assert_eq!(held("lathe: 350; bench drill: 600", 300.0), Err(SpindleError::NoneLeft));
    // The fastest alone is one machine without a name.
    assert_eq!(held("", 2000.0).unwrap().each.len(), 1);
    assert!(Machines::read("").unwrap().held_to(None).unwrap().is_empty());
}
