//! The drill chart and its cuts, and the drills' own pages.

use holewright_core::tables::drills;

use crate::body;

#[test]
fn the_chart_holds_every_drill_in_order_of_size() {
    let page = body(200, "/drills");
    let mut last = 0;
    for drill in drills::all() {
        let row = format!("<tr id=\"{}-{}\">", drill.series, drill.size);
        let place = page.find(&row).unwrap_or_else(|| panic!("{row}"));
        assert!(place > last, "{row} out of order");
        last = place;
    }
}

#[test]
fn a_cut_keeps_what_lies_between_ends_included() {
    let rows = |query: &str| body(200, &format!("/drills?{query}")).matches("<tr id=").count();
    // 2.00, 2.05 … 3.00 in the metric series.
    assert_eq!(rows("from=2mm&to=3mm&series=metric"), 21);
    // Drill names and bare millimetres are read too: No. 60 is 0.0400 in, No. 50 0.0700.
    assert_eq!(rows("from=No.+60&to=%2350&series=number"), 11);
    assert_eq!(rows("from=2&to=3&series=metric"), 21);
    assert_eq!(rows("from=30mm"), 0);
}

#[test]
fn a_bad_cut_keeps_what_was_typed_and_says_what_is_read() {
    let page = body(422, "/drills?from=%3Cscript%3Ealert&to=2mm&series=number%2Croman");
    assert!(page.contains("<title>Error:"));
    assert!(!page.contains("<script"));
    assert!(page.contains("value=\"&#60;script&#62;alert\""));
    assert!(page.contains("value=\"2mm\""));
    assert!(page.contains("value=\"number,roman\" checked"));
    assert!(page.contains("href=\"#from\"") && page.contains("href=\"#series\""));
    assert!(body(422, "/drills?from=3mm&to=2mm").contains("The larger size stands first"));
}

#[test]
fn a_drill_says_both_units_its_neighbours_and_what_it_is_for() {
    let page = body(200, "/drills/number/46");
    for words in ["2.057 mm", "0.0810 in", "No. 47", "No. 45", "2.05 mm", "−0.007", "−0.3"] {
        assert!(page.contains(words), "{words}");
    }
    // 7 BA in No. 46 is 76.8 %: common practice, no source.
    let row = page.split("/threads/ba/7\"").nth(1).unwrap().split("</tr>").next().unwrap();
    assert!(row.contains("76.8"), "{row}");
    assert!(body(200, "/drills/metric/3.4").contains("/threads/ba/5"), "3.4 mm clears 5 BA");
}
