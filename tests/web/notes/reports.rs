//! Reports of danger: how many one member may send in a day, and all of one member's settled at once.

use axum::http::StatusCode;
use holewright_server::db::notes::reports::{AsRead, Of, settle_all};
use holewright_server::rules::auth::{MemberId, Rights, SignedIn};
use holewright_server::rules::limits::Allowance;
use holewright_server::rules::notes::reports::MOST_A_DAY;
use holewright_server::rules::notes::{NoteId, VersionId};

use super::club::{Club, Person, Right};
use crate::support::NOW;

async fn notes(club: &Club, by: &[&Person; 2], count: usize) -> Vec<i64> {
    let mut notes = Vec::new();
    for number in 0..count {
        let title = format!("Brass {number}");
        let fields = [("title", title.as_str()), ("text", "It rang as it cut.")];
        notes.push(club.shown(by[0], by[1], &fields).await);
    }
    notes
}

async fn report(club: &Club, by: &Person, note: i64) -> (StatusCode, String) {
    let fields = [("danger", "The wall is left too thin.")];
    let answer = club.post(&format!("/notes/{note}/report"), Some(by), &fields).await;
    (answer.status, answer.body)
}

async fn execute(club: &Club, statement: &'static str) {
    let [_, writer] = club.app.database.pools();
    sqlx::query(statement).execute(writer).await.unwrap();
}

const HIDDEN: &str = "SELECT count(*) FROM note WHERE hidden_at IS NOT NULL";

#[tokio::test]
async fn one_member_hides_a_few_notes_a_day_and_no_more() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let third = club.join("Eva Lund", Right::None).await;
    let most = usize::try_from(MOST_A_DAY).unwrap();
    let notes = notes(&club, &[&author, &moderator], most + 3).await;
    for note in &notes[..most] {
        assert_eq!(report(&club, &other, *note).await.0, StatusCode::SEE_OTHER);
    }
    for note in &notes[most..] {
        let (status, body) = report(&club, &other, *note).await;
        assert_eq!(status, StatusCode::CONFLICT, "{body}");
        assert!(body.contains("The wall is left too thin."), "what was typed: {body}");
        assert!(body.contains("tell a moderator of this one too"), "{body}");
    }
    assert_eq!(club.count(HIDDEN).await, MOST_A_DAY);
    // The same report sent twice is still one, and another member and a moderator have their own.
    assert_eq!(report(&club, &other, notes[0]).await.0, StatusCode::SEE_OTHER);
    assert_eq!(report(&club, &third, notes[most]).await.0, StatusCode::SEE_OTHER);
    for note in &notes {
        assert_eq!(report(&club, &moderator, *note).await.0, StatusCode::SEE_OTHER);
    }
    // To-morrow is another day.
    execute(&club, "UPDATE safety_report SET made_at = made_at - 86400").await;
    assert_eq!(report(&club, &other, notes[most]).await.0, StatusCode::SEE_OTHER);
}

/// Who decides about the notes of others learns no more of who reported their own than any author does, and of what
/// was found only what the reference has a name for.
#[tokio::test]
async fn an_author_who_decides_reads_neither_who_reported_them_nor_words_that_nobody_has_read() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::Moderator).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let note = notes(&club, &[&author, &moderator], 1).await[0];
    for (material, is_told) in [("zzmat zzqq", false), ("gunmetal", true)] {
        let found = [("found", "did-not"), ("material", material)];
        let answer = club.post(&format!("/notes/{note}/verdict"), Some(&other), &found).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let news = club.get("/notes/mine", Some(&author)).await.body;
        assert!(news.contains("It did not work for another member"), "{news}");
        assert_eq!(news.contains(material), is_told, "{news}");
    }
    assert_eq!(report(&club, &other, note).await.0, StatusCode::SEE_OTHER);
    let said = ["Cyril Moss", "The wall is left too thin."];
    let queue = club.get("/queue", Some(&author)).await.body;
    assert!(queue.contains("is for whoever decides"), "{queue}");
    assert!(said.iter().all(|said| !queue.contains(said)), "{queue}");
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(said.iter().all(|said| queue.contains(said)), "{queue}");
}

#[tokio::test]
async fn a_member_who_writes_without_end_is_asked_to_wait() {
    let club = Club::open().await.limited().await;
    let author = club.join("Ada Penn", Right::None).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let typed = [("title", "Brass"), ("text", "It rang as it cut."), ("do", "save")];
    let burst = usize::try_from(Allowance::of_a_writer().burst).unwrap();
    let (mut taken, mut refused) = (0, 0);
    for _ in 0..burst + 20 {
        let answer = club.post("/notes/new", Some(&author), &typed).await;
        if answer.status == StatusCode::SEE_OTHER {
            taken += 1;
            continue;
        }
        refused += 1;
        assert_eq!(answer.status, StatusCode::TOO_MANY_REQUESTS, "{}", answer.body);
        assert!(answer.body.contains("It rang as it cut."), "what was typed: {}", answer.body);
        for words in ["30 at once, then one each 4 seconds", "send it once more in"] {
            assert!(answer.body.contains(words), "{words}: {}", answer.body);
        }
    }
    // One more comes back each few seconds, however slow this machine is.
    assert!(taken >= burst && refused > 0, "{taken} taken, {refused} refused");
    let answer = club.post("/notes/new", Some(&other), &typed).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "nobody else waits: {}", answer.body);
}

