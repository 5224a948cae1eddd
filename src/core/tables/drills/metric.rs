//! Metric drills, 0.20 to 25.0 mm: the 227 sizes of the BS 328 rule.

use super::{Drill, Series};
use crate::tables::source::Source;
use crate::units::{mm, print};

/// The rule. The page it was read on counts 230 sizes; the rule as printed makes 227.
pub(super) const SOURCE: Source = Source::published("BS 328, sizes from 0.2 to 25.0 mm");

/// The drills of the series.
pub(super) fn drills() -> impl Iterator<Item = Drill> {
    hundredths().map(|size| {
        let millimetres = f64::from(size) / 100.0;
        let name = print::trimmed(millimetres, 2);
        Drill {
            series: Series::Metric,
            label: format!("{name} mm"),
            size: name,
            diameter: mm(millimetres),
        }
    })
}

/// The sizes in hundredths of a millimetre, so that no step gathers binary noise.
fn hundredths() -> impl Iterator<Item = u16> {
    let below_one = (20..100).step_by(10).flat_map(|tenth| [0, 2, 5, 8].map(|step| tenth + step));
    below_one
        .chain((100..=295).step_by(5))
        .chain((300..=1390).step_by(10))
        .chain((1400..=2500).step_by(25))
}
