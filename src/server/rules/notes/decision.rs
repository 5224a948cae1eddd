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

/// A decision that whoever made it can take back within the minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Undoable {
    /// [`Decision::Pass`].
    Pass,
    /// [`Decision::Change`].
    Change,
    /// [`Decision::Decline`].
    Decline,
    /// [`Decision::HandOver`].
    HandOver,
    /// [`Decision::TurnBack`].
    TurnBack,
    /// [`Decision::Settle`].
    Settle,
}

impl Undoable {
    /// The decision.
    #[must_use]
    pub const fn decision(self) -> Decision {
        match self {
            Self::Pass => Decision::Pass,
            Self::Change => Decision::Change,
            Self::Decline => Decision::Decline,
            Self::HandOver => Decision::HandOver,
            Self::TurnBack => Decision::TurnBack,
            Self::Settle => Decision::Settle,
        }
    }
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

    /// The same as what can be taken back; none of what cannot.
    #[must_use]
    pub const fn undoable(self) -> Option<Undoable> {
        Some(match self {
            Self::Pass => Undoable::Pass,
            Self::Change => Undoable::Change,
            Self::Decline => Undoable::Decline,
            Self::HandOver => Undoable::HandOver,
            Self::TurnBack => Undoable::TurnBack,
            Self::Settle => Undoable::Settle,
            Self::Withdraw | Self::Undo => return None,
        })
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
