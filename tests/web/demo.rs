//! The invented club: it fills an empty folder alone, is marked in every note, and goes without a trace.

use std::collections::BTreeMap;
use std::process::{Command, Output};

use axum::http::StatusCode;
use holewright_core::calc::tapping;
use holewright_core::tables::{drills, threads};
use holewright_server::db::Database;
use holewright_server::demo::{self, Fate, Filled, MARK, MEMBERS, NotDone};
use holewright_server::rules::auth::password::Hashing;
use holewright_server::rules::notes::belongs;

use crate::process;
use crate::support::{Folder, NOW, Server};

async fn filled(database: &Database) -> Filled {
    demo::fill(database, NOW, &Hashing::default()).await.unwrap()
}

async fn count(database: &Database, query: &'static str) -> i64 {
    let [readers, _] = database.pools();
    let (count,): (i64,) = sqlx::query_as(query).fetch_one(readers).await.unwrap();
    count
}

/// How many notes stand in which way, by the same words as [`meant`].
async fn standing(database: &Database) -> BTreeMap<String, i64> {
    let [readers, _] = database.pools();
    let rows: Vec<(String, i64)> = sqlx::query_as(
        "SELECT CASE
             WHEN withdrawn_at IS NOT NULL THEN 'withdrawn'
             WHEN hidden_at IS NOT NULL THEN 'hidden'
             WHEN EXISTS (SELECT 1 FROM correction WHERE note_id = note.id) THEN 'corrected'
             WHEN EXISTS (SELECT 1 FROM verdict WHERE note_id = note.id) THEN 'judged'
             WHEN v.state = 'draft' AND v.reason <> '' THEN 'change asked'
             WHEN v.state = 'waiting' AND v.is_pressure THEN 'for the inspector'
             ELSE v.state END AS stands, count(*)
         FROM note JOIN note_version AS v ON v.note_id = note.id GROUP BY stands",
    )
    .fetch_all(readers)
    .await
    .unwrap();
    rows.into_iter().collect()
}

const STANDING: [(&str, i64); 10] = [
    ("change asked", 1),
    ("corrected", 4),
    ("declined", 4),
    ("draft", 2),
    ("for the inspector", 3),
    ("hidden", 3),
    ("judged", 17),
    ("shown", 20),
    ("waiting", 3),
    ("withdrawn", 3),
];

#[tokio::test]
async fn it_fills_an_empty_club_with_notes_in_every_state() {
    let server = Server::start().await;
    let database = &server.app.database;
    let made = filled(database).await;
    assert_eq!(made.notes, 60);
    let meant = STANDING.map(|(stands, notes)| (stands.to_owned(), notes));
    assert_eq!(standing(database).await, BTreeMap::from(meant));
    for (query, members) in [
        ("SELECT count(*) FROM member", 12),
        ("SELECT count(*) FROM member WHERE is_secretary", 1),
        ("SELECT count(*) FROM member WHERE is_moderator", 2),
        ("SELECT count(*) FROM member WHERE is_inspector", 1),
        ("SELECT count(DISTINCT author_id) FROM note WHERE author_id IS NOT NULL", 8),
        ("SELECT count(*) FROM note_version WHERE is_pressure AND state = 'shown'", 1),
    ] {
        assert_eq!(count(database, query).await, members, "{query}");
    }
    let future = "SELECT count(*) FROM act WHERE at > 1800000000";
    assert_eq!(count(database, future).await, 0);
    let out_of_order = "SELECT count(*) FROM act AS a JOIN act AS b ON b.id = a.id + 1
        WHERE b.at < a.at AND a.what <> 'demo-made'";
    assert_eq!(count(database, out_of_order).await, 0);

    // Everybody has the password that is printed, and it is printed once.
    let said = made.to_string();
    assert_eq!(said.matches(made.password.secret()).count(), 1);
    for member in MEMBERS {
        assert!(said.contains(member.name), "{}", member.name);
        let key = holewright_server::rules::auth::name::key(member.name);
        let account =
            holewright_server::db::accounts::named(database, &key).await.unwrap().unwrap();
        let hash = Some(account.password_hash);
        assert!(Hashing::default().verify(made.password.clone(), hash).await.unwrap());
    }
}

