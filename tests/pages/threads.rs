//! The thread pages say the figures, each with its unit and its basis.

use holewright_core::tables::threads;

use crate::{body, inside, visit};

#[test]
fn five_ba_gives_its_tapping_size_first_and_names_the_basis() {
    let page = body(200, "/threads/ba/5");
    assert!(inside(&page, "title").starts_with("5 BA: tapping size No. 36, 69.9 %"));
    let main = inside(&page, "main");
    let place = |words: &str| main.find(words).unwrap_or_else(|| panic!("{words}"));
    assert!(place("No. 36") < place("<svg"), "the answer stands before the drawing");
    assert!(place("<svg") < place("By material"));
    for words in ["2.705 mm", "0.1065 in", "of full thread depth, 0.6 p (BS 93)", "within BS 93"] {
        place(words);
    }
    // Pitch, major, effective, minor, largest hole, tensile area.
    for figure in ["0.590", "3.200", "2.845", "2.490", "2.711", "5.59 mm²"] {
        place(figure);
    }
    for clearance in ["3.264", "3.328", "3.456"] {
        place(clearance);
    }
}

#[test]
fn sixty_degree_threads_show_both_bases() {
    let page = body(200, "/threads/metric/m3");
    let row = page.split("id=\"drill-metric-2.5\"").nth(1).unwrap();
    let row = row.split("</tr>").next().unwrap();
    assert!(row.contains("77.0") && row.contains("92.4"), "{row}");
    assert!(page.contains("of ¾ H, 0.6495 p (ISO 68-1)"));
    assert!(!body(200, "/threads/ba/5").contains("5/8 H"));
}

#[test]
fn taper_threads_have_a_list_and_a_gauge_length_but_no_engagement() {
    let page = body(200, "/threads/npt/1-8");
    assert!(page.contains("no engagement figure"));
    assert!(page.contains("Gauge length"));
    assert!(page.contains("Letter Q"));
    assert!(!page.contains("By material"));
}

#[test]
fn the_same_thread_and_look_alikes_are_named() {
    assert!(body(200, "/threads/bsw/1-8").contains("/threads/me-40/1-8"));
    let zero = body(200, "/threads/ba/0");
    assert!(zero.contains("Same diameter and pitch, not the same thread"));
    assert!(zero.contains("/threads/metric/m6"));
}

#[test]
fn every_row_of_a_table_has_its_sizes_own_id() {
    for system in threads::systems() {
        let page = body(200, &format!("/threads/{}", system.slug));
        for thread in system.threads {
            assert!(
                page.contains(&format!("<tr id=\"{}\">", thread.size)),
                "{}",
                thread.designation
            );
        }
    }
}

#[test]
fn an_unknown_thread_or_system_gets_near_matches_and_a_search_box() {
    let page = body(404, "/threads/ba/26");
    assert!(page.contains("/threads/ba/"), "no near match");
    assert!(page.contains("action=\"/search\""));
    assert!(body(404, "/threads/whitworth").contains("/threads/bsw"));
    assert_eq!(visit("/threads/ba/5/6").status, 404);
}

/// needs.md, question 9: the metal changes the tapping drill. The table of a system asks for it.
#[test]
fn a_systems_table_is_for_the_material_named() {
    let usual = body(200, "/threads/ba");
    assert!(
        usual.contains("tapped in grey cast iron, gunmetal and leaded bronze</span></caption>")
    );
    let tough = body(200, "/threads/ba?material=stainless-304");
    assert!(
        tough.contains("tapped in stainless steel 304</span></caption>"),
        "{}",
        inside(&tough, "caption")
    );
    assert!(tough.contains("<option value=\"stainless-304\" selected>"));
    assert!(tough.contains("href=\"/threads/ba.csv?material=stainless-304\""));
    assert!(tough.contains("href=\"https://club.example/threads/ba?material=stainless-304\""));
    let cell = |page: &str| {
        let row = page.split("<tr id=\"2\">").nth(1).unwrap().to_owned();
        row.split("<td>").nth(1).unwrap().split("</a>").next().unwrap().to_owned()
    };
    assert_ne!(cell(&usual), cell(&tough), "2 BA in stainless takes a larger drill");
    // The clearance stands beside the tapping size.
    let row = usual.split("<tr id=\"2\">").nth(1).unwrap().split("<td").nth(2).unwrap();
    assert!(row.contains("/drills/"), "{row}");
}

#[test]
fn a_material_that_cannot_be_used_is_kept_and_answered_with_422() {
    for (typed, words) in [("unobtainium", "unobtainium"), ("beryllium-copper", "beryllium")] {
        let page = body(422, &format!("/threads/ba?material={typed}"));
        assert!(inside(&page, "title").starts_with("Error: "));
        assert!(page.to_lowercase().contains(words));
        assert!(!page.contains("<caption"), "no table to be taken for the answer");
    }
    assert_eq!(visit("/threads/ba.csv?material=unobtainium").status, 422);
}
