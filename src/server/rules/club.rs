//! What a club may say of itself: plain text of a line each, and no advice on pressure that nobody has read.

use super::notes::pressure;
use super::plain;
use super::zone::Zone;

/// The most characters of its name, and of its place.
pub const NAME: usize = 60;
/// The most characters of its welcome.
pub const WELCOME: usize = 240;

/// What the club says of itself; empty where it says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Club {
    /// Its name.
    pub name: String,
    /// Where it meets.
    pub place: String,
    /// A sentence or two for the front page.
    pub welcome: String,
    /// The time zone of its clock; empty for UTC.
    pub zone: String,
}

/// What is wrong with a part of it: the part, and what is accepted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// The part, by the name of its field.
    pub part: &'static str,
    /// What is said of it.
    pub words: String,
}

impl Club {
    /// The parts as they are typed, each on one line.
    ///
    /// # Errors
    /// Everything that is wrong.
    pub fn read(name: &str, place: &str, welcome: &str, zone: &str) -> Result<Self, Vec<Wrong>> {
        let club = Self {
            name: line(name),
            place: line(place),
            welcome: line(welcome),
            zone: Zone::read(zone).map_or_else(String::new, |zone| zone.name().to_owned()),
        };
        let parts = [
            ("club_name", &club.name, NAME),
            ("club_place", &club.place, NAME),
            ("welcome", &club.welcome, WELCOME),
        ];
        let mut wrong: Vec<Wrong> = parts
            .into_iter()
            .filter_map(|(part, text, most)| {
                fault(part, text, most).map(|words| Wrong { part, words })
            })
            .collect();
        if !zone.trim().is_empty() && club.zone.is_empty() {
            let words = "No time zone has this name. Write the largest town with the same clock, such as London, or \
                         leave it empty for UTC.";
            wrong.push(Wrong { part: "zone", words: words.to_owned() });
        }
        if wrong.is_empty() { Ok(club) } else { Err(wrong) }
    }
}

/// What was typed, on one line: where a line ends, a space stands.
fn line(typed: &str) -> String {
    typed.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn fault(part: &str, text: &str, most: usize) -> Option<String> {
    let count = text.chars().count();
    if count > most {
        return Some(format!("At most {most} characters, and this has {count}."));
    }
    if plain::line(text) != text {
        return Some(
            "A character in this cannot be seen. Type it anew, in plain letters.".to_owned(),
        );
    }
    // A society may have steam in its name. What is more than a name goes the way of a note.
    let speaks = pressure::speaks_of_it(text);
    let is_more = part == "welcome" || text.chars().any(|c| c.is_numeric());
    (speaks && is_more).then(|| {
        "This speaks of boilers, steam or pressure, and nobody would read it before it is shown: leave that out, or \
         write it as a note, which an inspector reads first."
            .to_owned()
    })
}

#[cfg(test)]
mod tests {
    use super::{Club, NAME, WELCOME};

    fn wrong(name: &str, place: &str, welcome: &str, zone: &str) -> Vec<&'static str> {
        let wrong = Club::read(name, place, welcome, zone).err().unwrap_or_default();
        wrong.into_iter().map(|wrong| wrong.part).collect()
    }

    #[test]
    fn each_part_is_one_plain_line() {
        let club = Club::read(
            "  Marlbeck\r\nModel   Engineers ",
            "The Mill",
            "Come in.\n\nAll of you.",
            "london",
        );
        let club = club.unwrap_or_default();
        assert_eq!(club.name, "Marlbeck Model Engineers");
        assert_eq!(club.welcome, "Come in. All of you.");
        assert_eq!(club.zone, "Europe/London");
        assert_eq!(Club::read("", " ", "\n", "").ok(), Some(Club::default()));
    }

    #[test]
    fn what_is_too_long_unseen_or_unknown_is_refused() {
        assert_eq!(wrong(&"x".repeat(NAME + 1), "", "", ""), ["club_name"]);
        assert_eq!(
            wrong("", &"x".repeat(NAME + 1), &"x".repeat(WELCOME + 1), ""),
            ["club_place", "welcome"]
        );
        assert_eq!(wrong("Marl\u{202e}beck", "", "", "the clubroom"), ["club_name", "zone"]);
        assert_eq!(wrong("Marl\u{0}beck", "a\u{200b}b", "", ""), ["club_name", "club_place"]);
        assert!(wrong(&"É".repeat(NAME), "", &"ß".repeat(WELCOME), "").is_empty());
    }

    #[test]
    fn no_advice_on_pressure_is_shown_unread() {
        assert!(
            wrong("Marlbeck Steam and Model Engineers", "The Old Boiler House", "", "").is_empty()
        );
        assert_eq!(wrong("Test boilers at 10 bar", "", "", ""), ["club_name"]);
        assert_eq!(wrong("", "", "We silver solder boilers on Thursdays.", ""), ["welcome"]);
    }
}
