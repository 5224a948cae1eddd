//! Readers see nothing that the right person has not read, and whoever decides does so about what they read.

use std::time::Duration;

use axum::http::StatusCode;
use holewright_server::db::notes::anew;

use super::club::{Club, Person, Right};
use crate::support::{Answer, NOW};

const SHOWN: [(&str, &str); 3] =
    [("title", "Bushes"), ("text", "Turned from LG2, dry."), ("drill", "2.3 mm")];
const NEXT: [(&str, &str); 3] =
    [("title", "Bushes"), ("text", "Turned from LG2, with oil."), ("drill", "2.5 mm")];

/// The first field of this name that a page would send along.
fn carried(page: &str, name: &str) -> String {
    let begin = format!("name=\"{name}\" value=\"");
    let rest = page.split_once(begin.as_str()).map(|(_, rest)| rest);
    rest.and_then(|rest| rest.split_once('"'))
        .map(|(value, _)| value.to_owned())
        .unwrap_or_default()
}

/// The newest report and correction that the queue shows of a note.
fn read_to(queue: &str, note: i64) -> [String; 2] {
    ["last", "correction"].map(|name| carried(queue, &format!("{name}-{note}")))
}

async fn people(club: &Club) -> [Person; 5] {
    [
        club.join("Ada Penn", Right::None).await,
        club.join("Bert Stone", Right::Moderator).await,
        club.join("Dora Vale", Right::Inspector).await,
        club.join("Cyril Moss", Right::None).await,
        club.join("Moira Hale", Right::Moderator).await,
    ]
}

