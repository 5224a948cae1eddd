//! A thread or system asked for at an address that is not its own: sent on, or near matches.

use crate::{Reply, Visit, not_found};
use holewright_core::tables::threads::read::read;
use holewright_core::tables::threads::{self, systems};

/// `/threads/metric/m3x0.5`: read as a person would; sent on where only one thread can be meant.
pub(super) fn thread(visit: &Visit<'_>, system: &str, size: &str) -> Reply {
    let mark = threads::system(system).map_or(system, |system| system.mark);
    let spellings = [format!("{size} {mark}"), format!("{mark} {size}"), size.to_owned()];
    match spellings.iter().find_map(|spelling| read(spelling).ok()) {
        Some(thread) => Reply::moved(&thread.path()),
        None => match threads::system(system) {
            Some(system) => not_found::near_in(visit, system, &format!("{size} {mark}")),
            None => not_found::near(visit, &format!("{size} {mark}")),
        },
    }
}

/// `/threads/whitworth`: the systems whose name or mark holds the word.
pub(super) fn system(visit: &Visit<'_>, slug: &str) -> Reply {
    let spaced = slug.replace('-', " ");
    let named = systems().iter().filter(|system| system.name.to_lowercase().contains(&spaced));
    not_found::near_systems(visit, named.copied())
}
