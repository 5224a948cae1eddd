//! Reading the size a source names into a system and an address, independently of `src`.

use holewright::tables::threads::{Basic, SystemId, Thread, find, system};
use holewright::units::{Fraction, Pitch, Printed, in_mm};

use crate::replay::{Kind, Row};

/// A size as a source names it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Size {
    /// The address part of its system.
    pub(crate) system: &'static str,
    /// Its own address part.
    pub(crate) slug: String,
    /// The major diameter the name gives.
    pub(crate) major: Option<Printed>,
    /// The pitch the name gives.
    pub(crate) pitch: Option<Pitch>,
}

/// `1/4`, `1-1/4`, `1 1/4` or `2`.
pub(crate) fn fraction(text: &str) -> Option<Fraction> {
    let number = |text: &str| text.parse::<u8>().ok();
    let (whole, part) = match text.split_once(['-', ' ']) {
        Some((whole, part)) => (number(whole)?, part),
        None => (0, text),
    };
    match part.split_once('/') {
        Some((over, under)) => {
            Some(Fraction { whole, numerator: number(over)?, denominator: number(under)? })
        }
        None => Some(Fraction { whole: number(part)?, numerator: 0, denominator: 1 }),
    }
}

/// A fraction in address dress: `1-1-4`.
pub(crate) fn dash(fraction: Fraction) -> String {
    fraction.to_string().replace([' ', '/'], "-")
}

/// `5BA`.
pub(crate) fn ba(name: &str) -> Size {
    let slug = name.strip_suffix("BA").unwrap_or_else(|| panic!("{name:?} is no BA size"));
    Size { system: "ba", slug: slug.to_owned(), major: None, pitch: None }
}

/// An inch size of a British system, with its threads per inch where the source gives them.
pub(crate) fn british(system: &'static str, name: &str, tpi: Option<f64>) -> Size {
    let inches = fraction(name).unwrap_or_else(|| panic!("{name:?} is no inch size"));
    Size {
        system,
        slug: dash(inches),
        major: Some(Printed::Fraction(inches)),
        pitch: tpi.map(Pitch::PerInch),
    }
}

/// A Model Engineer size, `3/8x32`.
pub(crate) fn model_engineer(name: &str) -> Size {
    let (diameter, tpi) = name.split_once('x').unwrap_or_else(|| panic!("{name:?} is no ME size"));
    let (system, tpi) = match tpi {
        "40" => ("me-40", 40.0),
        "32" => ("me-32", 32.0),
        "26" => ("me-26", 26.0),
        _ => panic!("{name:?} is no ME size"),
    };
    british(system, diameter, Some(tpi))
}

/// A pipe size by its nominal bore, in any of the systems named after it.
pub(crate) fn pipe(system: &'static str, name: &str) -> Size {
    let bore = name.trim_start_matches(['G', 'R', 'c', 'p', ' ']);
    let bore = bore.split(" NP").next().unwrap_or(bore);
    let inches = fraction(bore).unwrap_or_else(|| panic!("{name:?} is no pipe size"));
    Size { system, slug: dash(inches), major: None, pitch: None }
}

/// A metric size, `M6x1`, or coarse by its diameter alone, `M6`.
pub(crate) fn metric(name: &str) -> Size {
    let name = name.strip_prefix('M').unwrap_or_else(|| panic!("{name:?} is no metric size"));
    let (diameter, pitch) = name.split_once('x').unwrap_or((name, ""));
    let major: f64 = diameter.parse().unwrap_or_else(|_| panic!("{name:?} is no metric size"));
    let coarse = coarse_pitch(major);
    let pitch = match pitch {
        "" => coarse,
        pitch => Some(pitch.parse().unwrap_or_else(|_| panic!("{name:?} is no metric size"))),
    };
    let (system, slug) = match pitch {
        Some(fine) if pitch != coarse => ("metric-fine", format!("m{major}x{fine}")),
        _ => ("metric", format!("m{major}")),
    };
    Size { system, slug, major: Some(Printed::Mm(major)), pitch: pitch.map(Pitch::Mm) }
}

