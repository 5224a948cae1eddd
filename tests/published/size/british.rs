//! Names of BA, Whitworth, Model Engineer, cycle and pipe sizes.

use holewright_core::units::{Pitch, Printed};

use super::{Size, dash, fraction};

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

/// A cycle size, `1/4x26`: the usual pitch is not in its address, 20 tpi is.
pub(crate) fn cycle(name: &str) -> Size {
    let (diameter, tpi) = name.split_once('x').unwrap_or_else(|| panic!("{name:?} has no tpi"));
    let threads = tpi.parse().unwrap_or_else(|_| panic!("{name:?} has no tpi"));
    let size = british("bsc", diameter, Some(threads));
    let slug = if tpi == "20" { format!("{}x20", size.slug) } else { size.slug };
    Size { slug, ..size }
}
