//! The reasons that those who decide give most often, each at one tap: declared here and nowhere else.

use super::decision::Decision;

/// What its author is then asked or told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sends {
    /// The wording goes back with what to change.
    Back,
    /// The wording is not taken.
    Away,
}

impl Sends {
    /// What is decided with such a reason.
    #[must_use]
    pub const fn decision(self) -> Decision {
        match self {
            Self::Back => Decision::Change,
            Self::Away => Decision::Decline,
        }
    }
}

/// A ready-made reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ready {
    /// As a form sends it.
    pub name: &'static str,
    /// What becomes of the wording.
    pub sends: Sends,
    /// As its author reads it.
    pub words: &'static str,
}

/// The word of the button that puts one of them into the field, where it can be changed before it is sent.
pub const TO_CHANGE: &str = "words";

const fn ready(name: &'static str, sends: Sends, words: &'static str) -> Ready {
    Ready { name, sends, words }
}

/// All of them, in the order in which they are offered.
pub const READY: [Ready; 10] = [
    ready("drill", Sends::Back, "Which drill, and what did it measure?"),
    ready("metal", Sends::Back, "Which metal, as you bought it?"),
    ready("depth", Sends::Back, "Say how deep, and whether through or blind."),
    ready("oil", Sends::Back, "Dry, or with which oil?"),
    ready("held", Sends::Back, "How was the work held?"),
    ready("thread", Sends::Back, "Which thread?"),
    ready("hurt", Sends::Away, "Somebody could be hurt by this: eyes, swarf, dust or fire."),
    ready("drawing", Sends::Away, "Bring the drawing to an inspector before cutting."),
    ready("question", Sends::Away, "Is this a question? Ask it at the club night."),
    ready("told", Sends::Away, "Already told in an earlier note."),
];

impl Ready {
    /// The one with this name.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        READY.iter().find(|ready| ready.name == name)
    }

    /// What its author is told, with what was typed beside it; where that has the words already, as it was typed.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::ready::Ready;
    /// let drill = Ready::named("drill").unwrap();
    /// assert_eq!(drill.with(""), "Which drill, and what did it measure?");
    /// let both = "Which drill, and what did it measure?\n\nThe second one.";
    /// assert_eq!(drill.with("The second one."), both);
    /// assert_eq!(drill.with(both), both);
    /// ```
    #[must_use]
    pub fn with(&self, typed: &str) -> String {
        behind(self.words.to_owned(), typed)
    }

    /// Whether it speaks of an earlier note.
    #[must_use]
    pub fn points(&self) -> bool {
        self.name == "told"
    }

    /// The same with the earlier note that it speaks of, by its title and where it stands.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::ready::Ready;
    /// let told = Ready::named("told").unwrap();
    /// let words = "Already told in an earlier note: “Tapping 4 BA”, /notes/12";
    /// assert_eq!(told.pointing((12, "Tapping 4 BA"), ""), words);
    /// assert_eq!(told.pointing((12, "Tapping 4 BA"), "The same."), format!("{words}\n\nThe same."));
    /// ```
    #[must_use]
    pub fn pointing(&self, (note, title): (i64, &str), typed: &str) -> String {
        let words = self.words.strip_suffix('.').unwrap_or(self.words);
        behind(format!("{words}: “{title}”, /notes/{note}"), typed)
    }
}

fn behind(words: String, typed: &str) -> String {
    match typed {
        typed if typed.trim().is_empty() => words,
        typed if typed.contains(&words) => typed.to_owned(),
        typed => format!("{words}\n\n{typed}"),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::{Decision, READY, TO_CHANGE};

    #[test]
    fn one_field_of_the_queue_tells_every_button_from_every_other() {
        let decisions = Decision::ALL.iter().map(|decision| decision.word());
        let ready = READY.iter().map(|ready| ready.name);
        let mut seen = BTreeSet::new();
        let twice: Vec<_> =
            decisions.chain(ready).chain([TO_CHANGE]).filter(|word| !seen.insert(*word)).collect();
        assert_eq!(twice, Vec::<&str>::new());
    }
}
