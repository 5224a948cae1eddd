//! The words people write for thread systems, each with the systems it can mean.
//!
//! Each system declares its own; what several declare means them all. Two words narrow each other:
//! `BSP taper`, `metric fine`, `unified coarse`.

use std::sync::LazyLock;

use super::super::{Meant, System, systems};
use super::SystemId;
use crate::units::read::plain;

/// The most words one name has.
pub(super) const MOST_WORDS: usize = 4;

/// Each name in the plain characters of what is typed, with its system.
static NAMES: LazyLock<Vec<(String, SystemId)>> = LazyLock::new(|| {
    let names = |system: &&'static System| {
        let id = system.id;
        let own = [system.slug, system.name, system.mark].into_iter();
        own.chain(system.spellings.iter().copied()).map(move |name| (words(name), id))
    };
    systems().iter().flat_map(names).collect()
});

/// A name as the words of a typed text are joined: marks between words left out.
fn words(name: &str) -> String {
    plain(name).replace(['-', ','], " ").replace("  ", " ")
}

/// The systems that a name can mean; empty if it is no name.
pub(super) fn named(name: &str) -> Vec<SystemId> {
    let mut found = Vec::new();
    for (_, system) in NAMES.iter().filter(|(own, _)| own == name) {
        if !found.contains(system) {
            found.push(*system);
        }
    }
    found
}

/// Whether a name means only systems that are meant by their name alone.
pub(super) fn is_of_rare(systems: &[SystemId]) -> bool {
    !systems.is_empty() && systems.iter().all(|system| system.system().meant == Meant::ByName)
}
