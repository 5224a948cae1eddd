//! What must hold for every input, shown on many.

mod reading;
