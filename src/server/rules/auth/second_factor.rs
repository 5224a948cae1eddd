//! The second factor: a code of six digits that changes every thirty seconds (RFC 6238).
//!
//! A code counts once: somebody who reads it over a shoulder cannot use it again.

use std::fmt;

use sha2::{Digest, Sha256};
use totp_rs::{Builder, Totp};

use super::TokenHash;
use super::token::NoChance;
use crate::rules::clock::UnixSeconds;

/// How long one code stands, in seconds.
const STEP: u64 = 30;

/// The bytes of a secret, as RFC 4226 advises.
const LENGTH: usize = 20;

/// The letters of a secret as a person copies it (RFC 4648, base 32).
const LETTERS: &[u8; 32] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/// The secret that the member's device and the club share: 160 bits. It never shows itself in a log.
#[derive(Clone, PartialEq, Eq)]
pub struct Secret([u8; LENGTH]);

/// A number of thirty-second steps since 1970.
pub type Step = i64;

impl fmt::Debug for Secret {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Secret(…)")
    }
}

/// From which the secrets of members at work on setting one up are made. It is forgotten when the
/// program ends, so nothing can be worked out from a session afterwards.
pub struct Setting([u8; 32]);

impl fmt::Debug for Setting {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Setting(…)")
    }
}

impl Setting {
    /// A new one.
    ///
    /// # Errors
    /// The system gives no random bytes.
    pub fn new() -> Result<Self, NoChance> {
        let mut bytes = [0; 32];
        getrandom::fill(&mut bytes).map_err(NoChance)?;
        Ok(Self(bytes))
    }

    /// The secret offered to this session: the same each time its page is opened, so that a code
    /// typed wrongly does not mean beginning again. Nothing is kept until a code has proved it.
    #[must_use]
    pub fn offer(&self, session: TokenHash) -> Secret {
        let digest = Sha256::new().chain_update(self.0).chain_update(session.bytes()).finalize();
        let mut secret = [0; LENGTH];
        secret.iter_mut().zip(digest).for_each(|(byte, chance)| *byte = chance);
        Secret(secret)
    }
}

/// The steps of a day: a clock that is further out than this is wrong.
pub const FAR_AHEAD: Step = 24 * 60 * 2;

impl Secret {
    /// The one kept for a member; none where its length is not that of ours.
    #[must_use]
    pub fn kept(bytes: &[u8]) -> Option<Self> {
        bytes.try_into().ok().map(Self)
    }

    /// Its bytes.
    #[must_use]
    pub fn bytes(&self) -> &[u8] {
        &self.0
    }

    /// As a person types it: letters and digits in groups of four.
    #[must_use]
    pub fn written(&self) -> String {
        let letters: Vec<char> = base32(&self.0).chars().collect();
        letters.chunks(4).map(|four| four.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
    }

    /// As a QR code carries it.
    #[must_use]
    pub fn address(&self, name: &str, host: &str) -> String {
        let coded = |text: &str| -> String {
            form_urlencoded::byte_serialize(text.as_bytes()).collect::<String>().replace('+', "%20")
        };
        format!(
            "otpauth://totp/{}:{}?secret={}&issuer={}",
            coded(host),
            coded(name),
            base32(&self.0),
            coded(host)
        )
    }

    /// The step whose code this is: the one at hand, the one before or the one after, and only if
    /// it is later than the last that was taken. One taken far ahead, when the machine's clock was wrong,
    /// does not count: it would shut the member out until then.
    #[must_use]
    pub fn step_of(&self, code: &str, now: UnixSeconds, last: Option<Step>) -> Option<Step> {
        let code: String = code.chars().filter(|letter| !letter.is_whitespace()).collect();
        if code.len() != 6 || !code.bytes().all(|digit| digit.is_ascii_digit()) {
            return None;
        }
        let step = self.clock()?.check(&code, u64::try_from(now).ok()?)?;
        let step = Step::try_from(step).ok()?;
        last.is_none_or(|last| step > last || last > step + FAR_AHEAD).then_some(step)
    }

    /// The code at this time.
    #[must_use]
    pub fn code_at(&self, now: UnixSeconds) -> Option<String> {
        Some(self.clock()?.generate(u64::try_from(now).ok()?).to_string())
    }

    fn clock(&self) -> Option<Totp> {
        Builder::new().with_secret(self.0).with_step_duration(STEP).build().ok()
    }
}

fn base32(bytes: &[u8]) -> String {
    let bits: Vec<bool> =
        bytes.iter().flat_map(|byte| (0..8).rev().map(move |bit| byte >> bit & 1 == 1)).collect();
    bits.chunks(5)
        .filter_map(|five| {
            let value = (0..5).fold(0, |value, place| {
                value << 1 | usize::from(five.get(place).copied().unwrap_or_default())
            });
            LETTERS.get(value).map(|letter| char::from(*letter))
        })
        .collect()
}
