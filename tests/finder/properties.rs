//! What must hold for every text, hostile ones too.

use std::collections::BTreeSet;

use holewright_core::finder::{Found, Hit, LONGEST, MOST, find};
use proptest::prelude::*;

use super::addresses::exists;

/// Words, figures and marks that mean something, to be run together at random.
const PIECES: [&str; 48] = [
    "5",
    "ba",
    "BA",
    "M3",
    "m",
    "1/4",
    "½",
    "1 1/4",
    "x",
    "×",
    "40",
    "tpi",
    "ME",
    "bsw",
    "whit",
    "unc",
    "#",
    "no",
    "No.",
    "46",
    "letter",
    "f",
    "7/64",
    "\"",
    "in",
    "mm",
    "thou",
    ".081",
    "2,05",
    "copper",
    "phos",
    "bronze",
    "steel",
    "stanless",
    "gunmetel",
    "EN1A",
    "18/8",
    "303",
    "drill",
    "tapping",
    "clearnace",
    "plan",
    "-",
    "/",
    ",",
    ";",
    "LH",
    "taper",
];

fn check(query: &str) {
    let found = find(query);
    check_list(query, &found.hits);
    check_list(query, &found.suggestions);
    assert!(found.hits.is_empty() || found.suggestions.is_empty(), "{query:?}");
    assert!(found.only().is_none_or(|only| found.hits.first() == Some(only)), "{query:?}");
    assert!(found.query.chars().count() <= LONGEST, "{query:?}");
    assert_eq!(found.query, found.query.trim(), "{query:?}");
    assert!(query.contains(&found.query), "{query:?}");
    assert_eq!(found, find(query), "{query:?} is found in another way the second time");
}

fn check_list(query: &str, hits: &[Hit]) {
    assert!(hits.len() <= MOST, "{query:?}");
    let urls: BTreeSet<&str> = hits.iter().map(|hit| hit.url.as_ref()).collect();
    assert_eq!(urls.len(), hits.len(), "{query:?} has an address twice");
    for hit in hits {
        assert!(hit.url.starts_with('/') && exists(&hit.url), "{query:?}: {:?}", hit.url);
        assert!(!hit.title.trim().is_empty() && !hit.why.trim().is_empty(), "{query:?}: {hit:?}");
    }
}

/// The same text with its letters in the other case and more space is the same.
fn is_same(one: &Found, other: &Found) -> bool {
    let urls = |found: &Found| -> Vec<String> {
        found.hits.iter().map(|hit| hit.url.to_string()).collect()
    };
    urls(one) == urls(other) && one.only().is_some() == other.only().is_some()
}

/// No clearance is offered for what passes through nothing.
#[test]
fn a_taper_thread_leads_to_no_clearance() {
    for query in ["40 1/4 taper x", "40 ME 1/4 taper", "clearance for 1/8 NPT", "R 1/8 clearance"] {
        check(query);
        let hits = find(query).hits;
        assert!(!hits.is_empty(), "{query}");
        let leads = |hit: &Hit| hit.url.starts_with("/calculators/clearance?");
        assert!(!hits.iter().any(leads), "{query}: {hits:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_text_has_unique_hits_that_exist(query in "\\PC{0,40}|.{0,300}") {
        check(&query);
    }

    #[test]
    fn pieces_have_unique_hits_that_exist(
        pieces in prop::collection::vec(prop::sample::select(&PIECES[..]), 1..9),
        joint in prop::sample::select(&["", " ", "  ", "-"][..]),
    ) {
        check(&pieces.join(joint));
    }

    #[test]
    fn case_and_space_do_not_matter(
        pieces in prop::collection::vec(prop::sample::select(&PIECES[..]), 1..6),
    ) {
        let query = pieces.join(" ");
        let other = format!("  {} ", pieces.join(" \u{a0} ")).to_uppercase();
        prop_assert!(is_same(&find(&query), &find(&other)), "{query:?} and {other:?}");
    }
}
