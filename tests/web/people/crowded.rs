//! Strangers who hold all the memory that they can get with forms that never end shut nobody out: members
//! have a part of their own, and a short form of another address finds room.

use std::pin::Pin;
use std::task::{Context, Poll};

use axum::body::{Body, Bytes, HttpBody};
use axum::http::header::CONTENT_TYPE;
use axum::http::{Request, StatusCode};
use holewright_server::extract::client::Peer;
use hyper::body::{Frame, SizeHint};
use tokio::task::JoinHandle;
use tower::ServiceExt;

use super::club::{Browser, Club, PLAIN};

/// A body that says how long it is, and never comes.
struct Declared(u64);

impl HttpBody for Declared {
    type Data = Bytes;
    type Error = std::io::Error;

    fn poll_frame(
        self: Pin<&mut Self>,
        _: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, std::io::Error>>> {
        Poll::Pending
    }

    fn size_hint(&self) -> SizeHint {
        SizeHint::with_exact(self.0)
    }
}

/// The status of what is told at once to the first that finds no room.
fn hold(club: &Club, from: &str, length: u64) -> JoinHandle<StatusCode> {
    let mut request = Request::post("/notes/new")
        .header("host", "club.test")
        .header("sec-fetch-site", "same-origin")
        .header(CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::new(Declared(length)))
        .unwrap();
    request
        .extensions_mut()
        .insert(Peer((from.parse::<std::net::IpAddr>().unwrap(), 50_000).into()));
    let router = club.router.clone();
    tokio::spawn(async move { router.oneshot(request).await.unwrap().status() })
}

/// A note with so much text.
async fn write(browser: &mut Browser, length: usize) -> StatusCode {
    let text = "It cut clean. ".repeat(length / 14);
    let key = "a key of this form alone".replace(' ', "-");
    let fields = [("title", "Tapping"), ("text", &*text), ("on", "gunmetal"), ("form_key", &*key)];
    browser.post("/notes/new", &fields).await.status
}

#[tokio::test]
async fn f20_strangers_with_endless_forms_shut_nobody_out() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await.from("198.51.100.7");
    let mut held = Vec::new();
    for number in 0..12 {
        // Long ones first, then whatever still fits.
        for length in [200_000, 200_000, 200_000, 90_000, 90_000, 16_000, 16_000, 9_000] {
            held.push(hold(&club, &format!("192.0.2.{number}"), length));
        }
    }
    for _ in 0..100 {
        tokio::task::yield_now().await;
    }
    let refused = held.iter().filter(|held| held.is_finished()).count();
    assert!((12..=80).contains(&refused), "{refused} of {} found no room", held.len());
    // From the very address of one of them, too.
    for from in ["198.51.100.7", "192.0.2.3"] {
        assert_eq!(write(&mut member.from(from), 9_000).await, StatusCode::SEE_OTHER, "{from}");
    }
    let long = write(&mut member, 19_000).await;
    assert_eq!(long, StatusCode::SEE_OTHER, "the longest note");
    // Somebody whose session is over gets back what they wrote.
    let mut stranger = club.browser().from("198.51.100.8");
    assert_eq!(write(&mut stranger, 12_000).await, StatusCode::UNAUTHORIZED);
    assert_eq!(write(&mut stranger, 19_000).await, StatusCode::SERVICE_UNAVAILABLE, "no room");
    for held in &held {
        held.abort();
    }
    for held in held {
        let _ = held.await;
    }
    assert_eq!(write(&mut stranger, 19_000).await, StatusCode::UNAUTHORIZED, "all is given back");
    member.cookie = None;
    assert_eq!(write(&mut member, 9_000).await, StatusCode::UNAUTHORIZED);
}
