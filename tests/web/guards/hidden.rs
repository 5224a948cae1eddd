//! S35: TRACE is refused, and no file lies about: none of the machine's, none of the project's.

use axum::http::{Method, StatusCode};

use super::binary::{self, Running};
use crate::support::Server;

/// What scanners look for, and ways out of the folder of static files.
const HIDDEN: [&str; 42] = [
    "/.git/config",
    "/.git/HEAD",
    "/.env",
    "/.htaccess",
    "/.well-known/../.env",
    "/backup.db",
    "/backup.sql",
    "/backup.zip",
    "/holewright.sqlite",
    "/holewright.sqlite-wal",
    "/data",
    "/data/",
    "/data/holewright.sqlite",
    "/../data/holewright.sqlite",
    "/Cargo.toml",
    "/Cargo.lock",
    "/src/main.rs",
    "/migrations/",
    "/templates/layout.html",
    "/static",
    "/static/",
    "/static/holewright.css",
    "/static/holewright-",
    "/static/../Cargo.toml",
    "/static/../../../../etc/passwd",
    "/static/holewright-../../Cargo.toml",
    "/static/holewright-../Cargo.toml.css",
    "/static/%2e%2e/Cargo.toml",
    "/static/..%2fCargo.toml",
    "/static/%2e%2e%2fCargo.toml",
    "/static/%252e%252e%252fCargo.toml",
    "/static/..%5cCargo.toml",
    "/static/..\\Cargo.toml",
    "/static/%c0%ae%c0%ae/Cargo.toml",
    "/static/....//Cargo.toml",
    "/static/..;/Cargo.toml",
    "/static/%00/../Cargo.toml",
    "/%2e%2e/%2e%2e/etc/passwd",
    "/%2egit/config",
    "/%2Eenv",
    "//etc/passwd",
    "/etc/passwd",
];

/// Signs that a file came out.
const SIGNS: [&str; 6] =
    ["[package]", "SQLite format", "root:x:", "repositoryformat", "fn main", "Index of"];

#[track_caller]
fn check_body(path: &str, body: &str) {
    for sign in SIGNS {
        assert!(!body.contains(sign), "{path}: {sign} in {body}");
    }
}

#[tokio::test]
async fn s35_no_file_can_be_fetched() {
    let server = Server::start().await;
    for path in HIDDEN.into_iter().filter(|path| !path.contains('\\')) {
        let answer = server.get(path).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        check_body(path, &answer.body);
    }
}

#[test]
fn s35_no_file_can_be_fetched_byte_for_byte() {
    let server = Running::start(&[]);
    for path in HIDDEN {
        let answer = binary::get(server.address, path, "");
        // A byte that may not stand in a target at all ends the request before us.
        let wanted: &[u16] = if path.contains('\\') { &[400, 404] } else { &[404] };
        assert!(wanted.contains(&binary::status(&answer)), "{path}: {answer}");
        check_body(path, &answer);
    }
}

#[tokio::test]
async fn s35_trace_is_refused_everywhere() {
    let server = Server::start().await;
    for path in ["/", "/threads/ba/5", "/plan", "/search", "/healthz", "/api/v1/threads", "/x"] {
        let secret = [("cookie", "secret"), ("x-secret", "secret")];
        let answer = server.ask(Method::TRACE, path, &secret).await;
        assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED, "{path}");
        assert_eq!(answer.header("allow"), "GET,HEAD", "{path}");
        assert!(!answer.body.contains("secret"), "{path}: {}", answer.body);
    }
}
