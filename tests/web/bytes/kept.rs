//! What is kept: how much, for how long, and what never is.

use std::sync::Arc;

use axum::body::Bytes;
use axum::http::{HeaderMap, StatusCode};
use holewright_server::front::bytes::{Coding, Kept, Ready};
use holewright_server::rules::validator::Tag;

use super::fetched::get;
use crate::support::Server;

fn tag() -> Tag {
    Tag::of_bytes(b"a")
}

fn ready(length: usize) -> Arc<Ready> {
    let body = Bytes::from(vec![b'x'; length]);
    Arc::new(Ready::new(HeaderMap::new(), &tag(), Coding::Identity, body))
}

fn put(kept: &Kept, path: &str, length: usize) {
    kept.put(path, Coding::Identity, tag(), ready(length), kept.shown().now());
}

fn holds(kept: &Kept, path: &str) -> bool {
    kept.get(path, Coding::Identity).is_some()
}

#[test]
fn what_was_read_longest_ago_goes_first() {
    let kept = Kept::holding(10_000, Arc::default());
    for path in ["/a", "/b", "/c"] {
        put(&kept, path, 2_000);
    }
    assert!(holds(&kept, "/a"));
    put(&kept, "/d", 2_500);
    assert!(kept.weight() <= 10_000, "{}", kept.weight());
    assert!(!holds(&kept, "/b"), "read longest ago");
    for path in ["/a", "/c", "/d"] {
        assert!(holds(&kept, path), "{path}");
    }
}

#[test]
fn it_never_holds_more_than_it_may() {
    let kept = Kept::holding(50_000, Arc::default());
    let mut state = 1_u64;
    for _ in 0..2_000 {
        state =
            state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let length = usize::try_from(state >> 50).unwrap();
        put(&kept, &format!("/{}", state >> 56), length);
        assert!(kept.weight() <= 50_000, "{}", kept.weight());
    }
    assert!(kept.weight() > 25_000, "it is of use: {}", kept.weight());
    put(&kept, "/too-long", 60_000);
    assert_eq!(kept.weight(), 0);
    assert!(!holds(&kept, "/too-long"));
}

#[test]
fn the_same_answer_put_twice_weighs_once() {
    let kept = Kept::holding(Kept::USUAL, Arc::default());
    put(&kept, "/a", 3_000);
    let once = kept.weight();
    put(&kept, "/a", 3_000);
    assert_eq!(kept.weight(), once);
}

#[test]
fn a_change_makes_everything_old_and_the_same_tag_makes_it_new() {
    let kept = Kept::holding(Kept::USUAL, Arc::default());
    put(&kept, "/a", 10);
    let before = kept.shown().now();
    kept.shown().changed();
    assert!(!holds(&kept, "/a"));
    let now = kept.shown().now();
    assert!(kept.renew("/a", Coding::Identity, &Tag::of_bytes(b"b"), now).is_none());
    assert!(!holds(&kept, "/a"));
    assert!(kept.renew("/a", Coding::Identity, &tag(), now).is_some());
    assert!(holds(&kept, "/a"));

    // An answer whose making began before the change does not count as new.
    kept.put("/late", Coding::Identity, tag(), ready(10), before);
    assert!(!holds(&kept, "/late"));
}

#[tokio::test]
async fn a_page_is_coded_once() {
    let server = Server::start().await;
    let kept = &server.app.kept;
    let held = || kept.get("/threads/ba/5", Coding::Brotli);
    assert!(held().is_none());
    let asked = (0..8).map(|_| {
        let router = server.router.clone();
        tokio::spawn(async move { get(&router, "/threads/ba/5", "br").await.body })
    });
    let mut bodies = Vec::new();
    for task in asked.collect::<Vec<_>>() {
        bodies.push(task.await.unwrap());
    }
    bodies.dedup();
    assert_eq!(bodies.len(), 1);
    let first = held().unwrap();
    get(&server.router, "/threads/ba/5", "br").await;
    assert!(Arc::ptr_eq(&first, &held().unwrap()));

    // After a change that did not touch it, it is asked for again but not coded again.
    kept.shown().changed();
    assert!(held().is_none());
    get(&server.router, "/threads/ba/5", "br").await;
    assert!(Arc::ptr_eq(&first, &held().unwrap()));
}

#[tokio::test]
async fn a_kept_page_needs_no_database() {
    let server = Server::start().await;
    let before = get(&server.router, "/threads/ba/5", "br").await;
    server.app.database.close().await;
    let after = get(&server.router, "/threads/ba/5", "br").await;
    assert_eq!(after.body, before.body);
    assert_eq!(after.tag(), before.tag());

    // One that was not kept is answered too, under a tag that will not last: so it is not kept.
    let weight = server.app.kept.weight();
    let other = get(&server.router, "/threads/ba/6", "br").await;
    assert_eq!(other.status, StatusCode::OK);
    assert_eq!(server.app.kept.weight(), weight);
}

#[tokio::test]
async fn what_can_be_asked_without_end_is_never_kept() {
    let server = Server::start().await;
    for path in [
        "/plan?thread=5ba&material=gunmetal",
        "/plan?thread=nonsense",
        "/drills?series=number",
        "/search?q=screw",
        "/threads/ba/5?from=a-forum",
        "/nothing-here",
        "/Threads/",
        "/static/holewright-0123456789abcdef.css",
        "/healthz",
        "/readyz",
    ] {
        for accepts in ["identity", "gzip", "zstd", "br"] {
            get(&server.router, path, accepts).await;
            assert_eq!(server.app.kept.weight(), 0, "{path}");
        }
    }
    get(&server.router, "/threads/ba/5", "br").await;
    assert!(server.app.kept.weight() > 0);
}
