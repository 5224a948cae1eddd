//! What every page must have, and what none may have.

use std::collections::HashSet;

use crate::addresses::reference;
use crate::html::{Tag, inside, tags};
use crate::visit;

/// Pages that only a query or a mistake reaches.
const OTHERS: [(u16, &str); 21] = [
    (200, "/plan?thread=5+BA&material=gunmetal"),
    (
        200,
        "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number%2Cmetric",
    ),
    (200, "/drills?from=2mm&to=3mm&series=metric"),
    (200, "/search?q=1%2F4"),
    (404, "/search?q=flange"),
    (404, "/threads/ba/99"),
    (404, "/nothing/here"),
    (422, "/plan?thread=nonsense&material=unobtainium&hole=sideways&depth=x&owned=y&fit=z"),
    (422, "/drills?from=nonsense&to=nonsense"),
    (200, "/calculators/speeds?material=gunmetal&diameter=2mm&spindle_speeds=500%2C+1000"),
    (200, "/calculators/speeds?material=silver-steel&diameter=3mm&depth=31mm&spindle_max=2000"),
    (200, "/calculators/speeds?material=gunmetal&work=reaming&diameter=6mm&depth=9mm"),
    (200, "/calculators/speeds?material=gunmetal&work=countersinking&diameter=M3&spindle_max=900"),
    (200, "/calculators/speeds?material=gunmetal&work=spotting&diameter=No.+30"),
    (200, "/calculators/speeds?material=bright-mild-steel&work=tapping&diameter=M3"),
    (200, "/calculators/tapping?form=whitworth&major=1%2F4+in&pitch=36+tpi&hole=5.5mm"),
    (200, "/calculators/tapping?thread=M3"),
    (200, "/calculators/clearance?thread=M3&upper_error=0.2&lower_error=0.2"),
    (422, "/calculators/speeds?material=cheese&work=sawing&diameter=x&spindle_max=fast"),
    (422, "/calculators/tapping?thread=nonsense&form=round&major=x&pitch=y&hole=z"),
    (422, "/calculators/clearance?thread=nonsense&fit=loose&upper_error=x&owned=y"),
];

#[test]
fn every_page_is_whole() {
    let fixed = reference().into_iter().map(|address| (200, address));
    let others = OTHERS.iter().map(|&(status, address)| (status, address.to_owned()));
    for (status, address) in fixed.chain(others) {
        let answer = visit(&address);
        assert_eq!(answer.status, status, "{address}");
        assert_eq!(answer.header("content-type"), Some("text/html; charset=utf-8"), "{address}");
        check(&address, answer.text());
        check_canonical(&address, status, answer.text());
    }
}

pub(crate) fn check(address: &str, page: &str) {
    assert!(page.starts_with("<!doctype html>\n<html lang=\"en-GB\">"), "{address}: head");
    let tags = tags(page);
    let count = |name: &str| tags.iter().filter(|tag| tag.name == name && !tag.closing).count();
    // A drawing has a title of its own.
    let drawings = count("desc");
    assert_eq!(count("title"), 1 + drawings, "{address}: title");
    assert!(inside(page, "title").trim().len() > " – Holewright".len(), "{address}: empty title");
    for landmark in ["h1", "main", "header", "footer", "nav"] {
        assert_eq!(count(landmark), 1, "{address}: <{landmark}>");
    }
    assert_eq!(count("script") + count("style"), 0, "{address}: script or style");
    let skip = tags.iter().find(|tag| tag.name == "a").unwrap();
    assert_eq!(skip.attribute("href"), Some("#main"), "{address}: skip link comes first");
    check_head(address, &tags);
    check_nesting(address, &tags);
    check_attributes(address, &tags);
    check_ids(address, &tags);
    check_tables(address, &tags);
}

fn check_head(address: &str, tags: &[Tag]) {
    let has = |name: &str, attribute: &str, value: &str| {
        tags.iter().any(|tag| tag.name == name && tag.attribute(attribute) == Some(value))
    };
    assert!(has("meta", "name", "viewport"), "{address}: viewport");
    assert!(has("meta", "name", "color-scheme"), "{address}: color-scheme");
    for property in ["og:title", "og:description", "og:url", "og:type", "og:site_name"] {
        assert!(has("meta", "property", property), "{address}: {property}");
    }
}

/// A page says its own address; the answer to a mistake has none and is kept out of searches.
fn check_canonical(address: &str, status: u16, page: &str) {
    let tags = tags(page);
    let canonical = tags.iter().find(|tag| tag.attribute("rel") == Some("canonical"));
    match (status, canonical) {
        (200, Some(link)) => {
            let href = link.attribute("href").unwrap();
            assert!(href.starts_with("https://club.example/"), "{address}: canonical {href}");
        }
        (200, None) => panic!("{address}: no canonical address"),
        (_, canonical) => {
            assert!(canonical.is_none(), "{address}: a mistake with a canonical address");
            assert!(page.contains("content=\"noindex\""), "{address}: listed");
        }
    }
}

fn check_nesting(address: &str, tags: &[Tag]) {
    let mut open: Vec<&str> = Vec::new();
    for tag in tags.iter().filter(|tag| !tag.closed) {
        if tag.closing {
            assert_eq!(open.pop(), Some(tag.name.as_str()), "{address}: </{}>", tag.name);
        } else {
            open.push(&tag.name);
        }
    }
    assert!(open.is_empty(), "{address}: left open {open:?}");
}

fn check_attributes(address: &str, tags: &[Tag]) {
    for tag in tags {
        for (name, value) in &tag.attributes {
            assert_ne!(name, "style", "{address}: <{}>", tag.name);
            assert!(!name.starts_with("on"), "{address}: {name}");
            assert!(!value.contains("javascript:"), "{address}: {value}");
        }
    }
}

fn check_ids(address: &str, tags: &[Tag]) {
    let mut ids = HashSet::new();
    for id in tags.iter().filter_map(|tag| tag.attribute("id")) {
        assert!(!id.is_empty() && !id.contains(' '), "{address}: id {id:?}");
        assert!(ids.insert(id), "{address}: id {id} twice");
    }
    for tag in tags {
        for name in ["for", "aria-labelledby", "aria-describedby"] {
            for id in tag.attribute(name).unwrap_or_default().split_whitespace() {
                assert!(ids.contains(id), "{address}: {name} names no id {id}");
            }
        }
        if let Some(id) = tag.attribute("href").and_then(|href| href.strip_prefix('#')) {
            assert!(ids.contains(id), "{address}: a link to no id {id}");
        }
    }
}

fn check_tables(address: &str, tags: &[Tag]) {
    for (place, tag) in tags.iter().enumerate().filter(|(_, tag)| !tag.closing) {
        if tag.name == "table" {
            assert_eq!(tags[place + 1].name, "caption", "{address}: a table without caption");
            let region = &tags[place - 1];
            assert_eq!(region.attribute("tabindex"), Some("0"), "{address}: region not focusable");
            assert!(region.attribute("aria-labelledby").is_some(), "{address}: region unnamed");
        }
        if tag.name == "th" {
            assert!(matches!(tag.attribute("scope"), Some("row" | "col")), "{address}: th scope");
        }
    }
}
