//! ISO 273 and BS 4186 rows, in millimetres.
//!
//! BS 4186:1967 has 14, 16 and 18 for M12, M14 and M16 medium where ISO 273 has 13.5, 15.5 and 17.5;
//! one CAD library gives the British figures under no name. ISO 273 rules here.

use super::{Holes, Standard};
use crate::tables::source::Source;
use crate::units::Printed;

const ENCYCLOPEDIA_273: Source =
    Source::published("ISO 273, fine, medium and coarse, as reprinted in an encyclopedia");
const SUPPLIER_273: Source = Source::published("ISO 273, a fastener supplier's table");
/// M68 medium is 74: an older release of the library printed 77.
const LIBRARY_273: Source = Source::library("ISO 273");
const READ_4186: Source =
    Source::published("BS 4186:1967, as printed in Machinery's Handbook 31st ed. p. 2173, table 8");
const COPIED_4186: Source =
    Source::published("BS 4186:1967, as printed in Machinery's Handbook, clearance holes");

const fn row(standard: Standard, sizes: [f64; 4], source: Source) -> Holes {
    let [nominal, close, medium, free] = sizes;
    Holes {
        standard,
        nominal: Printed::Mm(nominal),
        close: Printed::Mm(close),
        medium: Printed::Mm(medium),
        free: Printed::Mm(free),
        source,
    }
}

const fn iso(nominal: f64, close: f64, medium: f64, free: f64, source: Source) -> Holes {
    row(Standard::Iso273, [nominal, close, medium, free], source)
}

const fn bs(nominal: f64, close: f64, medium: f64, free: f64, source: Source) -> Holes {
    row(Standard::Bs4186, [nominal, close, medium, free], source)
}

