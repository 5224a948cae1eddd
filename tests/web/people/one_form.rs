//! S07, U10: an act that needs the password once more is not forgotten over it: the page that asks for the
//! password holds the form, and one sending both proves and acts.

use axum::http::StatusCode;

use super::club::{Browser, Club, PASSWORD, PLAIN, SECRETARY};
use super::second_factor::set_up;
use crate::page::filled;
use crate::support::{Answer, NOW};

/// What the page would send, with the password.
fn proving(answer: &Answer, password: &str, code: &str) -> Vec<(String, String)> {
    let mut fields = filled(&answer.body);
    fields.retain(|(name, _)| name != "q" && name != "password" && name != "code");
    fields.push(("password".to_owned(), password.to_owned()));
    fields.push(("code".to_owned(), code.to_owned()));
    fields
}

async fn post(browser: &mut Browser, path: &str, fields: &[(String, String)]) -> Answer {
    let fields: Vec<_> = fields.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
    browser.post(path, &fields).await
}

/// An hour later the password is due again.
async fn later(club: &Club, browser: &Browser) -> (Club, Browser) {
    let later = club.later(3600).await;
    let browser = browser.at(&later);
    (later, browser)
}

#[tokio::test]
async fn u10_an_act_that_needs_the_password_is_done_with_it() {
    let club = Club::start().await;
    let una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let enid = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let (club, mut una) = later(&club, &una).await;
    let invite = [("meant_for", "Percy & <son>"), ("moderator", "yes")];
    let before = una.cookie.clone();
    let asked = una.post("/people/invite", &invite).await;
    assert_eq!(asked.status, StatusCode::FORBIDDEN, "{}", asked.body);
    assert!(asked.body.contains("type=\"password\""), "{}", asked.body);
    assert!(asked.body.contains("action=\"/people/invite\""), "{}", asked.body);
    assert_eq!(asked.header("cache-control"), "private, no-store");
    assert_eq!(club.count("SELECT count(*) FROM slip WHERE used_at IS NULL").await, 0, "not yet");
    let carried = filled(&asked.body);
    for (name, value) in invite {
        assert!(carried.contains(&(name.to_owned(), value.to_owned())), "{name}: {carried:?}");
    }
    // The wrong password does nothing and loses nothing.
    let wrong = post(&mut una, "/people/invite", &proving(&asked, "not it at all", "")).await;
    assert_eq!(wrong.status.as_u16(), 422, "{}", wrong.body);
    assert!(!wrong.body.contains("not it at all"), "{}", wrong.body);
    assert_eq!(una.cookie, before, "and proves nothing");
    assert_eq!(club.count("SELECT count(*) FROM slip WHERE used_at IS NULL").await, 0);
    let done = post(&mut una, "/people/invite", &proving(&wrong, PASSWORD, "")).await;
    assert_eq!(done.status, StatusCode::OK, "{}", done.body);
    assert!(done.body.contains("Percy &#38; &#60;son&#62;"), "{}", done.body);
    let made = "SELECT count(*) FROM slip WHERE used_at IS NULL AND is_moderator = 1";
    assert_eq!(club.count(made).await, 1);
    // The proof gave the session another token, and holds for what comes next.
    assert_ne!(una.cookie, before);
    let next = una.post(&enid, &[("do", "stop")]).await;
    assert_eq!(next.status, StatusCode::SEE_OTHER, "{}", next.body);
    assert_eq!(club.count("SELECT count(*) FROM member WHERE stopped_at > 0").await, 1);
}

#[tokio::test]
async fn u10_every_act_of_this_kind_carries_its_form() {
    let club = Club::start().await;
    let una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    club.slip(PLAIN).await;
    let enid = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let mark: String = {
        let mut here = una.clone();
        let page = here.get("/people").await.body;
        page.split("name=\"void\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned()
    };
    let (club, una) = later(&club, &una).await;
    for (path, field, done) in [
        ("/people", ("void", mark.as_str()), 303),
        (&enid, ("do", "reset"), 200),
        ("/me", ("end", "others"), 303),
    ] {
        let mut here = una.clone();
        sqlx::query("UPDATE session SET proved_at = ?")
            .bind(NOW)
            .execute(club.app.database.pools()[1])
            .await
            .unwrap();
        let asked = here.post(path, &[field]).await;
        assert_eq!(asked.status, StatusCode::FORBIDDEN, "{path}: {}", asked.body);
        let acted = post(&mut here, path, &proving(&asked, PASSWORD, "")).await;
        assert_eq!(acted.status.as_u16(), done, "{path}: {}", acted.body);
        assert!(here.is_in().await, "{path}: the new token came with the answer");
        // The next begins with the session as it is now.
        let token: Vec<u8> =
            holewright_server::rules::auth::Token::read(una.cookie.as_ref().unwrap())
                .unwrap()
                .hash()
                .bytes()
                .to_vec();
        sqlx::query("UPDATE session SET token_hash = ? WHERE member_id = 1")
            .bind(token)
            .execute(club.app.database.pools()[1])
            .await
            .unwrap();
    }
}

#[tokio::test]
async fn s07_the_form_that_proves_asks_for_the_code_and_carries_no_secret() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let secret = set_up(&mut una, NOW).await;
    let (club, mut una) = later(&club, &una).await;
    let typed =
        [("meant_for", "Percy"), ("new_password", "kept by nobody here"), ("secretary", "yes")];
    let asked = una.post("/people/invite", &typed).await;
    assert_eq!(asked.status, StatusCode::FORBIDDEN);
    assert!(asked.body.contains("name=\"code\""), "{}", asked.body);
    assert!(!asked.body.contains("kept by nobody here"), "{}", asked.body);
    let code = secret.code_at(NOW + 3600).unwrap();
    for code in ["", "000000"] {
        let answer = post(&mut una, "/people/invite", &proving(&asked, PASSWORD, code)).await;
        assert_eq!(answer.status.as_u16(), 422, "{code}: {}", answer.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM slip WHERE used_at IS NULL").await, 0);
    let answer = post(&mut una, "/people/invite", &proving(&asked, PASSWORD, &code)).await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
}

#[tokio::test]
async fn s07_only_whoever_has_the_right_is_asked_and_no_other_site_asks() {
    let club = Club::start().await;
    let enid = club.join("Enid Hathersage", PLAIN).await;
    let una = club.join("Una Secretary", SECRETARY).await;
    let (club, mut enid) = later(&club, &enid).await;
    let mut una = una.at(&club);
    let fields = [("meant_for", "Percy"), ("password", PASSWORD)];
    let answer = enid.post("/people/invite", &fields).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
    assert!(!answer.body.contains("type=\"password\""), "{}", answer.body);
    let headers =
        [("content-type", "application/x-www-form-urlencoded"), ("sec-fetch-site", "cross-site")];
    let body = format!("meant_for=Percy&password={}", PASSWORD.replace(' ', "+"));
    let answer = una.send(axum::http::Method::POST, "/people/invite", &headers, &body).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
    assert!(!answer.body.contains("Percy"), "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM slip WHERE used_at IS NULL").await, 0);
    // Guesses are counted here as at every other door.
    let mut told = Vec::new();
    for _ in 0..20 {
        let fields = [("meant_for", "Percy"), ("password", "wrong words entirely mine")];
        told.push(una.post("/people/invite", &fields).await.status.as_u16());
    }
    assert!(told.contains(&422) && told.last() == Some(&429), "{told:?}");
}
