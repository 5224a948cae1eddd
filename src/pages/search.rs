//! `/search?q=`: straight to the page when only one thing can be meant, else what could be.

use askama::Template;

use super::form::quoted;
use super::layout::{Door, Frame};
use super::link::Link;
use super::meanings::Meanings;
use super::{Answer, Visit};

#[derive(Template)]
#[template(path = "search.html")]
struct SearchPage {
    frame: Frame,
    heading: String,
    sure: Vec<Link>,
    near: Vec<Link>,
    typed: String,
}

/// What was typed, found.
pub(super) fn show(visit: &Visit<'_>) -> Answer {
    let typed = visit.query.get("q");
    let meanings = Meanings::of(typed);
    if let [only] = meanings.sure.as_slice() {
        return Answer::see_other(&only.address);
    }
    let (status, heading) = match (typed.is_empty(), meanings.sure.is_empty()) {
        (true, _) => (200, "Find".to_owned()),
        (false, false) => (200, format!("{} could be any of these", quoted(typed))),
        (false, true) => (404, format!("Nothing is called {}", quoted(typed))),
    };
    let frame = Frame::new(visit, Door::None, &heading, "Find a thread, a drill or a metal.");
    let frame = if status == 200 { frame } else { frame.of_a_mistake() };
    let Meanings { sure, near } = meanings;
    Answer::html(status, &SearchPage { frame, heading, sure, near, typed: typed.to_owned() })
}
