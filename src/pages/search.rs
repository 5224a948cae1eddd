//! `/search?q=`: straight to the page when only one thing can be meant, else what could be.

use askama::Template;

use super::layout::{Frame, Section};
use super::link::Link;
use super::{Reply, Visit};
use holewright_core::asking::quoted;
use holewright_core::calc::clearance::Fit;
use holewright_core::calc::uses;
use holewright_core::finder::{self, Found, Hit, Kind};
use holewright_core::tables::drills::{Drill, read::read};
use holewright_core::tables::threads::Thread;
use holewright_core::units::print;

#[derive(Template)]
#[template(path = "search.html")]
struct SearchPage {
    frame: Frame,
    heading: String,
    hits: Vec<Shown>,
    suggestions: Vec<Shown>,
    typed: String,
}

/// A hit, with why it was found.
struct Shown {
    link: Link,
    why: String,
}

impl Shown {
    fn all(hits: Vec<Hit>) -> Vec<Self> {
        hits.into_iter()
            .map(|hit| Self { link: Link::new(hit.url, hit.title), why: hit.why })
            .collect()
    }
}

/// What was typed, found.
pub(super) fn show(visit: &Visit<'_>) -> Reply {
    let query = visit.query.clone().cut(&["q"]);
    let typed = query.get("q");
    let found = found(typed);
    if let Some(only) = found.only() {
        return Reply::see_other(&only.url);
    }
    let (status, heading) = match found.hits.len() {
        _ if found.query.is_empty() => (200, "Find".to_owned()),
        0 if visit.context.notes.found > 0 => (200, format!("Members speak of {}", quoted(typed))),
        0 => (404, format!("Nothing is called {}", quoted(typed))),
        1 => (200, format!("{} could be this", quoted(typed))),
        _ => (200, format!("{} could be any of these", quoted(typed))),
    };
    let frame = Frame::new(visit, Section::None, &heading, "Find a thread, a drill or a material.");
    let page = SearchPage {
        frame: if status == 200 { frame } else { frame.of_a_mistake() },
        heading,
        hits: Shown::all(found.hits),
        suggestions: Shown::all(found.suggestions),
        typed: typed.to_owned(),
    };
    Reply::html(status, &page)
}

/// What a text can mean; where it is a drill or a drill's size, also the threads that drill taps and
/// clears, which are worked out and so are not the finder's to say.
#[must_use]
pub fn found(typed: &str) -> Found {
    let mut found = finder::find(typed);
    let first = found.hits.iter().find(|hit| hit.kind == Kind::Drill);
    let drill =
        read(&found.query).ok().filter(|drill| first.is_some_and(|hit| hit.url == drill.path()));
    if let Some(drill) = drill {
        let more = tapped(drill).chain(cleared(drill)).take(finder::MOST);
        let held = |hit: &Hit| found.hits.iter().any(|held| held.url == hit.url);
        let more: Vec<Hit> = more.filter(|hit| !held(hit)).collect();
        found.hits.extend(more);
    }
    found
}

/// As many threads of each sort as a phone shows without scrolling far.
const FEW: usize = 8;
/// What a tapping size usually leaves, percent: threads nearest to it stand first.
const USUAL: f64 = 70.0;

fn tapped(drill: &'static Drill) -> impl Iterator<Item = Hit> {
    let mut taps = uses::taps(drill);
    let off = |taps: &uses::Taps| (taps.candidate.engagement_percent - USUAL).abs();
    taps.sort_by(|one, other| off(one).total_cmp(&off(other)));
    taps.into_iter().take(FEW).map(|taps| {
        let engagement = print::percent(taps.candidate.engagement_percent);
        hit(
            taps.thread,
            format!("{} is a tapping size of it, {engagement} of full depth", drill.label),
        )
    })
}

fn cleared(drill: &'static Drill) -> impl Iterator<Item = Hit> {
    uses::clears(drill).into_iter().take(FEW).map(|clears| {
        let fits = clears.fits.into_iter().map(Fit::slug).collect::<Vec<_>>().join(", ");
        hit(clears.thread, format!("{} clears it, {fits}", drill.label))
    })
}

fn hit(thread: &'static Thread, why: String) -> Hit {
    Hit { kind: Kind::Thread, title: thread.designation.into(), url: thread.path().into(), why }
}
