//! A note is neither lost nor doubled: F23, F24, U06, U10, U29, U30.

use axum::body::{Body, Bytes};
use axum::http::{Method, Request, StatusCode};
use roxmltree::Document;
use tower::ServiceExt;

use super::club::{Club, Right};
use crate::page::filled;

const KEY: &str = "0123456789abcdef0123456789abcdef";

#[tokio::test]
async fn f23_a_form_sent_twice_makes_one_note() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let fields =
        [("form_key", KEY), ("title", "A"), ("text", "B"), ("on", "gunmetal"), ("do", "send")];
    let at_once = tokio::join!(
        club.post("/notes/new", Some(&author), &fields),
        club.post("/notes/new", Some(&author), &fields),
        club.post("/notes/new", Some(&author), &fields),
    );
    let mut places = Vec::new();
    for answer in [at_once.0, at_once.1, at_once.2] {
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        places.push(answer.header("location").to_owned());
    }
    let club = club.restarted().await;
    let answer = club.post("/notes/new", Some(&author), &fields).await;
    places.push(answer.header("location").to_owned());
    places.dedup();
    assert_eq!(places, ["/notes/mine#note-1"]);
    assert_eq!(club.count("SELECT count(*) FROM note").await, 1);
    assert_eq!(club.count("SELECT count(*) FROM note_version").await, 1);
    assert_eq!(club.count("SELECT count(*) FROM act WHERE what = 'note-sent-in'").await, 1);

    // Late, when the note was passed already: still the same one, and nothing waits again.
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    club.decide(&moderator, 1, ("pass", "")).await;
    let answer = club.post("/notes/new", Some(&author), &fields).await;
    assert_eq!(answer.header("location"), "/notes/mine#note-1");
    assert_eq!(club.count("SELECT count(*) FROM note_version WHERE state = 'waiting'").await, 0);

    // The key of another's form opens nothing.
    let other = club.join("Cyril Moss", Right::None).await;
    let answer = club.post("/notes/new", Some(&other), &fields).await;
    assert_eq!(answer.status, StatusCode::NOT_FOUND);
    assert_eq!(club.count("SELECT count(*) FROM note").await, 1);
}

#[tokio::test]
async fn f23_a_change_sent_twice_is_one_wording() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.shown(&author, &moderator, &[("title", "A"), ("text", "B")]).await;
    let edit = format!("/notes/{note}/edit");
    let fields = [("title", "A"), ("text", "C"), ("do", "send")];
    for _ in 0..2 {
        assert_eq!(club.post(&edit, Some(&author), &fields).await.status, StatusCode::SEE_OTHER);
    }
    assert_eq!(club.count("SELECT count(*) FROM note_version").await, 2);
    assert_eq!(club.count("SELECT count(*) FROM act WHERE what = 'note-sent-in'").await, 2);
}

#[tokio::test]
async fn f24_a_form_that_was_cut_leaves_no_row() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let whole = format!("form_key={KEY}&do=send&title=A&text={}", "B".repeat(500));
    for cut in (0..whole.len()).step_by(13) {
        // The first part comes, then the connection breaks.
        let part = Bytes::copy_from_slice(&whole.as_bytes()[..cut]);
        let request = Request::builder()
            .method(Method::POST)
            .uri("/notes/new")
            .header("origin", "https://club.test")
            .header("sec-fetch-site", "same-origin")
            .header("cookie", author.cookie())
            .header("content-type", "application/x-www-form-urlencoded")
            .body(Body::new(Broken(Some(part))))
            .unwrap();
        let status = club.router.clone().oneshot(request).await.unwrap().status();
        assert!(status.is_client_error(), "cut at {cut}: {status}");
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
    assert_eq!(club.count("SELECT count(*) FROM note_version").await, 0);
}

/// A body that breaks off after its first piece.
struct Broken(Option<Bytes>);

impl axum::body::HttpBody for Broken {
    type Data = Bytes;
    type Error = std::io::Error;

    fn poll_frame(
        mut self: std::pin::Pin<&mut Self>,
        _: &mut std::task::Context<'_>,
    ) -> std::task::Poll<Option<Result<hyper::body::Frame<Bytes>, std::io::Error>>> {
        std::task::Poll::Ready(Some(match self.0.take() {
            Some(part) => Ok(hyper::body::Frame::data(part)),
            None => Err(std::io::ErrorKind::ConnectionReset.into()),
        }))
    }
}

#[tokio::test]
async fn u10_a_note_survives_an_expired_sign_in() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let fields = [
        ("form_key", KEY),
        ("title", "A & \"b\""),
        ("text", "\n  B < c\nd"),
        ("material", "gunmetal"),
        ("on", "4 BA"),
        ("pressure", "yes"),
        ("do", "send"),
    ];
    let answer = club.post("/notes/new", None, &fields).await;
    assert_eq!(answer.status, StatusCode::UNAUTHORIZED);
    assert_eq!(answer.header("cache-control"), "no-store");
    assert!(answer.body.contains("href=\"/sign-in\""), "{}", answer.body);
    let again = filled(&answer.body);
    for (name, value) in fields {
        let held = again.iter().find(|(held, _)| held == name).unwrap();
        assert_eq!(held.1, value, "{name}");
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
    let again: Vec<(&str, &str)> = again.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
    for _ in 0..2 {
        let answer = club.post("/notes/new", Some(&author), &again).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 1);
}

