//! Threads: rows against the rules that made them, addresses, limits and relations.

#![expect(clippy::panic, reason = "a helper that finds no thread ends its test")]

use std::collections::HashSet;

use holewright_core::calc::limits::{LargestHole, largest_hole, smallest_hole};
use holewright_core::calc::relations::{Likeness, look_alikes, same_as};
use holewright_core::calc::thread_form::geometry;
use holewright_core::tables::threads::{
    Basic, Form, FormLimit, Naming, SizeLimit, System, SystemId, Thread, all, find, systems,
};
use holewright_core::tables::tolerances;
use holewright_core::units::{Pitch, Printed, in_inch, in_mm, in_mm2, print};

#[track_caller]
fn thread(system: &str, size: &str) -> &'static Thread {
    find(system, size).unwrap_or_else(|| panic!("no thread {system}/{size}"))
}

#[track_caller]
fn close(name: &str, got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{name}: got {got}, expected {expected} within {tolerance}"
    );
}

fn limit(thread: &Thread) -> Option<LargestHole> {
    largest_hole(thread, &geometry(thread))
}

/// Every thread with its system.
fn rows() -> impl Iterator<Item = (&'static System, &'static Thread)> {
    systems().iter().flat_map(|system| system.threads.iter().map(move |thread| (*system, thread)))
}

// Addresses and names.

#[test]
#[expect(clippy::print_stdout, reason = "the count of rows is read by whoever runs the tests")]
fn there_are_at_least_360_threads() {
    for system in systems() {
        println!("{:4} {}", system.threads.len(), system.name);
        assert!(!system.threads.is_empty(), "{} has no sizes", system.slug);
    }
    println!("{:4} threads in all", all().count());
    assert!(all().count() >= 360, "only {} threads", all().count());
}

#[test]
fn every_system_says_what_it_is() {
    let mut slugs = HashSet::new();
    for system in systems() {
        assert!(slugs.insert(system.slug), "{} twice", system.slug);
        for (what, text) in [
            ("name", system.name),
            ("mark", system.mark),
            ("standard", system.standard),
            ("use", system.used_for),
        ] {
            assert!(!text.is_empty(), "{}: no {what}", system.slug);
        }
        assert!(system.used_for.ends_with('.'), "{}: use is not a sentence", system.slug);
        assert_eq!(system.id.system().slug, system.slug);
    }
}

#[test]
fn rows_stand_in_their_own_system() {
    for (system, thread) in rows() {
        assert_eq!(thread.system, system.id, "{}", thread.designation);
        assert_eq!(find(system.slug, thread.size), Some(thread));
    }
}

#[test]
fn addresses_are_safe_and_unique_in_a_system() {
    let safe = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-' || c == '.';
    for system in systems() {
        let mut seen = HashSet::new();
        for thread in system.threads {
            assert!(seen.insert(thread.size), "{}/{} twice", system.slug, thread.size);
            assert!(!thread.size.is_empty() && thread.size.chars().all(safe), "{}", thread.size);
            assert!(!thread.size.starts_with(['-', '.']), "{}", thread.size);
            assert!(!thread.size.ends_with(['-', '.']), "{}", thread.size);
        }
    }
}

#[test]
fn designations_are_unique_across_all_systems() {
    let mut seen = HashSet::new();
    for thread in all() {
        assert!(seen.insert(thread.designation), "{} twice", thread.designation);
    }
}

#[test]
fn every_row_has_a_source() {
    for (system, thread) in rows() {
        let name = format!("{}/{}", system.slug, thread.size);
        assert!(!thread.sources.is_empty(), "{name}: no source");
        assert!(
            thread.sources.iter().all(|source| !source.cite.is_empty()),
            "{name}: empty source"
        );
        assert!(thread.note.is_none_or(|note| note.ends_with('.')), "{name}: note is no sentence");
    }
}

#[test]
fn sizes_are_in_order() {
    for system in systems() {
        for pair in system.threads.windows(2) {
            let [one, next] = [in_mm(geometry(&pair[0]).major), in_mm(geometry(&pair[1]).major)];
            let ordered = if system.naming == Naming::Number { one > next } else { one <= next };
            assert!(ordered, "{} before {}", pair[0].designation, pair[1].designation);
        }
    }
}

