//! What must hold for every input, shown on many.

#[cfg(feature = "pages")]
mod calculators;
mod choice;
#[cfg(feature = "pages")]
mod drawer;
mod reading;