/// Nominal diameter, then close, medium and free.
#[rustfmt::skip]
pub(super) static ROWS: &[Holes] = &[
    iso(1.0, 1.1, 1.2, 1.3, SUPPLIER_273),
    iso(1.2, 1.3, 1.4, 1.5, LIBRARY_273),
    iso(1.4, 1.5, 1.6, 1.8, SUPPLIER_273),
    iso(1.6, 1.7, 1.8, 2.0, LIBRARY_273),
    iso(1.8, 2.0, 2.1, 2.2, LIBRARY_273),
    iso(2.0, 2.2, 2.4, 2.6, ENCYCLOPEDIA_273),
    iso(2.5, 2.7, 2.9, 3.1, ENCYCLOPEDIA_273),
    iso(3.0, 3.2, 3.4, 3.6, ENCYCLOPEDIA_273),
    iso(3.5, 3.7, 3.9, 4.2, ENCYCLOPEDIA_273),
    iso(4.0, 4.3, 4.5, 4.8, ENCYCLOPEDIA_273),
    iso(4.5, 4.8, 5.0, 5.3, ENCYCLOPEDIA_273),
    iso(5.0, 5.3, 5.5, 5.8, ENCYCLOPEDIA_273),
    iso(6.0, 6.4, 6.6, 7.0, ENCYCLOPEDIA_273),
    iso(7.0, 7.4, 7.6, 8.0, ENCYCLOPEDIA_273),
    iso(8.0, 8.4, 9.0, 10.0, ENCYCLOPEDIA_273),
    iso(10.0, 10.5, 11.0, 12.0, ENCYCLOPEDIA_273),
    iso(12.0, 13.0, 13.5, 14.5, ENCYCLOPEDIA_273),
    iso(14.0, 15.0, 15.5, 16.5, ENCYCLOPEDIA_273),
    iso(16.0, 17.0, 17.5, 18.5, ENCYCLOPEDIA_273),
    iso(18.0, 19.0, 20.0, 21.0, ENCYCLOPEDIA_273),
    iso(20.0, 21.0, 22.0, 24.0, LIBRARY_273),
    iso(22.0, 23.0, 24.0, 26.0, ENCYCLOPEDIA_273),
    iso(24.0, 25.0, 26.0, 28.0, ENCYCLOPEDIA_273),
    iso(27.0, 28.0, 30.0, 32.0, LIBRARY_273),
    iso(30.0, 31.0, 33.0, 35.0, LIBRARY_273),
    iso(33.0, 34.0, 36.0, 38.0, LIBRARY_273),
    iso(36.0, 37.0, 39.0, 42.0, ENCYCLOPEDIA_273),
    iso(39.0, 40.0, 42.0, 45.0, ENCYCLOPEDIA_273),
    iso(42.0, 43.0, 45.0, 48.0, ENCYCLOPEDIA_273),
    iso(45.0, 46.0, 48.0, 52.0, ENCYCLOPEDIA_273),
    iso(48.0, 50.0, 52.0, 56.0, ENCYCLOPEDIA_273),
    iso(52.0, 54.0, 56.0, 62.0, ENCYCLOPEDIA_273),
    iso(56.0, 58.0, 62.0, 66.0, ENCYCLOPEDIA_273),
    iso(60.0, 62.0, 66.0, 70.0, ENCYCLOPEDIA_273),
    iso(64.0, 66.0, 70.0, 74.0, ENCYCLOPEDIA_273),
    iso(68.0, 70.0, 74.0, 78.0, LIBRARY_273),
    iso(72.0, 74.0, 78.0, 82.0, LIBRARY_273),
    iso(76.0, 78.0, 82.0, 86.0, LIBRARY_273),
    iso(80.0, 82.0, 86.0, 91.0, LIBRARY_273),
    iso(85.0, 87.0, 91.0, 96.0, LIBRARY_273),
    iso(90.0, 93.0, 96.0, 101.0, LIBRARY_273),
    iso(95.0, 98.0, 101.0, 107.0, LIBRARY_273),
    iso(100.0, 104.0, 107.0, 112.0, LIBRARY_273),
    iso(105.0, 109.0, 112.0, 117.0, LIBRARY_273),
    iso(110.0, 114.0, 117.0, 122.0, LIBRARY_273),
    iso(115.0, 119.0, 122.0, 127.0, LIBRARY_273),
    iso(120.0, 124.0, 127.0, 132.0, LIBRARY_273),
    iso(125.0, 129.0, 132.0, 137.0, LIBRARY_273),
    iso(130.0, 134.0, 137.0, 144.0, LIBRARY_273),
    iso(140.0, 144.0, 147.0, 155.0, LIBRARY_273),
    iso(150.0, 155.0, 158.0, 165.0, LIBRARY_273),
    bs(1.6, 1.7, 1.8, 2.0, READ_4186),
    bs(2.0, 2.2, 2.4, 2.6, READ_4186),
    bs(2.5, 2.7, 2.9, 3.1, READ_4186),
    bs(3.0, 3.2, 3.4, 3.6, READ_4186),
    bs(4.0, 4.3, 4.5, 4.8, READ_4186),
    bs(5.0, 5.3, 5.5, 5.8, READ_4186),
    bs(6.0, 6.4, 6.6, 7.0, READ_4186),
    bs(7.0, 7.4, 7.6, 8.0, READ_4186),
    bs(8.0, 8.4, 9.0, 10.0, COPIED_4186),
    bs(10.0, 10.5, 11.0, 12.0, COPIED_4186),
    bs(12.0, 13.0, 14.0, 15.0, READ_4186),
    bs(14.0, 15.0, 16.0, 17.0, READ_4186),
    bs(16.0, 17.0, 18.0, 19.0, READ_4186),
    bs(18.0, 19.0, 20.0, 21.0, COPIED_4186),
    bs(20.0, 21.0, 22.0, 24.0, COPIED_4186),
    bs(22.0, 23.0, 24.0, 26.0, READ_4186),
    bs(24.0, 25.0, 26.0, 28.0, READ_4186),
    bs(27.0, 28.0, 30.0, 32.0, READ_4186),
    bs(30.0, 31.0, 33.0, 35.0, READ_4186),
    bs(33.0, 34.0, 36.0, 38.0, COPIED_4186),
    bs(36.0, 37.0, 39.0, 42.0, READ_4186),
    bs(39.0, 40.0, 42.0, 45.0, READ_4186),
    bs(42.0, 43.0, 45.0, 48.0, READ_4186),
    bs(45.0, 46.0, 48.0, 52.0, COPIED_4186),
    bs(48.0, 50.0, 52.0, 56.0, COPIED_4186),
    bs(52.0, 54.0, 56.0, 62.0, COPIED_4186),
    bs(56.0, 58.0, 62.0, 66.0, READ_4186),
    bs(60.0, 62.0, 66.0, 70.0, READ_4186),
    bs(64.0, 66.0, 70.0, 74.0, READ_4186),
    bs(68.0, 70.0, 74.0, 78.0, READ_4186),
    bs(72.0, 74.0, 78.0, 82.0, COPIED_4186),
    bs(76.0, 78.0, 82.0, 86.0, READ_4186),
    bs(80.0, 82.0, 86.0, 91.0, READ_4186),
    bs(85.0, 87.0, 91.0, 96.0, COPIED_4186),
    bs(90.0, 93.0, 96.0, 101.0, COPIED_4186),
    bs(95.0, 98.0, 101.0, 107.0, COPIED_4186),
    bs(100.0, 104.0, 107.0, 112.0, COPIED_4186),
    bs(105.0, 109.0, 112.0, 117.0, COPIED_4186),
    bs(110.0, 114.0, 117.0, 122.0, COPIED_4186),
    bs(115.0, 119.0, 122.0, 127.0, COPIED_4186),
    bs(120.0, 124.0, 127.0, 132.0, COPIED_4186),
    bs(125.0, 129.0, 132.0, 137.0, COPIED_4186),
    bs(130.0, 134.0, 137.0, 144.0, COPIED_4186),
    bs(140.0, 144.0, 147.0, 155.0, COPIED_4186),
    bs(150.0, 155.0, 158.0, 165.0, COPIED_4186),
];
