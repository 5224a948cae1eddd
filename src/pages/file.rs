//! The table or the drawing of a page, at the page's address with `.csv` or `.svg` behind the path.
//!
//! Only these two endings are read here: `2.05` is a drill. A file moves with its page, and where a
//! page has no such file there is nothing.

use super::answer::content_type;
use super::plan::Request;
use super::{Answer, Visit, calculators, drills, not_found, route};
use holewright_core::drawing::{DrawingIds, hole_section, thread_profile};
use holewright_core::export::{self, Table};
use holewright_core::plan;
use holewright_core::tables::drills::{Series, find as find_drill};
use holewright_core::tables::threads::{find as find_thread, system};

/// What kind of file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// A table as comma-separated values.
    Csv,
    /// A drawing.
    Svg,
}

impl Kind {
    const fn ending(self) -> &'static str {
        match self {
            Self::Csv => ".csv",
            Self::Svg => ".svg",
        }
    }
}

/// The page's path and the kind of file asked of it; none where the path ends in no file's ending.
pub(super) fn asked(path: &str) -> Option<(&str, Kind)> {
    [Kind::Csv, Kind::Svg].into_iter().find_map(|kind| {
        let page = path.strip_suffix(kind.ending())?;
        (!page.ends_with('/')).then_some((page, kind))
    })
}

/// The file of a page; `visit` is to the page itself.
pub(super) fn answer(segments: &[&str], visit: &Visit<'_>, kind: Kind) -> Answer {
    let found = match kind {
        Kind::Csv => table(segments, visit).map(|table| csv(&visit.path, &table)),
        Kind::Svg => drawing(segments, visit).map(svg),
    };
    found.unwrap_or_else(|| as_the_page_goes(segments, visit, kind))
}

fn table(segments: &[&str], visit: &Visit<'_>) -> Option<Table> {
    match *segments {
        ["threads"] => Some(export::threads::systems()),
        ["threads", slug] => Some(export::threads::sizes(system(slug)?)),
        ["threads", system, size] => Some(export::threads::of_thread(find_thread(system, size)?)),
        ["drills"] => Some(export::drills::chart(drills::cut::read(&visit.query).ok()?.drills())),
        ["drills", series, size] => {
            Some(export::drills::nearest(find_drill(Series::from_slug(series)?, size)?))
        }
        ["materials"] => Some(export::materials::list()),
        ["calculators", name] => calculators::table(visit, name),
        ["plan"] => {
            let spec = Request::of(visit.query.clone()).spec().ok()?;
            Some(export::plan::operations(&plan::build(&spec).ok()?))
        }
        _ => None,
    }
}

fn drawing(segments: &[&str], visit: &Visit<'_>) -> Option<String> {
    match *segments {
        ["threads", system, size] => {
            Some(thread_profile(find_thread(system, size)?, DrawingIds::new("profile")))
        }
        ["calculators", name] => calculators::drawing(visit, name),
        ["plan"] => {
            let spec = Request::of(visit.query.clone()).spec().ok()?;
            Some(hole_section(&plan::build(&spec).ok()?, DrawingIds::new("section")))
        }
        _ => None,
    }
}

/// The page says why there is no file: it moved, what was typed makes no sense, it is not there.
fn as_the_page_goes(segments: &[&str], visit: &Visit<'_>, kind: Kind) -> Answer {
    let page = route(segments, visit);
    match page.location() {
        Some(location) if page.status == 301 => {
            let (path, query) = location.split_once('?').unwrap_or((location, ""));
            let query = if query.is_empty() { String::new() } else { format!("?{query}") };
            Answer::moved(&format!("{path}{}{query}", kind.ending()))
        }
        None if page.status != 200 => page,
        _ => not_found::show(visit),
    }
}

/// A table to be saved under the name of its page: `holewright-threads-ba.csv`.
fn csv(path: &str, table: &Table) -> Answer {
    let mut headers = content_type("text/csv; charset=utf-8; header=present");
    let name = path.replace('/', "-");
    headers.push((
        "content-disposition",
        format!("attachment; filename=\"holewright{name}{}\"", Kind::Csv.ending()),
    ));
    Answer { status: 200, headers, body: table.csv() }
}

fn svg(drawing: String) -> Answer {
    Answer { status: 200, headers: content_type("image/svg+xml; charset=utf-8"), body: drawing }
}
