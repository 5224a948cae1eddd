//! U06: a form is easy to fill in and to send: nothing is ticked beforehand, an answer says what came of it,
//! what was typed elsewhere on the page stays.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use crate::page::filled;

const NOTE: [(&str, &str); 2] = [("title", "Tapping"), ("text", "It cut clean.")];

async fn club() -> (Club, Person, Person, Person) {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let reader = club.join("Cyril Moss", Right::None).await;
    (club, author, moderator, reader)
}

#[tokio::test]
async fn u06_no_verdict_is_ticked_for_whoever_has_said_nothing() {
    let (club, author, moderator, reader) = club().await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    let (page, verdict) = (format!("/notes/{note}"), format!("/notes/{note}/verdict"));
    let found = |body: &str| filled(body).into_iter().find(|(name, _)| name == "found");
    let body = club.get(&page, Some(&reader)).await.body;
    assert!(body.contains("name=\"found\""), "{body}");
    assert_eq!(found(&body), None);
    // What was picked comes back with a form that is wrong.
    let long = "x".repeat(200);
    for picked in ["did-not", "worked"] {
        let fields = [("found", picked), ("size", long.as_str())];
        let answer = club.post(&verdict, Some(&reader), &fields).await;
        assert_eq!(answer.status.as_u16(), 422, "{}", answer.body);
        assert_eq!(found(&answer.body).unwrap().1, picked);
    }
    let answer = club.post(&verdict, Some(&reader), &[("size", "4 BA")]).await;
    assert_eq!((answer.status.as_u16(), found(&answer.body)), (422, None));
    club.post(&verdict, Some(&reader), &[("found", "did-not")]).await;
    assert_eq!(found(&club.get(&page, Some(&reader)).await.body).unwrap().1, "did-not");
}

#[tokio::test]
async fn u06_a_report_is_answered_with_who_looks_at_it() {
    let (club, author, moderator, reader) = club().await;
    let boiler = [("title", "A boiler bush"), ("text", "For steam."), ("pressure", "yes")];
    for (fields, looks) in [(NOTE.as_slice(), "A moderator looks at it"), (&boiler, "inspector")] {
        let inspector = club.join(&format!("Dora {looks}"), Right::Inspector).await;
        let passes = if looks == "inspector" { &inspector } else { &moderator };
        let note = club.shown(&author, passes, fields).await;
        let page = format!("/notes/{note}");
        let report = [("danger", "The <drill> grabs.")];
        let answer = club.post(&format!("{page}/report"), Some(&reader), &report).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
        let answer = club.get(answer.header("location"), Some(&reader)).await;
        assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
        for words in ["Your report is in", looks, "The &#60;drill&#62; grabs.", "href=\"/notes\""] {
            assert!(answer.body.contains(words), "{words}: {}", answer.body);
        }
        // Nobody else is told more than that it is hidden.
        let other = club.join(&format!("Enid {looks}"), Right::None).await;
        for stranger in [None, Some(&other)] {
            let answer = club.get(&page, stranger).await;
            assert_eq!(answer.status, StatusCode::NOT_FOUND);
            assert!(!answer.body.contains("grabs"), "{}", answer.body);
        }
        club.decide(passes, note, ("settle", "")).await;
        assert!(club.get(&page, Some(&reader)).await.body.contains("What others found"));
    }
}

#[tokio::test]
async fn u06_the_search_of_the_notes_stands_above_what_it_found() {
    let (club, author, moderator, _) = club().await;
    let note = club.shown(&author, &moderator, &NOTE).await;
    for path in ["/notes", "/notes?q=clean", "/notes?confirmed=yes", "/notes?on=nothing"] {
        let body = club.get(path, None).await.body;
        let main = body.split("<main").nth(1).unwrap();
        let at = |words: &str| main.find(words);
        let field = at("id=\"q\"").unwrap_or_else(|| panic!("{path}: {main}"));
        let filter = at("name=\"confirmed\"").unwrap();
        for behind in [format!("href=\"/notes/{note}\""), "No note".into(), "/notes.csv".into()] {
            let place = at(&behind).unwrap_or(usize::MAX);
            assert!(field < place && filter < place, "{path}: {behind}");
        }
    }
    // The filters are folded until one is used.
    let folded = |body: &str| body.contains("<details class=\"no-print\">");
    assert!(folded(&club.get("/notes", None).await.body));
    assert!(!folded(&club.get("/notes?confirmed=yes", None).await.body));
}

