//! Which threads are like one that is not held: offered, never taken.

use super::Thread;
use super::figure::{Figure, SizeReading, Unit};
use super::size::{self, NamedThread, Nominal, has_pitch, is_called};
use super::wording::Wording;

/// How many threads are offered.
const MOST: usize = 5;
/// A size more than half as large again is no longer near.
const FARTHEST: f64 = 0.5;

/// The threads nearest to what was typed, nearest first.
///
/// First the size in the system named with another pitch, then the size and pitch in another
/// system, then near sizes in the system, then the size in any system, then near sizes in any.
pub(super) fn nearest(wording: &Wording<'_>) -> Vec<&'static Thread> {
    let readings = wording.readings();
    let mut ranked: Vec<(Rank, f64, &'static Thread)> = size::named()
        .iter()
        .filter_map(|named| {
            let ranks = readings.iter().filter_map(|reading| rank(wording, named, reading));
            let best = ranks.min_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)))?;
            Some((best.0, best.1, named.thread))
        })
        .collect();
    ranked.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    ranked.into_iter().take(MOST).map(|(_, _, thread)| thread).collect()
}

#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    OtherPitch,
    OtherSystem,
    NearInSystem,
    SameSize,
    Near,
}

fn rank(
    wording: &Wording<'_>,
    named: &NamedThread,
    reading: &SizeReading<'_>,
) -> Option<(Rank, f64)> {
    let is_system = wording.has_system(named.thread.system);
    if is_called(named, &reading.size) {
        let is_pitch = reading.pitch.is_some_and(|pitch| has_pitch(named.thread, &pitch));
        let rank = if is_system {
            Rank::OtherPitch
        } else if is_pitch {
            Rank::OtherSystem
        } else {
            Rank::SameSize
        };
        return Some((rank, 0.0));
    }
    let off = off_by(named.nominal, &reading.size).filter(|off| *off <= FARTHEST)?;
    let rank = if is_system && wording.names_a_system() { Rank::NearInSystem } else { Rank::Near };
    Some((rank, off))
}

/// How far a typed size is from the size in a name, as a share of the larger; `None` for another
/// kind of size.
fn off_by(nominal: Nominal, size: &Figure<'_>) -> Option<f64> {
    let named = match (nominal, size.unit) {
        (Nominal::Number { digits, .. }, None)
            if size.number.places() == 0 && !size.number.is_vulgar() =>
        {
            digits.parse().ok()?
        }
        (Nominal::Inch(inches), None | Some(Unit::Inch)) if !size.is_number => inches,
        (Nominal::Mm(mm), None | Some(Unit::Mm)) if !size.is_number && !size.number.is_vulgar() => {
            mm
        }
        _ => return None,
    };
    let value = size.number.value;
    let larger = named.max(value);
    (larger > 0.0).then(|| (named - value).abs() / larger)
}
