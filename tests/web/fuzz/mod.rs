//! Inputs nobody thought of, for a stated time each: what is typed for threads, drills and lengths,
//! what stands behind an address, the text of a note, its form.
//!
//! They are new in every run. What one finds becomes a case of its own beside the code it is about.

mod addresses;
mod designations;
mod difference;
mod form;
mod markdown;
mod queries;
mod slips;
mod timed;
mod worst_difference;
