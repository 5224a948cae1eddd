//! Remarks on a shown note: read by somebody before they are shown, and gone with what they stand on.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use crate::support::Answer;

const NOTE: [(&str, &str); 2] = [("title", "Tapping gunmetal"), ("text", "Slowly.")];
const SAID: &str = "Mine needed paraffin.";

struct Scene {
    club: Club,
    author: Person,
    moderator: Person,
    inspector: Person,
    reader: Person,
    note: i64,
}

impl Scene {
    async fn open() -> Self {
        let club = Club::open().await;
        let author = club.join("Ada Penn", Right::None).await;
        let moderator = club.join("Bert Stone", Right::Moderator).await;
        let inspector = club.join("Ina Flint", Right::Inspector).await;
        let reader = club.join("Cyril Marsh", Right::None).await;
        let note = club.shown(&author, &moderator, &NOTE).await;
        Self { club, author, moderator, inspector, reader, note }
    }

    async fn remark(&self, by: &Person, text: &str) -> Answer {
        let path = format!("/notes/{}/remark", self.note);
        self.club.post(&path, Some(by), &[("remark", text)]).await
    }

    /// A remark that was taken in; its number.
    async fn sent_in(&self, by: &Person, text: &str) -> i64 {
        let answer = self.remark(by, text).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        self.club.count("SELECT max(id) FROM remark").await
    }

    async fn decide(&self, by: &Person, remark: i64, (what, why): (&str, &str)) -> Answer {
        let number = remark.to_string();
        let fields = [("remark", number.as_str()), ("do", what), ("reason", why)];
        self.club.post("/queue/remarks", Some(by), &fields).await
    }

    async fn page(&self, by: Option<&Person>) -> String {
        self.club.get(&format!("/notes/{}", self.note), by).await.body
    }

    async fn queue(&self, by: &Person) -> String {
        self.club.get("/queue/remarks", Some(by)).await.body
    }
}

#[tokio::test]
async fn what_maims_in_the_words_of_a_remark_is_one_line_beside_it() {
    let scene = Scene::open().await;
    scene.sent_in(&scene.reader, "Petrol does it, held in the hand.").await;
    let page = scene.queue(&scene.moderator).await;
    let line = "<p class=\"said caution\"><strong>Heard in its words:</strong> Petrol’s vapour";
    assert!(page.contains(line) && page.contains("Work held in the hand is torn"), "{page}");
    scene.sent_in(&scene.reader, SAID).await;
    let page = scene.queue(&scene.moderator).await;
    assert_eq!((page.matches(SAID).count(), page.matches("Heard in").count()), (1, 1), "{page}");
}

