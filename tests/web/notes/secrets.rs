//! Who sees what: S20, S21, S22, S41, and that a note never alters a figure.

use axum::http::StatusCode;
use holewright_server::rules::auth::Token;

use super::club::{Club, Person, Right};

const SECRET: &str = "Unsaid zirconium";

/// Every address that shows notes to anybody.
const PUBLIC: [&str; 11] = [
    "/notes",
    "/notes?q=zirconium",
    "/notes?on=gunmetal",
    "/notes?confirmed=yes",
    "/notes?corrected=yes",
    "/notes.atom",
    "/notes.csv",
    "/notes.json",
    "/materials/gunmetal",
    "/search?q=zirconium",
    "/api/v1/search?q=zirconium",
];

async fn check_secret(club: &Club, note: i64, readers: &[Option<&Person>]) {
    for reader in readers {
        for path in PUBLIC {
            let answer = club.get(path, *reader).await;
            assert!(!answer.body.contains(SECRET), "{path}: {}", answer.body);
        }
        for path in [format!("/notes/{note}"), format!("/notes/{note}/history")] {
            let answer = club.get(&path, *reader).await;
            assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
            assert!(!answer.body.contains(SECRET), "{path}: {}", answer.body);
            // The same as where there is nothing at all.
            let nothing = club.get(&path.replace(&note.to_string(), "999"), *reader).await;
            let plain = |body: &str| {
                let id = body.split("The number of this request is ").nth(1);
                body.replace(&id.map(|rest| rest[..16].to_owned()).unwrap_or_default(), "")
            };
            assert_eq!(plain(&answer.body), plain(&nothing.body), "{path}");
        }
    }
}

#[tokio::test]
async fn s20_nobody_else_sees_or_touches_a_draft_or_a_waiting_note() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", SECRET), ("text", SECRET), ("on", "gunmetal")];
    let mut draft = fields.to_vec();
    draft.push(("do", "draft"));
    let answer = club.post("/notes/new", Some(&author), &draft).await;
    let note: i64 = answer.header("location").split('/').nth(2).unwrap().parse().unwrap();
    // A draft is its author's alone, a moderator's too is none of theirs.
    check_secret(&club, note, &[None, Some(&other), Some(&moderator)]).await;
    assert!(!club.get("/queue", Some(&moderator)).await.body.contains(SECRET));
    assert_eq!(club.get(&format!("/notes/{note}"), Some(&author)).await.status, StatusCode::OK);

    let edit = format!("/notes/{note}/edit");
    let mut sent = fields.to_vec();
    sent.push(("do", "send"));
    club.post(&edit, Some(&author), &sent).await;
    check_secret(&club, note, &[None, Some(&other)]).await;
    let page = format!("/notes/{note}");
    assert!(club.get(&page, Some(&moderator)).await.body.contains(SECRET));
    for (path, fields) in [
        (edit.clone(), &[("title", "A"), ("text", "B"), ("do", "send")][..]),
        (format!("{page}/withdraw"), &[("why", "x")]),
        (format!("{page}/report"), &[("danger", "x")]),
        (format!("{page}/verdict"), &[("found", "worked")]),
        (format!("{page}/verdict"), &[]),
        (format!("{page}/report"), &[]),
    ] {
        let answer = club.post(&path, Some(&other), fields).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}: {}", answer.body);
        assert!(!answer.body.contains(SECRET), "{path}");
    }
    assert_eq!(club.get(&edit, Some(&other)).await.status, StatusCode::NOT_FOUND);
    assert_eq!(club.get("/queue", Some(&other)).await.status, StatusCode::FORBIDDEN);
    assert_eq!(club.get("/queue", None).await.status, StatusCode::SEE_OTHER);
    let decision = [("version", "1"), ("do", "pass")];
    let refused = club.post(&format!("/queue/{note}"), Some(&other), &decision).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    club.decide(&moderator, note, ("decline", "No.")).await;
    check_secret(&club, note, &[None, Some(&other), Some(&moderator)]).await;
}

#[tokio::test]
async fn s21_fields_no_form_has_change_nothing() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let fields = [
        ("title", "A"),
        ("text", "B"),
        ("author_id", "2"),
        ("id", "77"),
        ("state", "shown"),
        ("approved", "1"),
        ("shown_version", "1"),
        ("is_moderator", "1"),
        ("title", "Second filling"),
    ];
    let note = club.send_in(&author, &fields).await;
    assert_eq!(note, 1);
    assert_eq!(club.version(note, "waiting").await, 1);
    let query = "SELECT author_id FROM note";
    assert_eq!(club.count(query).await, author.id);
    assert_ne!(author.id, other.id);
    assert_eq!(club.count("SELECT count(*) FROM note_version WHERE title = 'A'").await, 1);
    assert_eq!(club.count("SELECT count(*) FROM member WHERE is_moderator = 1").await, 0);
}

