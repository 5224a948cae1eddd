//! Ten digits to read out or to keep on paper: a code for a new password, or one in place of the second factor's.
//!
//! Digits, since they are heard right over a telephone and typed with one thumb. Ten thousand million of them are
//! too many for the few tries that a member has; only a slow hash of them is kept.

use std::fmt;

use super::Password;
use super::token::NoChance;

/// How many spare codes a member has.
pub const SPARE: usize = 10;

/// How many digits.
const LENGTH: usize = 10;

/// Such digits. They never show themselves in a log.
#[derive(Clone, PartialEq, Eq)]
pub struct Digits(String);

/// So many, no two with the same mark.
///
/// # Errors
/// The system gives no random bytes.
pub fn several(count: usize) -> Result<Vec<Digits>, NoChance> {
    let mut drawn: Vec<Digits> = Vec::with_capacity(count);
    while drawn.len() < count.min(SPARE) {
        let digits = Digits::draw()?;
        if drawn.iter().all(|other| other.mark() != digits.mark()) {
            drawn.push(digits);
        }
    }
    Ok(drawn)
}

impl fmt::Debug for Digits {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("Digits(…)")
    }
}

impl Digits {
    /// Drawn by chance.
    ///
    /// # Errors
    /// The system gives no random bytes.
    pub fn draw() -> Result<Self, NoChance> {
        let mut drawn = String::with_capacity(LENGTH);
        while drawn.len() < LENGTH {
            let mut bytes = [0; LENGTH];
            getrandom::fill(&mut bytes).map_err(NoChance)?;
            // A byte past 249 is dropped, so that no digit is likelier.
            let digits = bytes.iter().filter(|byte| **byte < 250);
            let digits = digits.map(|byte| char::from(b'0' + byte % 10));
            drawn.extend(digits.take(LENGTH - drawn.len()));
        }
        Ok(Self(drawn))
    }

    /// The digits that a reader typed, with spaces, dots or hyphens between them or none.
    ///
    /// # Examples
    ///
    /// ```
    /// use holewright_server::rules::auth::digits::Digits;
    ///
    /// let typed = Digits::read(" 48 27-31.59 06 ").unwrap();
    /// assert_eq!(typed.written(), "48 27 31 59 06");
    /// assert!(Digits::read("48 27 31 59 0").is_none());
    /// assert!(Digits::read("48 27 31 59 O6").is_none());
    /// ```
    #[must_use]
    pub fn read(typed: &str) -> Option<Self> {
        let is_between = |c: &char| c.is_whitespace() || matches!(c, '-' | '–' | '.' | ',');
        let digits: String = typed.chars().filter(|c| !is_between(c)).take(LENGTH + 1).collect();
        let is_code = digits.len() == LENGTH && digits.bytes().all(|digit| digit.is_ascii_digit());
        is_code.then_some(Self(digits))
    }

    /// As it is read out: in pairs.
    #[must_use]
    pub fn written(&self) -> String {
        let digits: Vec<char> = self.0.chars().collect();
        digits.chunks(2).map(|pair| pair.iter().collect::<String>()).collect::<Vec<_>>().join(" ")
    }

    /// The first two digits, by which one of several is found.
    #[must_use]
    pub fn mark(&self) -> &str {
        self.0.get(..2).unwrap_or_default()
    }

    /// All of it, to be hashed as a password is.
    #[must_use]
    pub fn password(&self) -> Password {
        Password::typed(&self.0)
    }
}
