//! Remarks on a shown note: a remark waits until somebody has read it, is then shown below the note or not taken, and
//! can be taken back by whoever made it. What it speaks of, and the note it stands on, say whose it is to decide: never
//! whoever made it, nor the note’s author where somebody else could.

use super::state::{Others, Subject, Who, may_pass, sees_waiting};
use crate::rules::auth::Right;

/// The most characters of a remark.
pub const LONGEST: usize = 500;
/// The most of one member that wait on one note.
pub const WAIT_ON_NOTE: i64 = 5;
/// The most of one member that wait in all.
pub const WAIT_IN_ALL: i64 = 20;

/// Where a remark stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// Nobody has decided about it.
    Waiting,
    /// Readers of the note see it.
    Shown,
    /// It was not taken, or was taken away.
    Declined,
    /// Whoever made it took it back, or its note was withdrawn.
    Withdrawn,
}

impl State {
    /// As the database has it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Waiting => "waiting",
            Self::Shown => "shown",
            Self::Declined => "declined",
            Self::Withdrawn => "withdrawn",
        }
    }

    /// The word in the database.
    #[must_use]
    pub fn read(word: &str) -> Self {
        match word {
            "shown" => Self::Shown,
            "declined" => Self::Declined,
            "withdrawn" => Self::Withdrawn,
            _ => Self::Waiting,
        }
    }
}

/// What somebody does to a remark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Readers see it from now on.
    Show,
    /// It is not taken, or taken away, with the reason.
    Decline,
    /// Whoever made it takes it back.
    TakeBack,
}

/// Below whose note a remark stands, as whoever acts sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    /// Another member’s, or that of one who has left.
    Anothers,
    /// Their own; and whether somebody could decide who neither wrote the note nor made the remark.
    Own(Others),
}

/// Why an act is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// It is another member's, and nobody else is to know that it exists.
    #[error("there is no such remark")]
    NotYours,
    /// It takes a moderator.
    #[error("a moderator decides about a remark")]
    Moderator,
    /// It takes the inspector.
    #[error("what speaks of boilers, steam or pressure is for an inspector to pass")]
    Inspector,
    /// It is their own.
    #[error("nobody decides about a remark of their own: somebody else with the right does")]
    Own,
    /// It stands below a note of theirs.
    #[error(
        "nobody decides about the remarks on a note of their own: somebody else with the right does"
    )]
    OwnNote,
    /// As many of theirs wait on this note as may.
    #[error(
        "{WAIT_ON_NOTE} remarks of yours on this note wait to be read, which is as many as are taken: send more \
         once somebody has read them"
    )]
    ManyOnNote,
    /// As many of theirs wait as may.
    #[error(
        "{WAIT_IN_ALL} remarks of yours wait to be read, which is as many as are taken: send more once somebody has \
         read some of them"
    )]
    ManyInAll,
    /// Somebody decided about it, or it was taken back.
    #[error("the remark was decided about already, or was taken back")]
    Decided,
    /// It was shown after whoever decides had read it as one that waits.
    #[error(
        "somebody else has shown the remark meanwhile, and readers see it: read it again before you take it away"
    )]
    ShownMeanwhile,
}

/// Where a remark stands after the act of somebody; `is_author` says whether the remark is theirs.
///
/// # Errors
/// The act is not theirs, or the remark does not stand so that it can be done.
///
/// # Examples
/// ```
/// use holewright_server::rules::auth::Rights;
/// use holewright_server::rules::notes::remarks::{Act, Below, Refused, State, after};
/// use holewright_server::rules::notes::state::{Others, Subject, Who};
/// let reader = Who { is_author: false, rights: Rights::default(), others: Others::Can };
/// let waits = (State::Waiting, Subject::Usual);
/// assert_eq!(after(Act::Show, waits, Below::Anothers, reader), Err(Refused::Moderator));
/// let own = Who { is_author: true, ..reader };
/// assert_eq!(after(Act::TakeBack, waits, Below::Anothers, own), Ok(State::Withdrawn));
/// ```
pub fn after(
    act: Act,
    (state, subject): (State, Subject),
    below: Below,
    who: Who,
) -> Result<State, Refused> {
    match act {
        Act::TakeBack if !who.is_author => return Err(Refused::NotYours),
        Act::TakeBack => {}
        Act::Show if !may_pass(subject, who.rights) => {
            return Err(match subject {
                Subject::Usual => Refused::Moderator,
                Subject::Pressure if sees_waiting(subject, who.rights) => Refused::Inspector,
                Subject::Pressure => Refused::Moderator,
            });
        }
        Act::Decline if !sees_waiting(subject, who.rights) => return Err(Refused::Moderator),
        Act::Show | Act::Decline => {
            // A secretary who is alone decides about their own too: a club of one could show none.
            let is_alone = who.rights.may(Right::Manage) && who.others == Others::Nobody;
            if who.is_author && !is_alone {
                return Err(Refused::Own);
            }
            if below == Below::Own(Others::Can) {
                return Err(Refused::OwnNote);
            }
        }
    }
    match (act, state) {
        (Act::Show, State::Waiting) => Ok(State::Shown),
        (Act::Decline, State::Waiting | State::Shown) => Ok(State::Declined),
        (Act::TakeBack, State::Waiting | State::Shown) => Ok(State::Withdrawn),
        _ => Err(Refused::Decided),
    }
}

