//! One fastener on one card: every figure with its source, and words where none is held.

use holewright_core::calc::fastener_lists::{FIGURES, lists};
use holewright_core::calc::thread_form::geometry;
use holewright_core::calculators::{AnswerKind, Value, find};
use holewright_core::tables::source::Grade;
use holewright_core::tables::threads::{self, HexagonFamily};
use holewright_core::units::{in_mm, print};

use crate::calculators::{big, term};
use crate::{body, visit};

/// The card of a thread and a head.
fn card(thread: &str, head: &str) -> String {
    body(200, &format!("/calculators/fastener?thread={thread}&head={head}"))
}

/// A figure of the card: its value in millimetres and its grade; none where it is not of this card.
fn figure(thread: &str, head: &str, key: &str) -> Option<(String, Grade)> {
    let calculator = find("fastener").unwrap();
    let AnswerKind::Rows(rows) = calculator.answer else { panic!("rows") };
    let asked = calculator.asked([("thread", thread), ("head", head)]);
    let found = rows.answer(&asked).unwrap_or_else(|errors| panic!("{thread}: {errors:?}"));
    let figure = found.figures.into_iter().find(|figure| figure.key == key).unwrap();
    match figure.value {
        Value::Length(length) => Some((print::trimmed(in_mm(length), 4), figure.source.grade)),
        Value::Absent => None,
        other => panic!("{key}: {other:?}"),
    }
}

/// A length of a card that has it, in millimetres.
fn size(thread: &str, head: &str, key: &str) -> String {
    figure(thread, head, key).unwrap_or_else(|| panic!("{thread} {head} {key}")).0
}

#[test]
fn m6_has_its_hexagon_spanner_washer_and_clearances() {
    let page = card("m6", "hexagon");
    // ISO 273: 6.4, 6.6, 7. ISO 4014 and 4032: 10 across flats, 4 and 5.2 high. ISO 7089: 6.4, 12, 1.6.
    for (name, size) in [
        ("Clearance, close", "6.4 mm"),
        ("Clearance, medium", "6.6 mm"),
        ("Clearance, free", "7 mm"),
        ("Across flats", "10 mm"),
        ("Spanner", "10 mm"),
        ("Height of the head", "4 mm"),
        ("Thickness of the nut", "5.2 mm"),
        ("Washer, hole", "6.4 mm"),
        ("Washer, outside", "12 mm"),
        ("Washer, thickness", "1.6 mm"),
        ("Depth for a single point", "0.613 mm"),
    ] {
        let shown = term(&page, name);
        assert!(shown.starts_with(size), "{name}: {shown}");
    }
    assert!(big(&page).ends_with(" %"), "{}", big(&page));
    assert!(term(&page, "Tapped in").starts_with("Grey cast iron"));
    // The washer, 12 mm, is wider than the corners, 11.55: 12 and 8 %, at most 0.8.
    assert!(term(&page, "Spotface").starts_with("12.8 mm"));
    assert!(!page.contains("Countersink</dt>") && !page.contains("What is not held"));
}

#[test]
fn a_ba_hexagon_is_by_its_rule_and_a_model_one_by_the_next_screw() {
    for thread in threads::system("ba").unwrap().threads {
        let major = in_mm(geometry(thread).major);
        let flats = figure(thread.designation, "hexagon", "across_flats_mm");
        let by_rule = (print::trimmed(1.75 * major, 4), Grade::Published);
        assert_eq!(flats, Some(by_rule), "{}", thread.designation);
    }
    // 5 BA, 3.2 mm, for 4 BA.
    let small = figure("4 BA", "small-hexagon", "across_flats_mm");
    assert_eq!(small, Some(("5.6".to_owned(), Grade::CommonPractice)));
    assert_eq!(term(&card("4ba", "small-hexagon"), "Spanner"), "5 BA");
    assert_eq!(term(&card("2ba", "hexagon"), "Spanner"), "2 BA");
}

#[test]
fn whitworth_says_which_hexagon() {
    // BS 1083 has 0.445 for 1/4, the older one 0.525; the spanner bears both marks.
    let new = card("1/4%20bsw", "hexagon");
    assert!(term(&new, "Across flats").contains("0.4450 in"));
    assert_eq!(term(&new, "Whose hexagon"), "1/4 in, BS 1083:1965");
    assert_eq!(term(&new, "Spanner"), "1/4 BS, or 3/16 W, 0.445 in");
    let old = card("1/4%20bsw", "old-hexagon");
    assert!(term(&old, "Across flats").contains("0.5250 in"));
    assert_eq!(term(&old, "Spanner"), "1/4 W, 0.525 in");
    // ISO changed M10 from 17 to 16 mm.
    assert_eq!(size("M10", "hexagon", "across_flats_mm"), "16");
    assert_eq!(size("M10", "old-hexagon", "across_flats_mm"), "17");
    // The nut of 7/16 UNC is wider than its bolt.
    assert!(
        term(&card("7/16-14%20unc", "hexagon"), "Across flats of the nut").contains("0.6875 in")
    );
}

