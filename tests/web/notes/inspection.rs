//! A note that waits for an inspector whom the club has not: its author and whoever decides are told.

use axum::http::StatusCode;
use holewright_server::rules::auth::{MemberId, Rights};
use holewright_server::rules::notes::inspection::{
    Awaited, Inspector, Unattended, awaited, unattended,
};

use super::club::{Club, Person, Right};

const BOILER: [(&str, &str); 2] =
    [("title", "Bushes"), ("text", "For the boiler barrel, 1/4 x 40 ME.")];
const PLAIN: [(&str, &str); 2] = [("title", "Brass"), ("text", "It rang as it cut.")];

const ALONE: &str = "Waiting for an inspector. The club has none at present: ask the secretary.";
const OWN: &str = "Waiting for an inspector other than its author. The club has none at present: ask the secretary.";

/// An inspector of this number who is nothing else.
const fn inspector(id: i64) -> Inspector {
    let rights = Rights { moderator: false, inspector: true, secretary: false };
    Inspector { id: MemberId(id), rights }
}

/// An inspector of this number who is the secretary too.
const fn secretary(id: i64) -> Inspector {
    let rights = Rights { moderator: false, inspector: true, secretary: true };
    Inspector { id: MemberId(id), rights }
}

#[track_caller]
fn check(author: Option<i64>, inspectors: &[Inspector], expected: Awaited) {
    assert_eq!(awaited(author.map(MemberId), inspectors), expected);
}

#[test]
fn whether_anybody_could_pass_a_note_on_pressure() {
    check(Some(1), &[], Awaited::NoInspector);
    check(None, &[], Awaited::NoInspector);
    check(Some(1), &[inspector(2)], Awaited::Exists);
    check(None, &[inspector(2)], Awaited::Exists);
    check(Some(1), &[inspector(1)], Awaited::NoneButItsAuthor);
    check(Some(1), &[inspector(1), inspector(2)], Awaited::Exists);
    // A secretary whom nobody could stand in for decides about their own note too.
    check(Some(1), &[secretary(1)], Awaited::Exists);
    check(Some(1), &[secretary(1), inspector(2)], Awaited::Exists);
}

#[test]
fn the_notes_that_nobody_could_pass_are_counted() {
    let by = |number| Some(MemberId(number));
    let left = |notes, why| Some(Unattended { notes, why });
    assert_eq!(unattended(&[], &[]), None);
    assert_eq!(unattended(&[by(1), None], &[]), left(2, Awaited::NoInspector));
    assert_eq!(unattended(&[by(1), by(2), None], &[inspector(3)]), None);
    let all = [by(1), by(2), by(1)];
    assert_eq!(unattended(&all, &[inspector(1)]), left(2, Awaited::NoneButItsAuthor));
}

/// What somebody reads at this address.
async fn read(club: &Club, path: &str, by: &Person) -> String {
    let answer = club.get(path, Some(by)).await;
    assert_eq!(answer.status, StatusCode::OK, "{path}");
    answer.body
}

async fn set(club: &Club, statement: &'static str, member: &Person) {
    let [_, writer] = club.app.database.pools();
    sqlx::query(statement).bind(member.id).execute(writer).await.unwrap();
}

