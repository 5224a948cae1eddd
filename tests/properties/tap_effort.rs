//! The effort of a tap and what is left of it, in every form and at every hole.

use holewright_core::calc::engagement::{self, hole_for};
use holewright_core::calc::strip::StripSizes;
use holewright_core::calc::tap_effort::{Band, Margin, effort, rough_torque, tap_strength, torque};
use holewright_core::calc::thread_form::{Geometry, geometry};
use holewright_core::calc::tool_steel::ToolSteel;
use holewright_core::tables::materials::{self, Family};
use holewright_core::tables::tapping_force::{all, resists, rough_force};
use holewright_core::tables::threads::{self, Thread};
use holewright_core::units::{
    Length, degrees, exceeds, in_mm2, in_newton_metres, mm, newton_metres, newtons_per_mm2,
};

/// Every thread that has an engagement, with its figures.
fn parallel() -> impl Iterator<Item = (&'static Thread, Geometry)> {
    let parallel = threads::all().filter(|thread| engagement::applies(thread));
    parallel.map(|thread| (thread, geometry(thread)))
}

/// Holes from full thread to two fifths of it, smallest first.
fn holes(thread: &Thread, figures: &Geometry) -> Vec<Length> {
    (0..=12).map(|step| hole_for(thread.form(), figures, 100.0 - 5.0 * f64::from(step))).collect()
}

#[test]
fn effort_falls_as_the_hole_grows_in_every_form() {
    let steel = materials::find("bright-mild-steel").expect("steel");
    let resists = resists(steel).expect("a figure");
    let mut tried = 0;
    for (thread, figures) in parallel() {
        let efforts: Vec<f64> = holes(thread, &figures)
            .into_iter()
            .map(|hole| in_newton_metres(effort(&figures, &resists, hole)))
            .collect();
        let falls = efforts.windows(2).all(|pair| matches!(pair, [a, b] if a > b));
        assert!(falls && efforts.iter().all(|effort| *effort > 0.0), "{}", thread.designation);
        tried += 1;
    }
    assert!(tried > 300, "{tried}");
}

#[test]
fn a_hole_as_large_as_the_thread_takes_no_effort() {
    for hole in [6.0, 6.5] {
        let none = torque(degrees(60.0), newtons_per_mm2(3900.0), 1.35, mm(6.0), mm(hole));
        assert!(in_newton_metres(none).abs() < 1e-12, "{hole} mm");
    }
}

/// What one hole has of another, in effort and in the screw's strip area: the area falls by less.
#[test]
fn strength_falls_more_slowly_than_effort() {
    let resists = resists(materials::find("copper").expect("copper")).expect("a figure");
    for (thread, figures) in parallel() {
        let held = holes(thread, &figures);
        for pair in held.windows(2) {
            let [small, large] = pair else { panic!("two holes") };
            if !exceeds(*small, figures.minor_internal) {
                continue;
            }
            let [before, after] = [small, large].map(|hole| effort(&figures, &resists, *hole));
            let effort_left = in_newton_metres(after) / in_newton_metres(before);
            let area = |hole| in_mm2(StripSizes::of(thread, &figures, hole).screw_area(mm(1.0)));
            let strength_left = area(*large) / area(*small);
            assert!(strength_left > effort_left, "{}", thread.designation);
        }
    }
}

#[test]
fn the_margin_never_rises_with_a_smaller_hole() {
    for (thread, figures) in parallel() {
        let strength = tap_strength(figures.minor, ToolSteel::HighSpeed);
        for slug in ["free-cutting-brass", "gunmetal", "silver-steel", "stainless-304"] {
            let metal = materials::find(slug).expect("a metal");
            let resists = resists(metal).expect("a figure");
            let rough =
                rough_force(metal).map(|row| rough_torque(row, figures.major, figures.pitch));
            let margins: Vec<Margin> = holes(thread, &figures)
                .into_iter()
                .map(|hole| {
                    let cut = effort(&figures, &resists, hole);
                    Margin::of(strength, cut, rough, resists.is_borrowed)
                })
                .collect();
            let rises = |pair: &[Margin]| {
                let [small, large] = pair else { return false };
                small.likely <= large.likely && small.at_worst <= large.at_worst
            };
            assert!(margins.windows(2).all(rises), "{} in {slug}", thread.designation);
        }
    }
}

