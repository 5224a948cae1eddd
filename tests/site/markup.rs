//! What every page must have, and what none may have. Whatever checks markup checks it with this.

use std::collections::HashSet;

use crate::html::{Page, Tag};

/// A whole page.
#[track_caller]
pub(crate) fn check_page(html: &str, place: &str) {
    assert!(html.starts_with("<!doctype html>\n<html lang=\"en-GB\">"), "{place}: head");
    let page = &crate::html::read(html);
    check_fragment(page, place);
    let count = |name: &str| page.named(name).count();
    // A drawing has a title of its own.
    assert_eq!(count("title"), 1 + count("desc"), "{place}: title");
    let title = page.named("title").next().map_or("", |title| title.text.trim());
    assert!(title.len() > " – Holewright".len(), "{place}: empty title");
    for landmark in ["h1", "main", "header", "footer", "nav"] {
        assert_eq!(count(landmark), 1, "{place}: <{landmark}>");
    }
    assert_eq!(count("script"), 0, "{place}: script");
    let skip = page.named("a").next().and_then(|tag| tag.attribute("href"));
    assert_eq!(skip, Some("#main"), "{place}: skip link comes first");
    for (name, value) in page.tags.iter().flat_map(|tag| &tag.attributes) {
        assert!(!value.contains("javascript:"), "{place}: {name}={value}");
    }
    assert!(!page.text.contains("{%"), "{place}: a mark of its template");
    check_head(page, place);
    check_references(page, place);
    check_tables(page, place);
    check_controls(page, place);
}

/// A piece of a page: it is well formed, its ids are its own, and nothing in it runs.
#[track_caller]
pub(crate) fn check_fragment(page: &Page, place: &str) {
    assert!(page.faults.is_empty(), "{place}: {:?}", page.faults);
    assert!(page.comments.is_empty(), "{place}: {:?}", page.comments);
    let mut ids = HashSet::new();
    for id in page.tags.iter().filter_map(|tag| tag.attribute("id")) {
        assert!(!id.is_empty() && !id.contains(' '), "{place}: id {id:?}");
        assert!(ids.insert(id), "{place}: id {id} twice");
    }
    check_inert(page, place);
}

#[track_caller]
fn check_head(page: &Page, place: &str) {
    let has = |attribute: &str, value: &str| {
        page.named("meta").any(|tag| tag.attribute(attribute) == Some(value))
    };
    assert!(has("name", "viewport"), "{place}: viewport");
    assert!(has("name", "color-scheme"), "{place}: color-scheme");
    for property in ["og:title", "og:description", "og:url", "og:type", "og:site_name"] {
        assert!(has("property", property), "{place}: {property}");
    }
}

#[track_caller]
fn check_references(page: &Page, place: &str) {
    let ids: HashSet<&str> = page.tags.iter().filter_map(|tag| tag.attribute("id")).collect();
    for tag in &page.tags {
        for name in ["for", "aria-labelledby", "aria-describedby"] {
            for id in tag.attribute(name).unwrap_or_default().split_whitespace() {
                assert!(ids.contains(id), "{place}: {name} names no id {id}");
            }
        }
        if let Some(id) = tag.attribute("href").and_then(|href| href.strip_prefix('#')) {
            assert!(ids.contains(id), "{place}: a link to no id {id}");
        }
    }
}

#[track_caller]
fn check_tables(page: &Page, place: &str) {
    for (number, table) in page.tags.iter().enumerate().filter(|(_, tag)| tag.name == "table") {
        assert_eq!(page.tags[number + 1].name, "caption", "{place}: a table without caption");
        let region = &page.tags[table.parent.unwrap()];
        assert_eq!(region.attribute("tabindex"), Some("0"), "{place}: region not focusable");
        assert!(region.attribute("aria-labelledby").is_some(), "{place}: region unnamed");
    }
    for cell in page.named("th") {
        assert!(matches!(cell.attribute("scope"), Some("row" | "col")), "{place}: th scope");
    }
}

/// Every control that is typed into or chosen from has a label, and nothing typed is cut off.
#[track_caller]
fn check_controls(page: &Page, place: &str) {
    let labelled: HashSet<&str> =
        page.named("label").filter_map(|tag| tag.attribute("for")).collect();
    let is_labelled = |tag: &Tag| {
        tag.attribute("id").is_some_and(|id| labelled.contains(id))
            || tag.attribute("aria-label").is_some()
            || tag.parent.is_some_and(|parent| page.tags[parent].name == "label")
    };
    for tag in &page.tags {
        let is_control = match tag.name.as_str() {
            "input" => !matches!(tag.attribute("type"), Some("hidden" | "submit")),
            "select" | "textarea" => true,
            _ => false,
        };
        assert!(!is_control || is_labelled(tag), "{place}: {tag:?} has no label");
        assert_eq!(tag.attribute("maxlength"), None, "{place}: {tag:?} cuts off what is typed");
    }
}

/// Nothing on the page runs, styles itself, or comes from elsewhere.
#[track_caller]
pub(crate) fn check_inert(page: &Page, place: &str) {
    for tag in &page.tags {
        let name = tag.name.as_str();
        let active = ["style", "iframe", "object", "embed", "base", "frame", "applet", "template"];
        assert!(!active.contains(&name), "{place}: <{name}>");
        // A script of ours would have a source and nothing inside.
        assert!(name != "script" || tag.attribute("src").is_some(), "{place}: inline script");
        for (attribute, value) in &tag.attributes {
            assert!(!attribute.starts_with("on"), "{place}: <{name} {attribute}>");
            assert!(attribute != "style" && attribute != "srcdoc", "{place}: <{name} {attribute}>");
            check_address(attribute, value, place);
        }
        let refreshes = tag.attribute("http-equiv").is_some();
        assert!(!refreshes, "{place}: <{name} http-equiv>");
    }
}

/// Attributes a browser follows by itself.
const FETCHED: [&str; 7] =
    ["src", "srcset", "poster", "data", "background", "xlink:href", "action"];

#[track_caller]
fn check_address(attribute: &str, value: &str, place: &str) {
    let is_address =
        attribute == "href" || attribute == "formaction" || FETCHED.contains(&attribute);
    if !is_address {
        return;
    }
    let bare: String = value.chars().filter(|c| !c.is_whitespace() && !c.is_control()).collect();
    let bare = bare.to_lowercase();
    let scripted = ["javascript:", "vbscript:", "data:"];
    let is_scripted = scripted.iter().any(|scheme| bare.starts_with(scheme));
    assert!(!is_scripted, "{place}: {attribute}={value:?}");
    if FETCHED.contains(&attribute) {
        let local = bare.starts_with('/') && !bare.starts_with("//") || bare.starts_with('#');
        assert!(local, "{place}: {attribute}={value:?} is off-site");
    }
}