#[tokio::test]
async fn a_club_without_an_inspector_says_so_to_author_moderator_and_secretary() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let secretary = club.join("Una Oakes", Right::Secretary).await;
    club.send_in(&author, &PLAIN).await;
    let queue = read(&club, "/queue", &moderator).await;
    assert!(!queue.contains("No inspector"), "another note waits for nobody special: {queue}");

    let note = club.send_in(&author, &BOILER).await;
    let address = format!("/notes/{note}");
    assert!(read(&club, "/notes/mine", &author).await.contains(ALONE));
    for reader in [&author, &moderator] {
        let page = read(&club, &address, reader).await;
        assert!(page.contains(&format!("<strong>{ALONE}</strong>")), "{page}");
    }
    let (theirs, hers) =
        (read(&club, "/queue", &moderator).await, read(&club, "/queue", &secretary).await);
    for queue in [&theirs, &hers] {
        assert!(queue.contains("1 note waits for an inspector, and the club has none."), "{queue}");
    }
    let door = "<a href=\"/people\">Give a member the right</a>";
    assert!(theirs.contains("Ask the secretary, who gives the right.") && !theirs.contains(door));
    assert!(!hers.contains("Ask the secretary") && hers.contains(door), "{hers}");

    // The rule stands: nobody else passes it.
    for by in [&moderator, &secretary] {
        assert_eq!(club.decide(by, note, ("pass", "")).await.status, StatusCode::FORBIDDEN);
    }
    assert_eq!(club.get(&address, None).await.status, StatusCode::NOT_FOUND);
    club.send_in(&author, &BOILER).await;
    let queue = read(&club, "/queue", &moderator).await;
    assert!(queue.contains("2 notes wait for an inspector, and the club has none."), "{queue}");

    // With one, all is as usual; one who was stopped is none.
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    for reader in [&moderator, &secretary, &inspector] {
        assert!(!read(&club, "/queue", reader).await.contains("No inspector"));
    }
    let mine = read(&club, "/notes/mine", &author).await;
    assert!(mine.contains("Waiting for an inspector.") && !mine.contains(ALONE), "{mine}");
    set(&club, "UPDATE member SET stopped_at = 1 WHERE id = ?", &inspector).await;
    assert!(read(&club, "/queue", &moderator).await.contains("2 notes wait for an inspector"));
    set(&club, "UPDATE member SET stopped_at = NULL WHERE id = ?", &inspector).await;
    assert_eq!(club.decide(&inspector, note, ("pass", "")).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn an_inspectors_own_note_waits_for_another() {
    let club = Club::open().await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let note = club.send_in(&inspector, &BOILER).await;
    assert!(read(&club, "/notes/mine", &inspector).await.contains(OWN));
    let words = "1 note waits for an inspector other than its author, and the club has none.";
    for reader in [&moderator, &inspector] {
        assert!(read(&club, &format!("/notes/{note}"), reader).await.contains(OWN));
        assert!(read(&club, "/queue", reader).await.contains(words));
    }
    assert_eq!(club.decide(&inspector, note, ("pass", "")).await.status, StatusCode::FORBIDDEN);

    // Where the secretary is the only inspector, nobody could stand in: what is said is what is done.
    set(&club, "UPDATE member SET is_secretary = 1 WHERE id = ?", &inspector).await;
    assert!(!read(&club, "/queue", &inspector).await.contains("No inspector"));
    assert_eq!(club.decide(&inspector, note, ("pass", "")).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_reported_note_on_pressure_waits_for_an_inspector_too() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let reader = club.join("Cyril Marsh", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let note = club.shown(&author, &inspector, &BOILER).await;
    let report = [("danger", "The wall is left too thin.")];
    club.post(&format!("/notes/{note}/report"), Some(&reader), &report).await;
    assert!(!read(&club, "/queue", &moderator).await.contains("No inspector"));
    set(&club, "UPDATE member SET is_inspector = 0 WHERE id = ?", &inspector).await;
    let words = "1 note waits for an inspector, and the club has none.";
    assert!(read(&club, "/queue", &moderator).await.contains(words));
    let refused = club.decide(&moderator, note, ("settle", "")).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN);
    let withdraw = [("do", "withdraw"), ("reason", "The wall is too thin.")];
    let withdrawn = club.post(&format!("/queue/{note}"), Some(&moderator), &withdraw).await;
    assert_eq!(withdrawn.status, StatusCode::SEE_OTHER);
    assert!(!read(&club, "/queue", &moderator).await.contains("No inspector"));
}

#[tokio::test]
async fn exports_say_that_an_inspector_read_a_note_and_when_as_its_page_does() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Dora Vale", Right::Inspector).await;
    let usual = [("title", "A rag"), ("text", "It is clean.")];
    let usual = club.shown(&author, &moderator, &usual).await;
    let note = club.shown(&author, &inspector, &BOILER).await;
    let begin = "An inspector of the club read it";
    let files = ["/notes.csv", "/notes/newsletter/2027-01", "/notes/newsletter/2027-01.txt"];
    for is_known in [true, false] {
        if !is_known {
            let forget = "UPDATE note_version SET inspected_at = NULL WHERE ? > 0";
            set(&club, forget, &inspector).await;
        }
        let page = read(&club, &format!("/notes/{note}"), &author).await;
        let (_, said) = page.split_once(begin).unwrap_or_else(|| panic!("{page}"));
        let (day, _) = said.split_once('.').unwrap();
        assert_eq!(day.starts_with(", "), is_known, "{page}");
        let words = format!("{begin}{day}.");
        for file in files {
            let body = club.get(file, None).await.body;
            assert_eq!(body.matches(&words).count(), 1, "{file}: {words}: {body}");
        }
        let all = club.get("/notes.json", None).await.json();
        let of = |id: i64| {
            let mut notes = all["notes"].as_array().unwrap().iter();
            notes.find(|note| note["id"] == id).unwrap()
        };
        assert_eq!(of(note)["inspected"], words.as_str());
        assert_eq!(of(note)["inspected_at"].is_string(), is_known, "{all}");
        assert!(of(usual)["inspected"].is_null() && of(usual)["inspected_at"].is_null(), "{all}");
    }
}
