//! The table or the drawing of a page, at the page's address with `.csv` or `.svg` behind the path.
//!
//! A file moves with its page, and where a page has no such file there is nothing. The figures
//! behind `.json` are a server's to give: here only the redirect of an address that moved is theirs.

use super::address::{Address, Ending, Page};
use super::plan::Request;
use super::reply::content_type;
use super::{Reply, Visit, calculators, drills, not_found, page, threads};
use holewright_core::calc::fastener_lists::find_list;
use holewright_core::drawing::{DrawingIds, hole_section, thread_profile};
use holewright_core::export::{self, Table};
use holewright_core::plan;
use holewright_core::tables::drills::{Series, find as find_drill};
use holewright_core::tables::threads::{find as find_thread, system};

/// What stands at an address with this ending; `visit` is to the page itself.
pub(super) fn answer(address: &Address, visit: &Visit<'_>, ending: Ending) -> Reply {
    let found = match ending {
        Ending::Json => None,
        Ending::Csv => table(&address.page, visit).map(|table| csv(&visit.path, &table)),
        Ending::Svg => drawing(&address.page, visit).map(svg),
    };
    found.unwrap_or_else(|| as_the_page_goes(address, visit, ending))
}

fn table(page: &Page, visit: &Visit<'_>) -> Option<Table> {
    match page {
        Page::ThreadSystems => Some(export::threads::systems()),
        Page::ThreadSystem(slug) => {
            let tapped_in = threads::tapped_in(&visit.query).ok()?;
            Some(export::threads::sizes(system(slug)?, tapped_in))
        }
        Page::Thread { system, size } => {
            Some(export::threads::of_thread(find_thread(system, size)?))
        }
        Page::DrillChart => {
            Some(export::drills::chart(drills::cut::read(&visit.query).ok()?.drills()))
        }
        Page::Drill { series, size } => {
            Some(export::drills::nearest(find_drill(Series::from_slug(series)?, size)?))
        }
        Page::Materials => Some(export::materials::list()),
        Page::FastenerTable(slug) => Some(export::fasteners::rows(find_list(slug)?)),
        Page::Calculator(name) => calculators::table(visit, name),
        Page::Plan => {
            let spec = Request::of(visit.query.clone()).spec().ok()?;
            Some(export::plan::operations(plan::build_either(&spec).ok()?.operations()))
        }
        Page::Home
        | Page::Search
        | Page::Material(_)
        | Page::Troubles
        | Page::Trouble(_)
        | Page::Fasteners
        | Page::Drawer
        | Page::Calculators
        | Page::Asset(_)
        | Page::Unknown => None,
    }
}

fn drawing(page: &Page, visit: &Visit<'_>) -> Option<String> {
    match page {
        Page::Thread { system, size } => {
            Some(thread_profile(find_thread(system, size)?, DrawingIds::new("profile")))
        }
        Page::Calculator(name) => calculators::drawing(visit, name),
        Page::Plan => {
            let spec = Request::of(visit.query.clone()).spec().ok()?;
            Some(match plan::build_either(&spec).ok()? {
                plan::Plan::Parallel(plan) => hole_section(&plan, DrawingIds::new("section")),
                plan::Plan::Taper(_) => thread_profile(spec.thread, DrawingIds::new("profile")),
            })
        }
        Page::Home
        | Page::Search
        | Page::ThreadSystems
        | Page::ThreadSystem(_)
        | Page::DrillChart
        | Page::Drill { .. }
        | Page::Materials
        | Page::Material(_)
        | Page::Troubles
        | Page::Trouble(_)
        | Page::Fasteners
        | Page::FastenerTable(_)
        | Page::Drawer
        | Page::Calculators
        | Page::Asset(_)
        | Page::Unknown => None,
    }
}

/// The page says why there is no file: it moved, what was typed makes no sense, it is not there.
fn as_the_page_goes(address: &Address, visit: &Visit<'_>, ending: Ending) -> Reply {
    let page = page(&address.page, visit);
    match page.location() {
        Some(location) if page.status == 301 => {
            let (path, query) = location.split_once('?').unwrap_or((location, ""));
            let query = if query.is_empty() { String::new() } else { format!("?{query}") };
            Reply::moved(&format!("{path}{}{query}", ending.as_str()))
        }
        None if page.status != 200 => page,
        None if ending == Ending::Json => page,
        _ => not_found::show(visit),
    }
}

/// A table to be saved under the name of its page: `holewright-threads-ba.csv`.
fn csv(path: &str, table: &Table) -> Reply {
    let mut headers = content_type("text/csv; charset=utf-8; header=present");
    let name = path.replace('/', "-");
    headers.push((
        "content-disposition",
        format!("attachment; filename=\"holewright{name}{}\"", Ending::Csv.as_str()),
    ));
    Reply { status: 200, headers, body: table.csv().into() }
}

fn svg(drawing: String) -> Reply {
    Reply {
        status: 200,
        headers: content_type("image/svg+xml; charset=utf-8"),
        body: drawing.into(),
    }
}
