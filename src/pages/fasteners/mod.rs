//! `/fasteners`: hexagons, heads and washers as tables.

use askama::Template;

use crate::figures::Column;
use crate::key::{Key, KeyLine, Sign};
use crate::layout::{Frame, Section};
use crate::link::Link;
use crate::{Reply, Visit, not_found, query};
use holewright_core::calc::fastener_lists::{FIGURES, FastenerList, FastenerRow, find_list, lists};

#[derive(Template)]
#[template(path = "fasteners/index.html")]
struct FastenersPage {
    frame: Frame,
    rows: Vec<IndexRow>,
}

struct IndexRow {
    link: Link,
    says: &'static str,
}

#[derive(Template)]
#[template(path = "fasteners/show.html")]
struct ListPage {
    frame: Frame,
    list: &'static FastenerList,
    headings: Vec<&'static str>,
    rows: Vec<Row>,
    csv: String,
    json: String,
    key: Vec<KeyLine>,
}

struct Row {
    id: String,
    size: String,
    /// The card of a screw of this size.
    card: Option<String>,
    cells: Vec<Option<Column>>,
    sign: Sign,
}

/// The tables there are.
pub(crate) fn index(visit: &Visit<'_>) -> Reply {
    let description = "Hexagons, heads and washers by size: BA, BSW and BSF, metric and Unified, each row with its source.";
    let frame = Frame::new(visit, Section::None, "Hexagons, heads and washers", description);
    let row = |list: &FastenerList| IndexRow {
        link: Link::new(list.path(), list.title),
        says: list.says,
    };
    Reply::html(200, &FastenersPage { frame, rows: lists().iter().map(row).collect() })
}

/// One table; an unknown one says which there are.
pub(crate) fn show(visit: &Visit<'_>, slug: &str) -> Reply {
    let Some(list) = find_list(slug) else {
        let links = lists().iter().map(|list| Link::new(list.path(), list.title));
        return not_found::page(visit, links.collect());
    };
    let found = list.rows();
    let held = |of: &fn(&_) -> Option<_>| found.iter().any(|row| of(&row.sizes).is_some());
    let figures: Vec<_> = FIGURES.into_iter().filter(|(_, _, of)| held(of)).collect();
    let mut key = Key::default();
    let row = |found: &FastenerRow| Row {
        id: found.size.to_lowercase().replace([' ', '/'], "-"),
        size: found.size.clone(),
        card: found.thread.map(|thread| {
            query::address("/calculators/fastener", [("thread", thread.designation)])
        }),
        cells: figures.iter().map(|(_, _, of)| of(&found.sizes).map(Column::of)).collect(),
        sign: key.sign(found.source),
    };
    let rows = found.iter().map(row).collect();
    let page = ListPage {
        frame: Frame::new(visit, Section::None, list.title, list.says),
        list,
        headings: figures.iter().map(|(_, heading, _)| *heading).collect(),
        rows,
        csv: format!("{}.csv", list.path()),
        json: format!("/api/v1{}", list.path()),
        key: key.lines(),
    };
    Reply::html(200, &page)
}
