//! F14 and F15: another program holds the lock, and many members write at once.

use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use holewright_server::db::FILE_NAME;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection};

use super::asked::{get, send};
use super::{notes, storm, stormed};
use crate::faults::Running;
use crate::support::Folder;

const WRITERS: usize = 50;
/// How many, and how long each waits before its next.
const READERS: (usize, Duration) = (8, Duration::from_millis(10));

/// Does this again and again with a pause between, counts what fails, and gives the time each took,
/// shortest first.
fn times(
    (clients, pause): (usize, Duration),
    stop: &AtomicBool,
    failed: &AtomicU64,
    ask: impl Fn() -> bool + Sync,
) -> Vec<Duration> {
    let times = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..clients {
            scope.spawn(|| {
                while !stop.load(Ordering::SeqCst) {
                    let since = Instant::now();
                    if !ask() {
                        failed.fetch_add(1, Ordering::SeqCst);
                    }
                    times.lock().unwrap().push(since.elapsed());
                    std::thread::sleep(pause);
                }
            });
        }
    });
    let mut times = times.into_inner().unwrap();
    times.sort_unstable();
    times
}

fn p99(sorted: &[Duration]) -> Duration {
    sorted[sorted.len() * 99 / 100]
}

/// The writers write for this time, each with this pause before its next.
fn write_and_read_for(time: Duration, pause: Duration) {
    let _disk = storm::alone();
    let folder = Folder::new();
    let data = folder.path().join("data");
    let writer = stormed::start(&data);
    let address = writer.address;
    let (next, failed, stop) = (AtomicU64::new(0), AtomicU64::new(0), AtomicBool::new(false));
    let post = || stormed::write(address, &notes::key("many", next.fetch_add(1, Ordering::SeqCst)));
    let (writes, reads) = std::thread::scope(|scope| {
        let writes = scope.spawn(|| times((WRITERS, pause), &stop, &failed, post));
        let reads = scope.spawn(|| times(READERS, &stop, &failed, || stormed::read(address)));
        std::thread::sleep(time);
        stop.store(true, Ordering::SeqCst);
        (writes.join().unwrap(), reads.join().unwrap())
    });
    println!(
        "F15: {} writes, half in {:?}, p99 {:?}, slowest {:?}; {} reads, p99 {:?}",
        writes.len(),
        writes[writes.len() / 2],
        p99(&writes),
        writes[writes.len() - 1],
        reads.len(),
        p99(&reads)
    );
    assert_eq!(failed.into_inner(), 0, "somebody was refused");
    assert_eq!(notes::read(&data).whole.len(), writes.len());
    assert!(p99(&writes) <= Duration::from_millis(250), "writes: {:?}", p99(&writes));
    assert!(p99(&reads) <= Duration::from_millis(50), "reads: {:?}", p99(&reads));
}

/// With a pause, because an unoptimised server beside other tests is to be timed, not the machine:
/// still some four hundred notes a second.
#[test]
fn f15_fifty_writers_and_nobody_is_refused() {
    write_and_read_for(Duration::from_secs(10), Duration::from_millis(100));
}

#[test]
#[ignore = "a minute of fifty writers: tests/run --soak"]
fn f15_fifty_writers_for_a_minute_and_nobody_is_refused() {
    write_and_read_for(Duration::from_secs(60), Duration::ZERO);
}

/// Holds the write lock of a running server from outside while this runs.
fn locked<T>(server: &Running, meanwhile: impl FnOnce() -> T) -> T {
    let file = server.folder.path().join("data").join(FILE_NAME);
    notes::block(async {
        let mut other = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
        let held = other.begin_with("BEGIN EXCLUSIVE").await.unwrap();
        let result = meanwhile();
        held.rollback().await.unwrap();
        other.close().await.unwrap();
        result
    })
}

#[test]
fn f14_a_lock_of_three_seconds_is_waited_for() {
    let server = Running::start();
    let address = server.address;
    let asked = locked(&server, || {
        let since = Instant::now();
        let asked = std::thread::spawn(move || (get(address, "/readyz"), since.elapsed()));
        std::thread::sleep(Duration::from_secs(3));
        asked
    });
    let (answer, after) = asked.join().unwrap();
    assert_eq!(answer, Some(200));
    assert!(after > Duration::from_millis(2500), "it did not wait for the lock: {after:?}");
}

#[test]
fn f14_a_longer_lock_is_refused_in_time_and_pages_are_still_read() {
    let server = Running::start();
    let address = server.address;
    let since = Instant::now();
    locked(&server, || {
        let request = "GET /readyz HTTP/1.1\r\nHost: club.test\r\nConnection: close\r\n\r\n";
        let ready = std::thread::spawn(move || send(address, request).unwrap());
        std::thread::sleep(Duration::from_secs(1));
        assert_eq!(get(address, "/threads/ba/5"), Some(200));
        assert!(since.elapsed() < Duration::from_secs(3), "{:?}", since.elapsed());
        let ready = ready.join().unwrap();
        assert!(ready.starts_with("HTTP/1.1 503 "), "{ready}");
        assert!(ready.contains("retry-after: "), "{ready}");
        assert!(since.elapsed() <= Duration::from_secs(6), "{:?}", since.elapsed());
    });
    assert_eq!(get(address, "/readyz"), Some(200), "it recovers by itself");
}
