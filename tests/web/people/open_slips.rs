//! The slips that are still open: who sees them, what is shown of them, and what a void one is worth.

use axum::http::{Method, StatusCode};
use holewright_server::rules::auth::Token;

use super::club::{Browser, Club, MODERATOR, PASSWORD, PLAIN, SECRETARY};
use crate::html;

/// The marks on the page, in its order.
async fn marks(secretary: &mut Browser) -> Vec<String> {
    let page = html::read(&secretary.get("/people").await.body);
    let marks = page.tags.iter().filter(|tag| tag.attribute("name") == Some("void"));
    marks.map(|tag| tag.attribute("value").unwrap().to_owned()).collect()
}

/// The path of the link on a slip that was just made.
fn link(slip: &str) -> String {
    let link = slip.split("<code>https://club.test").nth(1).unwrap();
    link.split('<').next().unwrap().to_owned()
}

const OPEN: &str = "SELECT COUNT(*) FROM slip WHERE used_at IS NULL";

#[tokio::test]
async fn the_secretary_sees_every_open_slip_and_no_other() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let enid = club.number_of("Enid Hathersage").await;
    let empty = una.get("/people").await.body;
    assert!(empty.contains("No slip is open"), "hers and Enid’s are used: {empty}");

    let join = una
        .post("/people/invite", &[("meant_for", "Percy of the back bench"), ("moderator", "yes")])
        .await;
    let reset = una.post(&format!("/people/{enid}"), &[("do", "reset")]).await;
    club.slip(PLAIN).await;
    let body = una.get("/people").await.body;
    let rows: Vec<&str> = body.split("<li id=\"slip-").skip(1).collect();
    assert_eq!(rows.len(), 3, "{body}");
    let row = |words: &[&str]| {
        let all = |row: &&&str| words.iter().all(|word| row.contains(word));
        assert_eq!(rows.iter().filter(all).count(), 1, "{words:?} in {rows:#?}");
    };
    let soon = "2027, 08:00 UTC (an hour behind British summer time). ";
    row(&[
        "<h3>Enid Hathersage</h3>",
        "Chooses a new password, until 22 January",
        soon,
        "Made by Una Secretary.",
    ]);
    let hers = "Made by Una Secretary.";
    row(&["<h3>Percy of the back bench</h3>", "Joins as a moderator, until 29 January", hers]);
    row(&[
        "<h3>Somebody</h3>",
        "Joins as a member, until",
        "Made by the server, or a former member.",
    ]);
    assert!(rows[0].contains("Enid"), "the one that ends first stands first");

    for slip in [&join.body, &reset.body] {
        let token = Token::read(link(slip).split('/').nth(2).unwrap()).unwrap();
        let kept: String = token.hash().bytes().iter().map(|byte| format!("{byte:02x}")).collect();
        for secret in [token.secret(), &kept] {
            for piece in [&secret[..8], &secret[56..]] {
                assert!(!body.contains(piece), "{piece} of a slip’s secret is on the page");
            }
        }
    }
    let late = club.later(7 * 24 * 60 * 60).await;
    assert_eq!(marks(&mut una.at(&late)).await.len(), 2, "the one for a password has ended");
    let later = club.later(14 * 24 * 60 * 60).await;
    assert_eq!(later.count(OPEN).await, 3, "they are kept a while longer");
    let mut una = una.at(&later);
    una.sign_in("Una Secretary", PASSWORD).await;
    assert!(marks(&mut una).await.is_empty());
}

#[tokio::test]
async fn s09_a_void_slip_answers_as_a_used_one_does() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let enid = club.number_of("Enid Hathersage").await;
    let used = club.slip(PLAIN).await;
    let fields = [("name", "Percy Wainscott"), ("new_password", PASSWORD)];
    club.browser().post(&used, &fields).await;
    let join = link(&una.post("/people/invite", &[("meant_for", "Olive")]).await.body);
    let reset = una.post(&format!("/people/{enid}"), &[("do", "reset")]).await;
    let reset = link(&reset.body);
    assert_eq!(club.browser().get(&join).await.status, StatusCode::OK);
    assert_eq!(club.browser().get(&reset).await.status, StatusCode::OK);

    for mark in marks(&mut una).await {
        let made = una.post("/people", &[("void", &mark)]).await;
        let told = (made.status, made.header("location"));
        assert_eq!(told, (StatusCode::SEE_OTHER, "/people#slips"));
        let again = una.post("/people", &[("void", &mark)]).await;
        assert_eq!(again.status, StatusCode::NOT_FOUND);
        assert!(again.body.contains("was cancelled already"), "{}", again.body);
    }
    assert!(marks(&mut una).await.is_empty());
    let spent = club.browser().get(&used).await;
    assert_eq!(spent.status, StatusCode::BAD_REQUEST);
    let fields = [("name", "Olive Brandreth"), ("new_password", PASSWORD)];
    for path in [&join, &reset] {
        let mut browser = club.browser();
        let (shown, sent) = (browser.get(path).await, browser.post(path, &fields).await);
        for answer in [shown, sent] {
            assert_eq!(answer.status, spent.status, "{path}");
            assert!(answer.body.contains("This slip is no longer good"), "{}", answer.body);
        }
    }
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 3);
    assert_eq!(club.count(OPEN).await, 0);
    assert!(
        club.browser().sign_in("Enid Hathersage", PASSWORD).await.status == StatusCode::SEE_OTHER,
        "the old password stands"
    );

    let acts = una.get("/people/acts").await.body;
    assert_eq!(club.acts("slip-made-void").await, 2);
    assert!(acts.contains("to join: member; Olive"), "{acts}");
    let whose = format!("slip made void</td><td>member/{enid}</td>");
    assert!(acts.contains(&whose), "{acts}");
}

