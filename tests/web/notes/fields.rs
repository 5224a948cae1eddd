//! A field that is declared is kept, shown, found and exported: one that the SQL forgets fails here.

use holewright_server::rules::notes::fields::{DONE, NoteField, TEXT, TITLE};

use super::club::{Club, Right};

/// A text that stands nowhere else.
fn word(field: NoteField) -> String {
    format!("zq{}", field.name)
}

#[tokio::test]
async fn every_field_goes_all_the_way() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = || [TITLE, TEXT].into_iter().chain(DONE);
    let typed: Vec<(&str, String)> = fields().map(|field| (field.name, word(field))).collect();
    let typed: Vec<(&str, &str)> =
        typed.iter().map(|(name, word)| (*name, word.as_str())).collect();
    let note = club.send_in(&author, &typed).await;
    let queue = club.get("/queue", Some(&moderator)).await.body;
    club.decide(&moderator, note, ("pass", "")).await;
    let page = format!("/notes/{note}");
    let places = [
        queue,
        club.get(&page, None).await.body,
        club.get(&format!("{page}/edit"), Some(&author)).await.body,
        club.get(&format!("{page}/history"), None).await.body,
        club.post("/notes/new", None, &typed).await.body,
        club.get("/notes.csv", None).await.body,
    ];
    let json = club.get("/notes.json", None).await.json();
    let own = club.get("/me/data.json", Some(&author)).await.json();
    for field in fields() {
        let word = word(field);
        for (number, body) in places.iter().enumerate() {
            assert!(body.contains(&word), "place {number} lacks {word}: {body}");
        }
        assert_eq!(json["notes"][0][field.name], *word);
        assert_eq!(own["notes"][0]["wordings"][0][field.name], *word);
        let found = club.get(&format!("/notes?q={word}"), None).await.body;
        assert!(found.contains(&format!("href=\"/notes/{note}\"")), "{word}: {found}");
    }
}

#[tokio::test]
async fn the_form_refuses_what_the_database_would() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    for field in [TITLE, TEXT].into_iter().chain(DONE) {
        for (length, status) in [(field.longest, 303), (field.longest + 1, 422)] {
            let long = "é".repeat(length);
            let fields = [(field.name, long.as_str()), ("do", "draft")];
            let answer = club.post("/notes/new", Some(&author), &fields).await;
            assert_eq!(answer.status.as_u16(), status, "{length} in {}", field.name);
        }
    }
}

#[test]
fn a_field_is_filled_in_under_its_old_name_where_the_new_one_says_nothing() {
    let renamed = DONE.iter().find(|field| !field.once.is_empty()).unwrap();
    for (now, before, expected) in [
        ("brass", "", "brass"),
        ("brass", "copper", "brass"),
        (" ", "copper", "copper"),
        ("", "copper", "copper"),
        // Kept as it was typed.
        (" ", "", " "),
    ] {
        let filled = |name: &str| if name == renamed.name { now } else { before };
        assert_eq!(renamed.filled_in(filled), expected, "{now:?} and {before:?}");
    }
}
