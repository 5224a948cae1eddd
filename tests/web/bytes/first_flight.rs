//! The first flight: a thread page with its headers arrives before the first acknowledgement.

#![expect(clippy::print_stdout, reason = "the largest page is part of what the run reports")]

use std::collections::BTreeSet;

use axum::http::StatusCode;
use holewright_core::tables::threads;
use holewright_pages::assets;

use super::fetched::{Fetched, get};
use crate::support::Server;

/// Ten packets of 1,460 bytes (RFC 6928), less some room.
const BAR: usize = 13_000;

#[tokio::test]
async fn every_thread_page_fits_with_its_headers() {
    let server = Server::start().await;
    let mut sizes = BTreeSet::new();
    for thread in threads::all() {
        let path = thread.path();
        let page = get(&server.router, &path, "gzip, br").await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        assert_eq!(page.header("content-encoding"), Some("br"), "{path}");
        sizes.insert((head_length(&page) + page.body.len(), page.body.len(), path));
    }
    assert!(sizes.len() > 400, "{}", sizes.len());
    let (largest, body, path) = sizes.last().unwrap();
    println!(
        "{} thread pages; the largest is {path}: {largest} bytes, {body} of them body",
        sizes.len()
    );
    println!("kept: {} bytes", server.app.kept.weight());
    assert!(*largest <= BAR, "{path}: {largest} bytes");
}

#[tokio::test]
async fn the_style_sheet_is_small() {
    let server = Server::start().await;
    let sheet = get(&server.router, assets::style_sheet(), "br").await;
    println!("style sheet: {} bytes in brotli", sheet.body.len());
    assert!(sheet.body.len() <= 8_000, "{}", sheet.body.len());
}

/// As written on the wire, with the date that the socket adds.
fn head_length(page: &Fetched) -> usize {
    let lines = page.headers.iter().map(|(name, value)| name.as_str().len() + value.len() + 4);
    "HTTP/1.1 200 OK\r\n".len()
        + "date: Tue, 24 Nov 2026 00:00:00 GMT\r\n".len()
        + lines.sum::<usize>()
        + 2
}
