//! Shares of what there is only so much of: no client may have more than its part, and all together no
//! more than there is.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use super::limits::Client;

/// What there is, and who holds how much of it.
#[derive(Clone, Debug)]
pub struct Shares(Arc<Shared>);

#[derive(Debug)]
struct Shared {
    all: usize,
    each: usize,
    held: Mutex<Holdings>,
}

#[derive(Debug, Default)]
struct Holdings {
    all: usize,
    by: HashMap<Client, usize>,
}

/// What one client holds, until it is dropped.
#[derive(Debug)]
pub struct Share {
    of: Shares,
    client: Option<Client>,
    amount: usize,
}

impl Shares {
    /// So much for all, and so much of it at most for each.
    #[must_use]
    pub fn of(all: usize, each: usize) -> Self {
        Self(Arc::new(Shared { all, each, held: Mutex::default() }))
    }

    /// So much for this client; none where that would be too much. Without a client only the whole
    /// counts.
    #[must_use]
    pub fn take(&self, client: Option<Client>, amount: usize) -> Option<Share> {
        let mut held = self.held();
        let all = held.all.saturating_add(amount);
        let its_own = client.map_or(0, |client| held.of(client)).saturating_add(amount);
        let fits = all <= self.0.all && (client.is_none() || its_own <= self.0.each);
        fits.then(|| {
            held.set(client, its_own);
            held.all = all;
            Share { of: self.clone(), client, amount }
        })
    }

    fn held(&self) -> MutexGuard<'_, Holdings> {
        self.0.held.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Holdings {
    fn of(&self, client: Client) -> usize {
        self.by.get(&client).copied().unwrap_or_default()
    }

    /// Nothing is kept of a client that holds nothing.
    fn set(&mut self, client: Option<Client>, amount: usize) {
        match (client, amount) {
            (None, _) => {}
            (Some(client), 0) => drop(self.by.remove(&client)),
            (Some(client), amount) => drop(self.by.insert(client, amount)),
        }
    }
}

impl Share {
    /// Holds this much from now on, which may be more than there is: it is there already.
    pub fn becomes(&mut self, amount: usize) {
        let mut held = self.of.held();
        let less = |whole: usize| whole.saturating_sub(self.amount).saturating_add(amount);
        held.all = less(held.all);
        let its_own = self.client.map_or(0, |client| less(held.of(client)));
        held.set(self.client, its_own);
        drop(held);
        self.amount = amount;
    }
}

impl Drop for Share {
    fn drop(&mut self) {
        self.becomes(0);
    }
}

#[cfg(test)]
mod tests {
    use std::net::{IpAddr, Ipv4Addr, Ipv6Addr};

    use super::*;

    fn client(last: u8) -> Option<Client> {
        Some(IpAddr::from(Ipv4Addr::new(192, 0, 2, last)).into())
    }

    #[test]
    fn each_has_its_part_and_all_have_the_whole() {
        let shares = Shares::of(10, 4);
        let first = shares.take(client(1), 4);
        assert!(first.is_some());
        assert!(shares.take(client(1), 1).is_none(), "more than its part");
        let second = shares.take(client(2), 4);
        let third = shares.take(client(3), 2);
        assert!(second.is_some() && third.is_some());
        assert!(shares.take(client(4), 1).is_none(), "more than there is");
        assert!(shares.take(None, 1).is_none(), "more than there is");
        drop(first);
        assert!(shares.take(client(4), 1).is_some());
        drop((second, third));
        let held = shares.held();
        assert_eq!((held.all, held.by.len()), (0, 0), "nothing is kept");
    }

    #[test]
    fn a_share_becomes_what_it_is() {
        let shares = Shares::of(10, 10);
        let mut share = shares.take(client(1), 10);
        share.iter_mut().for_each(|share| share.becomes(3));
        assert!(shares.take(client(1), 7).is_some());
        share.iter_mut().for_each(|share| share.becomes(30));
        assert!(shares.take(client(2), 1).is_none());
        drop(share);
        assert_eq!(shares.held().all, 0);
    }

    #[test]
    fn a_household_is_one_client() {
        let shares = Shares::of(10, 1);
        let at =
            |last| Some(IpAddr::from(Ipv6Addr::new(0x2001, 0xdb8, 1, 2, 0, 0, 0, last)).into());
        let _first = shares.take(at(1), 1);
        assert!(shares.take(at(2), 1).is_none());
    }
}