#[test]
fn a_head_is_sunk_by_the_angle_of_its_family() {
    // ISO 2009: 6.3 mm over the sharp edge of M3; (6.3 − 3.4)/2 over tan 45°.
    assert_eq!(size("M3", "countersunk", "countersink_mouth_mm"), "6.3");
    assert_eq!(size("M3", "countersunk", "countersink_depth_mm"), "1.45");
    assert!(term(&card("m3", "countersunk"), "Countersink").starts_with("90°"));
    assert!(term(&card("4-40%20unc", "countersunk"), "Countersink").starts_with("82°"));
    // No countersunk head of BA is held: 1¾ to 2 times the screw, common practice.
    assert_eq!(
        figure("4 BA", "countersunk", "countersink_mouth_mm"),
        Some(("6.3".to_owned(), Grade::CommonPractice))
    );
    assert_eq!(size("4 BA", "countersunk", "countersink_largest_mouth_mm"), "7.2");
    assert_eq!(figure("M3", "countersunk", "countersink_largest_mouth_mm"), None);
    // ISO 4762: 5.5 and 3 mm; 8 % of 5.5 is 0.44.
    assert_eq!(size("M3", "cap", "counterbore_mm"), "5.94");
    assert_eq!(size("M3", "cap", "counterbore_depth_mm"), "3");
    assert_eq!(figure("M3", "cap", "key_mm"), Some(("2.5".to_owned(), Grade::Library)));
}

#[test]
fn what_is_not_held_is_said_and_no_figure_stands_for_it() {
    let washer = card("4ba", "hexagon");
    assert!(washer.contains("No table of washers is held for 4 BA."), "{washer}");
    assert!(term(&washer, "Metric washer that goes over it").starts_with("M4: 4.3 mm hole"));
    assert!(washer.contains("No height of the head is held for this hexagon of 4 BA"));
    let cheese = card("4ba", "cheese");
    assert!(cheese.contains("No cheese head is held for 4 BA: measure the head"));
    assert_eq!(term(&cheese, "Diameter of the head"), "");
    assert_eq!(figure("4 BA", "cheese", "counterbore_mm"), None);
    let model = card("1/8%20x%2040%20me", "hexagon");
    assert!(model.contains("No hexagon head is held for"), "{model}");
    assert_eq!(figure("1/8 x 40 ME", "hexagon", "across_flats_mm"), None);
    let old = card("m6", "old-hexagon");
    assert!(old.contains("No older hexagon is held for M6"));
    assert!(body(422, "/calculators/fastener?thread=1/4%20npt").contains("has no head"));
}

#[test]
fn pressure_is_left_to_the_inspector() {
    let inspector = "the club’s boiler inspector decide, before cutting";
    assert!(body(200, "/calculators/fastener?thread=2ba&material=gunmetal").contains(inspector));
    assert!(card("1/4%20x%2040%20me", "hexagon").contains(inspector));
    assert!(!card("m6", "hexagon").contains(inspector));
}

