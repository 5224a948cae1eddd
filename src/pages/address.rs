//! An address, parsed once: which page it names, in which form, and how it is spelled.
//!
//! What differs from page to page besides the page itself is a method on [`Page`], so that a new
//! page does not compile until each is answered for it.

use form_urlencoded::parse;

use super::assets;

/// What a path asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Address {
    /// Which page.
    pub page: Page,
    /// The form that is asked for in its stead.
    pub ending: Option<Ending>,
    /// The parts of the page's path: decoded, in lower case, none empty, without the ending.
    parts: Vec<String>,
}

/// A page of the reference, with the parts of its address that are left open. Whether there is
/// such a thread, drill or material is the page's to say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Page {
    /// `/`
    Home,
    /// `/search`
    Search,
    /// `/threads`
    ThreadSystems,
    /// `/threads/ba`
    ThreadSystem(String),
    /// `/threads/ba/5`
    Thread {
        /// Its system.
        system: String,
        /// Its size.
        size: String,
    },
    /// `/drills`
    DrillChart,
    /// `/drills/number/46`
    Drill {
        /// Its series.
        series: String,
        /// Its size.
        size: String,
    },
    /// `/materials`
    Materials,
    /// `/materials/gunmetal`
    Material(String),
    /// `/rescue`
    Troubles,
    /// `/rescue/broken-tap`
    Trouble(String),
    /// `/fasteners`
    Fasteners,
    /// `/fasteners/hexagons-ba`
    FastenerTable(String),
    /// `/plan`
    Plan,
    /// `/drawer`
    Drawer,
    /// `/calculators`
    Calculators,
    /// `/calculators/speeds`
    Calculator(String),
    /// `/static/holewright-0123456789abcdef.css`
    Asset(String),
    /// No page stands there.
    Unknown,
}

/// What a path may end in. A final `.05` is no ending: `2.05` is a drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// The figures, which a server gives.
    Json,
    /// The table.
    Csv,
    /// The drawing.
    Svg,
}

impl Ending {
    /// Every ending.
    pub const ALL: [Self; 3] = [Self::Json, Self::Csv, Self::Svg];

    /// As it is written: `.csv`.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Json => ".json",
            Self::Csv => ".csv",
            Self::Svg => ".svg",
        }
    }

    /// A name and its ending: `m3x0.5.csv` is `m3x0.5` as a table.
    #[must_use]
    pub fn split(name: &str) -> (&str, Option<Self>) {
        Self::ALL
            .into_iter()
            .find_map(|ending| {
                let stem = name.strip_suffix(ending.as_str())?;
                (!stem.is_empty() && !stem.ends_with('/')).then_some((stem, Some(ending)))
            })
            .unwrap_or((name, None))
    }
}

impl Address {
    /// Reads a path. Never fails: bytes that are no text become the replacement character.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::address::{Address, Ending, Page};
    /// let address = Address::read("//Threads/%42A/5.svg");
    /// assert_eq!(address.page, Page::Thread { system: "ba".into(), size: "5".into() });
    /// assert_eq!(address.ending, Some(Ending::Svg));
    /// assert_eq!(address.canonical(), "/threads/ba/5.svg");
    /// let drill = Address::read("/drills/metric/2.05");
    /// assert_eq!(drill.ending, None);
    /// ```
    #[must_use]
    pub fn read(path: &str) -> Self {
        let mut parts: Vec<String> = path
            .split('/')
            .filter(|part| !part.is_empty())
            .map(|part| decode(part).to_lowercase())
            .collect();
        let last = parts.last_mut();
        let ending = last.and_then(|last| {
            let (stem, ending) = Ending::split(last);
            let length = stem.len();
            // What a program asks for is spelled as it is described, or it is a name.
            let ending =
                ending.filter(|found| *found != Ending::Json || path.ends_with(".json"))?;
            last.truncate(length);
            Some(ending)
        });
        Self { page: Page::at(&parts), ending, parts }
    }

    /// The one spelling: `/threads/ba/5.csv`.
    #[must_use]
    pub fn canonical(&self) -> String {
        let ending = self.ending.map_or("", Ending::as_str);
        format!("{}{ending}", self.page_path())
    }

    /// The one spelling of the page's own address, without the ending: `/threads/ba/5`.
    #[must_use]
    pub fn page_path(&self) -> String {
        format!("/{}", self.parts.join("/"))
    }

    /// The page whose name the ending would be part of: of `/threads/ba/5.json` the size `5.json`.
    pub(super) fn ending_as_name(&self) -> Page {
        let mut parts = self.parts.clone();
        if let (Some(last), Some(ending)) = (parts.last_mut(), self.ending) {
            last.push_str(ending.as_str());
        }
        Page::at(&parts)
    }

    /// Whether the answer may turn on the reader's drawer: a page may, a file or figures for a
    /// program never do.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::address::Address;
    /// assert!(Address::read("/plan").turns_on_drawer());
    /// assert!(!Address::read("/plan.json").turns_on_drawer());
    /// ```
    #[must_use]
    pub const fn turns_on_drawer(&self) -> bool {
        self.ending.is_none() && self.page.turns_on_drawer()
    }
}

