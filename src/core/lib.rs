//! Holewright: what a drill, a tap and a metal will do together.
//!
//! - [`units`]: lengths, speeds and angles as types; reading what people type; all rounding and printing.
//! - [`tables`]: what is looked up – threads, drills, materials, clearance rows – each with its source.
//! - [`finder`]: what someone typed, to ranked hits over the tables and calculators.
//! - [`calc`]: the formulas, as pure functions.
//! - [`plan`]: one hole, from a [`plan::HoleSpec`] to ordered operations.
//! - [`asking`]: what people are asked for: fields, what was typed, what was wrong with it.
//! - [`calculators`]: each calculator with its question and its answer, and the table of them all.
//! - [`drawing`]: dimensioned drawings as SVG.
//! - [`export`]: the tables of the pages as files.

#[macro_use]
extern crate uom;

pub mod asking;
pub mod calc;
pub mod calculators;
pub mod drawing;
pub mod export;
pub mod finder;
pub mod plan;
pub mod tables;
pub mod units;
