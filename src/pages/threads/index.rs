//! `/threads`: the systems, each with its form, angle, standard and use.

use askama::Template;

use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit};
use holewright_core::calc::thread_form::thread_angle;
use holewright_core::tables::threads::{System, systems};
use holewright_core::units::{in_degrees, print};

#[derive(Template)]
#[template(path = "threads/index.html")]
struct ThreadsPage {
    frame: Frame,
    rows: Vec<IndexRow>,
}

struct IndexRow {
    link: Link,
    slug: &'static str,
    mark: &'static str,
    angle: String,
    sizes: usize,
    standard: &'static str,
    used_for: &'static str,
}

/// The table of thread systems.
pub(crate) fn index(visit: &Visit<'_>) -> Reply {
    let description = "The thread systems of the model engineer’s bench: BA, Whitworth, Model \
                       Engineer, pipe, cycle, metric and Unified, with every size.";
    let frame = Frame::new(visit, Section::Threads, "Thread systems", description);
    let rows = systems().iter().map(|system| row(system)).collect();
    Reply::html(200, &ThreadsPage { frame, rows })
}

fn row(system: &'static System) -> IndexRow {
    IndexRow {
        link: Link::new(format!("/threads/{}", system.slug), system.name),
        slug: system.slug,
        mark: system.mark,
        angle: print::trimmed(in_degrees(thread_angle(system.form)), 1),
        sizes: system.threads.len(),
        standard: system.standard,
        used_for: system.used_for,
    }
}
