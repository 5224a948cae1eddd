//! Every address of the reference, from the tables.

use holewright_core::calculators::CALCULATORS;
use holewright_core::tables::{drills, materials, threads};

use crate::kinds::kinds;

/// Every page that needs no query.
pub(crate) fn reference() -> Vec<String> {
    let fixed = kinds().into_iter().filter(|kind| kind.status == 200);
    let fixed = fixed.map(|kind| kind.address.into_owned());
    let fixed = fixed.filter(|path| !path.contains('?') && path.matches('/').count() == 1);
    let calculators = CALCULATORS.iter().map(|calculator| calculator.path());
    let systems = threads::systems().iter().map(|system| format!("/threads/{}", system.slug));
    let threads = threads::all().map(|thread| thread.path());
    let drills = drills::all().iter().map(|drill| drill.path());
    let materials = materials::all().iter().map(|material| material.path());
    let fixed = fixed.chain(calculators);
    fixed.chain(systems).chain(threads).chain(drills).chain(materials).collect()
}

#[test]
fn the_reference_is_large_enough_to_be_the_whole_of_it() {
    let addresses = reference();
    assert!(addresses.len() > 800, "{}", addresses.len());
}
