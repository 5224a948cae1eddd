//! Ten codes on paper for whoever has lost the device: each good once, in place of the device's.

use std::collections::BTreeSet;

use axum::http::StatusCode;
use holewright_server::db::accounts::{self, Given};
use holewright_server::rules::auth::MemberId;

use super::club::{Browser, Club, PASSWORD, PLAIN, SECRETARY};
use super::second_factor::set_up;
use crate::support::NOW;

const NAME: &str = "Enid Hathersage";

/// The codes as they are printed.
async fn made(browser: &mut Browser) -> Vec<String> {
    let page = browser.post("/me/second-factor", &[("do", "spare")]).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let lines = page.body.split("<li><strong>").skip(1);
    lines.map(|line| line.split('<').next().unwrap().to_owned()).collect()
}

/// Somebody with the password who gives this code.
async fn signs_in(club: &Club, code: &str) -> bool {
    let mut browser = club.browser();
    browser.sign_in(NAME, PASSWORD).await;
    browser.post("/sign-in/code", &[("code", code)]).await;
    browser.is_in().await
}

#[tokio::test]
async fn s09_each_spare_code_signs_in_once() {
    let club = Club::start().await;
    let mut enid = club.join(NAME, PLAIN).await;
    let none = enid.post("/me/second-factor", &[("do", "spare")]).await;
    assert_eq!(none.status, StatusCode::SEE_OTHER, "there is nothing to stand in for");
    let secret = set_up(&mut enid, NOW).await;
    assert!(enid.get("/me/second-factor").await.body.contains("You have none."));
    let codes = made(&mut enid).await;
    assert_eq!(codes.iter().collect::<BTreeSet<_>>().len(), 10, "{codes:?}");
    let dump = club.dump().await;
    for code in &codes {
        assert!(!dump.contains(&code.replace(' ', "")), "only a hash is kept");
    }

    let later = club.later(300).await;
    for (number, code) in codes.iter().take(3).enumerate() {
        assert!(signs_in(&later, code).await, "{number}");
        assert!(!signs_in(&later, code).await, "{number} a second time");
    }
    assert!(signs_in(&later, &codes[3].replace(' ', "")).await, "as it is quickest typed");
    let mut enid = enid.at(&later);
    assert!(enid.get("/me").await.body.contains("Spare codes left: 6."));
    assert!(enid.get("/me/second-factor").await.body.contains("<p>6 left."));
    assert_eq!(enid.get("/me/data.json").await.json()["member"]["spare_codes_left"], 6);
    assert_eq!(later.acts("spare-code-used").await, 4);
    assert_eq!(later.acts("spare-codes-made").await, 1);
    // The device's own are taken as before.
    assert!(signs_in(&later, &secret.code_at(NOW + 300).unwrap()).await);
}

#[tokio::test]
async fn s09_two_who_give_one_spare_code_at_once_are_not_both_let_in() {
    let club = Club::start().await;
    let mut enid = club.join(NAME, PLAIN).await;
    set_up(&mut enid, NOW).await;
    let codes = made(&mut enid).await;
    let (one, two) = tokio::join!(signs_in(&club, &codes[0]), signs_in(&club, &codes[0]));
    assert!(one ^ two, "{one} {two}");
}

/// New codes may have been made since one of the old ones was found right: it does not use up the new one with its mark.
#[tokio::test]
async fn s09_a_spare_code_is_taken_by_what_it_was_held_against() {
    let club = Club::start().await;
    let mut enid = club.join(NAME, PLAIN).await;
    set_up(&mut enid, NOW).await;
    made(&mut enid).await;
    let id = MemberId(club.number_of(NAME).await);
    let [_, writer] = club.app.database.pools();
    sqlx::query("DELETE FROM spare_code").execute(writer).await.unwrap();
    sqlx::query("INSERT INTO spare_code (member_id, mark, code_hash) VALUES (?, '12', 'new')")
        .bind(id.0)
        .execute(writer)
        .await
        .unwrap();
    let account = accounts::numbered(&club.app.database, id).await.unwrap().unwrap();
    for (hash, is_taken) in [("old", false), ("new", true), ("new", false)] {
        let given = Given::Spare { mark: "12".to_owned(), hash: hash.to_owned() };
        let taken = accounts::take_code(&club.app.database, NOW, &account, &given).await.unwrap();
        assert_eq!(taken, is_taken, "{hash}");
    }
}

