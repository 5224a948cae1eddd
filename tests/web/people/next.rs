//! S33: where a sign-in leads.

use axum::http::StatusCode;
use holewright_server::web::next::Next;

use super::club::{Club, PASSWORD, PLAIN};

/// Addresses that are none of this site's, or lead in a circle.
const FOREIGN: &[&str] = &[
    "//evil.example",
    "///evil.example",
    "/\\evil.example",
    "\\\\evil.example",
    "https:evil.example",
    "https://evil.example/me",
    "javascript:alert(1)",
    "evil.example",
    "/me\r\nSet-Cookie: a=b",
    "/me\nx",
    "/\t/evil.example",
    "/ /evil.example",
    " //evil.example",
    "/me\u{0}",
    "/caf\u{e9}",
    "",
    "/sign-in",
    "/sign-in?next=/me",
    "/sign-out",
    "/prove?next=//evil.example",
];

#[tokio::test]
async fn s33_a_sign_in_leads_nowhere_but_here() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    for next in FOREIGN {
        let fields = [("name", "Enid Hathersage"), ("password", PASSWORD), ("next", next)];
        let answer = club.browser().post("/sign-in", &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{next:?}");
        assert_eq!(answer.header("location"), "/me", "{next:?}");
        let coded: String = form_urlencoded::byte_serialize(next.as_bytes()).collect();
        let form = club.browser().get(&format!("/sign-in?next={coded}")).await;
        assert!(form.body.contains("name=\"next\" value=\"/me\""), "{next:?}: {}", form.body);
        let mut member = club.browser();
        member.sign_in("Enid Hathersage", PASSWORD).await;
        let proved = member.post("/prove", &[("password", PASSWORD), ("next", next)]).await;
        assert_eq!(proved.header("location"), "/me", "{next:?}");
    }
}

#[tokio::test]
async fn s33_it_leads_back_to_the_page_one_came_for() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let mut browser = club.browser();
    let sent = browser.get("/me/password?from=here&q=a%20b").await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER);
    let door = sent.header("location").to_owned();
    assert_eq!(door, "/sign-in?next=%2Fme%2Fpassword%3Ffrom%3Dhere%26q%3Da%2520b");
    let form = browser.get(&door).await.body;
    assert!(form.contains("name=\"next\" value=\"/me/password?from=here&#38;q=a%20b\""), "{form}");
    for local in ["/me/password?from=here&q=a%20b", "/threads/ba/5#drill", "/plan?next=//x.example"]
    {
        let fields = [("name", "Enid Hathersage"), ("password", PASSWORD), ("next", local)];
        let answer = club.browser().post("/sign-in", &fields).await;
        assert_eq!(answer.header("location"), local);
    }
    assert_eq!(Next::read("/sign-invitations").address(), "/sign-invitations");
}