#[tokio::test]
async fn u10_a_form_sent_again_with_other_words_makes_another_note() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let first = [("form_key", KEY), ("title", "A"), ("text", "First words"), ("do", "send")];
    let second = [("form_key", KEY), ("title", "A"), ("text", "Other words"), ("do", "send")];
    for fields in [first, second, first, second] {
        let answer = club.post("/notes/new", Some(&author), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 2);
    for text in ["First words", "Other words"] {
        let query = "SELECT count(*) FROM note_version WHERE state = 'waiting' AND text = ";
        let query: &'static str = format!("{query}'{text}'").leak();
        assert_eq!(club.count(query).await, 1, "{text}");
    }
}

#[tokio::test]
async fn u10_a_form_that_is_anothers_gives_back_what_was_typed() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let fields = [("form_key", KEY), ("title", "A"), ("text", "First words"), ("do", "send")];
    let note = club.send_in(&author, &fields).await;
    let fields = [("form_key", KEY), ("title", "B"), ("text", "My own words"), ("do", "send")];
    for address in ["/notes/new".to_owned(), format!("/notes/{note}/edit"), "/notes/99/edit".into()]
    {
        let answer = club.post(&address, Some(&other), &fields).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{address}: {}", answer.body);
        assert!(!answer.body.contains("First words"), "{}", answer.body);
        let again = filled(&answer.body);
        assert!(answer.body.contains("action=\"/notes/new\""), "{}", answer.body);
        let text = again.iter().find(|(name, _)| name == "text").unwrap();
        assert_eq!(text.1, "My own words", "{address}");
        let key = again.iter().find(|(name, _)| name == "form_key").unwrap();
        assert_ne!(key.1, KEY, "{address}");
        let mut again: Vec<_> = again.iter().map(|(n, v)| (n.as_str(), v.as_str())).collect();
        again.push(("do", "send"));
        let answer = club.post("/notes/new", Some(&other), &again).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
}

#[tokio::test]
async fn a_key_that_no_form_made_is_no_fault_of_ours() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    for key in ["\0".repeat(20), " ".repeat(20), "\u{7f}".repeat(16), "é".repeat(16)] {
        let fields = [("form_key", key.as_str()), ("title", "A"), ("text", "B"), ("do", "send")];
        let answer = club.post("/notes/new", Some(&author), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{key:?}: {}", answer.body);
    }
}

#[tokio::test]
async fn a_title_or_a_text_that_nobody_can_see_is_missing() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    for unseen in ["\u{200b}", "\u{3164}\u{3164}", "\u{ad} \u{2060}", "\u{2800}", "\u{e0061}"] {
        for (title, text, wrong) in [(unseen, "B", "title"), ("A", unseen, "text")] {
            let fields = [("title", title), ("text", text), ("do", "send")];
            let answer = club.post("/notes/new", Some(&author), &fields).await;
            assert_eq!(answer.status.as_u16(), 422, "{}", unseen.escape_unicode());
            assert!(answer.body.contains(&format!("id=\"{wrong}-error\"")), "{}", answer.body);
        }
    }
}

#[tokio::test]
async fn u06_a_form_that_is_wrong_comes_back_whole() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let fields = [
        ("form_key", KEY),
        ("title", ""),
        ("text", "Kept words"),
        ("material", "Kept metal"),
        ("on", "unobtainium"),
        ("do", "send"),
    ];
    let answer = club.post("/notes/new", Some(&author), &fields).await;
    assert_eq!(answer.status.as_u16(), 422);
    let body = &answer.body;
    assert!(body.contains("<title>Error: "), "{body}");
    for held in [KEY, "Kept words", "Kept metal", "unobtainium"] {
        assert!(body.contains(held), "{held}: {body}");
    }
    for words in ["href=\"#title\"", "href=\"#on\"", "id=\"title-error\"", "id=\"on-error\""] {
        assert!(body.contains(words), "{words}: {body}");
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
    // A preview keeps everything, and nothing is written.
    let mut preview = fields.to_vec();
    preview.retain(|(name, _)| *name != "on" && *name != "do");
    preview.push(("do", "preview"));
    let answer = club.post("/notes/new", Some(&author), &preview).await;
    assert_eq!(answer.status, StatusCode::OK);
    assert!(answer.body.contains("<p>Kept words</p>"), "{}", answer.body);
    assert!(answer.body.contains(&format!("value=\"{KEY}\"")), "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
}

/// Who asks for the feed again and again costs nothing, and gets what is shown by now all the same.
#[tokio::test]
async fn u29_the_feed_is_made_once_for_all_until_something_changes() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    club.shown(&author, &moderator, &[("title", "First"), ("text", "C")]).await;
    assert!(club.get("/notes.atom", None).await.body.contains("<title>First</title>"));
    club.shown(&author, &moderator, &[("title", "Second"), ("text", "C")]).await;
    let feed = club.get("/notes.atom", None).await;
    assert!(feed.body.contains("<title>Second</title>"), "{}", feed.body);
    club.app.database.close().await;
    for _ in 0..5 {
        let again = club.get("/notes.atom", None).await;
        assert_eq!((again.status, &again.body), (StatusCode::OK, &feed.body));
    }
    assert_eq!(
        club.get("/notes.atom", Some(&author)).await.body,
        feed.body,
        "a member's is no other"
    );
}

