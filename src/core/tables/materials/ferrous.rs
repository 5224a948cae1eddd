//! What the rows of iron and steel say alike: the grade of a recalled figure, lubricants, and the
//! sentences that hold for more than one of them.

use super::Advice;
use super::sources::{MH_FLUIDS, POPULAR_MECHANICS, practice, read};
use crate::tables::source::Source;

/// A figure known to the trade and not read anywhere: shown as unconfirmed.
pub(super) const RECALLED: Source = Source::memory("recalled, no source read");

pub(super) const SOLUBLE_OIL: Advice = read("Use soluble oil.", MH_FLUIDS);
pub(super) const SOLUBLE_OR_CUTTING_OIL: Advice = practice("Use soluble oil or cutting oil.");
pub(super) const LARD_OR_SULPHUR: Advice = read(
    "Use 25 to 40 % lard oil in mineral oil, or 25 % sulphur-base oil in mineral oil.",
    MH_FLUIDS,
);
pub(super) const ALLOY_TAPPING_OIL: Advice = read("Use 30 % lard oil in mineral oil.", MH_FLUIDS);
pub(super) const CUTTING_OIL: Advice = practice("Use neat cutting oil.");
pub(super) const MACHINE_OIL: Advice = read(
    "For tapping steel by hand a workshop page is content with machine oil.",
    POPULAR_MECHANICS,
);

pub(super) const HALF_TURN: Advice =
    read("Turn back slightly after each half turn.", POPULAR_MECHANICS);
pub(super) const QUARTER_TURN: Advice =
    practice("It is tough: a quarter to half a turn on, then back until the chip breaks.");

pub(super) const STANDARD_POINT: Advice =
    practice("A 118° point with plain lips: in steel the lips are not dubbed.");
pub(super) const SPLIT_POINT: Advice = practice(
    "A 130° to 135° split point starts without wandering and wants less push; cobalt steel drills stay sharp longer.",
);
pub(super) const SPIRAL_POINT: Advice = practice(
    "A spiral-point tap pushes the string on through an open hole; a spiral-flute tap draws it out of a blind one.",
);
pub(super) const SHARP_TAP: Advice = practice(
    "Use a sharp high-speed steel tap, all three in turn by hand, and the larger tapping size for small threads.",
);
pub(super) const STRINGS: Advice =
    practice("Its chips string: peck a deep hole and clear the flutes.");

pub(super) const PRESSURE_BY_CODE: Advice = practice(
    "Not for a boiler or any pressure part unless the code names that metal and it comes with its papers: ask the club's boiler inspector before cutting.",
);
pub(super) const TEMPER_ALWAYS: Advice =
    practice("Temper it after hardening, always: untempered it may shatter.");
pub(super) const BEFORE_HARDENING: Advice =
    practice("Drill and tap it before hardening: afterwards neither will cut it.");
