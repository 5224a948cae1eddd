//! Plans step by step: what is done, on which part, with what, how far and how fast.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::calc::setting::SetTo;
use holewright_core::plan::{
    Action, Hole, HoleSpec, Lips, Operation, Over, Part, Tap, TapSteel, UpperHole, build,
};
use holewright_core::tables::drills::Series;
use holewright_core::tables::materials;
use holewright_core::tables::threads::read::Hand;
use holewright_core::units::{in_rpm, mm, print};

use super::cases::{of_series, only, pump_cover, spec};

/// A step in one line: `drill lower: No. 7 drill, ⌀5.105 mm, to 11 mm, 1500 rev/min, 0.051 mm a turn`.
fn line(step: &Operation) -> String {
    let part = match step.part {
        Part::Upper => "upper",
        Part::Lower => "lower",
        Part::Both => "both",
    };
    let mut line = format!("{} {part}: {}", step.action.slug(), step.tool);
    if let Some(diameter) = step.diameter {
        line += &format!(", ⌀{}", print::mm(diameter, 3));
    }
    if let Some(depth) = step.depth {
        line += &format!(", to {}", print::mm(depth, 2));
    }
    if let Some(tip) = step.tip {
        line += &format!(", end at {}", print::mm(tip, 2));
    }
    if let Some(set) = &step.speed {
        match set.speed() {
            Some(speed) => line += &format!(", {} rev/min", print::fixed(in_rpm(speed), 0)),
            // A countersink's is the same in every plan: tests/plan/machines.rs.
            None if matches!(set.to, SetTo::SlowestThatCutsClean(_)) => {}
            None => line += &format!(", {}", set.words()),
        }
    }
    if let Some(feed) = step.feed {
        line += &format!(", {} a turn", print::mm(feed, 3));
    }
    line
}

/// The steps, of which each says what to do and why.
#[track_caller]
fn check(spec: &HoleSpec, expected: &[&str]) {
    let plan = build(spec).unwrap();
    let steps: Vec<String> = plan.operations.iter().map(line).collect();
    assert_eq!(steps, expected);
    for step in &plan.operations {
        assert!(step.text.ends_with('.') && step.why.ends_with('.'), "{step:?}");
    }
}

fn words(spec: &HoleSpec, step: &str) -> String {
    let plan = build(spec).unwrap();
    let found = plan.operations.iter().find(|operation| line(operation).starts_with(step));
    found.unwrap().text.clone().into_owned()
}

fn over(material: &str, thickness: Option<f64>, hole: UpperHole) -> Option<Over> {
    let material = materials::find(material).unwrap();
    Some(Over { material, thickness: thickness.map(mm), hole })
}

#[test]
fn two_parts_are_drilled_together_and_the_upper_opened_out() {
    // 8 mm of thread, two turns of lead and one to spare at 0.59 mm, and 4 mm of cover: 13.77 mm.
    // Gunmetal at 150 ft/min is the slower: 45.72 m/min over π · 2.705 mm is 5380 rev/min, on a dial
    // 5400. Brass alone goes at 60 m/min: over π · 3.4 mm, 5620.
    check(
        &pump_cover(),
        &[
            "mark-out upper: scriber and dot punch",
            "spot upper: spotting drill, or a small centre drill",
            "register both: clamps, spigot or a bar through the bores",
            "drill both: No. 36 drill, ⌀2.705 mm, to 13.77 mm, as fast as the machine goes, 0.025 mm a turn",
            "separate both: none",
            "deburr upper: scraper or large drill turned by hand, brush",
            "deburr lower: scraper or large drill turned by hand, brush",
            "chamfer lower: countersink, 90°, ⌀3.4 mm",
            "tap lower: 5 BA taper tap, end at 9.77 mm",
            "tap lower: 5 BA second tap, end at 9.77 mm",
            "tap lower: 5 BA plug tap, end at 9.18 mm",
            "open-out upper: 3.4 mm drill, ⌀3.4 mm, to 4 mm, as fast as the machine goes, 0.051 mm a turn",
            "chamfer upper: countersink",
            "try-screw both: the screw it is for",
            "next-hole both: the first screw",
        ],
    );
}

