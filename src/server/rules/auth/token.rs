//! Secrets that a reader carries: a session's cookie, the address on a slip. Only their hash is kept.

use std::fmt;

use sha2::{Digest, Sha256};

/// 256 bits of chance, written in hexadecimal. It never shows itself in a log.
#[derive(Clone, PartialEq, Eq)]
pub struct Token(String);

/// SHA-256 of a token: what the database holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TokenHash([u8; 32]);

/// The system has no chance to give.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the system gives no random bytes: {0}")]
pub struct NoChance(pub(super) getrandom::Error);

impl Token {
    /// A new one.
    ///
    /// # Errors
    /// The system gives no random bytes.
    pub fn new() -> Result<Self, NoChance> {
        let mut bytes = [0; 32];
        getrandom::fill(&mut bytes).map_err(NoChance)?;
        Ok(Self(bytes.iter().map(|byte| format!("{byte:02x}")).collect()))
    }

    /// The token a reader sent: any text of the right shape.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let is_ours = text.len() == 64 && text.bytes().all(|byte| byte.is_ascii_hexdigit());
        is_ours.then(|| Self(text.to_ascii_lowercase()))
    }

    /// What is kept of it. It needs no slow hash: nobody guesses 256 bits.
    #[must_use]
    pub fn hash(&self) -> TokenHash {
        TokenHash(Sha256::digest(self.0.as_bytes()).into())
    }

    /// The token itself, for the reader alone.
    #[must_use]
    pub fn secret(&self) -> &str {
        &self.0
    }
}

impl fmt::Debug for Token {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Token(…)")
    }
}

impl TokenHash {
    /// One as it is kept: 32 bytes.
    #[must_use]
    pub fn kept(bytes: &[u8]) -> Option<Self> {
        bytes.try_into().ok().map(Self)
    }

    /// Its bytes.
    #[must_use]
    pub fn bytes(&self) -> &[u8] {
        &self.0
    }

    /// What it is called on a page, in 16 hexadecimal digits. It is the beginning of a further hash, so
    /// that whoever reads it learns nothing of the token, nor what is kept of it.
    #[must_use]
    pub fn mark(&self) -> String {
        let further = Sha256::new().chain_update(b"mark").chain_update(self.0).finalize();
        further.iter().take(8).map(|byte| format!("{byte:02x}")).collect()
    }
}
