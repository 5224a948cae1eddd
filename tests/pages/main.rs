//! The pages through `answer` alone: no server, no database.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a page that lacks what a test asks for must stop the test"
)]

mod addresses;
mod assets;
mod bearing;
mod calculators;
mod chart;
mod drawer;
mod fastener;
mod files;
mod finding;
mod hostile;
#[path = "../site/html.rs"]
mod html;
#[path = "../site/kinds.rs"]
mod kinds;
mod links;
mod long;
#[path = "../site/markup.rs"]
mod markup;
#[path = "../site/outside.rs"]
mod outside;
mod plan;
mod properties;
mod redirects;
mod rescue;
mod signs;
mod structure;
mod taken;
mod taper;
mod threads;
#[path = "../site/wordlist.rs"]
mod wordlist;
mod words_used;

use holewright_pages::{Context, Reply, answer};

/// Answers an address as pasted: `/drills?from=2mm`.
fn visit(address: &str) -> Reply {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let context = Context { base_url: "https://club.example".to_owned(), ..Context::default() };
    answer(path, query, &context)
}

/// The body of an address that must answer with this status, its spaces plain: that a figure keeps its
/// unit is a test of its own.
#[track_caller]
fn body(status: u16, address: &str) -> String {
    let answer = visit(address);
    assert_eq!(answer.status, status, "{address}: {:?}", answer.location());
    answer.text().replace('\u{a0}', " ")
}

/// An address that must be sent on with 301, in one hop.
#[track_caller]
fn moves(from: &str, to: &str) {
    let answer = visit(from);
    assert_eq!((answer.status, answer.location()), (301, Some(to)), "{from}");
    assert_eq!(visit(to).status, 200, "{from} to {to} is more than one hop");
}

/// What the first element of a name holds, tags and all.
pub(crate) fn inside<'a>(page: &'a str, name: &str) -> &'a str {
    let open = page.find(&format!("<{name}")).unwrap_or_else(|| panic!("no <{name}>"));
    let start = open + page[open..].find('>').unwrap() + 1;
    let end = start + page[start..].find(&format!("</{name}>")).unwrap();
    &page[start..end]
}
