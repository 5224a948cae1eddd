//! Where a plan says what: few cautions at the head, few at a step, none twice, none that speaks of work
//! the plan does not do, no two that contradict each other.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use std::collections::HashMap;

use holewright_core::plan::{
    Action, Hole, HolePlan, HoleSpec, Level, Lips, Operation, Over, Part, Tap, TapSteel, UpperHole,
    build,
};
use holewright_core::tables::materials::{self, Fluid, Material, Work};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::{Length, mm};

use super::cases::{pump_cover, spec};

/// Words that no plan for a drilled and tapped hole has a use for.
const OTHER_WORK: [&str; 12] = [
    "quench",
    "solder",
    "weld",
    "braz",
    "forge",
    "anneal",
    "red heat",
    "melted",
    "sawing",
    "ladle",
    "milled",
    "temper it",
];

/// Two advices of which a plan may hold one.
const OPPOSED: [(&str, &str); 4] = [
    ("half diameter", "then every"),
    ("allows no hole over", "outside the standard"),
    ("both ends", "set the stop"),
    ("do not back off", "turn back"),
];

/// A random number that is the same in every run.
struct Lot(u64);

impl Lot {
    fn draw<T: Copy>(&mut self, of: &[T]) -> T {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let place = usize::try_from(self.0 >> 33).unwrap() % of.len();
        *of.get(place).unwrap()
    }
}

/// A hole in these, everything else by lot.
fn any(lot: &mut Lot, thread: &'static Thread, lower: &'static Material) -> HoleSpec {
    let lengths: [Option<Length>; 5] =
        [None, Some(mm(1.0)), Some(mm(4.0)), Some(mm(12.0)), Some(mm(40.0))];
    HoleSpec {
        hole: lot.draw(&[Hole::Through, Hole::Blind]),
        depth: lot.draw(&lengths),
        tap: lot.draw(&[Tap::Hand, Tap::Hand, Tap::Machine]),
        tap_steel: lot.draw(&[TapSteel::HighSpeed, TapSteel::HighSpeed, TapSteel::Carbon]),
        part_thickness: lot.draw(&[None, None, Some(mm(14.0))]),
        ..HoleSpec::new(thread, lower)
    }
}

fn under(lot: &mut Lot, hole: HoleSpec, upper: &'static Material) -> HoleSpec {
    let over = Over {
        material: upper,
        thickness: lot.draw(&[None, Some(mm(1.5)), Some(mm(4.0)), Some(mm(20.0))]),
        hole: lot.draw(&[UpperHole::Tapping, UpperHole::Tapping, UpperHole::Clearance]),
    };
    HoleSpec { over: Some(over), ..hole }
}

/// Every sentence of a plan, as the page has them.
fn sentences<'a>(plan: &'a HolePlan<'_>) -> Vec<&'a str> {
    let steps = plan.operations.iter();
    let said =
        steps.flat_map(|step| [Some(step.text.as_ref()), step.lubricant].into_iter().flatten());
    said.chain(plan.every_caution().map(|caution| caution.text.as_ref())).collect()
}

#[track_caller]
fn check(hole: &HoleSpec) {
    // Too deep, too thin, too large for any drill: that is another test's.
    let Ok(plan) = build(hole) else { return };
    let named = || {
        let over = hole.over.map(|over| over.material.name);
        format!("{} in {} under {over:?}", hole.thread.designation, hole.material.name)
    };
    assert!(plan.cautions.head.len() <= 3, "{}: {:#?}", named(), plan.cautions.head);
    let mut seen: HashMap<&str, usize> = HashMap::new();
    for caution in plan.every_caution() {
        *seen.entry(caution.text.as_ref()).or_default() += 1;
    }
    assert!(seen.values().all(|times| *times == 1), "{}: twice in {seen:#?}", named());
    for step in &plan.operations {
        let (open, folded) = step.open_and_folded();
        assert!(open.len() <= 2 && folded.len() <= 8, "{}: {step:#?}", named());
        assert!(folded.iter().all(|it| it.level < Level::Danger), "{}: {step:#?}", named());
    }
    let all = sentences(&plan);
    let has = |words: &str| all.iter().any(|sentence| sentence.contains(words));
    for words in OTHER_WORK {
        let found = all.iter().find(|sentence| sentence.to_lowercase().contains(words));
        assert!(found.is_none(), "{}: {words} in {found:?}", named());
    }
    for (one, other) in OPPOSED {
        assert!(!(has(one) && has(other)), "{}: {one} and {other}", named());
    }
    check_fluids(&plan, &named());
    check_lips(&plan, &named());
}

