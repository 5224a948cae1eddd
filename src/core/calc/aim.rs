//! How much thread to aim for: by metal, depth and size. A policy of the trade, in one table.
//!
//! # Source
//! Common practice, no source; the anchors recomputed from published lists stand in the tests.

use crate::tables::materials::{Chips, Group, Material};
use crate::units::{Length, in_mm, mm};

/// What the person wants of the thread.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Aim {
    /// More thread, a harder tap.
    Strong,
    /// The usual.
    #[default]
    Usual,
    /// An easier tap, less thread.
    Easy,
}

/// The group of metals whose tapping sizes a table for no metal gives: the middle of the aims.
pub const MIDDLE_GROUP: Group = Group::IronAndGunmetal;

/// 83 % of ¾ H leaves the least minor diameter of 6H and 2B.
const MOST: f64 = 83.0;
/// Below this a thread is no longer worth tapping.
const LEAST: f64 = 52.0;

/// Engagement to aim for, in percent of full thread depth.
///
/// # Units
/// `major` and `thread_length` are lengths; a missing length counts as 1 to 1.5 diameters.
///
/// # Source
/// Common practice, no source.
///
/// # Examples
/// Gunmetal breaks its chips, so a deep thread keeps the full 70 %.
/// ```
/// use holewright_core::{calc::aim::{aim_percent, Aim}, tables::materials, units::mm};
/// let gunmetal = materials::find("gunmetal").unwrap();
/// assert_eq!(aim_percent(gunmetal, mm(3.2), Some(mm(8.0)), Aim::Usual), 70.0);
/// ```
#[must_use]
pub fn aim_percent(
    material: &Material,
    major: Length,
    thread_length: Option<Length>,
    aim: Aim,
) -> f64 {
    let tough = material.group == Group::Tough;
    let diameters = thread_length.map_or(1.25, |length| in_mm(length) / in_mm(major));
    let mut percent = base_percent(material.group);
    if diameters < 1.0 {
        percent += 6.0;
    }
    if diameters > 1.5 && material.chips == Chips::Long {
        percent -= 7.0;
    }
    if tough && major < mm(3.0) {
        percent -= 5.0;
    }
    percent += match aim {
        Aim::Strong => 8.0,
        Aim::Usual => 0.0,
        Aim::Easy => -8.0,
    };
    percent.clamp(LEAST, MOST)
}

/// The aim table: hand tapping, length of thread 1 to 1.5 diameters.
#[must_use]
pub const fn base_percent(group: Group) -> f64 {
    match group {
        Group::EasyCutting => 74.0,
        Group::IronAndGunmetal => 70.0,
        Group::FreeCuttingSteel => 68.0,
        Group::MildSteelAndPhosphorBronze => 64.0,
        Group::Tough => 56.0,
    }
}

/// How far past the standard's largest hole a drill may go, as a part of the major diameter.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn allowance(major: Length, aim: Aim) -> Length {
    let small = major < mm(5.0);
    major
        * match (aim, small) {
            (Aim::Strong, _) | (Aim::Usual, false) => 0.0,
            (Aim::Usual, true) | (Aim::Easy, false) => 0.02,
            (Aim::Easy, true) => 0.05,
        }
}
