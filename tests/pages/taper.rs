//! Taper threads lead with the hole for the taper thread, each hole named by what it is.

use holewright_core::tables::threads;

use crate::{body, inside};

/// Machinery's Handbook 31st ed. p. 1005, table 24a: letter Q for 1/8 NPT, tapped direct. A tap maker's
/// catalogue of 2021, p. 720: 8.2 mm at most for Rc 1/8 in a straight hole.
#[test]
fn a_taper_page_leads_with_the_straight_hole_and_names_the_others() {
    for (path, lead, others) in [
        (
            "/threads/bspt/1-8",
            "8.2 mm",
            &["hole taper reamed", "Parallel thread for a taper fitting"][..],
        ),
        ("/threads/npt/1-8", "Letter Q", &["hole taper reamed"][..]),
    ] {
        let page = body(200, path);
        let answer = page.split("class=\"answer\"").nth(1).unwrap().split("</div>").next().unwrap();
        assert!(answer.contains(&format!("<strong>{lead}</strong>")), "{answer}");
        assert!(answer.contains("Taper thread, straight hole"), "{answer}");
        assert!(inside(&page, "title").contains(&format!("tapping size {lead}, straight hole")));
        let holes = page.split("<caption id=\"holes\">").nth(1).unwrap();
        for other in others {
            assert!(holes.contains(other), "{path}: {other}");
        }
    }
}

#[test]
fn nothing_above_is_named_where_nothing_stands_above() {
    for thread in threads::all() {
        let page = body(200, &thread.path());
        let says = page.contains("the figures above");
        assert_eq!(says, says && page.contains("By material"), "{}", thread.designation);
        let is_taper = thread.taper.is_some();
        assert_eq!(is_taper, page.contains("<h2>Holes</h2>"), "{}", thread.designation);
    }
}
