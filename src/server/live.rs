//! What the pages need to know, while the server runs: the club may change its name.

use std::ops::Deref;
use std::sync::{PoisonError, RwLock};

use holewright_pages::Context;

/// The context of today. It is read as if it never changed.
///
/// A context that was replaced stays in memory, since a page may be made of it at that moment. It has less
/// than two kilobytes, and a club changes its name now and then.
#[derive(Debug)]
pub struct Live(RwLock<&'static Context>);

impl Live {
    /// This one, to begin with.
    #[must_use]
    pub fn new(context: Context) -> Self {
        Self(RwLock::new(Box::leak(Box::new(context))))
    }

    /// Another from now on; nothing is done where it is the same.
    pub fn set(&self, context: Context) {
        let mut held = self.0.write().unwrap_or_else(PoisonError::into_inner);
        if **held != context {
            *held = Box::leak(Box::new(context));
        }
    }
}

impl Deref for Live {
    type Target = Context;

    fn deref(&self) -> &Context {
        *self.0.read().unwrap_or_else(PoisonError::into_inner)
    }
}
