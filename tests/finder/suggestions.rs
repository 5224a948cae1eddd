//! What is offered where a text means nothing as a whole, and how words are put right.

use holewright_core::finder::{Hit, find};

fn urls(hits: &[Hit]) -> Vec<&str> {
    hits.iter().map(|hit| hit.url.as_ref()).collect()
}

#[test]
fn what_has_some_of_the_words_is_suggested_best_first() {
    for (query, expected) in [
        ("cycle gadget", &["/threads/bsc"][..]),
        ("clock gizmo", &["/materials/engraving-brass"]),
        (
            "centres gizmo",
            &[
                "/calculators/clearance",
                "/calculators/position",
                "/calculators/speeds?work=spotting",
            ],
        ),
        ("spindle gizmo", &["/calculators/speeds"]),
        ("spring thing", &["/materials/beryllium-copper", "/materials/spring-steel"]),
        // A word of the one, a word like one of the other's: flat.
        ("float gizmo", &["/calculators/clearance", "/materials/gauge-plate"]),
        ("spindle floot gizmo", &["/calculators/speeds", "/calculators/clearance"]),
    ] {
        let found = find(query);
        assert!(found.hits.is_empty(), "{query}");
        assert_eq!(urls(&found.suggestions), expected, "{query}");
    }
}

#[test]
fn the_start_of_a_known_word_is_not_put_right() {
    for query in ["gunmet", "phosph", "whitw", "stainl", "alumin", "clearan", "countersi", "spind"]
    {
        let found = find(query);
        let put_right: Vec<&Hit> =
            found.hits.iter().filter(|hit| hit.why.contains("read as")).collect();
        assert!(put_right.is_empty(), "{query}: {put_right:?}");
    }
    let misspelt = find("gunmetel");
    assert!(misspelt.hits[0].why.ends_with("; read as gunmetal"), "{:?}", misspelt.hits[0]);
}

#[test]
fn a_mark_with_a_figure_is_never_nearly_right() {
    for query in ["CZ129", "EN1Q", "LG7", "PB9", "303q", "6092", "enqa", "czqqq"] {
        let found = find(query);
        let near: Vec<_> =
            found.hits.iter().filter(|hit| hit.url.contains("/materials/")).collect();
        assert!(near.is_empty(), "{query}: {near:?}");
    }
}

#[test]
fn the_query_is_kept_as_it_was_typed() {
    for query in ["5ba", "1/4", "qwertyuiop", "\u{200b}x\u{200b}", "- ;"] {
        assert_eq!(find(&format!("  {query} ")).query, query);
    }
    assert_eq!(find("\u{200b}").query, "\u{200b}");
}
