//! Whose something is.

use crate::rules::auth::MemberId;

/// A member as an author.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Author {
    /// Number.
    pub id: MemberId,
    /// The name shown.
    pub name: String,
}
