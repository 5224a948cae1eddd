//! Why an act on a note is refused, as its reader is told.

/// Why an act is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// Only its author may, and nobody else is to know that the wording exists.
    #[error("there is no note at this address")]
    NotYours,
    /// It takes a moderator.
    #[error("a moderator decides this")]
    Moderator,
    /// It takes the inspector.
    #[error("what speaks of boilers, steam or pressure is for an inspector to pass")]
    Inspector,
    /// It is their own note.
    #[error(
        "nobody decides about a note of their own: somebody else with the right does, and where the club has nobody, \
         the secretary gives it"
    )]
    OwnNote,
    /// An author does not confirm or report their own note.
    #[error("this is for the other members: the note is your own")]
    Author,
    /// It is withdrawn.
    #[error("the note is withdrawn")]
    Withdrawn,
    /// No wording of it waits.
    #[error(
        "no wording of this note is waiting: it was decided already, or its author took it back"
    )]
    NotWaiting,
    /// No wording of it is shown.
    #[error("the note is not shown")]
    NotShown,
    /// It is hidden.
    #[error("the note is hidden until a moderator has looked at a report")]
    Hidden,
    /// It is not hidden.
    #[error("no report on this note is open: somebody settled it already")]
    NotHidden,
    /// It is with whom it should go to.
    #[error("the note was handed on already")]
    HandedOn,
    /// Somebody else decided.
    #[error("only whoever decided can undo it")]
    AnothersDecision,
    /// The minute is over.
    #[error("the minute is over in which a decision can be undone")]
    TooLate,
    /// There is nothing to undo any more.
    #[error("something else has happened to the note since, or it was undone already")]
    WentOn,
}
