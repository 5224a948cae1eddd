//! Thin work and little thread: what a chamfer may take, what is said of too few threads, what counts as
//! sheet.
//!
//! # Source
//! Common practice, no source; the counts are the length over the pitch of BS 93, BS 84, ISO 228 and
//! ASME B1.1.

#![expect(clippy::unwrap_used, reason = "a hole that has no plan ends its test")]

use holewright_core::plan::{Action, Hole, HoleSpec, Operation, Tap, build};
use holewright_core::units::mm;

use super::cases::spec;

fn thick(system: &str, size: &str, material: &str, depth: f64) -> HoleSpec {
    HoleSpec { depth: Some(mm(depth)), ..spec(system, size, material) }
}

fn chamfers(hole: &HoleSpec) -> Vec<Operation> {
    let steps = build(hole).unwrap().operations;
    steps.into_iter().filter(|step| step.action == Action::Chamfer).collect()
}

fn head(hole: &HoleSpec) -> Vec<String> {
    let said = build(hole).unwrap().cautions.head;
    said.into_iter().map(|caution| caution.text.into_owned()).collect()
}

#[test]
fn thin_work_has_its_edges_broken_and_no_chamfer() {
    for thin in [
        thick("ba", "4", "sheet-brass", 0.8),
        thick("bspp", "1-8", "free-cutting-brass", 1.0),
        thick("bsw", "3-8", "bright-mild-steel", 3.0),
    ] {
        let cut = chamfers(&thin);
        assert_eq!(cut.len(), 2, "{cut:?}");
        for step in cut {
            assert!(step.text.to_lowercase().contains("only break the edge"), "{}", step.text);
            assert_eq!((step.diameter, step.speed), (None, None));
        }
    }
    // 4 BA, 0.66 mm of pitch: two chamfers of 0.375 mm leave 3.0 threads of 2.73 mm.
    let enough = chamfers(&thick("ba", "4", "free-cutting-brass", 2.8));
    assert!(enough.iter().all(|step| step.diameter.is_some()), "{enough:?}");
    let short = chamfers(&thick("ba", "4", "free-cutting-brass", 2.6));
    assert!(short.iter().all(|step| step.diameter.is_none()), "{short:?}");
    // A thickness that was not given is not taken for thin.
    let unknown = chamfers(&spec("ba", "4", "sheet-brass"));
    assert!(unknown.iter().all(|step| step.diameter.is_some()), "{unknown:?}");
}

#[test]
fn too_few_threads_are_counted_at_the_head() {
    let only = |hole: &HoleSpec| head(hole).into_iter().find(|said| said.starts_with("Only"));
    // 0.8 / 0.66, 1 / 0.907, 3 / 1.5875.
    for (hole, count) in [
        (thick("ba", "4", "sheet-brass", 0.8), "1.2"),
        (thick("bspp", "1-8", "free-cutting-brass", 1.0), "1.1"),
        (thick("bsw", "3-8", "bright-mild-steel", 3.0), "1.9"),
    ] {
        let said = only(&hole).unwrap();
        assert!(said.starts_with(&format!("Only {count} threads hold")), "{said}");
        assert!(said.contains("a nut behind"), "{said}");
    }
    // 1 mm of 1/4 UNF: 1 / 0.907.
    let blind =
        HoleSpec { hole: Hole::Blind, ..thick("unf", "1-4-28", "free-cutting-mild-steel", 1.0) };
    let said = only(&blind).unwrap();
    assert!(said.starts_with("Only 1.1 threads") && !said.contains("nut behind"), "{said}");
    assert_eq!(only(&thick("ba", "4", "sheet-brass", 2.0)), None);
    assert_eq!(only(&spec("ba", "4", "sheet-brass")), None);
}

#[test]
fn a_plate_thinner_than_a_wide_drill_is_no_sheet() {
    let climbs = |hole: &HoleSpec| head(hole).iter().any(|said| said.contains("climbs the drill"));
    let plate = |depth| thick("bsw", "5-8", "bright-mild-steel", depth);
    assert!(build(&plate(10.0)).unwrap().tapping.chosen.drill.diameter > mm(10.0));
    assert!(!climbs(&plate(10.0)), "{:?}", head(&plate(10.0)));
    assert!(!climbs(&plate(3.1)) && climbs(&plate(3.0)));
    assert!(!climbs(&thick("ba", "5", "sheet-brass", 2.8)));
}

#[test]
fn a_long_thread_by_hand_is_cut_short_and_the_rest_opened() {
    let long =
        |hole: &HoleSpec| head(hole).into_iter().find(|said| said.contains("diameters of thread"));
    // 7 BA is 2.5 mm, 3/32 in 2.381 mm: 5.1 and 6.7 diameters.
    let seven = long(&thick("ba", "7", "free-cutting-brass", 12.7)).unwrap();
    assert!(seven.contains("5.1 diameters") && seven.contains("thread 5 mm"), "{seven}");
    let small = thick("bsw", "3-32", "free-cutting-brass", 16.0);
    let blind = long(&HoleSpec { hole: Hole::Blind, ..small }).unwrap();
    assert!(blind.contains("6.7 diameters") && blind.contains("open the mouth"), "{blind}");
    let short = thick("ba", "7", "free-cutting-brass", 6.25);
    assert_eq!(long(&short), None);
    let powered = HoleSpec { tap: Tap::Machine, ..thick("ba", "7", "free-cutting-brass", 12.7) };
    assert_eq!(long(&powered), None);
}
