//! A club in which everything is as long and as hard as it may be.

use std::sync::Arc;

use holewright_server::db::notes::reports::MOST_AT_ONCE;
use holewright_server::front::bytes::Kept;
use holewright_server::rules::auth::Token;
use holewright_server::rules::limits::RateLimit;
use sqlx::SqliteConnection;

use super::shown::{THINGS, full_of, show, wording};
use crate::notes::club::{Club, Person, Right};
use crate::support::NOW;

/// A drawer as full as its cookie.
const DRAWER: &str = "drawer=drills=1-80%2C+A-Z%2C+1/64-1/2x64ths%2C+0.3-14mm&taps=BA+0-16\
    &speeds=350%2C+500%2C+780%2C+1100%2C+1420%2C+2000&on=yes";

/// Letters in no order: the hardest to compare with another such.
fn hard(salt: usize) -> String {
    let letter = |n: usize| {
        let drawn =
            (n + 1).wrapping_mul(2_654_435_761).wrapping_add(salt.wrapping_mul(40_503)) >> 9;
        char::from(b'a' + u8::try_from(drawn % 26).unwrap())
    };
    full_of(|n| format!("q{}", letter(n * n + salt)))
}

/// Texts as long as may be that are dear to show, each in another way.
fn texts() -> Vec<String> {
    let pieces = ["\"", "3.3 mm, No. 43, 4 BA,", "1/4 BA mm #", "*a_", "[a](", "> - 1.", "a + b"];
    let mut texts: Vec<String> = pieces.map(|piece| full_of(|_| piece.to_owned())).into();
    let lines = full_of(|n| format!("{}- item\n", "  ".repeat(n % 90)));
    texts.extend([lines.replace("\n ", "\n"), hard(1)]);
    texts.iter().map(|text| text.trim_end().to_owned()).collect()
}

/// The club, and what is asked about in it.
pub(super) struct Worst {
    pub(super) club: Club,
    pub(super) author: Person,
    pub(super) moderator: Person,
    pub(super) secretary: Person,
    /// Who signs out.
    pub(super) leaver: Person,
    /// Somebody with a drawer, who is not signed in.
    pub(super) reader: Person,
    /// The author's note, with all that may hang on one, and its shown wording.
    pub(super) shown: i64,
    pub(super) version: i64,
    /// A note that waits, and the wording that does.
    pub(super) waiting: (i64, i64),
    pub(super) passed: (i64, i64),
    pub(super) mended: (i64, i64),
    /// Its text.
    pub(super) mended_text: String,
    pub(super) texts: Vec<String>,
    pub(super) things: Vec<String>,
    pub(super) to_join: String,
    /// The token of the author's feed.
    pub(super) feed: String,
    pub(super) to_reset: String,
}

impl Worst {
    /// One of the many members.
    pub(super) const REPORTER: i64 = 1000;

    /// Hides every note that readers see, by reports of one member; how many.
    pub(super) async fn hide_all(&self) -> u64 {
        let mut writer = self.club.app.database.pools()[1].begin().await.unwrap();
        let mut hidden = 0;
        for query in [
            "INSERT INTO safety_report (note_id, member_id, text, made_at, hid)
             SELECT id, ?1, printf('%.2000c', '\"'), ?2, 1 FROM note
             WHERE shown_version IS NOT NULL AND withdrawn_at IS NULL AND hidden_at IS NULL",
            "UPDATE note SET hidden_at = ?2
             WHERE ?1 > 0 AND id IN (SELECT note_id FROM safety_report WHERE settled_at IS NULL)",
            "DELETE FROM note_text WHERE ?1 > 0 AND ?2 > 0",
        ] {
            let query = sqlx::query(query).bind(Self::REPORTER).bind(NOW);
            hidden = query.execute(&mut *writer).await.unwrap().rows_affected().max(hidden);
        }
        writer.commit().await.unwrap();
        hidden
    }

    /// The notes that a report hides as a moderator's queue has read them, as many as are settled at once.
    pub(super) async fn as_read(&self) -> String {
        let rows: Vec<(String,)> = sqlx::query_as(
            "SELECT note.id || '.' || note.shown_version || '.'
               || coalesce((SELECT max(id) FROM correction WHERE note_id = note.id), 0)
             FROM note WHERE hidden_at IS NOT NULL AND withdrawn_at IS NULL ORDER BY note.id LIMIT ?",
        )
        .bind(i64::try_from(MOST_AT_ONCE).unwrap())
        .fetch_all(self.club.app.database.pools()[0])
        .await
        .unwrap();
        rows.into_iter().map(|(read,)| read).collect::<Vec<_>>().join(" ")
    }

