//! What becomes of a form of a note, by what stands when it comes: nobody's words are overwritten unread,
//! and a form that comes twice is one change.

use super::wording::Aim;

/// Where the newest wording stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// On its author's desk.
    Desk,
    /// In the queue.
    Queue,
    /// It is shown, or was.
    Shown,
    /// It was not taken.
    Declined,
}

/// What a form says it was filled with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MadeFrom<'a> {
    /// With nothing: the first form of a note.
    Nothing,
    /// With the wording of this mark.
    Mark(&'a str),
    /// It was open before forms said so.
    Untold,
}

/// The newest wording, beside a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Newest<'a> {
    /// Where it stands.
    pub stands: Stands,
    /// Its mark.
    pub mark: &'a str,
    /// Whether it has the words of the form.
    pub is_the_same: bool,
    /// Whether it was kept from this very form.
    pub is_of_this_form: bool,
    /// Whether a moderator said something of it.
    pub has_reason: bool,
}

/// What becomes of the form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comes {
    /// It is kept.
    New,
    /// It came before, and stands already.
    Twice,
    /// Something stands that its author has not read there: it is shown first.
    Late,
    /// These very words were declined, and the form does not know it.
    Declined,
}

/// What becomes of a form with this aim.
///
/// # Examples
/// ```
/// use holewright_server::rules::notes::again::{Comes, MadeFrom, Newest, Stands, comes};
/// use holewright_server::rules::notes::wording::Aim;
/// let newest = Newest {
///     stands: Stands::Desk,
///     mark: "b",
///     is_the_same: false,
///     is_of_this_form: false,
///     has_reason: false,
/// };
/// assert_eq!(comes(Aim::Draft, MadeFrom::Mark("b"), newest), Comes::New);
/// assert_eq!(comes(Aim::Draft, MadeFrom::Mark("a"), newest), Comes::Late);
/// ```
#[must_use]
pub fn comes(aim: Aim, made_from: MadeFrom<'_>, newest: Newest<'_>) -> Comes {
    let is_there = match aim {
        Aim::Draft => matches!(newest.stands, Stands::Desk | Stands::Shown),
        Aim::SendIn => matches!(newest.stands, Stands::Queue | Stands::Shown),
    };
    if newest.is_the_same && is_there {
        return Comes::Twice;
    }
    let has_read = made_from == MadeFrom::Mark(newest.mark);
    if newest.is_the_same && newest.stands == Stands::Declined && aim == Aim::SendIn {
        return if has_read { Comes::New } else { Comes::Declined };
    }
    let own = !newest.has_reason && (newest.is_of_this_form || newest.is_the_same);
    if has_read || own || made_from == MadeFrom::Untold { Comes::New } else { Comes::Late }
}

#[cfg(test)]
mod tests {
    use super::{Comes, MadeFrom, Newest, Stands, comes};
    use crate::rules::notes::wording::Aim;

    const OTHER: Newest<'static> = Newest {
        stands: Stands::Desk,
        mark: "now",
        is_the_same: false,
        is_of_this_form: false,
        has_reason: false,
    };

    #[test]
    fn u10_words_that_differ_are_overwritten_only_by_whoever_read_them() {
        let read = MadeFrom::Mark("now");
        let unread = [MadeFrom::Nothing, MadeFrom::Mark("before"), MadeFrom::Mark("")];
        for aim in [Aim::Draft, Aim::SendIn] {
            for stands in [Stands::Desk, Stands::Queue, Stands::Shown, Stands::Declined] {
                let newest = Newest { stands, ..OTHER };
                assert_eq!(comes(aim, read, newest), Comes::New, "{aim:?} {stands:?}");
                assert_eq!(comes(aim, MadeFrom::Untold, newest), Comes::New);
                for made_from in unread {
                    assert_eq!(comes(aim, made_from, newest), Comes::Late, "{aim:?} {stands:?}");
                    // One window goes on, until a moderator has said something.
                    let same_form = Newest { is_of_this_form: true, ..newest };
                    assert_eq!(comes(aim, made_from, same_form), Comes::New);
                    let answered = Newest { has_reason: true, ..same_form };
                    assert_eq!(comes(aim, made_from, answered), Comes::Late);
                }
            }
        }
    }

    #[test]
    fn f23_the_same_words_stand_once() {
        let same = Newest { is_the_same: true, ..OTHER };
        let made = [MadeFrom::Nothing, MadeFrom::Mark("before"), MadeFrom::Mark("now")];
        for (aim, stands) in [
            (Aim::Draft, Stands::Desk),
            (Aim::Draft, Stands::Shown),
            (Aim::SendIn, Stands::Queue),
            (Aim::SendIn, Stands::Shown),
        ] {
            for made_from in made {
                assert_eq!(comes(aim, made_from, Newest { stands, ..same }), Comes::Twice);
            }
        }
        // From the desk into the queue, and back.
        for (aim, stands) in [(Aim::SendIn, Stands::Desk), (Aim::Draft, Stands::Queue)] {
            for made_from in made {
                assert_eq!(comes(aim, made_from, Newest { stands, ..same }), Comes::New);
            }
        }
    }

    #[test]
    fn u10_declined_words_go_again_only_from_a_form_that_knows() {
        let declined =
            Newest { stands: Stands::Declined, is_the_same: true, has_reason: true, ..OTHER };
        for made_from in [MadeFrom::Nothing, MadeFrom::Untold, MadeFrom::Mark("before")] {
            let of_it = Newest { is_of_this_form: true, ..declined };
            assert_eq!(comes(Aim::SendIn, made_from, of_it), Comes::Declined);
            assert_eq!(comes(Aim::SendIn, made_from, declined), Comes::Declined);
        }
        assert_eq!(comes(Aim::SendIn, MadeFrom::Mark("now"), declined), Comes::New);
    }
}
