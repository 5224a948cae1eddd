//! The members' pages that anybody may read, one of each kind.

use std::borrow::Cow;

use crate::kinds::Kind;

const fn open(address: &'static str) -> Kind {
    Kind { status: 200, address: Cow::Borrowed(address) }
}

/// A new one is added here, and every check looks at it.
pub(crate) const OPEN: &[Kind] =
    &[open("/notes"), open("/notes?q=unheard"), open("/sign-in"), open("/privacy")];
