//! Work of more than a millisecond, away from the threads that answer everybody. What takes long goes one
//! at a time: eight readers who ask for the longest page keep one core busy and hold nobody else up.

use std::sync::Arc;

use tokio::sync::Semaphore;
use tokio::task::spawn_blocking;

use crate::Error;

/// Does work of a few milliseconds beside the other requests.
pub(super) async fn aside<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Error> {
    spawn_blocking(work).await.map_err(|error| Error::Internal(error.into()))
}

/// The place for work that takes long.
#[derive(Clone, Debug)]
pub struct Apart(Arc<Semaphore>);

impl Default for Apart {
    fn default() -> Self {
        Self(Arc::new(Semaphore::new(1)))
    }
}

impl Apart {
    /// Does it once it is its turn. The turn lasts until it is done, also where its reader has gone.
    pub(super) async fn run<T: Send + 'static>(
        &self,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Error> {
        let turn = Arc::clone(&self.0).acquire_owned().await;
        let done = spawn_blocking(move || {
            let _turn = turn;
            work()
        });
        done.await.map_err(|error| Error::Internal(error.into()))
    }
}
