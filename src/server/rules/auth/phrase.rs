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

/// The phrase that this is in another dress: with spaces, points or nothing but other hyphens between its words,
/// or with capitals. None where it is no such phrase, or is dressed as it was drawn.
///
/// # Examples
///
/// ```
/// use holewright_server::rules::auth::phrase::{as_drawn, draw};
/// use holewright_server::rules::auth::Password;
///
/// let phrase = draw().unwrap();
/// let typed = Password::typed(&format!(" {} ", phrase.secret().replace('-', " ").to_uppercase()));
/// assert_eq!(as_drawn(&typed), Some(phrase.clone()));
/// assert_eq!(as_drawn(&phrase), None);
/// assert_eq!(as_drawn(&Password::typed("some other words typed here")), None);
/// ```
#[must_use]
pub fn as_drawn(typed: &Password) -> Option<Password> {
    let small = typed.secret().to_lowercase();
    let typed_words: Vec<&str> =
        small.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()).collect();
    if typed_words.len() != LENGTH {
        return None;
    }
    let known = words();
    let phrase = typed_words.join("-");
    let is_one = typed_words.iter().all(|word| known.contains(word)) && phrase != typed.secret();
    is_one.then(|| Password::typed(&phrase))
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
