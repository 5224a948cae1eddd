//! A member's name: what may stand in one, and when two are too alike.

/// The most characters.
pub const LONGEST: usize = 60;

/// A name as it is shown, and as it is compared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Name {
    shown: String,
    key: String,
}

/// Why a name is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NotAName {
    /// Nothing to call anybody by.
    #[error("Write the name you go by in the club, such as Enid Hathersage.")]
    Empty,
    /// Too many characters.
    #[error("A name has at most {LONGEST} characters.")]
    Long,
    /// Something that is no letter.
    #[error(
        "A name has letters of the Latin alphabet, digits, spaces, and - ' . and nothing else, so that no two look alike."
    )]
    Sign,
}

impl Name {
    /// Reads a name as typed; spaces at its ends and double ones go.
    ///
    /// # Errors
    /// It is empty, too long, or has a sign that no name has.
    pub fn read(typed: &str) -> Result<Self, NotAName> {
        let shown = typed.split_whitespace().collect::<Vec<_>>().join(" ");
        if shown.chars().count() > LONGEST {
            return Err(NotAName::Long);
        }
        if !shown.chars().all(may_stand) {
            return Err(NotAName::Sign);
        }
        let key = key(&shown);
        if key.is_empty() { Err(NotAName::Empty) } else { Ok(Self { shown, key }) }
    }

    /// As it is shown.
    #[must_use]
    pub fn shown(&self) -> &str {
        &self.shown
    }

    /// As it is compared.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }
}

/// The form in which names are compared: small letters without accents, spaces and signs. What
/// looks alike is alike: a nought is an o, a one an l.
#[must_use]
pub fn key(typed: &str) -> String {
    let small = typed.to_lowercase();
    small.chars().filter(|letter| letter.is_alphanumeric()).flat_map(plain).collect()
}

fn may_stand(letter: char) -> bool {
    matches!(letter, ' ' | '-' | '\'' | '’' | '.' | '0'..='9' | 'A'..='Z' | 'a'..='z')
        || (letter.is_alphabetic() && matches!(letter, '\u{c0}'..='\u{17f}'))
}

/// A letter without its accent.
fn plain(letter: char) -> Vec<char> {
    let plain = match letter {
        'à'..='å' | 'ā' | 'ă' | 'ą' => "a",
        'æ' => "ae",
        'ç' | 'ć' | 'ĉ' | 'ċ' | 'č' => "c",
        'ď' | 'đ' | 'ð' => "d",
        'è'..='ë' | 'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => "e",
        'ĝ' | 'ğ' | 'ġ' | 'ģ' => "g",
        'ĥ' | 'ħ' => "h",
        'ì'..='ï' | 'ĩ' | 'ī' | 'ĭ' | 'į' | 'ı' => "i",
        'ĵ' => "j",
        'ķ' | 'ĸ' => "k",
        'ĺ' | 'ļ' | 'ľ' | 'ŀ' | 'ł' | '1' => "l",
        'ñ' | 'ń' | 'ņ' | 'ň' | 'ŉ' | 'ŋ' => "n",
        'ò'..='ö' | 'ø' | 'ō' | 'ŏ' | 'ő' | '0' => "o",
        'œ' => "oe",
        'ŕ' | 'ŗ' | 'ř' => "r",
        'ś' | 'ŝ' | 'ş' | 'š' | 'ſ' => "s",
        'ß' => "ss",
        'þ' => "th",
        'ţ' | 'ť' | 'ŧ' => "t",
        'ù'..='ü' | 'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => "u",
        'ŵ' => "w",
        'ý' | 'ÿ' | 'ŷ' => "y",
        'ź' | 'ż' | 'ž' => "z",
        other => return vec![other],
    };
    plain.chars().collect()
}
