//! Clients that stop half-way, ask too much, or come in crowds, and the process that is stopped,
//! starved or panics. Each test is named for its line of the list of faults.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

mod bodies;
mod client;
mod crowd;
mod crowds;
mod in_hand;
mod in_process;
mod one_address;
mod panics;
mod running;
mod silence;
mod slow_bodies;
mod slow_readers;
mod stop;
mod unread_log;

pub(crate) use client::{get, send, status};
pub(crate) use running::Running;
