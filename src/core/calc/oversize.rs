//! How large a drilled hole really comes out.
//!
//! The table was measured in steel and cast iron. Light metals and plastics may close in below the
//! drill's own size; the material's row says so.

use crate::tables::source::Source;
use crate::units::{Length, in_inch, inch};

/// Recalled: the handbook's table was not read.
const TABLE: Source = Source::memory(
    "Machinery's Handbook, oversize diameters in drilling, over 2800 holes in steel and cast iron",
);

/// Drill, then oversize least, mean and most, in inches.
const ROWS: [[f64; 4]; 6] = [
    [0.0625, 0.001, 0.0015, 0.002],
    [0.125, 0.001, 0.003, 0.0045],
    [0.25, 0.0025, 0.004, 0.0065],
    [0.5, 0.003, 0.005, 0.008],
    [0.75, 0.003, 0.005, 0.008],
    [1.0, 0.004, 0.007, 0.009],
];

/// How the table was used for a size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Between two rows, in proportion.
    Within,
    /// Below the first row, 1/16 in: its oversize is scaled down with the drill (common practice).
    Below,
    /// Beyond the last row, 1 in: its oversize is kept (common practice).
    Beyond,
}

/// The likely size of a drilled hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Likely {
    /// Average of the smallest: careful work lies between this and the mean.
    pub least: Length,
    /// The mean.
    pub mean: Length,
    /// Average of the largest.
    pub largest: Length,
    /// How the table was used.
    pub reach: Reach,
    /// Where it comes from: unconfirmed.
    pub source: Source,
}

/// The likely size of a hole drilled with this drill.
///
/// # Source
/// Machinery's Handbook, oversize diameters in drilling: from memory, unconfirmed.
///
/// # Examples
/// A 1/8 in drill makes a hole 0.003 in larger on the mean, 0.0045 at most.
/// ```
/// use holewright_core::{calc::oversize::{likely, Reach}, units::{inch, print}};
/// let eighth = likely(inch(0.125));
/// assert_eq!(print::inch(eighth.mean, 4), "0.1280 in");
/// assert_eq!(print::inch(eighth.largest, 4), "0.1295 in");
/// // Half the first row's drill, half its oversize.
/// let small = likely(inch(0.03125));
/// assert_eq!((print::inch(small.mean, 5), small.reach), ("0.03200 in".to_owned(), Reach::Below));
/// ```
#[must_use]
pub fn likely(drill: Length) -> Likely {
    let size = in_inch(drill);
    let ([least, mean, most], reach) = oversize(size);
    Likely {
        least: inch(size + least),
        mean: inch(size + mean),
        largest: inch(size + most),
        reach,
        source: TABLE,
    }
}

/// Least, mean and most oversize for a drill, in inches.
fn oversize(size: f64) -> ([f64; 3], Reach) {
    let [first, .., last] = ROWS;
    let between = |low: [f64; 4], high: [f64; 4]| {
        let [from, low @ ..] = low;
        let [to, high @ ..] = high;
        let part = (size - from) / (to - from);
        let mix = |(low, high): (f64, f64)| low + (high - low) * part;
        let [least, mean, most] = low;
        let [high_least, high_mean, high_most] = high;
        [(least, high_least), (mean, high_mean), (most, high_most)].map(mix)
    };
    if size < first[0] {
        // A row of zeros at zero makes the first row's oversize shrink with the drill.
        return (between([0.0; 4], first), Reach::Below);
    }
    let pairs = ROWS.into_iter().zip(ROWS.into_iter().skip(1));
    match pairs.into_iter().find(|(_, high)| size <= high[0]) {
        Some((low, high)) => (between(low, high), Reach::Within),
        None => {
            let [_, figures @ ..] = last;
            (figures, Reach::Beyond)
        }
    }
}
