//! The doors for people: pages, and the health of the server.

pub mod health;
pub mod notes;
pub mod reference;
pub mod refusal;
