//! F20: what is too large, in too many pieces, or packed.

use std::io::Write;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::http::Method;
use axum::routing::post;
use holewright_server::front::middleware::body;
use holewright_server::front::place::{Kind, Route};
use holewright_server::rules::clock::Clock;
use holewright_server::{App, front::routes};

use super::client::{connect, get, read, send, status};
use super::in_process::{Serving, beside, patient};
use super::running::Running;
use super::slow_bodies::counting;
use crate::support::{Folder, NOW, config, send as posting};

const CLOSE: &str = "Host: x\r\nConnection: close\r\n";
const FORM: &str = "Content-Type: application/x-www-form-urlencoded\r\n";

fn posted(path: &str, headers: &str, body: &[u8]) -> Vec<u8> {
    let length = body.len();
    let head = format!("POST {path} HTTP/1.1\r\n{CLOSE}{headers}Content-Length: {length}\r\n\r\n");
    [head.as_bytes(), body].concat()
}

/// A body of so many chunks of this size, without a length before it.
fn chunked(path: &str, chunks: usize, size: usize) -> Vec<u8> {
    let head = format!("POST {path} HTTP/1.1\r\n{CLOSE}Transfer-Encoding: chunked\r\n\r\n");
    let chunk = [format!("{size:x}\r\n").as_bytes(), &vec![b'x'; size], b"\r\n"].concat();
    [head.as_bytes(), &chunk.repeat(chunks), b"0\r\n\r\n"].concat()
}

fn fields(count: usize) -> String {
    vec!["a=1"; count].join("&")
}

fn headers(count: usize) -> Vec<u8> {
    let more: String = (0..count).map(|number| format!("X-{number}: y\r\n")).collect();
    format!("GET /healthz HTTP/1.1\r\n{CLOSE}{more}\r\n").into_bytes()
}

fn long_header(length: usize) -> Vec<u8> {
    format!("GET /healthz HTTP/1.1\r\n{CLOSE}X-Long: {}\r\n\r\n", "y".repeat(length)).into_bytes()
}

#[tokio::test(flavor = "multi_thread")]
async fn f20_what_is_too_much_is_refused() {
    let serving = Serving::with(patient(), counting()).await;
    let address = serving.address;
    let most = usize::try_from(patient().body.bytes).unwrap();
    let packed = "Content-Encoding: gzip\r\n";
    for (what, sent, expected) in [
        ("the largest", posted("/count", "", &vec![b'x'; most]), 200),
        ("one byte more", posted("/count", "", &vec![b'x'; most + 1]), 413),
        // The whole body is sent before the answer is read: that must not cost the answer.
        ("ten times as much", posted("/count", "", &vec![b'x'; 10 * most]), 413),
        ("chunks that are too much", chunked("/count", 10, most / 8), 413),
        ("chunks that are not", chunked("/count", 10, most / 16), 200),
        ("a hundred thousand chunks of a byte", chunked("/count", 100_000, 1), 400),
        ("a packed body", posted("/count", packed, &[0x1f, 0x8b, 8, 0, 0, 0, 0, 0]), 400),
        ("what looks packed and is not named so", posted("/count", "", &[0x1f, 0x8b, 8]), 200),
        ("a chunk that is none", chunked_badly(), 400),
        ("ten thousand fields", posted("/count", FORM, fields(10_000).as_bytes()), 400),
        ("as many fields as may be", posted("/count", FORM, fields(500).as_bytes()), 200),
        ("one field more", posted("/count", FORM, fields(501).as_bytes()), 400),
        ("a text with many ampersands", posted("/count", "", &b"&".repeat(10_000)), 200),
        ("ten thousand fields in the address", query(10_000), 400),
        ("a hundred and fifty headers", headers(150), 431),
        ("a header of 600 kB", long_header(600_000), 431),
        ("a header of 80 kB", long_header(80_000), 431),
    ] {
        let answer = beside(move || send(address, &sent)).await;
        assert_eq!(status(&answer), expected, "{what}: {answer}");
        if expected == 413 || expected == 400 {
            assert!(answer.contains("connection: close"), "{what}: {answer}");
            assert!(answer.contains("x-content-type-options: nosniff"), "{what}: {answer}");
        }
    }
}

