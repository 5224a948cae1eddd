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
    /// Which section it is in.
    section: Section,
    /// Whether the page is a member's own: only [`Frame::for_reader`] says so.
    is_own: bool,
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
    Yours,
    /// All members, for a secretary.
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
    [(Section::Notes, "/notes", "Notes"), (Section::Yours, "/me", "Your page")];

/// A secretary's third, on pages of their own.
const MEMBERS: (Section, &str, &str) = (Section::Members, "/people", "Members");

/// How much there is for the reader of a page to see to, who is a member and whose own the page is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Own {
    /// Among the notes.
    pub notes: i64,
    /// Among the members; none where their pages are not for this reader.
    pub members: Option<i64>,
}

impl Section {
    /// That of an address of the members' part.
    ///
    /// # Examples
    /// ```
    /// use holewright_pages::layout::Section;
    /// assert_eq!(Section::of_club("/queue/12"), Section::Notes);
    /// assert_eq!(Section::of_club("/people/sheet"), Section::Members);
    /// assert_eq!(Section::of_club("/sign-in"), Section::Yours);
    /// ```
    #[must_use]
    pub fn of_club(address: &str) -> Self {
        match address.split('/').nth(1) {
            Some("notes" | "queue") => Self::Notes,
            Some("people") => Self::Members,
            _ => Self::Yours,
        }
    }
}

impl SectionLink {
    fn to(&(section, address, words): &(Section, &str, &str), of: Section) -> Self {
        Self { link: Link::new(address, words), section, here: section == of }
    }

    /// With how much there is to see to.
    fn counting(mut self, count: i64) -> Self {
        if count > 0 {
            self.link.words = format!("{} ({count})", self.link.words);
        }
        self
    }
}

impl Frame {
    /// The frame of a page whose canonical address is its path alone.
    pub(super) fn new(visit: &Visit<'_>, section: Section, title: &str, description: &str) -> Self {
        Self::at(visit.context, section, &visit.path, title, description)
    }

    /// The same frame for the answer to a mistake, which is no page of its own.
    pub fn of_a_mistake(self) -> Self {
        Self { listed: false, ..self }
    }

    /// The same frame for whoever reads the page: a member, whose own it then is and who reads beside the doors how
    /// much there is to see to, or somebody who is not signed in.
    pub fn for_reader(mut self, own: Option<Own>) -> Self {
        let Some(Own { notes, members }) = own else { return self };
        self.is_own = true;
        let count = |door: SectionLink| match door.section {
            Section::Notes => door.counting(notes),
            _ => door,
        };
        self.club = self.club.into_iter().map(count).collect();
        let members = members.map(|count| SectionLink::to(&MEMBERS, self.section).counting(count));
        self.club.extend(members);
        self
    }

    /// Whether the page is a member's own, who can sign out on it. A page that is kept is the same for all.
    #[must_use]
    pub fn is_members(&self) -> bool {
        self.is_own
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
        let link = |door: &(Section, &str, &str)| SectionLink::to(door, section);
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
            section,
            is_own: false,
            done: None,
            noted: context.notes.lead.clone(),
            has_notes: context.notes.are_kept,
            style_sheet: assets::style_sheet(),
            icon: assets::icon(),
            version: env!("CARGO_PKG_VERSION"),
        }
    }
}
