//! The sources more than one thread table was read in. A source of one table stands in its file.

use crate::tables::source::Source;

/// All BA sizes from 0 to 25, and the Whitworth pitches.
pub(super) const KAYE_LABY: Source =
    Source::published("Tables of Physical and Chemical Constants, 1941, p. 25");

/// A club's tapping and clearance lists.
pub(super) const CLUB: Source =
    Source::published("a model engineers' club list, tapping and clearance, p. 30");

/// The live steamers' lists.
pub(super) const IBLS: Source = Source::published("a live steam society's tables, British threads");

/// A general-purpose library of parts, after ISO 261, ASME B1.1, BS 84 and ISO 228-1.
pub(super) const PARTS_LIBRARY: Source =
    Source::library("diameters and pitches after ISO 261, ASME B1.1, BS 84 and ISO 228-1");

/// Coarse basic sizes with flank, minor and nut diameters.
pub(super) const ISCAR: Source =
    Source::published("a tap maker's catalogue, 2022, p. 56, ISO metric threads (UNI 4535-64)");

/// Coarse sizes, the old ones among them.
pub(super) const YAMAWA_COARSE: Source =
    Source::published("a tap maker's catalogue, 2021, p. 646, metric coarse threads M1 to M9");

/// Basic sizes of the fine threads M4.5 to M10.
pub(super) const YAMAWA_LIMITS: Source =
    Source::published("a tap maker's catalogue, 2016-17, p. 795, tap and thread limits");

/// A library's transcription of the American standards.
pub(super) const ASME_LIBRARY: Source = Source::library("ASME B1.1-2019");