#[tokio::test]
async fn s09_a_slip_ends_with_the_right_of_whoever_made_it() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for (name, fields) in [
        ("Olive Brandreth", &[("do", "stop")][..]),
        ("Percy Wainscott", &[("do", "rights"), ("moderator", "on")]),
        ("Enid Hathersage", &[("do", "remove"), ("notes", "keep")]),
    ] {
        let mut other = club.join(name, SECRETARY).await;
        let slip = other.post("/people/invite", &[("secretary", "yes")]).await;
        let slip = link(&slip.body);
        assert_eq!(club.browser().get(&slip).await.status, StatusCode::OK);
        let number = club.number_of(name).await;
        let ended = una.post(&format!("/people/{number}"), fields).await;
        assert_eq!(ended.status, StatusCode::SEE_OTHER, "{}", ended.body);
        let spent = club.browser().get(&slip).await;
        assert_eq!(spent.status, StatusCode::BAD_REQUEST, "{name}: {}", spent.body);
    }
}

/// Somebody has the form open when the slip is made void, or both happen at the same moment.
#[tokio::test]
async fn s09_a_slip_that_is_used_and_made_void_at_once_is_one_or_the_other() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for name in ["Percy Wainscott", "Olive Brandreth", "Ned Thackray", "Ida Cowling"] {
        let members = club.count("SELECT COUNT(*) FROM member").await;
        let slip = club.slip(PLAIN).await;
        let mark = marks(&mut una).await.remove(0);
        let mut bearer = club.browser();
        let fields = [("name", name), ("new_password", PASSWORD)];
        let voided = [("void", mark.as_str())];
        let (used, voided) =
            tokio::join!(bearer.post(&slip, &fields), una.post("/people", &voided));
        let joined = club.count("SELECT COUNT(*) FROM member").await - members;
        let told = (used.status, voided.status, joined);
        let was_used = (StatusCode::SEE_OTHER, StatusCode::NOT_FOUND, 1);
        let was_void = (StatusCode::BAD_REQUEST, StatusCode::SEE_OTHER, 0);
        assert!(told == was_used || told == was_void, "{told:?}");
    }
}

#[tokio::test]
async fn s16_s19_nobody_else_makes_a_slip_void() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut mabel = club.join("Mabel Moderator", MODERATOR).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    let slip = club.slip(PLAIN).await;
    let mark = marks(&mut una).await.remove(0);
    let before = club.dump().await;
    let fields = [("void", mark.as_str()), ("secretary", "yes")];
    for (browser, expected) in [
        (&mut mabel, StatusCode::FORBIDDEN),
        (&mut enid, StatusCode::FORBIDDEN),
        (&mut club.browser(), StatusCode::SEE_OTHER),
    ] {
        assert_eq!(browser.post("/people", &fields).await.status, expected);
        assert!(!browser.get("/people").await.body.contains(&mark));
    }
    let body = format!("void={mark}");
    let form = ("content-type", "application/x-www-form-urlencoded");
    for site in [("sec-fetch-site", "cross-site"), ("origin", "https://evil.example")] {
        let answer = una.send(Method::POST, "/people", &[form, site], &body).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{site:?}");
    }
    let plain = [("content-type", "text/plain"), ("sec-fetch-site", "same-origin")];
    let answer = una.send(Method::POST, "/people", &plain, &body).await;
    assert_eq!(answer.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
    assert_eq!(una.get(&format!("/people?void={mark}")).await.status, StatusCode::OK);
    let token = slip.strip_prefix("/join/").unwrap();
    let hash = Token::read(token).unwrap().hash();
    let kept: String = hash.bytes().iter().map(|byte| format!("{byte:02x}")).collect();
    for odd in ["", "1", "%", token, &kept, &mark[..15], &mark.to_uppercase(), "' OR 1=1 --"] {
        if odd == mark {
            continue;
        }
        let answer = una.post("/people", &[("void", odd)]).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{odd}");
    }
    assert_eq!(club.dump().await, before);
    assert_eq!(club.browser().get(&slip).await.status, StatusCode::OK, "it is open still");
}

#[tokio::test]
async fn s23_making_a_slip_void_asks_for_the_password_once_more() {
    let club = Club::start().await;
    let una = club.join("Una Secretary", SECRETARY).await;
    club.slip(PLAIN).await;
    let late = club.later(15 * 60 + 1).await;
    let mut una = una.at(&late);
    let mark = marks(&mut una).await.remove(0);
    let asked = una.post("/people", &[("void", &mark)]).await;
    assert_eq!(asked.status, StatusCode::FORBIDDEN);
    assert!(asked.body.contains("type=\"password\""), "{}", asked.body);
    assert_eq!(marks(&mut una).await, [mark.as_str()]);
    una.post("/prove", &[("password", PASSWORD), ("next", "/people")]).await;
    una.post("/people", &[("void", &mark)]).await;
    assert!(marks(&mut una).await.is_empty());
}
