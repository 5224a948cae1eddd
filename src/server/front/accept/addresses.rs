//! How many connections each address has: one that takes all it can get leaves room for the others.
//! A proxy that is named has no limit: all readers come from there.

use std::net::IpAddr;

use crate::rules::TrustedProxy;
use crate::rules::limits::Client;
use crate::rules::shares::{Share, Shares};

/// The connections of each address.
#[derive(Debug)]
pub(super) struct Addresses {
    shares: Shares,
    proxies: Vec<TrustedProxy>,
}

impl Addresses {
    pub(super) fn new(each: usize, proxies: Vec<TrustedProxy>) -> Self {
        // How many there are together is for the slots to say.
        Self { shares: Shares::of(usize::MAX, each), proxies }
    }

    /// One more for this address; none where it has as many as it may.
    pub(super) fn take(&self, address: IpAddr) -> Option<Share> {
        let is_proxy = self.proxies.iter().any(|proxy| proxy.contains(address));
        self.shares.take((!is_proxy).then(|| Client::from(address)), 1)
    }
}