#[test]
fn fractions_are_the_ones_of_the_address() {
    let mut checked = 0;
    for (system, thread) in rows() {
        let Basic::Major(Printed::Fraction(fraction)) = thread.basic else { continue };
        let dress = fraction.to_string().replace([' ', '/'], "-");
        let tpi = print::trimmed(thread.pitch.threads_per_inch(), 1);
        let with_pitch = format!("{dress}x{tpi}");
        let expected = match system.naming {
            Naming::Unified => format!("{dress}-{tpi}"),
            Naming::Inch if thread.size == with_pitch => with_pitch,
            Naming::Inch | Naming::Metric | Naming::Number => dress,
        };
        assert_eq!(thread.size, expected, "{}", thread.designation);
        assert!(thread.designation.starts_with(&fraction.to_string()), "{}", thread.designation);
        checked += 1;
    }
    assert!(checked > 150, "only {checked} fractions");
}

#[test]
fn metric_addresses_and_names_hold_diameter_and_pitch() {
    for (system, thread) in rows() {
        let (Basic::Major(Printed::Mm(major)), Pitch::Mm(pitch)) = (thread.basic, thread.pitch)
        else {
            continue;
        };
        let (size, name) = (thread.size, thread.designation);
        if system.naming == Naming::Number {
            assert_eq!(name, format!("{size} {}", system.mark));
            continue;
        }
        let figures = size.trim_start_matches(|mark: char| mark.is_ascii_lowercase());
        let (diameter, of_pitch) = figures.split_once('x').unwrap_or((figures, ""));
        close(name, diameter.parse().expect("a diameter"), major, 0.0);
        assert!(of_pitch.is_empty() || of_pitch == pitch.to_string(), "{size}");
        assert!(name.contains(diameter) && name.contains(of_pitch), "{size}: {name}");
    }
}

#[test]
fn a_fine_pitch_is_finer_than_the_coarse_one() {
    for fine in SystemId::MetricFine.system().threads {
        let (name, _) = fine.size.split_once('x').expect("a fine size names its pitch");
        if let Some(coarse) = find("metric", name) {
            assert!(fine.pitch.length() < coarse.pitch.length(), "{}", fine.designation);
        }
    }
}

// The rules that made the rows.

#[test]
fn ba_rows_follow_the_rule_of_the_series() {
    let mut pitch = 1.0;
    for (number, thread) in SystemId::Ba.system().threads.iter().enumerate() {
        assert_eq!(thread.size, number.to_string());
        let major = 6.0 * libm::pow(pitch, 1.2);
        let places = if major < 0.95 { 2 } else { 1 };
        let row = geometry(thread);
        close(thread.designation, in_mm(row.pitch), print::round(pitch, 2), 1e-9);
        close(thread.designation, in_mm(row.major), print::round(major, places), 1e-9);
        pitch *= 0.9;
    }
    assert_eq!(SystemId::Ba.system().threads.len(), 26);
}

#[test]
fn american_number_sizes_follow_the_rule() {
    let mut checked = 0;
    for (system, thread) in rows() {
        let Some(name) = thread.designation.strip_prefix("No. ") else { continue };
        let (number, rest) = name.split_once('-').expect("a number size names its pitch");
        let (tpi, series) = rest.split_once(' ').unwrap_or((rest, ""));
        let step: f64 = match number {
            "00" => -1.0,
            "000" => -2.0,
            "0000" => -3.0,
            _ => number.parse().expect("a number"),
        };
        let rule = 0.060 + 0.013 * step;
        close(thread.designation, in_inch(geometry(thread).major), rule, 1e-9);
        close(thread.designation, thread.pitch.threads_per_inch(), tpi.parse().expect("tpi"), 1e-9);
        assert_eq!(thread.size, format!("{number}-{tpi}"));
        assert!(series.is_empty() || series == system.mark, "{}", thread.designation);
        checked += 1;
    }
    assert_eq!(checked, 34, "9 coarse, 10 fine, 1 extra fine, 10 special and 4 below No. 0");
}

#[test]
fn the_brass_thread_has_26_threads_at_every_size() {
    for (id, tpi) in [
        (SystemId::Bsb, 26.0),
        (SystemId::Me40, 40.0),
        (SystemId::Me32, 32.0),
        (SystemId::Me26, 26.0),
    ] {
        for thread in id.system().threads {
            close(thread.designation, thread.pitch.threads_per_inch(), tpi, 0.0);
        }
    }
}

