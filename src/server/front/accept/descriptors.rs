//! How many files and sockets the process may have open.

use rustix::process::{Resource, Rlimit, getrlimit, setrlimit};

/// Kept back for the database, the log, the listeners and the runtime.
pub const RESERVE: usize = 64;

/// Raises the soft limit to the hard one, as far as the system lets it, and says what holds now.
#[must_use]
pub fn raise() -> usize {
    let Rlimit { current, maximum } = getrlimit(Resource::Nofile);
    if current != maximum {
        // Refused where no limit stands for the hard one and the system has its own: as before.
        let _ = setrlimit(Resource::Nofile, Rlimit { current: maximum, maximum });
    }
    let now = getrlimit(Resource::Nofile).current;
    now.and_then(|most| usize::try_from(most).ok()).unwrap_or(usize::MAX)
}
