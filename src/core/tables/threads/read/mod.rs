//! Reading the thread names people type: `5BA`, `M3 x .5`, `1/4" Whit`, `1/4x40 ME`, `#4-40`.
//!
//! Whatever can be meant by more than one thread is asked, never guessed: `1/4` alone is BSW, BSF,
//! brass, ME, Unified or pipe. Leaves out looking a thread up by what it measures.

mod deep;
mod figure;
mod names;
mod nearest;
mod size;
mod token;
mod usual;
mod wording;

use super::{SystemId, Thread, find};
use crate::units::read::{one_of, plain, shown};
use wording::Wording;

pub use deep::with_depth;
pub use usual::{AsMeant, Taken, as_meant, is_use};

/// The most characters the name of a thread may have.
const LONGEST: usize = 60;

/// Which way a thread turns.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// The usual way.
    #[default]
    Right,
    /// Marked LH.
    Left,
}

/// A thread as typed, with its hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Read {
    /// The row of the table.
    pub thread: &'static Thread,
    /// Right unless the left hand is written.
    pub hand: Hand,
}

/// Why a thread could not be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReadError {
    /// No thread has this name.
    #[error(
        "“{typed}” is no thread held here. {}{}Write a thread like 5 BA, M3, 1/4 BSW or 1/4 x 40 ME.",
        not_covered(typed),
        near(nearest)
    )]
    Unknown {
        /// What was typed.
        typed: String,
        /// Threads like it, nearest first; empty where nothing like a size was typed.
        nearest: Vec<&'static Thread>,
    },
    /// More than one thread can be meant, or no system is named.
    #[error(
        "“{typed}” could be {}: write the system with the size.",
        one_of(&designations(candidates))
    )]
    Ambiguous {
        /// What was typed.
        typed: String,
        /// The threads that can be meant, in the order of the tables. Where only a size was
        /// written there may be just one: that is still a question.
        candidates: Vec<&'static Thread>,
    },
    /// Nothing was typed.
    #[error("no thread is written. Write one like 5 BA, M3, 1/4 BSW or 1/4 x 40 ME.")]
    Empty,
    /// Too much was typed to be one thread.
    #[error("that is too long for one thread. Write one like 5 BA, M3, 1/4 BSW or 1/4 x 40 ME.")]
    TooLong,
}

/// Reads one thread; a written hand is understood and left to [`read_with_hand`].
///
/// A system and a size name a thread, and so do a size and a pitch where only one thread has both.
/// A pitch beside the system may be left out or must be right. `M8` is the coarse one. The usual
/// classes of fit on drawings (6H, 6g, 2A, 2B) are passed over. An address, `ba/5`, reads to itself.
///
/// # Errors
/// [`ReadError`] holds what was typed with the threads like it or those that can be meant.
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::{find, read::{ReadError, read}};
/// assert_eq!(read("No. 5 B.A.").ok(), find("ba", "5"));
/// assert_eq!(read("5 BA 0.59").ok(), find("ba", "5"));
/// assert!(matches!(read("5 BA x 0.6"), Err(ReadError::Unknown { nearest, .. })
///     if nearest.first().copied() == find("ba", "5")));
/// assert!(matches!(read("5"), Err(ReadError::Ambiguous { .. })));
/// ```
pub fn read(typed: &str) -> Result<&'static Thread, ReadError> {
    read_with_hand(typed).map(|read| read.thread)
}

