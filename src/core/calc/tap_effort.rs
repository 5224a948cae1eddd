//! How hard a hand tap is to turn in a hole, what the tap itself may bear, and what is left between them.
//!
//! Leaves out a tap that leans, a hole full of chips and a blunt edge: these break more small taps than
//! the cut does.

use std::fmt;

use crate::calc::strip::StripSizes;
use crate::calc::thread_form::Geometry;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::source::Source;
use crate::tables::tapping_force::{Resists, RoughForce};
use crate::tables::threads::{Basic, Thread, system};
use crate::units::{
    Angle, Length, Stress, Torque, in_mm, in_mm2, in_newton_metres, in_newtons_per_mm2,
    newton_metres, newtons_per_mm2,
};

/// The torque of a hand tap in a hole: Tc = tan(a) kc K (D − Do)² (D + 2 Do) / 24 000 newton metres, a
/// half the thread angle, Do the hole. No torque where the hole is as large as the thread.
///
/// # Source
/// A tap maker's catalogue, 2021, p. 640; the maker writes it for 60°.
///
/// # Examples
/// M6 in a 5 mm hole in Ck45 (3900 N/mm², K 1.35): 2.026 N·m.
/// ```
/// use holewright_core::{calc::tap_effort::torque, units::{degrees, in_newton_metres, mm, newtons_per_mm2, print}};
/// let torque = torque(degrees(60.0), newtons_per_mm2(3900.0), 1.35, mm(6.0), mm(5.0));
/// assert_eq!(print::fixed(in_newton_metres(torque), 3), "2.026");
/// ```
#[must_use]
pub fn torque(
    thread_angle: Angle,
    force: Stress,
    correction: f64,
    major: Length,
    hole: Length,
) -> Torque {
    let (major, hole) = (in_mm(major), in_mm(hole));
    let cut = (major - hole).max(0.0);
    let moment = cut * cut * (major + 2.0 * hole) / 24_000.0;
    newton_metres(
        libm::tan(thread_angle.value / 2.0) * in_newtons_per_mm2(force) * correction * moment,
    )
}

/// The torque of a second tap by hand in a thread, a hole and a metal, by [`torque`].
#[must_use]
pub fn effort(geometry: &Geometry, resists: &Resists, hole: Length) -> Torque {
    let correction = resists.row.column.correction(is_fine(geometry));
    torque(geometry.thread_angle, resists.row.force, correction, geometry.major, hole)
}

/// What one hole has of another, in percent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared {
    /// Of the effort of tapping it.
    pub effort_percent: f64,
    /// Of the strip area of the screw's thread in it.
    pub strength_percent: f64,
}

/// What a hole has of another in effort and in strength, the same metal and as long a thread.
#[must_use]
pub fn compared(thread: &Thread, geometry: &Geometry, hole: Length, with: Length) -> Compared {
    // Metal and correction are the same on both sides.
    let effort = |hole| {
        let one = newtons_per_mm2(1.0);
        in_newton_metres(torque(geometry.thread_angle, one, 1.0, geometry.major, hole))
    };
    let area = |hole| in_mm2(StripSizes::of(thread, geometry, hole).screw_area(geometry.pitch));
    Compared {
        effort_percent: 100.0 * effort(hole) / effort(with),
        strength_percent: 100.0 * area(hole) / area(with),
    }
}

/// The torque by the rougher formula, Md = p² D kc / 8000, which asks nothing of the hole: a cross-check.
///
/// # Source
/// A thread tool maker's calculations.
///
/// # Examples
/// M8 in stainless steel, 3200 N/mm²: 5 N·m.
/// ```
/// use holewright_core::{calc::tap_effort::rough_torque, tables::tapping_force::all_rough};
/// use holewright_core::units::{in_newton_metres, mm};
/// let stainless = all_rough().find(|row| row.printed_as == "Stainless austenitic").unwrap();
/// assert!((in_newton_metres(rough_torque(stainless, mm(8.0), mm(1.25))) - 5.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn rough_torque(row: &RoughForce, major: Length, pitch: Length) -> Torque {
    let pitch = in_mm(pitch);
    newton_metres(pitch * pitch * in_mm(major) * in_newtons_per_mm2(row.force) / 8000.0)
}

/// A pitch below this part of the metric coarse pitch of the nearest size is fine.
const FINE: f64 = 0.9;