#[test]
fn a_tap_ends_its_lead_beyond_the_thread_and_never_below_the_drilled_hole() {
    // The leads of a training page and a tap maker: 10, 5 and 2 threads at the most; 0.59 mm of pitch.
    let tips = |hole: &HoleSpec| -> Vec<String> {
        let plan = build(hole).unwrap();
        plan.operations.iter().filter_map(|step| Some(print::mm(step.tip?, 2))).collect()
    };
    let blind = HoleSpec { over: None, ..pump_cover() };
    // The hole is 8 + 3 × 0.59 mm: the first two touch there, the plug tap needs 8 + 2 × 0.59.
    assert_eq!(tips(&blind), ["9.77 mm", "9.77 mm", "9.18 mm"]);
    let through = HoleSpec { hole: Hole::Through, depth: Some(mm(8.1)), ..blind };
    assert_eq!(tips(&through), ["14 mm", "11.05 mm"]);
    let unknown = HoleSpec { depth: None, ..through.clone() };
    assert!(tips(&unknown).is_empty());
    assert!(tips(&HoleSpec { tap: Tap::Machine, ..through }).is_empty());
    for hole in [&pump_cover(), &spec("bsw", "3-8", "bright-mild-steel")] {
        let plan = build(hole).unwrap();
        let mut taps = plan.operations.iter().filter(|step| step.action == Action::Tap);
        assert!(taps.all(|tap| tap.depth.is_none() && tap.stop.is_none()));
    }
}

#[test]
fn a_master_is_spotted_through_with_what_fits_its_hole() {
    let spotted = HoleSpec {
        over: over("free-cutting-brass", Some(4.0), UpperHole::Clearance),
        ..pump_cover()
    };
    check(
        &spotted,
        &[
            "register both: clamps, spigot or a bar through the bores",
            "spot-through lower: transfer punch, or 3.4 mm drill if it fits the hole closely, ⌀3.4 mm, to 4 mm",
            "separate both: none",
            "drill lower: No. 36 drill, ⌀2.705 mm, to 9.77 mm, as fast as the machine goes, 0.025 mm a turn",
            "chamfer lower: countersink, 90°, ⌀3.4 mm",
            "deburr lower: pick and brush",
            "tap lower: 5 BA taper tap, end at 9.77 mm",
            "tap lower: 5 BA second tap, end at 9.77 mm",
            "tap lower: 5 BA plug tap, end at 9.18 mm",
            "try-screw both: the screw it is for",
            "next-hole both: the first screw",
        ],
    );
    let plan = build(&spotted).unwrap();
    let spotting = plan.operations.get(1).and_then(|step| step.drill);
    assert_eq!(spotting.map(|drill| drill.label.as_str()), Some("3.4 mm"));
    let none = HoleSpec { at_hand: only(&[(Series::Metric, "2.65")]), ..spotted };
    let plan = build(&none).unwrap();
    assert_eq!(
        plan.operations.get(1).map(line).as_deref(),
        Some("spot-through lower: transfer punch, or a drill that fits the clearance hole")
    );
}

