//! What is looked up: threads, drills, materials, clearance rows – primary values only, each as its
//! source prints it. Formulas are in [`crate::calc`].

pub mod clearance;
pub mod countersinks;
pub mod drill_force;
pub mod drills;
pub mod fasteners;
pub mod inserts;
pub mod lists;
pub mod materials;
pub mod reaming;
pub mod reaming_pairs;
pub mod rescue;
pub mod screw_limits;
pub mod screw_metals;
pub mod source;
pub mod tapping_force;
pub mod threads;
pub mod tolerances;
pub mod tool_steel;
