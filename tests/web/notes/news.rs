//! What is new to a member: every kind of it that the database tells, and what of it counts as read.

use std::collections::BTreeSet;

use axum::http::StatusCode;
use holewright_server::rules::notes::decision::Decision;
use holewright_server::rules::notes::news::NewsKind;

use super::club::{Club, Person};
use super::feed::make;
use super::open::read_news;
use super::scene::Scene;

async fn done(club: &Club, by: &Person, path: &str, fields: &[(&str, &str)]) {
    let answer = club.post(path, Some(by), fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path} {fields:?}: {}", answer.body);
}

/// A remark of the reader's on the note, decided about.
async fn remark(scene: &Scene, note: i64, (what, reason): (&str, &str)) {
    let Scene { club, moderator, reader, .. } = scene;
    done(club, reader, &format!("/notes/{note}/remark"), &[("remark", what)]).await;
    let remark = club.count("SELECT max(id) FROM remark").await.to_string();
    let fields = [("remark", remark.as_str()), ("do", what), ("reason", reason)];
    done(club, moderator, "/queue/remarks", &fields).await;
}

async fn decided(scene: &Scene, title: &str, (what, reason): (&str, &str)) -> i64 {
    let note = scene.send_in(title).await;
    let answer = scene.club.decide(&scene.moderator, note, (what, reason)).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    note
}

/// The part of the page that tells what is new; nothing where nothing is.
async fn news(club: &Club, by: &Person) -> String {
    let page = club.get("/notes/mine", Some(by)).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let told = page
        .body
        .split_once("<h2 id=\"news\">")
        .and_then(|(_, rest)| rest.split_once("</section>"));
    told.map(|(news, _)| news.to_owned()).unwrap_or_default()
}

/// Everything that can happen to what an author wrote, and to what a reader remarked on it.
async fn everything() -> Scene {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, reader, second, .. } = &scene;
    decided(&scene, "Bush", ("change", "Say how.")).await;
    decided(&scene, "Washer", ("decline", "Known already.")).await;
    let note = decided(&scene, "Gland nut", ("pass", "")).await;
    let warns = [("title", "Small tap"), ("text", "The tap broke."), ("warning", "yes")];
    let warning = club.shown(author, moderator, &warns).await;
    for id in [note, warning] {
        let verdict = format!("/notes/{id}/verdict");
        done(club, reader, &verdict, &[("found", "worked")]).await;
        done(club, second, &verdict, &[("found", "did-not")]).await;
    }
    remark(&scene, note, ("show", "")).await;
    remark(&scene, note, ("decline", "Known already.")).await;
    let version = club.version(note, "shown").await.to_string();
    let said = [("version", version.as_str()), ("correction", "Deburr it.")];
    done(club, moderator, &format!("/notes/{note}/correct"), &said).await;
    let reported = decided(&scene, "Nipple", ("pass", "")).await;
    scene.report(reported).await;
    assert_eq!(
        club.decide(moderator, reported, ("settle", "")).await.status,
        StatusCode::SEE_OTHER
    );
    let withdrawn = decided(&scene, "Stud", ("pass", "")).await;
    done(club, moderator, &format!("/notes/{withdrawn}/withdraw"), &[("why", "It was wrong.")])
        .await;
    scene
}

#[tokio::test]
async fn every_word_of_the_view_is_a_kind_of_news_and_every_kind_is_told() {
    let scene = everything().await;
    let Scene { club, author, reader, .. } = &scene;
    let [readers, _] = club.app.database.pools();
    let rows: Vec<(String,)> =
        sqlx::query_as("SELECT DISTINCT kind FROM concern").fetch_all(readers).await.unwrap();
    let words: BTreeSet<&str> = rows.iter().map(|(word,)| word.as_str()).collect();
    let kinds: BTreeSet<&str> = NewsKind::ALL.iter().map(|kind| kind.word()).collect();
    assert_eq!(words, kinds);

    // What the view could say besides: every text in it is a kind, or one of these.
    let (view,): (String,) = sqlx::query_as("SELECT sql FROM sqlite_master WHERE name = 'concern'")
        .fetch_one(readers)
        .await
        .unwrap();
    let plain: String = view.lines().map(|line| line.split("--").next().unwrap()).collect();
    let others: BTreeSet<&str> =
        plain.split('\'').skip(1).step_by(2).filter(|text| !kinds.contains(text)).collect();
    assert_eq!(others, BTreeSet::from(["", ", ", "draft", "remark-", "waiting"]), "{view}");

    let (hers, theirs) = (news(club, author).await, news(club, reader).await);
    for kind in NewsKind::ALL {
        let is_of_a_remark = matches!(kind, NewsKind::RemarkShown | NewsKind::RemarkDeclined);
        let (told, other) = if is_of_a_remark { (&theirs, &hers) } else { (&hers, &theirs) };
        // What is to be changed stands with its note.
        assert_eq!(told.contains(kind.what()), *kind != NewsKind::Change, "{kind:?}: {told}");
        assert!(!other.contains(kind.what()), "{kind:?}: {other}");
    }
    // A feed tells what its page does not count, and what is to be changed too.
    let feeds = [make(club, author).await, make(club, reader).await];
    let feeds = [club.get(&feeds[0], None).await.body, club.get(&feeds[1], None).await.body];
    for kind in NewsKind::ALL {
        let title = format!("<title>{}: ", kind.what());
        let is_told = feeds.iter().any(|feed| feed.contains(&title));
        assert_eq!(is_told, !kind.is_found(), "{kind:?}: {feeds:?}");
    }
}

