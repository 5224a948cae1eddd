//! Tips that were printed before come in by a table, through the queue, and say where they were printed.

use axum::http::StatusCode;

use super::club::{Club, Right};

const TABLE: &str = "title,text,source,material\n\
    Reaming gunmetal,\"Slow, with paraffin.\",\"Newsletter 12, 1987\",gunmetal\n\
    A seized tap,Leave it overnight.,\"Newsletter 14, 1988\",\n";

#[tokio::test]
async fn tips_wait_in_the_queue_say_where_they_were_printed_and_come_once() {
    let club = Club::open().await;
    let secretary = club.join("Una Secretary", Right::Secretary).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    for _ in 0..2 {
        let answer = club.post("/notes/import", Some(&secretary), &[("tips", TABLE)]).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        assert_eq!(
            club.count("SELECT count(*) FROM note_version WHERE state = 'waiting'").await,
            2
        );
    }
    for place in ["/notes", "/notes?q=paraffin", "/materials/gunmetal"] {
        let page = club.get(place, None).await.body;
        assert!(!page.contains("Reaming gunmetal"), "{place}: nobody has read it");
    }
    let note =
        club.count("SELECT min(note_id) FROM note_version WHERE title LIKE 'Reaming%'").await;
    let passed = club.decide(&moderator, note, ("pass", "")).await;
    assert_eq!(passed.status, StatusCode::SEE_OTHER, "{}", passed.body);
    for place in [
        format!("/notes/{note}"),
        "/notes".to_owned(),
        "/materials/gunmetal".to_owned(),
        "/notes.csv".to_owned(),
        "/notes.json".to_owned(),
        "/notes?q=1987".to_owned(),
    ] {
        let page = club.get(&place, None).await.body.replace('\u{a0}', " ");
        assert!(page.contains("Newsletter 12, 1987"), "{place}: {page}");
    }
    // What was passed meanwhile, or taken back, is not touched by the same table.
    let other = club.count("SELECT max(note_id) FROM note_version").await;
    club.post(&format!("/notes/{other}/withdraw"), Some(&secretary), &[("why", "No")]).await;
    let answer = club.post("/notes/import", Some(&secretary), &[("tips", TABLE)]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM note_version WHERE state = 'shown'").await, 1);
}

#[tokio::test]
async fn a_table_with_a_mistake_comes_back_whole_and_nothing_of_it_is_kept() {
    let club = Club::open().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let table = format!("{TABLE},No title here,\"Newsletter 15, 1988\",copper\n");
    let answer = club.post("/notes/import", Some(&moderator), &[("tips", &table)]).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(answer.body.contains("Row 4: Give the note a title"), "{}", answer.body);
    assert!(
        answer.body.contains("No title here,&#34;Newsletter 15, 1988&#34;,copper"),
        "{}",
        answer.body
    );
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
    // Signed out, or without the right, what was typed stays too.
    let plain = club.join("Ada Penn", Right::None).await;
    for (by, told) in [(None, StatusCode::UNAUTHORIZED), (Some(&plain), StatusCode::FORBIDDEN)] {
        let answer = club.post("/notes/import", by, &[("tips", TABLE)]).await;
        assert_eq!(answer.status, told);
        assert!(answer.body.contains("Leave it overnight."), "{}", answer.body);
    }
    assert_eq!(club.count("SELECT count(*) FROM note").await, 0);
}

#[tokio::test]
async fn a_tip_on_pressure_is_for_an_inspector() {
    let club = Club::open().await;
    let secretary = club.join("Una Secretary", Right::Secretary).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Cyril Moss", Right::Inspector).await;
    let table = "title,text,source\nClacks,\"Seat the safety valve\nwith a light tap.\",\"Newsletter 3, 1979\"\n";
    club.post("/notes/import", Some(&secretary), &[("tips", table)]).await;
    let note = club.count("SELECT min(id) FROM note").await;
    let refused = club.decide(&moderator, note, ("pass", "")).await;
    assert_ne!(refused.status, StatusCode::SEE_OTHER, "{}", refused.body);
    let passed = club.decide(&inspector, note, ("pass", "")).await;
    assert_eq!(passed.status, StatusCode::SEE_OTHER, "{}", passed.body);
}
