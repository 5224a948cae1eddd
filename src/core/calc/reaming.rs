//! The hole to leave for a reamer, by hand and in a machine, as a range with every source beside it.

use super::drill_feed::drill_feed;
use crate::tables::drills::{Drill, SAME_SIZE};
use crate::tables::reaming::{Allowance, Drive, allowances};
use crate::tables::source::Source;
use crate::units::{Length, in_mm, mm};

/// Below this a rule printed without sizes is not counted: it would leave a twentieth of the
/// diameter and more. Our judgement, no source.
const UNSIZED_FROM: Length = mm(5.0);

/// What one source leaves for a reamer, and whether it counts towards the range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PrintedAllowance {
    /// The row.
    pub row: &'static Allowance,
    /// It prints no sizes and the reamer is too small for it: shown, not counted.
    pub counted: bool,
}

/// The hole to leave, one way of turning the reamer.
#[derive(Clone, Debug, PartialEq)]
pub struct Leave {
    /// The least any source leaves on diameter.
    pub least: Length,
    /// The most.
    pub most: Length,
    /// What we go by within that: the middle of the sources that print this size.
    pub aim: Length,
    /// The drills at hand within the range, smallest first.
    pub drills: Vec<&'static Drill>,
    /// Of these, the one nearest the aim; of two equally near the smaller.
    pub take: Option<&'static Drill>,
}

impl Leave {
    /// The smallest hole to leave.
    #[must_use]
    pub fn smallest_hole(&self, reamer: Length) -> Length {
        reamer - self.most
    }

    /// The largest hole to leave.
    #[must_use]
    pub fn largest_hole(&self, reamer: Length) -> Length {
        reamer - self.least
    }
}

/// The hole to leave for a reamer, both ways.
#[derive(Clone, Debug, PartialEq)]
pub struct Reaming {
    /// Turned by hand; none where no source counts.
    pub by_hand: Option<Leave>,
    /// Turned by a machine; none where no source counts.
    pub by_machine: Option<Leave>,
    /// Every source that covers the size.
    pub printed: Vec<PrintedAllowance>,
    /// The most any counted source leaves over the least: how far they differ.
    pub spread: Option<f64>,
}

/// The hole to leave for a reamer of this size, and the drills at hand for it.
///
/// # Source
/// The rows of [`crate::tables::reaming`]; taking the middle of them is common practice.
///
/// # Examples
/// A 3/16 in machine reamer: a maker leaves 0.008 to 0.012 in, a handbook 0.1 to 0.2 mm; 4 mm by hand, 0.1
/// to 0.2 mm.
/// ```
/// use holewright_core::{calc::reaming::reaming, tables::drills, units::{inch, mm, print}};
/// let drills: Vec<_> = drills::all().iter().collect();
/// let machine = reaming(inch(0.1875), &drills).by_machine.unwrap();
/// assert_eq!(print::inch(machine.aim, 3), "0.008 in");
/// let hand = reaming(mm(4.0), &drills).by_hand.unwrap();
/// assert_eq!(print::mm(hand.smallest_hole(mm(4.0)), 2), "3.8 mm");
/// assert_eq!(print::mm(hand.largest_hole(mm(4.0)), 2), "3.9 mm");
/// assert_eq!(hand.take.unwrap().label, "No. 24");
/// ```
#[must_use]
pub fn reaming(reamer: Length, at_hand: &[&'static Drill]) -> Reaming {
    let printed: Vec<PrintedAllowance> = allowances()
        .iter()
        .filter(|row| row.covers(reamer))
        .map(|row| PrintedAllowance { row, counted: row.is_sized() || reamer >= UNSIZED_FROM })
        .collect();
    let counted = || printed.iter().filter(|printed| printed.counted).map(|printed| printed.row);
    let spread = span(counted()).map(|[least, most]| in_mm(most) / in_mm(least));
    Reaming {
        by_hand: leave(reamer, Drive::Hand, counted(), at_hand),
        by_machine: leave(reamer, Drive::Machine, counted(), at_hand),
        spread,
        printed,
    }
}

fn leave(
    reamer: Length,
    drive: Drive,
    counted: impl Iterator<Item = &'static Allowance> + Clone,
    at_hand: &[&'static Drill],
) -> Option<Leave> {
    let of_drive = counted.filter(|row| row.drive == drive || row.drive == Drive::Either);
    let [least, most] = span(of_drive.clone())?;
    let sized = span(of_drive.filter(|row| row.is_sized()));
    let [finest, coarsest] = sized.unwrap_or([least, most]);
    let aim = (finest + coarsest) / 2.0;
    let mut drills: Vec<&'static Drill> = at_hand
        .iter()
        .copied()
        .filter(|drill| {
            let left = reamer - drill.diameter;
            left > least - SAME_SIZE && left < most + SAME_SIZE
        })
        .collect();
    let off = |drill: &Drill| (reamer - drill.diameter - aim).value.abs();
    drills.sort_by(|a, b| a.diameter.value.total_cmp(&b.diameter.value));
    // Of two equally near the smaller, because a drill cuts large.
    let take = drills
        .iter()
        .copied()
        .reduce(|best, drill| if off(drill) < off(best) - SAME_SIZE.value { drill } else { best });
    Some(Leave { least, most, aim, drills, take })
}

/// The least and the most any of the rows leaves.
fn span(rows: impl Iterator<Item = &'static Allowance> + Clone) -> Option<[Length; 2]> {
    let least = rows.clone().map(|row| row.least).min_by(|a, b| a.value.total_cmp(&b.value))?;
    let most = rows.map(|row| row.most).max_by(|a, b| a.value.total_cmp(&b.value))?;
    Some([least, most])
}

/// A reamer's feed as parts of a drill's of its size: two to three times.
const OF_DRILL: [f64; 2] = [2.0, 3.0];

/// Where [`feed`] comes from.
pub const FEED_SOURCE: Source = Source::common_practice(
    "a reamer is fed two to three times as far a turn as a drill of its size; print says only slower and more",
);

/// A machine reamer's feed a turn: two to three times the drill's; none where the drill's is by feel.
///
/// # Source
/// Common practice, no source; TM 1-1500-204-23-9 p. 4-36 has a slower speed and a higher feed than a drill's.
///
/// # Examples
/// A 6 mm drill goes in 0.002 to 0.004 in, so a reamer 0.1 to 0.3 mm.
/// ```
/// use holewright_core::{calc::reaming::feed, units::{mm, print}};
/// let [low, high] = feed(mm(6.0)).unwrap();
/// assert_eq!((print::mm(low, 2), print::mm(high, 2)), ("0.1 mm".into(), "0.3 mm".into()));
/// assert!(feed(mm(0.8)).is_none());
/// ```
#[must_use]
pub fn feed(reamer: Length) -> Option<[Length; 2]> {
    let drill = drill_feed(reamer)?;
    let [least, most] = OF_DRILL;
    Some([drill.low * least, drill.high * most])
}