#[tokio::test]
async fn s22_two_who_decide_at_once_do_not_both_win() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let bert = club.join("Bert Stone", Right::Moderator).await;
    let dora = club.join("Dora Vale", Right::Moderator).await;
    for round in 0..8 {
        let title = format!("Round {round}");
        let note = club.send_in(&author, &[("title", &title), ("text", "B")]).await;
        let version = club.version(note, "waiting").await.to_string();
        let queue = format!("/queue/{note}");
        let pass = [("version", version.as_str()), ("do", "pass")];
        let decline = [("version", version.as_str()), ("do", "decline"), ("reason", "Kept words")];
        let (one, other) = tokio::join!(
            club.post(&queue, Some(&bert), &pass),
            club.post(&queue, Some(&dora), &decline)
        );
        let statuses = [one.status.as_u16(), other.status.as_u16()];
        assert!(statuses == [303, 409] || statuses == [409, 303], "{statuses:?}");
        let loser = if one.status.as_u16() == 409 { &one.body } else { &other.body };
        assert!(loser.contains("Changed meanwhile"), "{loser}");
        let now = if one.status.as_u16() == 409 { "Declined: Kept words" } else { "It is shown." };
        assert!(loser.contains(now), "{now}: {loser}");
        if other.status.as_u16() == 409 {
            assert!(loser.contains("What you typed: Kept words"), "{loser}");
        }
    }
}

#[tokio::test]
async fn s22_what_changed_since_it_was_read_is_not_passed() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let bert = club.join("Bert Stone", Right::Moderator).await;
    let note = club.send_in(&author, &[("title", "A"), ("text", "Read")]).await;
    let version = club.version(note, "waiting").await.to_string();
    let edit = format!("/notes/{note}/edit");
    let unread = [("title", "A"), ("text", "Unread"), ("do", "send")];
    club.post(&edit, Some(&author), &unread).await;
    let pass = [("version", version.as_str()), ("do", "pass")];
    let answer = club.post(&format!("/queue/{note}"), Some(&bert), &pass).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert_eq!(club.get(&format!("/notes/{note}"), None).await.status, StatusCode::NOT_FOUND);

    // A passed text cannot change unread.
    club.decide(&bert, note, ("pass", "")).await;
    club.post(&edit, Some(&author), &[("title", "A"), ("text", "Later"), ("do", "send")]).await;
    let body = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(body.contains("Unread") && !body.contains("Later"), "{body}");
}

#[tokio::test]
async fn s22_what_came_back_with_a_change_asked_for_is_read_anew() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let bert = club.join("Bert Stone", Right::Moderator).await;
    let dora = club.join("Dora Vale", Right::Moderator).await;
    let note = club.send_in(&author, &[("title", "A"), ("text", "Read")]).await;
    let read = club.version(note, "waiting").await.to_string();
    club.decide(&bert, note, ("change", "At what speed?")).await;
    let unread = [("title", "A"), ("text", "Unread"), ("do", "send")];
    club.post(&format!("/notes/{note}/edit"), Some(&author), &unread).await;
    // The page that Dora has open still holds the first text.
    let pass = [("version", read.as_str()), ("do", "pass")];
    let answer = club.post(&format!("/queue/{note}"), Some(&dora), &pass).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert_eq!(club.get(&format!("/notes/{note}"), None).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_correction_stands_above_the_wording_it_was_made_of_and_no_other() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let bert = club.join("Bert Stone", Right::Moderator).await;
    // The clock of the tests stands still: all of it comes in one second.
    let note = club.shown(&author, &bert, &[("title", "A"), ("text", "At 900 rev/min")]).await;
    let shown = club.version(note, "shown").await.to_string();
    let correct = [("version", shown.as_str()), ("correction", "Half that.")];
    club.post(&format!("/notes/{note}/correct"), Some(&bert), &correct).await;
    let page = format!("/notes/{note}");
    assert!(club.get(&page, None).await.body.contains("Half that."));
    let slower = [("title", "A"), ("text", "At 450 rev/min"), ("do", "send")];
    club.post(&format!("/notes/{note}/edit"), Some(&author), &slower).await;
    assert!(club.get(&page, None).await.body.contains("Half that."));
    club.decide(&bert, note, ("pass", "")).await;
    let body = club.get(&page, None).await.body;
    assert!(body.contains("At 450") && !body.contains("Half that."), "{body}");
    assert!(!club.get("/notes?q=half", None).await.body.contains("At 450"));
}

