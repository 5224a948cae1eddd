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
    "allowed is http:// or https:// and a host, with a port if need be and nothing after it, such as \
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
            (Some(scheme), Some(authority)) if uri.path() == "/" && uri.query().is_none() => {
                Ok(Self(format!("{scheme}://{authority}")))
            }
            _ => Err(NotABaseUrl),
        }
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
