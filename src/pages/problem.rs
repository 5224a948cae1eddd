//! A plain page that says what went wrong and what to do: for statuses the pages have no own page for.

use askama::Template;

use super::layout::{Frame, Section};
use super::link::Link;
use super::{Context, Reply};

#[derive(Template)]
#[template(path = "problem.html")]
struct ProblemPage<'a> {
    frame: Frame,
    title: &'a str,
    detail: &'a str,
    links: &'a [Link],
}

/// A page for an error: its title, and what happened, what was kept, what to do.
///
/// The server uses it for what only a server can meet: 405, 429, 500, 503. Nothing internal may
/// stand in `detail`. The links lead on from it.
#[must_use]
pub fn page(
    status: u16,
    (title, detail): (&str, &str),
    links: &[Link],
    context: &Context,
) -> Reply {
    let frame = Frame::at(context, Section::None, "/", title, detail).of_a_mistake();
    Reply::html(status, &ProblemPage { frame, title, detail, links })
}
