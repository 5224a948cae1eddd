//! A member who goes: what goes with them and what stays.

use axum::http::StatusCode;

use super::club::{Club, PASSWORD, PLAIN, SECRETARY};

/// A shown note, one that waits, and a draft of this member; the words of the shown one are found.
async fn write_notes(club: &Club, author: i64) {
    for (number, state) in ["shown", "waiting", "draft"].into_iter().enumerate() {
        let key = format!("form-key-of-{author}-number-{number}");
        let writer = club.app.database.pools()[1];
        let note: i64 = sqlx::query_scalar(
            "INSERT INTO note (author_id, form_key, made_at) VALUES (?, ?, 1800000000) RETURNING id",
        )
        .bind(author)
        .bind(key)
        .fetch_one(writer)
        .await
        .unwrap();
        let version: i64 = sqlx::query_scalar(
            "INSERT INTO note_version (note_id, state, title, text, made_at, saved_at)
             VALUES (?, ?, 'Copper', 'it dragged', 1800000000, 1800000000) RETURNING id",
        )
        .bind(note)
        .bind(state)
        .fetch_one(writer)
        .await
        .unwrap();
        if state == "shown" {
            let shown = "UPDATE note SET shown_version = ?, shown_at = 1800000000 WHERE id = ?";
            sqlx::query(shown).bind(version).bind(note).execute(writer).await.unwrap();
            let words = "INSERT INTO note_text (rowid, title, text, done) VALUES (?, 'Copper', 'it dragged', '')";
            sqlx::query(words).bind(note).execute(writer).await.unwrap();
        }
    }
}

const FOUND: &str = "SELECT COUNT(*) FROM note_text WHERE note_text MATCH 'dragged'";

#[tokio::test]
async fn a_leavers_notes_stay_under_a_former_member_and_drafts_go() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    write_notes(&club, club.number_of("Enid Hathersage").await).await;
    let wrong =
        enid.post("/me/leave", &[("password", "not the password at all"), ("notes", "keep")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    let unsaid = enid.post("/me/leave", &[("password", PASSWORD)]).await;
    assert_eq!(unsaid.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(unsaid.body.contains("Say what becomes of your notes"), "{}", unsaid.body);
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 2);

    let left = enid.post("/me/leave", &[("password", PASSWORD), ("notes", "keep")]).await;
    assert_eq!((left.status, left.header("location")), (StatusCode::SEE_OTHER, "/sign-in"));
    assert_eq!(enid.cookie, None);
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);
    assert_eq!(club.count("SELECT COUNT(*) FROM session").await, 1);
    assert_eq!(club.count("SELECT COUNT(*) FROM note WHERE author_id IS NULL").await, 2);
    assert_eq!(club.count("SELECT COUNT(*) FROM note").await, 2, "the draft went");
    assert_eq!(club.count(FOUND).await, 1);
    assert_eq!(
        club.count("SELECT COUNT(*) FROM act WHERE what = 'member-removed' AND member_name = 'Enid Hathersage'").await,
        1
    );
    assert_eq!(
        club.browser().sign_in("Enid Hathersage", PASSWORD).await.status,
        StatusCode::UNPROCESSABLE_ENTITY
    );
}

#[tokio::test]
async fn a_removed_members_notes_go_if_that_is_asked_and_nobody_elses() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    club.join("Percy Wainscott", PLAIN).await;
    let number = club.number_of("Enid Hathersage").await;
    write_notes(&club, number).await;
    write_notes(&club, club.number_of("Percy Wainscott").await).await;
    let address = format!("/people/{number}");
    let unsaid = una.post(&address, &[("do", "remove")]).await;
    assert_eq!(unsaid.status, StatusCode::NOT_FOUND);
    assert!(enid.is_in().await);
    let gone = una.post(&address, &[("do", "remove"), ("notes", "remove")]).await;
    assert_eq!((gone.status, gone.header("location")), (StatusCode::SEE_OTHER, "/people"));
    assert!(!enid.is_in().await);
    assert_eq!(club.count("SELECT COUNT(*) FROM note").await, 3, "those of the other member");
    assert_eq!(club.count("SELECT COUNT(*) FROM note_version").await, 3);
    assert_eq!(club.count(FOUND).await, 1);
    assert_eq!(club.count("SELECT COUNT(*) FROM pragma_foreign_key_check").await, 0);
    assert_eq!(una.get(&address).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_member_gets_what_is_kept_of_them_and_nothing_of_others() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    let data = enid.get("/me/data.json").await;
    assert_eq!(data.status, StatusCode::OK);
    assert_eq!(data.header("cache-control"), "private, no-store");
    assert!(
        data.headers.get("access-control-allow-origin").is_none(),
        "no other site's script reads it"
    );
    assert_eq!(data.header("cross-origin-resource-policy"), "same-origin");
    let data = data.json();
    assert_eq!(data["member"]["name"], "Enid Hathersage");
    assert_eq!(data["member"]["is_secretary"], false);
    assert_eq!(data["sessions"].as_array().unwrap().len(), 1);
    let text = data.to_string();
    for secret in ["argon2", "Una", enid.cookie.as_deref().unwrap()] {
        assert!(!text.contains(secret), "{secret}: {text}");
    }
}
