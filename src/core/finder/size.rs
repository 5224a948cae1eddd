//! What has the size that was typed: threads of that major diameter, drills near it.

use super::gather::Gathered;
use super::score::{NEIGHBOUR, SAME_SIZE};
use super::thing::Thing;
use crate::tables::drills::{self, Drill, Series, in_series};
use crate::tables::threads::{self, Basic};
use crate::units::{Length, in_mm, mm, print};

/// How far a major diameter may be from a size that was typed for it: thousandths of an inch and
/// hundredths of a millimetre are the last places people write.
const SAME: Length = mm(0.0127);
/// A drill farther off than this share of the size is no neighbour.
const FARTHEST: f64 = 0.05;

/// The threads with this major diameter. Says whether there was one.
pub(super) fn gather_threads(size: Length, gathered: &mut Gathered) -> bool {
    let mut is_found = false;
    for thread in threads::all() {
        let Basic::Major(major) = thread.basic else { continue };
        if off(major.length(), size).abs() <= in_mm(SAME) {
            let why = format!("major diameter {}", print::mm(major.length(), 3));
            gathered.add(SAME_SIZE, Thing::Thread(thread).hit_since(why));
            is_found = true;
        }
    }
    is_found
}

/// The nearest drill of each other series to a drill.
pub(super) fn gather_neighbours(drill: &Drill, gathered: &mut Gathered) {
    let others = Series::ALL.into_iter().filter(|series| *series != drill.series);
    gather_nearest(others, drill.diameter, &drill.label, gathered);
}

/// The nearest drill of each series to a size that no drill has.
pub(super) fn gather_near_drills(size: Length, typed: &str, gathered: &mut Gathered) {
    gather_nearest(Series::ALL.into_iter(), size, typed, gathered);
}

/// The nearest drill of each of some series to a size, the nearest of all first.
fn gather_nearest(
    series: impl Iterator<Item = Series>,
    size: Length,
    named: &str,
    gathered: &mut Gathered,
) {
    let mut near: Vec<(f64, &'static Drill)> = series
        .filter_map(|series| nearest(series, size))
        .map(|drill| (off(drill.diameter, size), drill))
        .filter(|(off, _)| off.abs() <= in_mm(size) * FARTHEST)
        .collect();
    near.sort_by(|(one, _), (other, _)| one.abs().total_cmp(&other.abs()));
    for ((off, drill), score) in near.into_iter().zip((1..=NEIGHBOUR).rev()) {
        let why = if off.abs() < in_mm(drills::SAME_SIZE) {
            format!("same size as {named}")
        } else {
            let side = if off > 0.0 { "larger" } else { "smaller" };
            format!("neighbour of {named}, {} {side}", print::mm(mm(off.abs()), 3))
        };
        gathered.add(score, Thing::Drill(drill).hit_since(why));
    }
}

/// The drill of a series nearest to a size.
fn nearest(series: Series, size: Length) -> Option<&'static Drill> {
    let drills = in_series(series);
    let place = drills.partition_point(|drill| in_mm(drill.diameter) < in_mm(size));
    let near = drills.iter().skip(place.saturating_sub(1)).take(2).copied();
    near.min_by(|one, other| {
        let apart = |drill: &Drill| off(drill.diameter, size).abs();
        apart(one).total_cmp(&apart(other))
    })
}

/// One size less another, in millimetres.
fn off(size: Length, other: Length) -> f64 {
    in_mm(size) - in_mm(other)
}
