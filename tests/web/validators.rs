//! Validators: a reader who has a page is told so, and the tag changes when the figures do.

use axum::http::{Method, StatusCode};
use holewright_server::front::routes;

use crate::support::{Folder, Server, ask, open};

const THREAD: &str = "/threads/ba/5";

#[tokio::test]
async fn a_held_page_is_not_sent_again() {
    let server = Server::start().await;
    for path in [THREAD, "/drills/metric/2.65", "/materials/gunmetal", "/", "/threads"] {
        let page = server.get(path).await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        let tag = page.header("etag").to_owned();
        assert!(tag.starts_with('"') && tag.ends_with('"') && tag.len() == 34, "{path}: {tag}");

        let again = server.ask(Method::GET, path, &[("if-none-match", &tag)]).await;
        assert_eq!(again.status, StatusCode::NOT_MODIFIED, "{path}");
        assert_eq!(again.header("etag"), tag);
        assert_eq!(again.body, "");

        let among = format!("\"other\", W/{tag}");
        let again = server.ask(Method::GET, path, &[("if-none-match", &among)]).await;
        assert_eq!(again.status, StatusCode::NOT_MODIFIED, "{path}");
        let other = server.ask(Method::GET, path, &[("if-none-match", "\"other\"")]).await;
        assert_eq!(other.status, StatusCode::OK, "{path}");
    }
}

#[tokio::test]
async fn the_tag_outlives_a_restart_but_not_a_move() {
    let folder = Folder::new();
    let mut tags = Vec::new();
    for base_url in ["https://club.test", "https://club.test", "https://elsewhere.test"] {
        let app = open(&folder, base_url).await;
        let page = ask(&routes::router(app.clone()), Method::GET, THREAD, &[]).await;
        tags.push(page.header("etag").to_owned());
        app.database.close().await;
    }
    assert_eq!(tags[0], tags[1]);
    assert_ne!(tags[1], tags[2], "the page names its own address");
}

#[tokio::test]
async fn pages_answer_while_the_database_does_not() {
    let server = Server::start().await;
    server.app.database.close().await;
    let page = server.get(THREAD).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.header("etag").starts_with('"'));
    assert_eq!(server.get("/healthz").await.status, StatusCode::OK);
    let ready = server.get("/readyz").await;
    assert_eq!(ready.status, StatusCode::SERVICE_UNAVAILABLE);
    assert_eq!(ready.header("retry-after"), "5");
}

#[tokio::test]
async fn head_has_the_headers_of_get() {
    let server = Server::start().await;
    for path in [THREAD, "/healthz", "/api/v1/threads/ba/5", "/nothing-here"] {
        let get = server.get(path).await;
        let head = server.ask(Method::HEAD, path, &[]).await;
        assert_eq!(head.status, get.status, "{path}");
        assert_eq!(head.body, "", "{path}");
        assert_eq!(head.headers.get("etag"), get.headers.get("etag"), "{path}");
        assert_eq!(head.header("content-type"), get.header("content-type"), "{path}");
    }
}
