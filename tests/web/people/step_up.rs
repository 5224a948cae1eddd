//! S07, S11, S23: giving proof once more asks for all that a member has, leaves no old token good, and
//! cannot be hindered by strangers who guess at the name.

use axum::http::StatusCode;

use super::club::{Club, PASSWORD, PLAIN, SECRETARY};
use super::second_factor::set_up;
use crate::support::NOW;

#[tokio::test]
async fn s07_a_new_password_and_a_leave_ask_for_the_code_too() {
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    let secret = set_up(&mut browser, NOW).await;
    let later = club.later(3600).await;
    let mut browser = browser.at(&later);
    let code = secret.code_at(NOW + 3600).unwrap();
    for (code, status) in [("", 422), ("000000", 422), (code.as_str(), 303)] {
        let before = browser.cookie.clone();
        let fields = [("password", PASSWORD), ("new_password", PASSWORD), ("code", code)];
        let answer = browser.post("/me/password", &fields).await;
        assert_eq!(answer.status, status, "{code}: {}", answer.body);
        assert_eq!(before == browser.cookie, status == 422, "{code}");
        // The password alone does not disarm the factor.
        let page = browser.get("/me/second-factor").await;
        assert_eq!(page.status == StatusCode::OK, status == 303, "{code}");
    }
    for path in ["/me/password", "/me/leave"] {
        assert!(browser.get(path).await.body.contains("name=\"code\""), "{path}");
    }
    let fields = [("password", PASSWORD), ("notes", "keep")];
    assert_eq!(browser.post("/me/leave", &fields).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(browser.is_in().await);
    let mut plain = club.join("Percy Wainscott", PLAIN).await;
    assert!(!plain.get("/me/password").await.body.contains("name=\"code\""), "has none");
}

#[tokio::test]
async fn s07_proof_and_a_new_factor_each_give_a_new_token() {
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    let steps = [("proof", "/prove"), ("a new factor", "/me/second-factor"), ("none", "drop")];
    let mut secret = None;
    for (what, step) in steps {
        let mut old = browser.clone();
        match step {
            "/prove" => {
                let answer = browser.post("/prove", &[("password", PASSWORD)]).await;
                assert_eq!(answer.status, StatusCode::SEE_OTHER);
            }
            "drop" => {
                let answer = browser.post("/me/second-factor", &[("do", "drop")]).await;
                assert_eq!(answer.status, StatusCode::SEE_OTHER);
            }
            _ => secret = Some(set_up(&mut browser, NOW).await),
        }
        assert_ne!(old.cookie, browser.cookie, "{what}");
        assert!(!old.is_in().await, "{what}: the old token is worth nothing");
        assert!(browser.is_in().await, "{what}");
    }
    assert!(secret.is_some());
    assert_eq!(club.count("SELECT COUNT(*) FROM session").await, 1, "no session is added");
}

#[tokio::test]
async fn s23_the_last_secretary_does_not_drop_her_factor_by_herself() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    set_up(&mut una, NOW).await;
    let own = format!("/people/{}", club.number_of("Una Secretary").await);
    let has_factor = "SELECT COUNT(*) FROM member WHERE totp_secret IS NOT NULL";
    let mine = una.post("/me/second-factor", &[("do", "drop")]).await;
    let theirs = una.post(&own, &[("do", "drop-second-factor")]).await;
    assert_eq!(club.count(has_factor).await, 1);
    for answer in [mine, theirs] {
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
        assert!(answer.body.contains("another secretary"), "{}", answer.body);
    }
    // A second one takes it away; nobody does so to themselves at that page.
    let mut olive = club.join("Olive Second", SECRETARY).await;
    assert_eq!(una.post(&own, &[("do", "drop-second-factor")]).await.status, StatusCode::FORBIDDEN);
    assert_eq!(
        olive.post(&own, &[("do", "drop-second-factor")]).await.status,
        StatusCode::SEE_OTHER
    );
    assert_eq!(club.count(has_factor).await, 0);
}

#[tokio::test]
async fn s11_guesses_at_a_name_shut_out_nobody_who_is_signed_in() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await.from("192.0.2.200");
    for number in 0..50 {
        let mut thief = club.browser().from(&format!("192.0.2.{number}"));
        thief.sign_in("Enid Hathersage", "wrong words entirely mine").await;
    }
    // From the very address of the thief, too.
    let mut thief = club.browser().from("192.0.2.200");
    for _ in 0..12 {
        thief.sign_in("Stray Name", "wrong words entirely mine").await;
    }
    let proved = enid.post("/prove", &[("password", PASSWORD)]).await;
    assert_eq!(proved.status, StatusCode::SEE_OTHER, "{}", proved.body);
    // Her proof opens nothing to those who guess.
    let mut thief = club.browser().from("192.0.2.77");
    let guess = thief.sign_in("Enid Hathersage", "wrong words entirely mine").await;
    assert_eq!(guess.status, StatusCode::TOO_MANY_REQUESTS);
    let fields = [("password", PASSWORD), ("new_password", "nine copper herons wading")];
    assert_eq!(enid.post("/me/password", &fields).await.status, StatusCode::SEE_OTHER);
    let fields = [("password", "nine copper herons wading"), ("notes", "keep")];
    assert_eq!(enid.post("/me/leave", &fields).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn s11_guesses_of_a_stolen_session_leave_its_owners_other_alone() {
    let club = Club::start().await;
    let mut stolen = club.join("Enid Hathersage", PLAIN).await;
    let mut own = club.browser();
    own.sign_in("Enid Hathersage", PASSWORD).await;
    for _ in 0..20 {
        stolen.post("/prove", &[("password", "wrong words entirely mine")]).await;
    }
    let guess = stolen.post("/prove", &[("password", "wrong words entirely mine")]).await;
    assert_eq!(guess.status, StatusCode::TOO_MANY_REQUESTS);
    let proved = own.post("/prove", &[("password", PASSWORD)]).await;
    assert_eq!(proved.status, StatusCode::SEE_OTHER, "{}", proved.body);
    own.post("/me", &[("end", "others")]).await;
    assert!(own.is_in().await && !stolen.is_in().await);
}

#[tokio::test]
async fn s11_guesses_of_a_session_wait_and_do_not_shut_the_door() {
    let club = Club::start().await;
    let mut taken = club.join("Enid Hathersage", PLAIN).await;
    let mut told = Vec::new();
    for number in 0..30 {
        // Moving about does not help.
        let mut here = taken.from(&format!("192.0.2.{number}"));
        let answer = here.post("/prove", &[("password", "wrong words entirely mine")]).await;
        told.push(answer.status.as_u16());
    }
    let tried = told.iter().filter(|status| **status == 422).count();
    assert!((9..=13).contains(&tried), "{told:?}");
    assert_eq!(*told.last().unwrap(), 429);
    assert_eq!(taken.post("/prove", &[("password", PASSWORD)]).await.status.as_u16(), 429);
    let mut phone = club.browser();
    assert_eq!(phone.sign_in("Enid Hathersage", PASSWORD).await.header("location"), "/me");
}
