//! Many writers, and another program that holds the file: F14, F15.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use axum::http::StatusCode;
use holewright_server::db::FILE_NAME;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection, SqliteConnection};
use tokio::time::sleep;

use super::club::{Club, Person, Right};
use crate::turns::{Answered, Storm};

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

/// Another program holds the file, from a moment before this returns.
async fn hold(club: &Club) -> SqliteConnection {
    let file = club.folder().path().join(FILE_NAME);
    let mut other = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
    sqlx::query("BEGIN EXCLUSIVE").execute(&mut other).await.unwrap();
    other
}

async fn let_go(mut other: SqliteConnection) {
    sqlx::query("ROLLBACK").execute(&mut other).await.unwrap();
    other.close().await.unwrap();
}

/// Lets go after this time.
fn let_go_after(time: Duration, other: SqliteConnection) -> tokio::task::JoinHandle<()> {
    tokio::spawn(async move {
        sleep(time).await;
        let_go(other).await;
    })
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn f14_writes_wait_for_another_program_that_holds_the_file_for_three_seconds() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let held = let_go_after(Duration::from_secs(3), hold(&club).await);
    let began = Instant::now();
    let (one, two, three, read) = tokio::join!(
        note(&club, &author, "One"),
        note(&club, &author, "Two"),
        note(&club, &author, "Three"),
        club.get("/notes", None),
    );
    assert_eq!(read.status, StatusCode::OK);
    for (status, _) in [one, two, three] {
        assert_eq!(status, StatusCode::SEE_OTHER);
    }
    assert!(began.elapsed() > Duration::from_millis(2500), "the file was not held");
    assert_eq!(club.count("SELECT count(*) FROM note").await, 3);
    held.await.unwrap();
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn f14_however_many_wait_nobody_waits_for_the_waits_of_others() {
    let club = Arc::new(Club::open().await);
    let author = club.join("Ada Penn", Right::None).await;
    let held = hold(&club).await;
    let mut waiting = Vec::new();
    for second in 0..4 {
        let (club, author) = (Arc::clone(&club), author.clone());
        waiting.push(tokio::spawn(async move {
            sleep(Duration::from_secs(second)).await;
            note(&club, &author, &format!("Second {second}")).await
        }));
    }
    let mut times = Vec::new();
    for waiting in waiting {
        let (status, took) = waiting.await.unwrap();
        assert_eq!(status, StatusCode::SERVICE_UNAVAILABLE, "after {took:?}");
        times.push(took);
    }
    // Who comes a second after the first would else wait for the first one's wait to end and then as
    // long again: nine seconds instead of five.
    let (shortest, longest) = (times.iter().min().unwrap(), times.iter().max().unwrap());
    assert!(*longest < *shortest * 3 / 2, "{times:?}");
    let_go(held).await;
    // Once the file is free, writing goes on, and nothing half done stands in the way.
    assert_eq!(note(&club, &author, "After").await.0, StatusCode::SEE_OTHER);
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
#[ignore = "a minute: run by --soak"]
async fn f14_a_file_held_for_a_minute_refuses_writes_and_serves_reads() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let held = let_go_after(Duration::from_secs(60), hold(&club).await);
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
    storm(Duration::from_secs(10)).await.check_fair(WRITERS);
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
#[ignore = "a minute: run by --soak"]
async fn f15_fifty_writers_for_a_minute() {
    let time = Duration::from_secs(60);
    let storm = storm(time).await;
    let (writes, least) = (storm.writes.len(), usize::try_from(time.as_secs()).unwrap() * 30);
    assert!(writes >= least, "{writes} writes");
    storm.check_prompt();
}

const WRITERS: usize = 50;

/// Fifty members who each send a note about once a second, far more than a club writes in a day, and
/// four readers.
async fn storm(time: Duration) -> Storm {
    const PAUSE: Duration = Duration::from_secs(1);
    let answered = Arc::new(Answered::default());
    let club = Arc::new(Club::open().await);
    let over = Arc::new(AtomicBool::new(false));
    let mut writers = Vec::new();
    for number in 0..WRITERS {
        let author = club.join(&format!("Writer {number}"), Right::None).await;
        let (club, over, answered) = (Arc::clone(&club), Arc::clone(&over), Arc::clone(&answered));
        writers.push(tokio::spawn(async move {
            let mut waits = Vec::new();
            sleep(PAUSE * u32::try_from(number).unwrap() / u32::try_from(WRITERS).unwrap()).await;
            while !over.load(Ordering::Relaxed) {
                let title = format!("Writer {number}, note {}", waits.len());
                let begun = answered.begin();
                let (status, _) = note(&club, &author, &title).await;
                waits.push(begun.end());
                answered.one_more();
                assert_eq!(status, StatusCode::SEE_OTHER, "{title}");
                sleep(PAUSE).await;
            }
            waits
        }));
    }
    let mut readers = Vec::new();
    for path in ["/notes", "/threads/ba/4", "/notes?on=4+BA", "/notes?q=drilled"] {
        let (club, over, answered) = (Arc::clone(&club), Arc::clone(&over), Arc::clone(&answered));
        readers.push(tokio::spawn(async move {
            let mut waits = Vec::new();
            while !over.load(Ordering::Relaxed) {
                let begun = answered.begin();
                assert_eq!(club.get(path, None).await.status, StatusCode::OK, "{path}");
                waits.push(begun.end());
                sleep(Duration::from_millis(50)).await;
            }
            waits
        }));
    }
    sleep(time).await;
    over.store(true, Ordering::Relaxed);
    let mut storm = Storm { writes: Vec::new(), reads: Vec::new() };
    for writer in writers {
        storm.writes.extend(writer.await.unwrap());
    }
    for reader in readers {
        storm.reads.extend(reader.await.unwrap());
    }
    let count = i64::try_from(storm.writes.len()).unwrap();
    assert_eq!(club.count("SELECT count(*) FROM note").await, count);
    storm
}
