//! S07: what ends a session, and where it shows.

use axum::http::StatusCode;

use super::club::{Club, PASSWORD, PLAIN, SECRETARY};

const NEW: &str = "nine copper kettles humming";

#[tokio::test]
async fn s07_a_new_password_needs_the_old_and_ends_every_other_session() {
    let club = Club::start().await;
    let mut here = club.join("Enid Hathersage", PLAIN).await;
    let mut there = club.browser();
    there.sign_in("Enid Hathersage", PASSWORD).await;
    assert!(there.is_in().await);

    let wrong = [("password", "not the password at all"), ("new_password", NEW)];
    let refused = here.post("/me/password", &wrong).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.body.contains("The new one was not set"), "{}", refused.body);
    assert!(there.is_in().await);

    let old = here.clone();
    let changed = here.post("/me/password", &[("password", PASSWORD), ("new_password", NEW)]).await;
    assert_eq!(changed.status, StatusCode::SEE_OTHER);
    assert!(here.is_in().await, "who changed it stays in");
    assert_ne!(here.cookie, old.cookie, "with a new session");
    assert!(!old.clone().is_in().await);
    assert!(!there.is_in().await);
    let mut again = club.browser();
    assert_eq!(
        again.sign_in("Enid Hathersage", PASSWORD).await.status,
        StatusCode::UNPROCESSABLE_ENTITY
    );
    assert_eq!(again.sign_in("Enid Hathersage", NEW).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn s07_a_stopped_member_is_out_at_the_next_request() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    assert!(member.is_in().await);
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    assert_eq!(secretary.post(&address, &[("do", "stop")]).await.status, StatusCode::SEE_OTHER);
    assert!(!member.is_in().await);
    assert_eq!(
        member.sign_in("Enid Hathersage", PASSWORD).await.status,
        StatusCode::UNPROCESSABLE_ENTITY
    );
    assert_eq!(secretary.post(&address, &[("do", "allow")]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(member.sign_in("Enid Hathersage", PASSWORD).await.status, StatusCode::SEE_OTHER);
    assert!(member.is_in().await);
}

#[tokio::test]
async fn s07_other_rights_end_the_sessions_with_the_old_ones() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let given = secretary.post(&address, &[("do", "rights"), ("secretary", "yes")]).await;
    assert_eq!(given.status, StatusCode::SEE_OTHER);
    assert!(!member.is_in().await);
    member.sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(member.get("/people").await.status, StatusCode::OK);
}

#[tokio::test]
async fn sessions_are_listed_and_ended_one_by_one_and_all_at_once() {
    let club = Club::start().await;
    let mut here = club.join("Enid Hathersage", PLAIN).await;
    let mut there = club.browser();
    let mut elsewhere = club.browser();
    there.sign_in("Enid Hathersage", PASSWORD).await;
    elsewhere.sign_in("Enid Hathersage", PASSWORD).await;
    let mut other = club.join("Percy Wainscott", PLAIN).await;
    let page = here.get("/me").await.body;
    assert_eq!(page.matches("id=\"session-").count(), 3, "{page}");
    assert_eq!(page.matches("this one").count(), 1);

    // Another member's session cannot be ended, whatever its number.
    for number in 1..=4 {
        other.post("/me", &[("end", &number.to_string())]).await;
    }
    assert!(here.is_in().await && there.is_in().await && elsewhere.is_in().await);

    here.post("/me", &[("end", "2")]).await;
    assert!(!there.is_in().await);
    assert!(here.is_in().await && elsewhere.is_in().await);
    here.post("/me", &[("end", "others")]).await;
    assert!(!elsewhere.is_in().await);
    assert!(here.is_in().await);
}

#[tokio::test]
async fn s07_ending_a_session_elsewhere_asks_for_the_password_after_a_quarter_of_an_hour() {
    const LATE: i64 = 15 * 60 + 1;
    let club = Club::start().await;
    let here = club.join("Enid Hathersage", PLAIN).await;
    let mut there = club.browser();
    there.sign_in("Enid Hathersage", PASSWORD).await;
    let late = club.later(LATE).await;
    let (mut here, mut there) = (here.at(&late), there.at(&late));
    for end in ["others", "2"] {
        let answer = here.post("/me", &[("end", end)]).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{end}");
        assert!(answer.body.contains("type=\"password\""), "{}", answer.body);
        assert!(there.is_in().await, "{end}: whoever stole a session shuts nobody out");
    }
    here.post("/prove", &[("password", PASSWORD), ("next", "/me")]).await;
    here.post("/me", &[("end", "others")]).await;
    assert!(here.is_in().await && !there.is_in().await);
}

/// To end the one at hand is to sign out, which asks for nothing.
#[tokio::test]
async fn s06_ending_the_session_at_hand_is_signing_out() {
    let club = Club::start().await;
    let here = club.join("Enid Hathersage", PLAIN).await;
    let late = club.later(15 * 60 + 1).await;
    let (mut here, mut kept) = (here.at(&late), here.at(&late));
    let page = here.get("/me").await.body;
    let (_, row) = page.split_once("<tr id=\"session-").expect("its row");
    assert!(row.contains("<form action=\"/sign-out\" method=\"post\">"), "{row}");
    let answer = here.post("/sign-out", &[]).await;
    assert_eq!((answer.status, answer.header("location")), (StatusCode::SEE_OTHER, "/sign-in"));
    assert_eq!(here.cookie, None);
    assert!(!kept.is_in().await, "the old cookie is worth nothing");
}

#[tokio::test]
async fn a_session_ends_unused_after_a_fortnight_and_in_any_case_after_a_month() {
    const DAY: i64 = 24 * 60 * 60;
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    assert!(browser.is_in().await);
    assert!(browser.at(&club.later(13 * DAY).await).is_in().await, "used after thirteen days");
    assert!(browser.at(&club.later(26 * DAY).await).is_in().await, "and after thirteen more");
    assert!(!browser.at(&club.later(31 * DAY).await).is_in().await, "a month is the most");

    let mut idle = club.browser();
    idle.sign_in("Enid Hathersage", PASSWORD).await;
    assert!(!idle.at(&club.later(15 * DAY).await).is_in().await, "a fortnight unused");
}

#[tokio::test]
async fn what_is_over_is_forgotten_and_nothing_else() {
    use holewright_server::db;

    const DAY: i64 = 24 * 60 * 60;
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    club.slip(PLAIN).await;
    let (database, now) = (&club.app.database, club.app.clock.now());
    let sessions = "SELECT COUNT(*) FROM session";
    let slips = "SELECT COUNT(*) FROM slip";
    db::sessions::forget_old(database, now + 13 * DAY).await.unwrap();
    db::slips::forget_old(database, now + 43 * DAY).await.unwrap();
    assert_eq!((club.count(sessions).await, club.count(slips).await), (1, 2));
    assert!(browser.is_in().await);
    db::sessions::forget_old(database, now + 14 * DAY).await.unwrap();
    db::slips::forget_old(database, now + 45 * DAY).await.unwrap();
    assert_eq!((club.count(sessions).await, club.count(slips).await), (0, 0));
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);
}

#[tokio::test]
async fn s07_a_member_has_so_many_sessions_and_the_oldest_ends() {
    const MOST: usize = 20;
    let club = Club::start().await;
    let mut other = club.join("Una Secretary", SECRETARY).await;
    let mut browsers = vec![club.join("Enid Hathersage", PLAIN).await];
    for _ in 0..MOST + 2 {
        let mut browser = club.browser();
        browser.sign_in("Enid Hathersage", PASSWORD).await;
        browsers.push(browser);
    }
    let mut stand = Vec::new();
    for browser in &mut browsers {
        stand.push(browser.is_in().await);
    }
    let expected: Vec<bool> = (0..MOST + 3).map(|place| place >= 3).collect();
    assert_eq!(stand, expected);
    assert!(other.is_in().await, "another member's are their own");
    assert_eq!(club.count("SELECT count(*) FROM session").await, 21);
}