fn chunked_badly() -> Vec<u8> {
    format!("POST /count HTTP/1.1\r\n{CLOSE}Transfer-Encoding: chunked\r\n\r\n5\r\nxxxxxxxx\r\n")
        .into_bytes()
}

fn query(count: usize) -> Vec<u8> {
    // Below the longest head, so that it is the fields that are refused.
    let fields = vec!["a"; count].join("&");
    format!("POST /count?{fields} HTTP/1.1\r\n{CLOSE}Content-Length: 0\r\n\r\n").into_bytes()
}

#[tokio::test(flavor = "multi_thread")]
async fn f20_a_declared_length_is_refused_before_a_byte_of_it_comes() {
    let serving = Serving::with(patient(), counting()).await;
    let address = serving.address;
    let sent = format!(
        "POST /count HTTP/1.1\r\n{CLOSE}Expect: 100-continue\r\nContent-Length: 99999999999\r\n\r\n"
    );
    let answer = beside(move || send(address, sent.as_bytes())).await;
    assert_eq!(status(&answer), 413, "{answer}");
}

/// A body without an end, sent as fast as the server takes it.
fn send_without_end(address: SocketAddr) -> String {
    let mut stream = connect(address);
    stream.write_all(chunked("/plan", 0, 1).strip_suffix(b"0\r\n\r\n").unwrap()).unwrap();
    let chunk = chunked("/plan", 1, 60_000);
    let chunk = &chunk[chunk.len() - 60_000 - 13..chunk.len() - 5];
    for _ in 0..2_000 {
        if stream.write_all(chunk).is_err() {
            break;
        }
    }
    read(&mut stream)
}

#[test]
fn f20_the_real_server_refuses_it_all_in_little_memory() {
    let server = Running::start();
    let address = server.address;
    for path in ["/", "/threads/ba/5", "/plan"] {
        get(address, path);
    }
    let before = server.forget_peak_memory();
    let clients: Vec<_> = (0..8)
        .map(|_| {
            std::thread::spawn(move || {
                let large = vec![b'x'; 30_000_000];
                for (sent, expected) in [
                    (posted("/plan", "", &large), 413),
                    (posted("/plan", "Content-Encoding: gzip\r\n", &large[..1000]), 400),
                    (posted("/plan", FORM, fields(10_000).as_bytes()), 405),
                    (headers(150), 431),
                    (long_header(600_000), 431),
                    (
                        format!(
                            "GET /plan?{} HTTP/1.1\r\n{CLOSE}\r\n",
                            vec!["a"; 10_000].join("&")
                        )
                        .into(),
                        400,
                    ),
                ] {
                    assert_eq!(status(&send(address, &sent)), expected);
                }
                assert_eq!(status(&send_without_end(address)), 405);
            })
        })
        .collect();
    for client in clients {
        client.join().unwrap();
    }
    let more = server.peak_memory() - before;
    println!("{more} kB more at the peak");
    assert!(more <= 20 * 1024, "{more} kB more at the peak");
    std::thread::sleep(Duration::from_millis(50));
    assert_eq!(status(&get(address, "/readyz")), 200);
}

/// Routes of a server that takes more at one address than elsewhere.
const ROUTES: &[Route] = &[
    Route { path: "/photo", methods: &["post"], kind: Kind::Open, takes: Some(2 << 20) },
    Route { path: "/word", methods: &["post"], kind: Kind::Open, takes: Some(10) },
];

#[tokio::test]
async fn f20_a_route_takes_as_much_as_it_says() {
    let folder = Folder::new();
    let base_url = "https://club.test".parse().unwrap();
    let mut app = App::open(config(&folder, &[]), base_url, Clock::Fixed(NOW)).await.unwrap();
    app.routes = ROUTES;
    let length = async |body: axum::body::Bytes| body.len().to_string();
    let table = ["/photo", "/word", "/form"]
        .into_iter()
        .fold(Router::new(), |table, path| table.route(path, post(length)));
    let router = routes::layered(table, Arc::new(app));
    let usual = usize::try_from(body::Limits::default().bytes).unwrap();
    for (path, most) in [("/photo", 2 << 20), ("/word", 10), ("/form", usual)] {
        for (length, expected) in [(most, 200), (most + 1, 413)] {
            let answer = posting(&router, Method::POST, path, &[], &"x".repeat(length)).await;
            assert_eq!(answer.status.as_u16(), expected, "{path}: {length}");
        }
    }
}
