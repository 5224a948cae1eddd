//! What whoever decides does with what stands in the queue: each declared here once, with the word that a form sends
//! and the database keeps.

use super::state::Act;

/// Makes of its rows the decisions, each with its word and its meaning.
macro_rules! decisions {
    ($($name:ident $word:literal: $what:literal;)+) => {
        /// What becomes of what stands in the queue.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Decision {
            $(#[doc = $what] $name,)+
        }

        impl Decision {
            /// Every one.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// Its word.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$name => $word),+ }
            }
        }
    };
}

decisions! {
    Pass "pass": "The waiting wording is shown.";
    Change "change": "It goes back to its author, with what to change.";
    Decline "decline": "It is not taken, with the reason.";
    HandOver "over": "It is handed to an inspector.";
    TurnBack "back": "It is turned back to the moderators.";
    Settle "settle": "There is nothing against the note: it shows again.";
    Withdraw "withdraw": "The note is taken back, with the reason.";
    Undo "undo": "The last decision is taken back.";
}

impl Decision {
    /// The one with this word.
    ///
    /// # Examples
    /// ```
    /// use holewright_server::rules::notes::decision::Decision;
    /// assert_eq!(Decision::read("over"), Some(Decision::HandOver));
    /// assert_eq!(Decision::read("overs"), None);
    /// ```
    #[must_use]
    pub fn read(word: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|decision| decision.word() == word)
    }

    /// Whether the author is told why; any other tells them nothing.
    #[must_use]
    pub const fn tells_why(self) -> bool {
        matches!(self, Self::Change | Self::Decline | Self::Withdraw)
    }

    /// Whether it is about the wording that waits, also where another is reported.
    #[must_use]
    pub const fn is_of_what_waits(self) -> bool {
        matches!(self, Self::Pass | Self::Change | Self::Decline)
    }

    /// The act on the note; none of what is undone, which is whatever was done before.
    #[must_use]
    pub const fn act(self) -> Option<Act> {
        Some(match self {
            Self::Pass => Act::Pass,
            Self::Change => Act::AskForChange,
            Self::Decline => Act::Decline,
            Self::HandOver => Act::HandOver,
            Self::TurnBack => Act::TurnBack,
            Self::Settle => Act::Settle,
            Self::Withdraw => Act::Withdraw,
            Self::Undo => return None,
        })
    }
}
