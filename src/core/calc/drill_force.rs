//! How hard a drill pushes back and how hard it is to turn: thrust, torque and power.
//!
//! The handbook's formulas, with its exponents and not its rounded factors. Leaves out what a chuck or a
//! table will bear.

use crate::tables::drill_force::{Chisel, Constant, Resistance};
use crate::units::{Force, Frequency, Length, Power, Torque, in_mm, in_newton_metres, in_rpm};
use crate::units::{newton_metres, newtons, watts};

/// One drill at work.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrillCut {
    /// Diameter of the drill.
    pub drill: Length,
    /// How far it goes in a turn.
    pub feed: Length,
    /// How the metal resists it.
    pub resistance: Resistance,
    /// What the chisel edge adds.
    pub chisel: Chisel,
    /// What a worn edge adds: 1 for a sharp drill.
    pub wear: f64,
}

/// What the handbook makes of feed and diameter before it multiplies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// Of the feed, both for thrust and for torque.
    pub feed: f64,
    /// Of the diameter, for thrust.
    pub thrust: f64,
    /// Of the diameter, for torque.
    pub torque: f64,
}

/// What a drill asks of the machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrillForces {
    /// Along the spindle.
    pub thrust: Force,
    /// About the spindle.
    pub torque: Torque,
}

/// The factors of a feed a turn and a diameter: f^0.8, D^0.8, D^1.8.
///
/// # Units
/// Both in millimetres, as the handbook's metric tables have them.
///
/// # Source
/// Machinery's Handbook 31st ed. p. 1153, tables 8 and 9.
///
/// # Examples
/// 0.12 mm a turn 0.183; a 6.4 mm drill 4.42 for thrust and 28.26 for torque.
/// ```
/// use holewright_core::{calc::drill_force::factors, units::{mm, print}};
/// let found = factors(mm(6.4), mm(0.12));
/// let printed = [(found.feed, 3), (found.thrust, 2), (found.torque, 2)];
/// assert_eq!(printed.map(|(factor, places)| print::round(factor, places)), [0.183, 4.42, 28.26]);
/// ```
#[must_use]
pub fn factors(drill: Length, feed: Length) -> Factors {
    let power = |length: Length, exponent: f64| libm::pow(in_mm(length), exponent);
    Factors { feed: power(feed, 0.8), thrust: power(drill, 0.8), torque: power(drill, 1.8) }
}

/// Thrust and torque of a drill.
///
/// # Source
/// Machinery's Handbook 31st ed. p. 1152, formulas for drills in metric units:
/// T = 0.05 Kd Ff FT B W + 0.007 Kd D² J W newtons, M = Kd Ff FM A W / 40 000 newton metres.
#[must_use]
pub fn forces(cut: &DrillCut) -> DrillForces {
    forces_by(cut, factors(cut.drill, cut.feed))
}

/// The same with factors read from the handbook's tables.
#[must_use]
pub fn forces_by(cut: &DrillCut, factors: Factors) -> DrillForces {
    let DrillCut { drill, resistance, chisel, wear, .. } = *cut;
    let diameter = in_mm(drill);
    let edge = 0.05 * factors.feed * factors.thrust * chisel.thrust;
    let web = 0.007 * diameter * diameter * chisel.web;
    DrillForces {
        thrust: newtons(resistance.thrust * wear * (edge + web)),
        torque: newton_metres(
            resistance.torque * factors.feed * factors.torque * chisel.torque * wear / 40_000.0,
        ),
    }
}

/// The power a torque takes at a speed, P = 2π M n.
///
/// # Examples
/// 1.725 N·m at 200 rev/min is 36 W (a tap maker's example prints 0.036 kW by M n / 9500).
/// ```
/// use holewright_core::{calc::drill_force::power, units::{in_watts, newton_metres, rpm}};
/// assert_eq!(in_watts(power(newton_metres(1.725), rpm(200.0))).round(), 36.0);
/// ```
#[must_use]
pub fn power(torque: Torque, spindle: Frequency) -> Power {
    watts(in_newton_metres(torque) * in_rpm(spindle) * std::f64::consts::PI / 30.0)
}

/// Torque of a drill by another maker's formula, M = K D² (0.630 + 16.84 f) / 100: a cross-check.
///
/// # Source
/// A cutting tool maker's catalogue, 2020-21, drilling formulas.
///
/// # Examples
/// Aluminium, K 1.01, a 4 mm drill fed 0.1 mm: 0.374 N·m.
/// ```
/// use holewright_core::{calc::drill_force::rough_torque, tables::drill_force::constants};
/// use holewright_core::units::{in_newton_metres, mm, print};
/// let aluminium = constants().iter().find(|row| row.printed_as == "Aluminium").unwrap();
/// let torque = rough_torque(aluminium, mm(4.0), mm(0.1));
/// assert_eq!(print::fixed(in_newton_metres(torque), 3), "0.374");
/// ```
#[must_use]
pub fn rough_torque(constant: &Constant, drill: Length, feed: Length) -> Torque {
    let diameter = in_mm(drill);
    newton_metres(constant.value * diameter * diameter * (0.630 + 16.84 * in_mm(feed)) / 100.0)
}