/// The coarse pitches of ISO 261, and of the old M1.7, M2.3 and M2.6.
fn coarse_pitch(major: f64) -> Option<f64> {
    #[rustfmt::skip]
    const COARSE: [(f64, f64); 44] = [
        (1.0, 0.25), (1.1, 0.25), (1.2, 0.25), (1.4, 0.3), (1.6, 0.35), (1.7, 0.35), (1.8, 0.35),
        (2.0, 0.4), (2.2, 0.45), (2.3, 0.4), (2.5, 0.45), (2.6, 0.45), (3.0, 0.5), (3.5, 0.6),
        (4.0, 0.7), (4.5, 0.75), (5.0, 0.8), (6.0, 1.0), (7.0, 1.0), (8.0, 1.25), (9.0, 1.25),
        (10.0, 1.5), (11.0, 1.5), (12.0, 1.75), (14.0, 2.0), (16.0, 2.0), (18.0, 2.5), (20.0, 2.5),
        (22.0, 2.5), (24.0, 3.0), (27.0, 3.0), (30.0, 3.5), (33.0, 3.5), (36.0, 4.0), (39.0, 4.0),
        (42.0, 4.5), (45.0, 4.5), (48.0, 5.0), (52.0, 5.0), (56.0, 5.5), (60.0, 5.5), (64.0, 6.0),
        (68.0, 6.0), (72.0, 6.0),
    ];
    COARSE.iter().find(|(diameter, _)| *diameter == major).map(|(_, pitch)| *pitch)
}

/// A miniature size, `S0.8`.
pub(crate) fn miniature(name: &str) -> Size {
    let slug = name.to_lowercase();
    Size { system: "miniature", slug, major: None, pitch: None }
}

/// A miniature Unified size, `0.80 UNM`, or one below No. 0, `00-90`.
pub(crate) fn unm(name: &str) -> Size {
    let slug = name.trim_end_matches(" UNM").to_owned();
    Size { system: "unm", slug, major: None, pitch: None }
}

/// A cycle size, `1/4x26`: the usual pitch is not in its address, 20 tpi is.
pub(crate) fn cycle(name: &str) -> Size {
    let (diameter, tpi) = name.split_once('x').unwrap_or_else(|| panic!("{name:?} has no tpi"));
    let threads = tpi.parse().unwrap_or_else(|_| panic!("{name:?} has no tpi"));
    let size = british("bsc", diameter, Some(threads));
    let slug = if tpi == "20" { format!("{}x20", size.slug) } else { size.slug };
    Size { slug, ..size }
}

/// A Unified size: `0-80`, `#10-32`, `1/4-20`, `1 1/8-7`, `1-8`.
pub(crate) fn unified(name: &str) -> Size {
    let name = name.trim_start_matches('#');
    let (diameter, tpi) = name.rsplit_once('-').unwrap_or_else(|| panic!("{name:?} has no tpi"));
    let threads: f64 = tpi.parse().unwrap_or_else(|_| panic!("{name:?} has no tpi"));
    let inches = fraction(diameter).unwrap_or_else(|| panic!("{name:?} is no Unified size"));
    // `1-8` is an inch and `1-64` a number: No. 1 is never coarser than 64, an inch never finer
    // than 32. Other whole numbers in the sources are screw numbers.
    let numbered = inches.numerator == 0 && (inches.whole != 1 || threads > 32.0);
    let (major, first) = if numbered {
        let number = inches.whole;
        (Printed::Inch(thousandths(number)), number.to_string())
    } else {
        (Printed::Fraction(inches), dash(inches))
    };
    let slug = format!("{first}-{tpi}");
    let system = unified_system(&slug);
    Size { system, slug, major: Some(major), pitch: Some(Pitch::PerInch(threads)) }
}

/// Screw number n is 0.060 in + 0.013 in n, exact to the thousandth.
fn thousandths(number: u8) -> f64 {
    f64::from(60 + 13 * u32::from(number)) / 1000.0
}

/// A Unified size whose series the source names: `#4` is a number, `4` four inches.
pub(crate) fn unified_in(series: &str, name: &str, tpi: f64) -> Size {
    let system = match series {
        "UNC" => "unc",
        "UNF" => "unf",
        "UNEF" => "unef",
        _ => panic!("no series {series}"),
    };
    let (major, first) = match name.strip_prefix('#') {
        Some(number) => {
            let major = thousandths(number.parse().expect("a screw number"));
            (Printed::Inch(major), number.to_owned())
        }
        None => {
            let inches = fraction(name).unwrap_or_else(|| panic!("{name:?} is no inch size"));
            (Printed::Fraction(inches), dash(inches))
        }
    };
    let slug = format!("{first}-{tpi}");
    Size { system, slug, major: Some(major), pitch: Some(Pitch::PerInch(tpi)) }
}

