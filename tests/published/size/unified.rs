//! Names of Unified sizes, and which series they belong to.

use holewright_core::units::{Pitch, Printed};

use super::{Size, dash, fraction};

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

/// A miniature Unified size, `0.80 UNM`, or one below No. 0, `00-90`.
pub(crate) fn unm(name: &str) -> Size {
    let slug = name.trim_end_matches(" UNM").to_owned();
    Size { system: "unm", slug, major: None, pitch: None }
}