#[tokio::test]
async fn readers_see_the_marks() {
    let server = Server::start().await;
    filled(&server.app.database).await;
    let list = server.get("/notes").await;
    assert_eq!(list.status, StatusCode::OK);
    assert!(list.body.contains(MARK), "{}", list.body);
    let page = server.get("/materials/gunmetal").await;
    assert!(page.body.contains("Gland studs in the pump body") && page.body.contains(MARK));
    let exported = server.get("/notes.json").await.body;
    let shown = demo::notes()
        .iter()
        .filter(|row| matches!(row.fate, Fate::Shown | Fate::Judged(_) | Fate::Corrected(_)))
        .count();
    assert_eq!(exported.matches(MARK).count(), shown);
}

#[tokio::test]
async fn every_note_is_marked_and_every_thing_it_names_has_its_page() {
    let server = Server::start().await;
    filled(&server.app.database).await;
    let unmarked =
        "SELECT count(*) FROM note_version WHERE text NOT LIKE 'Demonstration: invented.%'";
    assert_eq!(count(&server.app.database, unmarked).await, 0);
    let [readers, _] = server.app.database.pools();
    let things: Vec<(String,)> = sqlx::query_as("SELECT DISTINCT entry_id FROM note_entry")
        .fetch_all(readers)
        .await
        .unwrap();
    assert!(things.len() > 50, "{} things", things.len());
    for (thing,) in things {
        let answer = server.get(&format!("/{thing}")).await;
        assert_eq!(answer.status, StatusCode::OK, "{thing}");
    }
    for row in demo::notes() {
        let [title, on, text] = row.said;
        for id in on.split(", ") {
            assert!(belongs::at(id).is_some(), "{title}: {id}");
        }
        let done = row.typed(String::new()).done;
        let (thread, drill) = (done.text("thread"), done.text("drill"));
        if !drill.is_empty() {
            assert!(drills::read::read(drill).is_ok(), "{title}: {drill}");
        }
        if !thread.is_empty() {
            assert!(threads::read::candidates(thread).is_ok(), "{title}: {thread}");
        }
        assert!(text.ends_with(['.', '?']), "{title}");
    }
}

/// A note never says to tap a hole that the tables would not: the drill is among those of its thread,
/// within the standard's largest hole where we hold one, and not below the least minor diameter.
#[test]
fn every_drill_suits_its_thread() {
    let mut pairs = 0;
    for row in demo::notes() {
        let ([title, ..], done) = (row.said, row.typed(String::new()).done);
        let (thread, drill) = (done.text("thread"), done.text("drill"));
        if thread.is_empty() {
            continue;
        }
        let drill = drills::read::read(drill).unwrap();
        let candidates = tapping::candidates(threads::read::candidates(thread).unwrap()).unwrap();
        let found = candidates.iter().find(|candidate| candidate.drill.path() == drill.path());
        let found = found.unwrap_or_else(|| panic!("{title}: {} for {thread}", drill.label));
        assert!(found.within_standard != Some(false) && !found.below_minor, "{title}: {found:?}");
        pairs += 1;
    }
    assert!(pairs >= 25, "{pairs} pairs");
}

#[tokio::test]
async fn it_refuses_a_folder_that_is_not_empty() {
    let server = Server::start().await;
    let database = &server.app.database;
    let [_, writer] = database.pools();
    sqlx::query(
        "INSERT INTO member (name, name_key, password_hash, joined_at) VALUES ('Ada', 'ada', '$argon2id$x', 1)",
    )
    .execute(writer)
    .await
    .unwrap();
    let refused = demo::fill(database, NOW, &Hashing::default()).await;
    assert!(matches!(refused, Err(NotDone::NotEmpty { members: 1, notes: 0 })), "{refused:?}");
    assert_eq!(count(database, "SELECT count(*) FROM note").await, 0);
    let refused = demo::remove(database, NOW).await;
    assert!(matches!(refused, Err(NotDone::NoDemo)), "{refused:?}");
    assert_eq!(count(database, "SELECT count(*) FROM member").await, 1);

    // A note whose author has left is somebody's too.
    sqlx::query("DELETE FROM member").execute(writer).await.unwrap();
    sqlx::query("INSERT INTO note (form_key, made_at) VALUES ('0123456789abcdef', 1)")
        .execute(writer)
        .await
        .unwrap();
    let refused = demo::fill(database, NOW, &Hashing::default()).await;
    assert!(matches!(refused, Err(NotDone::NotEmpty { members: 0, notes: 1 })), "{refused:?}");
}

