//! The doors for people: pages, keeping a drawer, and the health of the server.

pub mod drawer;
pub mod health;
pub mod reference;
pub mod refusal;
