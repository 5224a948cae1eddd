//! Every link of every page goes somewhere, and to a place that is there.

use std::collections::HashMap;

use crate::addresses::reference;
use crate::html::read;
use crate::kinds::kinds;
use crate::visit;

#[test]
fn every_link_answers() {
    let mut known: HashMap<String, Target> = HashMap::new();
    let kinds = kinds().into_iter().map(|kind| kind.address.into_owned());
    for page in reference().into_iter().chain(kinds) {
        for link in links(visit(&page).text()) {
            let (address, fragment) = link.split_once('#').unwrap_or((&link, ""));
            if address.is_empty() || is_the_servers(address) {
                continue;
            }
            let target = known.entry(address.to_owned()).or_insert_with(|| target(address));
            assert!(matches!(target.status, 200 | 301 | 303), "{page} → {link}: {}", target.status);
            let there = fragment.is_empty() || target.body.contains(&format!("id=\"{fragment}\""));
            assert!(there, "{page} → {link}: no such place");
        }
    }
    assert!(known.len() > 800, "{} addresses linked", known.len());
}

/// Answered by the server, not here.
fn is_the_servers(address: &str) -> bool {
    address == "/me" || address.starts_with("/api/") || address.starts_with("/notes/new?")
}

struct Target {
    status: u16,
    body: String,
}

fn target(address: &str) -> Target {
    let answer = visit(address);
    Target { status: answer.status, body: answer.text().to_owned() }
}

fn links(page: &str) -> Vec<String> {
    read(page)
        .tags
        .iter()
        .filter_map(|tag| tag.attribute("href"))
        .map(|href| href.replace("https://club.example", ""))
        .filter(|href| href.starts_with('/') || href.starts_with('#'))
        .collect()
}

#[test]
fn every_page_is_linked_from_somewhere() {
    let pages = reference();
    let mut linked = std::collections::HashSet::new();
    for page in &pages {
        for link in links(visit(page).text()) {
            // A page's own canonical link does not count as being linked.
            let address = link.split('#').next().unwrap_or_default().to_owned();
            if address != *page {
                linked.insert(address);
            }
        }
    }
    let lonely: Vec<&String> =
        pages.iter().filter(|page| !linked.contains(*page) && *page != "/search").collect();
    assert!(lonely.is_empty(), "{lonely:?}");
}