    pub(super) async fn open() -> Self {
        let club = Club::open_with(|app| {
            // Each answer is made anew.
            app.kept = Kept::holding(0, Arc::clone(&app.shown));
            app.rate_limit = RateLimit::off();
            app.sign_in_limit = RateLimit::off();
        })
        .await;
        let author = club.join(&"Ä".repeat(60), Right::None).await;
        let moderator = club.join("Bert Stone", Right::Moderator).await;
        let secretary = club.join("Cyril Moss", Right::Secretary).await;
        let leaver = club.join("Dora Vale", Right::None).await;
        let reader = author.with_cookies(DRAWER);
        let mut writer = club.app.database.pools()[1].begin().await.unwrap();
        people(&mut writer, author.id).await;
        let feed = feed(&mut writer, author.id).await;
        let (to_join, to_reset) =
            (slip(&mut writer, None).await, slip(&mut writer, Some(leaver.id)).await);
        let texts = texts();
        let title = "\"".repeat(118) + " a";
        let (mut waiting, mut passed, mut mended) = ((0, 0), (0, 0), (0, 0));
        let mut waits = [const { String::new() }; 3];
        for (number, text) in texts.iter().cycle().take(60).enumerate() {
            let id = show(&mut writer, author.id, &title, text).await;
            if number % 3 == 0 {
                let text = hard(number);
                (mended, passed) = (passed, waiting);
                waits.rotate_left(1);
                waits[2].clone_from(&text);
                waiting = (id, wording(&mut writer, id, ("waiting", &title, &text)).await);
            }
        }
        let shown = show(&mut writer, author.id, &title, &texts[1]).await;
        around(&mut writer, shown, &title, &texts).await;
        writer.commit().await.unwrap();
        let version = club.version(shown, "shown").await;
        let things = THINGS.map(str::to_owned).into();
        Self {
            club,
            author,
            moderator,
            secretary,
            leaver,
            reader,
            shown,
            version,
            waiting,
            passed,
            mended,
            mended_text: waits[0].clone(),
            texts,
            things,
            to_join,
            feed,
            to_reset,
        }
    }
}

/// Many members, acts, slips and sessions.
async fn people(writer: &mut SqliteConnection, author: i64) {
    let many =
        "WITH RECURSIVE many (n) AS (SELECT 1000 UNION ALL SELECT n + 1 FROM many WHERE n < 1200) ";
    for query in [
        "INSERT INTO member (id, name, name_key, password_hash, joined_at)
         SELECT n, printf('%.60c', '\"'), 'key' || n, '$argon2id$x', ?1 FROM many WHERE ?2 > 0",
        "INSERT INTO session (token_hash, number, member_id, made_at, seen_at, agent)
         SELECT randomblob(32), n, ?2, ?1, ?1, printf('%.200c', '\"') FROM many",
        "INSERT INTO slip (token_hash, purpose, meant_for, made_at, ends_at)
         SELECT randomblob(32), 'join', printf('%.60c', '\"'), ?1, ?1 + 10000 FROM many WHERE ?2 > 0",
        "INSERT INTO act (at, member_id, member_name, what, subject, detail)
         SELECT ?1, ?2, printf('%.60c', '\"'), 'note-shown', 'note/1', printf('%.2000c', '\"') FROM many",
    ] {
        let query = sqlx::AssertSqlSafe(format!("{many}{query}"));
        sqlx::query(query).bind(NOW).bind(author).execute(&mut *writer).await.unwrap();
    }
}

/// What hangs on a note: earlier wordings, corrections, verdicts and settled reports.
async fn around(writer: &mut SqliteConnection, note: i64, title: &str, texts: &[String]) {
    for salt in 0..40 {
        wording(writer, note, ("replaced", title, &hard(salt))).await;
    }
    for text in texts {
        let text: String = text.chars().take(5_000).collect();
        sqlx::query("INSERT INTO correction (note_id, text, made_at) VALUES (?, ?, ?)")
            .bind(note)
            .bind(text)
            .bind(NOW)
            .execute(&mut *writer)
            .await
            .unwrap();
    }
    for query in [
        "INSERT INTO verdict (note_id, member_id, version_id, worked, material, size, made_at)
         SELECT ?1, id, (SELECT max(id) FROM note_version WHERE note_id = ?1 AND state IN ('shown', 'replaced')),
           id % 2, printf('%.100c', '\"'), printf('%.100c', '<'), ?2 FROM member WHERE id >= 1000",
        "INSERT INTO remark (note_id, member_id, version_id, state, is_pressure, text, made_at)
         SELECT ?1, id, (SELECT max(id) FROM note_version WHERE note_id = ?1 AND state IN ('shown', 'replaced')),
           iif(id % 2, 'shown', 'waiting'), 0, printf('%.500c', '\"'), ?2 FROM member WHERE id >= 1000",
        "INSERT INTO safety_report (note_id, member_id, text, made_at, settled_at, hid, showed_at)
         SELECT ?1, id, printf('%.2000c', '\"'), ?2, ?2, 1, ?2 FROM member WHERE id >= 1000",
    ] {
        sqlx::query(query).bind(note).bind(NOW).execute(&mut *writer).await.unwrap();
    }
}

/// The feed of this member.
async fn feed(writer: &mut SqliteConnection, member: i64) -> String {
    let token = Token::new().unwrap();
    sqlx::query("INSERT INTO feed (member_id, token_hash, made_at) VALUES (?, ?, ?)")
        .bind(member)
        .bind(token.hash().bytes())
        .bind(NOW)
        .execute(writer)
        .await
        .unwrap();
    token.secret().to_owned()
}

/// A slip to join, or for a new password of this member.
async fn slip(writer: &mut SqliteConnection, member: Option<i64>) -> String {
    let token = Token::new().unwrap();
    let purpose = if member.is_some() { "reset" } else { "join" };
    sqlx::query(
        "INSERT INTO slip (token_hash, purpose, member_id, made_at, ends_at) VALUES (?, ?, ?, ?, ?)",
    )
    .bind(token.hash().bytes())
    .bind(purpose)
    .bind(member)
    .bind(NOW)
    .bind(NOW + 1_000)
    .execute(writer)
    .await
    .unwrap();
    token.secret().to_owned()
}