#[tokio::test]
async fn new_spare_codes_or_no_second_factor_make_the_old_ones_void() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join(NAME, PLAIN).await;
    set_up(&mut enid, NOW).await;
    let old = made(&mut enid).await;
    let new = made(&mut enid).await;
    assert!(!signs_in(&club, &old[0]).await);
    assert!(signs_in(&club, &new[0]).await);
    let address = format!("/people/{}", club.number_of(NAME).await);
    una.post(&address, &[("do", "drop-second-factor")]).await;
    assert_eq!(club.count("SELECT count(*) FROM spare_code").await, 0);
    enid.sign_in(NAME, PASSWORD).await;
    set_up(&mut enid, NOW).await;
    assert!(!signs_in(&club, &new[1]).await);
    made(&mut enid).await;
    enid.post("/me/second-factor", &[("do", "drop")]).await;
    assert_eq!(club.count("SELECT count(*) FROM spare_code").await, 0);
}

#[tokio::test]
async fn s07_spare_codes_are_made_after_proof_and_are_proof() {
    let club = Club::start().await;
    let mut enid = club.join(NAME, PLAIN).await;
    let secret = set_up(&mut enid, NOW).await;
    let codes = made(&mut enid).await;
    let later = club.later(3600).await;
    let mut enid = enid.at(&later);
    let asked = enid.post("/me/second-factor", &[("do", "spare")]).await;
    assert_eq!(asked.status, StatusCode::FORBIDDEN, "a session alone makes none");
    assert_eq!(later.acts("spare-codes-made").await, 1);
    for (code, told) in [
        (codes[0].as_str(), StatusCode::SEE_OTHER),
        (&codes[0], StatusCode::UNPROCESSABLE_ENTITY),
        ("00 00 00 00 00", StatusCode::UNPROCESSABLE_ENTITY),
        (&secret.code_at(NOW + 3600).unwrap(), StatusCode::SEE_OTHER),
    ] {
        let answer = enid.post("/prove", &[("password", PASSWORD), ("code", code)]).await;
        assert_eq!(answer.status, told, "{code}");
    }
    // Another's is nobody's.
    let mut percy = later.join("Percy Wainscott", PLAIN).await;
    set_up(&mut percy, NOW + 3600).await;
    let theirs = made(&mut percy).await;
    assert!(!signs_in(&later, &theirs[0]).await);
}

#[tokio::test]
async fn spare_codes_cannot_be_guessed_one_after_the_other() {
    let club = Club::start().await;
    let mut enid = club.join(NAME, PLAIN).await;
    set_up(&mut enid, NOW).await;
    let mark = made(&mut enid).await[0].get(..2).unwrap().to_owned();
    let mut thief = club.browser();
    thief.sign_in(NAME, PASSWORD).await;
    let mut told = Vec::new();
    for number in 0..30 {
        let code = format!("{mark}{number:08}");
        told.push(thief.post("/sign-in/code", &[("code", &code)]).await.status.as_u16());
    }
    assert!((9..=13).contains(&told.iter().filter(|status| **status == 422).count()), "{told:?}");
    assert_eq!(*told.last().unwrap(), 429);
}

#[tokio::test]
async fn the_page_helps_whoever_has_one_telephone_or_is_the_only_secretary() {
    let club = Club::with(&[]).await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let offered = una.get("/me/second-factor").await.body;
    let link = "<a href=\"otpauth://totp/club.test:Una%20Secretary?secret=";
    assert!(offered.contains(link), "{offered}");
    set_up(&mut una, NOW).await;
    let page = una.get("/me/second-factor").await.body;
    for words in
        ["holewright invite --secretary", "Sign in with a spare code", "Make ten spare codes"]
    {
        assert!(page.contains(words), "{words} in {page}");
    }
}