#[test]
fn a_wide_drill_follows_a_pilot_as_wide_as_its_web() {
    // Mild steel at 80 ft/min: 24.384 m/min over π · 8.611 mm is 901 rev/min; a quarter of the drill
    // is 2.153 mm.
    let through =
        |depth| HoleSpec { depth: Some(mm(depth)), ..spec("metric", "m10", "bright-mild-steel") };
    let start = [
        "mark-out lower: scriber and dot punch",
        "spot lower: spotting drill, or a small centre drill",
        "drill lower: 2.15 mm drill, ⌀2.15 mm, to 15 mm, as fast as the machine goes, 0.022 mm a turn",
        "drill lower: Letter R drill, ⌀8.611 mm, to 15 mm, 900 rev/min, 0.102 mm a turn",
        "chamfer lower: countersink, 90°, ⌀10.5 mm",
        "chamfer lower: countersink, 90°, ⌀10.5 mm",
        "tap lower: M10 taper tap, end at 30 mm",
    ];
    let end = "try-screw lower: the screw it is for";
    check(&through(15.0), &[start.as_slice(), &[end]].concat());
    // A thread longer than one and a half diameters takes a second tap.
    let longer = build(&through(15.1)).map(|plan| plan.operations.len());
    assert_eq!(longer, Ok(start.len() + 2));
    let tap = words(&through(15.1), "tap lower: M10 second tap, end at 22.6 mm");
    assert!(tap.starts_with("Clear the swarf"), "{tap}");
    // From 8 mm on a pilot, and none where the drills at hand have none below six tenths of it.
    let with = |drills: &[(Series, &str)]| HoleSpec { at_hand: only(drills), ..through(15.0) };
    let drills = |spec: &HoleSpec| -> Vec<String> {
        let plan = build(spec).unwrap();
        plan.operations.iter().filter_map(|step| Some(step.drill?.label.clone())).collect()
    };
    let metric = |size| (Series::Metric, size);
    assert_eq!(drills(&with(&[metric("8.5"), metric("5.1")])), ["8.5 mm"]);
    assert_eq!(drills(&with(&[metric("8.5"), metric("5")])), ["5 mm", "8.5 mm"]);
    assert_eq!(drills(&with(&[metric("8.5"), metric("5"), metric("1")])), ["1 mm", "8.5 mm"]);
    let m9 = HoleSpec {
        at_hand: only(&[metric("2"), metric("7.9"), metric("8")]),
        ..spec("metric-fine", "m9x1", "bright-mild-steel")
    };
    assert_eq!(drills(&m9), ["2 mm", "8 mm"]);
    let below = HoleSpec { at_hand: only(&[metric("2"), metric("7.9")]), ..m9 };
    assert_eq!(drills(&below), ["7.9 mm"]);
}

#[test]
fn a_large_drill_is_worked_up_to_by_halves() {
    let drills = |spec: &HoleSpec| -> Vec<String> {
        let plan = build(spec).unwrap();
        plan.operations.iter().filter_map(|step| Some(step.drill?.label.clone())).collect()
    };
    let metric = |system, size| HoleSpec {
        at_hand: of_series(&[Series::Metric]),
        ..spec(system, size, "bright-mild-steel")
    };
    // A quarter of 13.5 mm is 3.375, half of it 6.75; common practice, no source.
    let large = metric("bsw", "5-8");
    assert_eq!(drills(&large), ["3.4 mm", "6.7 mm", "13.5 mm"]);
    let plan = build(&large).unwrap();
    let said = |label: &str| {
        let step = plan
            .operations
            .iter()
            .find(|step| step.drill.is_some_and(|drill| drill.label == label));
        step.unwrap().text.to_string()
    };
    assert!(said("13.5 mm").contains("bore the rest"), "{}", said("13.5 mm"));
    assert!(!said("6.7 mm").contains("bore the rest"));
    // Below 10 mm a pilot is enough, and nothing is said of the chuck.
    let middling = metric("bsw", "3-8");
    assert_eq!(drills(&middling), ["7.9 mm"]);
    let wide = metric("metric", "m12");
    assert_eq!(drills(&wide), ["2.6 mm", "5.2 mm", "10.4 mm"]);
    // A drawer without one between goes from pilot to size.
    let few = HoleSpec {
        at_hand: only(&[(Series::Metric, "3"), (Series::Metric, "13.5")]),
        ..spec("bsw", "5-8", "bright-mild-steel")
    };
    assert_eq!(drills(&few), ["3 mm", "13.5 mm"]);
}

#[test]
fn a_tap_under_power_has_a_speed_and_the_pitch_for_its_feed() {
    // 45 ft/min: 13.716 m/min over π · 6 mm is 728 rev/min.
    let blind = HoleSpec {
        tap: Tap::Machine,
        hole: Hole::Blind,
        depth: Some(mm(8.0)),
        hand: Hand::Left,
        ..spec("metric", "m6", "bright-mild-steel")
    };
    check(
        &blind,
        &[
            "mark-out lower: scriber and dot punch",
            "spot lower: spotting drill, or a small centre drill",
            "drill lower: No. 7 drill, ⌀5.105 mm, to 11 mm, 1500 rev/min, 0.051 mm a turn",
            "chamfer lower: countersink, 90°, ⌀6.3 mm",
            "deburr lower: pick and brush",
            "tap lower: M6 left-hand spiral-flute machine tap, to 8 mm, 210 rev/min, 1 mm a turn",
            "try-screw lower: the screw it is for",
        ],
    );
    let through = HoleSpec {
        tap: Tap::Machine,
        tap_steel: TapSteel::Carbon,
        ..spec("metric", "m6", "bright-mild-steel")
    };
    check(
        &through,
        &[
            "mark-out lower: scriber and dot punch",
            "spot lower: spotting drill, or a small centre drill",
            "drill lower: No. 7 drill, ⌀5.105 mm, 1500 rev/min, 0.051 mm a turn",
            "chamfer lower: countersink, 90°, ⌀6.3 mm",
            "chamfer lower: countersink, 90°, ⌀6.3 mm",
            "tap lower: M6 spiral-point machine tap, carbon steel, 110 rev/min, 1 mm a turn",
            "try-screw lower: the screw it is for",
        ],
    );
}