#[tokio::test]
async fn an_author_is_told_that_a_note_was_hidden_and_shows_again_and_not_who_reported_it() {
    let scene = Scene::open().await;
    let Scene { club, author, moderator, second, reader, .. } = &scene;
    let note = decided(&scene, "Gland nut", ("pass", "")).await;
    let told = async |kind: NewsKind| news(club, author).await.matches(kind.what()).count();
    let both = async || [told(NewsKind::Reported).await, told(NewsKind::ReportSettled).await];
    assert_eq!(both().await, [0, 0]);
    scene.report(note).await;
    assert_eq!(both().await, [1, 0]);
    let page = news(club, author).await;
    for secret in ["Moira", "too thin"] {
        assert!(!page.contains(secret), "{secret}: {page}");
    }
    assert_eq!(news(club, second).await, "", "whoever reported it knows");
    // Another report on it hides nothing more.
    let report = format!("/notes/{note}/report");
    done(club, reader, &report, &[("danger", "It flies.")]).await;
    assert_eq!(both().await, [1, 0]);
    let settle = async || club.decide(moderator, note, ("settle", "")).await.status;
    assert_eq!(settle().await, StatusCode::SEE_OTHER);
    assert_eq!(both().await, [1, 1]);
    // What is taken back was not so; one report after the first is settled hides it once more.
    assert_eq!(scene.undo(note, moderator).await.status, StatusCode::SEE_OTHER);
    assert_eq!(both().await, [1, 0]);
    assert_eq!(settle().await, StatusCode::SEE_OTHER);
    done(club, reader, &report, &[("danger", "It flies.")]).await;
    assert_eq!(both().await, [2, 1]);
    // What is withdrawn or takes another wording is told as that.
    done(club, moderator, &format!("/notes/{note}/withdraw"), &[("why", "It was wrong.")]).await;
    assert_eq!(both().await, [2, 1]);
    assert_eq!(told(NewsKind::Withdrawn).await, 1);
}

#[tokio::test]
async fn the_newest_of_what_is_new_stands_first() {
    let scene = Scene::open().await;
    let Scene { club, author, .. } = &scene;
    for title in ["Stud", "Cap", "Bush"] {
        decided(&scene, title, ("decline", "Known already.")).await;
    }
    scene
        .execute("UPDATE note_version SET decided_at = decided_at - 60 WHERE title = 'Bush'")
        .await;
    scene.execute("UPDATE note_version SET decided_at = decided_at - 90 WHERE title = 'Cap'").await;
    let told = news(club, author).await;
    let titles: Vec<&str> = told
        .split("<li><a href")
        .skip(1)
        .map(|row| row.split(['>', '<']).nth(1).unwrap())
        .collect();
    assert_eq!(titles, ["Stud", "Bush", "Cap"], "{told}");
    // Up to the newest of them, though it stands first.
    let read = read_news(club, author, &club.get("/notes/mine", Some(author)).await.body).await;
    assert_eq!(read.status, StatusCode::SEE_OTHER, "{}", read.body);
    assert_eq!(news(club, author).await, "");
}

#[tokio::test]
async fn what_was_told_is_read_though_some_of_it_was_taken_back_since() {
    let scene = Scene::open().await;
    let Scene { club, author, reader, moderator, .. } = &scene;
    let note = decided(&scene, "Gland nut", ("pass", "")).await;
    let verdict = format!("/notes/{note}/verdict");
    done(club, reader, &verdict, &[("found", "did-not")]).await;
    let declined = decided(&scene, "Washer", ("decline", "Which metal?")).await;
    let told = club.get("/notes/mine", Some(author)).await.body;
    done(club, reader, &verdict, &[("do", "away")]).await;
    assert_eq!(scene.undo(declined, moderator).await.status, StatusCode::SEE_OTHER);
    let read = read_news(club, author, &told).await;
    assert_eq!(read.status, StatusCode::SEE_OTHER, "{}", read.body);
    assert_eq!(news(club, author).await, "");
}

#[tokio::test]
async fn the_database_keeps_for_undoing_what_can_be_undone_and_nothing_else() {
    let club = Club::open().await;
    let [readers, _] = club.app.database.pools();
    let (table,): (String,) =
        sqlx::query_as("SELECT sql FROM sqlite_master WHERE name = 'undoable'")
            .fetch_one(readers)
            .await
            .unwrap();
    let (_, words) = table.split_once("what IN (").unwrap();
    let (words, _) = words.split_once(')').unwrap();
    let kept: BTreeSet<&str> = words.split(", ").map(|word| word.trim_matches('\'')).collect();
    let undoable = Decision::ALL.iter().filter_map(|decision| decision.undoable());
    assert_eq!(kept, undoable.map(|undoable| undoable.decision().word()).collect());
}
