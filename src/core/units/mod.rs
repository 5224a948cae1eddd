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
    Angle, Area, Density, Frequency, INCH_MM, Length, SAME_LENGTH, Stress, Time, Velocity, degrees,
    exceeds, falls_short, grams_per_cm3, in_degrees, in_grams_per_cm3, in_inch,
    in_metres_per_minute, in_mm, in_mm2, in_newtons_per_mm2, in_rpm, in_seconds, inch, ksi,
    metres_per_minute, mm, newtons_per_mm2, rpm,
};
