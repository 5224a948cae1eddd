//! U02: a page is asked for again each time, and sent again only if its bytes are others.

use std::collections::BTreeSet;

use axum::http::{Method, StatusCode};
use holewright_server::front::routes;

use super::fetched::{fetch, get};
use crate::support::{Folder, Server, open};

const CODINGS: [&str; 4] = ["identity", "gzip", "zstd", "br"];

/// Kept pages, pages that are made each time, and an answer for programs.
const PATHS: [&str; 7] = [
    "/",
    "/threads/ba/5",
    "/threads/ba",
    "/drills",
    "/drills?series=number",
    "/plan?thread=5ba&material=gunmetal&hole=through&depth=6mm",
    "/api/v1/threads/ba/5",
];

/// A page turns on the reader's drawer too, an answer for programs never does.
fn vary(path: &str) -> &'static str {
    if path.starts_with("/api/") { "Accept-Encoding" } else { "Accept-Encoding, Cookie" }
}

#[tokio::test]
async fn u02_each_coding_has_a_strong_tag_of_its_own() {
    let server = Server::start().await;
    for path in PATHS {
        let mut tags = BTreeSet::new();
        for coding in CODINGS {
            let page = get(&server.router, path, coding).await;
            assert_eq!(page.status, StatusCode::OK, "{path}");
            assert_eq!(page.header("cache-control"), Some("no-cache"), "{path}");
            assert_eq!(page.header("vary"), Some(vary(path)), "{path}");
            assert!(page.tag().starts_with('"'), "{path}: {}", page.tag());
            let again = get(&server.router, path, coding).await;
            assert_eq!((again.tag(), again.body), (page.tag(), page.body), "{path}");
            tags.insert(again.headers["etag"].clone());
        }
        assert_eq!(tags.len(), CODINGS.len(), "{path}: {tags:?}");
    }
}

#[tokio::test]
async fn u02_a_reader_who_holds_these_bytes_gets_none() {
    let server = Server::start().await;
    for path in PATHS {
        let mut tags = Vec::new();
        for coding in CODINGS {
            tags.push(get(&server.router, path, coding).await.tag());
        }
        for (coding, own) in CODINGS.iter().zip(&tags) {
            for method in [Method::GET, Method::HEAD] {
                for held in [own.clone(), format!("W/{own}"), format!("\"x\", {own}"), "*".into()] {
                    let headers = [("accept-encoding", *coding), ("if-none-match", &held)];
                    let answer = fetch(&server.router, method.clone(), path, &headers).await;
                    assert_eq!(answer.status, StatusCode::NOT_MODIFIED, "{path} {coding} {held}");
                    assert!(answer.body.is_empty(), "{path}");
                    assert_eq!(answer.tag(), *own, "{path}");
                    assert_eq!(answer.header("cache-control"), Some("no-cache"), "{path}");
                    assert_eq!(answer.header("vary"), Some(vary(path)), "{path}");
                    assert!(answer.header("content-security-policy").is_some(), "{path}");
                    assert_eq!(answer.header("content-type"), None, "{path}");
                }
            }
            // The tag of another coding is the tag of other bytes.
            for other in tags.iter().filter(|tag| *tag != own) {
                let headers = [("accept-encoding", *coding), ("if-none-match", other)];
                let answer = fetch(&server.router, Method::GET, path, &headers).await;
                assert_eq!(answer.status, StatusCode::OK, "{path} {coding} {other}");
                assert!(!answer.body.is_empty(), "{path}");
            }
        }
    }
}

#[tokio::test]
async fn u02_a_refusal_has_no_tag_and_is_never_held() {
    let server = Server::start().await;
    for (path, status) in [("/nothing-here", 404), ("/plan?thread=nonsense", 422)] {
        let headers = [("if-none-match", "*")];
        let answer = fetch(&server.router, Method::GET, path, &headers).await;
        assert_eq!(answer.status.as_u16(), status, "{path}");
        assert_eq!(answer.header("etag"), None, "{path}");
        assert!(!answer.body.is_empty(), "{path}");
    }
}

#[tokio::test]
async fn u02_a_restart_changes_neither_tag_nor_bytes() {
    let folder = Folder::new();
    let mut runs = Vec::new();
    for _ in 0..2 {
        let app = open(&folder, "https://club.test").await;
        let router = routes::router(app.clone());
        let mut run = Vec::new();
        for path in PATHS {
            for coding in CODINGS {
                let page = get(&router, path, coding).await;
                run.push((path, coding, page.tag(), page.body));
            }
        }
        app.database.close().await;
        runs.push(run);
    }
    assert!(runs[0] == runs[1]);
}

#[tokio::test]
async fn u02_a_changed_row_changes_the_tag_of_every_coding() {
    let server = Server::start().await;
    let mut before = Vec::new();
    for coding in CODINGS {
        before.push(get(&server.router, "/threads/ba/5", coding).await.tag());
    }
    let [_, writer] = server.app.database.pools();
    sqlx::query("UPDATE reference_entry SET digest = ? WHERE id = 'threads/ba/5'")
        .bind("0".repeat(64))
        .execute(writer)
        .await
        .unwrap();
    server.app.shown.changed();
    for (coding, before) in CODINGS.iter().zip(&before) {
        let headers = [("accept-encoding", *coding), ("if-none-match", before)];
        let after = fetch(&server.router, Method::GET, "/threads/ba/5", &headers).await;
        assert_eq!(after.status, StatusCode::OK, "{coding}");
        assert_ne!(after.tag(), *before, "{coding}");
    }
}
