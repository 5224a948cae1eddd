//! The shop notes, end to end.

pub(crate) mod club;
mod contention;
mod fields;
mod forms;
mod found;
mod gate;
mod histories;
mod inspection;
mod journey;
pub(crate) mod marks;
mod own_data;
mod pressure;
mod reports;
mod rules;
mod searches;
mod secrets;
mod stalls;
