//! How often one address may ask for what costs work: many at once, then so many a second.
//!
//! Kept in memory on the monotonic clock, so a change of the wall clock neither frees nor blocks
//! anybody; forgotten at a restart. Leaves out which addresses of ours cost work: that is
//! `middleware::rate`.

use std::collections::HashMap;
use std::fmt;
use std::hash::Hash;
use std::mem;
use std::net::{IpAddr, Ipv6Addr};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use super::auth::MemberId;

/// What one client may ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Allowance {
    /// At once, after a rest.
    pub burst: u32,
    /// One more each time so long has gone by.
    pub every: Duration,
}

impl Default for Allowance {
    /// Far above what a person at the bench, or a clubroom of them behind one address, can click.
    fn default() -> Self {
        Self { burst: 60, every: Duration::from_millis(200) }
    }
}

/// Who shares one allowance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Client {
    /// An IPv4 address, or a whole IPv6 /64, which one household has to itself.
    Address(IpAddr),
    /// A member, wherever they sit.
    Member(MemberId),
}

impl From<IpAddr> for Client {
    fn from(address: IpAddr) -> Self {
        Self::Address(match address.to_canonical() {
            IpAddr::V4(address) => address.into(),
            IpAddr::V6(address) => Ipv6Addr::from_bits(address.to_bits() >> 64 << 64).into(),
        })
    }
}

impl Allowance {
    /// What one member may write: more than anybody types, far less than a program could fill the
    /// queue with.
    #[must_use]
    pub const fn of_a_writer() -> Self {
        Self { burst: 30, every: Duration::from_secs(4) }
    }
}

impl fmt::Display for Allowance {
    /// In words: `60 at once, then 5 a second`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { burst, every } = self;
        match every.as_millis() {
            millis @ 1..1000 => write!(f, "{burst} at once, then {} a second", 1000 / millis),
            _ => write!(f, "{burst} at once, then one each {} seconds", every.as_secs()),
        }
    }
}

/// The allowances of all clients.
#[derive(Debug)]
pub struct RateLimit {
    /// None where nobody is limited.
    allowance: Option<Allowance>,
    used_up: Mutex<Recent<Client, Instant>>,
}

/// Clients remembered in one generation; twice as many at most are kept, about a megabyte.
const GENERATION: usize = 8192;

impl Default for RateLimit {
    fn default() -> Self {
        Self::of(Allowance::default())
    }
}

impl RateLimit {
    /// Everybody may ask for so much.
    #[must_use]
    pub fn of(allowance: Allowance) -> Self {
        Self { allowance: Some(allowance), used_up: Mutex::new(Recent::new(GENERATION)) }
    }

    /// Nobody is limited: for tests that ask more than any reader.
    #[must_use]
    pub fn off() -> Self {
        Self { allowance: None, ..Self::default() }
    }

    /// Takes one from the client's allowance.
    ///
    /// # Errors
    /// It is used up: how long until there is one again. Asking too early costs nothing.
    pub fn take(&self, client: Client, now: Instant) -> Result<(), Duration> {
        let Some(Allowance { burst, every }) = self.allowance else { return Ok(()) };
        let mut used_up = self.used_up.lock().unwrap_or_else(PoisonError::into_inner);
        // The moment at which the client's allowance would be whole again; each request moves it
        // on, and it may lie no further ahead than the burst.
        let whole = used_up.get(&client).map_or(now, |whole| whole.max(now)) + every;
        let too_far = (whole - now).saturating_sub(every * burst);
        if too_far.is_zero() {
            used_up.put(client, whole);
            Ok(())
        } else {
            Err(too_far)
        }
    }

    /// Gives one back: what was asked turned out to be no burden.
    pub fn give_back(&self, client: Client) {
        let Some(Allowance { every, .. }) = self.allowance else { return };
        let mut used_up = self.used_up.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(before) = used_up.get(&client).and_then(|whole| whole.checked_sub(every)) {
            used_up.put(client, before);
        }
    }

    /// How many clients are remembered.
    #[must_use]
    pub fn remembered(&self) -> usize {
        self.used_up.lock().unwrap_or_else(PoisonError::into_inner).len()
    }
}

/// A bounded map that drops what was not written for longest, a generation at a time: no scan,
/// whoever fills it.
#[derive(Debug)]
pub(super) struct Recent<K, V> {
    most: usize,
    young: HashMap<K, V>,
    old: HashMap<K, V>,
}

impl<K: Eq + Hash, V: Copy> Recent<K, V> {
    pub(super) fn new(most: usize) -> Self {
        Self { most, young: HashMap::new(), old: HashMap::new() }
    }

    pub(super) fn get(&self, key: &K) -> Option<V> {
        self.young.get(key).or_else(|| self.old.get(key)).copied()
    }

    pub(super) fn put(&mut self, key: K, value: V) {
        if self.young.len() >= self.most && !self.young.contains_key(&key) {
            self.old = mem::take(&mut self.young);
        }
        self.young.insert(key, value);
    }

    fn len(&self) -> usize {
        self.young.len() + self.old.len()
    }
}
