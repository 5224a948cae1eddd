//! Threads that are the same under two names, or nearly so.
//!
//! Leaves out whether a near thread would hold: it says how far it is off, and no more.

use std::fmt;

use crate::calc::thread_form::geometry;
use crate::tables::threads::{self, Basic, Form, SystemId, Thread};
use crate::units::{Length, in_mm};

/// A thread of another system that could be taken for this one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LookAlike {
    /// The other thread.
    pub thread: &'static Thread,
    /// How much larger its major diameter is, in percent of this one's; negative when smaller.
    pub major_percent: f64,
    /// How much coarser its pitch is, in percent of this one's; negative when finer.
    pub pitch_percent: f64,
    /// In what they agree.
    pub likeness: Likeness,
}

/// In what two threads agree that are not the same thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Likeness {
    /// Diameter and pitch agree; the thread angle, the profile or the taper does not.
    DiameterAndPitch,
    /// The pitch agrees.
    Pitch,
    /// Neither agrees, both are close.
    Neither,
}

impl fmt::Display for Likeness {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            Self::DiameterAndPitch => "same diameter and pitch, not the same thread",
            Self::Pitch => "same pitch, not the same thread",
            Self::Neither => "looks alike, not the same thread",
        })
    }
}

/// Diameters and pitches that differ by less, in millimetres, are the same.
const SAME_MM: f64 = 0.0005;
/// Beyond this misfit of diameter or of pitch, in percent of the larger, a thread is no look-alike.
const NEAR_PERCENT: f64 = 8.0;
/// How many look-alikes are worth showing.
const NEAR_COUNT: usize = 5;

/// The same thread under another name: same profile, taper, diameter and pitch.
///
/// # Examples
/// 1/8 in BSW is 1/8 in × 40 ME; 3/16 in BSF is 3/16 in × 32 ME.
/// ```
/// use holewright_core::{calc::relations::same_as, tables::threads::find};
/// let names = |system, size| {
///     same_as(find(system, size).unwrap()).map(|other| other.designation).collect::<Vec<_>>()
/// };
/// assert_eq!(names("bsw", "1-8"), ["1/8 in × 40 ME"]);
/// assert_eq!(names("bsf", "3-16"), ["3/16 in × 32 ME"]);
/// assert!(names("metric", "m6").is_empty());
/// ```
pub fn same_as(thread: &Thread) -> impl Iterator<Item = &'static Thread> {
    let this = Size::of(thread);
    threads::all().filter(move |other| !this.is(other) && this.same_thread(&Size::of(other)))
}

/// The look-alikes of other systems, nearest first: those to tell apart before forcing a screw.
///
/// Nearest is by the sum of the two misfits. A thread that is the same as one already listed is not
/// listed again.
///
/// # Examples
/// M6 has the diameter and the pitch of 0 BA, and another thread angle; No. 10-32 UNF passes for
/// 2 BA.
/// ```
/// use holewright_core::{calc::relations::look_alikes, tables::threads::find};
/// let first = |size| look_alikes(find("ba", size).unwrap()).first().copied().unwrap();
/// assert_eq!(first("0").thread.designation, "M6");
/// assert_eq!(first("0").likeness.to_string(), "same diameter and pitch, not the same thread");
/// let two = look_alikes(find("ba", "2").unwrap());
/// assert!(two.iter().any(|other| other.thread.designation == "No. 10-32 UNF"));
/// ```
#[must_use]
pub fn look_alikes(thread: &Thread) -> Vec<LookAlike> {
    let this = Size::of(thread);
    let mut candidates: Vec<(Size, LookAlike)> = threads::all()
        .filter(|other| other.system != thread.system)
        .filter_map(|other| {
            let size = Size::of(other);
            let look_alike = this.compare(&size, other)?;
            Some((size, look_alike))
        })
        .collect();
    candidates.sort_by(|(_, one), (_, other)| one.misfit().total_cmp(&other.misfit()));
    let mut kept: Vec<(Size, LookAlike)> = Vec::with_capacity(NEAR_COUNT);
    for (size, look_alike) in candidates {
        if kept.len() == NEAR_COUNT {
            break;
        }
        if !kept.iter().any(|(already, _)| already.same_thread(&size)) {
            kept.push((size, look_alike));
        }
    }
    kept.into_iter().map(|(_, look_alike)| look_alike).collect()
}