/// Paraffin is spoken of where it is used, and nothing stands in a cut with what it must not meet.
#[track_caller]
fn check_fluids(plan: &HolePlan<'_>, named: &str) {
    let wet = |word: &str| {
        let lubricants = plan.operations.iter().filter_map(|step| step.lubricant);
        lubricants.map(str::to_lowercase).any(|text| text.contains(word))
    };
    let warned = plan.every_caution().any(|caution| caution.text.contains("araffin"));
    assert_eq!(warned, wet("paraffin") && warned, "{named}: paraffin is warned of, not used");
    let cut = plan.operations.iter().filter(|step| step.action == Action::Drill);
    for step in cut {
        let over = plan.spec.over.filter(|_| step.part == Part::Both).map(|over| over.material);
        let in_the_cut = || std::iter::once(plan.spec.material).chain(over);
        let dry = step.lubricant.unwrap().starts_with("Drill it dry");
        // Neat oil is no water-mix.
        let neat = step.lubricant.unwrap().starts_with("Use neat mineral oil");
        for material in in_the_cut() {
            let shuns = |fluid| {
                let all = material.cautions.iter().chain(material.dangers);
                all.clone().any(|caution| caution.work == Work::Shuns(fluid))
            };
            for fluid in [Fluid::WaterMix, Fluid::Oil] {
                let own = in_the_cut().filter(|other| {
                    let all = other.cautions.iter().chain(other.dangers);
                    all.clone().any(|caution| caution.work == Work::Shuns(fluid))
                });
                let safe = own.map(|other| other.on_the_drill().text);
                let is_safe = dry
                    || fluid == Fluid::WaterMix && neat
                    || safe.clone().any(|text| Some(text) == step.lubricant);
                assert!(
                    !shuns(fluid) || is_safe,
                    "{named}: {:?} on {}",
                    step.lubricant,
                    material.name
                );
            }
        }
    }
}

/// One drill has its lips one way, and the words of its step say that way.
#[track_caller]
fn check_lips(plan: &HolePlan<'_>, named: &str) {
    for step in &plan.operations {
        let said: Vec<&str> = std::iter::once(step.text.as_ref())
            .chain(step.cautions.iter().map(|caution| caution.text.as_ref()))
            .collect();
        let dub = said.iter().any(|text| text.contains("Dub the"));
        let keen = said.iter().any(|text| text.contains("keen") || text.contains("not dub"));
        assert!(!(dub && keen), "{named}: dubbed and keen in {said:?}");
        assert_eq!(dub, step.lips == Some(Lips::Dubbed), "{named}: {:?} {said:?}", step.lips);
    }
}

#[test]
fn every_thread_in_every_material_says_each_thing_once_and_at_its_place() {
    let mut lot = Lot(10);
    for thread in threads::all().filter(|thread| thread.taper.is_none()) {
        for material in materials::all() {
            check(&any(&mut lot, thread, material));
        }
    }
}

#[test]
fn every_material_over_every_other_does_too() {
    let mut lot = Lot(11);
    let all: Vec<&'static Thread> =
        threads::all().filter(|thread| thread.taper.is_none()).collect();
    for lower in materials::all() {
        for upper in materials::all() {
            for _ in 0..10 {
                let thread = lot.draw(&all);
                let hole = any(&mut lot, thread, lower);
                check(&under(&mut lot, hole, upper));
            }
        }
    }
}

#[test]
fn copper_over_gunmetal_is_told_one_thing_of_the_lips() {
    let copper = Over {
        material: materials::find("copper").unwrap(),
        thickness: Some(mm(4.0)),
        hole: UpperHole::Tapping,
    };
    let hole = HoleSpec { over: Some(copper), ..pump_cover() };
    let plan = build(&hole).unwrap();
    let drilled = plan.operations.iter().find(|step| step.action == Action::Drill).unwrap();
    assert_eq!(drilled.lips, Some(Lips::Keen));
    assert!(drilled.text.contains("keen for the copper"), "{}", drilled.text);
    assert!(!sentences(&plan).iter().any(|said| said.to_lowercase().contains("dub")));
}

