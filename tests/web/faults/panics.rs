//! F22: a handler that panics.

use std::convert::Infallible;
use std::pin::Pin;
use std::task::{Context, Poll};

use axum::Router;
use axum::body::{Body, Bytes, HttpBody};
use axum::routing::get as answer;
use holewright_server::front::accept::Limits;
use holewright_server::web::health;
use hyper::body::Frame;

use super::client::{get, is_whole, status};
use super::in_process::{Serving, beside, patient};

async fn panics() -> &'static str {
    panic!("a test panics")
}

/// A body that panics once it is asked for.
struct Panics;

impl HttpBody for Panics {
    type Data = Bytes;
    type Error = Infallible;

    fn poll_frame(
        self: Pin<&mut Self>,
        _: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, Infallible>>> {
        panic!("a test panics in a body")
    }
}

/// One slot alone: a panic that kept it would leave none for the next request.
#[tokio::test(flavor = "multi_thread")]
async fn f22_a_panic_costs_one_answer_and_no_more() {
    let table = Router::new()
        .route("/panics", answer(panics))
        .route("/body", answer(async || Body::new(Panics)))
        .route("/readyz", answer(health::ready));
    let serving = Serving::with(Limits { connections: 1, ..patient() }, table).await;
    let address = serving.address;
    for _ in 0..3 {
        let answer = beside(move || get(address, "/panics")).await;
        assert_eq!(status(&answer), 500, "{answer}");
        assert!(is_whole(&answer) && answer.contains("content-security-policy"), "{answer}");
        assert!(!answer.contains("a test panics"), "{answer}");
        beside(move || get(address, "/body")).await;
        assert_eq!(status(&beside(move || get(address, "/readyz")).await), 200);
    }
}
