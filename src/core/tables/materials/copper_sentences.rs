//! Sentences that brass, bronze and copper share.

use super::Advice;
use super::sources::{MH_FLUIDS, practice, read};

pub(super) const SOLUBLE_OIL: Advice = read("Use soluble oil.", MH_FLUIDS);
pub(super) const BRASS_DRILLING: Advice =
    read("Use soluble oil, or 30 % lard oil in mineral oil.", MH_FLUIDS);
pub(super) const BRASS_TAPPING: Advice = read("Use 10 to 20 % lard oil in mineral oil.", MH_FLUIDS);
pub(super) const BRONZE_TAPPING: Advice = read("Use 20 % lard oil in mineral oil.", MH_FLUIDS);

pub(super) const WORK_HARDENS: Advice =
    practice("It work-hardens under a drill that rubs: keep it cutting, and do not dwell.");
pub(super) const GRIPS_A_DRILL: Advice =
    practice("It grips a drill when a hole is opened out: sharp drill, cool work, or bore it.");
pub(super) const BACK_OFF_SHORT: Advice =
    practice("Its chips are short: turn back every turn or two, and clear a blind hole often.");
pub(super) const BACK_OFF_TOUGH: Advice = practice(
    "It is tough: half a turn on, then back until the chip breaks, and do not stop in the cut.",
);

pub(super) const DUB_BRASS: Advice = practice(
    "Keep dubbed drills apart: they cut steel badly, and sharp steel drills snatch in brass.",
);
pub(super) const DUB_BRONZE: Advice =
    practice("Stone a small flat on the drill's lips, or it grabs as it opens out a hole.");
pub(super) const KEEN_EDGE: Advice = practice(
    "Use a sharp drill with a normal point and full clearance; stone the lips only to open out a hole.",
);
pub(super) const STRAIGHT_FLUTES: Advice = practice(
    "Straight-flute hand taps serve; a spiral point pushes the chips on through an open hole.",
);
pub(super) const SHARP_TAP: Advice = practice(
    "Use a sharp tap, taper before second, and oil each time: a worn tap tears the thread and jams.",
);

pub(super) const SHEET_CLIMBS: Advice = practice(
    "Thin sheet leaves a three-cornered hole and climbs the drill: back it, clamp it, and use a sheet drill or step up.",
);
pub(super) const SOFT_JAWS: Advice = practice("It marks easily in the vice: use soft jaws.");
pub(super) const CASTING_SKIN: Advice =
    practice("A casting's skin holds sand, which blunts drills and taps: clean it off first.");
pub(super) const BLOWHOLE: Advice =
    practice("A blowhole can turn a drill or open into a passage: look before you tap.");
pub(super) const WHICH_BRONZE: Advice = practice(
    "Bronze is a loose word: for a bearing, a boiler bush or a fitting, go by the mark on the bar.",
);

pub(super) const ZINC_LEAVES: Advice = practice(
    "Not for boiler bushes or wet steam fittings: hot water takes the zinc out and leaves weak copper; the club's boiler inspector decides.",
);
pub(super) const UNDER_PRESSURE: Advice = practice(
    "Nothing for steam or pressure on these figures alone: the national boiler code and the club's boiler inspector decide, before cutting.",
);
pub(super) const UNKNOWN_STOCK: Advice = practice(
    "Unmarked stock is never for pressure or a part that can hurt if it breaks, however like it looks.",
);
pub(super) const AMMONIA: Advice =
    practice("Not where ammonia reaches it under stress: cold-worked brass cracks with age.");
