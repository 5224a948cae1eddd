//! The question a container's health check asks: is the server at this address ready?

use std::io::{self, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

use crate::rules::reachable;

const PATIENCE: Duration = Duration::from_secs(8);

/// The server is not ready.
#[derive(Debug, thiserror::Error)]
pub enum NotReady {
    /// It cannot be reached, or does not answer in time.
    #[error("no answer from {0}: {1}")]
    Silent(SocketAddr, #[source] io::Error),
    /// It says so itself.
    #[error("the server at {0} says that it is not ready")]
    Refused(SocketAddr),
}

/// Asks `/readyz` at this listen address.
///
/// # Errors
/// The server does not answer, or says that it is not ready.
pub fn ask(listen: SocketAddr) -> Result<(), NotReady> {
    let address = reachable(listen);
    match status_line(address) {
        Ok(line) if line == *b"HTTP/1.1 200" => Ok(()),
        Ok(_) => Err(NotReady::Refused(address)),
        Err(error) => Err(NotReady::Silent(address, error)),
    }
}

/// The first bytes of the answer, as far as the status.
fn status_line(address: SocketAddr) -> io::Result<[u8; 12]> {
    let mut stream = TcpStream::connect_timeout(&address, PATIENCE)?;
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.write_all(b"GET /readyz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")?;
    let mut line = [0; 12];
    stream.read_exact(&mut line)?;
    Ok(line)
}
