//! F17: told to stop, under load, with clients that never finish.

use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use axum::Router;
use axum::routing::get as answer;
use holewright_server::front::accept::Limits;
use holewright_server::front::accept::signals::DEADLINE;
use rustix::process::Signal;
use tokio::sync::Notify;

use super::client::{connect, get, is_whole, read, send, status};
use super::in_process::{AGES, Serving, beside, patient};
use super::running::Running;
use crate::process::wait_until;

/// What a client saw that asked again and again until it was refused.
#[derive(Debug, Default)]
struct Seen {
    whole: usize,
    /// Begun and not ended.
    cut: usize,
    /// Connected, and closed without a byte.
    lost: usize,
}

/// Counts itself among those under way once it has its first answer.
fn ask_until_refused(address: SocketAddr, under_way: &AtomicUsize) -> Seen {
    let mut seen = Seen::default();
    loop {
        let Ok(mut stream) = TcpStream::connect(address) else { return seen };
        let mut bytes = Vec::new();
        let _ =
            stream.write_all(b"GET /threads/ba/5 HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
        let _ = stream.read_to_end(&mut bytes);
        match String::from_utf8(bytes).unwrap() {
            answer if is_whole(&answer) => {
                under_way.fetch_add(usize::from(seen.whole == 0), Ordering::SeqCst);
                seen.whole += 1;
            }
            answer if answer.is_empty() => seen.lost += 1,
            _ => seen.cut += 1,
        }
    }
}

/// Waits until no new client is let in.
fn wait_until_refused(address: SocketAddr) {
    wait_until("a refusal", || {
        let refused = TcpStream::connect(address).err();
        refused.is_some_and(|error| error.kind() == ErrorKind::ConnectionRefused)
    });
}

/// How long after the signal new clients were refused, and the process was gone.
struct Stopped {
    refused: Duration,
    gone: Duration,
}

/// New clients are refused while there is still an answer for one whose request is not yet whole; two
/// that never send theirs are not waited for.
#[test]
fn f17_a_stop_under_load_finishes_what_is_in_hand_and_ends() {
    stop_under_load();
}

#[test]
#[ignore = "wants the machine to itself: tests/run --soak"]
fn f17_a_stop_under_load_is_in_time() {
    let Stopped { refused, gone } = stop_under_load();
    println!("refused after {refused:?}, gone after {gone:?}");
    assert!(refused <= Duration::from_millis(100), "clients were let in for {refused:?}");
    assert!(gone <= Duration::from_secs(10), "{gone:?}");
}

/// A container is killed at ten seconds; after the drain come the database's end and the log's.
#[test]
fn f17_the_limits_are_within_the_bar() {
    assert!(DEADLINE <= Duration::from_secs(9));
    assert!(Limits::default().drain + Duration::from_secs(2) <= DEADLINE);
}

fn stop_under_load() -> Stopped {
    let mut server = Running::start();
    let address = server.address;
    let _silent = connect(address);
    let mut half = connect(address);
    half.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n").unwrap();
    let mut in_hand = connect(address);
    in_hand.write_all(b"GET /readyz HTTP/1.1\r\nHost: x\r\n").unwrap();
    assert_eq!(status(&get(address, "/readyz")), 200);
    let under_way = Arc::new(AtomicUsize::new(0));
    let load = [(); 3].map(|()| {
        let under_way = Arc::clone(&under_way);
        std::thread::spawn(move || ask_until_refused(address, &under_way))
    });
    wait_until("load", || under_way.load(Ordering::SeqCst) == load.len());

    let asked = Instant::now();
    server.signal(Signal::TERM);
    wait_until_refused(address);
    let refused = asked.elapsed();

    std::thread::sleep(Duration::from_millis(500));
    in_hand.write_all(b"\r\n").unwrap();
    let ready = read(&mut in_hand);
    assert_eq!(status(&ready), 503, "{ready}");
    assert!(is_whole(&ready) && ready.contains("stopping"), "{ready}");
    assert!(ready.contains("retry-after:"), "{ready}");

    assert_eq!(server.ends(), Some(0));
    let gone = asked.elapsed();
    assert_eq!(server.data(), ["holewright.sqlite"], "the log is folded into the file");
    for client in load {
        let seen = client.join().unwrap();
        assert_eq!(seen.cut, 0, "{seen:?}");
        // Between the last look into the queue and its end one more may slip in.
        assert!(seen.lost <= 1, "{seen:?}");
    }
    Stopped { refused, gone }
}

#[test]
fn f17_a_second_signal_ends_it_now() {
    let mut server = Running::start();
    let mut half = connect(server.address);
    half.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n").unwrap();
    get(server.address, "/readyz");
    server.signal(Signal::TERM);
    // Two at once would be one.
    wait_until_refused(server.address);
    server.signal(Signal::TERM);
    assert_eq!(server.ends(), Some(0));
    assert_eq!(server.data(), ["holewright.sqlite"], "the log is folded into the file");
    assert!(server.log().contains("asked twice"), "{}", server.log());
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_stop_refuses_new_clients_and_closes_idle_ones() {
    let mut serving = Serving::start(patient()).await;
    let address = serving.address;
    let mut idle = beside(move || {
        let mut stream = connect(address);
        stream.write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n").unwrap();
        let mut answer = [0; 12];
        stream.read_exact(&mut answer).unwrap();
        stream
    })
    .await;
    serving.stop.notify_one();
    serving.ends().await;
    assert!(TcpStream::connect(address).is_err());
    beside(move || read(&mut idle)).await;
}

/// A client that stands in the queue at the stop is served, not cut off.
#[tokio::test(flavor = "multi_thread")]
async fn f17_clients_in_the_queue_are_still_served() {
    let mut serving = Serving::start(patient()).await;
    let address = serving.address;
    let asked = beside(move || {
        (0..6)
            .map(|_| {
                let mut stream = connect(address);
                stream
                    .write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n")
                    .unwrap();
                stream
            })
            .collect::<Vec<_>>()
    });
    let asked = asked.await;
    serving.stop.notify_one();
    for mut stream in asked {
        let answer = beside(move || read(&mut stream)).await;
        assert_eq!(status(&answer), 200, "{answer}");
    }
    serving.ends().await;
}

/// A server whose answer takes so long, with a request already waiting for it.
async fn slow(takes: Duration, limits: Limits, dropped: Arc<AtomicBool>) -> Waiting {
    let begun = Arc::new(Notify::new());
    let begins = Arc::clone(&begun);
    let handler = async move || {
        let _mark = Mark(dropped);
        begins.notify_one();
        tokio::time::sleep(takes).await;
        "slow"
    };
    let serving = Serving::with(limits, Router::new().route("/", answer(handler))).await;
    let address = serving.address;
    let client = std::thread::spawn(move || {
        let mut stream = connect(address);
        stream.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n\r\n").unwrap();
        let mut answer = String::new();
        // Cut off, it may be a reset.
        let _ = stream.read_to_string(&mut answer);
        answer
    });
    begun.notified().await;
    Waiting { serving, client }
}

struct Waiting {
    serving: Serving,
    client: std::thread::JoinHandle<String>,
}

/// Says when the request it stands in is dropped.
struct Mark(Arc<AtomicBool>);

impl Drop for Mark {
    fn drop(&mut self) {
        self.0.store(true, Ordering::SeqCst);
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_request_in_hand_is_finished_before_the_stop() {
    let mut waiting = slow(Duration::from_millis(600), patient(), Arc::default()).await;
    waiting.serving.stop.notify_one();
    waiting.serving.ends().await;
    let answer = waiting.client.join().unwrap();
    assert!(answer.starts_with("HTTP/1.1 200") && answer.ends_with("slow"), "{answer}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_request_that_never_ends_is_dropped_at_the_deadline() {
    let dropped = Arc::new(AtomicBool::new(false));
    let limits = Limits { drain: Duration::from_millis(300), ..patient() };
    let mut waiting = slow(AGES, limits, Arc::clone(&dropped)).await;
    waiting.serving.stop.notify_one();
    waiting.serving.ends().await;
    assert!(dropped.load(Ordering::SeqCst), "it still runs beside the closing database");
    assert_eq!(waiting.client.join().unwrap(), "");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_second_stop_does_not_wait() {
    let mut waiting = slow(AGES, patient(), Arc::default()).await;
    let address = waiting.serving.address;
    waiting.serving.stop.notify_one();
    // Two at once would be one.
    beside(move || wait_until_refused(address)).await;
    waiting.serving.stop.notify_one();
    waiting.serving.ends().await;
    assert_eq!(waiting.client.join().unwrap(), "");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_stopping_server_says_that_it_is_not_ready() {
    let serving = Serving::start(patient()).await;
    let address = serving.address;
    assert_eq!(status(&beside(move || get(address, "/readyz")).await), 200);
    serving.app.readiness.stop();
    let readyz = b"GET /readyz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";
    assert_eq!(status(&beside(move || send(address, readyz)).await), 503);
    assert_eq!(status(&beside(move || get(address, "/healthz")).await), 200);
}

/// A terminal that was closed, or a program that tells all others to read their settings anew.
#[test]
fn a_hangup_does_not_end_it() {
    let mut server = Running::start();
    for _ in 0..3 {
        server.signal(Signal::HUP);
        std::thread::sleep(Duration::from_millis(20));
        assert_eq!(status(&get(server.address, "/healthz")), 200);
    }
    server.signal(Signal::TERM);
    assert_eq!(server.ends(), Some(0));
}