#[test]
fn a_deep_hole_is_cleared_by_the_steps_given_with_the_drill() {
    let deep = HoleSpec { depth: Some(mm(40.0)), over: None, ..pump_cover() };
    let plan = build(&deep).unwrap();
    let [long] = &plan.cautions.head[..] else { panic!("{:?}", plan.cautions.head) };
    assert!(long.text.contains("12.5 diameters of thread"), "{}", long.text);
    let at_the_drill = |plan: &HolePlan<'_>| -> String {
        let drilled = plan.operations.iter().find(|step| step.action == Action::Drill).unwrap();
        drilled.cautions.iter().map(|said| said.text.as_ref()).collect::<Vec<_>>().join(" ")
    };
    let said = at_the_drill(&plan);
    assert!(said.contains("clear it at every step"), "{said}");
    assert!(!said.contains("both ends"), "it is blind");
    let through = HoleSpec { hole: Hole::Through, ..deep };
    let said = at_the_drill(&build(&through).unwrap());
    assert!(said.contains("both ends"), "{said}");
}

#[test]
fn magnesium_meets_no_water_whatever_lies_on_it() {
    let over = |slug| Over {
        material: materials::find(slug).unwrap(),
        thickness: Some(mm(4.0)),
        hole: UpperHole::Tapping,
    };
    let covered =
        |slug| HoleSpec { over: Some(over(slug)), ..spec("metric", "m5", "magnesium-alloy") };
    // Oil for the steel, and of a kind that magnesium bears; dry it would harden under the drill.
    for steel in ["bright-mild-steel", "stainless-316"] {
        let hole = covered(steel);
        let plan = build(&hole).unwrap();
        let drilled = plan.operations.iter().find(|step| step.action == Action::Drill).unwrap();
        let put_on = drilled.lubricant.unwrap();
        assert!(
            put_on.contains("neat mineral oil") && put_on.contains("never a water"),
            "{put_on}"
        );
    }
    let hole = covered("free-cutting-brass");
    let plan = build(&hole).unwrap();
    let drilled = plan.operations.iter().find(|step| step.action == Action::Drill).unwrap();
    assert_eq!(drilled.lubricant, Some(hole.material.on_the_drill().text));
    let [first, ..] = &plan.cautions.head[..] else { panic!("nothing at the head") };
    assert_eq!(first.level, Level::Danger);
    assert!(first.text.contains("sand"), "{}", first.text);
}

#[test]
fn thin_sheet_is_named_at_the_head_and_thicker_is_not() {
    let sheet =
        |thickness| HoleSpec { depth: Some(mm(thickness)), ..spec("ba", "4", "sheet-brass") };
    let head = |hole: &HoleSpec| build(hole).unwrap().cautions.head;
    assert!(head(&sheet(1.5)).iter().any(|said| said.text.contains("climbs the drill")));
    assert!(!head(&sheet(4.0)).iter().any(|said| said.text.contains("climbs the drill")));
    // On a thick part it is held down; opened out alone it is not.
    let cover = |hole| Over {
        material: materials::find("sheet-brass").unwrap(),
        thickness: Some(mm(1.5)),
        hole,
    };
    let covered = |hole| HoleSpec { over: Some(cover(hole)), ..pump_cover() };
    let together = covered(UpperHole::Tapping);
    let plan = build(&together).unwrap();
    let warned = |step: &&Operation| step.cautions.iter().any(|said| said.text.contains("climbs"));
    let steps: Vec<Action> =
        plan.operations.iter().filter(warned).map(|step| step.action).collect();
    assert_eq!(steps, [Action::OpenOut]);
    let drilled_before = covered(UpperHole::Clearance);
    let plan = build(&drilled_before).unwrap();
    assert!(!plan.every_caution().any(|said| said.text.contains("climbs")));
}