fn unified_system(slug: &str) -> &'static str {
    #[rustfmt::skip]
    const UNC: [&str; 24] = [
        "1-64", "2-56", "3-48", "4-40", "5-40", "6-32", "8-32", "10-24", "12-24", "1-4-20",
        "5-16-18", "3-8-16", "7-16-14", "1-2-13", "9-16-12", "5-8-11", "3-4-10", "7-8-9", "1-8",
        "1-1-8-7", "1-1-4-7", "1-3-8-6", "1-1-2-6", "1-3-4-5",
    ];
    #[rustfmt::skip]
    const UNF: [&str; 23] = [
        "0-80", "1-72", "2-64", "3-56", "4-48", "5-44", "6-40", "8-36", "10-32", "12-28", "1-4-28",
        "5-16-24", "3-8-24", "7-16-20", "1-2-20", "9-16-18", "5-8-18", "3-4-16", "7-8-14", "1-12",
        "1-1-8-12", "1-1-4-12", "1-3-8-12",
    ];
    #[rustfmt::skip]
    const UNEF: [&str; 24] = [
        "12-32", "1-4-32", "5-16-32", "3-8-32", "7-16-28", "1-2-28", "9-16-24", "5-8-24",
        "11-16-24", "3-4-20", "13-16-20", "7-8-20", "15-16-20", "1-20", "1-1-16-18", "1-1-8-18",
        "1-3-16-18", "1-1-4-18", "1-5-16-18", "1-3-8-18", "1-7-16-18", "1-1-2-18", "1-9-16-18",
        "1-5-8-18",
    ];
    match slug {
        "1-1-2-12" => "unf",
        _ if UNC.contains(&slug) => "unc",
        _ if UNF.contains(&slug) => "unf",
        _ if UNEF.contains(&slug) => "unef",
        _ => "uns",
    }
}

/// The thread of a size: ours, or, where we do not hold it, one made of its name so that the
/// formulas are put to the test all the same. A held row that contradicts the name fails.
#[track_caller]
pub(crate) fn thread(row: &mut Row, size: &Size) -> Thread {
    let Size { system: slug, major, pitch, .. } = size;
    let Some(held) = find(slug, &size.slug) else {
        row.miss(slug, &size.slug);
        let made = major.zip(*pitch);
        let (major, pitch) = made.unwrap_or_else(|| panic!("{size:?} says too little"));
        return made_up(system(slug).unwrap_or_else(|| panic!("no system {slug}")).id, major, pitch);
    };
    let same = |ours: f64, named: f64| (ours - named).abs() < 1e-9;
    if let (Basic::Major(ours), Some(named)) = (held.basic, major)
        && !same(in_mm(ours.length()), in_mm(named.length()))
    {
        row.claim("designation", Kind::Table, format!("{named:?}"), format!("{ours:?}"), false);
    }
    if let Some(named) = pitch
        && !same(in_mm(held.pitch.length()), in_mm(named.length()))
    {
        let ours = held.pitch;
        row.claim("designation", Kind::Table, format!("{named:?}"), format!("{ours:?}"), false);
    }
    *held
}

/// A thread that stands in no table.
pub(crate) fn made_up(system: SystemId, major: Printed, pitch: Pitch) -> Thread {
    Thread {
        system,
        size: "",
        designation: "",
        basic: Basic::Major(major),
        pitch,
        taper: None,
        sources: &[],
        note: None,
    }
}

#[test]
fn the_names_of_the_sources_are_read() {
    let address = |size: Size| format!("{}/{}", size.system, size.slug);
    assert_eq!(address(ba("5BA")), "ba/5");
    assert_eq!(address(british("bsw", "1-1/4", None)), "bsw/1-1-4");
    assert_eq!(address(model_engineer("3/8x32")), "me-32/3-8");
    assert_eq!(address(pipe("bspp", "G 1 1/4")), "bspp/1-1-4");
    assert_eq!(address(pipe("bspt", "Rc 1/8")), "bspt/1-8");
    assert_eq!(address(pipe("npt", "1 1/4 NPT")), "npt/1-1-4");
    assert_eq!(address(metric("M3x0.5")), "metric/m3");
    assert_eq!(address(metric("M3x0.35")), "metric-fine/m3x0.35");
    assert_eq!(address(metric("M8x1.0")), "metric-fine/m8x1");
    assert_eq!(address(cycle("9/16x20")), "bsc/9-16x20");
    assert_eq!(address(unm("0.80 UNM")), "unm/0.80");
    assert_eq!(address(unified("1-64")), "unc/1-64");
    assert_eq!(address(unified("1-8")), "unc/1-8");
    assert_eq!(address(unified("#10-32")), "unf/10-32");
    assert_eq!(address(unified("1 1/8-7")), "unc/1-1-8-7");
    assert_eq!(address(unified("4-36")), "uns/4-36");
    assert_eq!(unified("5-40").major, Some(Printed::Inch(0.125)));
}
