//! What a reader's browser carries of a drawer.

use super::contents::{Drawer, Unreadable};

/// What a reader's browser carries of a drawer.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Carried {
    /// Nothing.
    #[default]
    Nothing,
    /// Something that is no drawer, or no longer.
    Unreadable,
    /// A drawer, in use or switched off.
    Drawer(Drawer),
}

impl Carried {
    /// What a cookie of this value carries; an empty one carries nothing.
    #[must_use]
    pub fn of(value: &str) -> Self {
        match Drawer::read(value) {
            _ if value.is_empty() => Self::Nothing,
            Ok(drawer) => Self::Drawer(drawer),
            Err(Unreadable) => Self::Unreadable,
        }
    }

    /// The drawer, whether or not it is switched on.
    #[must_use]
    pub fn drawer(&self) -> Option<&Drawer> {
        match self {
            Self::Drawer(drawer) => Some(drawer),
            Self::Nothing | Self::Unreadable => None,
        }
    }

    /// The drawer that pages choose from.
    #[must_use]
    pub fn in_use(&self) -> Option<&Drawer> {
        self.drawer().filter(|drawer| drawer.on)
    }
}
