//! Who somebody is and what they may do: tokens, sessions, rights. Leaves out: SQL, pages.
//!
//! - [`password`]: how passwords are kept; [`strength`]: which are taken; [`phrase`]: one to take.
//! - [`second_factor`]: the code besides it; [`digits`]: a code on paper or by telephone; [`tries`]: how soon to try again after a wrong one.
//! - [`name`]: what members are called; [`cookie`]: what the browser holds.

pub mod cookie;
pub mod digits;
mod member;
pub mod name;
pub mod password;
pub mod phrase;
pub mod second_factor;
pub mod strength;
mod token;
pub mod tries;

pub use member::{MemberId, Right, Rights, SignedIn};
pub use name::Name;
pub use password::Password;
pub use token::{NoChance, Token, TokenHash};
