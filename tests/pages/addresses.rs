//! Every address of the reference, from the tables.

use holewright_core::tables::{drills, materials, threads};

use crate::kinds::KINDS;

/// Every page that needs no query.
pub(crate) fn reference() -> Vec<String> {
    let of_the_tables = |address: &str| address.matches('/').count() > 1;
    let fixed = KINDS.iter().filter(|kind| kind.status == 200);
    let fixed = fixed.map(|kind| kind.address).filter(|address| !address.contains('?'));
    let fixed = fixed
        .filter(|address| address.starts_with("/calculators") || !of_the_tables(address))
        .map(str::to_owned);
    let systems = threads::systems().iter().map(|system| format!("/threads/{}", system.slug));
    let threads = threads::all().map(|thread| thread.path());
    let drills = drills::all().iter().map(|drill| drill.path());
    let materials = materials::all().iter().map(|material| material.path());
    fixed.chain(systems).chain(threads).chain(drills).chain(materials).collect()
}

#[test]
fn the_reference_is_large_enough_to_be_the_whole_of_it() {
    let addresses = reference();
    assert!(addresses.len() > 800, "{}", addresses.len());
}
