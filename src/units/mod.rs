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
    Angle, Area, Frequency, INCH_MM, Length, Velocity, degrees, in_degrees, in_inch,
    in_metres_per_minute, in_mm, in_mm2, in_rpm, inch, metres_per_minute, mm, rpm,
};
