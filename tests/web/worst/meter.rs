//! What one request costs: how long it holds the thread that answers everybody, in its own time on a core,
//! which does not count what else the machine does; the steps of its SQL; the bytes of its answer.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode};
use holewright_server::db::Database;
use tokio::runtime::{Builder, Runtime};
use tokio::task::yield_now;
use tower::ServiceExt;

use crate::notes::marks::on_a_core;

/// SQLite tells of every so many steps.
const TELLS: i32 = 100;

/// What one request cost.
#[derive(Clone, Debug)]
pub(super) struct Cost {
    pub(super) status: StatusCode,
    /// How the answer begins, from where a page says what it says.
    pub(super) begin: String,
    pub(super) bytes: usize,
    /// The longest that the thread answered nobody else.
    pub(super) held: Duration,
    /// Until the answer was whole, on this machine as busy as it was.
    pub(super) took: Duration,
    /// The steps of SQLite's machine, in hundreds.
    pub(super) steps: u64,
}

impl Cost {
    /// The least of both: what else a first request wakes does not count.
    pub(super) fn least(self, other: Self) -> Self {
        Self {
            held: self.held.min(other.held),
            took: self.took.min(other.took),
            steps: self.steps.min(other.steps),
            ..self
        }
    }
}

/// A runtime of one thread, which looks at every task by turns.
pub(super) fn runtime() -> Runtime {
    Builder::new_current_thread().enable_all().event_interval(1).build().unwrap()
}

/// Counts the steps of all connections.
#[derive(Clone, Default)]
pub(super) struct Steps(Arc<AtomicU64>);

impl Steps {
    pub(super) async fn of(database: &Database) -> Self {
        let steps = Self::default();
        for pool in database.pools() {
            // All at once: else the same would be had again and again.
            let mut had = Vec::new();
            for _ in 0..pool.size() {
                had.push(pool.acquire().await.unwrap());
            }
            for connection in &mut had {
                let count = Arc::clone(&steps.0);
                connection.lock_handle().await.unwrap().set_progress_handler(TELLS, move || {
                    count.fetch_add(1, Ordering::Relaxed);
                    true
                });
            }
        }
        steps
    }

    fn count(&self) -> u64 {
        self.0.load(Ordering::Relaxed)
    }
}

/// Asks, and looks meanwhile how long this thread is held.
pub(super) async fn cost(router: &Router, steps: &Steps, request: Request<Body>) -> Cost {
    let (before, began) = (steps.count(), Instant::now());
    let router = router.clone();
    let asked = tokio::spawn(async move {
        let (parts, body) = router.oneshot(request).await.unwrap().into_parts();
        (parts.status, to_bytes(body, usize::MAX).await.unwrap())
    });
    let mut held = Duration::ZERO;
    while !asked.is_finished() {
        let since = on_a_core();
        yield_now().await;
        held = held.max(on_a_core() - since);
    }
    let (status, body) = asked.await.unwrap();
    let took = began.elapsed();
    let text = String::from_utf8_lossy(&body);
    let main = text.find("<main").unwrap_or_default();
    let begin = text.chars().skip(main).take(600).collect();
    Cost { status, begin, bytes: body.len(), held, took, steps: steps.count() - before }
}
