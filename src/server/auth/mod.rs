//! Who somebody is and what they may do: tokens, sessions, rights. Leaves out: SQL, pages.

pub mod cookie;
mod member;
mod token;

pub use member::{MemberId, Right, Rights, SignedIn};
pub use token::{Token, TokenHash};