#[tokio::test]
async fn a_remark_is_shown_once_a_moderator_has_read_it() {
    let scene = Scene::open().await;
    let remark = scene.sent_in(&scene.reader, SAID).await;
    // The same words sent twice are one remark.
    assert_eq!(scene.sent_in(&scene.reader, SAID).await, remark);
    let own = scene.page(Some(&scene.reader)).await;
    assert!(own.contains(SAID) && own.contains("it is waiting for a moderator"), "{own}");
    for by in [None, Some(&scene.author), Some(&scene.moderator)] {
        assert!(!scene.page(by).await.contains(SAID), "read by nobody yet");
    }
    let queue = scene.queue(&scene.moderator).await;
    assert!(queue.contains(SAID) && queue.contains("Cyril Marsh"), "{queue}");
    assert!(!scene.queue(&scene.inspector).await.contains(SAID), "a moderator's");
    let queue = scene.club.get("/queue", Some(&scene.moderator)).await.body;
    assert!(queue.contains("href=\"/queue/remarks\">Remarks on notes (1)<"), "{queue}");

    let answer = scene.decide(&scene.moderator, remark, ("show", "")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    let page = scene.page(None).await;
    assert!(page.contains(SAID) && page.contains("Cyril Marsh, "), "{page}");
    assert!(!scene.queue(&scene.moderator).await.contains(SAID));
    // Whoever decides second is told so, and can take a shown one away with a reason.
    let second = scene.decide(&scene.moderator, remark, ("show", "")).await;
    assert_eq!(second.status, StatusCode::CONFLICT, "{}", second.body);
    let silent = scene.decide(&scene.moderator, remark, ("decline", " ")).await;
    assert_eq!(silent.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", silent.body);
    let of_note = format!("/queue/remarks?note={}", scene.note);
    let listed = scene.club.get(&of_note, Some(&scene.moderator)).await.body;
    assert!(listed.contains(SAID) && listed.contains("Take it away"), "{listed}");
    scene.decide(&scene.moderator, remark, ("decline", "Not so.")).await;
    assert!(!scene.page(None).await.contains(SAID));
    let own = scene.page(Some(&scene.reader)).await;
    assert!(own.contains(SAID) && own.contains("Not taken: Not so."), "{own}");
}

#[tokio::test]
async fn what_speaks_of_pressure_or_stands_on_it_is_the_inspectors() {
    let scene = Scene::open().await;
    let remark = scene.sent_in(&scene.reader, "It held on my boiler too.").await;
    assert!(scene.page(Some(&scene.reader)).await.contains("waiting for an inspector"));
    let refused = scene.decide(&scene.moderator, remark, ("show", "")).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    assert!(scene.queue(&scene.moderator).await.contains("only an inspector passes it"));
    let shown = scene.decide(&scene.inspector, remark, ("show", "")).await;
    assert_eq!(shown.status, StatusCode::SEE_OTHER, "{}", shown.body);
    assert!(scene.page(None).await.contains("on my boiler too"));

    // Plain words that wait on a note become the inspector's with it.
    let plain = scene.sent_in(&scene.reader, SAID).await;
    let version = scene.club.version(scene.note, "shown").await.to_string();
    let fields = [("version", version.as_str()), ("correction", "Not for a boiler.")];
    let path = format!("/notes/{}/correct", scene.note);
    let corrected = scene.club.post(&path, Some(&scene.inspector), &fields).await;
    assert_eq!(corrected.status, StatusCode::SEE_OTHER, "{}", corrected.body);
    let refused = scene.decide(&scene.moderator, plain, ("show", "")).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    assert!(scene.queue(&scene.inspector).await.contains(SAID));
    let declined = scene.decide(&scene.moderator, plain, ("decline", "No.")).await;
    assert_eq!(declined.status, StatusCode::SEE_OTHER, "anybody may say no: {}", declined.body);
}

#[tokio::test]
async fn a_remark_of_ones_own_is_taken_back_and_decided_by_another() {
    let scene = Scene::open().await;
    let remark = scene.sent_in(&scene.moderator, SAID).await;
    let refused = scene.decide(&scene.moderator, remark, ("show", "")).await;
    assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    let number = remark.to_string();
    let back = [("of", number.as_str()), ("do", "away")];
    let path = format!("/notes/{}/remark", scene.note);
    let others = scene.club.post(&path, Some(&scene.reader), &back).await;
    assert_eq!(others.status, StatusCode::NOT_FOUND, "{}", others.body);
    let done = scene.club.post(&path, Some(&scene.moderator), &back).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
    assert!(!scene.page(Some(&scene.moderator)).await.contains(SAID));
    // The note's author may answer.
    let answer = scene.sent_in(&scene.author, "Thank you.").await;
    scene.decide(&scene.moderator, answer, ("show", "")).await;
    assert!(scene.page(None).await.contains("Thank you."));
}

#[tokio::test]
async fn a_form_that_cannot_be_done_comes_back_with_what_was_typed() {
    let scene = Scene::open().await;
    let long = "é".repeat(501);
    for (text, status) in [("", 422), (long.as_str(), 422), (&long[..1000], 303)] {
        let answer = scene.remark(&scene.reader, text).await;
        assert_eq!(answer.status.as_u16(), status, "{}", answer.body);
        assert!(status == 303 || answer.body.contains(text));
    }
    let path = format!("/notes/{}/remark", scene.note);
    let out = scene.club.post(&path, None, &[("remark", SAID)]).await;
    assert_eq!(out.status, StatusCode::UNAUTHORIZED);
    assert!(out.body.contains(SAID), "{}", out.body);
    // Another wording was read than the one that stands.
    let fields = [("remark", SAID), ("version", "9999")];
    let late = scene.club.post(&path, Some(&scene.reader), &fields).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    assert!(late.body.contains(SAID), "{}", late.body);
    // A danger hides the note, and what is remarked on it.
    let report = format!("/notes/{}/report", scene.note);
    scene.club.post(&report, Some(&scene.reader), &[("danger", "It bites.")]).await;
    let hidden = scene.remark(&scene.author, SAID).await;
    assert_eq!(hidden.status, StatusCode::CONFLICT, "{}", hidden.body);
    assert!(hidden.body.contains(SAID), "{}", hidden.body);
}

#[tokio::test]
async fn remarks_go_with_their_note_and_stay_nameless_when_their_author_leaves() {
    let scene = Scene::open().await;
    let Scene { club, reader, moderator, .. } = &scene;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let shown = scene.sent_in(reader, SAID).await;
    scene.decide(moderator, shown, ("show", "")).await;
    scene.sent_in(reader, "Not read yet.").await;
    let leave = [("do", "remove"), ("notes", "keep")];
    let gone = club.post(&format!("/people/{}", reader.id), Some(&una), &leave).await;
    assert_eq!(gone.status, StatusCode::SEE_OTHER, "{}", gone.body);
    let page = scene.page(None).await;
    assert!(page.contains(SAID) && page.contains("a former member") && !page.contains("Cyril"));
    assert_eq!(club.count("SELECT count(*) FROM remark").await, 1, "what waited is nobody's");

    let path = format!("/notes/{}/withdraw", scene.note);
    scene.sent_in(&scene.author, "Still waiting.").await;
    club.post(&path, Some(&scene.author), &[("why", "Wrong.")]).await;
    assert_eq!(club.count("SELECT count(*) FROM remark WHERE state = 'withdrawn'").await, 2);
    assert!(!scene.queue(moderator).await.contains("Still waiting."));

    let other = Scene { note: club.shown(&scene.author, moderator, &NOTE).await, ..scene };
    let text = "Another member’s.";
    let third = other.club.join("Dora Finch", Right::None).await;
    let remark = other.sent_in(&third, text).await;
    other.decide(&other.moderator, remark, ("show", "")).await;
    let leave = [("do", "remove"), ("notes", "remove")];
    other.club.post(&format!("/people/{}", third.id), Some(&una), &leave).await;
    assert!(!other.page(None).await.contains(text), "it went with the notes");
}

#[tokio::test]
async fn new_rules_of_pressure_judge_remarks_too() {
    let scene = Scene::open().await;
    let remark = scene.sent_in(&scene.reader, "It held on my boiler too.").await;
    scene.decide(&scene.inspector, remark, ("show", "")).await;
    let [_, writer] = scene.club.app.database.pools();
    // As rules that did not hear it would have left it.
    sqlx::query("UPDATE remark SET is_pressure = 0").execute(writer).await.unwrap();
    sqlx::query("UPDATE pressure_rule SET rule = ''").execute(writer).await.unwrap();
    let time = std::time::Duration::from_secs(60);
    let judged = holewright_server::db::notes::anew::judge(
        &scene.club.app.database,
        crate::support::NOW,
        "new",
        time,
    );
    assert_eq!(judged.await.unwrap().heard, 1);
    assert!(!scene.page(None).await.contains("on my boiler too"), "shown unread");
    assert!(scene.queue(&scene.inspector).await.contains("on my boiler too"));
}

#[tokio::test]
async fn what_waits_keeps_nothing_that_is_shown_away_and_is_bound() {
    let scene = Scene::open().await;
    let Scene { club, reader, moderator, author, .. } = &scene;
    let shown = scene.sent_in(author, "Readers see this.").await;
    scene.decide(moderator, shown, ("show", "")).await;
    for number in 0..5 {
        scene.sent_in(reader, &format!("Unread {number}.")).await;
    }
    let many = scene.remark(reader, "One too many.").await;
    assert_eq!(many.status, StatusCode::CONFLICT, "{}", many.body);
    assert!(many.body.contains("5 remarks of yours on this note wait to be read"), "{}", many.body);
    assert!(many.body.contains("One too many."), "what was typed: {}", many.body);
    // So is the line of a verdict, which is then not counted without it.
    let fields = [("found", "worked"), ("reason", "With paraffin.")];
    let verdict = club.post(&format!("/notes/{}/verdict", scene.note), Some(reader), &fields).await;
    assert_eq!(verdict.status, StatusCode::CONFLICT, "{}", verdict.body);
    assert!(verdict.body.contains("With paraffin."), "{}", verdict.body);
    assert_eq!(club.count("SELECT count(*) FROM verdict").await, 0);
    // The same words again are no other remark.
    scene.sent_in(reader, "Unread 4.").await;
    for _ in 0..3 {
        let note = club.shown(author, moderator, &NOTE).await;
        for number in 0..5 {
            let text = [("remark", format!("Unread {number}."))];
            let text = [(text[0].0, text[0].1.as_str())];
            club.post(&format!("/notes/{note}/remark"), Some(reader), &text).await;
        }
    }
    let other = club.shown(author, moderator, &NOTE).await;
    let text = [("remark", "And one more.")];
    let many = club.post(&format!("/notes/{other}/remark"), Some(reader), &text).await;
    assert_eq!(many.status, StatusCode::CONFLICT, "{}", many.body);
    assert!(many.body.contains("20 remarks of yours wait to be read"), "{}", many.body);
    assert!(many.body.contains("And one more."), "{}", many.body);

    // However many wait, as an older program may have left them, what is shown stays on the page.
    let [_, writer] = club.app.database.pools();
    for number in 0..150 {
        sqlx::query(
            "INSERT INTO remark (note_id, member_id, version_id, is_pressure, text, made_at)
             SELECT note_id, (SELECT id FROM member WHERE name = 'Cyril Marsh'), version_id, 0, ?1, 1
             FROM remark WHERE id = ?2",
        )
        .bind(format!("Old {number}."))
        .bind(shown)
        .execute(writer)
        .await
        .unwrap();
    }
    assert!(scene.page(None).await.contains("Readers see this."));
    let third = club.join("Dora Finch", Right::None).await;
    scene.sent_in(&third, "Dora waits too.").await;
    // Counted, and of each member one before the second of any.
    let queue = scene.queue(moderator).await;
    assert!(queue.contains("171 wait. Here 1 to 50."), "{queue}");
    assert!(queue.contains("Dora waits too."), "{queue}");
    let mut seen = 0;
    for from in [0, 50, 100, 150] {
        let path = format!("/queue/remarks?from={from}");
        let page = club.get(&path, Some(moderator)).await.body;
        seen += page.matches("<h2 id=\"remark-").count();
        let next = format!("href=\"/queue/remarks?from={}\"", from + 50);
        assert_eq!(page.contains(&next), from < 150, "{page}");
    }
    assert_eq!(seen, 171);
    let past = club.get("/queue/remarks?from=5000", Some(moderator)).await.body;
    assert!(past.contains("Here 1 to 50."), "{past}");
}

#[tokio::test]
async fn what_is_shown_can_be_taken_away_on_the_page_of_its_note() {
    let scene = Scene::open().await;
    let Scene { club, reader, moderator, inspector, author, .. } = &scene;
    let plain = scene.sent_in(reader, SAID).await;
    scene.decide(moderator, plain, ("show", "")).await;
    let heard = scene.sent_in(reader, "It held on my boiler too.").await;
    scene.decide(inspector, heard, ("show", "")).await;
    let takes = |page: &str| page.matches(">Why it is taken away</label>").count();
    for (by, expected) in [
        (None, 0),
        (Some(reader), 0),
        (Some(author), 0),
        (Some(inspector), 1),
        (Some(moderator), 2),
    ] {
        let page = scene.page(by).await;
        assert_eq!(takes(&page), expected, "{page}");
    }
    let (number, note) = (plain.to_string(), scene.note.to_string());
    let away = |reason| {
        let known = [("remark", number.as_str()), ("note", note.as_str()), ("back", "note")];
        [&known[..], &[("do", "decline"), ("reason", reason)]].concat()
    };
    let silent = club.post("/queue/remarks", Some(moderator), &away(" ")).await;
    assert_eq!(silent.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", silent.body);
    let done = club.post("/queue/remarks", Some(moderator), &away("Not so in brass.")).await;
    assert_eq!(done.header("location"), format!("/notes/{}", scene.note));
    assert!(!scene.page(None).await.contains(SAID));
    let own = scene.page(Some(reader)).await;
    assert!(own.contains("Not taken: Not so in brass."), "{own}");
    let acts = "SELECT count(*) FROM act WHERE what = 'note-remark-declined'";
    assert_eq!(club.count(acts).await, 1);
}

#[tokio::test]
async fn a_remark_shown_meanwhile_is_not_declined_unread() {
    let scene = Scene::open().await;
    let Scene { club, reader, moderator, .. } = &scene;
    let second = club.join("Moira Hale", Right::Moderator).await;
    let remark = scene.sent_in(reader, SAID).await.to_string();
    let as_listed = "name=\"stands\" value=\"waiting\"";
    assert!(scene.queue(&second).await.contains(as_listed));
    let decided = async |by: &Person, what: &str, stands: &str| {
        let known = [("remark", remark.as_str()), ("stands", stands)];
        let fields = [&known[..], &[("do", what), ("reason", "Known already.")]].concat();
        club.post("/queue/remarks", Some(by), &fields).await
    };
    assert_eq!(decided(moderator, "show", "waiting").await.status, StatusCode::SEE_OTHER);
    let late = decided(&second, "decline", "waiting").await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.body);
    assert!(late.body.contains("somebody else has shown the remark meanwhile"), "{}", late.body);
    assert!(late.body.contains("What you typed: Known already."), "{}", late.body);
    assert!(scene.page(None).await.contains(SAID), "readers see it still");
    // Whoever read it on the note takes it away.
    assert!(scene.page(Some(&second)).await.contains("name=\"stands\" value=\"shown\""));
    assert_eq!(decided(&second, "decline", "shown").await.status, StatusCode::SEE_OTHER);
    assert!(!scene.page(None).await.contains(SAID));
}

#[tokio::test]
async fn nobody_decides_about_the_remarks_on_their_own_note_where_somebody_else_could() {
    let scene = Scene::open().await;
    let other = scene.club.join("Una Oakes", Right::Moderator).await;
    let own = scene.club.shown(&scene.moderator, &other, &NOTE).await;
    let scene = Scene { note: own, ..scene };
    let remark = scene.sent_in(&scene.reader, SAID).await;
    for what in [("show", ""), ("decline", "It does not please me.")] {
        let refused = scene.decide(&scene.moderator, remark, what).await;
        assert_eq!(refused.status, StatusCode::FORBIDDEN, "{}", refused.body);
    }
    let queue = scene.queue(&scene.moderator).await;
    assert!(queue.contains("On a note of your own: somebody else"), "{queue}");
    // The only other who could made this one: its fate would else be nobody's.
    let others = scene.sent_in(&other, "Mine tore.").await;
    let done = scene.decide(&scene.moderator, others, ("decline", "Said above.")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
    let done = scene.decide(&other, remark, ("show", "")).await;
    assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.body);
}