#[tokio::test]
async fn the_reports_of_one_member_are_settled_at_once() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let third = club.join("Eva Lund", Right::None).await;
    let mut notes = notes(&club, &[&author, &moderator], 3).await;
    let boiler = [("title", "Boiler bush"), ("text", "LG2")];
    let boiler = club.shown(&author, &inspector, &boiler).await;
    let own = [("title", "The moderator’s own"), ("text", "LG2")];
    let secretary = club.join("Una Oakes", Right::Secretary).await;
    let own = club.shown(&moderator, &secretary, &own).await;
    notes.extend([boiler, own]);
    for note in &notes {
        report(&club, &other, *note).await;
    }
    // On one of them another member's report is open too.
    report(&club, &third, notes[0]).await;
    assert_eq!(club.count(HIDDEN).await, 5);
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("Cyril Moss reported 3 notes"), "{queue}");
    assert!(queue.contains("Cyril Moss: The wall"), "{queue}");
    assert!(!club.get("/queue", Some(&inspector)).await.body.contains("Cyril Moss reported"));

    let (of, last) = (other.id.to_string(), "SELECT max(id) FROM safety_report WHERE member_id = ");
    let last: &'static str = format!("{last}{of}").leak();
    let last = club.count(last).await.to_string();
    let (_, form) = queue.split_once("name=\"read\" value=\"").unwrap();
    let read = form.split_once('"').unwrap().0;
    let fields = [("of", of.as_str()), ("last", last.as_str()), ("read", read)];
    let refused = club.post("/queue/reports", Some(&third), &fields).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    // What came after the page was read stays.
    let early = [("of", of.as_str()), ("last", "1"), ("read", read)];
    let answer = club.post("/queue/reports", Some(&moderator), &early).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(club.count(HIDDEN).await, 5, "the other report still hides the first");

    let answer = club.post("/queue/reports", Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    for (note, shows) in [(notes[0], false), (notes[1], true), (notes[2], true)] {
        let status = club.get(&format!("/notes/{note}"), None).await.status;
        assert_eq!(status == StatusCode::OK, shows, "{note}");
    }
    for note in [boiler, own] {
        let status = club.get(&format!("/notes/{note}"), None).await.status;
        assert_eq!(status, StatusCode::NOT_FOUND, "not theirs to show");
    }
    let found = club.get("/notes?q=brass", None).await.body;
    assert!(found.contains("Brass 1") && !found.contains("Brass 0"), "{found}");
    let settled = "SELECT count(*) FROM safety_report WHERE settled_at IS NOT NULL";
    assert_eq!(club.count(settled).await, 3);
    let recorded = "SELECT count(*) FROM act WHERE what = 'note-report-settled'";
    assert_eq!(club.count(recorded).await, 3);
    // The author of the one that another report still hides is told nothing.
    let told = "SELECT count(*) FROM concern WHERE kind = 'report-settled'";
    assert_eq!(club.count(told).await, 2);
    let again = club.post("/queue/reports", Some(&moderator), &fields).await;
    assert_eq!(again.status, StatusCode::CONFLICT, "{}", again.body);
}

#[tokio::test]
async fn who_came_too_late_reads_nothing_of_what_was_never_theirs() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let note = club.send_in(&author, &[("title", "Brass"), ("text", "B")]).await;
    club.decide(&moderator, note, ("decline", "Said to the author alone")).await;
    let fields = [("version", "1"), ("do", "pass")];
    let queue = format!("/queue/{note}");
    let answer = club.post(&queue, Some(&inspector), &fields).await;
    assert!(!answer.body.contains("Said to the author alone"), "{}", answer.body);
    let answer = club.post(&queue, Some(&moderator), &fields).await;
    assert!(answer.body.contains("Said to the author alone"), "{}", answer.body);
}

/// What a note speaks of, and which wording of it stands, can change between the page and the button.
#[tokio::test]
async fn reports_on_what_nobody_read_or_may_pass_stay_open() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let other = club.join("Cyril Moss", Right::None).await;
    let brass = notes(&club, &[&author, &moderator], 1).await[0];
    let boiler = [("title", "Boiler bush"), ("text", "LG2")];
    let boiler = club.shown(&author, &inspector, &boiler).await;
    for note in [brass, boiler] {
        report(&club, &other, note).await;
    }
    let by = SignedIn {
        id: MemberId(moderator.id),
        name: "Bert Stone".to_owned(),
        rights: Rights { moderator: true, ..Rights::default() },
        session: moderator.id,
        proved_at: NOW,
        has_second_factor: false,
        open: Default::default(),
    };
    let of = Of { member: MemberId(other.id), last: i64::MAX };
    let (read, not_theirs) =
        (club.version(brass, "shown").await, club.version(boiler, "shown").await);
    for (note, version, settled) in
        [(brass, read + 100, 0), (boiler, not_theirs, 0), (brass, read, 1)]
    {
        let read = AsRead { note: NoteId(note), version: VersionId(version), correction: 0 };
        let done = settle_all(&club.app.database, NOW, &by, of, &[read]).await.unwrap();
        assert_eq!(done, settled, "note {note} as {version}");
    }
    assert_eq!(club.count(HIDDEN).await, 1);
}
