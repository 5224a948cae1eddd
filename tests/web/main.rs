//! The server, against its real router, its real database and, where sockets or settings matter,
//! its real binary.

mod database;
mod entries;
mod refusals;
mod settings;
mod sockets;
mod support;
mod validators;