#[tokio::test]
async fn s22_nobody_passes_their_own_note_unless_nobody_else_could() {
    let club = Club::open().await;
    let secretary = club.join("Sam Reed", Right::Secretary).await;
    let note = club.send_in(&secretary, &[("title", "Alone"), ("text", "B")]).await;
    let boiler = club.send_in(&secretary, &[("title", "Alone"), ("text", "A boiler")]).await;
    assert_eq!(club.decide(&secretary, note, ("pass", "")).await.status, StatusCode::SEE_OTHER);
    // The inspector is not the secretary's to replace.
    assert_eq!(club.decide(&secretary, boiler, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    let recorded = "SELECT count(*) FROM act WHERE what = 'note-shown' AND detail <> ''";
    assert_eq!(club.count(recorded).await, 1);
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let note = club.send_in(&secretary, &[("title", "Not alone"), ("text", "B")]).await;
    assert_eq!(club.decide(&secretary, note, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    let own = club.send_in(&moderator, &[("title", "Mine"), ("text", "B")]).await;
    assert_eq!(club.decide(&moderator, own, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    assert_eq!(club.decide(&moderator, note, ("pass", "")).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn s41_reference_pages_are_the_same_for_everybody_and_the_rest_is_not_kept() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", "A"), ("text", "B"), ("on", "gunmetal, 4 BA")];
    let note = club.shown(&author, &moderator, &fields).await;
    for path in ["/", "/materials/gunmetal", "/threads/ba/4", "/search?q=B", "/plan"] {
        let anyone = club.get(path, None).await;
        for reader in [&author, &moderator] {
            let theirs = club.get(path, Some(reader)).await;
            assert_eq!(theirs.body, anyone.body, "{path}");
            assert_eq!(theirs.headers.get("etag"), anyone.headers.get("etag"), "{path}");
        }
    }
    for path in ["/notes".to_owned(), format!("/notes/{note}")] {
        let anyone = club.get(&path, None).await;
        assert_eq!(anyone.header("cache-control"), "no-cache", "{path}");
        assert!(anyone.header("vary").contains("Cookie"), "{path}");
        let theirs = club.get(&path, Some(&author)).await;
        assert_eq!(theirs.header("cache-control"), "private, no-store", "{path}");
        assert!(!theirs.headers.contains_key("etag"), "{path}");
    }
    for (path, reader) in
        [("/notes/mine", &author), ("/notes/new", &author), ("/queue", &moderator)]
    {
        let theirs = club.get(path, Some(reader)).await;
        assert_eq!(theirs.header("cache-control"), "private, no-store", "{path}");
    }
}

#[tokio::test]
async fn s07_a_cookie_of_another_program_or_a_dead_one_signs_nobody_out() {
    let club = Club::open().await;
    let member = club.join("Ada Penn", Right::None).await;
    let live = member.cookie();
    let ended = Token::new().unwrap();
    let dead = format!("__Host-holewright={}", ended.secret());
    let name = "__Host-holewright";
    for cookies in [
        format!("theme=caf\u{e9}; {live}"),
        format!("{live}; theme=\u{2019}"),
        format!("{dead}; {live}"),
        format!("{live}; {dead}"),
        format!("{name}=; {name}=x; {live}"),
        format!("{name}=caf\u{e9}; {live}"),
        format!("a=\"b; c=\"; =; ;; {live}"),
    ] {
        let other = member.with_cookies(&cookies);
        let status = club.get("/me", Some(&other)).await.status;
        assert_eq!(status, StatusCode::OK, "{cookies}");
        // What changes something is still known to be theirs.
        let fields = [("do", "draft"), ("title", "A")];
        let answer = club.post("/notes/new", Some(&other), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{cookies}: {}", answer.body);
    }
    let dead = member.with_cookies(&dead);
    assert_eq!(club.get("/me", Some(&dead)).await.status, StatusCode::SEE_OTHER);
    // Signing out ends the session, wherever it stands among them.
    let both = member.with_cookies(&format!("{}; {live}", dead.cookie()));
    club.post("/sign-out", Some(&both), &[]).await;
    assert_eq!(club.get("/me", Some(&member)).await.status, StatusCode::SEE_OTHER);
}
