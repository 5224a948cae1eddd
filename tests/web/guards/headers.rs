//! S01: the security headers stand on every answer, whatever its status.

use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::http::Method;
use axum::routing::get;
use holewright_pages::assets;
use holewright_server::{Error, front::routes};

use super::binary::{self, Running};
use crate::support::{Server, ask};

/// The policy, written out a second time: a slip in the one is seen in the other.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; \
    connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; \
    base-uri 'none'; object-src 'none'; frame-ancestors 'none'";

/// `header` looks a header up in an answer.
#[track_caller]
fn check<'a>(path: &str, header: impl Fn(&str) -> Option<&'a str>) {
    let shared = path.starts_with("/api/v1") || path.ends_with(".svg");
    for (name, wanted) in [
        ("content-security-policy", POLICY),
        ("x-content-type-options", "nosniff"),
        ("referrer-policy", "same-origin"),
        (
            "permissions-policy",
            "camera=(), geolocation=(), microphone=(), payment=(), usb=(), \
             screen-wake-lock=(self), clipboard-write=(self)",
        ),
        ("cross-origin-opener-policy", "same-origin"),
        ("cross-origin-resource-policy", if shared { "cross-origin" } else { "same-origin" }),
    ] {
        assert_eq!(header(name), Some(wanted), "{path}: {name}");
    }
    for name in ["server", "x-powered-by", "set-cookie"] {
        assert_eq!(header(name), None, "{path}: {name}");
    }
}

#[tokio::test]
async fn s01_security_headers_stand_on_every_status() {
    let server = Server::start().await;
    let unavailable = async || Error::Unavailable(sqlx::Error::PoolTimedOut.into());
    let refusals = Router::new()
        .route("/failed", get(async || Error::Internal("x".into())))
        .route("/panicked", get(async || -> Error { panic!("x") }))
        .route("/api/v1/failed", get(async || Error::Internal("x".into())))
        .route("/limited", get(async || Error::TooMany { wait: Duration::ZERO }))
        .route("/unavailable", get(unavailable));
    let refusals = routes::layered(refusals, Arc::clone(&server.app));

    let tag = server.get("/threads/ba/5").await.header("etag").to_owned();
    let held = [("if-none-match", tag.as_str())];
    let none = &[][..];
    for (method, path, headers, status) in [
        (Method::GET, "/", none, 200),
        (Method::HEAD, "/", none, 200),
        (Method::GET, "/threads/ba/5", none, 200),
        (Method::GET, "/healthz", none, 200),
        (Method::GET, "/api/v1/threads", none, 200),
        (Method::GET, assets::style_sheet(), none, 200),
        (Method::GET, assets::icon(), none, 200),
        (Method::GET, "/Threads/BA/5", none, 301),
        (Method::GET, "/search?q=5BA", none, 303),
        (Method::GET, "/threads/ba/5", &held, 304),
        (Method::GET, "/nothing-here", none, 404),
        (Method::GET, "/static/nothing-here.css", none, 404),
        (Method::GET, "/api/v1/nothing-here", none, 404),
        (Method::POST, "/", none, 405),
        (Method::TRACE, "/threads/ba/5", none, 405),
        (Method::PUT, "/api/v1/threads", none, 405),
        (Method::GET, "/plan?thread=x&material=x", none, 422),
        (Method::GET, "/api/v1/plan?thread=x", none, 422),
    ] {
        let answer = server.ask(method, path, headers).await;
        assert_eq!(answer.status.as_u16(), status, "{path}");
        check(path, |name| answer.headers.get(name).map(|value| value.to_str().unwrap()));
        let transport = answer.header("strict-transport-security");
        assert_eq!(transport, "max-age=31536000; includeSubDomains", "{path}");
    }
    for (path, status) in [
        ("/failed", 500),
        ("/panicked", 500),
        ("/api/v1/failed", 500),
        ("/limited", 429),
        ("/unavailable", 503),
    ] {
        let answer = ask(&refusals, Method::GET, path, &[]).await;
        assert_eq!(answer.status.as_u16(), status, "{path}");
        check(path, |name| answer.headers.get(name).map(|value| value.to_str().unwrap()));
    }
}

#[test]
fn s01_security_headers_stand_on_a_body_too_large() {
    let server = Running::start(&[]);
    let huge = [
        b"POST /plan HTTP/1.1\r\nHost: x\r\nContent-Length: 20000000\r\n\r\n".to_vec(),
        vec![b'x'; 65_536],
    ];
    let answer = binary::send(server.address, &huge.concat());
    // No address takes a body: the method is refused before the body is looked at, or the body is.
    assert!([405, 413].contains(&binary::status(&answer)), "{answer}");
    check("/plan", |name| binary::header(&answer, name));
}
