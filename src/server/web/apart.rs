//! Work of more than a millisecond, away from the threads that answer everybody. What takes long goes one
//! at a time: eight readers who ask for the longest page keep one core busy and hold nobody else up.
//!
//! Strangers wait for one another first, and one of them at most waits beside the members: however many
//! ask, a member waits for two pieces of work and those of other members. Nobody waits without end.

use std::sync::Arc;
use std::time::Duration;

use tokio::sync::Semaphore;
use tokio::task::spawn_blocking;
use tokio::time::timeout;

use crate::Error;
use crate::rules::limits::Client;
use crate::rules::shares::Shares;

/// How many wait at once, and how many of one client: a browser asks for six at once.
const WAITING: (usize, usize) = (64, 8);
/// How long one waits for a turn.
const LONGEST: Duration = Duration::from_secs(15);

/// Does work of a few milliseconds beside the other requests.
pub(super) async fn aside<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Error> {
    spawn_blocking(work).await.map_err(|error| Error::Internal(error.into()))
}

/// The place for work that takes long.
#[derive(Clone, Debug)]
pub struct Apart {
    turn: Arc<Semaphore>,
    /// Strangers come to the turn one by one.
    strangers: Arc<Semaphore>,
    /// Who waits.
    members_waiting: Shares,
    strangers_waiting: Shares,
    /// How long one waits for a turn.
    longest: Duration,
}

impl Default for Apart {
    fn default() -> Self {
        let one = || Arc::new(Semaphore::new(1));
        let waiting = || Shares::of(WAITING.0, WAITING.1);
        Self {
            turn: one(),
            strangers: one(),
            members_waiting: waiting(),
            strangers_waiting: waiting(),
            longest: LONGEST,
        }
    }
}

impl Apart {
    /// Does it for this client once it is its turn. The turn lasts until it is done, also where its reader
    /// has gone.
    ///
    /// # Errors
    /// Too many wait already, or the turn does not come in time.
    pub(super) async fn run<T: Send + 'static>(
        &self,
        by: Option<Client>,
        work: impl FnOnce() -> T + Send + 'static,
    ) -> Result<T, Error> {
        let is_member = matches!(by, Some(Client::Member(_)));
        let waiting = if is_member { &self.members_waiting } else { &self.strangers_waiting };
        let waits = waiting.take(by, 1).ok_or(Error::Occupied)?;
        let come = async {
            let first = if is_member { None } else { Some(self.strangers.acquire().await) };
            let turn = Arc::clone(&self.turn).acquire_owned().await;
            drop(first);
            turn
        };
        let turn = timeout(self.longest, come).await.map_err(|_| Error::Occupied)?;
        let done = spawn_blocking(move || {
            let _held = (turn, waits);
            work()
        });
        done.await.map_err(|error| Error::Internal(error.into()))
    }
}

#[cfg(test)]
mod tests {
    use std::net::{IpAddr, Ipv4Addr};
    use std::sync::{Mutex, mpsc};

    use tokio::task::{JoinHandle, yield_now};

    use super::*;
    use crate::rules::auth::MemberId;

    /// Work that waits to be let go, and what was done in which order.
    struct Bench {
        apart: Apart,
        order: Arc<Mutex<Vec<&'static str>>>,
    }

    impl Bench {
        fn new() -> Self {
            Self { apart: Apart::default(), order: Arc::default() }
        }

        async fn ask(
            &self,
            by: Client,
            what: &'static str,
        ) -> (mpsc::Sender<()>, JoinHandle<Result<(), Error>>) {
            let (go, waits) = mpsc::channel::<()>();
            let (apart, order) = (self.apart.clone(), Arc::clone(&self.order));
            let asked = tokio::spawn(async move {
                let work = move || {
                    let _ = waits.recv();
                    if let Ok(mut order) = order.lock() {
                        order.push(what);
                    }
                };
                apart.run(Some(by), work).await
            });
            for _ in 0..8 {
                yield_now().await;
            }
            (go, asked)
        }

        fn order(&self) -> Vec<&'static str> {
            self.order.lock().map(|order| order.clone()).unwrap_or_default()
        }
    }

    fn address(last: u8) -> Client {
        IpAddr::from(Ipv4Addr::new(192, 0, 2, last)).into()
    }

    #[tokio::test]
    async fn u31_a_member_waits_for_no_more_than_two_strangers() {
        let bench = Bench::new();
        let mut asked = Vec::new();
        for last in 0..30 {
            asked.push(bench.ask(address(last), "stranger").await);
        }
        asked.push(bench.ask(Client::Member(MemberId(1)), "member").await);
        let (go, asked): (Vec<_>, Vec<_>) = asked.into_iter().unzip();
        drop(go);
        for asked in asked {
            assert!(matches!(asked.await, Ok(Ok(()))));
        }
        let order = bench.order();
        assert_eq!(order.len(), 31);
        let before = order.iter().take_while(|what| **what == "stranger").count();
        assert!(before <= 2, "{order:?}");
    }

    #[tokio::test]
    async fn u31_one_address_takes_no_more_than_its_places() {
        let bench = Bench::new();
        let mut asked = Vec::new();
        for _ in 0..12 {
            asked.push(bench.ask(address(1), "greedy").await);
        }
        let refused = asked.iter().filter(|(_, asked)| asked.is_finished()).count();
        assert_eq!(refused, 12 - WAITING.1);
        asked.push(bench.ask(address(2), "other").await);
        let (go, asked): (Vec<_>, Vec<_>) = asked.into_iter().unzip();
        drop(go);
        for asked in asked {
            assert!(matches!(asked.await, Ok(Ok(()) | Err(Error::Occupied))));
        }
        assert_eq!(bench.order().len(), WAITING.1 + 1);
        assert!(bench.order().contains(&"other"));
    }

    #[tokio::test]
    async fn u31_nobody_waits_without_end() {
        let mut bench = Bench::new();
        bench.apart.longest = Duration::from_millis(50);
        let (go, held) = bench.ask(address(1), "held").await;
        let (_, late) = bench.ask(address(2), "late").await;
        assert!(matches!(late.await, Ok(Err(Error::Occupied))));
        drop(go);
        assert!(matches!(held.await, Ok(Ok(()))));
        assert_eq!(bench.order(), ["held"]);
    }
}
