//! Clearance rows, the stated rule, the choice of drill, and depths.

#![expect(clippy::float_cmp, reason = "figures are rounded before they are compared")]

use holewright_core::calc::clearance::{Basis, Fit, also_printed, drill_for, hole, model_hole};
use holewright_core::calc::depth::{
    BlindHole, LastTap, blind, most_full_thread, peck, usual_point_angle, wall,
};
use holewright_core::tables::clearance::{self, Standard};
use holewright_core::tables::drills::{self, Series};
use holewright_core::tables::materials::Group;
use holewright_core::tables::threads::{Basic, SystemId, Thread};
use holewright_core::units::{Pitch, Printed, in_inch, in_mm, mm, print};

const fn thread(system: SystemId, major: Printed) -> Thread {
    Thread {
        system,
        size: "test",
        designation: "test",
        basic: Basic::Major(major),
        pitch: Pitch::Mm(1.0),
        taper: None,
        sources: &[],
        note: None,
    }
}

fn holes(system: SystemId, major: Printed) -> [f64; 3] {
    let thread = thread(system, major);
    Fit::ALL.map(|fit| print::round(in_mm(hole(&thread, major.length(), fit).hole), 4))
}

#[test]
fn printed_holes_clear_their_screw_and_grow_with_the_fit() {
    assert_eq!(clearance::all().count(), 132);
    for row in clearance::all() {
        let sizes = [row.nominal, row.close, row.medium, row.free].map(|size| in_mm(size.length()));
        assert!(sizes.windows(2).all(|pair| pair[0] < pair[1]), "{row:?}");
    }
}

#[test]
fn metric_goes_by_iso_273_and_shows_bs_4186_beside_it() {
    assert_eq!(holes(SystemId::Metric, Printed::Mm(3.0)), [3.2, 3.4, 3.6]);
    assert_eq!(holes(SystemId::MetricFine, Printed::Mm(8.0)), [8.4, 9.0, 10.0]);
    // ISO 273 has 13.5, 15.5 and 17.5 where BS 4186:1967, and one CAD library, have 14, 16 and 18.
    for (major, iso, british) in [(12.0, 13.5, 14.0), (14.0, 15.5, 16.0), (16.0, 17.5, 18.0)] {
        let screw = thread(SystemId::Metric, Printed::Mm(major));
        let medium = hole(&screw, mm(major), Fit::Medium);
        assert_eq!(print::round(in_mm(medium.hole), 3), iso);
        assert_eq!(medium.basis.to_string(), "ISO 273 medium");
        let beside: Vec<_> = also_printed(&screw).collect();
        assert_eq!(beside.len(), 1);
        assert_eq!(
            (beside[0].standard, beside[0].medium),
            (Standard::Bs4186, Printed::Mm(british))
        );
    }
    // The encyclopedia's M10 and the older sizes: 10.5, 11, 12.
    assert_eq!(holes(SystemId::Metric, Printed::Mm(10.0)), [10.5, 11.0, 12.0]);
}

#[test]
fn unified_goes_by_the_drills_of_asme_b18_2_8() {
    // Loose limits of Machinery's Handbook 31st ed. p. 1741, to three places.
    for (nominal, loose) in [
        (Printed::Inch(0.060), 0.094),
        (Printed::Inch(0.086), 0.116),
        (Printed::Inch(0.099), 0.128),
        (Printed::Inch(0.125), 0.172),
        (Printed::Inch(0.138), 0.185),
        (Printed::fraction(1, 4), 0.297),
        (Printed::fraction(3, 8), 0.422),
        (Printed::fraction(7, 16), 0.484),
        (Printed::fraction(1, 2), 0.609),
        (Printed::fraction(5, 8), 0.734),
        (Printed::fraction(7, 8), 1.031),
        (Printed::mixed(1, 0, 1), 1.156),
        (Printed::mixed(1, 1, 8), 1.312),
        (Printed::mixed(1, 1, 4), 1.438),
        (Printed::mixed(1, 3, 8), 1.609),
    ] {
        let screw = thread(SystemId::Unc, nominal);
        let free = hole(&screw, nominal.length(), Fit::Free);
        // 1 5/16 is 1.3125, which the table rounds down.
        assert!((in_inch(free.hole) - loose).abs() < 0.0005 + 1e-9, "{nominal:?}");
        assert_eq!(free.basis.to_string(), "ASME B18.2.8 loose");
    }
    // No. 12 is not in the standard: the rule serves, and the library's figures stand beside it.
    let twelve = thread(SystemId::Unc, Printed::Inch(0.216));
    assert_eq!(
        hole(&twelve, Printed::Inch(0.216).length(), Fit::Close).basis,
        Basis::Rule(Fit::Close)
    );
    assert_eq!(
        also_printed(&twelve).map(|row| row.standard).collect::<Vec<_>>(),
        [Standard::Unofficial]
    );
}

/// The drill a standard names is itself the smallest that serves.
#[test]
fn the_named_drill_is_chosen_for_a_unified_screw() {
    for (nominal, labels) in [
        (Printed::Inch(0.190), ["No. 5", "No. 2", "Letter B"]),
        (Printed::fraction(1, 4), ["17/64 in", "9/32 in", "19/64 in"]),
    ] {
        let screw = thread(SystemId::Unf, nominal);
        let at_hand = || drills::all().iter().filter(|drill| drill.series != Series::Metric);
        let chosen = Fit::ALL.map(|fit| {
            drill_for(hole(&screw, nominal.length(), fit).hole, at_hand()).unwrap().label.as_str()
        });
        assert_eq!(chosen, labels);
    }
}

