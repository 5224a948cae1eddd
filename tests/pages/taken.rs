//! What could mean two things: taken as the usual one with the others one tap away, or asked with both.

use crate::{body, inside, visit};

/// The addresses of the links in a piece of a page.
fn links(piece: &str) -> Vec<String> {
    let hrefs = piece.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
    hrefs.map(|href| href.replace("&#38;", "&").replace("&amp;", "&")).collect()
}

/// The line that says what was taken.
fn taken(page: &str) -> &str {
    let start = page.find("is taken as").unwrap_or_else(|| panic!("nothing is taken: {page}"));
    page[start..].split("</p>").next().unwrap()
}

#[test]
fn a_plan_says_what_it_took_the_thread_for() {
    for (typed, as_words) in [
        ("1%2F4+x+40", "1/4 in × 40 ME"),
        ("3%2F8+x+32", "3/8 in × 32 ME"),
        ("1%2F2+x+26", "1/2 in × 26 ME"),
        ("3%2F16+x+40", "3/16 in × 40 ME"),
        ("1%2F8+BSP", "G 1/8"),
    ] {
        let page = body(200, &format!("/plan?thread={typed}&material=gunmetal&depth=6mm"));
        let line = taken(&page);
        assert!(line.contains(as_words), "{typed}: {line}");
        let links = links(line);
        assert!(!links.is_empty(), "{typed}");
        for link in links {
            assert!(
                link.starts_with("/plan?thread=") && link.contains("material=gunmetal"),
                "{link}"
            );
        }
    }
    for thread in ["5+BA", "tap+5+BA", "1%2F4+x+40+ME", "5%2F16+26+brass", "1%2F4+x+40+UN"] {
        let page = body(200, &format!("/plan?thread={thread}&material=gunmetal"));
        assert!(!page.contains("is taken as"), "{thread}");
    }
}

#[test]
fn a_bare_depth_beside_an_inch_thread_is_asked_with_both_one_tap_away() {
    let asked = "/plan?thread=1%2F4+x+40+ME&material=gunmetal&hole=blind&depth=0.5";
    let page = body(422, asked);
    let error = &page[page.find("id=\"depth-error\"").unwrap()..];
    let links = links(error.split("</div>").next().unwrap());
    assert_eq!(links.len(), 2, "{links:?}");
    for (link, unit) in links.iter().zip(["mm", "in"]) {
        assert!(link.ends_with(&format!("depth=0.5+{unit}")), "{link}");
    }
    body(200, &links[1]);
    // Half a millimetre is less than a turn of it, and the plan says so.
    body(422, &links[0]);
    let page = body(422, "/plan?thread=1%2F4+x+40+ME&material=gunmetal&depth=1");
    let error = &page[page.find("id=\"depth-error\"").unwrap()..];
    for link in self::links(error.split("</div>").next().unwrap()) {
        body(200, &link);
    }
    body(200, "/plan?thread=1%2F4+x+40+ME&material=gunmetal&hole=blind&depth=3%2F8");
    body(200, "/plan?thread=M6&material=gunmetal&hole=blind&depth=8");
}

#[test]
fn a_calculator_says_what_it_took() {
    let page = body(200, "/calculators/tapping?thread=1%2F4+x+40&hole=No.+4");
    assert!(taken(&page).contains("1/4 in × 40 ME"));
    let page = body(200, "/calculators/clearance?thread=3%2F8+x+32");
    assert!(taken(&page).contains("3/8 in × 32 ME"));
    let page = body(200, "/calculators/speeds?material=gunmetal&diameter=30");
    assert!(taken(&page).contains("No. 30"));
    for link in links(taken(&page)) {
        assert!(link.contains("diameter=30+mm"), "{link}");
        body(200, &link);
    }
    for (asked, choices) in [
        ("/calculators/speeds?material=gunmetal&diameter=.25", 2),
        ("/calculators/tapping?thread=5+BA&engagement=0.7", 1),
        ("/calculators/tapping?major=No+10&pitch=0.35+mm&form=whitworth", 2),
    ] {
        let page = body(422, asked);
        let found = page.split("-error\"><p>").nth(1).unwrap().split("</div>").next().unwrap();
        assert_eq!(links(found).len(), choices, "{asked}");
    }
}

#[test]
fn a_material_says_how_to_tell_it() {
    let page = body(200, "/materials/stainless-303");
    let main = inside(&page, "main");
    let telling = &main[main.find("How to tell it").unwrap()..];
    for words in ["Magnet", "Colour", "File", "Spark", "Weight", "304", "Goggles"] {
        assert!(telling.contains(words), "{words}");
    }
    assert!(body(200, "/materials/grey-cast-iron").contains("A sash weight:"));
    assert!(body(200, "/materials/beryllium-copper").contains("Do not file it"));
    assert!(body(200, "/materials/magnesium-alloy").contains("Strike no spark"));
}

#[test]
fn the_search_says_what_it_read() {
    let page = body(200, "/search?q=TAP+4BA+4+HOLES+EQUI-SPACED+ON+1+1%2F4+PCD");
    assert!(page.contains("read as 4ba"));
    let page = body(200, "/search?q=half+shaft");
    assert!(page.contains("A half shaft is usually this"));
    assert_eq!(visit("/search?q=0+BA+stud").location(), Some("/threads/ba/0"));
}
