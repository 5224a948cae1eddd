//! Whether the server can do its work, asked at most once a second: each answer costs a write.

use std::time::{Duration, Instant};

use tokio::sync::Mutex;

use super::clock::Clock;
use super::db::{self, Database, probe};

const HOLDS_FOR: Duration = Duration::from_secs(1);

/// The last time the database was found in order.
#[derive(Debug, Default)]
pub struct Readiness {
    good_at: Mutex<Option<Instant>>,
}

impl Readiness {
    /// Reads and writes the database, unless that went well less than a second ago.
    ///
    /// # Errors
    /// The database cannot be read or written.
    pub async fn check(&self, database: &Database, clock: Clock) -> Result<(), db::Error> {
        let mut good_at = self.good_at.lock().await;
        if good_at.is_some_and(|then| then.elapsed() < HOLDS_FOR) {
            return Ok(());
        }
        *good_at = None;
        probe::read_and_write(database, clock.now()).await?;
        *good_at = Some(Instant::now());
        Ok(())
    }
}
