//! Lengths, speeds and angles as types that cannot be mixed up.
//!
//! The base of length is the millimetre, so a metric figure from a table is held exactly as printed.
//! Leaves out: what a figure means (that is [`crate::tables`] and [`crate::calc`]).

pub mod print;
mod printed;
mod quantity;
pub mod read;

pub use printed::{Fraction, Pitch, Printed};
pub use quantity::{
    Angle, Area, Density, Force, Frequency, INCH_MM, Length, Power, SAME_LENGTH, Stress, Time,
    Torque, Velocity, degrees, exceeds, falls_short, grams_per_cm3, in_degrees, in_grams_per_cm3,
    in_inch, in_metres_per_minute, in_mm, in_mm2, in_newton_metres, in_newtons, in_newtons_per_mm2,
    in_rpm, in_seconds, in_watts, inch, ksi, metres_per_minute, mm, newton_metres, newtons,
    newtons_per_mm2, rpm, watts,
};
