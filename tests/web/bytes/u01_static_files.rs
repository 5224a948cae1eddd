//! U01: static files at addresses that name their content.

use std::collections::BTreeSet;

use axum::http::{Method, StatusCode};
use holewright::pages::assets;

use super::fetched::{fetch, get};
use crate::support::Server;

#[tokio::test]
async fn u01_a_hashed_file_may_be_kept_for_ever_in_each_coding() {
    let server = Server::start().await;
    for path in [assets::style_sheet(), assets::icon()] {
        let plain = get(&server.router, path, "identity").await;
        let mut tags = BTreeSet::new();
        for (accepts, coding) in [("identity", None), ("gzip", Some("gzip")), ("br", Some("br"))] {
            let file = get(&server.router, path, accepts).await;
            assert_eq!(file.status, StatusCode::OK);
            assert_eq!(file.header("content-encoding"), coding, "{path}");
            assert_eq!(file.header("cache-control"), Some("public, max-age=31536000, immutable"));
            assert_eq!(file.header("vary"), Some("Accept-Encoding"));
            assert!(file.header("content-type").unwrap().ends_with("; charset=utf-8"));
            assert_eq!(file.text(), plain.text());
            assert!(coding.is_none() || file.body.len() < plain.body.len(), "{path}");
            let tag = file.tag();
            assert!(tag.starts_with('"'), "strong: {tag}");

            let again = [("accept-encoding", accepts), ("if-none-match", tag.as_str())];
            let again = fetch(&server.router, Method::GET, path, &again).await;
            assert_eq!(again.status, StatusCode::NOT_MODIFIED);
            tags.insert(tag);
        }
        assert_eq!(tags.len(), 3, "{tags:?}");
    }
}

#[tokio::test]
async fn u01_an_unknown_hash_gets_the_current_file_for_now() {
    let server = Server::start().await;
    let current = get(&server.router, assets::style_sheet(), "br").await;
    let old = get(&server.router, "/static/holewright-0123456789abcdef.css", "br").await;
    assert_eq!(old.status, StatusCode::OK);
    assert_eq!(old.header("cache-control"), Some("no-cache"));
    assert_eq!(old.text(), current.text());
    let unknown = get(&server.router, "/static/other-0123456789abcdef.css", "br").await;
    assert_eq!(unknown.status, StatusCode::NOT_FOUND);
}