#[test]
fn a_forming_tap_goes_in_once() {
    let forming =
        HoleSpec { tap: Tap::Forming, depth: Some(mm(3.0)), ..spec("metric", "m3", "copper") };
    check(
        &forming,
        &[
            "mark-out lower: scriber and dot punch",
            "spot lower: spotting drill, or a small centre drill",
            "drill lower: 7/64 in drill, ⌀2.778 mm, to 3 mm, 2400 rev/min, 0.025 mm a turn",
            "chamfer lower: countersink, 90°, ⌀3.2 mm",
            "chamfer lower: countersink, 90°, ⌀3.2 mm",
            "tap lower: M3 forming tap, to 3 mm",
            "try-screw lower: the screw it is for",
        ],
    );
    assert!(words(&forming, "tap lower").contains("do not back off"));
}

#[test]
fn a_through_hole_takes_the_taper_tap_and_in_tough_metal_the_second() {
    let taps = |spec: &HoleSpec| -> Vec<String> {
        let plan = build(spec).unwrap();
        let steps = plan.operations.iter().map(line);
        steps.filter(|step| step.starts_with("tap")).collect()
    };
    let short = |material| HoleSpec { depth: Some(mm(3.0)), ..spec("metric", "m4", material) };
    assert_eq!(taps(&short("free-cutting-brass")), ["tap lower: M4 taper tap, end at 10 mm"]);
    let tough =
        ["tap lower: M4 taper tap, end at 10 mm", "tap lower: M4 second tap, end at 6.5 mm"];
    assert_eq!(taps(&short("copper")), tough);
    assert_eq!(taps(&spec("metric", "m4", "copper")).len(), 2);
    assert_eq!(taps(&spec("metric", "m4", "free-cutting-brass")), ["tap lower: M4 taper tap"]);
    // Whoever names the last tap gets it.
    let finish = Some(holewright_core::calc::depth::LastTap::Taper);
    assert_eq!(
        taps(&HoleSpec { finish, ..short("copper") }),
        ["tap lower: M4 taper tap, end at 10 mm"]
    );
    // The first tap is started square; a hand tap in a blind hole is not forced.
    assert!(words(&short("copper"), "tap lower: M4 taper").starts_with("Start it square"));
    assert!(words(&short("copper"), "tap lower: M4 second").starts_with("Clear the swarf"));
    assert!(!words(&short("copper"), "tap lower: M4 second").contains("force"));
    assert!(words(&pump_cover(), "tap lower: 5 BA plug").ends_with("never force it down."));
}

