//! What must hold for every input, shown on many.

mod choice;
mod reading;
