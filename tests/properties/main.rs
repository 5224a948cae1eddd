//! What must hold whatever is put in.

mod choice;
mod reading;
