//! The shop notes, end to end.

mod allowance;
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
mod secrets;
mod stalls;
mod unread;
