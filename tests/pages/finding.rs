//! `/search`: straight there when one thing is meant, a choice when several are, help when none is.

use crate::{body, visit};

#[track_caller]
fn finds(typed: &str, address: &str) {
    let answer = visit(&format!("/search?q={typed}"));
    assert_eq!((answer.status, answer.location()), (303, Some(address)), "{typed}");
}

#[test]
fn one_meaning_goes_straight_there() {
    finds("5ba", "/threads/ba/5");
    finds("M3+x+.5", "/threads/metric/m3");
    finds("1%2F4x40+ME", "/threads/me-40/1-4");
    finds("%2346", "/drills/number/46");
    finds("2.05mm", "/drills/metric/2.05");
    finds("gunmetal", "/materials/gunmetal");
}

#[test]
fn several_meanings_are_listed() {
    let page = body(200, "/search?q=1%2F4");
    for address in
        ["/threads/bsw/1-4", "/threads/bsf/1-4", "/threads/me-40/1-4", "/drills/fraction/1-4"]
    {
        assert!(page.contains(&format!("href=\"{address}\"")), "{address}");
    }
}

#[test]
fn a_size_shows_what_its_drill_taps_and_clears() {
    // 5 BA, 3.2 mm over the crests: No. 36 leaves 69.9 % of it.
    let found = holewright_pages::search::found(".1065");
    let taps = |hit: &&holewright_core::finder::Hit| {
        hit.url == "/threads/ba/5"
            && hit.why.ends_with("a tapping size of it, 69.9 % of full depth")
    };
    assert!(found.hits.iter().any(|hit| taps(&hit)), "{found:?}");
    let found = holewright_pages::search::found("2.7 mm");
    let says = |what: &str| found.hits.iter().any(|hit| hit.why.starts_with(what));
    assert!(says("2.7 mm clears it") && says("2.7 mm is a tapping size of it"), "{found:?}");
}

#[test]
fn no_meaning_keeps_the_words_and_offers_help() {
    let page = body(404, "/search?q=%3Cscript%3E");
    assert!(page.contains("value=\"&#60;script&#62;\""));
    assert!(!page.contains("<script"));
    assert!(body(404, "/materials/gunmetl").contains("/materials/gunmetal"));
}

#[test]
fn a_misspelling_is_read_but_never_sent_on() {
    let page = body(200, "/search?q=gunmetl");
    assert!(page.contains("href=\"/materials/gunmetal\""));
    assert!(page.contains("read as gunmetal"));
}

#[test]
fn nothing_typed_is_an_empty_box() {
    assert!(body(200, "/search").contains("name=\"q\""));
}

#[test]
fn a_size_that_is_not_made_leads_to_its_system_and_to_sizes_of_it_alone() {
    for (address, system) in [("/threads/ba/99", "ba"), ("/threads/metric/m99", "metric")] {
        let page = body(404, address);
        let main = page.split("<main").nth(1).unwrap().split("</main>").next().unwrap();
        assert!(main.contains(&format!("href=\"/threads/{system}\"")), "{main}");
        assert!(!main.contains("href=\"/materials/"), "{main}");
    }
}
