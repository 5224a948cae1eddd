//! The address that readers see: the only source of absolute addresses.

use std::fmt;
use std::net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr};
use std::str::FromStr;

use axum::http::Uri;

/// Scheme and host, without a final slash: `https://club.example`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BaseUrl(String);

/// The base URL is not one.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "allowed is http:// or https:// and a host, with a port from 1 to 65535 if need be and nothing after it, such as \
     https://club.example (--base-url or HOLEWRIGHT_BASE_URL)"
)]
pub struct NotABaseUrl;

impl BaseUrl {
    /// The address a server can be opened at on its own machine.
    #[must_use]
    pub fn of_listener(address: SocketAddr) -> Self {
        Self(format!("http://{}", reachable(address)))
    }

    /// Scheme and host.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The host, with a port if there is one.
    #[must_use]
    pub fn host(&self) -> &str {
        self.0.split_once("://").map_or("", |(_, host)| host)
    }

    /// Where to listen so that a server is reached here without anything in front of it: at an address of
    /// the network, over http. A name says nothing of that, and https comes through a proxy.
    #[must_use]
    pub fn to_listen_on(&self) -> Option<SocketAddr> {
        let host = self.0.strip_prefix("http://")?;
        host.parse().ok().or_else(|| Some(SocketAddr::new(address(host)?, 80)))
    }

    /// Whether other machines are meant to come to it by a name, without a proxy that has a certificate.
    #[must_use]
    pub fn is_http_by_name(&self) -> bool {
        let host = self.0.strip_prefix("http://").unwrap_or_default();
        let name = host.split(':').next().unwrap_or_default();
        self.to_listen_on().is_none() && !matches!(name, "" | "localhost")
    }

    /// Whether readers come over TLS.
    #[must_use]
    pub fn is_https(&self) -> bool {
        self.0.starts_with("https://")
    }
}

impl fmt::Display for BaseUrl {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl FromStr for BaseUrl {
    type Err = NotABaseUrl;

    fn from_str(typed: &str) -> Result<Self, NotABaseUrl> {
        let uri: Uri = typed.parse().map_err(|_| NotABaseUrl)?;
        let scheme = uri.scheme_str().filter(|scheme| matches!(*scheme, "http" | "https"));
        let authority = uri.authority().filter(|authority| !authority.as_str().contains('@'));
        match (scheme, authority) {
            (Some(scheme), Some(authority))
                if has_good_port(authority.as_str())
                    && uri.path() == "/"
                    && uri.query().is_none() =>
            {
                Ok(Self(format!("{scheme}://{authority}")))
            }
            _ => Err(NotABaseUrl),
        }
    }
}

/// The address of this host without a port, in brackets or not.
fn address(host: &str) -> Option<IpAddr> {
    host.trim_start_matches('[').trim_end_matches(']').parse().ok()
}

/// Whether the port, if there is one, can be one.
fn has_good_port(authority: &str) -> bool {
    // What stands in brackets is an address with colons in it.
    let after = authority.rsplit(']').next().unwrap_or(authority);
    match after.split_once(':') {
        Some((_, port)) => port.parse::<u16>().is_ok_and(|port| port > 0),
        None => true,
    }
}

/// Where a server on this listen address is reached from its own machine: one that listens
/// everywhere is reached on the loopback.
#[must_use]
pub fn reachable(listen: SocketAddr) -> SocketAddr {
    let ip = match listen.ip() {
        IpAddr::V4(ip) if ip.is_unspecified() => Ipv4Addr::LOCALHOST.into(),
        IpAddr::V6(ip) if ip.is_unspecified() => Ipv6Addr::LOCALHOST.into(),
        ip => ip,
    };
    SocketAddr::new(ip, listen.port())
}
