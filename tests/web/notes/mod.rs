//! The shop notes, end to end.

mod club;
mod contention;
mod forms;
mod fuzz;
mod inspection;
mod journey;
mod marks;
mod own_data;
mod rules;
mod secrets;
