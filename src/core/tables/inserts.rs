//! Wire thread inserts: the hole before their tap, as a maker prints it, and how they are to sit.

use crate::tables::source::Source;
use crate::tables::threads::{Thread, find};
use crate::units::Printed;

/// The hole before an insert's tap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InsertHole {
    /// The system of the screw that the insert takes: `unc`.
    system: &'static str,
    /// Its size in address dress: `4-40`.
    size: &'static str,
    /// The least hole.
    pub least: Printed,
    /// The largest hole.
    pub most: Printed,
    /// The drill that the maker gives for it.
    pub drill: Printed,
    /// Where it was read.
    pub source: Source,
}

/// How an insert is to sit, read in a maker's design notes.
pub const DESIGN: Source = Source::published("a wire insert maker's design notes");
/// The holes before a forming tap.
const FORMING: Source = Source::published(
    "a thread tool maker's catalogue, p. 209, holes before forming for wire inserts, 2B",
);

const fn row(
    system: &'static str,
    size: &'static str,
    [least, most, drill]: [f64; 3],
) -> InsertHole {
    let inch = Printed::Inch;
    InsertHole {
        system,
        size,
        least: inch(least),
        most: inch(most),
        drill: inch(drill),
        source: FORMING,
    }
}

#[rustfmt::skip]
static HOLES: [InsertHole; 16] = [
    row("unc", "2-56", [0.1004, 0.1016, 0.1004]),
    row("unc", "4-40", [0.1323, 0.1339, 0.1327]),
    row("unc", "6-32", [0.1630, 0.1646, 0.1634]),
    row("unc", "8-32", [0.1894, 0.1921, 0.1909]),
    row("unc", "10-24", [0.2228, 0.2256, 0.2244]),
    row("unc", "1-4-20", [0.2894, 0.2929, 0.2913]),
    row("unc", "5-16-18", [0.3563, 0.3598, 0.3583]),
    row("unc", "3-8-16", [0.4240, 0.4287, 0.4272]),
    row("unc", "7-16-14", [0.4933, 0.4976, 0.4961]),
    row("unc", "1-2-13", [0.5602, 0.5646, 0.5630]),
    row("unf", "4-48", [0.1291, 0.1311, 0.1299]),
    row("unf", "6-40", [0.1583, 0.1606, 0.1594]),
    row("unf", "8-36", [0.1866, 0.1882, 0.1870]),
    row("unf", "10-32", [0.2150, 0.2177, 0.2165]),
    row("unf", "1-4-28", [0.2783, 0.2811, 0.2795]),
    row("unf", "5-16-24", [0.3457, 0.3480, 0.3465]),
];

/// Every hole held, for a tap that forms, smallest first in each system.
#[must_use]
pub fn all() -> &'static [InsertHole] {
    &HOLES
}

impl InsertHole {
    /// The thread of the screw that the insert takes.
    ///
    /// # Examples
    /// ```
    /// use holewright_core::tables::inserts::all;
    /// assert!(all().iter().all(|hole| hole.thread().is_some()));
    /// ```
    #[must_use]
    pub fn thread(&self) -> Option<&'static Thread> {
        find(self.system, self.size)
    }
}