impl LookAlike {
    fn misfit(&self) -> f64 {
        self.major_percent.abs() + self.pitch_percent.abs()
    }
}

/// What makes two threads the same.
#[derive(Clone, Copy)]
struct Size {
    system: SystemId,
    name: &'static str,
    /// The form that cuts it, one name for all that cut the same.
    form: Form,
    tapered: bool,
    major: f64,
    pitch: f64,
}

impl Size {
    fn of(thread: &Thread) -> Self {
        Self {
            system: thread.system,
            name: thread.size,
            form: thread.form().shape().cut_as,
            tapered: thread.taper.is_some(),
            major: in_mm(major(thread)),
            pitch: in_mm(thread.pitch.length()),
        }
    }

    fn is(&self, thread: &Thread) -> bool {
        self.system == thread.system && self.name == thread.size
    }

    fn same_thread(&self, other: &Self) -> bool {
        self.form == other.form
            && self.tapered == other.tapered
            && same(self.major, other.major)
            && same(self.pitch, other.pitch)
    }

    fn compare(&self, other: &Self, thread: &'static Thread) -> Option<LookAlike> {
        let major_percent = percent_more(self.major, other.major);
        let pitch_percent = percent_more(self.pitch, other.pitch);
        let close = is_close(self.major, other.major) && is_close(self.pitch, other.pitch);
        let likeness = match (same(self.major, other.major), same(self.pitch, other.pitch)) {
            (true, true) => Likeness::DiameterAndPitch,
            (false, true) => Likeness::Pitch,
            _ => Likeness::Neither,
        };
        (close && !self.same_thread(other)).then_some(LookAlike {
            thread,
            major_percent,
            pitch_percent,
            likeness,
        })
    }
}

/// The major diameter alone, without working out the rest of the geometry where the row prints it.
fn major(thread: &Thread) -> Length {
    match thread.basic {
        Basic::Major(major) => major.length(),
        Basic::EffectiveAtGauge(_) => geometry(thread).major,
    }
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() < SAME_MM
}

/// Judged against the larger of the two, so that two look-alikes are so in either order.
fn is_close(one: f64, other: f64) -> bool {
    (one - other).abs() <= NEAR_PERCENT / 100.0 * one.max(other)
}

fn percent_more(this: f64, other: f64) -> f64 {
    100.0 * (other - this) / this
}

#[cfg(test)]
mod tests {
    use super::{Likeness, NEAR_PERCENT, is_close, look_alikes};
    use crate::tables::threads;

    #[test]
    fn close_is_judged_against_the_larger() {
        for (part, expected) in [(0.0, true), (0.99, true), (1.01, false), (20.0, false)] {
            let other = 100.0 - NEAR_PERCENT * part;
            assert_eq!(is_close(100.0, other), expected, "{part}");
            assert_eq!(is_close(other, 100.0), expected, "{part}");
        }
    }

    #[test]
    fn look_alikes_are_close_in_both_and_their_likeness_is_what_agrees() {
        let found: Vec<_> = threads::all().flat_map(look_alikes).collect();
        // Of the smaller of two, the larger is further off.
        let most = NEAR_PERCENT / (1.0 - NEAR_PERCENT / 100.0) + 1e-9;
        for alike in &found {
            let name = alike.thread.designation;
            assert!(alike.major_percent.abs() <= most, "{name}: {}", alike.major_percent);
            assert!(alike.pitch_percent.abs() <= most, "{name}: {}", alike.pitch_percent);
            let is_same_pitch = alike.pitch_percent.abs() < 0.01;
            let says_so = alike.likeness != Likeness::Neither;
            assert!(!says_so || is_same_pitch, "{name}: {:?}", alike.likeness);
        }
        assert!(found.iter().any(|alike| alike.likeness == Likeness::Pitch));
        assert!(found.iter().any(|alike| alike.likeness == Likeness::Neither));
    }
}
