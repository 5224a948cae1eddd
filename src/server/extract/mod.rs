//! What a handler asks of a request: who sent it, from where, and what it holds.

mod asker;
pub mod client;
mod deed;
mod drawer;
mod fields;
mod reader;
mod refusal;
mod secretary;

pub use asker::Asker;
pub use deed::JustDid;
pub use drawer::{DRAWER, Personal};
pub use fields::{Fields, WORD, room};
pub use reader::{AnyMember, Member, Reader, signed_in};
pub use refusal::Refusal;
pub use secretary::{ProvedMember, ProvedSecretary, Secretary, is_proved};
