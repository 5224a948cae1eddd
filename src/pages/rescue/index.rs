//! `/rescue`: the troubles, each with what to do first.

use askama::Template;

use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::sentence::set;
use crate::{Reply, Visit};
use holewright_core::tables::rescue::{self, Trouble};

#[derive(Template)]
#[template(path = "rescue/index.html")]
struct RescuePage {
    frame: Frame,
    rows: Vec<Row>,
}

struct Row {
    link: Link,
    first: String,
}

/// The list of troubles.
pub(crate) fn index(visit: &Visit<'_>) -> Reply {
    let description = "A broken tap, a stripped thread, a hole in the wrong place: what to do first, and every way out in order.";
    let frame = Frame::new(visit, Section::None, "When it goes wrong", description);
    Reply::html(200, &RescuePage { frame, rows: rescue::all().iter().map(row).collect() })
}

fn row(trouble: &Trouble) -> Row {
    Row { link: Link::new(trouble.path(), trouble.title), first: set(trouble.first.text) }
}
