//! Every address of the reference, from the tables.

use holewright_core::tables::{drills, materials, threads};

/// Every page that needs no query.
pub(crate) fn reference() -> Vec<String> {
    let fixed = [
        "/",
        "/threads",
        "/drills",
        "/materials",
        "/plan",
        "/search",
        "/calculators",
        "/drawer",
        "/calculators/speeds",
        "/calculators/tapping",
        "/calculators/clearance",
    ]
    .map(String::from);
    let systems = threads::systems().iter().map(|system| format!("/threads/{}", system.slug));
    let threads = threads::all().map(|thread| thread.path());
    let drills = drills::all().iter().map(|drill| drill.path());
    let materials = materials::all().iter().map(|material| material.path());
    fixed.into_iter().chain(systems).chain(threads).chain(drills).chain(materials).collect()
}

#[test]
fn the_reference_is_large_enough_to_be_the_whole_of_it() {
    let addresses = reference();
    assert!(addresses.len() > 800, "{}", addresses.len());
}