/// ASME B1.20.1: E0 = D − (0.05 D + 1.1)/n, E1 = E0 + L1/16, D the outside diameter of the pipe.
#[test]
fn npt_rows_follow_the_formula_of_the_standard() {
    let pipes = [0.3125, 0.405, 0.540, 0.675, 0.840, 1.050, 1.315, 1.660, 1.900, 2.375];
    let threads = SystemId::Npt.system().threads;
    assert_eq!(threads.len(), pipes.len());
    for (thread, pipe) in threads.iter().zip(pipes) {
        let Basic::EffectiveAtGauge(effective) = thread.basic else {
            panic!("{}: not an effective diameter", thread.designation)
        };
        let gauge = thread.taper.and_then(|taper| taper.gauge_length).expect("a gauge length");
        let small_end = pipe - (0.05 * pipe + 1.1) / thread.pitch.threads_per_inch();
        let rule = small_end + in_inch(gauge.length()) / 16.0;
        close(thread.designation, in_inch(effective.length()), rule, 0.000_015);
    }
}

#[test]
fn taper_threads_are_marked_and_no_others() {
    for (system, thread) in rows() {
        let tapered = system.form == Form::TaperPipe || system.id == SystemId::Bspt;
        assert_eq!(thread.taper.is_some(), tapered, "{}", thread.designation);
    }
}

#[test]
fn taper_and_parallel_pipe_share_their_sizes() {
    for taper in SystemId::Bspt.system().threads {
        let parallel = thread("bspp", taper.size);
        assert_eq!(taper.basic, parallel.basic, "{}", taper.designation);
        assert_eq!(taper.pitch, parallel.pitch, "{}", taper.designation);
    }
}

#[test]
fn diameters_stand_in_order() {
    // In millimetres: the quantity type itself carries binary noise into comparisons.
    for thread in all() {
        let row = geometry(thread);
        let [major, effective] = [in_mm(row.major), in_mm(row.effective)];
        let [minor, nut] = [in_mm(row.minor), in_mm(row.minor_internal)];
        let name = thread.designation;
        assert!(effective < major, "{name}: effective {effective}, major {major}");
        assert!(minor < effective, "{name}: minor {minor}, effective {effective}");
        assert!(nut < effective, "{name}: nut {nut}, effective {effective}");
        assert!(minor <= nut + 1e-9, "{name}: screw {minor}, nut {nut}");
        assert!(minor > 0.0, "{name}: minor {minor}");
    }
}

/// Machinery's Handbook 31st ed. pp. 1978 to 1980: effective, screw's minor, nut's minor, in; area, in².
#[test]
fn unified_rounds_as_its_tables_do() {
    let printed = [
        ("unc", "4-40", ["0.0958", "0.0822", "0.0849"], "0.00604"),
        ("unf", "6-40", ["0.1218", "0.1082", "0.1109"], "0.01015"),
        ("unf", "12-28", ["0.1928", "0.1734", "0.1773"], "0.0258"),
        ("unf", "1-4-28", ["0.2268", "0.2074", "0.2113"], "0.0364"),
        ("unf", "1-2-20", ["0.4675", "0.4405", "0.4459"], "0.1599"),
        ("unc", "3-8-16", ["0.3344", "0.3005", "0.3073"], "0.0775"),
        ("unf", "9-16-18", ["0.5264", "0.4964", "0.5024"], "0.203"),
        ("unf", "7-8-14", ["0.8286", "0.7900", "0.7977"], "0.509"),
        ("unef", "1-1-2-18", ["1.4639", "1.4339", "1.4399"], "1.64"),
    ];
    for (system, size, diameters, area) in printed {
        let row = geometry(thread(system, size));
        let got = [row.effective, row.minor, row.minor_internal]
            .map(|diameter| print::fixed(in_inch(diameter), 4));
        assert_eq!(got, diameters, "{size}");
        let places = u8::try_from(area.len() - 2).expect("few places");
        assert_eq!(print::fixed(in_mm2(row.tensile_area) / 645.16, places), area, "{size}");
    }
}

// Limits.

/// Machinery's Handbook 31st ed. p. 1998, table 5: screw's minor, nut's least and largest minor, mm.
#[test]
fn unified_miniature_reproduces_its_printed_limits() {
    let printed = [
        ("0.30", 0.204, 0.217, 0.254),
        ("0.35", 0.242, 0.256, 0.297),
        ("0.40", 0.280, 0.296, 0.340),
        ("0.45", 0.330, 0.346, 0.390),
        ("0.50", 0.350, 0.370, 0.422),
        ("0.55", 0.400, 0.420, 0.472),
        ("0.60", 0.420, 0.444, 0.504),
        ("0.70", 0.490, 0.518, 0.586),
        ("0.80", 0.560, 0.592, 0.668),
        ("0.90", 0.630, 0.666, 0.750),
        ("1.00", 0.700, 0.740, 0.832),
        ("1.10", 0.800, 0.840, 0.932),
        ("1.20", 0.900, 0.940, 1.032),
        ("1.40", 1.040, 1.088, 1.196),
    ];
    for (size, minor, least, largest) in printed {
        let thread = thread("unm", size);
        let row = geometry(thread);
        close(size, in_mm(row.minor), minor, 0.000_5);
        close(size, in_mm(smallest_hole(&row)), least, 0.000_5);
        close(size, in_mm(limit(thread).expect("a limit").diameter), largest, 0.000_51);
    }
}

