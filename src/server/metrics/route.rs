//! The route template of a request: what may be counted and logged of its path.

/// The pages, which share one route in the table. A new page is one row.
#[rustfmt::skip]
const PAGES: [&str; 14] = [
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
    "/drawer",
    "/calculators",
    "/calculators/{name}",
    "/static/{file}",
];

/// What no route matches.
const NONE: &str = "none";

/// The template of the route that matched; for a page, of the page.
#[must_use]
pub fn template<'a>(matched: Option<&'a str>, path: &str) -> &'a str {
    // As it was asked for, in most cases, which costs nothing to find out; a coded path is read first.
    let plain = || page(path).filter(|_| !path.contains('%'));
    matched.or_else(plain).or_else(|| page(&holewright_pages::canonical(path))).unwrap_or(NONE)
}

/// The path as it may stand in the log: what follows these doors is a secret.
#[must_use]
pub fn loggable(path: String) -> String {
    let door = ["/join/", "/reset/"].into_iter().find(|door| path.starts_with(door));
    door.map_or(path, |door| format!("{door}…"))
}

/// The members' doors that are counted as one each: what an operator watches there is whether they
/// answer, not which page of them.
const TOGETHER: [(&str, &str); 5] = [
    ("/sign-in/code", "/sign-in"),
    ("/prove", "/sign-in"),
    ("/reset/{token}", "/join/{token}"),
    ("/me/", "/me"),
    ("/people/", "/people"),
];

/// The template under which an answer is counted; the log has the template itself.
#[must_use]
pub fn counted(template: &str) -> &str {
    let door = TOGETHER.into_iter().find(|(door, _)| template.starts_with(door));
    door.map_or(template, |(_, counted)| counted)
}

fn page(path: &str) -> Option<&'static str> {
    let path = without_suffix(path);
    PAGES.into_iter().find(|page| matches(page, path))
}

/// Whether a path has the parts of a template.
fn matches(template: &str, path: &str) -> bool {
    let mut parts = path.split('/');
    let mut wanted = template.split('/');
    loop {
        match (wanted.next(), parts.next()) {
            (None, None) => return true,
            (Some(wanted), Some(part)) if wanted == part => {}
            (Some(wanted), Some(part)) if wanted.starts_with('{') && !part.is_empty() => {}
            _ => return false,
        }
    }
}

/// The page behind its data, table or drawing: `/threads.csv` is counted with `/threads`.
fn without_suffix(path: &str) -> &str {
    [".json", ".csv", ".svg"]
        .into_iter()
        .find_map(|suffix| path.strip_suffix(suffix))
        .unwrap_or(path)
}
