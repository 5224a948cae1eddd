//! What members type and how drawings are lettered, each with the page that must stand first:
//! `first.csv`. What people type was gathered from how the trade writes, no source; where each leads is
//! ours to say.

use std::collections::{BTreeMap, BTreeSet};

use holewright_core::finder::find;

use super::addresses::exists;

/// About, query, first page.
#[expect(clippy::expect_used, reason = "a row that cannot be read must stop the test")]
fn rows() -> Vec<[String; 3]> {
    let mut reader = csv::Reader::from_reader(include_str!("first.csv").as_bytes());
    reader.deserialize().collect::<Result<_, _>>().expect("three columns in every row")
}

#[test]
fn each_query_leads_first_to_its_page() {
    let wrong: Vec<String> = rows()
        .iter()
        .filter_map(|[_, query, page]| {
            let found = find(query);
            let first = found.hits.first().map(|hit| hit.url.as_ref());
            (first != Some(page)).then(|| format!("{query:?} leads to {first:?}, not {page}"))
        })
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_table_is_wide_and_its_pages_exist() {
    let rows = rows();
    let queries: BTreeSet<&str> = rows.iter().map(|[_, query, _]| query.as_str()).collect();
    assert_eq!(queries.len(), rows.len(), "a query stands twice");
    assert!(rows.len() >= 250, "{} queries", rows.len());
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for [about, query, page] in &rows {
        *counts.entry(about).or_default() += 1;
        assert!(exists(page), "{query}: {page}");
    }
    for about in ["thread", "drill", "material", "drawing", "question", "rescue", "page"] {
        assert!(counts.get(about).is_some_and(|count| *count >= 15), "{about}: {counts:?}");
    }
}

/// Where the first page is no plain reading of the text, the hit says what was read.
#[test]
fn a_line_says_what_was_read_of_it() {
    for (query, why) in [
        ("TAP 4BA 4 HOLES EQUI-SPACED ON 1 1/4 PCD", "British Association; read as 4ba"),
        ("2BA x 12 deep", "tapping drill, depths, speeds and steps; read as 2ba, 12 deep"),
        ("sash weight", "A sash weight is usually this: it breaks with a grey face"),
        ("LM6", "not held by itself; of those held it cuts most like this"),
    ] {
        let found = find(query);
        let first = found.hits.first().expect(query);
        assert!(first.why.starts_with(why), "{query}: {}", first.why);
    }
}

#[test]
fn a_count_is_no_metal_and_a_fraction_no_grade() {
    for query in ["4 HOLES TAPPED 2BA", "8 off M3", "3/16 dia", "4 off", "3/16"] {
        let found = find(query);
        let metals = found.hits.iter().filter(|hit| hit.url.contains("materials/"));
        assert_eq!(metals.count(), 0, "{query}: {:?}", found.hits);
    }
}

#[test]
fn a_size_too_large_for_any_drill_is_no_number_of_a_thread() {
    let found = find("3 in");
    assert!(found.hits.is_empty(), "{:?}", found.hits);
    assert_eq!(found.suggestions.first().map(|hit| hit.url.as_ref()), Some("/drills/fraction/1"));
}