/// Each metal, and not only the ones above, has more effort and less margin where it resists more.
#[test]
fn a_metal_that_resists_more_leaves_no_more_margin() {
    let strength = newton_metres(1.0);
    let bands: Vec<Band> = [0.1, 0.199, 0.201, 0.33, 0.34, 0.62, 0.63]
        .map(|cut| Band::of(strength, newton_metres(cut)))
        .to_vec();
    assert!(bands.is_sorted_by(|a, b| a >= b), "{bands:?}");
    assert_eq!(
        bands,
        [Band::Ample, Band::Ample, Band::Fair, Band::Fair, Band::Scant, Band::Scant, Band::Spent]
    );
}

#[test]
fn a_borrowed_figure_widens_the_margin_by_one_band() {
    let of = |times: f64, is_borrowed| {
        Margin::of(newton_metres(times), newton_metres(1.0), None, is_borrowed)
    };
    for times in [1.0, 2.0, 4.0, 8.0] {
        let (sure, borrowed) = (of(times, false), of(times, true));
        assert_eq!(sure.likely, sure.at_worst);
        assert_eq!((borrowed.likely, borrowed.at_worst), (sure.likely, sure.likely.less()));
    }
    assert_eq!(of(4.0, true).to_string(), "scant to fair");
    assert_eq!(of(4.0, false).to_string(), "fair");
    for slug in ["gunmetal", "phosphor-bronze-cast", "phosphor-bronze-drawn", "copper"] {
        let metal = materials::find(slug).expect("a metal");
        assert!(resists(metal).is_some_and(|found| found.is_borrowed), "{slug}");
    }
}

#[test]
fn a_rougher_formula_that_leaves_less_widens_it_too_and_one_that_leaves_more_does_not() {
    let of = |rough| {
        Margin::of(newton_metres(4.0), newton_metres(1.0), Some(newton_metres(rough)), false)
    };
    assert_eq!(of(2.2).to_string(), "scant to fair");
    assert_eq!(of(9.0).to_string(), "spent to fair");
    assert_eq!(of(0.4).to_string(), "fair");
}

/// A borrowed figure alone says of no tap that the cut comes near what it bears, and no metal whose figure is
/// borrowed is told worse than a tougher one of the same thread and hole.
#[test]
fn advice_goes_by_the_figures_as_reckoned() {
    let advice = |times: f64, is_borrowed| {
        Margin::of(newton_metres(times), newton_metres(1.0), None, is_borrowed).advice()
    };
    for times in [1.0, 2.0, 4.0, 8.0] {
        let [sure, borrowed] = [false, true].map(|is_borrowed| advice(times, is_borrowed));
        assert!(borrowed.starts_with(&sure), "{borrowed}");
        assert_eq!(times < 1.6, borrowed.contains("next larger drill where"), "{borrowed}");
    }
}

#[test]
fn every_metal_has_a_figure_and_no_plastic_has() {
    for material in materials::all() {
        let none = matches!(material.family, Family::Plastic | Family::WhiteMetal);
        assert_eq!(resists(material).is_none(), none, "{}", material.slug);
    }
    assert_eq!(all().count(), 9);
}

#[test]
fn a_tap_of_carbon_steel_bears_less() {
    let of = |steel| in_newton_metres(tap_strength(mm(2.387), steel));
    assert!(of(ToolSteel::Carbon) < of(ToolSteel::HighSpeed));
    // A bar twice as thick bears eight times as much.
    let thick = in_newton_metres(tap_strength(mm(4.774), ToolSteel::HighSpeed));
    assert!((thick / of(ToolSteel::HighSpeed) - 8.0).abs() < 1e-9);
}
