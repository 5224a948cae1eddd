//! The notes at the end of a reference page, a plan, a search or the front page: HTML for [`holewright_pages::Notes`].

use askama::Template;
use form_urlencoded::Serializer;

use super::compare;
use super::item::Item;
use crate::db::notes::Listed;
use crate::db::notes::search::Hit;
use crate::db::reference::EntryWithNotes;
use crate::rules::notes::belongs::{self, Thing};
use crate::rules::notes::found::Sense;
use crate::rules::notes::used::Used;
use holewright_core::units::print;
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
    /// Where the notes on it stand side by side.
    compare: Option<String>,
}

#[derive(Template)]
#[template(path = "web/notes/on_job.html")]
struct OnJob<'a> {
    job: &'a str,
    items: Vec<Item>,
    all: String,
    /// Which drill most members used, where enough have said.
    used: Option<String>,
    /// Where they stand side by side, if they are several.
    compare: Option<String>,
}

#[derive(Template)]
#[template(path = "web/notes/lately.html")]
struct Lately {
    items: Vec<Item>,
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
    // Of a single note there is nothing to compare.
    let compare = belongs::at(id).filter(|_| entry.count > 1);
    let compare = compare.and_then(|thing| compare::address_of(&thing));
    let page = OnPage { id, title: &entry.title, items, count: entry.count, has_more, compare };
    Notes { lead: lead(&entry.notes, entry.count), ..notes(&page) }
}

/// What stands at the end of a plan: the notes on its thread in its material, how many there are, and which drills were
/// used.
pub(in crate::web) fn on_job(
    thread: &Thing,
    material: &Thing,
    (found, count): (&[Listed], i64),
    used: Option<Used>,
) -> Notes {
    if found.is_empty() {
        return Notes { are_kept: true, ..Notes::default() };
    }
    let job = format!("{} in {}", thread.title, print::running(&material.title));
    let all = Serializer::new(String::new())
        .append_pair("q", &thread.title)
        .append_pair("on", &material.id)
        .finish();
    let items = found.iter().map(Item::of).collect();
    let lead = format!("{} on {job}", lead(found, count));
    let material = print::running(&material.title);
    let compare = (count > 1).then(|| compare::address(&thread.title, &material));
    let used = used.map(|used| used.line());
    let all = format!("/notes?{all}");
    Notes { lead, ..notes(&OnJob { job: &job, items, all, used, compare }) }
}

/// What stands at the end of the front page: the newest.
pub(in crate::web) fn lately(found: &[Listed]) -> Notes {
    if found.is_empty() {
        return Notes { are_kept: true, ..Notes::default() };
    }
    notes(&Lately { items: found.iter().map(Item::of).collect() })
}

/// What stands at the end of a search.
pub(in crate::web) fn on_search(typed: &str, hits: &[Hit]) -> Notes {
    if hits.is_empty() {
        return Notes { are_kept: true, ..Notes::default() };
    }
    let all = Serializer::new(String::new()).append_pair("q", typed).finish();
    let page =
        OnSearch { items: hits.iter().map(Item::found).collect(), all: format!("/notes?{all}") };
    Notes { found: hits.len(), ..notes(&page) }
}

/// How many notes there are; that they warn, where those that are read here are all of them and each does.
fn lead(found: &[Listed], count: i64) -> String {
    let are_all = i64::try_from(found.len()).is_ok_and(|here| here == count);
    let warn = are_all && found.iter().all(|note| note.wording.sense == Sense::Warning);
    let (one, more) = if warn { ("warning", "warnings") } else { ("note", "notes") };
    match count {
        0 => String::new(),
        1 => format!("A {one} by a member"),
        count => format!("{count} {more} by members"),
    }
}

/// A fragment that cannot be written leaves the page as it is: its figures need no notes.
fn notes(template: &impl Template) -> Notes {
    Notes { are_kept: true, html: template.render().unwrap_or_default(), ..Notes::default() }
}
