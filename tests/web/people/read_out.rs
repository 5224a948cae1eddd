//! A code for a new password that the secretary reads out by telephone.

use axum::http::StatusCode;

use super::club::{Browser, Club, PASSWORD, PLAIN, SECRETARY};

const NEW: &str = "nine copper kettles humming";

/// The code for this member, as it is read out.
async fn code(una: &mut Browser, club: &Club, name: &str) -> String {
    let address = format!("/people/{}", club.number_of(name).await);
    let made = una.post(&address, &[("do", "read-out")]).await;
    assert_eq!(made.status, StatusCode::OK, "{}", made.body);
    assert!(made.body.contains("<strong>club.test/reset</strong>"), "{}", made.body);
    let code = made.body.split("<strong class=\"phrase\">").nth(1).unwrap();
    let code = code.split('<').next().unwrap().to_owned();
    assert_eq!(code.len(), 14, "five pairs of digits: {code}");
    code
}

async fn give(browser: &mut Browser, name: &str, code: &str) -> crate::support::Answer {
    browser.post("/reset", &[("name", name), ("code", code)]).await
}

#[tokio::test]
async fn s09_a_code_read_out_lets_its_member_choose_a_password_once() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let code = code(&mut una, &club, "Enid Hathersage").await;
    let digits = code.replace(' ', "");
    assert!(!club.dump().await.contains(&digits), "only its hash is kept");
    let members = una.get("/people").await.body;
    let listed = "Chooses a new password, by a code that is read out, until 15 January 2027, 09:00 UTC (an hour behind British summer time).";
    assert!(members.contains(listed), "{members}");

    let mut browser = club.browser();
    let given = give(&mut browser, "enid  HATHERSAGE", &digits).await;
    assert_eq!(given.status, StatusCode::SEE_OTHER, "{}", given.body);
    let first = given.header("location").to_owned();
    assert!(first.starts_with("/reset/"), "{first}");
    // Whoever shut the page by mistake gives the code again, and the way that was opened before is shut.
    let again = give(&mut browser, "Enid Hathersage", &code).await;
    let second = again.header("location").to_owned();
    assert_eq!(browser.get(&first).await.status, StatusCode::BAD_REQUEST);
    assert_eq!(browser.get(&second).await.status, StatusCode::OK);
    let set = browser.post(&second, &[("new_password", NEW)]).await;
    assert_eq!(set.status, StatusCode::SEE_OTHER, "{}", set.body);
    assert!(!browser.is_in().await, "the code stands for the password alone");
    let spent = give(&mut browser, "Enid Hathersage", &code).await;
    assert_eq!(spent.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(browser.sign_in("Enid Hathersage", NEW).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn s08_a_code_is_its_members_and_ends_within_the_hour() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for name in ["Enid Hathersage", "Percy Wainscott"] {
        club.join(name, PLAIN).await;
    }
    let first = code(&mut una, &club, "Enid Hathersage").await;
    let late = club.later(60 * 60).await;
    let told = give(&mut late.browser(), "Enid Hathersage", &first).await;
    assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY);
    let second = code(&mut una, &club, "Enid Hathersage").await;
    let mut said = Vec::new();
    for (name, code) in [
        ("Enid Hathersage", first.as_str()),
        ("Percy Wainscott", &second),
        ("Nobody Atall", &second),
    ] {
        let told = give(&mut club.browser(), name, code).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{name}");
        said.push(told.body.replace(name, "Somebody"));
    }
    said.dedup();
    assert_eq!(said.len(), 1, "an unknown name is told what a known one is");
    for code in ["48 27 31 59 0", "4827315906x", "", "tenletters"] {
        let told = give(&mut club.browser(), "Enid Hathersage", code).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{code}");
        assert!(told.body.contains("the ten digits that were read out"), "{}", told.body);
    }
    let right = give(&mut club.browser(), "Enid Hathersage", &second).await;
    assert_eq!(right.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn s11_a_code_cannot_be_guessed_and_a_new_one_may_be_tried_at_once() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    code(&mut una, &club, "Enid Hathersage").await;
    let mut told = Vec::new();
    for number in 0..30 {
        let mut thief = club.browser().from(&format!("10.0.0.{number}"));
        let guess = format!("{number:010}");
        told.push(give(&mut thief, "Enid Hathersage", &guess).await.status.as_u16());
    }
    let tried = told.iter().filter(|status| **status == 422).count();
    assert!((9..=13).contains(&tried), "{told:?}");
    assert_eq!(*told.last().unwrap(), 429);
    // The sign-in is not shut by that, nor is the next code.
    let browser = club.browser().from("10.1.0.1");
    let signed_in = browser.clone().sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(signed_in.status, StatusCode::SEE_OTHER);
    let next = code(&mut una, &club, "Enid Hathersage").await;
    let right = give(&mut browser.clone(), "Enid Hathersage", &next).await;
    assert_eq!(right.status, StatusCode::SEE_OTHER, "{}", right.body);
}

#[tokio::test]
async fn a_printed_slip_and_a_code_make_each_other_void() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let read = code(&mut una, &club, "Enid Hathersage").await;
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let made = una.post(&address, &[("do", "reset")]).await.body;
    let link = made.split("<code>https://club.test").nth(1).unwrap().split('<').next().unwrap();
    let told = give(&mut club.browser(), "Enid Hathersage", &read).await;
    assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(club.browser().get(link).await.status, StatusCode::OK);
    code(&mut una, &club, "Enid Hathersage").await;
    assert_eq!(club.browser().get(link).await.status, StatusCode::BAD_REQUEST);
}
