//! What is refused, and the headers that stand on every answer.

use std::sync::Arc;

use axum::Router;
use axum::http::{Method, StatusCode};
use axum::routing::get;
use holewright_server::front::middleware::security_headers::POLICY;
use holewright_server::{Error, front::routes};

use crate::support::{Answer, Server, ask};

#[track_caller]
fn check_headers(answer: &Answer, place: &str) {
    assert_eq!(answer.header("content-security-policy"), POLICY, "{place}");
    assert_eq!(answer.header("x-content-type-options"), "nosniff", "{place}");
    assert_eq!(answer.header("referrer-policy"), "same-origin", "{place}");
    assert!(answer.header("permissions-policy").contains("camera=()"), "{place}");
    assert_eq!(answer.header("cross-origin-opener-policy"), "same-origin", "{place}");
    assert!(answer.header("strict-transport-security").starts_with("max-age=31536000"), "{place}");
    assert!(!answer.headers.contains_key("server"), "{place}");
    assert_eq!(answer.header("x-request-id").len(), 16, "{place}");
    let shared = place.starts_with("/api/v1") || place.ends_with(".svg");
    let resource_policy = if shared { "cross-origin" } else { "same-origin" };
    assert_eq!(answer.header("cross-origin-resource-policy"), resource_policy, "{place}");
}

#[test]
fn the_policy_is_the_one_agreed() {
    assert_eq!(
        POLICY,
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
         manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; \
         object-src 'none'; frame-ancestors 'none'"
    );
}

#[tokio::test]
async fn security_headers_stand_on_every_status() {
    let server = Server::start().await;
    let tag = server.get("/threads").await.header("etag").to_owned();
    let held = [("if-none-match", tag.as_str())];
    for (method, path, headers, status) in [
        (Method::GET, "/", &[][..], 200),
        (Method::GET, "/healthz", &[], 200),
        (Method::GET, "/threads", &held[..], 304),
        (Method::GET, "/nothing-here", &[], 404),
        (Method::GET, "/api/v1/nothing-here", &[], 404),
        (Method::POST, "/", &[], 405),
        (Method::DELETE, "/readyz", &[], 405),
        (Method::TRACE, "/threads/ba/5", &[], 405),
        (Method::PUT, "/api/v1/threads", &[], 405),
    ] {
        let answer = server.ask(method, path, headers).await;
        assert_eq!(answer.status.as_u16(), status, "{path}");
        check_headers(&answer, path);
    }
}

#[tokio::test]
async fn other_methods_are_told_which_are_allowed() {
    let server = Server::start().await;
    for method in [Method::POST, Method::PUT, Method::DELETE, Method::PATCH, Method::TRACE] {
        for path in ["/", "/threads/ba/5", "/plan", "/healthz", "/api/v1/threads"] {
            let answer = server.ask(method.clone(), path, &[]).await;
            assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED, "{method} {path}");
            assert_eq!(answer.header("allow"), "GET,HEAD", "{method} {path}");
        }
    }
}

#[tokio::test]
async fn programs_get_problem_details() {
    let server = Server::start().await;
    let answer = server.get("/api/v1/nothing-here").await;
    assert_eq!(answer.header("content-type"), "application/problem+json");
    assert_eq!(answer.header("access-control-allow-origin"), "*");
    let problem = answer.json();
    assert_eq!(problem["status"], 404);
    assert_eq!(problem["title"], "Not Found");
    assert_eq!(problem["instance"], "/api/v1/nothing-here");
    assert_eq!(problem["request_id"], answer.header("x-request-id"));
}

async fn panics() -> &'static str {
    panic!("secret: /etc/shadow")
}

async fn fails() -> Error {
    Error::Internal("SELECT secret FROM /var/lib".into())
}

#[tokio::test]
async fn our_own_faults_leak_nothing_and_do_not_end_the_process() {
    let server = Server::start().await;
    let faulty = Router::new()
        .route("/panics", get(panics))
        .route("/fails", get(fails))
        .route("/api/v1/panics", get(panics));
    let router = routes::layered(faulty, Arc::clone(&server.app));
    for path in ["/panics", "/fails", "/api/v1/panics", "/panics"] {
        let answer = ask(&router, Method::GET, path, &[]).await;
        assert_eq!(answer.status, StatusCode::INTERNAL_SERVER_ERROR, "{path}");
        check_headers(&answer, path);
        assert!(answer.body.contains(answer.header("x-request-id")), "{path}: {}", answer.body);
        assert!(!answer.body.contains("secret"), "{path}: {}", answer.body);
        assert!(!answer.body.contains(".rs"), "{path}: {}", answer.body);
    }
}
