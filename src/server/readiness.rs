//! Whether the server can do its work. The database is asked at most once a second: each answer
//! costs a write. A server that was told to stop is not ready.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use tokio::sync::Mutex;

use super::Error;
use super::db::{self, Database};
use super::rules::clock::Clock;

const HOLDS_FOR: Duration = Duration::from_secs(1);

/// The last time the database was found in order, and whether a stop was asked for.
#[derive(Debug, Default)]
pub struct Readiness {
    good_at: Mutex<Option<Instant>>,
    is_stopping: AtomicBool,
}

impl Readiness {
    /// From now on the server is not ready: it was told to stop.
    pub fn stop(&self) {
        self.is_stopping.store(true, Ordering::Relaxed);
    }

    /// Reads and writes the database, unless that went well less than a second ago.
    ///
    /// # Errors
    /// The server is stopping, or the database cannot be read or written.
    pub async fn check(&self, database: &Database, clock: Clock) -> Result<(), Error> {
        if self.is_stopping.load(Ordering::Relaxed) {
            return Err(Error::Stopping);
        }
        database.look().map_err(Error::Unavailable)?;
        let mut good_at = self.good_at.lock().await;
        if good_at.is_some_and(|then| then.elapsed() < HOLDS_FOR) {
            return Ok(());
        }
        *good_at = None;
        db::probe(database, clock.now()).await.map_err(Error::Unavailable)?;
        *good_at = Some(Instant::now());
        Ok(())
    }
}
