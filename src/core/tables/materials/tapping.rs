//! What a material allows a tap: forming taps, and what to do when one breaks.
//!
//! The forming tap's hole and torque are computed in [`crate::calc`].

use super::Advice;
use super::sources::{ALUM_1945, practice, read};

/// Whether a forming tap may be used in it. A forming tap presses the thread, so the material must
/// be ductile.
///
/// # Source
/// Common practice, no source. It suits the 60° forms only, whatever the material.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FormingTap {
    /// Ductile enough.
    Suits,
    /// Too brittle, too hard, or it springs back: cut the thread.
    Refuse,
}

/// What may be done about a tap broken in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BrokenTap {
    /// Hot alum eats carbon steel and leaves this metal.
    HotAlum,
    /// Hot alum would eat the work as well.
    NeverAlum,
    /// Whether hot alum leaves it unmarked is not confirmed.
    AlumUnconfirmed,
    /// Hot alum is acid enough to eat this metal.
    AlumAttacks,
    /// It is soft enough to get at the tap.
    NoNeed,
}

impl BrokenTap {
    /// What to do about it, in words, in the order to be read.
    #[must_use]
    pub const fn advice(self) -> &'static [Advice] {
        match self {
            Self::HotAlum => &HOT_ALUM,
            Self::NeverAlum => &NEVER_ALUM,
            Self::AlumUnconfirmed => &ALUM_UNCONFIRMED,
            Self::AlumAttacks => &ALUM_ATTACKS,
            Self::NoNeed => &NO_NEED,
        }
    }
}

static HOT_ALUM: [Advice; 4] = [
    read(
        "A hot alum solution dissolves a broken carbon steel tap and leaves brass and bronze; published times run from minutes to hours.",
        ALUM_1945,
    ),
    practice(
        "Reports on high-speed steel taps are mixed, and any other steel left in the job goes the same way.",
    ),
    practice(
        "Work in the open or with good ventilation, in goggles and gloves, and never in a pan used for food.",
    ),
    practice("Acids are not advised."),
];
static NEVER_ALUM: [Advice; 2] = [
    read("Never put iron or steel work in alum: the work dissolves with the tap.", ALUM_1945),
    practice(
        "A small burr or spark erosion will clear the tap; otherwise move the hole. Acids are not advised.",
    ),
];
static ALUM_UNCONFIRMED: [Advice; 2] = [
    practice(
        "Whether hot alum leaves this metal unmarked is not confirmed: try a scrap of it first.",
    ),
    practice(
        "Ventilate, wear goggles and gloves, and use no pan meant for food; acids are not advised.",
    ),
];
static ALUM_ATTACKS: [Advice; 2] = [
    practice("Hot alum is acid and eats this metal, giving off hydrogen: use no bath of any kind."),
    practice(
        "Grip what stands out and wind it back, or cut the metal away round the tap; otherwise move the hole.",
    ),
];
static NO_NEED: [Advice; 1] =
    [practice("The tap can usually be gripped or pricked round and wound out of a plastic.")];
