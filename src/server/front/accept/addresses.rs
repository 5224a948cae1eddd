//! How many connections each address has: one that takes all it can get leaves room for the others.
//!
//! An IPv6 /64 counts as one address. A proxy that is named has no limit: all readers come from there.

use std::collections::HashMap;
use std::net::IpAddr;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::rules::TrustedProxy;
use crate::rules::limits::Client;

/// The connections of each address.
#[derive(Clone, Debug)]
pub(super) struct Addresses(Arc<Shared>);

#[derive(Debug)]
struct Shared {
    /// The most that one may have.
    each: usize,
    proxies: Vec<TrustedProxy>,
    held: Mutex<HashMap<Client, usize>>,
}

/// One connection of an address, held as long as it is open.
#[derive(Debug)]
pub(super) struct Held {
    addresses: Addresses,
    /// None where nothing is counted.
    client: Option<Client>,
}

impl Addresses {
    pub(super) fn new(each: usize, proxies: Vec<TrustedProxy>) -> Self {
        Self(Arc::new(Shared { each, proxies, held: Mutex::default() }))
    }

    /// One more for this address; none where it has as many as it may.
    pub(super) fn take(&self, address: IpAddr) -> Option<Held> {
        if self.0.proxies.iter().any(|proxy| proxy.contains(address)) {
            return Some(Held { addresses: self.clone(), client: None });
        }
        let client = Client::from(address);
        let mut all = self.held();
        let held = all.entry(client).or_default();
        if *held >= self.0.each {
            return None;
        }
        *held += 1;
        Some(Held { addresses: self.clone(), client: Some(client) })
    }

    fn held(&self) -> MutexGuard<'_, HashMap<Client, usize>> {
        self.0.held.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Drop for Held {
    fn drop(&mut self) {
        let Some(client) = self.client else { return };
        let mut all = self.addresses.held();
        let left = all.get(&client).map_or(0, |held| held.saturating_sub(1));
        if left == 0 {
            all.remove(&client);
        } else {
            all.insert(client, left);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(address: &str) -> IpAddr {
        address.parse().unwrap_or(IpAddr::V4(std::net::Ipv4Addr::UNSPECIFIED))
    }

    #[test]
    fn an_address_has_so_many_and_the_next_has_its_own() {
        let addresses = Addresses::new(2, Vec::new());
        let first = addresses.take(at("192.0.2.1"));
        let second = addresses.take(at("::ffff:192.0.2.1"));
        assert!(first.is_some() && second.is_some());
        assert!(addresses.take(at("192.0.2.1")).is_none());
        assert!(addresses.take(at("192.0.2.2")).is_some());
        drop(first);
        assert!(addresses.take(at("192.0.2.1")).is_some());
        drop(second);
        assert!(addresses.held().is_empty(), "nothing is kept of one that went");
    }

    #[test]
    fn a_household_has_one_network() {
        let addresses = Addresses::new(1, Vec::new());
        let _first = addresses.take(at("2001:db8:1:2::1"));
        assert!(addresses.take(at("2001:db8:1:2:ffff::9")).is_none());
        assert!(addresses.take(at("2001:db8:1:3::1")).is_some());
    }

    #[test]
    fn a_named_proxy_is_not_counted() {
        let proxies: Vec<TrustedProxy> = "192.0.2.0/24".parse().into_iter().collect();
        let addresses = Addresses::new(1, proxies);
        let all: Vec<_> = (0..9).map(|_| addresses.take(at("192.0.2.7"))).collect();
        assert!(all.iter().all(Option::is_some));
    }
}
