//! The quantities, on a millimetre base, and the one place each unit is made or taken out.

use std::marker::PhantomData;

use uom::si::{angle::degree, frequency::cycle_per_minute};

/// One inch in millimetres, exact since 1959. Written here and nowhere else.
pub const INCH_MM: f64 = 25.4;

mod base {
    ISQ!(uom::si, f64, (millimeter, kilogram, second, ampere, kelvin, mole, candela));
}

/// A length or a diameter; feed per revolution is one too.
pub type Length = base::Length;
/// An area.
pub type Area = base::Area;
/// A surface (cutting) speed.
pub type Velocity = base::Velocity;
/// A spindle speed.
pub type Frequency = base::Frequency;
/// A time.
pub type Time = base::Time;
/// An angle.
pub type Angle = base::Angle;
/// A density.
pub type Density = base::MassDensity;
/// A stress or a strength.
pub type Stress = base::Pressure;
/// A force.
pub type Force = base::Force;
/// A torque.
pub type Torque = base::Torque;
/// A power.
pub type Power = base::Power;

/// A length from millimetres.
#[must_use]
pub const fn mm(value: f64) -> Length {
    Length { dimension: PhantomData, units: PhantomData, value }
}

/// Lengths nearer than this are the same length: well under the last place of any drill or limit, and
/// more than the noise of a sum.
pub const SAME_LENGTH: Length = mm(0.000_5);

/// Whether a length is more than another, and not the same.
///
/// # Examples
/// Three times 1.4 mm is 4.2 mm, though not in binary.
/// ```
/// use holewright_core::units::{exceeds, falls_short, mm};
/// assert!(!exceeds(mm(1.4 + 1.4 + 1.4), mm(4.2)) && !falls_short(mm(4.2), mm(1.4 * 3.0)));
/// assert!(exceeds(mm(4.201), mm(4.2)) && falls_short(mm(4.199), mm(4.2)));
/// ```
#[must_use]
pub fn exceeds(length: Length, other: Length) -> bool {
    length > other + SAME_LENGTH
}

/// Whether a length is less than another, and not the same.
#[must_use]
pub fn falls_short(length: Length, other: Length) -> bool {
    length + SAME_LENGTH < other
}

/// A length from inches.
#[must_use]
pub const fn inch(value: f64) -> Length {
    mm(value * INCH_MM)
}

/// A spindle speed from revolutions per minute.
#[must_use]
pub fn rpm(value: f64) -> Frequency {
    Frequency::new::<cycle_per_minute>(value)
}

/// A surface speed from metres per minute.
#[must_use]
pub const fn metres_per_minute(value: f64) -> Velocity {
    // The base is mm/s; uom itself has no metre per minute.
    Velocity { dimension: PhantomData, units: PhantomData, value: value * 1000.0 / 60.0 }
}

/// An angle from degrees.
#[must_use]
pub fn degrees(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

/// A density from grams per cubic centimetre.
#[must_use]
pub const fn grams_per_cm3(value: f64) -> Density {
    // The base is kg/mm³.
    Density { dimension: PhantomData, units: PhantomData, value: value / 1e6 }
}

/// A stress from newtons per square millimetre.
#[must_use]
pub const fn newtons_per_mm2(value: f64) -> Stress {
    // The base is kg/(mm s²), a thousandth of a newton on a square millimetre.
    Stress { dimension: PhantomData, units: PhantomData, value: value * 1000.0 }
}

/// A force from newtons.
#[must_use]
pub const fn newtons(value: f64) -> Force {
    // The base is kg mm/s².
    Force { dimension: PhantomData, units: PhantomData, value: value * 1000.0 }
}

/// A torque from newton metres.
#[must_use]
pub const fn newton_metres(value: f64) -> Torque {
    // The base is kg mm²/s².
    Torque { dimension: PhantomData, units: PhantomData, value: value * 1e6 }
}

/// A power from watts.
#[must_use]
pub const fn watts(value: f64) -> Power {
    // The base is kg mm²/s³.
    Power { dimension: PhantomData, units: PhantomData, value: value * 1e6 }
}

/// A stress from thousands of pounds-force per square inch.
#[must_use]
pub const fn ksi(value: f64) -> Stress {
    /// A pound-force in newtons, exact.
    const POUND_FORCE: f64 = 4.448_221_615_260_5;
    newtons_per_mm2(value * 1000.0 * POUND_FORCE / (INCH_MM * INCH_MM))
}

/// A length in millimetres, for printing and for ratios.
#[must_use]
pub const fn in_mm(length: Length) -> f64 {
    length.value
}

/// A length in inches, for printing.
#[must_use]
pub const fn in_inch(length: Length) -> f64 {
    length.value / INCH_MM
}

/// An area in square millimetres, for printing.
#[must_use]
pub const fn in_mm2(area: Area) -> f64 {
    area.value
}

/// A density in grams per cubic centimetre, for printing.
#[must_use]
pub const fn in_grams_per_cm3(density: Density) -> f64 {
    density.value * 1e6
}

/// A stress in newtons per square millimetre, for printing.
#[must_use]
pub const fn in_newtons_per_mm2(stress: Stress) -> f64 {
    stress.value / 1000.0
}

/// A force in newtons, for printing.
#[must_use]
pub const fn in_newtons(force: Force) -> f64 {
    force.value / 1000.0
}

/// A torque in newton metres, for printing.
#[must_use]
pub const fn in_newton_metres(torque: Torque) -> f64 {
    torque.value / 1e6
}

/// A power in watts, for printing.
#[must_use]
pub const fn in_watts(power: Power) -> f64 {
    power.value / 1e6
}

/// A spindle speed in revolutions per minute, for printing.
#[must_use]
pub fn in_rpm(speed: Frequency) -> f64 {
    speed.get::<cycle_per_minute>()
}

/// A surface speed in metres per minute, for printing.
#[must_use]
pub const fn in_metres_per_minute(speed: Velocity) -> f64 {
    speed.value * 60.0 / 1000.0
}

/// A time in seconds, for printing.
#[must_use]
pub const fn in_seconds(time: Time) -> f64 {
    time.value
}

/// An angle in degrees, for printing.
#[must_use]
pub fn in_degrees(angle: Angle) -> f64 {
    angle.get::<degree>()
}
