//! A member's own feed: what concerns them, at an address that is a secret and can be made void.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};

/// Makes the member's feed; its path.
pub(super) async fn make(club: &Club, by: &Person) -> String {
    let page = club.post("/me/feed", Some(by), &[("do", "make")]).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let (_, rest) = page.body.split_once("https://club.test/notes/feed/").unwrap();
    format!("/notes/feed/{}", rest.split('<').next().unwrap())
}

/// The titles of the entries.
fn titles(feed: &str) -> Vec<String> {
    let document = roxmltree::Document::parse(feed).unwrap();
    let entries = document.descendants().filter(|node| node.has_tag_name((ATOM, "entry")));
    let title = |entry: roxmltree::Node<'_, '_>| {
        let title = entry.children().find(|node| node.has_tag_name((ATOM, "title")));
        title.unwrap().text().unwrap().to_owned()
    };
    entries.map(title).collect()
}

const ATOM: &str = "http://www.w3.org/2005/Atom";

#[tokio::test]
async fn the_feed_tells_an_author_what_became_of_what_they_wrote() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let feed = make(&club, &author).await;
    assert_eq!(titles(&club.get(&feed, None).await.body), Vec::<String>::new());

    let note = club.shown(&author, &moderator, &[("title", "A & b"), ("text", "T")]).await;
    let back = club.send_in(&author, &[("title", "Vague"), ("text", "T")]).await;
    club.decide(&moderator, back, ("change", "Say <how>.")).await;
    let declined = club.send_in(&author, &[("title", "Known"), ("text", "T")]).await;
    club.decide(&moderator, declined, ("decline", "Known already.")).await;
    let waiting = club.send_in(&author, &[("title", "Waiting"), ("text", "T")]).await;
    let version = club.version(note, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "Deburr it.")];
    club.post(&format!("/notes/{note}/correct"), Some(&moderator), &said).await;
    let reader = club.join("Cyril Marsh", Right::None).await;
    let path = format!("/notes/{note}/remark");
    club.post(&path, Some(&reader), &[("remark", "Mine too.")]).await;
    let show = [("remark", "1"), ("do", "show")];
    club.post("/queue/remarks", Some(&moderator), &show).await;

    let answer = club.get(&feed, None).await;
    assert_eq!(answer.header("content-type"), "application/atom+xml; charset=utf-8");
    assert_eq!(answer.header("cache-control"), "private, no-store");
    let mut found = titles(&answer.body);
    found.sort();
    let expected = [
        "A change is asked for: Vague",
        "A remark on your note: A & b",
        "Corrected: A & b",
        "Not taken: Known",
        "Shown: A & b",
    ];
    assert_eq!(found, expected, "{}", answer.body);
    for words in ["Say &lt;how&gt;.", "Known already.", "Deburr it.", "Mine too."] {
        assert!(answer.body.contains(words), "{words}: {}", answer.body);
    }
    assert!(
        !answer.body.contains("Waiting") && !answer.body.contains(&format!("notes/{waiting}<"))
    );
    // Whoever remarked is told what became of that, and nothing of another's notes.
    let others = make(&club, &reader).await;
    assert_eq!(titles(&club.get(&others, None).await.body), ["Your remark is shown: A & b"]);
}

#[tokio::test]
async fn whoever_decides_is_told_how_much_waits() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Ina Flint", Right::Inspector).await;
    let feeds = [make(&club, &moderator).await, make(&club, &inspector).await];
    let shown = club.shown(&author, &moderator, &[("title", "A"), ("text", "T")]).await;
    club.send_in(&author, &[("title", "B"), ("text", "T")]).await;
    club.send_in(&author, &[("title", "C"), ("text", "For the boiler.")]).await;
    club.post(&format!("/notes/{shown}/remark"), Some(&author), &[("remark", "More.")]).await;
    let told = async |feed: &str| titles(&club.get(feed, None).await.body);
    assert_eq!(told(&feeds[0]).await, ["2 notes and 1 remark wait for a decision"]);
    assert_eq!(told(&feeds[1]).await, ["1 note waits for a decision"]);
    // Their own are for others.
    club.send_in(&moderator, &[("title", "D"), ("text", "T")]).await;
    assert_eq!(told(&feeds[0]).await, ["2 notes and 1 remark wait for a decision"]);
}

#[tokio::test]
async fn a_feed_is_read_by_its_address_alone_until_that_is_void() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let first = make(&club, &author).await;
    let second = make(&club, &author).await;
    let status = async |path: &str| club.get(path, None).await.status.as_u16();
    assert_eq!([status(&first).await, status(&second).await], [404, 200], "renewed");
    let page = club.get("/me/feed", Some(&author)).await.body;
    let token = second.rsplit('/').next().unwrap();
    assert!(page.contains("has an address since") && !page.contains(token), "shown once: {page}");
    let [readers, writer] = club.app.database.pools();
    let kept: (i64,) = sqlx::query_as(
        "SELECT count(*) FROM feed WHERE hex(token_hash) = upper(?1) OR CAST(token_hash AS TEXT) = ?1",
    )
    .bind(token)
    .fetch_one(readers)
    .await
    .unwrap();
    assert_eq!(kept.0, 0, "the token itself is nowhere");
    for wrong in ["", "x", &"0".repeat(64), &token[..63]] {
        assert_eq!(status(&format!("/notes/feed/{wrong}")).await, 404, "{wrong}");
    }
    // Nobody who is stopped reads on.
    for (stopped, expected) in [("1", 404), ("NULL", 200)] {
        let stop = sqlx::AssertSqlSafe(format!("UPDATE member SET stopped_at = {stopped}"));
        sqlx::query(stop).execute(writer).await.unwrap();
        assert_eq!(status(&second).await, expected);
    }
    let void = club.post("/me/feed", Some(&author), &[("do", "void")]).await;
    assert_eq!(void.status, StatusCode::SEE_OTHER, "{}", void.body);
    assert_eq!(status(&second).await, 404);
    let page = club.get("/me/feed", Some(&author)).await.body;
    assert!(page.contains("has no address"), "{page}");
}

#[tokio::test]
async fn a_feed_that_outlives_its_session_is_made_by_whoever_proved_it() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let [_, writer] = club.app.database.pools();
    sqlx::query("UPDATE session SET proved_at = 1, made_at = made_at")
        .execute(writer)
        .await
        .unwrap();
    let asked = club.post("/me/feed", Some(&author), &[("do", "make")]).await;
    assert_eq!(asked.status, StatusCode::FORBIDDEN, "{}", asked.body);
    assert!(asked.body.contains("Your password once more"), "{}", asked.body);
    assert_eq!(club.count("SELECT count(*) FROM feed").await, 0);
}

#[tokio::test]
async fn a_feed_is_void_once_its_member_was_stopped() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let secretary = club.join("Una Secretary", Right::Secretary).await;
    let feed = make(&club, &author).await;
    let member = format!("/people/{}", author.id);
    for act in ["stop", "allow"] {
        let done = club.post(&member, Some(&secretary), &[("do", act)]).await;
        assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
        assert_eq!(club.get(&feed, None).await.status, StatusCode::NOT_FOUND, "{act}");
    }
}
