//! How soon an account may be tried again after wrong passwords or codes.
//!
//! The first ten cost nothing: that is a person hunting for the right password, and one address
//! cannot make more of them at once. Then the wait doubles from a second to a quarter of an hour, so
//! that at most about two dozen are tried in the first hour and four in each one after, from however
//! many addresses. It is never for good. A name that nobody has is treated alike.
//!
//! Kept in memory on the monotonic clock: a change of the wall clock neither frees nor blocks
//! anybody, and a restart forgets.

use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use sha2::{Digest, Sha256};

use crate::rules::limits::Recent;

/// Wrong tries that cost nothing.
pub const FREE: u32 = 10;
/// The longest wait.
pub const LONGEST: Duration = Duration::from_secs(15 * 60);

/// Names remembered in one generation; twice as many at most are kept.
const GENERATION: usize = 8192;

/// The wrong tries at every account.
#[derive(Debug)]
pub struct Tries(Mutex<Recent<[u8; 32], Wrong>>);

#[derive(Clone, Copy, Debug)]
struct Wrong {
    count: u32,
    last: Instant,
}

impl Default for Tries {
    fn default() -> Self {
        Self(Mutex::new(Recent::new(GENERATION)))
    }
}

impl Tries {
    /// Whether the account with this name may be tried now.
    ///
    /// # Errors
    /// It may not: how long until it may.
    pub fn may_try(&self, key: &str, now: Instant) -> Result<(), Duration> {
        let Some(wrong) = self.recent().get(&digest(key)) else { return Ok(()) };
        let left = wait(wrong.count).saturating_sub(now.saturating_duration_since(wrong.last));
        if left.is_zero() { Ok(()) } else { Err(left) }
    }

    /// It was tried, and the password or the code was wrong. Called before the answer is known too,
    /// so that many tries at once count as many: [`Self::right`] takes it back.
    pub fn tried(&self, key: &str, now: Instant) {
        let mut recent = self.recent();
        let key = digest(key);
        let before = recent.get(&key).filter(|wrong| {
            // An hour after the longest wait nobody is trying any more.
            now.saturating_duration_since(wrong.last) < LONGEST * 5
        });
        let count = before.map_or(0, |wrong| wrong.count).saturating_add(1);
        recent.put(key, Wrong { count, last: now });
    }

    /// The whole of it was right: the account begins anew.
    pub fn right(&self, key: &str, now: Instant) {
        self.recent().put(digest(key), Wrong { count: 0, last: now });
    }

    fn recent(&self) -> std::sync::MutexGuard<'_, Recent<[u8; 32], Wrong>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// How long after so many wrong tries.
#[must_use]
pub fn wait(wrong: u32) -> Duration {
    match wrong.checked_sub(FREE) {
        None => Duration::ZERO,
        Some(0) => Duration::ZERO,
        Some(over) => Duration::from_secs(1 << over.saturating_sub(1).min(20)).min(LONGEST),
    }
}

/// Names of any length take the same room.
fn digest(key: &str) -> [u8; 32] {
    Sha256::digest(key.as_bytes()).into()
}
