//! What the storms storm: a process to start, a note to send it, a question to ask it.
//!
//! These three lines are the seam: with the form of the notes on the server, they are its binary,
//! a POST of the form with the key as its `form_key`, and a page. What is then in the database is
//! read the same way (`notes.rs`).

pub(super) use super::writer::{read, start, write};
