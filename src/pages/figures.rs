//! Figures as pages print them: finished strings, each with its unit or for a column that names it.

use holewright_core::units::{Length, in_inch, in_mm, print};

/// A length in both units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Both {
    /// `2.705 mm`
    pub(super) mm: String,
    /// `0.1065 in`
    pub(super) inch: String,
}

impl Both {
    /// A length to a micrometre and to a tenth of a thou.
    pub(super) fn of(length: Length) -> Self {
        Self { mm: print::mm(length, 3), inch: print::inch(length, 4) }
    }

    /// A depth or a thickness: to a hundredth of a millimetre and to a thou.
    pub(super) fn coarse(length: Length) -> Self {
        Self { mm: print::mm(length, 2), inch: print::inch(length, 3) }
    }
}

/// A length in both units for columns that name them, every row to the same place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Column {
    /// `2.705`
    pub(super) mm: String,
    /// `0.1065`
    pub(super) inch: String,
}

impl Column {
    /// A length to a micrometre and to a tenth of a thou.
    pub(super) fn of(length: Length) -> Self {
        Self { mm: print::fixed(in_mm(length), 3), inch: print::fixed(in_inch(length), 4) }
    }
}

/// A difference with its sign: `+0.007`, `−0.022`, `0.000`.
pub(super) fn signed(value: f64, places: u8) -> String {
    let size = print::fixed(value.abs(), places);
    match print::round(value, places) {
        rounded if rounded > 0.0 => format!("+{size}"),
        rounded if rounded < 0.0 => format!("−{size}"),
        _ => size,
    }
}
