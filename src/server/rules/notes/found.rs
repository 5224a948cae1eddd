//! What members find of a note, in words: whether a way worked for them, or whether what a note warns of happened to
//! them too. Every page, list and export takes its words from here.

/// What a member found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// It worked, or it happened to them too.
    Worked,
    /// It did not.
    DidNot,
}

impl Found {
    /// As a form names it.
    #[must_use]
    pub fn read(typed: &str) -> Option<Self> {
        match typed {
            "worked" => Some(Self::Worked),
            "did-not" => Some(Self::DidNot),
            _ => None,
        }
    }
}

/// What a note is, and so what is asked of it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sense {
    /// A way to do something: did it work?
    #[default]
    Way,
    /// What went wrong: did it happen to others too?
    Warning,
}

impl Sense {
    /// That of a note that warns, or does not.
    #[must_use]
    pub const fn of(is_warning: bool) -> Self {
        if is_warning { Self::Warning } else { Self::Way }
    }

    /// What is asked.
    #[must_use]
    pub const fn question(self) -> &'static str {
        match self {
            Self::Way => "Did it work for you?",
            Self::Warning => "Did it happen to you too?",
        }
    }

    /// What a member answers.
    #[must_use]
    pub const fn answer(self, found: Found) -> &'static str {
        match (self, found) {
            (Self::Way, Found::Worked) => "It worked for me",
            (Self::Way, Found::DidNot) => "It did not",
            (Self::Warning, Found::Worked) => "It happened to me too",
            (Self::Warning, Found::DidNot) => "It did not happen to me",
        }
    }

    /// What one member found, before the details.
    #[must_use]
    pub const fn told(self, found: Found) -> &'static str {
        match (self, found) {
            (Self::Way, Found::Worked) => "Worked",
            (Self::Way, Found::DidNot) => "Did not work",
            (Self::Warning, Found::Worked) => "Confirmed",
            (Self::Warning, Found::DidNot) => "Did not happen",
        }
    }

    /// What others found of the shown wording: how many it worked for or happened to, and how many not.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::found::Sense;
    /// assert_eq!(Sense::Way.counts((2, 1)), "Worked for 2 members, did not for 1 member.");
    /// assert_eq!(Sense::Warning.counts((1, 0)), "Confirmed by 1 member.");
    /// ```
    #[must_use]
    pub fn counts(self, found: (i64, i64)) -> String {
        match (self, self.how_many(found)) {
            (Self::Way, None) => "Nobody else has said yet whether it works.".to_owned(),
            (Self::Warning, None) => {
                "A warning: nobody else has said yet whether it happened to them too.".to_owned()
            }
            (_, Some(how_many)) => {
                let mut letters = how_many.chars();
                let first = letters.next().map(|letter| letter.to_uppercase().to_string());
                format!("{}{}.", first.unwrap_or_default(), letters.as_str())
            }
        }
    }

    /// What others found of earlier wordings, if anybody did.
    #[must_use]
    pub fn earlier(self, found: (i64, i64)) -> Option<String> {
        let how_many = self.how_many(found)?;
        let was = match (self, found.0) {
            (Self::Way, _) | (Self::Warning, 0) => "",
            (Self::Warning, _) => "was ",
        };
        Some(format!("An earlier wording, which may have said something else, {was}{how_many}."))
    }

    /// What others found at another size, with another drill or in another material than the note's, if anybody did.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::found::Sense;
    /// let words = "Of another size, drill or material: worked for 1 member.";
    /// assert_eq!(Sense::Way.elsewhere((1, 0)).as_deref(), Some(words));
    /// assert_eq!(Sense::Way.elsewhere((0, 0)), None);
    /// ```
    #[must_use]
    pub fn elsewhere(self, found: (i64, i64)) -> Option<String> {
        Some(format!("Of another size, drill or material: {}.", self.how_many(found)?))
    }

    fn how_many(self, found: (i64, i64)) -> Option<String> {
        let (yes, no, short) = match self {
            Self::Way => ("worked for", "did not work for", "did not for"),
            Self::Warning => ("confirmed by", "did not happen to", "did not happen to"),
        };
        match found {
            (0, 0) => None,
            (worked, 0) => Some(format!("{yes} {}", members(worked))),
            (0, did_not) => Some(format!("{no} {}", members(did_not))),
            (worked, did_not) => {
                Some(format!("{yes} {}, {short} {}", members(worked), members(did_not)))
            }
        }
    }
}

fn members(count: i64) -> String {
    if count == 1 { "1 member".to_owned() } else { format!("{count} members") }
}

#[cfg(test)]
mod tests {
    use super::{Found, Sense};

    #[test]
    fn each_count_is_said_in_the_sense_of_the_note() {
        for (found, way, warning) in [
            ((0, 0), "Nobody else has said yet whether it works.", ""),
            ((1, 0), "Worked for 1 member.", "Confirmed by 1 member."),
            ((0, 2), "Did not work for 2 members.", "Did not happen to 2 members."),
            (
                (2, 1),
                "Worked for 2 members, did not for 1 member.",
                "Confirmed by 2 members, did not happen to 1 member.",
            ),
        ] {
            assert_eq!(Sense::Way.counts(found), way);
            if !warning.is_empty() {
                assert_eq!(Sense::Warning.counts(found), warning);
            }
        }
        assert!(Sense::Warning.counts((0, 0)).starts_with("A warning: nobody else"));
        let words = |sense: Sense| sense.earlier((1, 0)).unwrap_or_default();
        assert!(words(Sense::Way).ends_with("something else, worked for 1 member."));
        assert!(words(Sense::Warning).ends_with("something else, was confirmed by 1 member."));
        assert_eq!(Sense::Way.earlier((0, 0)), None);
    }

    #[test]
    fn no_word_of_a_way_is_said_of_a_warning() {
        for found in [Found::Worked, Found::DidNot] {
            assert_ne!(Sense::Way.answer(found), Sense::Warning.answer(found));
            assert!(!Sense::Warning.answer(found).to_lowercase().contains("work"));
            assert!(!Sense::Warning.told(found).to_lowercase().contains("work"));
        }
    }
}
