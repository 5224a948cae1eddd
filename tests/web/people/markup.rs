//! S02, S31, U06, U11: the members' pages as a browser reads them.

use std::collections::BTreeSet;

use axum::http::StatusCode;

use super::club::{Browser, Club, PASSWORD, PLAIN, SECRETARY};
use crate::html;
use crate::markup::check_page;
use crate::open::OPEN;
use crate::page::shows;

/// The forms, and what is sent to have them come back.
#[rustfmt::skip]
const REJECTED: &[(&str, &[(&str, &str)])] = &[
    ("/sign-in", &[("name", "Nobody Atall"), ("password", "some other words here")]),
    ("/sign-in", &[]),
    ("/prove", &[("password", "some other words here")]),
    ("/me/password", &[("password", "some other words here"), ("new_password", "short")]),
    ("/me/password", &[("password", "some other words here"), ("new_password", "nine copper kettles humming")]),
    ("/me/second-factor", &[("code", "12 34")]),
    ("/me/leave", &[("notes", "remove"), ("password", "some other words here")]),
    ("/me/leave", &[]),
    ("/people/sheet", &[("names", "a guest whose description runs to more than sixty characters, alas\nEnid")]),
    ("/people/sheet", &[]),
    ("/people/club", &[("club_name", "Marlbeck"), ("club_place", "Test the boilers at 10 bar"), ("zone", "the clubroom")]),
    ("/reset", &[("name", "Enid"), ("code", "48 27 31")]),
    ("/reset", &[("name", "Enid"), ("code", "48 27 31 59 06")]),
    ("/people/invite", &[("meant_for", "a guest whose description runs to more than sixty characters, alas")]),
];

const OPENED: &[&str] = &[
    "/prove",
    "/me",
    "/me/password",
    "/me/second-factor",
    "/me/leave",
    "/people",
    "/people/1",
    "/people/invite",
    "/people/sheet",
    "/people/club",
    "/people/acts",
];

#[tokio::test]
async fn s02_no_members_page_runs_or_fetches_anything() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    for path in OPENED.iter().copied().chain(OPEN.iter().map(|kind| &*kind.address)) {
        let answer = secretary.get(path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        check_page(&answer.body, path);
    }
    let slip = secretary.post("/people/invite", &[("meant_for", "Percy")]).await;
    check_page(&slip.body, "a slip");
    let form = club.browser().get(&club.slip(PLAIN).await).await;
    check_page(&form.body, "/join");
}

#[tokio::test]
async fn u06_a_rejected_form_says_what_to_put_right_and_where() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    for (path, fields) in REJECTED {
        let answer = secretary.post(path, fields).await;
        check_rejected(path, fields, &answer);
    }
    let slip = club.slip(PLAIN).await;
    let fields = [("name", "<i>"), ("new_password", "short")];
    let answer = club.browser().post(&slip, &fields).await;
    check_rejected("/join", &fields, &answer);
}

#[track_caller]
fn check_rejected(path: &str, fields: &[(&str, &str)], answer: &crate::support::Answer) {
    let place = format!("{path} {fields:?}");
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{place}");
    assert!(answer.body.contains("<title>Error: "), "{place}");
    check_page(&answer.body, &place);
    let page = html::read(&answer.body);
    let main = answer.body.split("<main").nth(1).unwrap();
    let summary = main.find("class=\"errors\"").unwrap();
    assert!(summary < main.find("<h1").unwrap(), "{place}: the summary is not first");
    let ids: BTreeSet<&str> = page.tags.iter().filter_map(|tag| tag.attribute("id")).collect();
    let errors: Vec<&str> = page
        .tags
        .iter()
        .filter_map(|tag| tag.attribute("id"))
        .filter(|id| id.ends_with("-error"))
        .collect();
    assert!(!errors.is_empty(), "{place}: no words at a field");
    for error in errors {
        let field = error.strip_suffix("-error").unwrap();
        assert!(ids.contains(field), "{place}: {field} has no place");
        let link = format!("#{field}");
        assert!(
            page.tags.iter().any(|tag| tag.attribute("href") == Some(&link)),
            "{place}: no link to {field}"
        );
    }
    for (name, value) in fields {
        let is_secret = name.contains("password") || *name == "code";
        if is_secret {
            assert!(
                !answer.body.contains(&format!("value=\"{value}\"")),
                "{place}: {name} is shown"
            );
        } else if !value.is_empty() {
            assert!(shows(&page, value), "{place}: {name} is lost");
        }
    }
    assert!(answer.body.contains("novalidate"), "{place}");
}

#[tokio::test]
async fn u11_password_managers_know_the_fields() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    for (path, expected) in [
        ("/sign-in", &[("name", "username"), ("password", "current-password")][..]),
        ("/me/password", &[("password", "current-password"), ("new_password", "new-password")]),
        ("/me/second-factor", &[("code", "one-time-code")]),
        ("/prove", &[("password", "current-password")]),
    ] {
        let page = html::read(&member.get(path).await.body);
        for (name, kind) in expected {
            let input = page.tags.iter().find(|tag| tag.attribute("name") == Some(name)).unwrap();
            assert_eq!(input.attribute("autocomplete"), Some(*kind), "{path} {name}");
            let capitals = if *kind == "username" { "words" } else { "off" };
            assert_eq!(input.attribute("autocapitalize"), Some(capitals), "{path} {name}");
            let is_masked = input.attribute("type") == Some("password");
            assert_eq!(is_masked, name.contains("password"), "{path} {name}");
            // Nothing hinders pasting, and nothing cuts what is pasted.
            assert_eq!(input.attribute("maxlength"), None, "{path} {name}");
        }
        let passwords =
            page.tags.iter().filter(|tag| tag.attribute("autocomplete") == Some("new-password"));
        assert!(passwords.count() <= 1, "{path}: a password is asked for twice");
    }
}

#[tokio::test]
async fn s31_what_a_browser_or_a_secretary_writes_is_shown_as_text() {
    const PAYLOAD: &str = "<img src=x onerror=alert(1)>\"'>";
    let club = Club::start().await;
    let mut secretary: Browser = club.join("Una Secretary", SECRETARY).await;
    let form = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("sec-fetch-site", "same-origin"),
        ("user-agent", PAYLOAD),
    ];
    let body = format!("name=Una+Secretary&password={}", PASSWORD.replace(' ', "+"));
    let answer = secretary.send(axum::http::Method::POST, "/sign-in", &form, &body).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    let slip = secretary.post("/people/invite", &[("meant_for", PAYLOAD)]).await;
    assert_eq!(slip.status, StatusCode::OK);
    let wrong = club.browser().sign_in(PAYLOAD, "some other words here").await;
    let (me, acts) = (secretary.get("/me").await, secretary.get("/people/acts").await);
    let people = secretary.get("/people").await;
    for (place, body) in [
        ("a slip", &slip.body),
        ("/sign-in", &wrong.body),
        ("/me", &me.body),
        ("/people/acts", &acts.body),
        ("/people", &people.body),
    ] {
        check_page(body, place);
        let page = html::read(body);
        assert!(shows(&page, PAYLOAD), "{place}: {body}");
        assert!(page.tags.iter().all(|tag| tag.name != "img"), "{place}");
    }
}
