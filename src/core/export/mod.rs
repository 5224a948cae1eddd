//! The tables of the pages as files: the same rows and the same digits.
//!
//! - [`csv`]: how a table is written.
//! - [`threads`], [`drills`], [`fasteners`], [`materials`], [`plan`]: the tables themselves.
//!
//! Leaves out addresses and headers, which the pages decide, and the drawings.

pub mod calculators;
pub mod csv;
pub mod drills;
pub mod fasteners;
pub mod materials;
pub mod plan;
pub mod threads;

pub use csv::{Cell, Table};
