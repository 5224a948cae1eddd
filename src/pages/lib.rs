//! Every public page as a pure function of its address: no server, no database, no clock.
//!
//! The same function compiled for a phone with no signal must give the same bytes. Leaves out the
//! JSON, the members' notes and every word kept for the server: those answer 404 here.

// Templates that the server includes too name this crate by its name.
extern crate self as holewright_pages;

pub mod address;
pub mod assets;
mod calculators;
mod candidate;
pub(crate) mod cited;
pub(crate) mod controls;
pub mod drawer;
pub mod drills;
mod fasteners;
pub mod field;
mod figures;
mod file;
mod home;
mod key;
pub mod layout;
pub mod link;
mod materials;
mod not_found;
pub mod plan;
pub mod problem;
mod query;
mod reply;
pub mod rescue;
pub mod search;
mod sentence;
mod taken;
mod threads;
pub(crate) mod warnings;

pub use holewright_core::asking::{Choice, FieldError};
pub use query::Query;
pub use reply::{Body, Reply};

use address::{Address, Ending, Page};
use drawer::{Carried, Drawer};

/// What varies from reader to reader, as plain values.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Context {
    /// Scheme and host for absolute addresses, without a final slash: `https://club.example`.
    pub base_url: String,
    /// What the club says of itself.
    pub club: Club,
    /// What the reader's browser carries of a drawer. Files never look at it.
    pub drawer: Carried,
    /// What members found, ready to stand below the page.
    pub notes: Notes,
}

/// What a club says of itself, as plain text of a line each; empty where it says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Club {
    /// Its name.
    pub name: String,
    /// Where it meets.
    pub place: String,
    /// A sentence or two for the front page.
    pub welcome: String,
}

impl Club {
    /// Its name and place on one line; empty where it gave neither.
    pub(crate) fn line(&self) -> String {
        let parts = [self.name.as_str(), &self.place];
        parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
    }
}

/// The members' notes on a page, made by a server that keeps them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Notes {
    /// Whether there are notes at all: a copy of the pages on a phone has none.
    pub are_kept: bool,
    /// What leads there from the head of the page: `3 notes by members`; empty where there are none.
    pub lead: String,
    /// HTML for the end of the page; empty where there is nothing to say.
    pub html: String,
    /// On the page of a search, how many were found.
    pub found: usize,
}

/// One visit to one page: its canonical path, what was asked, and for whom.
#[derive(Debug)]
struct Visit<'a> {
    /// The canonical path, `/threads/ba/5`.
    path: String,
    /// What follows the `?`.
    query: Query,
    /// What varies from reader to reader.
    context: &'a Context,
}

impl<'a> Visit<'a> {
    /// The reader's drawer, where one is in use.
    fn drawer(&self) -> Option<&'a Drawer> {
        self.context.drawer.in_use()
    }
}

/// Answers one address: `answer("/threads/ba/5", "", &context)`.
///
/// A page has one address. Another spelling of it (capitals, a final slash, a percent code) is
/// sent there in one hop with 301, and so is a form's query with empty fields in it.
///
/// # Examples
/// ```
/// use holewright_pages::{answer, Context};
/// let context = Context::default();
/// assert_eq!(answer("/threads", "", &context).status, 200);
/// assert_eq!(answer("/Threads/", "", &context).location(), Some("/threads"));
/// assert_eq!(answer("/sign-in", "", &context).status, 404);
/// ```
#[must_use]
pub fn answer(path: &str, query: &str, context: &Context) -> Reply {
    if let Some(answer) = assets::answer(path) {
        return answer;
    }
    let address = Address::read(path);
    let visit = Visit { path: address.canonical(), query: Query::read(query), context };
    let found = match address.ending {
        None => page(&address.page, &visit),
        Some(ending) => {
            // A file is the same for every reader.
            let context = &Context { drawer: Carried::Nothing, ..context.clone() };
            let query = visit.query.clone();
            let at_page = Visit { path: address.page_path(), query, context };
            file::answer(&address, &at_page, ending)
        }
    };
    let moved = path != visit.path || (visit.query.is_untidy() && !found.is_refusal());
    if moved && found.is_page() {
        Reply::moved(&visit.query.after(&visit.path))
    } else if address.ending == Some(Ending::Json) && found.location().is_none() {
        // To the pages the ending is part of a name like any other.
        page(&address.ending_as_name(), &visit)
    } else {
        found
    }
}

/// Every page of the reference.
fn page(page: &Page, visit: &Visit<'_>) -> Reply {
    match page {
        Page::Home => home::show(visit),
        Page::Search => search::show(visit),
        Page::ThreadSystems => threads::index(visit),
        Page::ThreadSystem(system) => threads::system(visit, system),
        Page::Thread { system, size } => threads::show(visit, system, size),
        Page::DrillChart => drills::chart(visit),
        Page::Drill { series, size } => drills::show(visit, series, size),
        Page::Materials => materials::index(visit),
        Page::Material(slug) => materials::show(visit, slug),
        Page::Troubles => rescue::index(visit),
        Page::Trouble(slug) => rescue::show(visit, slug),
        Page::Fasteners => fasteners::index(visit),
        Page::FastenerTable(slug) => fasteners::show(visit, slug),
        Page::Plan => plan::show(visit),
        Page::Drawer => drawer::show(visit),
        Page::Calculators => calculators::index(visit),
        Page::Calculator(name) => calculators::show(visit, name),
        Page::Asset(_) | Page::Unknown => not_found::show(visit),
    }
}
