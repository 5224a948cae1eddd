//! A member's name: what may stand in one, when two are too alike, and what is nobody's name.

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
    /// It says what somebody is in the club, or what the program is.
    #[error(
        "That is what somebody does in the club, or the program itself, and readers would take it for that. Write the name you go by, such as Enid Hathersage."
    )]
    Role,
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
        if key.is_empty() {
            return Err(NotAName::Empty);
        }
        if is_role(&shown) { Err(NotAName::Role) } else { Ok(Self { shown, key }) }
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

    /// Whether a reader could take this name for that one, as it is shown.
    #[must_use]
    pub fn looks_like(&self, shown: &str) -> bool {
        self.key == key(shown) || looks(&self.shown) == looks(shown)
    }
}

/// What the letters look like, as Unicode's table of confusable signs (UTS 39) has it of those that may
/// stand in a name. A capital I is drawn as a small L, a small one is not: *Neil* and *Nell* are two.
///
/// # Examples
/// ```
/// use holewright_server::rules::auth::name::looks;
/// assert_eq!(looks("SeIa"), looks("Sela"));
/// assert_eq!(looks("Bemard"), looks("Bernard"));
/// assert_ne!(looks("Neil"), looks("Nell"));
/// ```
#[must_use]
pub fn looks(shown: &str) -> String {
    let letters = shown.chars().filter(|letter| letter.is_alphanumeric());
    let drawn = letters.flat_map(|letter| match letter {
        'I' => vec!['l'],
        'þ' | 'Þ' => vec!['p'],
        'ſ' => vec!['f'],
        other => other.to_lowercase().flat_map(plain).collect(),
    });
    drawn.collect::<String>().replace("rn", "m").replace("vv", "w")
}

/// What members are and what the program is called, in one word each.
const ROLES: &[&str] = &[
    "admin",
    "administrator",
    "chairman",
    "chairwoman",
    "club",
    "committee",
    "editor",
    "holewright",
    "inspector",
    "member",
    "moderator",
    "nobody",
    "official",
    "operator",
    "president",
    "program",
    "secretary",
    "server",
    "site",
    "society",
    "system",
    "treasurer",
    "webmaster",
];

/// What may stand before them and changes nothing.
const BEFORE: &[&str] = &[
    "a", "acting", "an", "boiler", "boilers", "chief", "club", "clubs", "deputy", "first",
    "former", "head", "hon", "honorary", "new", "of", "old", "our", "second", "the", "vice",
    "your",
];

/// Whether a name says nothing but a role: *the Secretary*, *Boiler-inspector 2*, *lnspector*. Beside a
/// name of their own anybody may carry one: *Una Secretary*.
fn is_role(shown: &str) -> bool {
    let is_number = |word: &str| word.chars().all(|sign| sign.is_ascii_digit());
    let words = shown.split([' ', '-', '.']).filter(|word| !is_number(word));
    let words: Vec<String> = words.map(drawn).collect();
    let is = |known: &[&str], word: &str| known.iter().any(|known| drawn(known) == word);
    let says_role =
        |word: &str| is(ROLES, word) || word.strip_suffix('s').is_some_and(|one| is(ROLES, one));
    let is_one = |word: &str| {
        says_role(word)
            || BEFORE
                .iter()
                .any(|before| word.strip_prefix(drawn(before).as_str()).is_some_and(&says_role))
    };
    let Some((last, before)) = words.split_last() else { return false };
    is_one(last) && before.iter().all(|word| is(BEFORE, word) || is_one(word))
}

/// A word as [`looks`], with every I drawn as an L: a role is never a name, however it is spelt.
fn drawn(word: &str) -> String {
    looks(word).replace('i', "l")
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_looks_alike_is_one_name_and_what_does_not_is_two() {
        let like = |one: &str, other: &str| Name::read(one).unwrap().looks_like(other);
        for (one, other) in [
            ("SeIa", "Sela"),
            ("Sela", "SeIa"),
            ("SE1A", "SEIA"),
            ("Bemard Vale", "Bernard Vale"),
            ("Ada Penn", "ADA PENN"),
            ("Ada Pe'nn", "Ada Penn"),
            ("Þercy", "Percy"),
            ("Olive 0akes", "Olive Oakes"),
            ("VVinnie", "Winnie"),
        ] {
            assert!(like(one, other), "{one} {other}");
        }
        for (one, other) in [("Neil Oakes", "Nell Oakes"), ("Mia", "Mla"), ("Ian", "Jan")] {
            assert!(!like(one, other), "{one} {other}");
        }
    }

    #[test]
    fn a_role_is_nobodys_name() {
        for role in [
            "the server",
            "The Server",
            "Inspector",
            "lnspector",
            "1nspector",
            "Boiler Inspector",
            "boilerinspector",
            "Club Boiler-Inspector 2",
            "Moderator",
            "m0derator",
            "Moderators",
            "Secretary",
            "Hon. Secretary",
            "The Club's Secretary",
            "a former member",
            "Holewright",
            "HoIewright",
            "Administrator",
        ] {
            assert_eq!(Name::read(role), Err(NotAName::Role), "{role}");
        }
        for name in
            ["Una Secretary", "Ivo Inspector", "Member a", "Thea Club", "Clubb", "Ann Server", "2"]
        {
            assert!(Name::read(name).is_ok(), "{name}");
        }
    }
}