#[test]
fn elsewhere_the_rule_holds_within_its_limits() {
    assert_eq!(holes(SystemId::Ba, Printed::Mm(3.2)), [3.264, 3.328, 3.456]);
    assert_eq!(holes(SystemId::Ba, Printed::Mm(0.79)), [0.84, 0.89, 0.99]);
    assert_eq!(holes(SystemId::Bsw, Printed::mixed(1, 0, 1)), [25.6, 25.8, 26.2]);
}

/// One published list clears 8 BA, 2.20 mm, with No. 44, 2.184 mm: the screw would not go in.
#[test]
fn eight_ba_is_never_cleared_by_number_44() {
    let eight = thread(SystemId::Ba, Printed::Mm(2.2));
    let number_44 = drills::find(Series::Number, "44").unwrap();
    for fit in Fit::ALL {
        let wanted = hole(&eight, mm(2.2), fit).hole;
        assert_eq!(drill_for(wanted, std::iter::once(number_44)), None);
        let chosen = drill_for(wanted, drills::all().iter()).unwrap();
        assert!(chosen.diameter > mm(2.2), "{}", chosen.label);
    }
}

#[test]
fn no_larger_drill_is_chosen_than_need_be() {
    let chosen = |size: f64, series| {
        drill_for(mm(size), drills::by_series(series)).map(|drill| drill.label.as_str())
    };
    assert_eq!(chosen(3.4, Series::Metric), Some("3.4 mm"));
    assert_eq!(chosen(3.4001, Series::Metric), Some("3.5 mm"));
    // No. 30 misses 5 BA close, 3.264, by a ten-thousandth of a millimetre.
    assert_eq!(chosen(3.264, Series::Number), Some("No. 29"));
    assert_eq!(chosen(25.5, Series::Metric), None);
}

#[test]
fn the_model_hole_is_under_the_standards() {
    for (major, model) in [(1.6, "1.7 mm"), (2.0, "2.1 mm"), (2.5, "2.6 mm"), (3.0, "3.12 mm")] {
        let found = model_hole(SystemId::Metric, mm(major)).unwrap();
        assert_eq!(print::mm(found.hole, 3), model);
        let screw = thread(SystemId::Metric, Printed::Mm(major));
        assert!(found.hole < hole(&screw, mm(major), Fit::Medium).hole);
    }
}

/// 5 BA in No. 36, plug tap.
fn five_ba() -> BlindHole {
    BlindHole {
        major: mm(3.2),
        pitch: mm(0.59),
        drill: mm(2.7051),
        point_angle: usual_point_angle(),
        last_tap: LastTap::Plug,
    }
}

#[test]
fn a_millimetre_more_thread_is_a_millimetre_more_hole() {
    let [eight, nine] = [8.0, 9.0].map(|depth| blind(&five_ba(), mm(depth)));
    assert!((in_mm(nine.drill_full_diameter - eight.drill_full_diameter) - 1.0).abs() < 1e-9);
    assert!((in_mm(nine.drill_to_point - eight.drill_to_point) - 1.0).abs() < 1e-9);
    // Lead of two threads and one to spare: 8 + 3 × 0.59.
    assert_eq!(print::mm(eight.drill_full_diameter, 3), "9.77 mm");
    assert_eq!(print::mm(eight.point, 3), "0.813 mm");
    assert_eq!(eight.male_centre, Some(mm(1.6)));
    assert_eq!(eight.swarf_room, mm(3.2));
}

#[test]
fn the_larger_lead_of_each_tap_counts() {
    let leads = LastTap::ALL.map(|last_tap| {
        print::round(in_mm(blind(&BlindHole { last_tap, ..five_ba() }, mm(0.0)).tap_lead) / 0.59, 6)
    });
    assert_eq!(leads, [10.0, 5.0, 2.0]);
}

#[test]
fn the_most_thread_a_part_holds_leaves_just_the_wall_asked_for() {
    for last_tap in LastTap::ALL {
        let hole = BlindHole { last_tap, ..five_ba() };
        let (part, left) = (mm(12.0), mm(1.5));
        let most = most_full_thread(&hole, part, left).unwrap();
        let depths = blind(&hole, most);
        assert!((in_mm(wall(part, depths.drill_to_point)) - 1.5).abs() < 1e-9, "{last_tap}");
    }
    assert_eq!(most_full_thread(&five_ba(), mm(3.0), mm(1.0)), None);
}

#[test]
fn pecks_end_at_the_full_depth() {
    let stops = |depth: f64| -> Vec<f64> {
        peck(mm(2.0), Group::EasyCutting).stops(mm(depth)).map(in_mm).collect()
    };
    assert_eq!(stops(4.0), [4.0]);
    assert_eq!(stops(6.0), [6.0]);
    assert_eq!(stops(10.0), [6.0, 8.0, 10.0]);
    assert_eq!(peck(mm(0.0), Group::Tough).stops(mm(1.0)).count(), 2);
}
