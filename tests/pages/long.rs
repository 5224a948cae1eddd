//! However long what is typed, the answer is about as long as a page: one field never fills a hundred links.

use crate::hostile::queries;
use crate::{body, inside, visit};

/// What an answer may hold beside its page and the address itself, in bytes.
const ROOM: usize = 100_000;
/// How often an answer may hold what is typed.
const TIMES: usize = 4;

#[track_caller]
fn is_no_longer_than_it_may(address: &str) {
    let open = address.split_once('?').map_or(0, |(path, _)| visit(path).text().len());
    let answer = visit(address);
    let (held, most) = (answer.text().len(), open + ROOM + TIMES * address.len());
    let start: String = address.chars().take(120).collect();
    assert!(held <= most, "{start}: {held} bytes, {most} at most");
    let sent_on = answer.location().map_or(0, str::len);
    assert!(sent_on <= ROOM + TIMES * address.len(), "{start}: sent on to {sent_on} bytes");
}

#[test]
fn a_long_query_is_not_repeated() {
    for query in queries() {
        for word in ["'", "1-60, "] {
            for length in [480, 1_900, 44_000] {
                is_no_longer_than_it_may(&format!("{query}{}", word.repeat(length / word.len())));
            }
        }
    }
}

#[test]
fn a_depth_behind_the_thread_leaves_a_way_back_to_through() {
    let asked = "/plan?thread=m6+20+deep&material=gunmetal&hole=through";
    let page = visit(asked).text().replace('\u{a0}', " ");
    assert!(page.contains("through, 20 thick"));
    assert!(
        page.contains("/plan?thread=m6&#38;material=gunmetal&#38;hole=through&#38;depth=20\""),
        "{page}"
    );
}

#[test]
fn every_choice_beside_a_long_list_is_no_long_page() {
    for other in ["owned", "spindle_speeds", "series", "thread", "depth", "material", "zzz", "over"]
    {
        for length in [480, 1_900, 44_000] {
            let long = "'".repeat(length);
            for asked in ["thread=1/4", "thread=2&material=iron&hole=blind", "material=bronze"] {
                for page in
                    ["plan", "calculators/tapping", "calculators/clearance", "calculators/speeds"]
                {
                    is_no_longer_than_it_may(&format!("/{page}?{asked}&{other}={long}"));
                }
            }
        }
    }
}

#[test]
fn a_field_too_long_is_refused_plainly_and_shown_cut() {
    let metal = "gunmetal ".repeat(500);
    let page = body(422, &format!("/plan?thread=m6&material=gunmetal&hole=through&over={metal}"));
    assert!(inside(&page, "main").contains("That is too long: 200 characters are the most."));
    for address in
        ["/threads/metric?material=", "/drills?from=", "/calculators/speeds?diameter=6&material="]
    {
        let page = body(422, &format!("{address}{metal}"));
        assert!(page.contains("That is too long: 200 characters are the most."), "{address}");
    }
    let page =
        body(422, &format!("/plan?thread=m6&material=gunmetal&owned={}", "1-60,".repeat(900)));
    assert!(page.contains("That is too long: 500 characters are the most."));
}
