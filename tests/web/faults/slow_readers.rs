//! F18: readers that do not read, and readers that only read slowly.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use axum::Router;
use axum::routing::get as answer;
use holewright_server::accept::Limits;

use super::client::{connect, get};
use super::crowd::{Manner, wave};
use super::in_process::{Serving, beside, short};

const LARGE: usize = 4 * 1024 * 1024;

async fn large(limits: Limits) -> Serving {
    Serving::with(limits, Router::new().route("/large", answer(async || vec![b'x'; LARGE]))).await
}

fn ask(stream: &mut TcpStream) {
    stream.write_all(b"GET /large HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_reader_who_does_not_read_loses_its_slot() {
    let serving = large(Limits { connections: 1, ..short() }).await;
    let address = serving.address;
    let (waited, read) = beside(move || {
        let mut idle = connect(address);
        ask(&mut idle);
        std::thread::sleep(Duration::from_millis(50));
        let since = Instant::now();
        get(address, "/large");
        let waited = since.elapsed().as_millis();
        let mut rest = Vec::new();
        let read = idle.read_to_end(&mut rest).map(|_| rest.len());
        (waited, read)
    })
    .await;
    assert!((300..3_000).contains(&waited), "the next client waited {waited} ms");
    assert!(read.is_err() || read.is_ok_and(|length| length < LARGE), "it was all sent");
}

#[tokio::test(flavor = "multi_thread")]
async fn f18_a_reader_who_takes_a_byte_at_a_time_is_closed() {
    let serving = Serving::start(short()).await;
    let address = serving.address;
    let closed =
        beside(move || wave(address, Manner::SlowReader, 4, Duration::from_secs(10))).await;
    assert!(closed >= Duration::from_millis(450), "closed after {closed:?}");
}

/// Slower than the head's limit, slower than the limit on a stalled reader, and still honest.
#[tokio::test(flavor = "multi_thread")]
async fn f18_a_slow_line_gets_the_whole_answer() {
    let serving = large(short()).await;
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
            std::thread::sleep(Duration::from_millis(30));
        }
    })
    .await;
    assert!(length > LARGE, "{length} bytes came");
    assert!(took > Duration::from_secs(1), "not slow enough to show anything: {took:?}");
}