#[tokio::test]
async fn u29_the_feed_is_valid_stable_and_held() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let empty = club.get("/notes.atom", None).await.body;
    assert!(Document::parse(&empty).is_ok(), "{empty}");
    let note = club.shown(&author, &moderator, &[("title", "A & b"), ("text", "*C*")]).await;
    let feed = club.get("/notes.atom", None).await;
    assert_eq!(feed.header("content-type"), "application/atom+xml; charset=utf-8");
    let tag = feed.header("etag").to_owned();
    let document = Document::parse(&feed.body).unwrap();
    let root = document.root_element();
    let ns = "http://www.w3.org/2005/Atom";
    let texts = |name: &str| -> Vec<&str> {
        let named = root.descendants().filter(|node| node.has_tag_name((ns, name)));
        named.filter_map(|node| node.text()).collect()
    };
    assert!(root.has_tag_name((ns, "feed")));
    assert_eq!(
        texts("id"),
        ["tag:club.test,2026:notes", &format!("tag:club.test,2026:notes/{note}")]
    );
    assert_eq!(texts("title"), ["Shop notes", "A & b"]);
    assert_eq!(texts("name"), ["Ada Penn"]);
    assert_eq!(texts("updated"), ["2027-01-15T08:00:00Z"; 2]);
    assert!(texts("content")[0].contains("<em>C</em>"));
    let links: Vec<_> = root.descendants().filter_map(|node| node.attribute("href")).collect();
    assert!(links.iter().all(|link| link.starts_with("https://club.test/")), "{links:?}");
    assert!(club.get("/notes", None).await.body.contains("type=\"application/atom+xml\""));

    // What does not change the text changes no feed; a restart neither.
    let report = [("danger", "x")];
    let other = club.join("Cyril Moss", Right::None).await;
    club.post(&format!("/notes/{note}/verdict"), Some(&other), &[("found", "worked")]).await;
    club.post(&format!("/notes/{note}/report"), Some(&other), &report).await;
    club.decide(&moderator, note, ("settle", "")).await;
    assert_eq!(club.get("/notes.atom", None).await.header("etag"), tag);
    let club = club.restarted().await;
    assert_eq!(club.get("/notes.atom", None).await.header("etag"), tag);
}

#[tokio::test]
async fn u30_the_exports_hold_every_shown_note_and_only_those() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    // More than are read at once.
    for number in 0..230 {
        let title = format!("Note {number}");
        let fields = [("title", title.as_str()), ("text", "B, \"c\"\nd"), ("thread", "4 BA")];
        club.shown(&author, &moderator, &fields).await;
    }
    club.send_in(&author, &[("title", "Unseen"), ("text", "B")]).await;
    let csv = club.get("/notes.csv", None).await.body;
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name| head.iter().position(|held| held == name).unwrap();
    let [belongs_to, text] = ["belongs_to", "text"].map(column);
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let json = club.get("/notes.json", None).await.json();
    let notes = json["notes"].as_array().unwrap();
    assert_eq!((rows.len(), notes.len()), (230, 230));
    for (row, note) in rows.iter().zip(notes) {
        assert_eq!(row[0], note["id"].to_string());
        assert_eq!(row[1], *note["url"].as_str().unwrap());
        assert_eq!(row[2], *note["title"].as_str().unwrap());
        assert_eq!(&row[text], "B, \"c\"\nd");
        assert_eq!(&row[belongs_to], "/threads/ba/4");
    }
    assert!(!csv.contains("Unseen") && !json.to_string().contains("Unseen"));
    // The list turns over to its end.
    let (mut seen, mut next) = (0, "/notes".to_owned());
    loop {
        let body = club.get(&next, None).await.body;
        seen += body.matches("<li><a href=\"/notes/").count()
            - body.matches("<li><a href=\"/notes/new").count()
            - body.matches("<li><a href=\"/notes/compare").count();
        match body.split("<a href=\"/notes?before=").nth(1) {
            Some(rest) => next = format!("/notes?before={}", rest.split('"').next().unwrap()),
            None => break,
        }
    }
    assert_eq!(seen, 230);
}
