//! S41: a page is the same whoever reads it, and a member's own is kept by nobody.

use axum::http::StatusCode;

use super::club::{Club, SECRETARY};
use crate::kinds::{Kind, kinds};
use crate::open::OPEN;

#[tokio::test]
async fn s41_a_reference_page_is_the_same_whoever_reads_it() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let mut stranger = club.browser();
    let files = ["/threads/ba/5.json", "/threads.csv", "/search?q=brass"];
    let files = files.map(|address| Kind { status: 200, address: address.into() });
    // The notes say who is signed in.
    let open = OPEN.iter().filter(|kind| !kind.address.starts_with("/notes"));
    for Kind { status, address: path } in kinds().iter().chain(&files).chain(open) {
        let (hers, theirs) = (secretary.get(path).await, stranger.get(path).await);
        assert_eq!((hers.status.as_u16(), theirs.status.as_u16()), (*status, *status), "{path}");
        assert_eq!(hers.body, theirs.body, "{path}");
        assert!(!hers.body.contains("Una Secretary"), "{path}");
        let named = |answer: &crate::support::Answer| {
            let mut named: Vec<String> = answer
                .headers
                .iter()
                .filter(|(name, _)| *name != "x-request-id")
                .map(|(name, value)| format!("{name}: {value:?}"))
                .collect();
            named.sort();
            named
        };
        assert_eq!(named(&hers), named(&theirs), "{path}");
        assert!(hers.headers.get("set-cookie").is_none(), "{path}");
    }
}

#[tokio::test]
async fn s41_a_members_pages_are_kept_by_nobody() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    for path in [
        "/me",
        "/me/password",
        "/me/second-factor",
        "/me/leave",
        "/me/data.json",
        "/people",
        "/people/1",
        "/people/invite",
        "/people/sheet",
        "/people/club",
        "/people/acts",
        "/prove",
    ] {
        let answer = secretary.get(path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        assert_eq!(answer.header("cache-control"), "private, no-store", "{path}");
        assert!(answer.headers.get("etag").is_none(), "{path}");
        let stranger = club.browser().get(path).await;
        assert!(!stranger.body.contains("Una Secretary"), "{path}");
        assert!(stranger.header("cache-control").contains("no-store"), "{path}");
    }
}
