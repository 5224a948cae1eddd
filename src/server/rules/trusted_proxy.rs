//! Proxies whose word on the reader's address is believed, and those that nobody named.

use std::collections::HashSet;
use std::net::IpAddr;
use std::str::FromStr;
use std::sync::{Mutex, PoisonError};

use ipnet::IpNet;

/// One address or one network of proxies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrustedProxy(IpNet);

/// Neither an address nor a network.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "allowed is an address or a network, such as 10.0.0.2, 172.16.0.0/12 or ::1, several with commas \
     (--trusted-proxy or HOLEWRIGHT_TRUSTED_PROXY)"
)]
pub struct NotAProxy;

impl TrustedProxy {
    /// Whether this address is one of the proxies.
    #[must_use]
    pub fn contains(self, address: IpAddr) -> bool {
        self.0.contains(&address.to_canonical())
    }
}

impl FromStr for TrustedProxy {
    type Err = NotAProxy;

    fn from_str(typed: &str) -> Result<Self, NotAProxy> {
        let typed = typed.trim();
        typed
            .parse::<IpNet>()
            .or_else(|_| typed.parse::<IpAddr>().map(IpNet::from))
            .map(Self)
            .map_err(|_| NotAProxy)
    }
}

/// So many are told of: a club has one proxy, and any reader can write such a header.
const MOST: usize = 4;

/// Addresses that named another one as the reader's, though nobody named them as proxies.
#[derive(Debug, Default)]
pub struct UnnamedProxies(Mutex<HashSet<IpAddr>>);

impl UnnamedProxies {
    /// Whether this one is to be told of: the first time, and where not too many were.
    #[must_use]
    pub fn is_new(&self, address: IpAddr) -> bool {
        let mut known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        known.len() < MOST && known.insert(address.to_canonical())
    }
}
