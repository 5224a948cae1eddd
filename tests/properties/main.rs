//! What must hold for every input, shown on many, and the rules of the trade one by one.

#![expect(clippy::expect_used, reason = "a row that is not there must stop the test")]

mod aim;
mod asking;
mod blind_hole;
mod calculators;
mod choice;
mod clearance;
mod countersinks;
mod depths;
mod limits;
mod machine;
mod neighbours;
mod position;
mod printing;
mod quantities;
mod reading;
mod reaming;
mod strength;
mod tap_effort;
mod taper;
mod tapping;
mod uses;
mod words;
