//! F18: readers that do not read, and readers that only read slowly.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use axum::Router;
use axum::routing::get as answer;
use holewright_server::front::accept::Limits;
use tokio::net::TcpSocket;

use super::client::{connect, get, status};
use super::crowd::{Manner, wave};
use super::in_process::{Serving, beside, patient};

const LARGE: usize = 4 * 1024 * 1024;
/// The limit on a reader who makes no room, in these tests.
const STALLED: Duration = Duration::from_millis(500);

async fn large(limits: Limits) -> Serving {
    let table = Router::new()
        .route("/large", answer(async || vec![b'x'; LARGE]))
        .route("/small", answer(async || "x"));
    Serving::with(limits, table).await
}

fn ask(stream: &mut TcpStream) {
    stream.write_all(b"GET /large HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_reader_who_does_not_read_loses_its_slot() {
    let serving = large(Limits { connections: 1, reader: STALLED, ..patient() }).await;
    let address = serving.address;
    let (next, waited, read) = beside(move || {
        let since = Instant::now();
        let mut idle = connect(address);
        ask(&mut idle);
        let next = get(address, "/small");
        let waited = since.elapsed();
        let mut rest = Vec::new();
        let read = idle.read_to_end(&mut rest).map(|_| rest.len());
        (next, waited, read)
    })
    .await;
    assert_eq!(status(&next), 200, "{next}");
    assert!(waited >= STALLED, "the next client waited {waited:?}");
    assert!(read.is_err() || read.is_ok_and(|length| length < LARGE), "it was all sent");
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_reader_who_takes_a_byte_at_a_time_is_closed() {
    let serving = Serving::start(Limits { reader: STALLED, ..patient() }).await;
    let address = serving.address;
    let closed = beside(move || wave(address, Manner::SlowReader, 4)).await;
    assert!(closed >= STALLED, "closed after {closed:?}");
}

/// Slower than the head's limit, slower than the limit on a stalled reader, and still honest. A limit
/// of two seconds, so that this client does not meet it where it waits for a core.
#[tokio::test(flavor = "multi_thread")]
async fn f18_a_slow_line_gets_the_whole_answer() {
    let limit = Duration::from_secs(2);
    let serving = large(Limits { reader: limit, header: limit, ..patient() }).await;
    let address = serving.address;
    let (took, length) = beside(move || {
        let mut stream = connect(address);
        ask(&mut stream);
        let since = Instant::now();
        let (mut length, mut piece) = (0, vec![0; 64 * 1024]);
        loop {
            match stream.read(&mut piece).unwrap() {
                0 => return (since.elapsed(), length),
                bytes => length += bytes,
            }
            std::thread::sleep(Duration::from_millis(50));
        }
    })
    .await;
    assert!(length > LARGE, "{length} bytes came");
    assert!(took > limit, "not slow enough to show anything: {took:?}");
}

/// Fetches so much of a long answer, a piece every tenth of a second; how much came.
async fn fetch(serving: &Serving, piece: usize, most: usize) -> usize {
    let socket = TcpSocket::new_v4().unwrap();
    // Little is held on this side, so that it is the server that waits.
    socket.set_recv_buffer_size(8 * 1024).unwrap();
    let stream = socket.connect(serving.address).await.unwrap().into_std().unwrap();
    stream.set_nonblocking(false).unwrap();
    beside(move || {
        let mut stream = stream;
        ask(&mut stream);
        let mut length = 0;
        let mut room = vec![0; piece];
        while length < most {
            match stream.read(&mut room) {
                Ok(0) | Err(_) => break,
                Ok(bytes) => length += bytes,
            }
            std::thread::sleep(Duration::from_millis(100));
        }
        length
    })
    .await
}

/// Four times as fast as 50 kbit/s, against a quarter of the limit: the room that the system makes comes
/// back in steps that such a line fills in time.
#[tokio::test(flavor = "multi_thread")]
async fn f19_a_slow_line_fetches_more_than_the_system_holds() {
    const MOST: usize = 400_000;
    let serving = large(Limits { reader: Limits::default().reader / 4, ..patient() }).await;
    let length = fetch(&serving, 2500, MOST).await;
    assert!(length >= MOST, "cut off after {length} bytes");
}

#[tokio::test(flavor = "multi_thread")]
#[ignore = "four minutes, with the limits in full: tests/run --soak"]
async fn f19_a_slow_line_fetches_for_four_minutes() {
    const MOST: usize = 1_500_000;
    let serving = large(Limits::default()).await;
    let since = Instant::now();
    let length = fetch(&serving, 625, MOST).await;
    println!("F19: {length} bytes fetched in {:?}", since.elapsed());
    assert!(length >= MOST, "cut off after {length} bytes");
    assert!(since.elapsed() >= Duration::from_secs(240), "{:?}", since.elapsed());
}
