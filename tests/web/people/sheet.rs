//! Slips for a list of names: all or none, each good for one, printed to be cut apart.

use axum::http::StatusCode;

use super::club::{Browser, Club, PASSWORD, SECRETARY};
use crate::html;
use crate::markup::check_page;

const OPEN: &str = "SELECT COUNT(*) FROM slip WHERE used_at IS NULL";

/// What the drawing of this link looks like on a page.
fn count(body: &str, what: &str) -> usize {
    body.matches(what).count()
}

/// The sheet for these lines.
async fn sheet(una: &mut Browser, names: &str) -> crate::support::Answer {
    una.post("/people/sheet", &[("names", names)]).await
}

#[tokio::test]
async fn a_list_of_names_becomes_slips_six_a_page() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    una.post("/people/club", &[("club_name", "Marlbeck Model Engineers")]).await;
    let names = "  Enid O’Hathersage \r\n\r\nPercy\nOlive\nAda\nBert\nCyril\nDora\n";
    let made = sheet(&mut una, names).await;
    assert_eq!(made.status, StatusCode::OK, "{}", made.body);
    check_page(&made.body, "a sheet");
    assert_eq!(count(&made.body, "<ul class=\"slips\">"), 2, "six and one: {}", made.body);
    for what in [
        "<svg class=\"qr\"",
        "Point your camera here.",
        "To come back afterwards: <strong>club.test</strong>",
        "<p class=\"whose\">Marlbeck Model Engineers</p>\n<p class=\"who\">",
        "With it you join the club’s pages. Good once, until 29 January 2027, 08:00 UTC (an hour behind British summer time).",
        "Without a camera, open <code>https://club.test/join/",
    ] {
        assert_eq!(count(&made.body, what), 7, "{what}: {}", made.body);
    }
    assert!(made.body.contains("<p class=\"who\">Enid O’Hathersage</p>"), "{}", made.body);
    assert_eq!(club.count(OPEN).await, 7);
    assert_eq!(club.acts("slip-to-join").await, 8, "hers by the test too");
    let members = una.get("/people").await.body;
    for name in ["Enid O’Hathersage", "Percy", "Olive", "Ada", "Bert", "Cyril", "Dora"] {
        assert!(members.contains(&format!("<h3>{name}</h3>")), "{name} in {members}");
    }
    let rights = "SELECT count(*) FROM slip WHERE is_moderator + is_inspector + is_secretary > 0 AND used_at IS NULL";
    assert_eq!(club.count(rights).await, 0);
}

#[tokio::test]
async fn s09_a_list_that_cannot_be_made_makes_none_and_is_given_back() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let sixty = (0..60).map(|number| format!("Guest {number}")).collect::<Vec<_>>().join("\n");
    let long = format!("Enid\n{}", "x".repeat(61));
    for (names, words) in [
        ("", "Write at least one name."),
        (" \n\n ", "Write at least one name."),
        (&format!("{sixty}\nOne more"), "these are 61"),
        (&long, "At most 60 characters to a name"),
    ] {
        let refused = sheet(&mut una, names).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{names}");
        assert!(refused.body.contains(words), "{words}: {}", refused.body);
        let page = html::read(&refused.body);
        assert!(page.tags.iter().any(|tag| tag.attribute("href") == Some("#names")), "{names}");
        if let Some(last) = names.trim().lines().last() {
            assert!(refused.body.contains(last), "{last} is lost");
        }
    }
    assert_eq!(club.count(OPEN).await, 0);
    let whole = sheet(&mut una, &sixty).await;
    assert_eq!(whole.status, StatusCode::OK);
    assert_eq!(count(&whole.body, "<ul class=\"slips\">"), 10);
    assert_eq!(club.count(OPEN).await, 60);
}

/// A name that stands twice, or has a slip already, is asked about: two people may bear it, or the list was sent twice.
#[tokio::test]
async fn a_name_that_stands_again_is_asked_about() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    una.post("/people/invite", &[("meant_for", "Enid Hathersage")]).await;
    let before = club.count(OPEN).await;
    for (names, words) in [
        ("Percy\nOlive\npercy ", "“percy” stands twice in the list. "),
        ("Percy\nénid hathersage", "“énid hathersage” has an open slip already. "),
        ("A\nA\nB\nB\nB", "“A”, “B” stand twice in the list. "),
    ] {
        let asked = sheet(&mut una, names).await;
        assert_eq!(asked.status, StatusCode::UNPROCESSABLE_ENTITY, "{names}");
        assert!(asked.body.contains(&format!("{words}Nothing was made")), "{}", asked.body);
        assert!(asked.body.contains(names.trim_end()), "{names} is lost: {}", asked.body);
        assert!(!asked.body.contains("but for passwords"), "{}", asked.body);
        check_page(&asked.body, names);
        let page = html::read(&asked.body);
        let is_tick = |tag: &&html::Tag| tag.attribute("name") == Some("same");
        assert_eq!(page.tags.iter().filter(is_tick).count(), 1, "{}", asked.body);
    }
    assert_eq!(club.count(OPEN).await, before);
    assert!(!una.get("/people/sheet").await.body.contains("name=\"same\""));
    let made = una.post("/people/sheet", &[("names", "Percy\nPercy"), ("same", "yes")]).await;
    assert_eq!(made.status, StatusCode::OK, "{}", made.body);
    assert_eq!(club.count(OPEN).await, before + 2);
}

/// From the members' page it is three taps to a slip: the door, the form's button and none between.
#[tokio::test]
async fn one_person_is_invited_within_three_taps() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for page in ["/me", "/people"] {
        let body = una.get(page).await.body;
        assert!(body.contains("<a href=\"/people/invite\">Let somebody in</a>"), "{page}: {body}");
    }
    let form = una.get("/people/invite").await;
    assert_eq!(form.status, StatusCode::OK);
    let slip = una.post("/people/invite", &[("meant_for", "Percy")]).await;
    let link = slip.body.split("<code>https://club.test").nth(1).unwrap();
    let link = link.split('<').next().unwrap().to_owned();
    let fields = [("name", "Percy Wainscott"), ("new_password", PASSWORD)];
    let joined = club.browser().post(&link, &fields).await;
    assert_eq!(joined.status, StatusCode::SEE_OTHER, "{}", joined.body);
}

#[tokio::test]
async fn a_name_hides_no_letter_and_only_so_many_slips_stand_open() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for name in ["Ann \u{202e}rekat", "Ann\u{1b}[31m", "Ann\u{200b}"] {
        for (path, field) in [("/people/sheet", "names"), ("/people/invite", "meant_for")] {
            let refused = una.post(path, &[(field, name)]).await;
            assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{path} {name:?}");
            assert!(refused.body.contains("cannot be seen"), "{}", refused.body);
        }
    }
    assert_eq!(club.count(OPEN).await, 0);
    assert_eq!(sheet(&mut una, "\u{feff}Percy\n").await.status, StatusCode::OK, "as a file begins");
    let sixty = |from: usize| {
        (from..from + 60).map(|number| format!("Guest {number}")).collect::<Vec<_>>().join("\n")
    };
    for from in [0, 60, 120, 180] {
        assert_eq!(sheet(&mut una, &sixty(from)).await.status, StatusCode::OK);
    }
    let refused = sheet(&mut una, &sixty(240)).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.body.contains("With these 301 slips would be open, and 300 may be"));
    assert_eq!(club.count(OPEN).await, 241);
}
