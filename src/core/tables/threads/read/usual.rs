//! What a model engineer usually means where a text could mean more than one thread, or says more
//! than a thread's name: for fields whose answer says what was taken.

use super::super::{Basic, SystemId, Thread};
use super::wording::Wording;
use super::{Hand, Read, ReadError, read_with_hand};
use crate::units::read::{plain, worded};
use crate::units::{Length, in_mm, inch};

/// A thread as it is usually meant.
#[derive(Clone, Debug, PartialEq)]
pub struct AsMeant {
    /// The row of the table.
    pub thread: &'static Thread,
    /// Right unless the left hand is written.
    pub hand: Hand,
    /// What it was taken for and from what, where more than one thread could be meant.
    pub taken: Option<Taken>,
}

/// A choice between threads that a text could mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// The thread it was taken for.
    pub thread: &'static Thread,
    /// The others it could mean, in the order of the tables.
    pub others: Vec<&'static Thread>,
    /// Why that one: words that follow a colon.
    pub why: &'static str,
}

const MODEL_ENGINEER: &str =
    "a diameter by 40, 32 or 26 threads an inch is the Model Engineer thread unless UN is said";
const PARALLEL: &str = "BSP is the parallel thread unless taper is said";
const FINEST_SMALL: &str = "up to 1/4 in the Model Engineer thread is 40 threads an inch";
const DASHED: &str = "with a dash it is written as Unified threads are";
const WHITWORTH: &str =
    "a size by its threads an inch is Whitworth form, BSW or BSF, before Unified";
const TWENTY_SIX: &str =
    "a cycle thread is 26 threads an inch unless 20 is said, as on pedals and older hubs";
const UNIFIED: &str = "of these it is the one in general use";

/// Up to this diameter `ME` alone is 40 threads an inch.
const MOST_FOR_FORTY: Length = inch(0.25);

/// Words about a hole, a tap, a head or a use, which narrow nothing: `tap 5 BA`, `2 BA cheese head`.
#[rustfmt::skip]
const USES: &[&str] = &[
    "allen", "bolt", "bolts", "cap", "cheese", "cheesehead", "countersunk", "csk", "cup", "die",
    "drill", "for", "grub", "head", "headed", "heads", "hex", "hexagon", "hole", "holes",
    "instrument", "machine", "nut", "nuts", "pan", "point", "raised", "round", "roundhead", "rod",
    "screw", "screws", "set", "setscrew", "setscrews", "set-screw", "cheese-head", "size", "socket", "stud", "studding",
    "studs", "tap", "tapped", "tapping", "taps", "thread", "threaded", "threads", "union", "washer",
];

/// Reads one thread as [`read_with_hand`] does; where several can be meant it takes the usual one and
/// says so, and words of heads and uses do not matter.
///
/// # Source
/// Common practice, no source: what drawings of the hobby mean.
///
/// # Errors
/// As [`read_with_hand`], where no reading is the usual one.
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::{find, read::as_meant};
/// let read = as_meant("1/4 x 40").unwrap();
/// assert_eq!(Some(read.thread), find("me-40", "1-4"));
/// assert!(read.taken.unwrap().others.contains(&find("uns", "1-4-40").unwrap()));
/// assert_eq!(as_meant("tap 5 BA").unwrap().taken, None);
/// let pedal = as_meant("9/16 BSC").unwrap().taken.unwrap();
/// assert_eq!(pedal.others, [find("bsc", "9-16x20").unwrap()]);
/// assert_eq!(as_meant("9/16 x 26 BSC").unwrap().taken, None);
/// assert!(as_meant("1/4").is_err());
/// ```
pub fn as_meant(typed: &str) -> Result<AsMeant, ReadError> {
    let as_typed = of(typed);
    let Err(ReadError::Unknown { .. }) = as_typed else { return as_typed };
    let bare = without_uses(&worded(&plain(typed)));
    if bare.is_empty() { as_typed } else { of(&bare).or(as_typed) }
}