impl Page {
    fn at(parts: &[String]) -> Self {
        let parts: Vec<&str> = parts.iter().map(String::as_str).collect();
        let owned = |part: &str| part.to_owned();
        match *parts.as_slice() {
            [] => Self::Home,
            ["search"] => Self::Search,
            ["threads"] => Self::ThreadSystems,
            ["threads", system] => Self::ThreadSystem(owned(system)),
            ["threads", system, size] => Self::Thread { system: owned(system), size: owned(size) },
            ["drills"] => Self::DrillChart,
            ["drills", series, size] => Self::Drill { series: owned(series), size: owned(size) },
            ["materials"] => Self::Materials,
            ["materials", slug] => Self::Material(owned(slug)),
            ["rescue"] => Self::Troubles,
            ["rescue", slug] => Self::Trouble(owned(slug)),
            ["fasteners"] => Self::Fasteners,
            ["fasteners", table] => Self::FastenerTable(owned(table)),
            ["plan"] => Self::Plan,
            ["drawer"] => Self::Drawer,
            ["calculators"] => Self::Calculators,
            ["calculators", name] => Self::Calculator(owned(name)),
            ["static", file] => Self::Asset(owned(file)),
            _ => Self::Unknown,
        }
    }

    /// The address with its open parts named; none where no page stands. What may be counted and
    /// logged of an address.
    #[must_use]
    pub const fn template(&self) -> Option<&'static str> {
        Some(match self {
            Self::Home => "/",
            Self::Search => "/search",
            Self::ThreadSystems => "/threads",
            Self::ThreadSystem(_) => "/threads/{system}",
            Self::Thread { .. } => "/threads/{system}/{size}",
            Self::DrillChart => "/drills",
            Self::Drill { .. } => "/drills/{series}/{size}",
            Self::Materials => "/materials",
            Self::Material(_) => "/materials/{slug}",
            Self::Troubles => "/rescue",
            Self::Trouble(_) => "/rescue/{slug}",
            Self::Fasteners => "/fasteners",
            Self::FastenerTable(_) => "/fasteners/{table}",
            Self::Plan => "/plan",
            Self::Drawer => "/drawer",
            Self::Calculators => "/calculators",
            Self::Calculator(_) => "/calculators/{name}",
            Self::Asset(_) => "/static/{file}",
            Self::Unknown => return None,
        })
    }

    /// Whether it is worked out for each visit, where the others are looked up: a server limits how
    /// often one reader may ask for it.
    #[must_use]
    pub const fn is_worked_out(&self) -> bool {
        match self {
            Self::Search | Self::Plan => true,
            Self::Home
            | Self::ThreadSystems
            | Self::ThreadSystem(_)
            | Self::Thread { .. }
            | Self::DrillChart
            | Self::Drill { .. }
            | Self::Materials
            | Self::Material(_)
            | Self::Troubles
            | Self::Trouble(_)
            | Self::Fasteners
            | Self::FastenerTable(_)
            | Self::Drawer
            | Self::Calculators
            | Self::Calculator(_)
            | Self::Asset(_)
            | Self::Unknown => false,
        }
    }

    /// Whether a server may keep what it answers at this path, since only so many paths bring it.
    /// Any hash brings the style sheet, so of an asset only today's address counts.
    #[must_use]
    pub fn may_be_kept(&self, path: &str) -> bool {
        match self {
            Self::Asset(_) => [assets::style_sheet(), assets::icon()].contains(&path),
            Self::Home
            | Self::Search
            | Self::ThreadSystems
            | Self::ThreadSystem(_)
            | Self::Thread { .. }
            | Self::DrillChart
            | Self::Drill { .. }
            | Self::Materials
            | Self::Material(_)
            | Self::Troubles
            | Self::Trouble(_)
            | Self::Fasteners
            | Self::FastenerTable(_)
            | Self::Plan
            | Self::Drawer
            | Self::Calculators
            | Self::Calculator(_) => true,
            Self::Unknown => false,
        }
    }

    const fn turns_on_drawer(&self) -> bool {
        match self {
            Self::Asset(_) => false,
            // A page that says what comes near has the same frame as the others.
            Self::Home
            | Self::Search
            | Self::ThreadSystems
            | Self::ThreadSystem(_)
            | Self::Thread { .. }
            | Self::DrillChart
            | Self::Drill { .. }
            | Self::Materials
            | Self::Material(_)
            | Self::Troubles
            | Self::Trouble(_)
            | Self::Fasteners
            | Self::FastenerTable(_)
            | Self::Plan
            | Self::Drawer
            | Self::Calculators
            | Self::Calculator(_)
            | Self::Unknown => true,
        }
    }
}

/// Percent codes undone. In a path `+`, `&` and `=` stand for themselves.
fn decode(part: &str) -> String {
    let shielded = part.replace('+', "%2B").replace('&', "%26").replace('=', "%3D");
    parse(shielded.as_bytes()).next().map_or_else(String::new, |(text, _)| text.into_owned())
}
