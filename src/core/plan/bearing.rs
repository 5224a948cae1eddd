//! What the tap takes and bears in the planned hole, and what the thread will carry.
//!
//! No strength stands on a plan that speaks of steam or pressure, nor where the screw is not named.

use super::{HoleSpec, Tap, TapSteel, cautions};
use crate::calc::strength::{Joint, Loads};
use crate::calc::strip::StripSizes;
use crate::calc::tap_effort::{Compared, Margin, compared, effort, rough_torque, tap_strength};
use crate::calc::thread_form::Geometry;
use crate::calc::tool_steel::ToolSteel;
use crate::tables::drills::Drill;
use crate::tables::screw_metals::least_shear;
use crate::tables::tapping_force::{Resists, resists, rough_force};
use crate::units::{Length, Torque};

/// How hard the second tap turns by hand, and what is left to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapEffort {
    /// Torque of the cut.
    pub cutting: Torque,
    /// About what breaks the tap: an estimate.
    pub breaking: Torque,
    /// What is left, in words.
    pub margin: Margin,
    /// The figure the metal goes by.
    pub resists: Resists,
    /// What the next easier drill alters.
    pub easier: Option<Compared>,
}

/// What the thread carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Length of full thread engaged.
    pub engaged: Length,
    /// What each member bears.
    pub loads: Loads,
    /// Length of engagement at which the screw breaks before a thread strips.
    pub holding_length: Option<Length>,
}

/// The effort in a hole; none for taps that are not turned by hand, and metals of which no maker prints a
/// figure.
pub(super) fn tap_effort(
    spec: &HoleSpec,
    geometry: &Geometry,
    hole: Length,
    easier: Option<&Drill>,
) -> Option<TapEffort> {
    if spec.tap != Tap::Hand {
        return None;
    }
    let resists = resists(spec.material)?;
    let steel = match spec.tap_steel {
        TapSteel::HighSpeed => ToolSteel::HighSpeed,
        TapSteel::Carbon => ToolSteel::Carbon,
    };
    let cutting = effort(geometry, &resists, hole);
    let breaking = tap_strength(geometry.minor, steel);
    Some(TapEffort {
        cutting,
        breaking,
        margin: Margin::of(
            breaking,
            cutting,
            rough_force(spec.material).map(|row| rough_torque(row, geometry.major, geometry.pitch)),
            resists.is_borrowed,
        ),
        resists,
        easier: easier.map(|drill| compared(spec.thread, geometry, drill.diameter, hole)),
    })
}

/// The strength; none on a plan that speaks of steam or pressure, without the screw's metal, or without a
/// length of thread.
pub(super) fn strength(
    spec: &HoleSpec,
    geometry: &Geometry,
    hole: Length,
    engaged: Option<Length>,
) -> Option<Strength> {
    if cautions::speaks_of_pressure(spec) {
        return None;
    }
    let (screw, engaged) = spec.screw.zip(engaged)?;
    let joint = Joint {
        sizes: StripSizes::of(spec.thread, geometry, hole),
        tensile_area: geometry.tensile_area,
        screw: screw.tensile.stress,
        tapped_shear: least_shear(spec.material)?.stress,
    };
    Some(Strength { engaged, loads: joint.loads(engaged), holding_length: joint.holding_length() })
}
