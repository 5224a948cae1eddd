//! The notes at the end of a reference page or of a search: HTML for [`holewright_pages::Notes`].

use askama::Template;

use super::item::Item;
use crate::db::notes::search::Hit;
use crate::db::reference::EntryWithNotes;
use holewright_pages::Notes;

/// How many notes stand on a page of the reference; the others are one link away.
pub(in crate::web) const MOST: i64 = 5;

#[derive(Template)]
#[template(path = "web/notes/on_page.html")]
struct OnPage<'a> {
    id: &'a str,
    title: &'a str,
    items: Vec<Item>,
    count: i64,
    has_more: bool,
}

#[derive(Template)]
#[template(path = "web/notes/found.html")]
struct OnSearch {
    items: Vec<Item>,
    all: String,
}

/// What stands at the end of a thing's page.
pub(in crate::web) fn on_page(id: &str, entry: &EntryWithNotes) -> Notes {
    let items: Vec<Item> = entry.notes.iter().map(Item::of).collect();
    let has_more = entry.count > i64::try_from(items.len()).unwrap_or(i64::MAX);
    let page = OnPage { id, title: &entry.title, items, count: entry.count, has_more };
    notes(&page, 0)
}

/// What stands at the end of a search.
pub(in crate::web) fn on_search(typed: &str, hits: &[Hit]) -> Notes {
    if hits.is_empty() {
        return Notes { are_kept: true, ..Notes::default() };
    }
    let all = form_urlencoded::Serializer::new(String::new()).append_pair("q", typed).finish();
    let page =
        OnSearch { items: hits.iter().map(Item::found).collect(), all: format!("/notes?{all}") };
    notes(&page, hits.len())
}

/// A fragment that cannot be written leaves the page as it is: its figures need no notes.
fn notes(template: &impl Template, found: usize) -> Notes {
    Notes { are_kept: true, html: template.render().unwrap_or_default(), found }
}
