//! What the server answers to people: pages, the form of the drawer, and the health of the server.
//!
//! - [`reference`]: every page that needs no server; [`refusal`]: what cannot be answered.
//! - [`sign_in`], [`join`], [`me`], [`people`], [`privacy`]: the members, and who lets them in.

pub mod apart;
pub mod drawer;
mod form_page;
pub mod health;
pub mod join;
pub mod me;
pub mod next;
pub mod notes;
pub mod page;
pub mod people;
pub mod privacy;
mod qr;
pub mod reference;
pub mod refusal;
pub mod sign_in;
mod when;
