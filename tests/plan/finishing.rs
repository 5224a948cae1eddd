//! Steps after the drill, and depth stops as they can be set.
//!
//! Common practice, no source, but for the sums.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::plan::{
    Action, Head, Hole, HolePlan, HoleSpec, Level, Operation, Over, Part, Scale, Tap, UpperHole,
    build,
};
use holewright_core::units::{Length, in_inch, in_mm, inch, mm};

use super::cases::{pump_cover, spec};

fn all(plan: &HolePlan<'_>, action: Action) -> Vec<Operation> {
    plan.operations.iter().filter(|step| step.action == action).cloned().collect()
}

fn steps(hole: &HoleSpec, action: Action) -> Vec<Operation> {
    all(&build(hole).unwrap(), action)
}

#[test]
fn a_through_hole_is_chamfered_on_both_sides_and_tapped_until_the_lead_is_through() {
    let through = HoleSpec { depth: Some(mm(6.0)), ..spec("metric", "m4", "bright-mild-steel") };
    let chamfers = steps(&through, Action::Chamfer);
    assert_eq!(chamfers.len(), 2);
    assert!(chamfers[1].text.contains("far side"), "{}", chamfers[1].text);
    let taps = steps(&through, Action::Tap);
    assert!(taps.iter().all(|tap| tap.text.contains("its lead is through")), "{taps:?}");
    let machine = HoleSpec { tap: Tap::Machine, ..through.clone() };
    assert!(steps(&machine, Action::Tap)[0].text.contains("its lead is through"));
    let blind = HoleSpec { hole: Hole::Blind, ..through };
    assert_eq!(steps(&blind, Action::Chamfer).len(), 1);
    assert!(steps(&blind, Action::Tap).iter().all(|tap| !tap.text.contains("through")));
}

#[test]
fn a_head_gets_its_seat_after_the_hole_it_is_guided_by() {
    let seated = |head| HoleSpec { head: Some(head), ..pump_cover() };
    for (head, words) in [
        (Head::Countersunk, "Countersink"),
        (Head::Cheese, "Counterbore"),
        (Head::Hexagon, "spotface"),
    ] {
        let hole = seated(head);
        let plan = build(&hole).unwrap();
        let order: Vec<(Action, Part)> =
            plan.operations.iter().map(|step| (step.action, step.part)).collect();
        let seat = order.iter().position(|step| *step == (Action::Seat, Part::Upper)).unwrap();
        let opened = order.iter().position(|step| step.0 == Action::OpenOut).unwrap();
        let tried = order.iter().position(|step| step.0 == Action::TryScrew).unwrap();
        assert!(opened < seat && seat < tried, "{order:?}");
        assert!(plan.operations[seat].text.contains(words), "{}", plan.operations[seat].text);
    }
    assert!(steps(&pump_cover(), Action::Seat).is_empty());
    // A tapped part alone has nothing for the head to sit on, and says so.
    let alone = HoleSpec { over: None, ..seated(Head::Cheese) };
    let plan = build(&alone).unwrap();
    assert!(all(&plan, Action::Seat).is_empty());
    assert!(plan.cautions.assumed.iter().any(|said| said.text.contains("no part on top")));
}

#[test]
fn two_parts_are_deburred_each_and_screwed_before_the_next_hole() {
    let parts: Vec<Part> =
        steps(&pump_cover(), Action::Deburr).iter().map(|step| step.part).collect();
    assert_eq!(parts, [Part::Upper, Part::Lower]);
    let hole = pump_cover();
    let plan = build(&hole).unwrap();
    let last = plan.operations.last().unwrap();
    assert_eq!(last.action, Action::NextHole);
    assert!(last.text.contains("leave this screw in"), "{}", last.text);
    let alone = HoleSpec { over: None, ..pump_cover() };
    assert!(steps(&alone, Action::NextHole).is_empty());
    // A part spotted through its master is cleared of chips before the tap too.
    let mut master = pump_cover().over.unwrap();
    master.hole = UpperHole::Clearance;
    let spotted = HoleSpec { over: Some(master), ..pump_cover() };
    assert_eq!(steps(&spotted, Action::Deburr).len(), 1);
}

fn stop(hole: &HoleSpec) -> Length {
    let plan = build(hole).unwrap();
    all(&plan, Action::Drill).last().unwrap().stop.unwrap()
}

#[test]
fn a_stop_is_a_tenth_or_five_thou_never_short_of_what_the_thread_needs() {
    // 9.77 mm in the part, 13.77 mm with 4 mm of cover on it.
    let alone = HoleSpec { over: None, ..pump_cover() };
    assert!((in_mm(stop(&alone)) - 9.8).abs() < 1e-9);
    assert!((in_mm(stop(&pump_cover())) - 13.8).abs() < 1e-9);
    // 3/8 in of 1/4-20 with a plug tap: 0.525 in exactly, on a step of 5 thou.
    let quarter = HoleSpec {
        hole: Hole::Blind,
        depth: Some(inch(0.375)),
        scale: Scale::Inch,
        ..spec("unc", "1-4-20", "free-cutting-mild-steel")
    };
    assert!((in_inch(stop(&quarter)) - 0.525).abs() < 1e-9);
    let more = HoleSpec { depth: Some(inch(0.376)), ..quarter.clone() };
    assert!((in_inch(stop(&more)) - 0.53).abs() < 1e-9);
    let drilled = steps(&more, Action::Drill);
    assert!(drilled.last().unwrap().text.contains("set the stop to 0.530 in"));
    assert!(drilled.last().unwrap().why.contains("0.5260 in: rounded up"));
    let through = HoleSpec { hole: Hole::Through, ..more };
    assert!(steps(&through, Action::Drill).iter().all(|step| step.stop.is_none()));
}

