//! The sizes not held lie outside the ranges the tables promise: nothing inside is missed.

use holewright_core::units::Fraction;

use crate::replay::read;

/// What is promised whole: a system by its inches, end to end, or a series by its millimetres.
fn promised(table: &str, size: &str) -> bool {
    match table {
        "threads/ba" | "threads/me-40" | "threads/me-32" | "threads/me-26" | "threads/npt" => true,
        "threads/bsw" => within(size, 1.0 / 16.0, 2.0),
        "threads/bsf" => within(size, 3.0 / 16.0, 1.5),
        "threads/bsb" => within(size, 1.0 / 8.0, 1.0),
        "threads/bspp" | "threads/bspt" => within(size, 1.0 / 16.0, 2.0),
        "threads/bsc" => within(size, 1.0 / 8.0, 1.0),
        "threads/unc" | "threads/unf" | "threads/unef" => {
            let (diameter, _) = size.rsplit_once('-').unwrap_or((size, ""));
            within(diameter, 0.0, 1.5)
        }
        "threads/metric" => millimetres(size) <= 36.0,
        "drills/number" | "drills/letter" => true,
        "drills/fraction" => within(size, 0.0, 1.0),
        "drills/inch" => size.parse::<f64>().is_ok_and(|inches| inches <= 1.0),
        "drills/metric" => bs_328(millimetres(size)),
        // Fine pitches, specials and clearance rows are promised by name, not by range.
        "threads/metric-fine" | "threads/uns" | "clearance/iso-273" => false,
        other => panic!("what does {other} promise?"),
    }
}

fn millimetres(size: &str) -> f64 {
    size.trim_start_matches('m').parse().unwrap_or_else(|_| panic!("{size:?} is no diameter"))
}

/// `1-3-4` is 1 3/4 in, `3-4` is 3/4, `2` is 2.
fn within(slug: &str, least: f64, most: f64) -> bool {
    let parts: Vec<u8> = slug.split('-').map(|part| part.parse().expect("a number")).collect();
    let (whole, numerator, denominator) = match parts.as_slice() {
        [whole] => (*whole, 0, 1),
        [numerator, denominator] => (0, *numerator, *denominator),
        [whole, numerator, denominator] => (*whole, *numerator, *denominator),
        _ => panic!("{slug:?} is no fraction"),
    };
    let inches = Fraction { whole, numerator, denominator }.inches();
    (least..=most).contains(&inches)
}

/// The 227 sizes: 0.20 to 0.98 ending in 0, 2, 5, 8; then by 0.05, by 0.1, by 0.25 mm.
fn bs_328(diameter: f64) -> bool {
    let hundredths = (diameter * 100.0).round();
    let by = |step: f64| (hundredths / step).fract() == 0.0;
    match diameter {
        ..1.0 => [0.0, 2.0, 5.0, 8.0].contains(&(hundredths % 10.0)),
        1.0..3.0 => by(5.0),
        3.0..14.0 => by(10.0),
        14.0..=25.0 => by(25.0),
        _ => false,
    }
}

#[test]
fn no_size_inside_a_promised_range_is_missed() {
    for (line, cells) in read("not_held.csv") {
        let (table, size) = (&cells["table"], &cells["size"]);
        assert!(!promised(table, size), "not_held.csv:{line} {table} {size} ought to be held");
    }
    assert!(promised("threads/bsw", "1-3-4") && promised("drills/metric", "2.05"));
    assert!(promised("threads/unc", "1-8") && promised("drills/metric", "16.75"));
    assert!(!promised("threads/bsf", "1-3-4") && !promised("drills/metric", "10.25"));
}
