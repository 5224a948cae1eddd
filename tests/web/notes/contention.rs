//! Many writers, and another program that holds the file: F14, F15.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use axum::http::StatusCode;
use holewright_server::db::FILE_NAME;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection};
use tokio::time::sleep;

use super::club::{Club, Person, Right};

async fn note(club: &Club, by: &Person, title: &str) -> (StatusCode, Duration) {
    let began = Instant::now();
    let fields =
        [("title", title), ("text", "Drilled No. 43."), ("thread", "4 BA"), ("do", "send")];
    let answer = club.post("/notes/new", Some(by), &fields).await;
    if answer.status == StatusCode::SERVICE_UNAVAILABLE {
        assert!(answer.headers.contains_key("retry-after"));
        // Nothing that was typed is lost.
        assert!(answer.body.contains("Drilled No. 43.</textarea>"), "{}", answer.body);
    } else {
        assert!(!answer.body.contains("locked"), "{}", answer.body);
    }
    (answer.status, began.elapsed())
}

/// Another program holds the file for so long, from a moment before this returns.
async fn hold(club: &Club, time: Duration) -> tokio::task::JoinHandle<()> {
    let file = club.folder().path().join(FILE_NAME);
    let mut other = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
    sqlx::query("BEGIN EXCLUSIVE").execute(&mut other).await.unwrap();
    tokio::spawn(async move {
        sleep(time).await;
        sqlx::query("ROLLBACK").execute(&mut other).await.unwrap();
        other.close().await.unwrap();
    })
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn f14_writes_wait_for_another_program_that_holds_the_file_for_three_seconds() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let held = hold(&club, Duration::from_secs(3)).await;
    let began = Instant::now();
    let (one, two, three, read) = tokio::join!(
        note(&club, &author, "One"),
        note(&club, &author, "Two"),
        note(&club, &author, "Three"),
        club.get("/notes", None),
    );
    assert_eq!(read.status, StatusCode::OK);
    for (status, took) in [one, two, three] {
        assert_eq!(status, StatusCode::SEE_OTHER);
        assert!(took < Duration::from_secs(5), "{took:?}");
    }
    assert!(began.elapsed() > Duration::from_millis(2500), "the file was not held");
    assert_eq!(club.count("SELECT count(*) FROM note").await, 3);
    held.await.unwrap();
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn f14_nobody_waits_longer_than_six_seconds_however_many_wait() {
    let club = Arc::new(Club::open().await);
    let author = club.join("Ada Penn", Right::None).await;
    let held = hold(&club, Duration::from_secs(8)).await;
    let mut waiting = Vec::new();
    for second in 0..4 {
        let (club, author) = (Arc::clone(&club), author.clone());
        waiting.push(tokio::spawn(async move {
            sleep(Duration::from_secs(second)).await;
            note(&club, &author, &format!("Second {second}")).await
        }));
    }
    let mut refused = 0;
    for waiting in waiting {
        let (status, took) = waiting.await.unwrap();
        assert!(took < Duration::from_secs(6), "{status} after {took:?}");
        refused += i32::from(status == StatusCode::SERVICE_UNAVAILABLE);
    }
    assert!(refused >= 2, "{refused} refused");
    held.await.unwrap();
    // Once the file is free, writing goes on, and nothing half done stands in the way.
    sleep(Duration::from_secs(5)).await;
    assert_eq!(note(&club, &author, "After").await.0, StatusCode::SEE_OTHER);
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
#[ignore = "a minute: run by --soak"]
async fn f14_a_file_held_for_a_minute_refuses_writes_and_serves_reads() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let held = hold(&club, Duration::from_secs(60)).await;
    while !held.is_finished() {
        let (status, took) = note(&club, &author, "Late").await;
        if held.is_finished() {
            break;
        }
        assert_eq!(status, StatusCode::SERVICE_UNAVAILABLE);
        assert!(took < Duration::from_secs(6), "{took:?}");
        let began = Instant::now();
        assert_eq!(club.get("/notes", None).await.status, StatusCode::OK);
        assert!(began.elapsed() < Duration::from_secs(1));
    }
    held.await.unwrap();
    assert_eq!(note(&club, &author, "After").await.0, StatusCode::SEE_OTHER);
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn f15_fifty_writers_beside_readers_are_never_told_of_a_lock() {
    storm(Duration::from_secs(10)).await;
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
#[ignore = "a minute: run by --soak"]
async fn f15_fifty_writers_for_a_minute() {
    storm(Duration::from_secs(60)).await;
}

/// Fifty members who each send a note about once a second, far more than a club writes in a day, and
/// four readers.
#[expect(clippy::print_stdout, reason = "the figures are what the soak is run for")]
async fn storm(time: Duration) {
    const WRITERS: u64 = 50;
    const PAUSE: Duration = Duration::from_secs(1);
    let club = Arc::new(Club::open().await);
    let over = Arc::new(AtomicBool::new(false));
    let mut writers = Vec::new();
    for number in 0..WRITERS {
        let author = club.join(&format!("Writer {number}"), Right::None).await;
        let (club, over) = (Arc::clone(&club), Arc::clone(&over));
        writers.push(tokio::spawn(async move {
            let mut took = Vec::new();
            sleep(PAUSE * u32::try_from(number).unwrap() / u32::try_from(WRITERS).unwrap()).await;
            while !over.load(Ordering::Relaxed) {
                let title = format!("Writer {number}, note {}", took.len());
                let (status, time) = note(&club, &author, &title).await;
                assert_eq!(status, StatusCode::SEE_OTHER, "{title}");
                took.push(time);
                sleep(PAUSE).await;
            }
            took
        }));
    }
    let mut readers = Vec::new();
    for path in ["/notes", "/threads/ba/4", "/notes?on=4+BA", "/notes?q=drilled"] {
        let (club, over) = (Arc::clone(&club), Arc::clone(&over));
        readers.push(tokio::spawn(async move {
            let mut took = Vec::new();
            while !over.load(Ordering::Relaxed) {
                let began = Instant::now();
                assert_eq!(club.get(path, None).await.status, StatusCode::OK, "{path}");
                took.push(began.elapsed());
                sleep(Duration::from_millis(50)).await;
            }
            took
        }));
    }
    sleep(time).await;
    over.store(true, Ordering::Relaxed);
    let (mut written, mut read) = (Vec::new(), Vec::new());
    for writer in writers {
        written.extend(writer.await.unwrap());
    }
    for reader in readers {
        read.extend(reader.await.unwrap());
    }
    let count = i64::try_from(written.len()).unwrap();
    assert_eq!(club.count("SELECT count(*) FROM note").await, count);
    let (writes, reads) = (percentile(&mut written), percentile(&mut read));
    println!("{count} writes, p99 {writes:?}; {} reads, p99 {reads:?}", read.len());
    assert!(count >= i64::try_from(time.as_secs()).unwrap() * 30, "{count} writes");
    assert!(writes <= Duration::from_millis(250), "writes: p99 {writes:?}");
    assert!(reads <= Duration::from_millis(50), "reads: p99 {reads:?}");
}

/// The 99th percentile.
fn percentile(times: &mut [Duration]) -> Duration {
    times.sort();
    times[times.len() * 99 / 100]
}
