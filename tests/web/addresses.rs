//! The table of addresses, `tests/addresses.md`, against the routes and the pages, both ways.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use holewright_pages::{Context, answer};

use crate::html;
use crate::people::access::{filled, routes};

/// The rows under one heading: an address, and what stands in the next column.
pub(crate) fn rows(heading: &str) -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/addresses.md");
    let text = fs::read_to_string(path).unwrap();
    let (_, below) = text.split_once(&format!("\n## {heading}\n")).unwrap();
    let below = below.split("\n## ").next().unwrap_or(below);
    let rows = below.lines().filter(|line| line.starts_with("| `")).map(|line| {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        (cells[1].trim_matches('`').to_owned(), cells[2].to_owned())
    });
    let listed: Vec<_> = rows.collect();
    let table: BTreeMap<_, _> = listed.iter().cloned().collect();
    assert_eq!(table.len(), listed.len(), "{heading}: an address stands twice");
    table
}

/// The row that is nearest to an address: the one with the fewest parts left open.
fn row_of<'rows>(rows: &'rows BTreeMap<String, String>, address: &str) -> Option<&'rows String> {
    let parts: Vec<&str> = address.split('/').collect();
    let fits = |row: &&String| {
        let open = |part: &str| part.starts_with('{') && part.ends_with('}');
        let row: Vec<&str> = row.split('/').collect();
        row.len() == parts.len()
            && row.iter().zip(&parts).all(|(row, part)| row == part || open(row))
    };
    rows.keys().filter(fits).min_by_key(|row| row.matches('{').count())
}

#[test]
fn every_route_is_in_the_table_and_no_other() {
    let table = rows("The server's own");
    let mut answered: BTreeMap<&String, BTreeSet<String>> = BTreeMap::new();
    for (method, path) in routes() {
        let row = row_of(&table, &path).unwrap_or_else(|| panic!("{path} is not in the table"));
        answered.entry(row).or_default().insert(method);
    }
    for (row, methods) in &table {
        let listed = methods.split(' ').map(str::to_owned).collect();
        assert_eq!(answered.get(row), Some(&listed), "{row}");
    }
}

#[test]
fn every_page_is_in_the_table_and_no_other() {
    let (pages, own) = (rows("Pages"), rows("The server's own"));
    let context = Context::default();
    let mut seen = BTreeSet::new();
    let mut met: BTreeSet<String> = BTreeSet::from(["/".to_owned()]);
    let mut waiting: Vec<String> = met.iter().cloned().collect();
    // Every page is reached from the first one by links.
    while let Some(address) = waiting.pop() {
        let page = answer(&address, "", &context);
        assert!([200, 303, 422].contains(&page.status), "{address}: {}", page.status);
        let row = row_of(&pages, &address);
        seen.insert(row.unwrap_or_else(|| panic!("{address} is not in the table")));
        for link in links(page.text()) {
            let is_file = [".csv", ".svg", ".json"].iter().any(|ending| link.ends_with(ending));
            let is_ours = row_of(&own, &link).is_some() && row_of(&pages, &link).is_none();
            let is_page = !is_file && !is_ours && !link.starts_with("/static/");
            if is_page && met.insert(link.to_owned()) {
                waiting.push(link.to_owned());
            }
        }
    }
    let unseen: Vec<_> = pages.keys().filter(|row| !seen.contains(row)).collect();
    assert!(unseen.is_empty(), "no page leads to {unseen:?}");
}

#[test]
fn no_page_stands_where_the_server_answers() {
    let (pages, own) = (rows("Pages"), rows("The server's own"));
    for row in own.keys().filter(|row| !pages.contains_key(*row)) {
        assert_eq!(answer(&filled(row), "", &Context::default()).status, 404, "{row}");
    }
}

/// The paths that a page links to on its own site.
fn links(page: &str) -> Vec<String> {
    let tags = html::read(page).tags;
    let leads = |tag: &html::Tag| {
        tag.attribute("href").or_else(|| tag.attribute("action")).map(str::to_owned)
    };
    let leads: Vec<String> = tags.iter().filter_map(leads).collect();
    let links = leads.iter().filter_map(|link| link.split(['?', '#']).next());
    let ours = |link: &&str| link.starts_with('/') && !link.starts_with("//");
    links.filter(ours).map(str::to_owned).collect()
}
