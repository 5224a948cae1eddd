//! Holes for taper pipe threads.

use holewright_core::calc::taper_hole::{depths, drill_for, holes};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::drills;
use holewright_core::tables::lists::TaperHole;
use holewright_core::tables::threads::{all, find};
use holewright_core::units::{exceeds, in_inch, in_mm};

#[test]
fn every_taper_thread_has_a_straight_and_a_reamed_hole_and_no_other_thread_has_one() {
    for thread in all() {
        let figures = geometry(thread);
        let found = holes(thread, &figures);
        let ways: Vec<_> = found.iter().map(|hole| hole.way).collect();
        if thread.taper.is_none() {
            assert!(
                found.is_empty() && depths(thread, &figures).is_none(),
                "{}",
                thread.designation
            );
            continue;
        }
        assert!(
            ways.starts_with(&[TaperHole::Straight, TaperHole::Reamed]),
            "{}",
            thread.designation
        );
        for hole in &found {
            let name = format!("{}, {:?}: {}", thread.designation, hole.way, in_mm(hole.diameter));
            assert!(hole.diameter < figures.major, "{name}");
            assert!(in_mm(hole.diameter) > in_mm(figures.major) * 0.7, "{name}");
            // The parallel hole is the larger: it takes the taper screw at its gauge plane.
            assert!(ways.len() < 3 || !exceeds(hole.diameter, found[2].diameter), "{name}");
        }
        let deep = depths(thread, &figures).expect("depths");
        assert!(
            deep.hand_tight < deep.thread && deep.thread < deep.drill,
            "{}",
            thread.designation
        );
    }
}

/// The geometry gives what a list of ASME B1.20.1 drills says, recalled, unconfirmed: 1/16 in is
/// 0.2344, 1/8 in 0.3281, 1/4 in 0.4219 in.
#[test]
fn the_reamed_hole_follows_from_the_gauge_plane() {
    for (size, printed) in [("1-16", 0.2344), ("1-8", 0.3281), ("1-4", 0.4219)] {
        let thread = find("npt", size).expect("a size of NPT");
        let figures = geometry(thread);
        let deep = depths(thread, &figures).expect("depths");
        let small_end = in_inch(figures.minor_internal - deep.thread / 16.0);
        assert!((small_end - printed).abs() < 0.002, "{size}: {small_end}");
    }
}

#[test]
fn the_drill_is_at_most_the_hole_and_no_quarter_pitch_under_it() {
    let thread = find("bspt", "1-8").expect("R 1/8");
    let figures = geometry(thread);
    let straight = &holes(thread, &figures)[0];
    let label = |keep: fn(&str) -> bool| {
        let at_hand = drills::all().iter().filter(|drill| keep(&drill.label));
        drill_for(straight, &figures, at_hand).map(|drill| drill.label.as_str())
    };
    assert_eq!(label(|_| true), Some("8.2 mm"));
    assert_eq!(label(|label| label != "8.2 mm" && label.ends_with("mm")), Some("8.1 mm"));
    // 0.907 / 4 mm under 8.2 is 7.97.
    assert_eq!(label(|label| label == "7.9 mm" || label == "8.3 mm"), None);
}
