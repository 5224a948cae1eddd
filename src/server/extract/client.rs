//! Whose request it is: the address at the other end, or the one a trusted proxy names.

use std::net::{IpAddr, SocketAddr};
use std::str;

use axum::extract::Request;
use axum::http::HeaderMap;

use crate::rules::TrustedProxy;

/// The other end of the connection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Peer(pub SocketAddr);

/// The address of the reader behind a request; none if it came through no socket.
#[must_use]
pub fn of(request: &Request, trusted: &[TrustedProxy]) -> Option<IpAddr> {
    let Peer(peer) = request.extensions().get()?;
    Some(address(peer.ip(), request.headers(), trusted))
}

/// The reader's address: the nearest one that is not a trusted proxy.
///
/// `X-Forwarded-For` counts only as far as trusted proxies wrote it, read from its right end. What
/// cannot be read ends it there: anything left of that may be the reader's own invention.
#[must_use]
pub fn address(peer: IpAddr, headers: &HeaderMap, trusted: &[TrustedProxy]) -> IpAddr {
    let is_trusted = |address: IpAddr| trusted.iter().any(|proxy| proxy.contains(address));
    let mut nearest = peer.to_canonical();
    let lines: Vec<_> = headers.get_all("x-forwarded-for").iter().collect();
    let hops = lines.iter().rev().flat_map(|line| line.as_bytes().rsplit(|byte| *byte == b','));
    for hop in hops.map(hop) {
        match hop {
            Some(hop) if is_trusted(nearest) => nearest = hop.to_canonical(),
            _ => break,
        }
    }
    nearest
}

/// An address, as some proxies write it with its port.
fn hop(bytes: &[u8]) -> Option<IpAddr> {
    let text = str::from_utf8(bytes).ok()?.trim();
    text.parse().or_else(|_| text.parse().map(|address: SocketAddr| address.ip())).ok()
}
