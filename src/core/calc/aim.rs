//! How much thread to aim for: by metal, depth and size. A policy of the trade, in one table.
//!
//! # Source
//! Common practice, no source; the anchors recomputed from published lists stand in the tests.

use crate::tables::materials::{Chips, Group, Material};
use crate::units::{Length, exceeds, falls_short, in_mm, mm};

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
pub(super) const MOST: f64 = 83.0;
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
    let length = thread_length.unwrap_or(major * 1.25);
    let mut percent = base_percent(material.group);
    if falls_short(length, major) {
        percent += 6.0;
    }
    if exceeds(length, major * 1.5) && material.chips == Chips::Long {
        percent -= 7.0;
    }
    if tough && falls_short(major, mm(3.0)) {
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

/// How far past the standard's largest hole a drill may go.
///
/// `strong` nowhere; `usual` by 2 % of the major diameter in tough metal and nowhere else; `easy` by
/// 2 % in every metal and 3 % more. The 2 % of `usual` and the 3 % of `easy` hold up to 4 mm and fade
/// evenly to nothing at 6 mm.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub fn allowance(major: Length, aim: Aim, group: Group) -> Length {
    let part = match (aim, group) {
        (Aim::Strong, _) => 0.0,
        (Aim::Usual, Group::Tough) => 0.02 * smallness(major),
        (Aim::Usual, _) => 0.0,
        (Aim::Easy, _) => 0.02 + 0.03 * smallness(major),
    };
    major * part
}

/// One up to 4 mm, nothing from 6 mm, and evenly between.
fn smallness(major: Length) -> f64 {
    ((6.0 - in_mm(major)) / 2.0).clamp(0.0, 1.0)
}

/// The engagement that the hole must keep at its likely size, percent.
///
/// # Source
/// Common practice, no source.
#[must_use]
pub const fn least_likely_percent(aim: Aim) -> f64 {
    match aim {
        Aim::Strong => 55.0,
        Aim::Usual => 50.0,
        Aim::Easy => 42.0,
    }
}
