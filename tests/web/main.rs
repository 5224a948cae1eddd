//! The server, against its real router, its real database and, where sockets or settings matter,
//! its real binary.

#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a helper that does not find what it looks for ends its test"
)]

mod addresses;
mod api;
mod bytes;
mod database;
mod demo;
mod drawer;
mod endings;
mod entries;
mod faults;
mod fuzz;
mod guards;
#[path = "../site/html.rs"]
mod html;
#[path = "../site/kinds.rs"]
mod kinds;
#[path = "../site/markup.rs"]
mod markup;
mod notes;
#[path = "../site/members.rs"]
mod open;
#[path = "../site/outside.rs"]
mod outside;
mod page;
mod people;
#[path = "../process.rs"]
mod process;
mod refusals;
mod safety;
mod settings;
mod sockets;
mod support;
mod turns;
mod validators;
#[path = "../site/wordlist.rs"]
mod wordlist;
mod worst;
