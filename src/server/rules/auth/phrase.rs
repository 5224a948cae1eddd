//! A password to take instead of one's own: words drawn by chance.
//!
//! Five words of the list, each as likely as any other: about 50 bits (2 to the power of 50 phrases),
//! which the slow hash and the limits on trying put out of reach. It has no check digit and no pattern.

use super::Password;
use super::token::NoChance;

/// Our own list of short everyday words, none twice.
const WORDS: &str = include_str!("words.txt");

/// How many words make a phrase.
pub const LENGTH: usize = 5;

/// The words a phrase is drawn from.
#[must_use]
pub fn words() -> Vec<&'static str> {
    WORDS.split_whitespace().collect()
}

/// A new phrase: `acorn-lantern-river-copper-thimble`.
///
/// # Errors
/// The system gives no random bytes.
pub fn draw() -> Result<Password, NoChance> {
    let words = words();
    let mut drawn: Vec<&str> = Vec::with_capacity(LENGTH);
    while drawn.len() < LENGTH {
        let mut bytes = [0; 2];
        getrandom::fill(&mut bytes).map_err(NoChance)?;
        // Eleven bits; a number past the end of the list is drawn again, so that no word is likelier.
        let number = usize::from(u16::from_be_bytes(bytes) & 0x7ff);
        drawn.extend(words.get(number));
    }
    Ok(Password::typed(&drawn.join("-")))
}