/// Whether the maker's corrections for fine threads are the ones to use: the pitch is nine tenths or less
/// of the metric coarse pitch at that size. Common practice, no source: the maker says coarse and fine.
///
/// # Examples
/// ```
/// use holewright_core::{calc::{tap_effort::is_fine, thread_form::geometry}, tables::threads::find};
/// let fine = |system, size| is_fine(&geometry(find(system, size).unwrap()));
/// assert!(fine("metric-fine", "m8x1") && fine("me-40", "1-4"));
/// assert!(!fine("metric", "m8") && !fine("ba", "5") && !fine("bsw", "1-4"));
/// ```
#[must_use]
pub fn is_fine(geometry: &Geometry) -> bool {
    let coarse = system("metric").map_or([].as_slice(), |system| system.threads);
    let sizes = coarse.iter().filter_map(|thread| match thread.basic {
        Basic::Major(major) => Some((major.length(), thread.pitch.length())),
        Basic::EffectiveAtGauge(_) => None,
    });
    let off = |major: Length| in_mm(major - geometry.major).abs();
    let nearest = sizes.min_by(|(a, _), (b, _)| off(*a).total_cmp(&off(*b)));
    nearest.is_some_and(|(_, pitch)| geometry.pitch < pitch * FINE)
}

/// The shear strength a tap of high-speed steel is given.
const HIGH_SPEED: Stress = newtons_per_mm2(900.0);
/// The same of carbon steel, which is brittle.
const CARBON: Stress = newtons_per_mm2(600.0);
/// What the flutes leave of a round core.
const WEB: f64 = 0.35;

/// Where the estimate of a tap's own strength comes from.
pub const STRENGTH_SOURCE: Source = Source::common_practice(
    "a round bar of the thread's core, of which the flutes leave about a third; no maker's table was found",
);

/// About what breaks a tap: the torque of a round bar of the thread's core, cut down for its flutes.
///
/// # Source
/// Common practice, no source: an estimate, and no promise.
#[must_use]
pub fn tap_strength(core: Length, steel: ToolSteel) -> Torque {
    let shear = match steel {
        ToolSteel::HighSpeed => HIGH_SPEED,
        ToolSteel::Carbon => CARBON,
    };
    let core = in_mm(core);
    let section = std::f64::consts::PI * core * core * core / 16.0;
    newton_metres(in_newtons_per_mm2(shear) * section * WEB / 1000.0)
}

/// What is left between the cut and the tap's own strength, in words and never as a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Band {
    /// The cut alone may break it.
    Spent,
    /// Little.
    Scant,
    /// Enough for a keen tap kept square.
    Fair,
    /// Plenty.
    Ample,
}

/// The least times that a tap's strength must be of the cut for each band. Common practice, no source.
const BANDS: [(f64, Band); 3] = [(5.0, Band::Ample), (3.0, Band::Fair), (1.6, Band::Scant)];

impl Band {
    /// The band of a strength and a cut.
    #[must_use]
    pub fn of(strength: Torque, cut: Torque) -> Self {
        let (strength, cut) = (in_newton_metres(strength), in_newton_metres(cut));
        let found = BANDS.iter().find(|(times, _)| strength >= cut * times);
        found.map_or(Self::Spent, |(_, band)| *band)
    }

    /// The next with less left.
    #[must_use]
    pub const fn less(self) -> Self {
        match self {
            Self::Ample => Self::Fair,
            Self::Fair => Self::Scant,
            Self::Scant | Self::Spent => Self::Spent,
        }
    }

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Spent => "spent",
            Self::Scant => "scant",
            Self::Fair => "fair",
            Self::Ample => "ample",
        }
    }

    /// What to do about it.
    #[must_use]
    pub const fn advice(self) -> &'static str {
        match self {
            Self::Spent => {
                "The cut comes near what the tap bears: take the whole set in order with a guide, turn back often, and the next larger drill where the thread can spare it."
            }
            Self::Scant => {
                "Use a keen tap and a guide, turn back often, and think of a larger drill."
            }
            Self::Fair => "A keen tap kept square will do it; turn back and clear the chips.",
            Self::Ample => "The tap bears far more than the cut: it breaks by leaning or by chips.",
        }
    }
}

/// What is left, and how sure that is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Margin {
    /// As reckoned.
    pub likely: Band,
    /// The band below where the metal's figure is borrowed, or that of the rougher formula where it leaves less.
    pub at_worst: Band,
}

impl Margin {
    /// The margin of a tap in a metal; `rough` is the cut by the rougher formula, where it holds the metal.
    #[must_use]
    pub fn of(strength: Torque, cut: Torque, rough: Option<Torque>, is_borrowed: bool) -> Self {
        let likely = Band::of(strength, cut);
        let borrowed = if is_borrowed { likely.less() } else { likely };
        let roughly = rough.map_or(likely, |rough| Band::of(strength, rough));
        Self { likely, at_worst: borrowed.min(roughly) }
    }

    /// What to do about it. It goes by the margin as reckoned: a borrowed figure must not make a soft metal
    /// sound worse than a tough one whose figure is printed.
    #[must_use]
    pub fn advice(self) -> String {
        let advice = self.likely.advice();
        if self.likely == self.at_worst {
            return advice.to_owned();
        }
        format!("{advice} The figures leave room for less: go by how the tap turns.")
    }
}

impl fmt::Display for Margin {
    /// `fair`, `scant to fair`
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.likely == self.at_worst {
            out.write_str(self.likely.word())
        } else {
            write!(out, "{} to {}", self.at_worst.word(), self.likely.word())
        }
    }
}