#[tokio::test]
async fn it_stays_where_others_are_beside_it_and_else_goes_whole() {
    let server = Server::start().await;
    let database = &server.app.database;
    let [_, writer] = database.pools();
    filled(database).await;
    for (put, members, notes, take) in [
        (
            "INSERT INTO member (name, name_key, password_hash, joined_at) VALUES ('Ada', 'ada', '$argon2id$x', 1)",
            1,
            0,
            "DELETE FROM member WHERE name_key = 'ada'",
        ),
        (
            "INSERT INTO note (author_id, form_key, made_at) SELECT min(id), '0123456789abcdef', 1 FROM member",
            0,
            1,
            "DELETE FROM note WHERE form_key = '0123456789abcdef'",
        ),
    ] {
        sqlx::query(put).execute(writer).await.unwrap();
        match demo::remove(database, NOW).await {
            Err(NotDone::Others { members: found, notes: written }) => {
                assert_eq!((found, written), (members, notes));
            }
            other => panic!("{other:?}"),
        }
        assert_eq!(count(database, "SELECT count(*) FROM note").await, 60 + notes);
        sqlx::query(take).execute(writer).await.unwrap();
    }
    sqlx::query(
        "INSERT INTO session (token_hash, number, member_id, made_at, seen_at)
         SELECT zeroblob(32), 1, min(id), 1, 1 FROM member",
    )
    .execute(writer)
    .await
    .unwrap();
    let gone = demo::remove(database, NOW).await.unwrap();
    assert_eq!((gone.members, gone.notes), (12, 60));
    for query in [
        "SELECT count(*) FROM member",
        "SELECT count(*) FROM session",
        "SELECT count(*) FROM slip",
        "SELECT count(*) FROM note",
        "SELECT count(*) FROM note_version",
        "SELECT count(*) FROM note_entry",
        "SELECT count(*) FROM correction",
        "SELECT count(*) FROM verdict",
        "SELECT count(*) FROM safety_report",
        "SELECT count(*) FROM note_text",
        "SELECT count(*) FROM act WHERE what <> 'demo-removed'",
    ] {
        assert_eq!(count(database, query).await, 0, "{query}");
    }
    // The folder is as empty as before: it can be filled again.
    assert_eq!(filled(database).await.notes, 60);
}

fn run(folder: &Folder, more: &[&str]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_holewright"));
    program.args(["demo", "--data-dir", folder.path().to_str().unwrap()]).args(more);
    process::run(&program)
}

#[test]
fn the_command_fills_refuses_a_second_time_and_removes() {
    let folder = Folder::new();
    let first = run(&folder, &[]);
    let said = String::from_utf8(first.stdout).unwrap();
    assert!(first.status.success() && said.contains("Enid Hathersage (secretary)"), "{said}");

    let second = run(&folder, &[]);
    let said = String::from_utf8(second.stderr).unwrap();
    assert_eq!(second.status.code(), Some(1));
    assert!(said.contains("12 members and 60 notes") && said.contains("--data-dir"), "{said}");
    assert_eq!(said.lines().count(), 1, "{said}");

    let removed = run(&folder, &["--remove"]);
    let said = String::from_utf8(removed.stdout).unwrap();
    assert!(removed.status.success() && said.contains("12 members, 60 notes"), "{said}");
    let again = run(&folder, &["--remove"]);
    let said = String::from_utf8(again.stderr).unwrap();
    assert_eq!(again.status.code(), Some(1));
    assert!(said.contains("no demonstration"), "{said}");
}

#[tokio::test]
async fn it_names_the_club_and_takes_the_name_with_it_but_no_other() {
    let server = Server::start().await;
    let database = &server.app.database;
    let club = async || holewright_server::db::club::read(database).await.unwrap();
    let before = club().await;
    filled(database).await;
    assert_eq!(club().await.name, "Marlbeck Model Engineers");
    assert!(club().await.welcome.contains("invented"), "{:?}", club().await);
    demo::remove(database, NOW).await.unwrap();
    assert_eq!(club().await, before);
    let named = "UPDATE club SET name = 'The Thursday Bench'";
    sqlx::query(named).execute(database.pools()[1]).await.unwrap();
    filled(database).await;
    assert_eq!(
        (club().await.name, club().await.place),
        ("The Thursday Bench".into(), String::new())
    );
    demo::remove(database, NOW).await.unwrap();
    assert_eq!(club().await.name, "The Thursday Bench");
}
