//! What a thread bears, in every form: the hole, the lengths, and which member is the weakest.

use holewright_core::calc::engagement::{self, hole_for};
use holewright_core::calc::strength::{Joint, Member};
use holewright_core::calc::strip::StripSizes;
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::materials;
use holewright_core::tables::screw_metals::{STEEL_PART, classes, least_shear, least_tensile};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::{Length, in_mm, in_mm2, in_newtons, mm, newtons_per_mm2};

fn parallel() -> impl Iterator<Item = &'static Thread> {
    threads::all().filter(|thread| engagement::applies(thread))
}

fn at(thread: &Thread, percent: f64) -> StripSizes {
    let figures = geometry(thread);
    StripSizes::of(thread, &figures, hole_for(thread.form(), &figures, percent))
}

#[test]
fn the_screw_s_strip_area_falls_as_the_hole_grows() {
    let mut tried = 0;
    for thread in parallel() {
        let least = geometry(thread).minor_internal;
        let held = (0..=12).map(|step| at(thread, 95.0 - 5.0 * f64::from(step)));
        let beyond: Vec<f64> = held
            .filter(|sizes| sizes.hole > least)
            .map(|sizes| in_mm2(sizes.screw_area(mm(1.0))))
            .collect();
        let falls = beyond.windows(2).all(|pair| matches!(pair, [a, b] if a > b));
        assert!(falls && beyond.len() > 5, "{}: {beyond:?}", thread.designation);
        tried += 1;
    }
    assert!(tried > 300, "{tried}");
}

#[test]
fn a_hole_below_the_nut_s_minor_diameter_adds_nothing() {
    for thread in parallel() {
        let figures = geometry(thread);
        let area =
            |hole: Length| in_mm2(StripSizes::of(thread, &figures, hole).screw_area(mm(1.0)));
        let least = figures.minor_internal;
        assert!((area(least) - area(least * 0.9)).abs() < 1e-12, "{}", thread.designation);
    }
}

#[test]
fn the_hole_s_own_strip_area_is_larger_and_heeds_no_hole() {
    for thread in parallel() {
        let [tight, slack] = [80.0, 50.0].map(|percent| at(thread, percent));
        let [a, b] = [tight, slack].map(|sizes| in_mm2(sizes.nut_area(mm(1.0))));
        assert!((a - b).abs() < 1e-12 && a > 0.0, "{}", thread.designation);
        assert!(a > in_mm2(slack.screw_area(mm(1.0))), "{}", thread.designation);
        let gone = StripSizes { hole: tight.pair.screw_major, ..tight };
        assert!(in_mm2(gone.nut_area(mm(1.0))).abs() < 1e-12, "{}", thread.designation);
    }
}

#[test]
fn twice_the_length_is_twice_the_area() {
    for thread in parallel() {
        let sizes = at(thread, 70.0);
        let twice = |area: fn(&StripSizes, Length) -> _| {
            let [one, two] = [1.0, 2.0].map(|long| in_mm2(area(&sizes, mm(long))));
            (two - 2.0 * one).abs() < 1e-9
        };
        assert!(twice(StripSizes::screw_area) && twice(StripSizes::nut_area));
    }
}

fn joint(thread: &Thread, tapped: f64) -> Joint {
    Joint {
        sizes: at(thread, 70.0),
        tensile_area: geometry(thread).tensile_area,
        screw: newtons_per_mm2(800.0),
        tapped_shear: newtons_per_mm2(tapped),
    }
}

/// In a thread too short to break the screw, the member that strips changes where the two areas, each by
/// its metal's shear, are the same.
#[test]
fn which_thread_strips_changes_exactly_where_the_areas_cross() {
    for thread in parallel() {
        let short = geometry(thread).pitch;
        let sizes = at(thread, 70.0);
        let [screw, nut] = [sizes.screw_area(short), sizes.nut_area(short)].map(in_mm2);
        let even = 800.0 * STEEL_PART * screw / nut;
        let weakest = |tapped| joint(thread, tapped).loads(short).weakest();
        assert_eq!(weakest(even * 0.999), Member::TappedThread, "{}", thread.designation);
        assert_eq!(weakest(even * 1.001), Member::ScrewThread, "{}", thread.designation);
    }
}

/// A little longer than the holding length the screw breaks, a little shorter a thread strips.
#[test]
fn the_screw_breaks_exactly_beyond_the_holding_length() {
    for thread in parallel() {
        for tapped in [60.0, 200.0, 480.0, 900.0] {
            let joint = joint(thread, tapped);
            let length = joint.holding_length().expect("a thread");
            let weakest = |part: f64| joint.loads(length * part).weakest();
            assert_eq!(weakest(1.001), Member::Screw, "{}", thread.designation);
            assert_ne!(weakest(0.999), Member::Screw, "{}", thread.designation);
        }
    }
}

#[test]
fn a_joint_bears_no_more_than_its_weakest_member() {
    for thread in parallel() {
        let loads = joint(thread, 150.0).loads(mm(4.0));
        let least = in_newtons(loads.least());
        let all = [loads.screw, loads.screw_thread, loads.tapped_thread].map(in_newtons);
        assert!(all.iter().all(|load| least <= *load), "{}", thread.designation);
        assert!(all.iter().any(|load| (load - least).abs() < 1e-9), "{}", thread.designation);
    }
}

#[test]
fn a_stronger_class_wants_a_longer_thread_and_a_weaker_metal_too() {
    let six = threads::find("metric", "m6").expect("M6");
    let length = |screw: f64, tapped: f64| {
        let joint = Joint { screw: newtons_per_mm2(screw), ..joint(six, tapped) };
        in_mm(joint.holding_length().expect("a thread"))
    };
    assert!(length(1000.0, 150.0) > length(500.0, 150.0));
    assert!(length(800.0, 100.0) > length(800.0, 150.0));
}

/// What is tabled is what the sources print: the least, and no plastic's.
#[test]
fn a_metal_shears_below_its_least_strength_in_print() {
    for material in materials::all() {
        let Some(shear) = least_shear(material) else { continue };
        let tensile = least_tensile(material).expect("a metal that shears has a strength");
        assert!(shear.stress <= tensile.stress, "{}", material.slug);
        assert!(shear.stress.value > 0.0, "{}", material.slug);
    }
    // Plastics creep; of soft spring steel and annealed 416 only a greatest strength is in print.
    for slug in ["nylon", "white-metal", "spring-steel", "stainless-416"] {
        let material = materials::find(slug).expect("a material");
        assert!(least_shear(material).is_none(), "{slug}");
    }
    for class in classes() {
        assert!(class.proof.is_none_or(|proof| proof < class.tensile), "{}", class.mark);
    }
}
