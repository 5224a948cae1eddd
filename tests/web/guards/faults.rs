//! S36: a fault of ours tells the reader a number, and the log what happened under that number.

use std::sync::Arc;

use axum::Router;
use axum::http::Method;
use axum::routing::get;
use holewright_server::{Error, front::routes};
use sqlx::SqlitePool;

use super::binary::{self, Running};
use crate::html;
use crate::support::{Server, ask};

/// What belongs in the log only.
const INTERNAL: [&str; 9] =
    ["write_probe", "no such table", "SELECT", "sqlx", "SQL", ".rs", "/data", "panic", "stack"];

#[test]
fn s36_the_page_has_a_number_and_the_log_has_the_rest() {
    let server = Running::start(&[]);
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let database = format!("sqlite://{}", server.database().display());
        let pool = SqlitePool::connect(&database).await.unwrap();
        sqlx::query("DROP TABLE write_probe").execute(&pool).await.unwrap();
        pool.close().await;
    });

    let answer = binary::get(server.address, "/readyz", "");
    assert_eq!(binary::status(&answer), 503, "{answer}");
    let id = binary::header(&answer, "x-request-id").unwrap().to_owned();
    let (_, body) = answer.split_once("\r\n\r\n").unwrap();
    let words = html::read(body).text;
    assert!(words.contains(&format!("The number of this request is {id}.")), "{words}");
    for secret in INTERNAL {
        assert!(!body.contains(secret), "{secret}: {body}");
    }

    let log = server.stop();
    let under_it: Vec<_> = log.iter().filter(|line| line["span"]["id"] == id.as_str()).collect();
    let detail = under_it.iter().find(|line| line["source"].is_string());
    let detail = detail.unwrap_or_else(|| panic!("nothing under {id} in {log:#?}"));
    assert!(detail["source"].as_str().unwrap().contains("no such table"), "{detail}");
    assert!(under_it.iter().any(|line| line["status"] == 503), "{under_it:#?}");
}

#[tokio::test]
async fn s36_no_fault_says_more_than_its_number() {
    let server = Server::start().await;
    let internal = "sqlx: no such table in SELECT at /data/x.rs";
    let faulty = Router::new()
        .route("/failed", get(async move || Error::Internal(internal.into())))
        .route("/panicked", get(async move || -> Error { panic!("{internal}") }))
        .route("/api/v1/failed", get(async move || Error::Internal(internal.into())))
        .route("/api/v1/panicked", get(async move || -> Error { panic!("{internal}") }));
    let router = routes::layered(faulty, Arc::clone(&server.app));
    for path in ["/failed", "/panicked", "/api/v1/failed", "/api/v1/panicked"] {
        let answer = ask(&router, Method::GET, path, &[]).await;
        assert_eq!(answer.status.as_u16(), 500, "{path}");
        let id = answer.header("x-request-id");
        if path.starts_with("/api") {
            assert_eq!(answer.json()["request_id"], id, "{path}");
        } else {
            let words = html::read(&answer.body).text;
            assert!(words.contains(&format!("The number of this request is {id}.")), "{words}");
        }
        // The address itself, which the reader typed, may say what it likes.
        let body = answer.body.replace(path, "");
        for secret in INTERNAL {
            assert!(!body.contains(secret), "{path}: {secret}: {body}");
        }
    }
}
