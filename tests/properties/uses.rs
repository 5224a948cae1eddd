//! What a drill is good for, against what each thread asks of it.

use holewright_core::calc::clearance::{Fit, drill_for, hole};
use holewright_core::calc::engagement;
use holewright_core::calc::oversize::likely;
use holewright_core::calc::thread_form::geometry;
use holewright_core::calc::uses::{clears, taps};
use holewright_core::tables::drills::{self, Drill, Series};
use holewright_core::tables::threads;
use holewright_core::units::{in_inch, inch};

fn drill(series: Series, size: &str) -> &'static Drill {
    drills::find(series, size).expect("a drill")
}

#[test]
fn a_drill_is_a_tapping_size_of_what_it_leaves_60_to_80_percent_of() {
    for size in ["36", "46", "7", "1"] {
        let drill = drill(Series::Number, size);
        let named: Vec<&str> = taps(drill).iter().map(|taps| taps.thread.designation).collect();
        let expected: Vec<&str> = threads::all()
            .filter(|thread| engagement::applies(thread))
            .filter(|thread| {
                let percent = engagement::percent(thread.form(), &geometry(thread), drill.diameter);
                (60.0..=80.0).contains(&percent)
            })
            .map(|thread| thread.designation)
            .collect();
        assert_eq!(named, expected, "No. {size}");
        assert!(!named.is_empty());
    }
}

#[test]
fn a_drill_clears_the_screws_it_is_the_one_for() {
    for (series, size) in [(Series::Metric, "3.4"), (Series::Number, "27"), (Series::Metric, "6.6")]
    {
        let drill = drill(series, size);
        let named: Vec<(&str, Vec<Fit>)> = clears(drill)
            .into_iter()
            .map(|clears| (clears.thread.designation, clears.fits))
            .collect();
        let expected: Vec<(&str, Vec<Fit>)> = threads::all()
            .filter(|thread| thread.taper.is_none())
            .map(|thread| {
                let major = geometry(thread).major;
                let serves = |fit: &Fit| {
                    let wanted = hole(thread, major, *fit).hole;
                    drill_for(wanted, drills::by_series(series)).map(|best| &best.size)
                        == Some(&drill.size)
                };
                (thread.designation, Fit::ALL.into_iter().filter(serves).collect::<Vec<_>>())
            })
            .filter(|(_, fits)| !fits.is_empty())
            .collect();
        assert_eq!(named, expected, "{}", drill.label);
        assert!(!named.is_empty());
    }
    let m3 = clears(drill(Series::Metric, "3.4"));
    let m3 = m3.iter().find(|clears| clears.thread.designation == "M3").map(|clears| &clears.fits);
    assert_eq!(m3, Some(&vec![Fit::Medium]), "ISO 273: 3.4 mm");
}

#[test]
fn a_hole_comes_out_as_the_table_of_oversizes_has_it() {
    let check = |size: f64, expected: [f64; 3]| {
        let found = likely(inch(size));
        let found = [found.least, found.mean, found.largest].map(|length| in_inch(length) - size);
        let near = found.iter().zip(&expected).all(|(a, b)| (a - b).abs() < 1e-9);
        assert!(near, "{size}: {found:?}");
    };
    check(0.0625, [0.001, 0.0015, 0.002]);
    check(0.125, [0.001, 0.003, 0.0045]);
    check(0.25, [0.0025, 0.004, 0.0065]);
    check(1.0, [0.004, 0.007, 0.009]);
    // A quarter of the way from 1/8 to 1/4 in.
    check(0.156_25, [0.001_375, 0.003_25, 0.005]);
    // Below the table the oversize shrinks with the drill; beyond it, it stays.
    check(0.031_25, [0.0005, 0.000_75, 0.001]);
    check(2.0, [0.004, 0.007, 0.009]);
}
