//! What must hold for every input, shown on many.

mod calculators;
mod choice;
mod reading;
