//! The members of the demonstration: invented names, none a real person's known to us.

use crate::rules::auth::Rights;

/// One member.
#[derive(Clone, Copy, Debug)]
pub struct Member {
    /// The name shown.
    pub name: &'static str,
    /// What they may do.
    pub rights: Rights,
}

const NONE: Rights = Rights { moderator: false, inspector: false, secretary: false };
const MODERATOR: Rights = Rights { moderator: true, ..NONE };
const INSPECTOR: Rights = Rights { inspector: true, ..NONE };
const SECRETARY: Rights = Rights { secretary: true, ..NONE };

/// Everybody, in the order in which they joined.
#[rustfmt::skip]
pub const MEMBERS: [Member; 12] = [
    Member { name: "Enid Hathersage", rights: SECRETARY },
    Member { name: "Walter Brinscombe", rights: MODERATOR },
    Member { name: "Maud Ellerthwaite", rights: MODERATOR },
    Member { name: "Cyril Oakenshaw", rights: INSPECTOR },
    Member { name: "Harold Tanbeck", rights: NONE },
    Member { name: "Doris Wragthorpe", rights: NONE },
    Member { name: "Norman Feldgate", rights: NONE },
    Member { name: "Ivy Castlewick", rights: NONE },
    Member { name: "Stanley Pockthorpe", rights: NONE },
    Member { name: "Mabel Thornscar", rights: NONE },
    Member { name: "Ernest Quarndale", rights: NONE },
    Member { name: "Hilda Marshlow", rights: NONE },
];

/// A member's place in [`MEMBERS`].
pub(super) type Place = usize;

/// The one who passes what a moderator may; [`SECOND_MODERATOR`] where the note is theirs.
pub(super) const FIRST_MODERATOR: Place = 1;
pub(super) const SECOND_MODERATOR: Place = 2;
pub(super) const THE_INSPECTOR: Place = 3;
