//! What stands behind a figure: its unit, on the same line, and the sign of its source with the key.

use holewright_core::tables::materials;

use crate::html::read;
use crate::kinds::kinds;
use crate::visit;

/// look.md: a number never stands without its unit, so no line ends between them.
#[test]
fn no_figure_parts_from_its_unit_at_the_end_of_a_line() {
    let units = ["mm", "in", "%", "rev/min", "mm/rev", "m/min", "thou"];
    let mut joined = 0;
    for kind in kinds() {
        let page = read(visit(&kind.address).text());
        let drawn = |place: Option<usize>| {
            let mut place = place;
            while let Some(tag) = place {
                if ["svg", "title", "textarea"].contains(&page.tags[tag].name.as_str()) {
                    return true;
                }
                place = page.tags[tag].parent;
            }
            false
        };
        for (place, tag) in page.tags.iter().enumerate() {
            if drawn(Some(place)) {
                continue;
            }
            joined += tag.text.matches('\u{a0}').count();
            for unit in units {
                for (at, _) in tag.text.match_indices(&format!(" {unit}")) {
                    let behind = tag.text[at + 1 + unit.len()..].chars().next();
                    let is_unit = behind.is_none_or(|c| !c.is_alphanumeric() && c != '/');
                    let is_figure = tag.text[..at].ends_with(|c: char| c.is_ascii_digit());
                    assert!(!(is_unit && is_figure), "{}: {:?}", kind.address, tag.text);
                }
            }
        }
    }
    assert!(joined > 1000, "{joined}");
}

/// Every sign leads to its line of the key, every line is led to, and none is said twice.
#[test]
fn a_material_says_each_source_once_and_signs_what_was_read_in_it() {
    let mut signs = 0;
    for material in materials::all() {
        let page = read(visit(&material.path()).text());
        let lines: Vec<&str> = page
            .tags
            .iter()
            .filter_map(|tag| tag.attribute("id"))
            .filter(|id| id.starts_with("source-"))
            .collect();
        let mut led: Vec<&str> = page
            .tags
            .iter()
            .filter_map(|tag| tag.attribute("href"))
            .filter_map(|href| href.strip_prefix('#'))
            .filter(|id| id.starts_with("source-"))
            .collect();
        signs += led.len();
        // The signs run from a in the order of the page.
        let mut seen = Vec::new();
        led.retain(|id| {
            let is_new = !seen.contains(id);
            seen.push(*id);
            is_new
        });
        assert_eq!(led, lines, "{}", material.slug);
        for said in ["common practice, no source", "from memory, unconfirmed"] {
            let main = page.text.split("Sources").next().unwrap();
            assert!(!main.contains(said), "{}: {said}", material.slug);
            assert!(page.text.matches(said).count() <= 2, "{}: {said}", material.slug);
        }
    }
    assert!(signs > 1000, "{signs}");
}
