//! Where a request goes: to a route of the table, or to a page. Found once, when a request comes in;
//! whatever hangs on the address asks here.

use std::sync::Arc;

use axum::extract::{MatchedPath, Request};

use holewright_pages::address::{Address, Ending, Page};

/// A row of the route table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Route {
    /// Its path; what stands in braces is left open.
    pub path: &'static str,
    /// The methods that it answers, in lower case; `any` for all of them.
    pub methods: &'static [&'static str],
    /// What it answers with.
    pub kind: Kind,
    /// The bytes of a body that it takes, where that is not as many as elsewhere.
    pub takes: Option<u64>,
}

/// What a route answers with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Figures for a program, looked up.
    Figures,
    /// Figures for a program, worked out for each request.
    WorkedFigures,
    /// Nothing: a program looks for figures where there never were any.
    NoFigures,
    /// The tables as one file.
    Tables,
    /// The list of the notes, which a query searches.
    Notes,
    /// All notes as one file, or the newest as a feed.
    NotesFile,
    /// What changed in one note, worked out for each request.
    Compared,
    /// Any other page that is for everybody, or says what it is not for.
    Open,
    /// What is one member's own, or the secretary's.
    Private,
    /// A page of the reference with a form.
    Page,
}

/// Who else than our own pages may use an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sharing {
    /// A script on any page may read it.
    Read,
    /// Any page may show it.
    Shown,
    /// Nobody.
    Own,
}

/// Where a request goes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// To a route, perhaps under a name that ends like a file.
    Route(&'static Route, Option<Ending>),
    /// To what the pages answer.
    Page(Address),
}

/// What no route and no page matches.
const NOWHERE: &str = "none";

impl Route {
    /// The folder below which it takes every address, `/api/`; none if it takes one kind alone.
    fn folder(&self) -> Option<&'static str> {
        self.path.strip_suffix("{*rest}")
    }
}

impl Kind {
    const fn is_for_programs(self) -> bool {
        match self {
            Self::Figures | Self::WorkedFigures | Self::NoFigures => true,
            Self::Tables
            | Self::Notes
            | Self::NotesFile
            | Self::Compared
            | Self::Open
            | Self::Private
            | Self::Page => false,
        }
    }
}

impl Place {
    /// Where this request goes, with this route table. The first who asks finds it out; the others
    /// are told.
    pub fn find(request: &mut Request, routes: &'static [Route]) -> Arc<Self> {
        let place = Arc::new(Self::new(request, routes));
        request.extensions_mut().insert(Arc::clone(&place));
        place
    }

    /// Where this request was found to go.
    #[must_use]
    pub fn of(request: &Request) -> Arc<Self> {
        let found = request.extensions().get::<Arc<Self>>();
        found.map_or_else(|| Arc::new(Self::new(request, &[])), Arc::clone)
    }

    fn new(request: &Request, routes: &'static [Route]) -> Self {
        let path = request.uri().path();
        let matched = request.extensions().get::<MatchedPath>().map(MatchedPath::as_str);
        let is_it = |route: &&Route| Some(route.path) == matched && route.folder().is_none();
        let is_above = |route: &&Route| route.folder().is_some_and(|top| path.starts_with(top));
        let route = routes.iter().find(is_it).or_else(|| routes.iter().find(is_above));
        match route.map(|route| (route, route.kind)) {
            Some((_, Kind::Page)) | None => Self::Page(Address::read(path)),
            Some((route, _)) => Self::Route(route, Ending::split(path).1),
        }
    }

    /// The path with its open parts named: what may be counted and logged of it.
    #[must_use]
    pub fn template(&self) -> &'static str {
        match self {
            Self::Route(route, _) => route.path,
            Self::Page(address) => address.page.template().unwrap_or(NOWHERE),
        }
    }

    /// Whether the answer may turn on the reader's drawer.
    #[must_use]
    pub const fn turns_on_drawer(&self) -> bool {
        match self {
            Self::Route(route, ending) => match route.kind {
                Kind::Figures | Kind::WorkedFigures | Kind::NoFigures | Kind::Tables => false,
                Kind::Notes
                | Kind::NotesFile
                | Kind::Compared
                | Kind::Open
                | Kind::Private
                | Kind::Page => ending.is_none(),
            },
            Self::Page(address) => address.turns_on_drawer(),
        }
    }

    /// Whether it is the drawer's own page, which shows what a cookie holds even if it is of no use.
    #[must_use]
    pub const fn is_drawer(&self) -> bool {
        matches!(self, Self::Page(Address { page: Page::Drawer, ending: None, .. }))
    }

    /// Whether the answer is worked out for each request, where the others are looked up.
    #[must_use]
    pub const fn is_worked_out(&self, query: Option<&str>) -> bool {
        match self {
            Self::Route(route, _) => match route.kind {
                Kind::WorkedFigures | Kind::NotesFile | Kind::Compared => true,
                // Turned to without a query they are one list.
                Kind::Notes => query.is_some(),
                Kind::Figures
                | Kind::NoFigures
                | Kind::Tables
                | Kind::Open
                | Kind::Private
                | Kind::Page => false,
            },
            Self::Page(address) => address.page.is_worked_out(),
        }
    }

    /// Whether whoever asks is a program: a refusal is then problem details, elsewhere a page.
    #[must_use]
    pub const fn is_for_programs(&self) -> bool {
        let (is_for_programs, ending) = match self {
            Self::Route(route, ending) => (route.kind.is_for_programs(), *ending),
            Self::Page(address) => (false, address.ending),
        };
        is_for_programs || matches!(ending, Some(Ending::Json))
    }

    /// Who else may use the answer. Figures and drawings are there to be shown in a forum post; pages
    /// are not.
    #[must_use]
    pub const fn sharing(&self) -> Sharing {
        let (kind, ending) = match self {
            Self::Route(route, ending) => (route.kind, *ending),
            Self::Page(address) => (Kind::Page, address.ending),
        };
        match (kind, ending) {
            (Kind::Figures | Kind::WorkedFigures | Kind::Tables, _) => Sharing::Read,
            (_, Some(Ending::Svg)) => Sharing::Shown,
            (Kind::Private, _) | (_, None | Some(Ending::Csv)) => Sharing::Own,
            (
                Kind::NoFigures
                | Kind::Notes
                | Kind::NotesFile
                | Kind::Compared
                | Kind::Open
                | Kind::Page,
                Some(Ending::Json),
            ) => Sharing::Read,
        }
    }

    /// Whether only forms are sent there, and no page stands at the address.
    #[must_use]
    pub fn is_sent_to_alone(&self) -> bool {
        match self {
            Self::Route(route, _) => {
                route.methods.contains(&"post") && !route.methods.contains(&"get")
            }
            Self::Page(_) => false,
        }
    }

    /// The bytes of a body that are taken there, where that is not as many as elsewhere.
    #[must_use]
    pub const fn takes(&self) -> Option<u64> {
        match self {
            Self::Route(route, _) => route.takes,
            Self::Page(_) => None,
        }
    }
}
