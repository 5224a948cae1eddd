//! How large and how slow a body may be.

use std::time::Duration;

/// The limits on one body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Its bytes.
    pub bytes: u64,
    /// The pieces it comes in: each costs memory of its own.
    pub pieces: usize,
    /// Form fields, in the body or in the address.
    pub fields: usize,
    /// Time waited for the client, after which `least` bytes must have come; then it starts anew.
    /// A rate and not a time for the whole: a slow line may take minutes over an honest body.
    pub window: Duration,
    /// Bytes that each window must bring.
    pub least: u64,
}

impl Limits {
    /// The same for a route that takes so many bytes; where it names none, as everywhere.
    #[must_use]
    pub fn taking(self, bytes: Option<u64>) -> Self {
        Self { bytes: bytes.unwrap_or(self.bytes), ..self }
    }
}

impl Default for Limits {
    /// 20 s and 500 bytes a second are also what Apache's `mod_reqtimeout` asks of a body.
    fn default() -> Self {
        Self {
            bytes: 64 * 1024,
            pieces: 16 * 1024,
            fields: 500,
            window: Duration::from_secs(20),
            least: 20 * 500,
        }
    }
}
