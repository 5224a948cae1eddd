//! Nothing at this address: near matches, and a search box.

use askama::Template;

use super::layout::{Frame, Section};
use super::link::Link;
use super::{Reply, Visit};
use holewright_core::finder;
use holewright_core::tables::threads::System;

/// No page is offered more near matches than this.
const NEAR: usize = 8;

#[derive(Template)]
#[template(path = "not_found.html")]
struct NotFoundPage {
    frame: Frame,
    near: Vec<Link>,
}

/// Nothing there, and nothing known of what was meant: the last part of the address is tried as a name.
pub(super) fn show(visit: &Visit<'_>) -> Reply {
    let last = visit.path.rsplit('/').next().unwrap_or_default();
    near(visit, last)
}

/// Nothing there; what comes near to these words.
pub(super) fn near(visit: &Visit<'_>, words: &str) -> Reply {
    let words = words.replace('-', " ");
    let found = finder::find(&words);
    let near = found.hits.into_iter().chain(found.suggestions).take(NEAR);
    page(visit, near.map(|hit| Link::new(hit.url, hit.title)).collect())
}

/// No such size in this system: the system, and its threads that come near to these words.
pub(super) fn near_in(visit: &Visit<'_>, system: &'static System, words: &str) -> Reply {
    let path = format!("/threads/{}", system.slug);
    let found = finder::find(words);
    let within = format!("{path}/");
    let near = found.hits.into_iter().chain(found.suggestions);
    let near = near.filter(|hit| hit.url.starts_with(&within)).take(NEAR - 1);
    let near = near.map(|hit| Link::new(hit.url, hit.title));
    page(visit, std::iter::once(Link::new(path, system.name)).chain(near).collect())
}

/// Nothing there; these systems come near.
pub(super) fn near_systems(
    visit: &Visit<'_>,
    systems: impl Iterator<Item = &'static System>,
) -> Reply {
    page(
        visit,
        systems.map(|system| Link::new(format!("/threads/{}", system.slug), system.name)).collect(),
    )
}

/// A page for nothing found, with these near matches.
pub(super) fn page(visit: &Visit<'_>, near: Vec<Link>) -> Reply {
    let frame =
        Frame::new(visit, Section::None, "Nothing here", "There is no page at this address.")
            .of_a_mistake();
    Reply::html(404, &NotFoundPage { frame, near })
}
