//! The nearest drills each way, in every series.

use crate::tables::drills::{self, Drill, SAME_SIZE, Series};
use crate::units::{Length, in_mm, mm};

/// A drill further off than this is no neighbour: it would not be taken in the place of the other.
const NEAR: Length = mm(0.5);

/// A drill near a wanted size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbour {
    /// The drill.
    pub drill: &'static Drill,
    /// Drill less wanted size: negative when the drill is the smaller.
    pub error: Length,
}

/// The two drills of one series that a size lies between.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbours {
    /// The series.
    pub series: Series,
    /// The largest drill not above the size; `None` below the series.
    pub below: Option<Neighbour>,
    /// The smallest drill above the size; `None` beyond the series.
    pub above: Option<Neighbour>,
}

/// The drills on each side of a size, series by series; an equal drill counts as below.
///
/// # Examples
/// 2.05 mm lies just under No. 46, which is 2.0574 mm.
/// ```
/// use holewright_core::{calc::neighbours::nearest, tables::drills::Series, units::{mm, print}};
/// let [number, _, _, metric] = nearest(mm(2.05));
/// assert_eq!(number.series, Series::Number);
/// assert_eq!(number.above.unwrap().drill.label, "No. 46");
/// assert_eq!(print::mm(number.above.unwrap().error, 4), "0.0074 mm");
/// assert_eq!(metric.below.unwrap().drill.label, "2.05 mm");
/// assert_eq!(metric.above.unwrap().drill.label, "2.1 mm");
/// ```
#[must_use]
pub fn nearest(diameter: Length) -> [Neighbours; 4] {
    Series::ALL.map(|series| in_series(series, diameter))
}

/// The neighbours of a drill, none further off than half a millimetre: in its own series the next
/// smaller and the next larger.
///
/// # Examples
/// ```
/// use holewright_core::{calc::neighbours::around, tables::drills::{find, Series}};
/// let [number, ..] = around(find(Series::Number, "46").unwrap());
/// assert_eq!(number.below.unwrap().drill.label, "No. 47");
/// assert_eq!(number.above.unwrap().drill.label, "No. 45");
/// // Letter A, 3.9 mm larger, is no neighbour of it.
/// let [_, letter, ..] = around(find(Series::Number, "46").unwrap());
/// assert_eq!((letter.below, letter.above), (None, None));
/// ```
#[must_use]
pub fn around(drill: &Drill) -> [Neighbours; 4] {
    nearest(drill.diameter)
        .map(|found| {
            if found.series == drill.series {
                let smaller = in_series(drill.series, drill.diameter - SAME_SIZE * 2.0).below;
                let below = smaller.map(|near| near_to(near.drill, drill.diameter));
                Neighbours { below, ..found }
            } else {
                found
            }
        })
        .map(|found| Neighbours {
            below: found.below.filter(is_near),
            above: found.above.filter(is_near),
            ..found
        })
}

fn is_near(neighbour: &Neighbour) -> bool {
    in_mm(neighbour.error).abs() <= in_mm(NEAR + SAME_SIZE)
}

fn in_series(series: Series, diameter: Length) -> Neighbours {
    let drills = drills::in_series(series);
    let split = drills.partition_point(|drill| drill.diameter <= diameter + SAME_SIZE);
    let (below, above) = drills.split_at(split);
    Neighbours {
        series,
        below: below.last().map(|drill| near_to(drill, diameter)),
        above: above.first().map(|drill| near_to(drill, diameter)),
    }
}

fn near_to(drill: &'static Drill, diameter: Length) -> Neighbour {
    Neighbour { drill, error: drill.diameter - diameter }
}
