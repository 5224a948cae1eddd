//! S02: no rendered page holds anything that runs, styles itself, or comes from elsewhere.

use std::collections::{BTreeSet, VecDeque};
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::http::Method;
use axum::routing::get;
use holewright_core::tables::{materials, threads};
use holewright_pages::Context;
use holewright_server::{Error, routes};

use super::html::{self, Page};
use crate::support::{Server, ask};

/// Where the crawl begins: the front door, and what only a typed address reaches.
const SEEDS: [&str; 12] = [
    "/",
    "/search",
    "/search?q=1%2F4",
    "/search?q=flange",
    "/nothing/here",
    "/threads/ba/99",
    "/materials/unobtainium",
    "/drills?from=2mm&to=3mm&series=metric",
    "/drills?from=x&to=y&series=z",
    "/plan?thread=nonsense&material=unobtainium&hole=sideways&depth=x&owned=y&fit=z",
    "/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm&over=free-cutting-brass&over_thickness=4mm&series=number,metric",
    "/plan?thread=1/4+BSF&material=grey-cast-iron&tap=forming&hole=through&depth=12mm",
];

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
    threads.chain(metals)
}

/// The addresses on this site that a page links to.
fn links(page: &Page) -> impl Iterator<Item = String> + '_ {
    page.tags
        .iter()
        .filter(|tag| tag.name == "a")
        .filter_map(|tag| tag.attribute("href"))
        .filter(|href| href.starts_with('/'))
        .map(|href| href.split('#').next().unwrap().to_owned())
}

#[test]
fn s02_no_page_holds_script_style_or_anything_from_elsewhere() {
    let context = Context { base_url: "https://club.test".to_owned(), ..Context::default() };
    let mut waiting: VecDeque<String> =
        SEEDS.map(str::to_owned).into_iter().chain(plans()).collect();
    let mut seen: BTreeSet<String> = waiting.iter().cloned().collect();
    let mut pages = 0;
    while let Some(address) = waiting.pop_front() {
        let (path, query) = address.split_once('?').unwrap_or((&address, ""));
        let answer = holewright_pages::answer(path, query, &context);
        if let Some(location) = answer.location() {
            assert!(location.starts_with('/') && !location.starts_with("//"), "{location}");
            continue;
        }
        if !answer.header("content-type").unwrap_or_default().starts_with("text/html") {
            continue;
        }
        pages += 1;
        let page = html::read(answer.text());
        html::check_inert(&page, &address);
        assert!(page.comments.is_empty(), "{address}: {:?}", page.comments);
        for link in links(&page).filter(|link| seen.insert(link.clone())) {
            waiting.push_back(link);
        }
    }
    assert!(pages > 900, "{pages} pages: the crawl misses some");
}

#[tokio::test]
async fn s02_no_refusal_holds_script_or_style() {
    let server = Server::start().await;
    let refusals = Router::new()
        .route("/failed", get(async || Error::Internal("x".into())))
        .route("/limited", get(async || Error::TooMany { wait: Duration::ZERO }));
    let refusals = routes::layered(refusals, Arc::clone(&server.app));
    for (router, method, path) in [
        (&server.router, Method::POST, "/"),
        (&refusals, Method::GET, "/failed"),
        (&refusals, Method::GET, "/limited"),
    ] {
        let answer = ask(router, method, path, &[]).await;
        assert!(answer.status.as_u16() >= 400, "{path}");
        let page = html::read(&answer.body);
        assert!(page.tags.iter().any(|tag| tag.name == "h1"), "{path}: {}", answer.body);
        html::check_inert(&page, path);
    }
}

#[test]
fn the_reader_of_markup_sees_what_it_must_refuse() {
    for wrong in [
        "<script>x</script>",
        "<p onclick=x>",
        "<p style='x'>",
        "<style>x</style>",
        "<a href='java\nscript:x'>",
        "<img src=//elsewhere.example/x>",
        "<img src=https://elsewhere.example/x>",
        "<form action=https://elsewhere.example>",
        "<base href=/x>",
        "<meta http-equiv=refresh content=0>",
        "<svg/onload=x>",
    ] {
        let seen = std::panic::catch_unwind(|| html::check_inert(&html::read(wrong), "here"));
        assert!(seen.is_err(), "{wrong}");
    }
    html::check_inert(&html::read("<img src=/x><a href=https://club.example>x</a>"), "here");
}
