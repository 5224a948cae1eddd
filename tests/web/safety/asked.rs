//! A client that may find the server gone.

use std::io::{self, Read, Write};
use std::net::{SocketAddr, TcpStream};

use crate::process::HANG;

/// What comes back for these bytes until the server closes.
pub(super) fn send(address: SocketAddr, request: &str) -> io::Result<String> {
    let mut stream = TcpStream::connect(address)?;
    stream.set_read_timeout(Some(HANG))?;
    stream.write_all(request.as_bytes())?;
    let mut answer = Vec::new();
    stream.read_to_end(&mut answer)?;
    Ok(String::from_utf8_lossy(&answer).into_owned())
}

/// The status of the answer to this; none where there is no answer.
pub(crate) fn status(address: SocketAddr, request: &str) -> Option<u16> {
    send(address, request).ok()?.strip_prefix("HTTP/1.1 ")?.get(..3)?.parse().ok()
}

/// The status of a page.
pub(super) fn get(address: SocketAddr, path: &str) -> Option<u16> {
    let request = format!("GET {path} HTTP/1.1\r\nHost: club.test\r\nConnection: close\r\n\r\n");
    status(address, &request)
}
