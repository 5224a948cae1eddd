//! The shop notes, end to end.

mod allowance;
pub(crate) mod club;
mod contention;
mod deciding;
mod fields;
mod forms;
mod found;
mod gate;
mod histories;
mod import;
mod in_hand;
mod inspection;
mod journey;
mod lost;
pub(crate) mod marks;
mod newsletter;
mod own_data;
mod pressure;
mod reports;
mod rules;
mod searches;
mod secrets;
mod stalls;
mod unread;