#[test]
fn the_words_of_a_drilling_step_say_where_to_stop_and_when_to_clear() {
    let (first, then) = ("Clear the swarf after", "then every");
    // Brass grabs; 13.77 mm is more than three diameters of 2.705 mm.
    let pump = words(&pump_cover(), "drill both");
    assert!(pump.contains("set the stop to 13.8 mm at the full diameter"), "{pump}");
    assert!(pump.contains(&format!("{first} 8.1 mm, {then} 2.7 mm.")), "{pump}");
    assert!(pump.contains("Dub the drill's lips"), "{pump}");
    // Tough metal: two diameters, then half of one. A depth that is not known may be a deep one.
    let tough = spec("metric", "m6", "stainless-304");
    let tough = HoleSpec { at_hand: only(&[(Series::Metric, "5")]), ..tough };
    let text = words(&tough, "drill lower");
    assert!(text.contains(&format!("{first} 10 mm, {then} 2.5 mm.")), "{text}");
    assert!(text.contains("ease off the feed") && !text.contains("Dub"), "{text}");
    // A hole hardly deeper than the first step is not cleared: half of the next is 1.25 mm.
    let shallow = |depth| words(&HoleSpec { depth: Some(mm(depth)), ..tough.clone() }, "drill");
    assert!(!shallow(11.2).contains(first) && shallow(11.3).contains(first));
    // A grabbing metal asks for dubbed lips, but not where they would have to cut steel too.
    let mixed =
        HoleSpec { over: over("bright-mild-steel", Some(4.0), UpperHole::Tapping), ..pump_cover() };
    let both = words(&mixed, "drill both");
    assert!(
        !both.contains("Dub") && both.contains("lips keen for the bright mild steel"),
        "{both}"
    );
    assert!(both.contains("hold the drill back in the gunmetal"), "{both}");
    assert!(!words(&mixed, "open-out").contains("Dub"));
    assert!(words(&pump_cover(), "open-out").contains("Dub"));
    // Without the upper part's thickness the stop cannot be worked out.
    let unknown =
        HoleSpec { over: over("free-cutting-brass", None, UpperHole::Tapping), ..pump_cover() };
    assert!(words(&unknown, "drill both").contains("thickness more than the lower part's depth"));
}

#[test]
fn the_slower_metal_of_two_sets_the_speed_and_the_lubricant() {
    let both = |upper: &str, lower: &str| {
        let spec = HoleSpec {
            over: over(upper, Some(4.0), UpperHole::Tapping),
            at_hand: only(&[(Series::Metric, "5"), (Series::Metric, "6.6")]),
            ..spec("metric", "m6", lower)
        };
        let plan = build(&spec).unwrap();
        let drilling = plan.operations.iter().find(|step| step.drill.is_some()).unwrap();
        let speed = drilling.speed.as_ref().unwrap().words();
        (speed, drilling.lubricant.unwrap(), drilling.text.contains("after 10 mm"))
    };
    let [brass, stainless] = ["free-cutting-brass", "stainless-304"]
        .map(|slug| materials::find(slug).unwrap().on_the_drill().text);
    // 30 ft/min in stainless, 60 m/min in brass; over 5 mm.
    let slow = ("about 580 rev/min".to_owned(), stainless, true);
    assert_eq!(both("free-cutting-brass", "stainless-304"), slow);
    assert_eq!(both("stainless-304", "free-cutting-brass"), slow);
    let fast = ("as fast as the machine goes".to_owned(), brass, false);
    assert_eq!(both("free-cutting-brass", "free-cutting-brass"), fast);
}

#[test]
fn an_upper_part_without_a_drill_for_it_is_opened_with_another() {
    let spec = HoleSpec {
        over: over("bright-mild-steel", Some(4.0), UpperHole::Tapping),
        at_hand: only(&[(Series::Metric, "5")]),
        ..spec("metric", "m6", "bright-mild-steel")
    };
    let opened = "open-out upper: a drill not less than the clearance size, ⌀6.6 mm, to 4 mm";
    let plan = build(&spec).unwrap();
    let step = plan.operations.iter().find(|step| line(step) == opened).unwrap();
    assert!(step.text.contains("open the hole to clearance"), "{}", step.text);
    assert!(step.why.contains("the jig for the lower"), "{}", step.why);
}

#[test]
fn the_drills_before_the_last_have_its_lips_and_its_stop() {
    let blind = HoleSpec {
        hole: Hole::Blind,
        depth: Some(mm(25.0)),
        ..spec("metric", "m12", "free-cutting-brass")
    };
    let plan = build(&blind).unwrap();
    let drilled = plan.operations.iter().filter(|step| step.action == Action::Drill);
    let drilled: Vec<_> = drilled.collect();
    assert_eq!(drilled.len(), 3, "{drilled:?}");
    let stop = plan.depths.stop;
    assert!(stop.is_some());
    for step in drilled {
        assert_eq!((step.lips, step.stop), (Some(Lips::Dubbed), stop), "{}", step.tool);
        assert!(step.text.contains("Dub the"), "{}", step.text);
    }
}