/// Whether a word is about a hole, a tap, a head or a use, and so narrows nothing.
#[must_use]
pub fn is_use(word: &str) -> bool {
    USES.contains(&word)
}

/// The text without words of heads and uses.
fn without_uses(text: &str) -> String {
    let says = |word: &&str| !is_use(word.trim_matches([',', '.', '(', ')', ';']));
    text.split(' ').filter(says).collect::<Vec<_>>().join(" ")
}

fn of(typed: &str) -> Result<AsMeant, ReadError> {
    match read_with_hand(typed) {
        Ok(Read { thread, hand }) => {
            Ok(AsMeant { thread, hand, taken: of_two_pitches(thread, typed) })
        }
        Err(ReadError::Ambiguous { typed: shown, candidates }) => {
            let text = plain(typed);
            let wording = Wording::of(&text);
            match usual(&candidates, &wording) {
                Some((thread, why)) => {
                    let others = candidates.into_iter().filter(|other| *other != thread).collect();
                    let taken = Some(Taken { thread, others, why });
                    Ok(AsMeant { thread, hand: wording.hand, taken })
                }
                None => Err(ReadError::Ambiguous { typed: shown, candidates }),
            }
        }
        Err(error) => Err(error),
    }
}

/// A cycle thread whose diameter is made with another pitch too, where no pitch was typed.
fn of_two_pitches(thread: &'static Thread, typed: &str) -> Option<Taken> {
    let Basic::Major(major) = thread.basic else { return None };
    if thread.system != SystemId::Bsc || plain(typed).contains("26") {
        return None;
    }
    let is_other = |other: &&Thread| **other != *thread && other.basic == Basic::Major(major);
    let others: Vec<_> = thread.system.system().threads.iter().filter(is_other).collect();
    let is_finer = others.iter().all(|other| other.pitch.length() > thread.pitch.length());
    (!others.is_empty() && is_finer).then_some(Taken { thread, others, why: TWENTY_SIX })
}

/// The usual one of some threads, and why.
fn usual(
    candidates: &[&'static Thread],
    wording: &Wording<'_>,
) -> Option<(&'static Thread, &'static str)> {
    use SystemId::{Bsb, Bsf, Bspp, Bsw, Me26, Me32, Me40, Unc, Unef, Unf};
    let only_of = |systems: &[SystemId]| {
        let mut found = candidates.iter().filter(|thread| systems.contains(&thread.system));
        found.next().copied().filter(|_| found.next().is_none())
    };
    if wording.names_a_system() {
        let forty = only_of(&[Me40]).filter(|_| candidates.iter().all(|it| is_small_me(it)));
        let pipe = only_of(&[Bspp]).map(|thread| (thread, PARALLEL));
        return pipe.or(forty.map(|thread| (thread, FINEST_SMALL)));
    }
    if !candidates.iter().all(|thread| wording.settles(thread)) {
        return None;
    }
    let model = only_of(&[Me40, Me32, Me26]).map(|thread| (thread, MODEL_ENGINEER));
    let dashed = only_of(&[Unc, Unf, Unef]).filter(|_| wording.is_dashed());
    // 26 threads an inch is BSF and brass at 1/4 in: neither is the usual one.
    let whitworth = only_of(&[Bsw, Bsf]).filter(|_| only_of(&[Bsb]).is_none());
    let unified = only_of(&[Unc, Unf]).filter(|_| only_of(&[Bsb]).is_none());
    model
        .or(dashed.map(|thread| (thread, DASHED)))
        .or(whitworth.map(|thread| (thread, WHITWORTH)))
        .or(unified.map(|thread| (thread, UNIFIED)))
}

fn is_small_me(thread: &Thread) -> bool {
    let is_me = matches!(thread.system, SystemId::Me40 | SystemId::Me32 | SystemId::Me26);
    match thread.basic {
        Basic::Major(major) => is_me && in_mm(major.length()) <= in_mm(MOST_FOR_FORTY) + 1e-6,
        Basic::EffectiveAtGauge(_) => false,
    }
}
