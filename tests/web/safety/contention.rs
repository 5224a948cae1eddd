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
use crate::turns::{Answered, Storm, Waited};

const WRITERS: usize = 50;
/// How many, and how long each waits before its next.
const READERS: (usize, Duration) = (8, Duration::from_millis(10));

/// Does this again and again with a pause between, counts what fails, and says what each cost.
fn ask_again(
    (clients, pause): (usize, Duration),
    stop: &AtomicBool,
    failed: &AtomicU64,
    ask: impl Fn() -> (Waited, bool) + Sync,
) -> Vec<Waited> {
    let waits = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..clients {
            scope.spawn(|| {
                while !stop.load(Ordering::SeqCst) {
                    let (waited, is_answered) = ask();
                    if !is_answered {
                        failed.fetch_add(1, Ordering::SeqCst);
                    }
                    waits.lock().unwrap().push(waited);
                    std::thread::sleep(pause);
                }
            });
        }
    });
    waits.into_inner().unwrap()
}

/// The writers write for this time, each with this pause before its next.
fn write_and_read_for(time: Duration, pause: Duration) -> Storm {
    let _disk = storm::alone();
    let folder = Folder::new();
    let data = folder.path().join("data");
    let writer = stormed::start(&data);
    let address = writer.address;
    let (next, failed, stop) = (AtomicU64::new(0), AtomicU64::new(0), AtomicBool::new(false));
    let answered = Answered::default();
    let post = || {
        let key = notes::key("many", next.fetch_add(1, Ordering::SeqCst));
        let begun = answered.begin();
        let is_answered = stormed::write(address, &key);
        let waited = begun.end();
        answered.one_more();
        (waited, is_answered)
    };
    let get = || {
        let begun = answered.begin();
        let is_answered = stormed::read(address);
        (begun.end(), is_answered)
    };
    let storm = std::thread::scope(|scope| {
        let writes = scope.spawn(|| ask_again((WRITERS, pause), &stop, &failed, post));
        let reads = scope.spawn(|| ask_again(READERS, &stop, &failed, get));
        std::thread::sleep(time);
        stop.store(true, Ordering::SeqCst);
        Storm { writes: writes.join().unwrap(), reads: reads.join().unwrap() }
    });
    assert_eq!(failed.into_inner(), 0, "somebody was refused");
    assert_eq!(notes::read(&data).whole.len(), storm.writes.len());
    storm
}

#[test]
fn f15_fifty_writers_and_nobody_is_refused() {
    let storm = write_and_read_for(Duration::from_secs(10), Duration::from_millis(100));
    storm.check_fair(WRITERS);
}

#[test]
#[ignore = "a minute of fifty writers: tests/run --soak"]
fn f15_fifty_writers_for_a_minute_and_nobody_is_refused() {
    write_and_read_for(Duration::from_secs(60), Duration::ZERO).check_prompt();
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
fn f14_a_longer_lock_is_refused_and_pages_are_still_read() {
    let server = Running::start();
    let address = server.address;
    // It stays locked until all of this has been answered.
    locked(&server, || {
        let request = "GET /readyz HTTP/1.1\r\nHost: club.test\r\nConnection: close\r\n\r\n";
        let ready = std::thread::spawn(move || send(address, request).unwrap());
        std::thread::sleep(Duration::from_secs(1));
        assert_eq!(get(address, "/threads/ba/5"), Some(200));
        assert!(!ready.is_finished(), "the page waited as long as who waits for the lock");
        let ready = ready.join().unwrap();
        assert!(ready.starts_with("HTTP/1.1 503 "), "{ready}");
        assert!(ready.contains("retry-after: "), "{ready}");
    });
    assert_eq!(get(address, "/readyz"), Some(200), "it recovers by itself");
}
