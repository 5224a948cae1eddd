//! Notes as long as may be, put into the database as they stand once they are shown.

use holewright_server::rules::notes::fields::{DONE, TEXT};
use sqlx::SqliteConnection;

use crate::support::NOW;

/// What each note belongs to.
pub(super) const THINGS: [&str; 12] = [
    "threads/ba/4",
    "threads/ba/5",
    "threads/metric/m3",
    "threads/unc/1-4-20",
    "threads/bspt/1-4",
    "drills/number/46",
    "drills/number/43",
    "drills/metric/3.3",
    "materials/gunmetal",
    "materials/silver-steel",
    "materials/copper",
    "materials/stainless-304",
];

/// A text as long as may be, of these pieces by turns.
pub(super) fn full_of(piece: impl Fn(usize) -> String) -> String {
    let (mut text, mut length) = (String::new(), 0);
    for number in 0.. {
        let piece = piece(number);
        length += piece.chars().count() + 1;
        if length > TEXT.longest {
            break;
        }
        text.push_str(&piece);
        text.push(' ');
    }
    text
}

/// A wording in this state; its number.
pub(super) async fn wording(
    writer: &mut SqliteConnection,
    note: i64,
    (state, title, text): (&str, &str, &str),
) -> i64 {
    let done: Vec<String> = DONE.iter().map(|field| "\"".repeat(field.longest)).collect();
    let columns: String = DONE.iter().map(|field| format!(", {}", field.name)).collect();
    let insert = format!(
        "INSERT INTO note_version (note_id, state, title, text, made_at, saved_at{columns})
         VALUES (?, ?, ?, ?, ?, ?{}) RETURNING id",
        ", ?".repeat(DONE.len())
    );
    let mut query = sqlx::query_scalar(sqlx::AssertSqlSafe(insert))
        .bind(note)
        .bind(state)
        .bind(title)
        .bind(text)
        .bind(NOW)
        .bind(NOW);
    for done in &done {
        query = query.bind(done);
    }
    query.fetch_one(writer).await.unwrap()
}

/// A note of this author that nobody sees yet; its number.
pub(super) async fn note(writer: &mut SqliteConnection, author: i64) -> i64 {
    sqlx::query_scalar(
        "INSERT INTO note (author_id, form_key, made_at)
         SELECT ?1, printf('%032d', coalesce(max(id), 0) + 1), ?2 FROM note RETURNING id",
    )
    .bind(author)
    .bind(NOW)
    .fetch_one(writer)
    .await
    .unwrap()
}

/// A shown note; its number.
pub(super) async fn show(
    writer: &mut SqliteConnection,
    author: i64,
    title: &str,
    text: &str,
) -> i64 {
    let id = note(writer, author).await;
    let version = wording(writer, id, ("shown", title, text)).await;
    for thing in THINGS {
        sqlx::query("INSERT INTO note_entry (version_id, entry_id) VALUES (?, ?)")
            .bind(version)
            .bind(thing)
            .execute(&mut *writer)
            .await
            .unwrap();
    }
    for query in [
        "UPDATE note SET shown_version = ?2, shown_at = made_at, confirmed_at = made_at WHERE id = ?1",
        "INSERT INTO note_text (rowid, title, text, done, marks)
         SELECT ?1, title, text, material, (SELECT marks FROM note_mark WHERE id = ?1)
         FROM note_version WHERE id = ?2",
    ] {
        sqlx::query(query).bind(id).bind(version).execute(&mut *writer).await.unwrap();
    }
    id
}
