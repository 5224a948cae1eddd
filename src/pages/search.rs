//! `/search?q=`: straight to the page when only one thing can be meant, else what could be.

use askama::Template;

use super::form::quoted;
use super::layout::{Door, Frame};
use super::link::Link;
use super::{Answer, Visit};
use crate::finder::{self, Hit};

#[derive(Template)]
#[template(path = "search.html")]
struct SearchPage {
    frame: Frame,
    heading: String,
    hits: Vec<Shown>,
    suggestions: Vec<Shown>,
    typed: String,
}

/// A hit, with why it was found.
struct Shown {
    link: Link,
    why: String,
}

impl Shown {
    fn all(hits: Vec<Hit>) -> Vec<Self> {
        hits.into_iter()
            .map(|hit| Self { link: Link::new(hit.url, hit.title), why: hit.why })
            .collect()
    }
}

/// What was typed, found.
pub(super) fn show(visit: &Visit<'_>) -> Answer {
    let typed = visit.query.get("q");
    let found = finder::find(typed);
    if let Some(only) = found.only() {
        return Answer::see_other(&only.url);
    }
    let (status, heading) = match found.hits.len() {
        _ if found.query.is_empty() => (200, "Find".to_owned()),
        0 => (404, format!("Nothing is called {}", quoted(typed))),
        1 => (200, format!("{} could be this", quoted(typed))),
        _ => (200, format!("{} could be any of these", quoted(typed))),
    };
    let frame = Frame::new(visit, Door::None, &heading, "Find a thread, a drill or a metal.");
    let page = SearchPage {
        frame: if status == 200 { frame } else { frame.of_a_mistake() },
        heading,
        hits: Shown::all(found.hits),
        suggestions: Shown::all(found.suggestions),
        typed: typed.to_owned(),
    };
    Answer::html(status, &page)
}
