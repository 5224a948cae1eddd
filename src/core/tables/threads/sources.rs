//! The sources more than one thread table was read in. A source of one table stands in its file.

use crate::tables::source::{Grade, Source};

/// All BA sizes from 0 to 25, and the Whitworth pitches.
pub(super) const KAYE_LABY: Source = Source::published(
    "Kaye and Laby, Tables of Physical and Chemical Constants, 1941 printing, p. 25",
);

/// A club's tapping and clearance lists.
pub(super) const CLUB: Source =
    Source::published("Ministeam, model engineers' tapping and clearance tables, page 30");

/// The live steamers' lists.
pub(super) const IBLS: Source =
    Source::published("IBLS wiki, Threads, British threads tables (revision 12728)");

/// A general-purpose CAD program's table after ISO 261, ASME B1.1, BS 84 and ISO 228-1.
pub(super) const FREECAD: Source = Source::published(
    "FreeCAD, thread table of FeatureHole.cpp (commit 003e239d), after ISO 261, ASME B1.1, BS 84 \
     and ISO 228-1",
);

/// Coarse basic sizes with flank, minor and nut diameters.
pub(super) const ISCAR: Source = Source::published(
    "Iscar catalogue 2022, reamers and taps, p. 56, ISO metric threads (UNI 4535-64)",
);

/// Coarse sizes, the old ones among them.
pub(super) const YAMAWA_COARSE: Source =
    Source::published("Yamawa general catalogue 2021 p. 646, metric coarse threads M1 to M9");

/// Basic sizes of the fine threads M4.5 to M10.
pub(super) const YAMAWA_LIMITS: Source =
    Source::published("Yamawa general catalogue 2016-17 p. 795, tap and thread limits");

/// A library's transcription of the American standards.
pub(super) const SCREW_THREAD_LIB: Source =
    Source { cite: "screw_thread_lib 0.0.6, data after ASME B1.1-2019", grade: Grade::Library };
