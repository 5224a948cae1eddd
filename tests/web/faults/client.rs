//! A plain client: writes bytes, reads bytes.

use std::io::{ErrorKind, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::{Duration, Instant};

use crate::process::HANG;

pub(crate) fn connect(address: SocketAddr) -> TcpStream {
    let stream = TcpStream::connect(address).unwrap();
    stream.set_read_timeout(Some(HANG)).unwrap();
    stream.set_write_timeout(Some(HANG)).unwrap();
    stream
}

pub(crate) fn get(address: SocketAddr, path: &str) -> String {
    send(address, format!("GET {path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").as_bytes())
}

/// What comes back for these bytes until the server closes.
pub(crate) fn send(address: SocketAddr, bytes: &[u8]) -> String {
    let mut stream = connect(address);
    stream.write_all(bytes).unwrap();
    read(&mut stream)
}

/// What comes until the server closes.
pub(crate) fn read(stream: &mut TcpStream) -> String {
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer).unwrap();
    String::from_utf8_lossy(&answer).into_owned()
}

#[track_caller]
pub(crate) fn status(answer: &str) -> u16 {
    match answer.strip_prefix("HTTP/1.1 ").and_then(|rest| rest.get(..3)) {
        Some(digits) => digits.parse().unwrap(),
        None => panic!("no answer: {answer:?}"),
    }
}

/// Whether all that the answer's `Content-Length` promises is there.
pub(crate) fn is_whole(answer: &str) -> bool {
    let Some((head, body)) = answer.split_once("\r\n\r\n") else { return false };
    let length = head.lines().find_map(|line| line.strip_prefix("content-length: "));
    length.is_some_and(|length| length.parse() == Ok(body.len()))
}

/// The time until the server closes a client that sends this and no more.
pub(crate) fn closed_after(address: SocketAddr, sent: &[u8]) -> Duration {
    let since = Instant::now();
    send(address, sent);
    since.elapsed()
}

/// Whether the server still holds this client, now that it has read what there was.
pub(crate) fn is_open(stream: &mut TcpStream) -> bool {
    stream.set_nonblocking(true).unwrap();
    loop {
        match stream.read(&mut [0; 1024]) {
            Ok(0) => return false,
            Ok(_) => {}
            Err(error) => return error.kind() == ErrorKind::WouldBlock,
        }
    }
}
