//! Digits that do not come twice.

use std::hash::{BuildHasher, RandomState};

/// Sixteen hexadecimal digits that do not come twice. Not a secret: nothing may rest on them being
/// hard to guess.
#[must_use]
pub(crate) fn random() -> String {
    // Each `RandomState` has keys of its own, so equal input gives a different digest.
    format!("{:016x}", RandomState::new().hash_one(0_u8))
}
