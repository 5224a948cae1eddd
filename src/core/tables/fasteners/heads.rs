//! Cheese, countersunk and cap heads.

use super::{Head, HeadKind};
use crate::tables::source::Source;
use crate::tables::threads::HeadFamily;
use crate::units::Printed::{self, Inch, Mm};

const CHEESE: Source = Source::library("ISO 1207, cheese heads");
const COUNTERSUNK: Source = Source::library("ISO 2009 and ISO 7046, countersunk heads");
const CAP: Source = Source::library("ISO 4762, hexagon socket heads");
const ASME_COUNTERSUNK: Source = Source::library("ASME B18.6.3, countersunk heads of 82°");
const ASME_CAP: Source = Source::library("ASME B18.3, hexagon socket heads");

/// A metric head: nominal, diameter, height.
const fn metric(kind: HeadKind, sizes: [f64; 3], source: Source) -> Head {
    let [nominal, diameter, height] = sizes;
    Head {
        kind,
        family: HeadFamily::Metric,
        nominal: Mm(nominal),
        diameter: Mm(diameter),
        height: Mm(height),
        key: None,
        source,
    }
}

/// A metric cap head is as high as its screw is thick: nominal, diameter, key.
const fn cap(nominal: f64, diameter: f64, key: f64) -> Head {
    let head = metric(HeadKind::Cap, [nominal, diameter, nominal], CAP);
    Head { key: Some(Mm(key)), ..head }
}

const fn asme(kind: HeadKind, nominal: Printed, sizes: [Printed; 2], source: Source) -> Head {
    let [diameter, height] = sizes;
    Head { kind, family: HeadFamily::Unified, nominal, diameter, height, key: None, source }
}

const fn asme_countersunk(nominal: Printed, sharp: f64, height: f64) -> Head {
    asme(HeadKind::Countersunk, nominal, [Inch(sharp), Inch(height)], ASME_COUNTERSUNK)
}

const fn asme_cap(nominal: Printed, diameter: f64) -> Head {
    asme(HeadKind::Cap, nominal, [Inch(diameter), nominal], ASME_CAP)
}

const fn fraction(numerator: u8, denominator: u8) -> Printed {
    Printed::fraction(numerator, denominator)
}

#[rustfmt::skip]
pub(super) static ROWS: &[Head] = &[
    metric(HeadKind::Cheese, [1.6, 3.0, 1.1], CHEESE),
    metric(HeadKind::Cheese, [2.0, 3.8, 1.4], CHEESE),
    metric(HeadKind::Cheese, [2.5, 4.5, 1.8], CHEESE),
    metric(HeadKind::Cheese, [3.0, 5.5, 2.0], CHEESE),
    metric(HeadKind::Cheese, [3.5, 6.0, 2.4], CHEESE),
    metric(HeadKind::Cheese, [4.0, 7.0, 2.6], CHEESE),
    metric(HeadKind::Cheese, [5.0, 8.5, 3.3], CHEESE),
    metric(HeadKind::Cheese, [6.0, 10.0, 3.9], CHEESE),
    metric(HeadKind::Cheese, [8.0, 13.0, 5.0], CHEESE),
    metric(HeadKind::Cheese, [10.0, 16.0, 6.0], CHEESE),
    metric(HeadKind::Countersunk, [1.6, 3.6, 1.0], COUNTERSUNK),
    metric(HeadKind::Countersunk, [2.0, 4.4, 1.2], COUNTERSUNK),
    metric(HeadKind::Countersunk, [2.5, 5.5, 1.5], COUNTERSUNK),
    metric(HeadKind::Countersunk, [3.0, 6.3, 1.65], COUNTERSUNK),
    metric(HeadKind::Countersunk, [3.5, 8.2, 2.35], COUNTERSUNK),
    metric(HeadKind::Countersunk, [4.0, 9.4, 2.7], COUNTERSUNK),
    metric(HeadKind::Countersunk, [5.0, 10.4, 2.7], COUNTERSUNK),
    metric(HeadKind::Countersunk, [6.0, 12.6, 3.3], COUNTERSUNK),
    metric(HeadKind::Countersunk, [8.0, 17.3, 4.65], COUNTERSUNK),
    metric(HeadKind::Countersunk, [10.0, 20.0, 5.0], COUNTERSUNK),
    cap(1.6, 3.0, 1.5),
    cap(2.0, 3.8, 1.5),
    cap(2.5, 4.5, 2.0),
    cap(3.0, 5.5, 2.5),
    cap(4.0, 7.0, 3.0),
    cap(5.0, 8.5, 4.0),
    cap(6.0, 10.0, 5.0),
    cap(8.0, 13.0, 6.0),
    cap(10.0, 16.0, 8.0),
    cap(12.0, 18.0, 10.0),
    cap(14.0, 21.0, 12.0),
    cap(16.0, 24.0, 14.0),
    cap(20.0, 30.0, 17.0),
    cap(24.0, 36.0, 19.0),
    asme_countersunk(Inch(0.060), 0.112, 0.035),
    asme_countersunk(Inch(0.073), 0.137, 0.043),
    asme_countersunk(Inch(0.086), 0.162, 0.051),
    asme_countersunk(Inch(0.099), 0.187, 0.059),
    asme_countersunk(Inch(0.112), 0.212, 0.067),
    asme_countersunk(Inch(0.125), 0.237, 0.075),
    asme_countersunk(Inch(0.138), 0.262, 0.083),
    asme_countersunk(Inch(0.164), 0.312, 0.100),
    asme_countersunk(Inch(0.190), 0.362, 0.116),
    asme_countersunk(Inch(0.216), 0.412, 0.132),
    asme_countersunk(fraction(1, 4), 0.477, 0.153),
    asme_countersunk(fraction(5, 16), 0.597, 0.191),
    asme_countersunk(fraction(3, 8), 0.717, 0.230),
    asme_countersunk(fraction(7, 16), 0.760, 0.223),
    asme_countersunk(fraction(1, 2), 0.815, 0.223),
    asme_cap(Inch(0.060), 0.096),
    asme_cap(Inch(0.073), 0.118),
    asme_cap(Inch(0.086), 0.140),
    asme_cap(Inch(0.099), 0.161),
    asme_cap(Inch(0.112), 0.183),
    asme_cap(Inch(0.125), 0.205),
    asme_cap(Inch(0.138), 0.226),
    asme_cap(Inch(0.164), 0.270),
    asme_cap(Inch(0.190), 0.312),
    asme_cap(fraction(1, 4), 0.375),
    asme_cap(fraction(5, 16), 0.469),
    asme_cap(fraction(3, 8), 0.562),
    asme_cap(fraction(7, 16), 0.656),
    asme_cap(fraction(1, 2), 0.750),
];