/// Reads one thread and which way it turns: `M8 LH`, `1/4 BSP left hand`.
///
/// # Errors
/// As [`read`].
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::read::{Hand, read_with_hand};
/// assert_eq!(read_with_hand("5 BA LH").map(|read| read.hand), Ok(Hand::Left));
/// assert_eq!(read_with_hand("5 BA").map(|read| read.hand), Ok(Hand::Right));
/// ```
pub fn read_with_hand(typed: &str) -> Result<Read, ReadError> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(ReadError::TooLong);
    }
    let text = plain(typed);
    if text.is_empty() {
        return Err(ReadError::Empty);
    }
    let wording = Wording::of(&text);
    match meant(&text, &wording) {
        Ok(read) => Ok(read),
        Err(candidates) if candidates.is_empty() => {
            let nearest = nearest::nearest(&wording);
            Err(ReadError::Unknown { typed: shown(typed), nearest })
        }
        Err(candidates) => Err(ReadError::Ambiguous { typed: shown(typed), candidates }),
    }
}

/// The thread that [`read`] would read, without looking for threads like it: for a caller that tries
/// many texts.
///
/// # Errors
/// The threads that can be meant, in the order of the tables; none where the text is no thread.
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::{find, read::candidates};
/// assert_eq!(candidates("5 BA").ok(), find("ba", "5"));
/// assert!(candidates("1/4").is_err_and(|threads| threads.len() > 1));
/// assert_eq!(candidates("gunmetal"), Err(Vec::new()));
/// ```
pub fn candidates(typed: &str) -> Result<&'static Thread, Vec<&'static Thread>> {
    if typed.chars().nth(LONGEST).is_some() {
        return Err(Vec::new());
    }
    let text = plain(typed);
    meant(&text, &Wording::of(&text)).map(|read| read.thread)
}

/// The one thread that is meant, or those that can be.
fn meant(text: &str, wording: &Wording<'_>) -> Result<Read, Vec<&'static Thread>> {
    let at_address = |joint| {
        let thread = at_address(text, joint)?;
        Some(Read { thread, hand: Hand::Right })
    };
    if let Some(read) = at_address('/') {
        return Ok(read);
    }
    let candidates = if wording.is_understood { wording.threads() } else { Vec::new() };
    match candidates.as_slice() {
        // "me-40 1-4" is taken for an address only where it says nothing else.
        [] => at_address(' ').ok_or(candidates),
        [thread] if wording.settles(thread) => Ok(Read { thread, hand: wording.hand }),
        _ => Err(candidates),
    }
}

/// The systems that a name without a size can mean, in the order of the tables; empty where it is no
/// such name.
///
/// # Examples
/// ```
/// use holewright_core::tables::threads::{SystemId, read::systems};
/// assert_eq!(systems("brass thread"), [SystemId::Bsb]);
/// assert_eq!(systems("Gas"), [SystemId::Bspp, SystemId::Bspt]);
/// assert_eq!(systems("5 BA"), []);
/// ```
#[must_use]
pub fn systems(typed: &str) -> Vec<SystemId> {
    if typed.chars().nth(LONGEST).is_some() {
        return Vec::new();
    }
    let text = plain(typed);
    let wording = Wording::of(&text);
    if !wording.is_understood || !wording.is_only_a_system() {
        return Vec::new();
    }
    let all = super::systems().iter().map(|system| system.id);
    all.filter(|system| wording.has_system(*system)).collect()
}

/// The thread at an address, `ba/5` or `/threads/ba/5`, with this between system and size.
fn at_address(text: &str, joint: char) -> Option<&'static Thread> {
    let (system, size) = text.strip_prefix("/threads/").unwrap_or(text).split_once(joint)?;
    find(system, size)
}

fn designations(threads: &[&'static Thread]) -> Vec<&'static str> {
    threads.iter().map(|thread| thread.designation).collect()
}

fn near(nearest: &[&'static Thread]) -> String {
    if nearest.is_empty() {
        String::new()
    } else {
        format!("The nearest are {}. ", designations(nearest).join(", "))
    }
}

fn not_covered(typed: &str) -> &'static str {
    let typed = typed.to_lowercase();
    let is_named = ["acme", "trapez", "square", "buttress"].iter().any(|form| typed.contains(form));
    if is_named {
        "Square, Acme, trapezoidal and buttress threads are not covered yet. "
    } else {
        ""
    }
}
