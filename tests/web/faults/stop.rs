//! F17: told to stop, under load, with clients that never finish.

use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use axum::Router;
use axum::routing::get as answer;
use holewright_server::accept::Limits;
use rustix::process::Signal;
use tokio::sync::Notify;

use super::client::{connect, get, is_whole, read, send, status};
use super::in_process::{Serving, beside, short};
use super::running::Running;

/// What a client saw that asked again and again until it was refused.
#[derive(Debug, Default)]
struct Seen {
    whole: usize,
    /// Begun and not ended.
    cut: usize,
    /// Connected, and closed without a byte.
    lost: usize,
}

fn ask_until_refused(address: SocketAddr) -> Seen {
    let mut seen = Seen::default();
    loop {
        let Ok(mut stream) = TcpStream::connect(address) else { return seen };
        let mut bytes = Vec::new();
        let _ =
            stream.write_all(b"GET /threads/ba/5 HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
        let _ = stream.read_to_end(&mut bytes);
        match String::from_utf8(bytes).unwrap() {
            answer if is_whole(&answer) => seen.whole += 1,
            answer if answer.is_empty() => seen.lost += 1,
            _ => seen.cut += 1,
        }
    }
}

/// How long new clients are still let in.
fn refused_after(address: SocketAddr) -> Duration {
    let since = Instant::now();
    loop {
        match TcpStream::connect(address) {
            Err(error) if error.kind() == ErrorKind::ConnectionRefused => return since.elapsed(),
            _ => std::thread::sleep(Duration::from_millis(1)),
        }
    }
}

#[test]
fn f17_a_stop_under_load_finishes_what_is_in_hand_and_ends_in_time() {
    let mut server = Running::start();
    let address = server.address;
    let _silent = connect(address);
    let mut half = connect(address);
    half.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n").unwrap();
    let mut in_hand = connect(address);
    in_hand.write_all(b"GET /readyz HTTP/1.1\r\nHost: x\r\n").unwrap();
    assert_eq!(status(&get(address, "/readyz")), 200);
    let load: Vec<_> =
        (0..3).map(|_| std::thread::spawn(move || ask_until_refused(address))).collect();
    std::thread::sleep(Duration::from_millis(300));

    let asked = Instant::now();
    server.signal(Signal::TERM);
    let refused = refused_after(address);
    assert!(refused <= Duration::from_millis(100), "clients were let in for {refused:?}");

    std::thread::sleep(Duration::from_millis(500));
    in_hand.write_all(b"\r\n").unwrap();
    let ready = read(&mut in_hand);
    assert_eq!(status(&ready), 503, "{ready}");
    assert!(is_whole(&ready) && ready.contains("stopping"), "{ready}");
    assert!(ready.contains("retry-after:"), "{ready}");

    let (code, _) = server.ends_within(Duration::from_secs(10));
    assert!(asked.elapsed() <= Duration::from_secs(10), "{:?}", asked.elapsed());
    assert_eq!(code, Some(0));
    assert_eq!(server.data(), ["holewright.sqlite"], "the log is folded into the file");
    for client in load {
        let seen = client.join().unwrap();
        assert!(seen.whole > 0, "{seen:?}");
        assert_eq!(seen.cut, 0, "{seen:?}");
        // Between the last look into the queue and its end one more may slip in.
        assert!(seen.lost <= 1, "{seen:?}");
    }
}

#[test]
fn f17_a_second_signal_ends_it_now() {
    let mut server = Running::start();
    let mut half = connect(server.address);
    half.write_all(b"GET / HTTP/1.1\r\nHost: x\r\n").unwrap();
    get(server.address, "/readyz");
    server.signal(Signal::TERM);
    std::thread::sleep(Duration::from_millis(400));
    server.signal(Signal::TERM);
    let (code, after) = server.ends_within(Duration::from_secs(2));
    assert_eq!(code, Some(0));
    assert!(after < Duration::from_secs(1), "{after:?}");
    assert_eq!(server.data(), ["holewright.sqlite"], "the log is folded into the file");
    assert!(server.log().contains("asked twice"), "{}", server.log());
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_stop_refuses_new_clients_and_closes_idle_ones() {
    let mut serving = Serving::start(Limits { header: Duration::from_secs(5), ..short() }).await;
    let address = serving.address;
    let mut idle = beside(move || {
        let mut stream = connect(address);
        stream.write_all(b"GET /healthz HTTP/1.1\r\nHost: x\r\n\r\n").unwrap();
        let mut answer = [0; 12];
        stream.read_exact(&mut answer).unwrap();
        stream
    })
    .await;
    let since = Instant::now();
    serving.stop.notify_one();
    (&mut serving.ended).await.unwrap();
    assert!(since.elapsed() < Duration::from_secs(1), "{:?}", since.elapsed());
    assert!(TcpStream::connect(address).is_err());
    beside(move || read(&mut idle)).await;
}

/// A client that stands in the queue at the stop is served, not cut off.
#[tokio::test(flavor = "multi_thread")]
async fn f17_clients_in_the_queue_are_still_served() {
    let limits = Limits { drain: Duration::from_secs(5), ..short() };
    let mut serving = Serving::start(limits).await;
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
    (&mut serving.ended).await.unwrap();
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
    let limits = Limits { drain: Duration::from_secs(5), ..short() };
    let mut waiting = slow(Duration::from_millis(600), limits, Arc::default()).await;
    waiting.serving.stop.notify_one();
    (&mut waiting.serving.ended).await.unwrap();
    let answer = waiting.client.join().unwrap();
    assert!(answer.starts_with("HTTP/1.1 200") && answer.ends_with("slow"), "{answer}");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_request_that_never_ends_is_dropped_at_the_deadline() {
    let dropped = Arc::new(AtomicBool::new(false));
    let mut waiting = slow(Duration::from_secs(60), short(), Arc::clone(&dropped)).await;
    let since = Instant::now();
    waiting.serving.stop.notify_one();
    (&mut waiting.serving.ended).await.unwrap();
    assert!(since.elapsed() < Duration::from_secs(2), "{:?}", since.elapsed());
    assert!(dropped.load(Ordering::SeqCst), "it still runs beside the closing database");
    assert_eq!(waiting.client.join().unwrap(), "");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_second_stop_does_not_wait() {
    let limits = Limits { drain: Duration::from_secs(5), ..short() };
    let mut waiting = slow(Duration::from_secs(4), limits, Arc::default()).await;
    let since = Instant::now();
    waiting.serving.stop.notify_one();
    tokio::time::sleep(Duration::from_millis(200)).await;
    waiting.serving.stop.notify_one();
    (&mut waiting.serving.ended).await.unwrap();
    assert!(since.elapsed() < Duration::from_secs(1), "{:?}", since.elapsed());
    assert_eq!(waiting.client.join().unwrap(), "");
}

#[tokio::test(flavor = "multi_thread")]
async fn f17_a_stopping_server_says_that_it_is_not_ready() {
    let serving = Serving::start(short()).await;
    let address = serving.address;
    assert_eq!(status(&beside(move || get(address, "/readyz")).await), 200);
    serving.app.readiness.stop();
    let readyz = b"GET /readyz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";
    assert_eq!(status(&beside(move || send(address, readyz)).await), 503);
    assert_eq!(status(&beside(move || get(address, "/healthz")).await), 200);
}
