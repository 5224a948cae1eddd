//! The smallest and the largest hole, at the limit and beside it; what a screw bears, and on what basis.

use holewright_core::calc::limits::{is_below_smallest, largest_hole_of, smallest_hole};
use holewright_core::calc::thread_form::{
    engagement_basis, engagement_basis_of, geometry, geometry_of,
};
use holewright_core::tables::threads::{Form, find};
use holewright_core::units::{Pitch, in_mm, in_mm2, mm};

#[test]
fn a_hole_at_the_nut_s_minor_diameter_is_not_below_it() {
    let m6 = geometry_of(Form::IsoMetric, mm(6.0), Pitch::Mm(1.0));
    let least = in_mm(smallest_hole(&m6));
    for (off, is_below) in
        [(0.0, false), (-0.0004, false), (-0.0006, true), (0.1, false), (-0.1, true)]
    {
        assert_eq!(is_below_smallest(&m6, mm(least + off)), is_below, "{off} mm off");
    }
}

#[test]
fn a_hole_at_the_largest_is_admitted() {
    // M6: 5.153 mm (ISO 965-1, 6H).
    let m6 = geometry_of(Form::IsoMetric, mm(6.0), Pitch::Mm(1.0));
    let limit = largest_hole_of(Form::IsoMetric, &m6).expect("6H is held");
    assert!((in_mm(limit.diameter) - 5.153).abs() < 1e-9);
    for (hole, is_admitted) in [(5.153, true), (5.1534, true), (5.1536, false), (5.1, true)] {
        assert_eq!(limit.admits(mm(hole)), is_admitted, "{hole} mm");
    }
}

#[test]
fn a_whitworth_screw_is_as_strong_as_the_mean_of_its_diameters() {
    let quarter = geometry(find("bsw", "1-4").expect("1/4 in BSW"));
    let mean = (in_mm(quarter.effective) + in_mm(quarter.minor)) / 2.0;
    let area = std::f64::consts::FRAC_PI_4 * mean * mean;
    assert!((in_mm2(quarter.tensile_area) - area).abs() < 0.01, "{area} mm²");
}

#[test]
fn a_recalled_size_is_said_beside_its_engagement() {
    let recalled = find("metric-fine", "m26x1.5").expect("M26 × 1.5");
    let [size, form] = [engagement_basis_of(recalled), engagement_basis(recalled.form())];
    assert!(size.to_string().contains("from memory"), "{size}");
    assert!(!form.to_string().contains("from memory"), "{form}");
}