/// What was decided holds for a remark as it was read; none where that was not said.
///
/// # Errors
/// It is shown by now, and was not when it was read.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::remarks::{Refused, State, as_read};
/// assert_eq!(as_read(Some(State::Waiting), State::Shown), Err(Refused::ShownMeanwhile));
/// assert!(as_read(Some(State::Shown), State::Shown).is_ok() && as_read(None, State::Shown).is_ok());
/// ```
pub fn as_read(read: Option<State>, is: State) -> Result<(), Refused> {
    let is_news = is == State::Shown && read.is_some_and(|read| read != State::Shown);
    if is_news { Err(Refused::ShownMeanwhile) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::{Act, Below, Refused, State, after};
    use crate::rules::auth::Rights;
    use crate::rules::notes::state::{Others, Subject, Who};

    fn who(name: &str) -> Who {
        let rights = |moderator, inspector, secretary| Rights { moderator, inspector, secretary };
        let other = |rights| Who { is_author: false, rights, others: Others::Can };
        let own = |rights, others| Who { is_author: true, rights, others };
        match name {
            "own" => own(rights(false, false, false), Others::Can),
            "moderator's own" => own(rights(true, false, false), Others::Can),
            "alone" => own(rights(false, false, true), Others::Nobody),
            "moderator" => other(rights(true, false, false)),
            "inspector" => other(rights(false, true, false)),
            _ => other(Rights::default()),
        }
    }

    #[test]
    fn every_act_on_a_remark_by_everybody() {
        let letter = |found: Result<State, Refused>| match found {
            Ok(_) => 'y',
            Err(Refused::NotYours) => '.',
            Err(Refused::Decided) => '-',
            Err(_) => 'n',
        };
        // Show, decline and take back: of one that waits, is shown, was declined, was taken back.
        for (by, usual, pressure) in [
            ("own", ["nny", "nny", "nn-", "nn-"], ["nny", "nny", "nn-", "nn-"]),
            ("moderator's own", ["nny", "nny", "nn-", "nn-"], ["nny", "nny", "nn-", "nn-"]),
            ("alone", ["yyy", "-yy", "---", "---"], ["nyy", "nyy", "n--", "n--"]),
            ("reader", ["nn.", "nn.", "nn.", "nn."], ["nn.", "nn.", "nn.", "nn."]),
            ("moderator", ["yy.", "-y.", "--.", "--."], ["ny.", "ny.", "n-.", "n-."]),
            ("inspector", ["nn.", "nn.", "nn.", "nn."], ["yy.", "-y.", "--.", "--."]),
        ] {
            for (subject, expected) in [(Subject::Usual, usual), (Subject::Pressure, pressure)] {
                let states = [State::Waiting, State::Shown, State::Declined, State::Withdrawn];
                let found = states.map(|state| {
                    let acts = [Act::Show, Act::Decline, Act::TakeBack];
                    let tried = acts
                        .map(|act| letter(after(act, (state, subject), Below::Anothers, who(by))));
                    tried.iter().collect::<String>()
                });
                assert_eq!(found.as_slice(), expected.as_slice(), "{by} {subject:?}");
            }
        }
    }

    #[test]
    fn nobody_decides_about_remarks_on_their_own_note_where_somebody_else_could() {
        let waits = (State::Waiting, Subject::Usual);
        for act in [Act::Show, Act::Decline] {
            let decides = |below| after(act, waits, below, who("moderator"));
            assert_eq!(decides(Below::Own(Others::Can)), Err(Refused::OwnNote));
            assert!(decides(Below::Own(Others::Nobody)).is_ok());
            assert!(decides(Below::Anothers).is_ok());
        }
        let back = after(Act::TakeBack, waits, Below::Own(Others::Can), who("moderator's own"));
        assert_eq!(back, Ok(State::Withdrawn));
    }

    #[test]
    fn the_words_of_the_database_read_back() {
        for state in [State::Waiting, State::Shown, State::Declined, State::Withdrawn] {
            assert_eq!(State::read(state.word()), state);
        }
    }
}
