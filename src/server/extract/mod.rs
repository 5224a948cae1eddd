//! What a handler asks of a request: who sent it, from where, and what it holds.

mod asker;
mod fields;
mod reader;
mod secretary;

pub use asker::Asker;
pub use fields::Fields;
pub use reader::{AnyMember, Member, Reader};
pub use secretary::{ProvedMember, ProvedSecretary, Secretary};
