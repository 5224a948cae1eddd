//! What every page must have, and what none may have.

use std::collections::{BTreeSet, VecDeque};

use holewright_core::tables::{materials, threads};

use crate::addresses::reference;
use crate::html::{Page, read};
use crate::kinds::kinds;
use crate::markup::check_page;
use crate::visit;

#[test]
fn every_kind_of_page_has_its_status() {
    for kind in kinds() {
        assert_eq!(visit(&kind.address).status, kind.status, "{}", kind.address);
    }
    for address in reference() {
        assert_eq!(visit(&address).status, 200, "{address}");
    }
}

/// Plans are without number: these are one of every ninth thread, and one of every metal.
fn plans() -> impl Iterator<Item = String> {
    let threads = threads::all().step_by(9).map(|thread| {
        let path = thread.path();
        let name = path.trim_start_matches("/threads/");
        format!("/plan?thread={name}&material=gunmetal&hole=blind&depth=9mm")
    });
    let metals = materials::all()
        .iter()
        .map(|metal| format!("/plan?thread=ba/5&material={}&over=gunmetal", metal.slug));
    let forming =
        "/plan?thread=1/4+BSF&material=grey-cast-iron&tap=forming&hole=through&depth=12mm";
    threads.chain(metals).chain([forming.to_owned()])
}

/// The addresses on this site that a page links to.
fn links(page: &Page) -> impl Iterator<Item = String> + '_ {
    page.named("a")
        .filter_map(|tag| tag.attribute("href"))
        .filter(|href| href.starts_with('/'))
        .map(|href| href.split('#').next().unwrap().to_owned())
}

/// From one page of each kind, the whole reference and some plans to every page they lead to.
#[test]
fn s02_every_page_is_whole_and_nothing_on_it_runs_or_comes_from_elsewhere() {
    let kinds = kinds().into_iter().map(|kind| kind.address.into_owned());
    let mut waiting: VecDeque<String> = kinds.chain(reference()).chain(plans()).collect();
    let mut seen: BTreeSet<String> = waiting.iter().cloned().collect();
    let mut pages = 0;
    while let Some(address) = waiting.pop_front() {
        let answer = visit(&address);
        if let Some(location) = answer.location() {
            assert!(location.starts_with('/') && !location.starts_with("//"), "{location}");
            continue;
        }
        let kind = answer.header("content-type").unwrap_or_default();
        if !kind.starts_with("text/html") {
            continue;
        }
        assert_eq!(kind, "text/html; charset=utf-8", "{address}");
        pages += 1;
        check_page(answer.text(), &address);
        check_canonical(&address, answer.status, answer.text());
        for link in links(&read(answer.text())).filter(|link| seen.insert(link.clone())) {
            waiting.push_back(link);
        }
    }
    assert!(pages > 900, "{pages} pages: the crawl misses some");
}

/// A page says its own address; the answer to a mistake has none and is kept out of searches.
fn check_canonical(address: &str, status: u16, page: &str) {
    let tags = read(page).tags;
    let canonical = tags.iter().find(|tag| tag.attribute("rel") == Some("canonical"));
    match (status, canonical) {
        (200, Some(link)) => {
            let href = link.attribute("href").unwrap();
            assert!(href.starts_with("https://club.example/"), "{address}: canonical {href}");
        }
        (200, None) => panic!("{address}: no canonical address"),
        (_, canonical) => {
            assert!(canonical.is_none(), "{address}: a mistake with a canonical address");
            assert!(page.contains("content=\"noindex\""), "{address}: listed");
        }
    }
}
