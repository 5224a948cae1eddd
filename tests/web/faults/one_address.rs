//! F29: one address that takes every connection it gets leaves room for the others; a proxy that is
//! named may take them all, and one that is not is told of.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use holewright_server::front::accept::{Limits, descriptors};
use rustix::process::{Pid, Signal, kill_process};
use tokio::net::TcpSocket;

use super::client::{get, is_open, status};
use super::in_process::{Serving, beside, patient};
use super::running::Running;
use crate::process::{HANG, Process, wait_until};
use crate::support::{Folder, free_address};

/// Another machine than the one that the tests ask from.
const OTHER: Ipv4Addr = Ipv4Addr::new(127, 0, 0, 2);

/// A connection from there.
async fn connect_from(from: Ipv4Addr, to: SocketAddr) -> TcpStream {
    let socket = TcpSocket::new_v4().unwrap();
    socket.bind((from, 0).into()).unwrap();
    let stream = socket.connect(to).await.unwrap().into_std().unwrap();
    stream.set_nonblocking(false).unwrap();
    stream.set_read_timeout(Some(HANG)).unwrap();
    stream
}

/// So many clients there, each at work on a form that never ends.
async fn crowd_from(from: Ipv4Addr, to: SocketAddr, count: usize) -> Vec<TcpStream> {
    let _ = descriptors::raise();
    let mut crowd = Vec::new();
    for _ in 0..count {
        let mut stream = connect_from(from, to).await;
        let form = "POST /sign-in HTTP/1.1\r\nHost: x\r\nSec-Fetch-Site: same-origin\r\nContent-Type: \
                    application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\nname=";
        // One that is not let in may be gone by now.
        let _ = stream.write_all(form.as_bytes());
        crowd.push(stream);
    }
    crowd
}

/// Without a limit on time this ends only if there is room.
#[tokio::test(flavor = "multi_thread")]
async fn f29_one_address_leaves_room_for_the_others() {
    let serving = Serving::start(Limits { each: 4, ..patient() }).await;
    let address = serving.address;
    let crowd = crowd_from(OTHER, address, 2 * patient().connections).await;
    let answer = beside(move || get(address, "/healthz")).await;
    assert_eq!(status(&answer), 200, "{answer}");
    // One that went makes room for the next, as soon as the server has seen it go.
    drop(crowd);
    let asked = b"GET /healthz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";
    let again = async || {
        let mut again = connect_from(OTHER, address).await;
        let _ = again.write_all(asked);
        beside(move || read_what_comes(&mut again)).await.starts_with("HTTP/1.1 200")
    };
    let since = Instant::now();
    while !again().await {
        assert!(since.elapsed() < HANG, "who went holds its room");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
}

/// What comes until the end; nothing where the connection was closed or reset at once.
fn read_what_comes(stream: &mut TcpStream) -> String {
    let mut bytes = Vec::new();
    let _ = stream.read_to_end(&mut bytes);
    String::from_utf8_lossy(&bytes).into_owned()
}

#[tokio::test(flavor = "multi_thread")]
async fn f29_eleven_hundred_slow_forms_from_one_address_shut_nobody_out() {
    let mut server = Running::start();
    let mut crowd = crowd_from(OTHER, server.address, 1_100).await;
    let address = server.address;
    for path in ["/healthz", "/threads/ba/5"] {
        let answer = beside(move || get(address, path)).await;
        assert_eq!(status(&answer), 200, "{answer}");
    }
    let held = crowd.iter_mut().map(is_open).filter(|open| *open).count();
    let eighth = Limits::default().connections / 8;
    assert!((1..=eighth).contains(&held), "{held} connections of one address");
    wait_until("a line", || server.log_so_far().contains("one address may have"));
    let log = server.log();
    assert!(log.contains("more connections than one address may have"), "{log}");
    assert!(log.contains("127.0.0.2"), "{log}");
    // Once a second, not once for each.
    let lines = log.lines().filter(|line| line.contains("one address may have")).count();
    assert!(lines <= 60, "{lines} lines");
}

#[tokio::test(flavor = "multi_thread")]
async fn f29_a_proxy_that_is_named_has_no_limit_of_its_own() {
    let server = Running::start();
    // The tests' own address is named as a proxy there.
    let mut crowd = crowd_from(Ipv4Addr::LOCALHOST, server.address, 300).await;
    let address = server.address;
    assert_eq!(status(&beside(move || get(address, "/healthz")).await), 200);
    assert!(crowd.iter_mut().all(is_open));
}

#[test]
fn s12_a_proxy_that_is_not_named_is_told_of_once() {
    let folder = Folder::new();
    let address = free_address();
    let mut serve = Command::new(env!("CARGO_BIN_EXE_holewright"));
    serve
        .args(["--listen", &address.to_string(), "--trusted-proxy", "10.9.8.7", "--data-dir"])
        .arg(folder.path());
    let mut server = Process::start(&serve, Stdio::null());
    wait_until("a server", || TcpStream::connect(address).is_ok());
    for header in ["X-Forwarded-For: 192.0.2.7", "x-forwarded-for: 192.0.2.8", "Forwarded: for=x"] {
        let asked = format!("GET / HTTP/1.1\r\nHost: x\r\nConnection: close\r\n{header}\r\n\r\n");
        assert_eq!(status(&super::client::send(address, asked.as_bytes())), 200);
    }
    let log = BufReader::new(server.stdout.take().unwrap());
    // A stop in order writes the log to its end; a kill may come before the line.
    kill_process(Pid::from_child(&server), Signal::TERM).unwrap();
    let told: Vec<String> =
        log.lines().map(Result::unwrap).filter(|line| line.contains("--trusted-proxy")).collect();
    assert_eq!(told.len(), 1, "{told:?}");
    for words in ["127.0.0.1", "HOLEWRIGHT_TRUSTED_PROXY", "ten wrong passwords", "WARN"] {
        assert!(told[0].contains(words), "{words}: {}", told[0]);
    }
    assert!(!told[0].contains("192.0.2"), "{}", told[0]);
}
