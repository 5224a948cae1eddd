//! Reading the size a source names into a system and an address, independently of `src`.

mod british;
mod metric;
mod unified;

use holewright_core::tables::threads::{Basic, SystemId, Thread, find, system};
use holewright_core::units::{Fraction, Pitch, Printed, in_mm};

pub(crate) use british::{ba, british, cycle, model_engineer, pipe};
pub(crate) use metric::{metric, miniature};
pub(crate) use unified::{unified, unified_in, unm};

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

/// A fraction as addresses write it: `1-1-4`.
pub(crate) fn dash(fraction: Fraction) -> String {
    fraction.to_string().replace([' ', '/'], "-")
}

/// The thread of a size: ours, or, where we do not hold it, one made of its name so that the
/// formulas are put to the test all the same. A held row that contradicts the name fails.
#[track_caller]
pub(crate) fn thread(row: &mut Row, size: &Size) -> Thread {
    let Size { system: slug, major, pitch, .. } = size;
    let Some(held) = find(slug, &size.slug) else {
        row.miss(format!("threads/{slug}"), &size.slug);
        let made = major.zip(*pitch);
        let (major, pitch) = made.unwrap_or_else(|| panic!("{size:?} says too little"));
        return made_up(
            system(slug).unwrap_or_else(|| panic!("no system {slug}")).id,
            major,
            pitch,
        );
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
