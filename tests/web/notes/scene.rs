//! A small club in which notes are decided about.

use axum::http::StatusCode;

use super::club::{Club, Person, Right};
use crate::support::Answer;

/// The club with an author, a reader and those who decide.
pub(super) struct Scene {
    pub(super) club: Club,
    pub(super) author: Person,
    pub(super) moderator: Person,
    pub(super) second: Person,
    pub(super) inspector: Person,
    pub(super) reader: Person,
}

impl Scene {
    pub(super) async fn open() -> Self {
        let club = Club::open().await;
        Self {
            author: club.join("Ada Penn", Right::None).await,
            moderator: club.join("Bert Stone", Right::Moderator).await,
            second: club.join("Moira Hale", Right::Moderator).await,
            inspector: club.join("Dora Vale", Right::Inspector).await,
            reader: club.join("Cyril Moss", Right::None).await,
            club,
        }
    }

    pub(super) async fn send_in(&self, title: &str) -> i64 {
        let text = format!("{title}: it cut clean.");
        self.club.send_in(&self.author, &[("title", title), ("text", &text)]).await
    }

    pub(super) async fn report(&self, note: i64) {
        let danger = [("danger", "The wall is left too thin.")];
        let answer =
            self.club.post(&format!("/notes/{note}/report"), Some(&self.second), &danger).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }

    pub(super) async fn change(&self, note: i64, fields: &[(&str, &str)]) {
        let fields = [&[("do", "send")], fields].concat();
        let path = format!("/notes/{note}/edit");
        let answer = self.club.post(&path, Some(&self.author), &fields).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
    }

    pub(super) async fn queue(&self, part: &str) -> String {
        let answer = self.club.get(&format!("/queue{part}"), Some(&self.moderator)).await;
        assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
        answer.body
    }

    pub(super) async fn undo(&self, note: i64, by: &Person) -> Answer {
        self.club.post(&format!("/queue/{note}"), Some(by), &[("do", "undo")]).await
    }

    /// What waits of the note, shown by the moderator with a small fix.
    pub(super) async fn mend(&self, note: i64, fields: &[(&str, &str)]) -> Answer {
        let version = self.club.version(note, "waiting").await.to_string();
        let fields = [fields, &[("version", version.as_str())]].concat();
        self.club.post(&format!("/queue/{note}/mend"), Some(&self.moderator), &fields).await
    }

    pub(super) async fn execute(&self, statement: &'static str) {
        let [_, writer] = self.club.app.database.pools();
        sqlx::query(statement).execute(writer).await.unwrap();
    }

    /// Every row that says how the notes stand.
    pub(super) async fn rows(&self) -> Vec<String> {
        let [readers, _] = self.club.app.database.pools();
        let mut all = Vec::new();
        for query in [
            "SELECT json_array(id, shown_version, shown_at, hidden_at, confirmed_at, withdrawn_at,
               withdrawn_why, withdrawn_by_another) FROM note
             ORDER BY id",
            "SELECT json_array(id, note_id, state, is_pressure, title, text, decided_at, decided_by, reason,
               turned_back_at, inspected_at, saved_at, mended_from) FROM note_version ORDER BY id",
            "SELECT json_array(id, settled_at, settled_by, hid, showed_at) FROM safety_report ORDER BY id",
            "SELECT json_array(note_id, member_id, version_id, worked, material, size) FROM verdict
             ORDER BY note_id, member_id",
            "SELECT json_array(id, note_id, version_id, state, is_pressure, text, reason, decided_at, decided_by)
             FROM remark ORDER BY id",
            "SELECT json_array(version_id, entry_id) FROM note_entry ORDER BY version_id, entry_id",
            "SELECT json_array(id, reason, words) FROM change_asked ORDER BY id",
            "SELECT json_array(rowid, title, text, marks) FROM note_text ORDER BY rowid",
        ] {
            let rows: Vec<(String,)> = sqlx::query_as(query).fetch_all(readers).await.unwrap();
            all.extend(rows.into_iter().map(|(row,)| row));
        }
        all
    }
}
