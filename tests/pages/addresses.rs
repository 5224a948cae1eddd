//! Every address of the reference, from the tables.

use form_urlencoded::Serializer;
use holewright_core::calculators::{CALCULATORS, Declaration};
use holewright_core::tables::{drills, materials, threads};

/// Every page that needs no query.
pub(crate) fn reference() -> Vec<String> {
    let fixed =
        ["/", "/threads", "/drills", "/materials", "/plan", "/search", "/calculators", "/drawer"]
            .map(String::from);
    let systems = threads::systems().iter().map(|system| format!("/threads/{}", system.slug));
    let threads = threads::all().map(|thread| thread.path());
    let drills = drills::all().iter().map(|drill| drill.path());
    let materials = materials::all().iter().map(|material| material.path());
    let calculators = CALCULATORS.iter().map(|calculator| calculator.path());
    let fixed = fixed.into_iter().chain(calculators);
    fixed.chain(systems).chain(threads).chain(drills).chain(materials).collect()
}

/// Every calculator with the examples of its fields, first of those it needs, then of all.
pub(crate) fn examples() -> Vec<String> {
    let both = |calculator: &Declaration| [calculator.example(), calculator.whole_example()];
    let address = |calculator: &Declaration, pairs| with(&calculator.path(), pairs);
    CALCULATORS
        .iter()
        .flat_map(|calculator| both(calculator).map(|pairs| address(calculator, pairs)))
        .collect()
}

/// Every calculator with nonsense in each of its fields.
pub(crate) fn nonsense() -> Vec<String> {
    let address = |calculator: &&Declaration| {
        let fields = calculator.fields().map(|field| (field.about().name, "qqq"));
        with(&calculator.path(), fields.collect())
    };
    CALCULATORS.iter().map(address).collect()
}

/// A path with parameters.
pub(crate) fn with(path: &str, pairs: Vec<(&str, &str)>) -> String {
    format!("{path}?{}", Serializer::new(String::new()).extend_pairs(pairs).finish())
}

#[test]
fn the_reference_is_large_enough_to_be_the_whole_of_it() {
    let addresses = reference();
    assert!(addresses.len() > 800, "{}", addresses.len());
}