#[test]
fn published_largest_holes_are_reproduced() {
    // System, size, limit, unit in mm, last printed place, name.
    let printed = [
        ("ba", "5", 2.711, 1.0, 0.001, "BS 93"),
        ("ba", "7", 2.100, 1.0, 0.001, "BS 93"),
        ("metric", "m1.6", 1.321, 1.0, 0.001, "6H"),
        ("metric", "m2", 1.679, 1.0, 0.001, "6H"),
        ("metric", "m3", 2.599, 1.0, 0.001, "6H"),
        ("metric", "m4", 3.422, 1.0, 0.001, "6H"),
        ("metric", "m5", 4.334, 1.0, 0.001, "6H"),
        ("metric", "m8", 6.912, 1.0, 0.001, "6H"),
        ("metric", "m10", 8.676, 1.0, 0.001, "6H"),
        ("metric", "m12", 10.441, 1.0, 0.001, "6H"),
        ("metric", "m20", 0.698_58, 25.4, 0.000_02, "6H"),
        ("metric", "m24", 0.836_69, 25.4, 0.000_02, "6H"),
        ("metric-fine", "m3x0.35", 2.721, 1.0, 0.001, "6H"),
        ("metric-fine", "m9x1", 8.153, 1.0, 0.001, "6H"),
        ("metric-fine", "m10x0.75", 9.378, 1.0, 0.001, "6H"),
        ("metric", "m1", 0.785, 1.0, 0.001, "5H"),
        ("metric-fine", "m1x0.2", 0.821, 1.0, 0.001, "4H"),
        ("bspp", "1-16", 6.843, 1.0, 0.001, "ISO 228"),
        ("bspp", "1-4", 11.890, 1.0, 0.001, "ISO 228"),
        ("bspp", "1-2", 19.172, 1.0, 0.001, "ISO 228"),
        ("bspp", "1-3-8", 42.005, 1.0, 0.001, "ISO 228"),
        ("unf", "0-80", 0.0514, 25.4, 0.0001, "2B"),
        ("unc", "1-64", 0.0623, 25.4, 0.0001, "2B"),
        ("unf", "2-64", 0.0753, 25.4, 0.0001, "2B"),
        ("unc", "4-40", 0.0939, 25.4, 0.0001, "2B"),
        ("unf", "5-44", 0.1079, 25.4, 0.0001, "2B"),
        ("unc", "6-32", 0.114, 25.4, 0.001, "2B"),
        ("unc", "10-24", 0.156, 25.4, 0.001, "2B"),
        ("unf", "10-32", 0.164, 25.4, 0.001, "2B"),
        ("uns", "10-48", 0.172, 25.4, 0.001, "2B"),
        ("uns", "12-36", 0.192, 25.4, 0.001, "2B"),
        ("unef", "12-32", 0.190, 25.4, 0.001, "2B"),
        ("unc", "1-4-20", 0.207, 25.4, 0.001, "2B"),
        ("unf", "7-8-14", 0.814, 25.4, 0.001, "2B"),
        ("uns", "1-14", 0.938, 25.4, 0.001, "2B"),
        ("unc", "1-8", 0.890, 25.4, 0.001, "2B"),
        ("unc", "1-1-4-7", 1.123, 25.4, 0.001, "2B"),
    ];
    for (system, size, expected, unit, place, standard) in printed {
        let limit = limit(thread(system, size)).unwrap_or_else(|| panic!("{system}/{size}"));
        close(&format!("{system}/{size}"), in_mm(limit.diameter) / unit, expected, place / 2.0);
        assert_eq!(limit.standard, standard, "{system}/{size}");
    }
}

