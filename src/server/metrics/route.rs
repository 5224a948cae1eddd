//! The route template of a request: what may be counted and logged of its path.

use crate::pages;

/// The pages, which share one route in the table. A new page is one row.
#[rustfmt::skip]
const PAGES: [&str; 13] = [
    "/",
    "/search",
    "/threads",
    "/threads/{system}",
    "/threads/{system}/{size}",
    "/drills",
    "/drills/{series}/{size}",
    "/materials",
    "/materials/{slug}",
    "/plan",
    "/calculators",
    "/calculators/{name}",
    "/static/{file}",
];

/// What no route matches.
const NONE: &str = "none";

/// The template of the route that matched; for a page, of the page.
#[must_use]
pub fn template<'a>(matched: Option<&'a str>, path: &str) -> &'a str {
    matched.unwrap_or_else(|| page(&pages::canonical(path)))
}

fn page(path: &str) -> &'static str {
    let path = without_suffix(path);
    PAGES.into_iter().find(|page| matches(page, path)).unwrap_or(NONE)
}

/// Whether a path has the parts of a template.
fn matches(template: &str, path: &str) -> bool {
    template.split('/').count() == path.split('/').count()
        && template
            .split('/')
            .zip(path.split('/'))
            .all(|(wanted, part)| wanted.starts_with('{') || wanted == part)
}

/// The page behind its data, table or drawing: `/threads.csv` is counted with `/threads`.
fn without_suffix(path: &str) -> &str {
    [".json", ".csv", ".svg"]
        .into_iter()
        .find_map(|suffix| path.strip_suffix(suffix))
        .unwrap_or(path)
}