/// Every card of every thread and head: each figure has its source, and no length is nothing.
#[test]
fn every_card_is_whole() {
    let calculator = find("fastener").unwrap();
    let AnswerKind::Rows(rows) = calculator.answer else { panic!("rows") };
    let heads = ["hexagon", "small-hexagon", "old-hexagon", "countersunk", "cheese", "cap"];
    let mut cards = 0;
    for thread in threads::all().filter(|thread| thread.taper.is_none()) {
        for head in heads {
            let asked = calculator.asked([("thread", thread.designation), ("head", head)]);
            let Ok(found) = rows.answer(&asked) else { continue };
            cards += 1;
            let place = format!("{} {head}", thread.designation);
            let size = |key: &str| {
                let figure = found.figures.iter().find(|figure| figure.key == key);
                match &figure.unwrap_or_else(|| panic!("{place} {key}")).value {
                    Value::Length(length) => Some(in_mm(*length)),
                    _ => None,
                }
            };
            for figure in &found.figures {
                assert!(!figure.source.cite.is_empty(), "{place} {}", figure.key);
                if let Value::Length(length) = figure.value {
                    assert!(in_mm(length) > 0.0, "{place} {}", figure.key);
                }
            }
            let major = in_mm(geometry(thread).major);
            let beyond = |key: &str| size(key).is_none_or(|size| size > major);
            for key in [
                "close_mm",
                "medium_mm",
                "free_mm",
                "across_flats_mm",
                "countersink_mouth_mm",
                "counterbore_mm",
                "washer_inside_mm",
                "least_edge_mm",
                "head_diameter_mm",
            ] {
                assert!(beyond(key), "{place} {key}: {:?} of {major}", size(key));
            }
            for key in ["across_corners_mm", "counterbore_mm", "washer_outside_mm", "spotface_mm"] {
                let bears = size(key).map(|it| it / 2.0 - 1e-9);
                assert!(size("least_edge_mm") >= bears, "{place} {key}");
            }
            let is_old = head == "old-hexagon";
            let family = thread.system.system().hexagons;
            let is_unified = family == HexagonFamily::Unified;
            let is_held = size("across_flats_mm").is_some();
            assert!(!(is_old && is_unified && is_held), "{place}: no standard changed it");
            assert!(size("die_blank_mm").unwrap() < major, "{place}");
            if let Some(spotface) = size("spotface_mm") {
                assert!(spotface > size("across_corners_mm").unwrap(), "{place}");
                assert!(size("washer_outside_mm").is_none_or(|it| spotface > it), "{place}");
            }
            let drawing = found.drawing.as_deref().unwrap_or_default();
            assert!(drawing.starts_with("<svg") && !drawing.contains("NaN"), "{place}");
            let depth = size("single_point_depth_mm").unwrap();
            assert!(depth > 0.0 && depth < major / 2.0, "{place}");
        }
    }
    assert!(cards > 2_000, "{cards}");
}

#[test]
fn the_drawing_says_what_the_page_says() {
    let page = card("m6", "hexagon");
    for words in ["across flats 10 mm", "head 4 mm", "hole ⌀6.6 mm", "screw ⌀6 mm"] {
        assert!(page.contains(words), "{words}");
    }
    for (head, words) in [
        ("cap", ["head ⌀5.5 mm", "bore 3 mm", "counterbore ⌀5.94 mm"]),
        ("countersunk", ["mouth ⌀6.3 mm", "sunk 1.45 mm", "hole ⌀3.4 mm"]),
        ("cheese", ["head ⌀5.5 mm", "head 2 mm", "screw ⌀3 mm"]),
    ] {
        let drawing = visit(&format!("/calculators/fastener.svg?thread=m3&head={head}"));
        for words in words {
            assert!(drawing.text().contains(words), "{head}: {words}");
        }
    }
    let bare = visit("/calculators/fastener.svg?thread=4ba&head=cheese");
    assert!(bare.text().contains("No head is held: none is drawn."));
}

#[test]
fn every_table_is_a_page_and_a_file_of_the_same_figures() {
    assert!(lists().len() >= 14);
    let index = body(200, "/fasteners");
    for list in lists() {
        assert!(index.contains(&format!("href=\"{}\"", list.path())), "{}", list.slug);
        let page = body(200, &list.path());
        let file = body(200, &format!("{}.csv", list.path()));
        let mut lines = file.lines();
        let head: Vec<&str> = lines.next().unwrap().split(',').collect();
        let rows = list.rows();
        assert!(!rows.is_empty(), "{}", list.slug);
        assert_eq!(page.matches("<tr id=").count(), rows.len(), "{}", list.slug);
        assert_eq!(lines.clone().count(), rows.len(), "{}", list.slug);
        for (row, line) in rows.iter().zip(lines) {
            assert!(!row.source.cite.is_empty() && line.ends_with(row.source.grade.slug()));
            for (key, heading, of) in FIGURES {
                let place = format!("{} {} {key}", list.slug, row.size);
                let column = head.iter().position(|name| *name == format!("{key}_mm"));
                let cell =
                    line.split(',').nth(column.unwrap_or_else(|| panic!("{place}"))).unwrap();
                let figure = of(&row.sizes).map(|size| print::fixed(in_mm(size), 3));
                assert_eq!(cell, figure.as_deref().unwrap_or_default(), "{place}");
                if let Some(figure) = figure {
                    assert!(page.contains(&format!("<td class=\"n\">{figure}</td>")), "{place}");
                    assert!(page.contains(&format!(">{heading}, mm</th>")), "{place}");
                }
            }
        }
    }
    // ISO 4032: 10 mm for M6; BS 1083: 0.445 in for 1/4.
    assert!(body(200, "/fasteners/hexagons-iso").contains("<tr id=\"m6\">"));
    assert!(body(200, "/fasteners/hexagons-bs-1083").contains("<td class=\"n\">0.4450</td>"));
    assert!(body(404, "/fasteners/rivets").contains("/fasteners/hexagons-ba"));
}