#[test]
fn a_limit_is_given_only_where_one_is_held() {
    for (system, thread) in rows() {
        let held = match (system.largest_hole, thread.form().shape().largest_hole) {
            (SizeLimit::Bs93, _) => thread.size.parse::<u8>().is_ok_and(|number| number <= 16),
            (SizeLimit::Iso228 | SizeLimit::Bs84 | SizeLimit::LikeBs84, _)
            | (SizeLimit::OfForm, FormLimit::Iso965 | FormLimit::AsmeB11 | FormLimit::LikeBs84) => {
                true
            }
            (SizeLimit::OfForm, FormLimit::AsmeB110) => matches!(thread.pitch, Pitch::Mm(_)),
            (SizeLimit::OfForm, FormLimit::NotHeld) => false,
        };
        let limit = limit(thread);
        assert_eq!(limit.is_some(), held, "{}", thread.designation);
        if let Some(limit) = limit {
            let row = geometry(thread);
            assert!(limit.diameter > smallest_hole(&row), "{}", thread.designation);
            assert!(limit.diameter < row.major, "{}", thread.designation);
        }
    }
}

#[test]
fn printed_tolerances_grow_with_the_pitch() {
    let mut rows: Vec<_> = tolerances::all().filter(|row| row.class.ends_with('H')).collect();
    assert_eq!(rows.len(), 20);
    rows.sort_by(|one, other| in_mm(one.pitch.length()).total_cmp(&in_mm(other.pitch.length())));
    for pair in rows.windows(2) {
        assert!(pair[0].tolerance < pair[1].tolerance, "{:?}", pair[1].pitch);
    }
}

// Relations.

#[test]
fn the_same_thread_under_two_names_is_found() {
    let pairs = [
        ("bsw", "1-8", "me-40", "1-8"),
        ("bsw", "5-32", "me-32", "5-32"),
        ("bsf", "3-16", "me-32", "3-16"),
        ("bsf", "1-4", "bsb", "1-4"),
        ("bsf", "9-32", "bsb", "9-32"),
        ("bsb", "3-8", "me-26", "3-8"),
        ("bsb", "1-2", "me-26", "1-2"),
    ];
    for (system, size, other_system, other_size) in pairs {
        let Some(other) = find(other_system, other_size) else {
            assert_eq!((other_system, other_size), ("me-32", "5-32"), "only 5/32 × 32 is not held");
            continue;
        };
        let one = thread(system, size);
        assert!(same_as(one).any(|same| same == other), "{}", one.designation);
    }
}

#[test]
fn being_the_same_holds_both_ways_and_within_a_form() {
    for one in all() {
        for other in same_as(one) {
            assert_ne!(one.designation, other.designation);
            assert!(same_as(other).any(|back| back == one), "{}", one.designation);
            assert_eq!(one.form() == Form::Cycle, other.form() == Form::Cycle);
            assert_eq!(one.taper.is_some(), other.taper.is_some());
            close(one.designation, in_mm(geometry(one).major), in_mm(geometry(other).major), 0.001);
        }
    }
}

#[test]
fn look_alikes_come_with_their_misfit() {
    // This, the other, diameter and pitch in percent, likeness.
    let expected = [
        ("ba", "0", "M6", 0.0, 0.0, Likeness::DiameterAndPitch),
        ("ba", "2", "No. 10-32 UNF", 2.68, -2.01, Likeness::Neither),
        ("ba", "7", "M2.5", 0.0, -6.25, Likeness::Neither),
        ("unc", "1-2-13", "1/2 in BSW", 0.0, 8.33, Likeness::Neither),
        ("bsw", "1-4", "1/4-20 UNC", 0.0, 0.0, Likeness::DiameterAndPitch),
        ("bsc", "5-16", "M8 × 1", 0.79, 2.36, Likeness::Neither),
        ("bspp", "1-4", "R 1/4", 0.0, 0.0, Likeness::DiameterAndPitch),
    ];
    for (system, size, designation, major, pitch, likeness) in expected {
        let one = thread(system, size);
        let near = look_alikes(one);
        let other = near
            .iter()
            .find(|other| other.thread.designation == designation)
            .unwrap_or_else(|| panic!("{} is not near {}", designation, one.designation));
        close(designation, other.major_percent, major, 0.005);
        close(designation, other.pitch_percent, pitch, 0.005);
        assert_eq!(other.likeness, likeness, "{designation}");
    }
}

#[test]
fn look_alikes_are_few_ordered_and_other_threads() {
    for one in all() {
        let near = look_alikes(one);
        assert!(near.len() <= 5, "{}", one.designation);
        let misfits: Vec<f64> = near
            .iter()
            .map(|other| other.major_percent.abs() + other.pitch_percent.abs())
            .collect();
        assert!(misfits.is_sorted(), "{}: {misfits:?}", one.designation);
        for other in near {
            assert_ne!(other.thread.system, one.system);
            assert!(!same_as(one).any(|same| same == other.thread), "{}", one.designation);
        }
    }
}
