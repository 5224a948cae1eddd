//! U01: static files at addresses that name their content.

use std::collections::BTreeSet;
use std::sync::Arc;

use axum::http::{Method, StatusCode};
use holewright_pages::assets;
use holewright_server::front::bytes::Coding;

use super::fetched::{fetch, get};
use crate::support::Server;

/// Each file's address, and its text.
fn files() -> [(&'static str, &'static str); 2] {
    [
        (assets::style_sheet(), include_str!("../../../static/holewright.css")),
        (assets::icon(), include_str!("../../../static/holewright.svg")),
    ]
}

#[tokio::test]
async fn u01_a_hashed_file_may_be_kept_for_ever_in_each_coding() {
    let server = Server::start().await;
    for (path, text) in files() {
        let mut tags = BTreeSet::new();
        for coding in ["identity", "gzip", "zstd", "br"] {
            let file = get(&server.router, path, coding).await;
            let named = Some(coding).filter(|coding| *coding != "identity");
            assert_eq!(file.status, StatusCode::OK);
            assert_eq!(file.header("content-encoding"), named, "{path}");
            assert_eq!(file.header("cache-control"), Some("public, max-age=31536000, immutable"));
            assert_eq!(file.header("vary"), Some("Accept-Encoding"));
            assert!(file.header("content-type").unwrap().ends_with("; charset=utf-8"));
            assert_eq!(file.text(), text, "{path} {coding}");
            assert!(named.is_none() || file.body.len() < text.len(), "{path} {coding}");
            let tag = file.tag();
            assert!(tag.starts_with('"'), "strong: {tag}");

            let again = [("accept-encoding", coding), ("if-none-match", tag.as_str())];
            let again = fetch(&server.router, Method::GET, path, &again).await;
            assert_eq!(again.status, StatusCode::NOT_MODIFIED);
            tags.insert(tag);
        }
        assert_eq!(tags.len(), 4, "{tags:?}");
    }
}

#[tokio::test]
async fn u01_a_file_is_coded_once_and_kept() {
    let server = Server::start().await;
    for (path, _) in files() {
        for (accepts, coding) in
            [("gzip", Coding::Gzip), ("zstd", Coding::Zstd), ("br", Coding::Brotli)]
        {
            let sent = get(&server.router, path, accepts).await;
            let kept = server.app.kept.get(path, coding).unwrap();
            get(&server.router, path, accepts).await;
            let after = server.app.kept.get(path, coding).unwrap();
            assert!(Arc::ptr_eq(&kept, &after), "{path} {accepts}");
            assert!(kept.weight() > sent.body.len(), "{path} {accepts}");
        }
    }
}

#[tokio::test]
async fn u01_of_codings_liked_alike_the_smallest_is_sent() {
    let server = Server::start().await;
    let sheet = assets::style_sheet();
    let mut lengths = Vec::new();
    for (accepts, coding) in [
        ("gzip", "gzip"),
        ("gzip, zstd", "zstd"),
        ("gzip, deflate, br, zstd", "br"),
        ("gzip;q=1, zstd;q=0.9, br;q=0.8", "gzip"),
        ("gzip;q=0.5, zstd;q=0.9, br;q=0.8", "zstd"),
    ] {
        let file = get(&server.router, sheet, accepts).await;
        assert_eq!(file.header("content-encoding"), Some(coding), "{accepts}");
        lengths.push(file.body.len());
    }
    let [gzip, zstd, brotli, ..] = lengths[..] else { panic!("{lengths:?}") };
    assert!(brotli < zstd && zstd < gzip, "{lengths:?}");
}

#[tokio::test]
async fn u01_an_unknown_hash_gets_the_current_file_for_now() {
    let server = Server::start().await;
    for (path, text) in files() {
        let (_, extension) = path.rsplit_once('.').unwrap();
        let old = format!("/static/holewright-0123456789abcdef.{extension}");
        let (mut tags, mut bodies) = (BTreeSet::new(), BTreeSet::new());
        for coding in ["identity", "gzip", "zstd", "br"] {
            let file = get(&server.router, &old, coding).await;
            assert_eq!(file.status, StatusCode::OK);
            assert_eq!(file.header("cache-control"), Some("no-cache"), "{old}");
            assert_eq!(file.header("vary"), Some("Accept-Encoding"), "{old}");
            assert_eq!(file.text(), text, "{old}");
            assert!(file.tag().starts_with('"'), "strong: {}", file.tag());
            tags.insert(file.tag());
            bodies.insert(file.body);
        }
        // A file of a packet or less is sent plain to everyone.
        assert_eq!(tags.len(), bodies.len(), "{old}: {tags:?}");
    }
    for unknown in ["other-0123456789abcdef.css", "holewright-0123456789abcdef.js"] {
        let answer = get(&server.router, &format!("/static/{unknown}"), "br").await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{unknown}");
    }
}