#[test]
fn a_pop_is_spoken_of_where_one_is_made() {
    let over = |lower: &str, upper: &str, hole| HoleSpec {
        over: Some(Over {
            material: materials::find(upper).unwrap(),
            thickness: Some(mm(4.0)),
            hole,
        }),
        ..spec("ba", "4", lower)
    };
    let popped = |hole: &HoleSpec| -> Vec<Action> {
        let plan = build(hole).unwrap();
        let at =
            |step: &&Operation| step.cautions.iter().any(|said| said.text.contains("centre pop"));
        plan.operations.iter().filter(at).map(|step| step.action).collect()
    };
    let [steel, brass] = ["stainless-304", "free-cutting-brass"];
    assert_eq!(popped(&spec("ba", "4", steel)), [Action::MarkOut]);
    assert_eq!(popped(&over(brass, steel, UpperHole::Tapping)), [Action::MarkOut]);
    assert_eq!(popped(&over(steel, brass, UpperHole::Tapping)), []);
    assert_eq!(popped(&over(steel, brass, UpperHole::Clearance)), [Action::SpotThrough]);
    assert_eq!(popped(&over(brass, steel, UpperHole::Clearance)), []);
}

#[test]
fn the_standing_ones_keep_the_inspector_and_stay_few() {
    let hole = pump_cover();
    let plan = build(&hole).unwrap();
    let standing = &plan.cautions.standing;
    assert!(standing.iter().any(|said| said.text.contains("boiler inspector")));
    for words in ["glasses", "Clamp", "gloves", "brush", "lead"] {
        let found = standing.iter().filter(|said| said.text.contains(words)).count();
        assert!(found >= 1, "{words} in {standing:#?}");
    }
    assert_eq!(plan.cautions.head.len(), 1, "it is 5.1 diameters deep: {:?}", plan.cautions.head);
    assert!(standing.len() <= 10, "{standing:#?}");
}

#[test]
fn of_breaking_through_a_blind_hole_says_nothing() {
    let speaks = |hole: &HoleSpec| {
        let plan = build(hole).unwrap();
        let said = sentences(&plan);
        said.iter().any(|text| text.contains("break-through") || text.contains("breaks through"))
    };
    for material in ["free-cutting-brass", "acrylic", "gunmetal"] {
        let through = HoleSpec {
            depth: Some(mm(6.0)),
            machines: super::cases::machines("350, 500"),
            ..spec("metric", "m4", material)
        };
        assert!(speaks(&through), "{material}");
        let blind = HoleSpec { hole: Hole::Blind, ..through };
        assert!(!speaks(&blind), "{material}: {:?}", sentences(&build(&blind).unwrap()));
    }
}

#[test]
fn a_brittle_plastic_meets_no_punch() {
    let acrylic = spec("ba", "4", "acrylic");
    let under = |hole| HoleSpec {
        over: Some(Over { hole, ..pump_cover().over.unwrap() }),
        ..acrylic.clone()
    };
    let words = |hole: &HoleSpec, action| {
        let plan = build(hole).unwrap();
        let step = plan.operations.iter().find(|step| step.action == action).unwrap();
        format!("{}: {}", step.tool, step.text)
    };
    let marked = words(&acrylic, Action::MarkOut);
    assert!(marked.contains("masking tape") && !marked.contains("pop"), "{marked}");
    let spotted = words(&acrylic, Action::Spot);
    assert!(spotted.contains("through the tape") && !spotted.contains("pop"), "{spotted}");
    let through = words(&under(UpperHole::Clearance), Action::SpotThrough);
    assert!(through.contains("No punch") && !through.contains("transfer"), "{through}");
    // The metal on top is popped as ever.
    assert!(words(&under(UpperHole::Tapping), Action::MarkOut).contains("pop"));
}

#[test]
fn copper_is_told_of_a_bush_once_and_at_the_head() {
    let told = |slug| {
        let hole = spec("ba", "4", slug);
        let head = build(&hole).unwrap().cautions.head;
        head.iter().filter(|said| said.text.contains("bronze bush")).count()
    };
    assert_eq!([told("copper"), told("gunmetal")], [1, 0]);
}

#[test]
fn clearing_a_blind_hole_is_said_of_blind_holes() {
    let clears = |hole| {
        let hole = HoleSpec { hole, depth: Some(mm(6.0)), ..spec("ba", "4", "gunmetal") };
        let plan = build(&hole).unwrap();
        let first = plan.operations.iter().find(|step| step.action == Action::Tap).unwrap();
        assert!(first.text.contains("turn back once a turn"), "{}", first.text);
        first.text.contains("blind hole")
    };
    assert_eq!([clears(Hole::Through), clears(Hole::Blind)], [false, true]);
}
