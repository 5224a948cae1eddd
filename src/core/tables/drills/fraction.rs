//! Fractional drills, 1/64 in to 1 in by 64ths.

use super::{Drill, Series};
use crate::tables::source::Source;
use crate::units::{Fraction, inch};

/// The extent of the series; the sizes are exact.
pub(super) const SOURCE: Source = Source::published("ANSI B94.11M-1979, 1/64 in to 1 in by 64ths");

/// The drills of the series.
pub(super) fn drills() -> impl Iterator<Item = Drill> {
    (1..=64).map(|sixty_fourths| {
        let fraction = lowest_terms(sixty_fourths);
        let name = fraction.to_string();
        Drill {
            series: Series::Fraction,
            size: name.replace('/', "-"),
            label: format!("{name} in"),
            diameter: inch(fraction.inches()),
        }
    })
}

/// So many 64ths of an inch, one inch at most, as it is spoken: 6 is 3/32.
const fn lowest_terms(sixty_fourths: u8) -> Fraction {
    let (mut numerator, mut denominator) = (sixty_fourths, 64);
    while numerator.is_multiple_of(2) && denominator > 1 {
        numerator /= 2;
        denominator /= 2;
    }
    if denominator == 1 {
        Fraction { whole: numerator, numerator: 0, denominator }
    } else {
        Fraction { whole: 0, numerator, denominator }
    }
}
