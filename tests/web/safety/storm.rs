//! A storm of writes against a process that is killed in the middle of it. What is stormed, and how
//! it is asked to write, are given: the same storm goes over the server's own form.

use std::collections::BTreeSet;
use std::hash::{BuildHasher, RandomState};
use std::io::{BufRead, BufReader};
use std::net::SocketAddr;
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{PoisonError, RwLock};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use super::asked::get;
use super::notes;
use crate::process::{Process, wait_until};

/// How many clients write at once.
const CLIENTS: usize = 8;

/// Held shared by whatever presses the disk, alone by whatever times it.
static DISK: RwLock<()> = RwLock::new(());

/// Beside other storms.
pub(super) fn with_others() -> impl Sized {
    DISK.read().unwrap_or_else(PoisonError::into_inner)
}

/// With no other storm.
pub(super) fn alone() -> impl Sized {
    DISK.write().unwrap_or_else(PoisonError::into_inner)
}

/// A process to be killed. It has printed its address.
pub(crate) struct Victim {
    process: Process,
    pub(crate) address: SocketAddr,
}

impl Victim {
    /// Starts it and waits for the address on its standard output.
    pub(crate) fn start(command: &Command) -> Self {
        let mut process = Process::start(command, Stdio::null());
        let mut lines = BufReader::new(process.stdout.take().unwrap()).lines();
        let address = lines.find_map(|line| {
            let line = line.unwrap();
            let rest = line.split("http://").nth(1)?;
            let end = rest.find(|c: char| !(c.is_ascii_digit() || ".:".contains(c)));
            rest[..end.unwrap_or(rest.len())].parse().ok()
        });
        // Read on: a full pipe would hold it up.
        std::thread::spawn(move || lines.for_each(drop));
        Self {
            process,
            address: address.unwrap_or_else(|| panic!("it ended before it said its address")),
        }
    }

    /// The number of the process.
    pub(crate) fn id(&self) -> u32 {
        self.process.id()
    }

    /// Ends it as a power cut ends a process: with SIGKILL.
    pub(crate) fn kill(&mut self) {
        self.process.kill().unwrap();
        self.process.wait().unwrap();
    }

    /// Ends it as whoever keeps it ends it: with SIGTERM.
    pub(crate) fn end(mut self) {
        kill_process(Pid::from_child(&self.process), Signal::TERM).unwrap();
        assert!(self.process.ends().success());
    }
}

/// Whether it says that it is ready.
pub(super) fn is_ready(address: SocketAddr) -> bool {
    get(address, "/readyz") == Some(200)
}

/// Writers that go on until they are told to stop or the process is gone.
pub(super) struct Storm {
    pub(super) acknowledged: BTreeSet<String>,
    pub(super) refused: u64,
}

/// Lets clients write, one note after another, while this runs; then stops them.
pub(super) fn beside<T>(
    address: SocketAddr,
    prefix: &str,
    post: impl Fn(SocketAddr, &str) -> bool + Sync,
    meanwhile: impl FnOnce(&dyn Fn() -> BTreeSet<String>) -> T,
) -> (Storm, T) {
    let next = AtomicU64::new(0);
    let refused = AtomicU64::new(0);
    let stop = AtomicBool::new(false);
    let acknowledged = std::sync::Mutex::new(BTreeSet::new());
    let result = std::thread::scope(|scope| {
        let stopping = Stopping(&stop);
        for _ in 0..CLIENTS {
            scope.spawn(|| {
                while !stop.load(Ordering::SeqCst) {
                    let key = notes::key(prefix, next.fetch_add(1, Ordering::SeqCst));
                    if post(address, &key) {
                        acknowledged.lock().unwrap().insert(key);
                    } else {
                        refused.fetch_add(1, Ordering::SeqCst);
                        // The process may be gone: not a thousand refusals more.
                        std::thread::sleep(Duration::from_millis(5));
                    }
                }
            });
        }
        let result = meanwhile(&|| acknowledged.lock().unwrap().clone());
        drop(stopping);
        result
    });
    let acknowledged = acknowledged.into_inner().unwrap();
    (Storm { acknowledged, refused: refused.into_inner() }, result)
}

/// Tells the writers to stop, also where the test fails: it would wait for them.
struct Stopping<'a>(&'a AtomicBool);

impl Drop for Stopping<'_> {
    fn drop(&mut self) {
        self.0.store(true, Ordering::SeqCst);
    }
}

/// What the rounds came to.
#[derive(Debug, Default)]
pub(super) struct Rounds {
    pub(super) rounds: u32,
    pub(super) acknowledged: usize,
    pub(super) lost: usize,
    pub(super) half: usize,
    /// Until a process that was killed was ready again.
    pub(super) slowest: Duration,
}

/// Starts, storms, kills and starts again, so many times, and looks after each kill for what was
/// acknowledged. The data must be in order each time.
pub(super) fn rounds(
    data: &Path,
    count: u32,
    start: impl Fn(&Path) -> Victim,
    post: impl Fn(SocketAddr, &str) -> bool + Sync,
) -> Rounds {
    let mut sum = Rounds::default();
    let mut acknowledged = BTreeSet::new();
    let mut victim = start(data);
    for round in 0..count {
        let delay = Duration::from_millis(50 + RandomState::new().hash_one(round) % 451);
        let prefix = format!("round{round:03}");
        let (storm, ()) = beside(victim.address, &prefix, &post, |acknowledged| {
            std::thread::sleep(delay);
            wait_until("an acknowledged note", || !acknowledged().is_empty());
            victim.kill();
        });
        acknowledged.extend(storm.acknowledged);

        let since = Instant::now();
        victim = start(data);
        wait_until("readiness", || is_ready(victim.address));
        sum.slowest = sum.slowest.max(since.elapsed());

        let found = notes::read(data);
        sum.rounds += 1;
        sum.half += found.half.len();
        sum.lost = acknowledged.difference(&found.whole).count();
        assert_eq!(sum.lost, 0, "round {round}, killed after {delay:?}");
        assert_eq!(found.half, BTreeSet::new(), "round {round}, killed after {delay:?}");
    }
    sum.acknowledged = acknowledged.len();
    sum
}