#[tokio::test]
async fn u06_all_of_one_members_reports_are_settled_at_the_second_tap() {
    let (club, author, moderator, reader) = club().await;
    for number in 0..3 {
        let title = format!("Note {number}");
        let fields = [("title", title.as_str()), ("text", "It cut clean.")];
        let note = club.shown(&author, &moderator, &fields).await;
        club.post(&format!("/notes/{note}/report"), Some(&reader), &[("danger", "x")]).await;
    }
    let body = club.get("/queue", Some(&moderator)).await.body;
    let section = body.split("action=\"/queue/reports\"").collect::<Vec<_>>();
    assert_eq!(section.len(), 2, "{body}");
    let open = section[0].rfind("<details>").expect("folded");
    assert!(!section[0][open..].contains("</details>"), "{body}");
    assert!(section[0].contains("reported 3 notes"), "{body}");
    assert!(section[1].split("</button>").next().unwrap().contains("show all 3 again"), "{body}");
}

#[tokio::test]
async fn u06_the_queue_keeps_what_was_typed_at_other_notes() {
    let (club, author, moderator, _) = club().await;
    let mut notes = Vec::new();
    for number in 0..3 {
        let title = format!("Note {number}");
        let fields = [("title", title.as_str()), ("text", "It cut clean.")];
        notes.push(club.send_in(&author, &fields).await);
    }
    let [first, second, third] = notes[..] else { panic!("{notes:?}") };
    let body = club.get("/queue", Some(&moderator)).await.body;
    for note in &notes {
        assert!(body.contains(&format!("formaction=\"/queue/{note}\"")), "{body}");
    }
    let form = |body: &str| -> Vec<(String, String)> {
        let mut fields = filled(body);
        fields.retain(|(name, _)| name != "q");
        for (name, value) in &mut fields {
            if *name == format!("reason-{second}") {
                "Second: which <oil>?".clone_into(value);
            }
            if *name == format!("reason-{third}") {
                "Third: we have it.".clone_into(value);
            }
        }
        fields
    };
    let send = async |note: i64, body: &str, what: &str| {
        let fields = form(body);
        let fields = fields.iter().map(|(name, value)| (name.as_str(), value.as_str()));
        let fields: Vec<_> = fields.chain([("do", what)]).collect();
        club.post(&format!("/queue/{note}"), Some(&moderator), &fields).await
    };
    let held = |body: &str, note: i64| -> Option<String> {
        let name = format!("reason-{note}");
        filled(body).into_iter().find(|(held, _)| *held == name).map(|(_, typed)| typed)
    };
    let keeps = |body: &str| {
        assert_eq!(held(body, second).as_deref(), Some("Second: which <oil>?"), "{body}");
        assert_eq!(held(body, third).as_deref(), Some("Third: we have it."), "{body}");
    };
    // A reason is missing at the first.
    let wrong = send(first, &body, "decline").await;
    assert_eq!(wrong.status.as_u16(), 422, "{}", wrong.body);
    keeps(&wrong.body);
    // The first is shown: what was typed at the others stays, and the page says what was done.
    let done = send(first, &wrong.body, "pass").await;
    assert_eq!(done.status, StatusCode::OK, "{}", done.body);
    assert!(done.body.contains("Done."), "{}", done.body);
    assert_eq!(held(&done.body, first), None);
    keeps(&done.body);
    // Loaded again it is sent again: nothing is done twice, nothing is lost.
    let again = send(first, &wrong.body, "pass").await;
    assert_eq!(again.status, StatusCode::CONFLICT, "{}", again.body);
    keeps(&again.body);
    // Each reason goes with its own note.
    assert_eq!(send(second, &again.body, "change").await.status, StatusCode::OK);
    let page = club.get(&format!("/notes/{second}"), Some(&author)).await.body;
    assert!(page.contains("A change is asked for: Second: which &#60;oil&#62;?"), "{page}");
    // Nothing else is typed: on to the queue as ever.
    let body = club.get("/queue", Some(&moderator)).await.body;
    let last = send(third, &body, "decline").await;
    assert_eq!(last.status, StatusCode::SEE_OTHER, "{}", last.body);
}

#[tokio::test]
async fn u10_a_signed_out_queue_gives_every_reason_back() {
    let (club, author, _, _) = club().await;
    let one = club.send_in(&author, &NOTE).await;
    let other = club.send_in(&author, &[("title", "B"), ("text", "C")]).await;
    let [reason, beside] = [one, other].map(|note| format!("reason-{note}"));
    let fields = [(reason.as_str(), "Mine"), (&beside, "Beside"), ("do", "change")];
    let answer = club.post(&format!("/queue/{one}"), None, &fields).await;
    assert_eq!(answer.status, StatusCode::UNAUTHORIZED);
    let held = filled(&answer.body);
    assert!(held.contains(&("reason".to_owned(), "Mine".to_owned())), "{held:?}");
    assert!(held.contains(&(beside, "Beside".to_owned())), "{held:?}");
}