async fn change(club: &Club, by: &Person, note: i64) {
    let fields = [&[("do", "send")], &NEXT[..]].concat();
    let answer = club.post(&format!("/notes/{note}/edit"), Some(by), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

async fn correct(club: &Club, by: &Person, note: i64, said: &str) {
    let version = club.version(note, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", said)];
    let answer = club.post(&format!("/notes/{note}/correct"), Some(by), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

async fn report(club: &Club, by: &Person, note: i64, danger: &str) {
    let fields = [("danger", danger)];
    let answer = club.post(&format!("/notes/{note}/report"), Some(by), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

/// A decision with what its reader's queue carries for the wording in this state.
async fn decide(club: &Club, by: &Person, note: i64, (what, state): (&str, &str)) -> Answer {
    let queue = club.get("/queue", Some(by)).await.body;
    let version = club.version(note, state).await.to_string();
    let [last, correction] = read_to(&queue, note);
    let fields = [
        ("version", version.as_str()),
        ("last", last.as_str()),
        ("correction", correction.as_str()),
        ("do", what),
        (
            "reason",
            if matches!(what, "pass" | "settle" | "over" | "back") { "" } else { "As said." },
        ),
    ];
    club.post(&format!("/queue/{note}"), Some(by), &fields).await
}

async fn status(club: &Club, note: i64) -> StatusCode {
    club.get(&format!("/notes/{note}"), None).await.status
}

#[tokio::test]
async fn a_verdict_is_of_the_wording_it_was_given_on() {
    let club = Club::open().await;
    let [author, moderator, _, other, third] = people(&club).await;
    let note = club.shown(&author, &moderator, &SHOWN).await;
    let (page, verdict) = (format!("/notes/{note}"), format!("/notes/{note}/verdict"));
    let read = club.get(&page, Some(&third)).await.body;
    let old = club.version(note, "shown").await.to_string();
    assert_eq!(carried(&read, "version"), old, "{read}");
    club.post(&verdict, Some(&other), &[("found", "worked"), ("material", "brass")]).await;
    assert!(club.get("/notes?confirmed=yes", None).await.body.contains(&page));
    correct(&club, &moderator, note, "Slower.").await;
    let seen = club.get(&page, None).await.body;
    assert!(seen.contains("Worked for 1 member.") && seen.contains("Worked: brass"), "{seen}");

    change(&club, &author, note).await;
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let seen = club.get(&page, None).await.body;
    assert!(seen.contains("Nobody else has said yet whether it works."), "{seen}");
    assert!(
        seen.contains(
            "An earlier wording, which may have said something else, worked for 1 member."
        )
    );
    assert!(!seen.contains("Worked: brass"), "{seen}");
    assert!(!club.get("/notes?confirmed=yes", None).await.body.contains(&page));
    let listed = &club.get("/notes.json", None).await.json()["notes"][0];
    assert_eq!((&listed["worked"], &listed["confirmed_at"]), (&0.into(), &().into()), "{listed}");
    let own = club.get("/me/data.json", Some(&other)).await.json();
    assert_eq!(own["verdicts"][0]["is_of_shown_wording"], false, "{own}");
    let form = club.get(&page, Some(&other)).await.body;
    assert!(form.contains("Take it back") && !form.contains("value=\"brass\""), "{form}");

    // Whoever read the earlier one has not read this one.
    let late = [("version", old.as_str()), ("found", "did-not"), ("size", "No. 41")];
    let answer = club.post(&verdict, Some(&third), &late).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert!(answer.body.contains("No. 41"), "what was typed: {}", answer.body);
    // The same words said of this one count for this one.
    club.post(&verdict, Some(&other), &[("found", "worked"), ("material", "brass")]).await;
    let seen = club.get(&page, None).await.body;
    assert!(
        seen.contains("Worked for 1 member.") && !seen.contains("An earlier wording"),
        "{seen}"
    );
    assert!(club.get("/notes?confirmed=yes", None).await.body.contains(&page));
}

#[tokio::test]
async fn reports_settled_together_are_those_on_what_was_read() {
    let club = Club::open().await;
    let [author, moderator, _, other, second] = people(&club).await;
    let mut notes = Vec::new();
    for number in 0..3 {
        let title = format!("Brass {number}");
        let fields = [("title", title.as_str()), ("text", "It rang as it cut.")];
        notes.push(club.shown(&author, &moderator, &fields).await);
        report(&club, &other, notes[number], "The wall is left too thin.").await;
    }
    let queue = club.get("/queue", Some(&moderator)).await.body;
    let (_, form) = queue.split_once("action=\"/queue/reports\"").unwrap();
    let carried = ["of", "last", "read"].map(|name| (name, carried(form, name)));
    let fields = carried.each_ref().map(|(name, value)| (*name, value.as_str()));
    correct(&club, &second, notes[1], "Never under power.").await;
    let answer = club.post("/queue/reports", Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    for (note, shows) in notes.iter().zip([true, false, true]) {
        assert_eq!(status(&club, *note).await == StatusCode::OK, shows, "{note}");
    }
    // Without what was read nothing is settled.
    let answer = club.post("/queue/reports", Some(&moderator), &fields[..2]).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert_eq!(status(&club, notes[1]).await, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn the_number_of_a_report_never_comes_again() {
    let club = Club::open().await;
    let [author, moderator, _, other, _] = people(&club).await;
    let leaver = club.join("Eva Lund", Right::None).await;
    let secretary = club.join("Una Oakes", Right::Secretary).await;
    let stays = club.shown(&author, &moderator, &SHOWN).await;
    let goes = club.shown(&leaver, &moderator, &SHOWN).await;
    for note in [stays, goes] {
        report(&club, &other, note, "It grabs.").await;
        correct(&club, &moderator, note, "Slower.").await;
    }
    let newest = ["safety_report", "correction"].map(|table| {
        let query: &'static str = format!("SELECT max(id) FROM {table}").leak();
        query
    });
    let before = [club.count(newest[0]).await, club.count(newest[1]).await];
    let remove = [("do", "remove"), ("notes", "remove")];
    let answer = club.post(&format!("/people/{}", leaver.id), Some(&secretary), &remove).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    report(&club, &secretary, stays, "I lost a fingertip.").await;
    correct(&club, &moderator, stays, "Clamp it.").await;
    for (query, before) in newest.into_iter().zip(before) {
        assert!(club.count(query).await > before, "{query}");
    }
    // So whoever had read the leaver's has not read this one.
    let (version, last) = (club.version(stays, "shown").await.to_string(), before[0].to_string());
    let settle =
        [("version", version.as_str()), ("last", &last), ("correction", "99"), ("do", "settle")];
    let answer = club.post(&format!("/queue/{stays}"), Some(&moderator), &settle).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
}

#[tokio::test]
async fn a_fix_of_a_reported_note_stands_beside_the_report() {
    let club = Club::open().await;
    let [author, moderator, _, other, _] = people(&club).await;
    let note = club.shown(&author, &moderator, &SHOWN).await;
    report(&club, &other, note, "It runs dry.").await;
    change(&club, &author, note).await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    for words in ["It runs dry.", "Turned from LG2, dry.", "Turned from LG2, with oil.", "2.5 mm"] {
        assert!(queue.contains(words), "{words}: {queue}");
    }
    for button in ["settle", "withdraw", "pass", "change", "decline"] {
        assert!(queue.contains(&format!("name=\"do\" value=\"{button}\"")), "{button}: {queue}");
    }
    // It answers the reports that were read, and no other.
    let waiting = club.version(note, "waiting").await.to_string();
    let unread = [("version", waiting.as_str()), ("do", "pass")];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &unread).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert_eq!(status(&club, note).await, StatusCode::NOT_FOUND);
    // Declined with a reason that is missing, its own field asks for it.
    let [version, reason] = ["version", "reason"].map(|name| format!("{name}-{note}-new"));
    let decline = [(version.as_str(), waiting.as_str()), ("do", "decline"), (reason.as_str(), " ")];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &decline).await;
    assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("with oil"), "{page}");
    assert!(club.get("/notes?q=oil", None).await.body.contains(&format!("/notes/{note}")));
    let open = "SELECT count(*) FROM safety_report WHERE settled_at IS NULL";
    assert_eq!(club.count(open).await, 0);
    assert!(club.get("/queue", Some(&moderator)).await.body.contains("Nothing waits."));
}

#[tokio::test]
async fn the_fields_of_a_note_are_judged_as_they_are_read() {
    let club = Club::open().await;
    let [author, moderator, inspector, ..] = people(&club).await;
    for fields in [
        [("title", "Seat of a safety"), ("drill", "valve"), ("text", "It seats.")],
        [("title", "Taps"), ("machine", "for a safety"), ("text", "Valve, 1/4 x 40")],
        [("title", "Bush for a bo il er"), ("drill", "No. 43"), ("text", "It held.")],
        [("title", "Bush"), ("depth", "st3am tight"), ("text", "It held.")],
    ] {
        let note = club.send_in(&author, &fields).await;
        let answer = club.decide(&moderator, note, ("pass", "")).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{fields:?}: {}", answer.body);
        let answer = club.decide(&inspector, note, ("pass", "")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }
    // What a correction says only together with the title it stands under.
    let safety = [("title", "Seat of a safety"), ("text", "Turned from LG2.")];
    let note = club.shown(&author, &moderator, &safety).await;
    let version = club.version(note, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "valve, not plug")];
    let answer = club.post(&format!("/notes/{note}/correct"), Some(&moderator), &fields).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
}

#[tokio::test]
async fn readers_see_no_reason_that_nobody_read() {
    let club = Club::open().await;
    let [author, moderator, _, other, _] = people(&club).await;
    let why = [("why", "Use a 2.0 mm drill at 5000 rev/min instead.")];
    let own = club.shown(&author, &moderator, &SHOWN).await;
    let by = club.get(&format!("/notes/{own}"), Some(&author)).await.body;
    assert!(by.contains("readers do not see it"), "{by}");
    club.post(&format!("/notes/{own}/withdraw"), Some(&author), &why).await;
    let theirs = club.shown(&author, &moderator, &SHOWN).await;
    club.post(&format!("/notes/{theirs}/withdraw"), Some(&moderator), &why).await;
    // A moderator's own note is an author's.
    let mods =
        club.shown(&moderator, &club.join("Una Oakes", Right::Secretary).await, &SHOWN).await;
    club.post(&format!("/notes/{mods}/withdraw"), Some(&moderator), &why).await;
    for (note, is_told) in [(own, false), (theirs, true), (mods, false)] {
        let gone = club.get(&format!("/notes/{note}"), Some(&other)).await;
        assert_eq!(gone.status, StatusCode::GONE);
        assert_eq!(gone.body.contains("5000 rev/min"), is_told, "{note}: {}", gone.body);
        assert_eq!(gone.body.contains("Its author took it back."), !is_told, "{}", gone.body);
    }
    let read = club.get(&format!("/notes/{own}"), Some(&moderator)).await.body;
    assert!(read.contains("Withdrawn: Use a 2.0 mm drill"), "{read}");
}

#[tokio::test]
async fn an_inspectors_report_of_pressure_is_the_inspectors_to_settle() {
    let club = Club::open().await;
    let [author, moderator, inspector, other, _] = people(&club).await;
    let note = club.shown(&author, &moderator, &SHOWN).await;
    report(&club, &inspector, note, "This bush would burst under steam.").await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("would burst"), "{queue}");
    assert!(!queue.contains("value=\"settle\"") && queue.contains("value=\"withdraw\""), "{queue}");
    let answer = decide(&club, &moderator, note, ("settle", "shown")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    // Nor by passing something else in its place.
    change(&club, &author, note).await;
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert_eq!(status(&club, note).await, StatusCode::NOT_FOUND);
    let page = club.get(&format!("/notes/{note}"), Some(&inspector)).await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.body);
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(queue.contains("value=\"settle\"") && queue.contains("value=\"pass\""), "{queue}");
    let answer = decide(&club, &inspector, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("with oil") && page.contains("inspector decide"), "{page}");
    // One on another note, which the inspector finds harmless.
    let note = club.shown(&author, &moderator, &SHOWN).await;
    report(&club, &inspector, note, "This bush would burst under steam.").await;
    let answer = decide(&club, &inspector, note, ("settle", "shown")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(status(&club, note).await, StatusCode::OK);
    // One of another danger, or by another member, is the moderator's as before.
    for (by, danger) in [(&inspector, "The drill grabs."), (&other, "It would burst under steam.")]
    {
        report(&club, by, note, danger).await;
        let answer = decide(&club, &moderator, note, ("settle", "shown")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{danger}: {}", answer.body);
    }
}

#[tokio::test]
async fn a_note_is_handed_to_the_inspector_and_turned_back() {
    let club = Club::open().await;
    let [author, moderator, inspector, other, _] = people(&club).await;
    let note = club.send_in(&author, &SHOWN).await;
    assert!(!club.get("/queue", Some(&inspector)).await.body.contains("Bushes"));
    let answer = decide(&club, &moderator, note, ("back", "waiting")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    let answer = decide(&club, &moderator, note, ("over", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let again = decide(&club, &moderator, note, ("over", "waiting")).await;
    assert_eq!(again.status, StatusCode::CONFLICT, "{}", again.body);
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert!(club.get("/queue", Some(&inspector)).await.body.contains("Bushes"));
    let answer = decide(&club, &inspector, note, ("back", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert!(!club.get("/queue", Some(&inspector)).await.body.contains("Bushes"));
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    // A reported one too: whoever settles it is then the inspector.
    report(&club, &other, note, "It grabs.").await;
    let answer = decide(&club, &moderator, note, ("over", "shown")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let answer = decide(&club, &moderator, note, ("settle", "shown")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    // What the gate heard and the inspector finds usual is a moderator's.
    let heard = club.send_in(&author, &[("title", "Pressure of a hand"), ("text", "Light.")]).await;
    let answer = decide(&club, &inspector, heard, ("back", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let answer = club.decide(&moderator, heard, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let recorded =
        "SELECT count(*) FROM act WHERE what IN ('note-handed-over', 'note-turned-back')";
    assert_eq!(club.count(recorded).await, 4);
    let own = club.get("/me/data.json", Some(&author)).await.body;
    assert!(own.contains("note-handed-over") && own.contains("note-turned-back"), "{own}");
}

#[tokio::test]
async fn a_correction_that_was_not_read_goes_with_nothing() {
    let club = Club::open().await;
    let [author, moderator, inspector, other, second] = people(&club).await;
    let note = club.shown(&author, &moderator, &SHOWN).await;
    correct(&club, &moderator, note, "Never under power.").await;
    change(&club, &author, note).await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("Never under power."), "{queue}");
    correct(&club, &second, note, "Nor with the guard off.").await;
    let version = club.version(note, "waiting").await.to_string();
    let [last, correction] = read_to(&queue, note);
    let pass = [
        ("version", version.as_str()),
        ("last", last.as_str()),
        ("correction", correction.as_str()),
        ("do", "pass"),
    ];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &pass).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    assert!(answer.body.contains("Nor with the guard off."), "what is new: {}", answer.body);
    let page = club.get(&format!("/notes/{note}"), None).await.body;
    assert!(page.contains("Nor with the guard off."), "{page}");
    // Nor is a report settled beside one.
    report(&club, &other, note, "It grabs.").await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    assert!(queue.contains("Nor with the guard off."), "{queue}");
    let shown = club.version(note, "shown").await.to_string();
    let [last, _] = read_to(&queue, note);
    let settle = [
        ("version", shown.as_str()),
        ("last", last.as_str()),
        ("correction", correction.as_str()),
        ("do", "settle"),
    ];
    let answer = club.post(&format!("/queue/{note}"), Some(&moderator), &settle).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.body);
    // An inspector's correction makes what waits the inspector's too.
    correct(&club, &inspector, note, "Never in a boiler.").await;
    let answer = decide(&club, &moderator, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    let answer = decide(&club, &inspector, note, ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

#[tokio::test]
async fn an_inspector_alone_with_their_own_note_is_told_what_to_do() {
    let club = Club::open().await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let own = club.send_in(&inspector, &[("title", "Boiler bush"), ("text", "LG2")]).await;
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(!queue.contains("value=\"pass\""), "no button that would be refused: {queue}");
    let words = "Your own note. Another inspector decides about it. The club has no other: ask the secretary";
    assert!(queue.contains(words), "{queue}");
    assert!(!queue.contains("unless nobody else"), "{queue}");
    let answer = club.decide(&inspector, own, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    assert!(!answer.body.contains("somebody else in the club can"), "{}", answer.body);
    club.join("Fay Reed", Right::Inspector).await;
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(queue.contains("Your own note. Another inspector decides about it.<"), "{queue}");
    // A secretary whom nobody could stand in for decides, and is told why.
    let [_, writer] = club.app.database.pools();
    for statement in [
        "UPDATE member SET is_inspector = 0 WHERE name = 'Fay Reed'",
        "UPDATE member SET is_secretary = 1 WHERE name = 'Dora Vale'",
    ] {
        sqlx::query(statement).execute(writer).await.unwrap();
    }
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(queue.contains("Nobody else in the club could decide about it"), "{queue}");
    let answer = club.decide(&inspector, own, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
}

#[tokio::test]
async fn stored_notes_are_judged_by_new_rules_of_pressure() {
    let club = Club::open().await;
    let [author, moderator, inspector, ..] = people(&club).await;
    let mut notes = Vec::new();
    for _ in 0..3 {
        notes.push(club.shown(&author, &moderator, &SHOWN).await);
    }
    let waiting = club.send_in(&author, &SHOWN).await;
    change(&club, &author, notes[0]).await;
    let by_sql = async |club: &Club, statement: &'static str| {
        let [_, writer] = club.app.database.pools();
        sqlx::query(statement).execute(writer).await.unwrap();
    };
    // As if an earlier rule had not heard these; the third was turned back by the inspector.
    let unheard = "UPDATE note_version SET title = 'A boiler bush'
                   WHERE note_id <> 2 AND (note_id <> 1 OR state = 'shown')";
    by_sql(&club, unheard).await;
    by_sql(&club, "UPDATE note_version SET turned_back_at = 1 WHERE note_id = 3").await;
    let club = club.restarted().await;
    assert_eq!(status(&club, notes[0]).await, StatusCode::OK, "the rule is the same");
    by_sql(&club, "UPDATE pressure_rule SET rule = 'an earlier one'").await;
    let club = club.restarted().await;
    for (note, expected) in
        notes.iter().zip([StatusCode::NOT_FOUND, StatusCode::OK, StatusCode::OK])
    {
        assert_eq!(status(&club, *note).await, expected, "{note}");
    }
    assert!(!club.get("/notes?q=boiler", None).await.body.contains("/notes/1\""));
    let queue = club.get("/queue", Some(&inspector)).await.body;
    assert!(queue.contains("The program: Its words are now heard"), "{queue}");
    let own = club.get(&format!("/notes/{}", notes[0]), Some(&author)).await.body;
    assert!(own.contains("inspector has to read it first"), "{own}");
    let answer = club.decide(&moderator, waiting, ("pass", "")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    let answer = club.decide(&moderator, notes[0], ("settle", "")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    let answer = club.decide(&inspector, notes[0], ("settle", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    assert_eq!(club.count("SELECT count(*) FROM act WHERE what = 'note-heard'").await, 2);
    // Nor is what waits to take its place a moderator's to show.
    let answer = decide(&club, &moderator, notes[0], ("pass", "waiting")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.body);
    // Once for each rule, and what the inspector has read is not heard again.
    by_sql(&club, "UPDATE pressure_rule SET rule = 'another'").await;
    let club = club.restarted().await;
    assert_eq!(status(&club, notes[0]).await, StatusCode::OK);
}

#[tokio::test]
async fn many_stored_notes_are_judged_bit_by_bit() {
    let club = Club::open().await;
    let [author, ..] = people(&club).await;
    let [_, writer] = club.app.database.pools();
    let many =
        "WITH RECURSIVE many (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM many WHERE n < 150)";
    for statement in [
        "INSERT INTO note (id, author_id, form_key, made_at)
         SELECT n, ?1, printf('a key of its own %d', n), 1 FROM many",
        "INSERT INTO note_version (note_id, state, title, text, made_at, saved_at)
         SELECT n, 'waiting', iif(n % 50 = 0, 'A boiler bush', 'A bush'), 'It held.', 1, 1 FROM many
         WHERE ?1 > 0",
    ] {
        let statement = sqlx::AssertSqlSafe(format!("{many} {statement}"));
        sqlx::query(statement).bind(author.id).execute(writer).await.unwrap();
    }
    let judge = async |rule| {
        let judged = anew::judge(&club.app.database, NOW, rule, Duration::ZERO).await.unwrap();
        (judged.heard, judged.is_more)
    };
    assert_eq!(judge("a rule").await, (2, true));
    assert_eq!(judge("a rule").await, (1, false));
    assert_eq!(judge("a rule").await, (0, false));
    let heard = "SELECT count(*) FROM note_version WHERE is_pressure = 1";
    assert_eq!(club.count(heard).await, 3);
    // Another rule begins anew, with those that were not heard yet.
    assert_eq!(judge("another").await, (0, true));
}
