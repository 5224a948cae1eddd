//! The words of the JSON and of its description: no host, program or brand, no word that was given up,
//! and keys that need no sentence.

use form_urlencoded::Serializer;
use holewright_core::calculators::CALCULATORS;
use holewright_core::tables::{materials, threads};
use serde_json::Value;

use crate::support::Server;
use crate::{outside, wordlist};

/// Keys that needed a sentence, and the plain ones that stand in their place.
const KEYS: &[(&str, &str)] = &[
    ("ends", "machine_range"),
    ("way", "travel"),
    ("way_mm", "travel_mm"),
    ("diameters", "depth_in_diameters"),
    ("first_mm", "first_peck_mm"),
    ("then_mm", "further_peck_mm"),
    ("stops_mm", "withdraw_at_mm"),
    ("set", "speed_to_set"),
    ("reach", "machine_fit"),
    ("at_hand", "machine_speeds"),
    ("in_print", "published"),
    ("largest_mm", "largest_diameter_mm"),
    ("smallest_mm", "smallest_diameter_mm"),
    ("turned", "driven_by"),
    ("counted", "counts_towards_range"),
    ("left_low_mm", "allowance_low_mm"),
    ("left_high_mm", "allowance_high_mm"),
    ("for_errors", "for_centre_errors"),
    ("fit_will_do", "fit_is_large_enough"),
    ("error_mm", "larger_by_mm"),
    ("met_in", "uses"),
    ("not_for", "not_for_use_in"),
    ("salvage", "mistaken_for"),
    ("grabs", "grabs_drill"),
    ("closes_in", "hole_closes_in"),
    ("known_as", "other_names"),
    ("refused", "not_to_be_cut"),
    ("standing", "validity"),
];

/// Every key and every string of a body.
fn walk(value: &Value, found: &mut Vec<(String, String)>, under: &str) {
    match value {
        Value::String(text) => found.push((under.to_owned(), text.clone())),
        Value::Array(items) => items.iter().for_each(|item| walk(item, found, under)),
        Value::Object(members) => {
            for (key, member) in members {
                found.push((key.clone(), String::new()));
                walk(member, found, key);
            }
        }
        _ => {}
    }
}

#[tokio::test]
async fn every_body_uses_our_words_and_plain_keys() {
    let server = Server::start().await;
    let calculators = CALCULATORS.iter().map(|calculator| {
        let query = Serializer::new(String::new()).extend_pairs(calculator.example()).finish();
        format!("calc/{}?{query}", calculator.slug)
    });
    let systems = threads::systems().iter().map(|system| format!("threads/{}", system.slug));
    let materials = materials::all().iter().map(|material| format!("materials/{}", material.slug));
    let fixed = [
        "openapi.json",
        "threads",
        "threads/ba/5",
        "threads/bspt/1-8",
        "threads/unc/1-4-20",
        "drills/number/46",
        "materials",
        "rescue",
        "rescue/broken-tap",
        "rescue/stripped-thread",
        "calc/speeds?material=gunmetal&diameter=6mm&work=reaming",
        "calc/speeds?material=gunmetal&diameter=2mm&depth=9mm&spindle_speeds=500%2C+1000",
        "plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm",
        "plan?thread=nonsense&material=unobtainium",
    ];
    let fixed = fixed.map(str::to_owned).into_iter();
    let mut read = 0;
    for address in fixed.chain(calculators).chain(systems).chain(materials) {
        let answer = server.get(&format!("/api/v1/{address}")).await;
        let mut found = Vec::new();
        walk(&answer.json(), &mut found, "");
        read += found.len();
        for (key, text) in found {
            let given_up = KEYS.iter().find(|(before, _)| *before == key);
            assert_eq!(given_up, None, "{address}");
            if !["$ref", "url", "instance", "type", "$schema", "identifier"].contains(&&*key) {
                assert_eq!(outside::named(&text), None, "{address}: {key}: {text}");
                assert_eq!(wordlist::replaced(&text), None, "{address}: {key}: {text}");
            }
        }
    }
    assert!(read > 10_000, "{read}");
}
