//! What must hold for every input, shown on many, and the rules of the trade one by one.

mod aim;
mod calculators;
mod choice;
mod machine;
mod printing;
mod quantities;
mod reading;
mod reaming;
mod uses;
