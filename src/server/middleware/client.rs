//! Whose request it is: the address at the other end, or the one a trusted proxy names.

use std::net::{IpAddr, SocketAddr};

use axum::http::HeaderMap;

use crate::server::config::TrustedProxy;

/// The other end of the connection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Peer(pub SocketAddr);

/// The reader's address: the nearest one that is not a trusted proxy.
///
/// `X-Forwarded-For` counts only as far as trusted proxies wrote it, read from its right end.
#[must_use]
pub fn address(peer: IpAddr, headers: &HeaderMap, trusted: &[TrustedProxy]) -> IpAddr {
    let is_trusted = |address: IpAddr| trusted.iter().any(|proxy| proxy.contains(address));
    let mut nearest = peer.to_canonical();
    let lines: Vec<_> = headers.get_all("x-forwarded-for").iter().collect();
    let hops = lines
        .iter()
        .rev()
        .filter_map(|line| line.to_str().ok())
        .flat_map(|line| line.rsplit(','))
        .map(|hop| hop.trim().parse::<IpAddr>());
    for hop in hops {
        match hop {
            Ok(hop) if is_trusted(nearest) => nearest = hop.to_canonical(),
            _ => break,
        }
    }
    nearest
}
