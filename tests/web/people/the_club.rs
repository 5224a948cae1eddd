//! What the club says of itself: on every page as soon as it is said, as text, and nothing where it says nothing.

use axum::http::{Method, StatusCode};

use super::club::{Club, PLAIN, SECRETARY};
use crate::html;
use crate::markup::check_page;
use crate::page::shows;
use crate::safety::commands::{done, run};
use crate::support::{Answer, Folder};

const MARLBECK: [(&str, &str); 4] = [
    ("club_name", "Marlbeck Model Engineers"),
    ("club_place", "The Old Mill, Marlbeck"),
    ("welcome", "We meet on Thursdays.\r\nCome in & bring your work."),
    ("zone", "london"),
];

/// Every kind of answer that the server keeps for all readers.
const KEPT: [&str; 5] = ["/", "/threads/ba/5", "/materials", "/plan", "/notes.atom"];

/// Asked for as a browser does that holds the answer with this tag.
async fn with_tag(club: &Club, path: &str, tag: &str) -> Answer {
    club.browser().send(Method::GET, path, &[("if-none-match", tag)], "").await
}

#[tokio::test]
async fn the_club_is_named_on_every_page_at_once_and_after_a_restart() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut before = Vec::new();
    for path in KEPT {
        // Twice: the second is what is kept.
        club.browser().get(path).await;
        let answer = club.browser().get(path).await;
        assert!(!answer.body.contains("Marlbeck"), "{path}");
        assert!(!answer.body.contains("class=\"whose\""), "{path}: nothing is set");
        let tag = answer.header("etag").to_owned();
        assert_eq!(with_tag(&club, path, &tag).await.status, StatusCode::NOT_MODIFIED, "{path}");
        before.push((path, tag));
    }
    assert!(before.len() == KEPT.len());
    let set = una.post("/people/club", &MARLBECK).await;
    assert_eq!(
        (set.status, set.header("location")),
        (StatusCode::SEE_OTHER, "/people"),
        "{}",
        set.body
    );
    let later = club.later(60).await;
    for (path, tag) in &before {
        for club in [&club, &later] {
            let answer = with_tag(club, path, tag).await;
            assert_eq!(answer.status, StatusCode::OK, "{path}: a browser holds what is old");
            assert!(answer.body.contains("Marlbeck Model Engineers"), "{path}");
        }
    }
    let home = club.browser().get("/").await.body;
    for words in [
        "<meta property=\"og:site_name\" content=\"Marlbeck Model Engineers\">",
        "<p class=\"whose\">Marlbeck Model Engineers, The Old Mill, Marlbeck</p>",
        "We meet on Thursdays. Come in &#38; bring your work.",
    ] {
        assert!(home.contains(words), "{words} in {home}");
    }
    let feed = club.browser().get("/notes.atom").await.body;
    assert!(feed.contains("<title>Shop notes – Marlbeck Model Engineers</title>"), "{feed}");
    let form = una.get("/people/club").await.body;
    assert!(form.contains("value=\"Europe/London\""), "{form}");
    assert_eq!(club.acts("club-changed").await, 1);

    let nothing = MARLBECK.map(|(name, _)| (name, ""));
    una.post("/people/club", &nothing).await;
    let home = club.browser().get("/").await.body;
    assert!(!home.contains("Marlbeck") && home.contains("content=\"Holewright\""), "{home}");
}

#[tokio::test]
async fn s31_what_the_club_says_is_shown_as_text() {
    const PAYLOAD: &str = "<img src=x onerror=alert(1)>\"'>]]>&";
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let fields = [("club_name", PAYLOAD), ("club_place", PAYLOAD), ("welcome", PAYLOAD)];
    let set = una.post("/people/club", &fields).await;
    assert_eq!(set.status, StatusCode::SEE_OTHER, "{}", set.body);
    let slip = una.post("/people/invite", &[("meant_for", "Percy")]).await;
    let sheet = una.post("/people/sheet", &[("names", "Percy")]).await;
    let nobody = club.browser().get("/no/such/page").await;
    let mut pages =
        vec![("a slip", slip.body), ("a sheet", sheet.body), ("a mistake", nobody.body)];
    for path in ["/", "/threads/ba/5", "/people/club", "/sign-in"] {
        pages.push((path, una.get(path).await.body));
    }
    for (place, body) in &pages {
        check_page(body, place);
        let page = html::read(body);
        assert!(shows(&page, PAYLOAD), "{place}: {body}");
        assert!(page.tags.iter().all(|tag| tag.name != "img"), "{place}");
    }
    let feed = club.browser().get("/notes.atom").await.body;
    let coded =
        "<title>Shop notes – &lt;img src=x onerror=alert(1)&gt;&quot;&#39;&gt;]]&gt;&amp;</title>";
    assert!(feed.contains(coded), "{feed}");
}

#[tokio::test]
async fn what_cannot_be_said_changes_nothing_and_is_given_back() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    una.post("/people/club", &MARLBECK).await;
    let before = club.dump().await;
    let long = "x".repeat(241);
    for (field, typed, words) in [
        ("club_name", &long[..61], "At most 60 characters, and this has 61."),
        ("club_place", &long[..61], "At most 60 characters"),
        ("welcome", &long, "At most 240 characters, and this has 241."),
        ("welcome", "Silver solder the boiler barrel at 700 degrees.", "an inspector reads first"),
        ("club_name", "Safe to 10 bar in any boiler", "an inspector reads first"),
        ("zone", "the clubroom", "No time zone has this name."),
        ("club_name", "Marl\u{202e}beck", "cannot be seen"),
    ] {
        let refused = una.post("/people/club", &[(field, typed)]).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{field} {typed}");
        assert!(refused.body.contains(words), "{field}: {}", refused.body);
        assert!(refused.body.contains(&format!("href=\"#{field}\"")), "{field}");
        assert!(refused.body.contains(typed), "{field} is lost");
    }
    assert_eq!(club.dump().await, before);
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    assert_eq!(enid.post("/people/club", &MARLBECK).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_slip_tells_the_time_of_the_clubs_clock() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let utc = una.post("/people/invite", &[("meant_for", "Percy")]).await.body;
    assert!(
        utc.contains("until 29 January 2027, 08:00 UTC (an hour behind British summer time)."),
        "{utc}"
    );
    una.post("/people/club", &[("zone", "new york")]).await;
    let local = una.post("/people/invite", &[("meant_for", "Percy")]).await.body;
    assert!(local.contains("until Friday 29 January 2027, 03:00 (New York time)."), "{local}");
    let members = una.get("/people").await.body;
    assert!(members.contains("03:00 (New York time)"), "{members}");
}

#[tokio::test]
async fn a_backup_carries_what_the_club_says() {
    let (folder, other) = (Folder::new(), Folder::new());
    let data = folder.path().join("data");
    done(&run(&data, &["demo"]));
    let database = holewright_server::db::Database::open(&data).await.unwrap();
    sqlx::query("UPDATE club SET name = 'Marlbeck', zone = 'Europe/London' WHERE id = 1")
        .execute(database.pools()[1])
        .await
        .unwrap();
    database.close().await;
    let saved = folder.path().join("club.tar");
    done(&run(&data, &["backup", saved.to_str().unwrap()]));
    let restored = other.path().join("data");
    done(&run(&restored, &["restore", saved.to_str().unwrap()]));
    let database = holewright_server::db::Database::open(&restored).await.unwrap();
    let club = holewright_server::db::club::read(&database).await.unwrap();
    assert_eq!((club.name.as_str(), club.zone.as_str()), ("Marlbeck", "Europe/London"));
    database.close().await;
}