#[test]
fn a_stop_is_rounded_down_where_it_would_eat_into_the_wall() {
    let part = |thickness: Length| HoleSpec {
        over: None,
        part_thickness: Some(thickness),
        ..pump_cover()
    };
    let roomy = part(mm(20.0));
    let plan = build(&roomy).unwrap();
    let (exact, point) = (plan.depths.drill_full_diameter.unwrap(), plan.depths.drill_to_point);
    let least = point.unwrap() + plan.depths.least_wall;
    assert!(!plan.depths.stop_is_short && stop(&roomy) > exact);
    // Rounded up by 0.03 mm, 0.02 mm of the least wall would go.
    let tight = part(least + mm(0.01));
    let plan = build(&tight).unwrap();
    assert!(plan.depths.stop_is_short);
    assert!((in_mm(stop(&tight)) - 9.7).abs() < 1e-9);
    let why = &all(&plan, Action::Drill).last().unwrap().why.clone();
    assert!(why.contains("9.77 mm: rounded down, to spare the wall"), "{why}");
}

#[test]
fn a_hole_measured_below_the_nuts_least_minor_diameter_is_to_be_opened() {
    let measured = |hole| HoleSpec { measured_hole: Some(mm(hole)), ..pump_cover() };
    let head = |hole: &HoleSpec| build(hole).unwrap().cautions.head;
    // 174.9 % of thread is no thread: the hole is not drilled yet. BS 93: 5 BA, 2.49 mm at the least.
    let small = head(&measured(2.0));
    let said = small.iter().find(|said| said.text.contains("Open it out with the No. 36")).unwrap();
    assert_eq!(said.level, Level::Caution);
    assert!(!head(&measured(2.5)).iter().any(|said| said.text.contains("Open it out")));
}

#[test]
fn float_is_judged_by_what_two_centres_may_be_off() {
    // ASME Y14.5 appendix B, fixed fastener: 3.2 + 2 (0.05 + 0.05) = 3.4 mm, what the drill leaves.
    let off = |error| HoleSpec { over: None, centre_error: Some(mm(error)), ..pump_cover() };
    let said = |hole: &HoleSpec| {
        let plan = build(hole).unwrap();
        let marked = all(&plan, Action::MarkOut);
        let found = marked[0].cautions.iter().find(|said| said.text.contains("each up to"));
        found.map(|said| said.level)
    };
    assert_eq!(said(&off(0.049)), Some(Level::Note));
    assert_eq!(said(&off(0.06)), Some(Level::Caution));
    assert_eq!(said(&HoleSpec { over: None, ..pump_cover() }), None);
    let together = HoleSpec { centre_error: Some(mm(0.2)), ..pump_cover() };
    let plan = build(&together).unwrap();
    assert!(!plan.every_caution().any(|said| said.text.contains("each up to")), "one axis");
}

#[test]
fn a_head_is_not_let_in_deeper_than_its_part() {
    // About 0.7 and 0.5 diameters of head: 4.2 mm and 3 mm of M6.
    let seated = |head, thickness| {
        let over = Over { thickness: Some(mm(thickness)), ..pump_cover().over.unwrap() };
        let hole = spec("metric", "m6", "bright-mild-steel");
        HoleSpec { head: Some(head), over: Some(over), ..hole }
    };
    let warned = |head, thickness| {
        let seat = steps(&seated(head, thickness), Action::Seat);
        let said = seat[0].cautions.iter().find(|said| said.text.contains("leaves too little"));
        said.map(|said| said.text.to_string())
    };
    let cheese = warned(Head::Cheese, 2.0).unwrap();
    assert!(cheese.contains("about 4.2 mm high, and the part 2 mm"), "{cheese}");
    assert!(warned(Head::Countersunk, 1.5).unwrap().contains("about 3 mm high"));
    // A quarter of a diameter, 1.5 mm, is to be left under it.
    assert!(warned(Head::Cheese, 5.6).is_some() && warned(Head::Cheese, 5.8).is_none());
    assert_eq!([warned(Head::Cheese, 6.0), warned(Head::Countersunk, 4.6)], [None, None]);
    assert_eq!(warned(Head::Hexagon, 1.5), None);
}

#[test]
fn the_edge_a_seat_was_cut_in_is_not_broken_again() {
    let words = |head| {
        let hole = HoleSpec { head, ..pump_cover() };
        steps(&hole, Action::Chamfer).last().unwrap().text.to_string()
    };
    for head in [Head::Countersunk, Head::Cheese] {
        assert!(words(Some(head)).contains("joint face alone"), "{}", words(Some(head)));
    }
    assert!(
        words(Some(Head::Hexagon)).contains("both edges") && words(None).contains("both edges")
    );
}
