//! How much to leave for a reamer, as the sources print it. They differ
//! several-fold; the hole to leave is worked out in [`crate::calc::reaming`].

use crate::tables::source::Source;
use crate::units::{Length, inch, mm};

/// How the reamer is turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Drive {
    /// By hand, with a wrench.
    Hand,
    /// In a machine.
    Machine,
    /// The source does not say.
    Either,
}

/// What one source leaves on diameter for reamers of one band of sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// Smallest reamer it is printed for; none where the source prints no size.
    pub from: Option<Length>,
    /// Largest, itself included; none where the source prints none.
    pub to: Option<Length>,
    /// The least left on diameter.
    pub least: Length,
    /// The most; equal to `least` where the source prints one figure.
    pub most: Length,
    /// How the reamer is turned.
    pub drive: Drive,
    /// What the source says of it: the kind of reamer, the metal.
    pub printed_as: &'static str,
    /// Where it was read.
    pub source: Source,
}

const PROTO: Source =
    Source::published("a reamer maker's chart, material left for carbide-tipped reamers");
const GTZ: Source = Source::published("Manual Reaming, a trainees’ handbook, s. 5.3");
const GTZ_MACHINE: Source = Source::published(
    "Reaming and Tapping on the Drilling Machines, a trainees’ handbook, s. 7, table 1",
);
const RAYMOND: Source = Source::published("Modern Shop Practice, Fluted chucking reamers");
const METAL_WORKERS: Source = Source::published("Applied Science for Metal-Workers, s. 313");
const TM_1_420: Source =
    Source::published("War Department Technical Manual TM 1-420, par. 37, Reaming");
const NORSEMAN: Source = Source::published("a drill maker's feeds and speeds");

const fn row(
    from: Option<Length>,
    to: Option<Length>,
    left: [Length; 2],
    drive: Drive,
    printed_as: &'static str,
    source: Source,
) -> Allowance {
    let [least, most] = left;
    Allowance { from, to, least, most, drive, printed_as, source }
}

#[rustfmt::skip]
static ALLOWANCES: [Allowance; 16] = [
    row(Some(mm(0.0)), Some(mm(5.0)), [mm(0.1), mm(0.2)], Drive::Hand, "hand reaming, steel", GTZ),
    row(Some(mm(0.0)), Some(inch(3.0)), [inch(0.005), inch(0.005)], Drive::Hand, "left for a hand reamer, one opinion", RAYMOND),
    row(Some(inch(1.0625)), Some(inch(2.0)), [inch(0.007), inch(0.007)], Drive::Hand, "left for a hand reamer", RAYMOND),
    row(Some(inch(2.0)), None, [inch(0.01), inch(0.01)], Drive::Hand, "left for a hand reamer", RAYMOND),
    row(Some(inch(0.09)), Some(inch(0.17)), [inch(0.005), inch(0.01)], Drive::Machine, "machine reamer, carbide-tipped", PROTO),
    row(Some(inch(0.171)), Some(inch(0.28)), [inch(0.008), inch(0.012)], Drive::Machine, "machine reamer, carbide-tipped", PROTO),
    row(Some(inch(0.281)), Some(inch(0.88)), [inch(0.01), inch(0.016)], Drive::Machine, "machine reamer, carbide-tipped", PROTO),
    row(Some(inch(0.881)), Some(inch(2.5)), [inch(0.015), inch(0.03)], Drive::Machine, "machine reamer, carbide-tipped", PROTO),
    row(None, None, [inch(0.005), inch(0.01)], Drive::Machine, "machine reaming in the lathe", TM_1_420),
    row(Some(mm(0.0)), Some(mm(5.0)), [mm(0.1), mm(0.2)], Drive::Machine, "machine reaming, below 5 mm", GTZ_MACHINE),
    row(Some(mm(5.0)), Some(mm(20.0)), [mm(0.2), mm(0.3)], Drive::Machine, "machine reaming, 5 to 20 mm", GTZ_MACHINE),
    row(Some(mm(21.0)), Some(mm(32.0)), [mm(0.3), mm(0.3)], Drive::Machine, "machine reaming, 21 to 32 mm", GTZ_MACHINE),
    row(Some(mm(33.0)), Some(mm(50.0)), [mm(0.5), mm(0.5)], Drive::Machine, "machine reaming, 33 to 50 mm", GTZ_MACHINE),
    row(Some(mm(71.0)), Some(mm(120.0)), [mm(1.0), mm(1.2)], Drive::Machine, "machine reaming, 71 to 120 mm", GTZ_MACHINE),
    row(Some(mm(121.0)), None, [mm(1.3), mm(1.5)], Drive::Machine, "machine reaming, over 121 mm", GTZ_MACHINE),
    row(None, None, [inch(1.0 / 100.0), inch(1.0 / 64.0)], Drive::Either, "reaming, hand or machine; never over 1/32 in", METAL_WORKERS),
];

/// Every allowance in print.
#[must_use]
pub fn allowances() -> &'static [Allowance] {
    &ALLOWANCES
}

/// Another rule in print for a reamer's speed: this part of the drill's. What is gone by stands in
/// [`super::reaming_pairs`].
#[must_use]
pub const fn speed_rule() -> (f64, Source) {
    (0.5, NORSEMAN)
}

impl Allowance {
    /// Whether it is printed for a reamer of this size; a source without sizes speaks of them all.
    #[must_use]
    pub fn covers(&self, reamer: Length) -> bool {
        self.from.is_none_or(|from| reamer >= from) && self.to.is_none_or(|to| reamer <= to)
    }

    /// Whether the source prints sizes for it.
    #[must_use]
    pub const fn is_sized(&self) -> bool {
        self.from.is_some() || self.to.is_some()
    }
}
