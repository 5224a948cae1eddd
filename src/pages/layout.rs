//! What every page has around its content: title, canonical address, preview, navigation.

use super::drawer::Notice;
use super::link::Link;
use super::{Context, Visit, assets};

/// The frame's own figures.
#[derive(Clone, Debug)]
pub struct Frame {
    /// What the browser tab and a preview say: the answer, then the site.
    pub title: String,
    /// One or two sentences for a preview.
    pub description: String,
    /// The page's own address, absolute where the host is known.
    pub canonical: String,
    /// The sections of the figures, the one of this page marked.
    pub sections: Vec<SectionLink>,
    /// The sections of the members' part, the same for every reader.
    pub club: Vec<SectionLink>,
    /// Whose pages these are, for a preview: the club’s name, else the program’s.
    pub site_name: String,
    /// The club’s name and place, for the foot of the page; empty where it gave none.
    pub whose: String,
    /// Whether a search engine may list the page: not a mistake's answer.
    pub listed: bool,
    /// What the page says of the reader's drawer, where it has a part in it.
    pub drawer: Option<Notice>,
    /// What members found, below everything else.
    pub notes: String,
    /// Whether the page is a member's own, who can sign out on it. A page that is kept is the same for all.
    pub is_members: bool,
    /// What was done a moment ago, and what comes next.
    pub done: Option<DoneWords>,
    /// What leads there from the head of the page.
    pub noted: String,
    /// Whether there are notes to go to.
    pub has_notes: bool,
    /// The address of the style sheet, with its hash.
    pub style_sheet: &'static str,
    /// The address of the icon, with its hash.
    pub icon: &'static str,
    /// The program's version, for the foot of the page.
    pub version: &'static str,
}

/// What the form before this page did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoneWords {
    /// A sentence.
    pub what: String,
    /// More of them, or nothing.
    pub next: String,
    /// Where what comes next is done.
    pub link: Option<Link>,
}

/// A section in the navigation.
#[derive(Clone, Debug)]
pub struct SectionLink {
    /// Where it leads, and its words.
    pub link: Link,
    /// Which it is.
    pub section: Section,
    /// Whether this page is in it.
    pub here: bool,
}

/// The sections of the site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// The thread systems.
    Threads,
    /// The drill chart.
    Drills,
    /// The metals and plastics.
    Materials,
    /// The hole plan.
    Plan,
    /// The calculators.
    Calculators,
    /// The members' notes.
    Notes,
    /// A member's own page, and what leads there.
    Members,
    /// In none of them: home, finding, errors.
    None,
}

/// In the order of the navigation; on the narrowest telephones they take two lines.
const SECTIONS: [(Section, &str, &str); 5] = [
    (Section::Threads, "/threads", "Threads"),
    (Section::Drills, "/drills", "Drills"),
    (Section::Materials, "/materials", "Materials"),
    (Section::Plan, "/plan", "Plan"),
    (Section::Calculators, "/calculators", "Calculators"),
];

/// On a telephone these two stand beside the site's name. Whoever is not signed in is asked to by
/// the second; the page says the same to all, or it could not be kept for all.
const CLUB: [(Section, &str, &str); 2] =
    [(Section::Notes, "/notes", "Notes"), (Section::Members, "/me", "Members")];

impl Frame {
    /// The frame of a page whose canonical address is its path alone.
    pub(super) fn new(visit: &Visit<'_>, section: Section, title: &str, description: &str) -> Self {
        Self::at(visit.context, section, &visit.path, title, description)
    }

    /// The same frame for the answer to a mistake, which is no page of its own.
    pub fn of_a_mistake(self) -> Self {
        Self { listed: false, ..self }
    }

    /// The same frame for a reader who is signed in, or is not.
    pub fn for_reader(self, is_signed_in: bool) -> Self {
        Self { is_members: is_signed_in, ..self }
    }

    /// The same frame, saying beside the notes how much there is for its reader to see to. Only on pages that are
    /// the reader's own.
    pub fn seeing_to(mut self, count: i64) -> Self {
        if count > 0 {
            for door in self.club.iter_mut().filter(|door| door.section == Section::Notes) {
                door.link.words = format!("{} ({count})", door.link.words);
            }
        }
        self
    }

    /// The same frame, saying at its head what was done.
    pub fn saying(self, done: Option<DoneWords>) -> Self {
        Self { done, ..self }
    }

    /// The same frame with what the page says of the reader's drawer.
    pub(super) fn with_drawer(self, drawer: Option<Notice>) -> Self {
        Self { drawer, ..self }
    }

    /// The frame of a page at this canonical address.
    pub fn at(
        context: &Context,
        section: Section,
        address: &str,
        title: &str,
        description: &str,
    ) -> Self {
        let link = |&(which, address, words): &(Section, &str, &str)| SectionLink {
            link: Link::new(address, words),
            section: which,
            here: which == section,
        };
        let leads = |&&(which, ..): &&(Section, &str, &str)| {
            which != Section::Notes || context.notes.are_kept
        };
        Self {
            title: format!("{title} – Holewright"),
            description: description.to_owned(),
            canonical: format!("{}{address}", context.base_url),
            sections: SECTIONS.iter().map(link).collect(),
            club: CLUB.iter().filter(leads).map(link).collect(),
            site_name: match context.club.name.as_str() {
                "" => "Holewright".to_owned(),
                name => name.to_owned(),
            },
            whose: context.club.line(),
            listed: true,
            drawer: None,
            notes: context.notes.html.clone(),
            is_members: false,
            done: None,
            noted: context.notes.lead.clone(),
            has_notes: context.notes.are_kept,
            style_sheet: assets::style_sheet(),
            icon: assets::icon(),
            version: env!("CARGO_PKG_VERSION"),
        }
    }
}
