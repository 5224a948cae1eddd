//! A body that is no text is kept, tagged and answered like text, but never coded: a picture is packed
//! already.

use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use axum::Router;
use axum::body::Body;
use axum::http::{HeaderValue, Method, StatusCode};
use axum::response::Response;
use axum::routing::get;
use holewright_pages::Reply;
use holewright_server::App;
use holewright_server::front::bytes::Coding;
use holewright_server::front::routes;
use holewright_server::rules::Keep;
use holewright_server::rules::validator::Tag;

use super::fetched::{fetch, get as read};
use crate::support::Server;

static MADE: AtomicUsize = AtomicUsize::new(0);

/// As a picture begins, and then bytes that a coding would make shorter if it were let.
fn picture() -> Reply {
    let mut bytes = b"\x89PNG\r\n\x1a\n".to_vec();
    bytes.resize(9_000, 0xff);
    let headers = vec![("content-type", "image/png".to_owned())];
    Reply { status: 200, headers, body: bytes.into() }
}

async fn show() -> Response {
    MADE.fetch_add(1, Ordering::Relaxed);
    let body = picture().body.into_bytes().into_owned();
    let tag = Tag::of_bytes(&body);
    let mut response = Response::new(Body::from(body));
    response.headers_mut().insert("content-type", HeaderValue::from_static("image/png"));
    response.extensions_mut().insert(Keep);
    tag.mark(response)
}

#[tokio::test]
async fn a_picture_is_kept_once_for_every_reader_and_never_coded() {
    let server = Server::start().await;
    let table: Router<Arc<App>> = Router::new().route("/picture", get(show));
    let router = routes::layered(table, Arc::clone(&server.app));
    let expected = picture();
    let tag = Tag::of_bytes(expected.body.as_bytes()).header().unwrap();
    for accepts in ["br", "zstd", "gzip", "identity", "gzip;q=0.5, br", ""] {
        let answer = read(&router, "/picture", accepts).await;
        assert_eq!(answer.status, StatusCode::OK, "{accepts}");
        assert_eq!(answer.body, expected.body.as_bytes(), "{accepts}");
        assert_eq!(answer.header("content-encoding"), None, "{accepts}");
        assert_eq!(answer.header("content-type"), Some("image/png"), "{accepts}");
        assert_eq!(answer.header("content-length"), Some("9000"), "{accepts}");
        assert_eq!(answer.header("vary"), None, "its bytes hang on nothing: {accepts}");
        assert_eq!(answer.headers.get("etag"), Some(&tag), "{accepts}");
    }
    assert_eq!(MADE.load(Ordering::Relaxed), 1, "made once, then kept");
    let kept = &server.app.kept;
    let weight = kept.weight();
    assert!((9_000..12_000).contains(&weight), "kept once: {weight}");
    let (first, other) = (kept.get("/picture", Coding::Brotli), kept.get("/picture", Coding::Gzip));
    assert!(Arc::ptr_eq(&first.unwrap(), &other.unwrap()));

    let head = fetch(&router, Method::HEAD, "/picture", &[("accept-encoding", "br")]).await;
    assert_eq!((head.status, head.body.len()), (StatusCode::OK, 0));
    assert_eq!(head.header("content-length"), Some("9000"));
    let held = [("if-none-match", tag.to_str().unwrap()), ("accept-encoding", "br")];
    let answer = fetch(&router, Method::GET, "/picture", &held).await;
    assert_eq!((answer.status, answer.body.len()), (StatusCode::NOT_MODIFIED, 0));
    assert_eq!(answer.headers.get("etag"), Some(&tag));

    // A change elsewhere has it made again, and what was kept is found to be the same.
    kept.shown().changed();
    read(&router, "/picture", "zstd").await;
    assert_eq!(MADE.load(Ordering::Relaxed), 2);
    assert_eq!(kept.weight(), weight);
}
