//! Notes as rows: written whole in one transaction, and read back from whatever file they are in.

use std::collections::BTreeSet;
use std::path::Path;

use holewright_server::db::{Database, FILE_NAME};
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection, SqliteConnection};

/// Runs this to its end.
pub(super) fn block<T>(task: impl Future<Output = T>) -> T {
    tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap().block_on(task)
}

/// Writes a note with its wording and the record of it, as the server does: on the one connection
/// that writes, in one transaction.
pub(super) async fn write(database: &Database, key: &str) -> sqlx::Result<()> {
    let [_, writer] = database.pools();
    let mut transaction = writer.begin_with("BEGIN IMMEDIATE").await?;
    insert(&mut transaction, key, "It cut clean.").await?;
    transaction.commit().await
}

async fn insert(connection: &mut SqliteConnection, key: &str, text: &str) -> sqlx::Result<()> {
    let note = sqlx::query("INSERT INTO note (form_key, made_at) VALUES (?, 1)")
        .bind(key)
        .execute(&mut *connection)
        .await?
        .last_insert_rowid();
    sqlx::query(
        "INSERT INTO note_version (note_id, state, title, text, made_at, saved_at)
         VALUES (?, 'waiting', ?, ?, 1, 1)",
    )
    .bind(note)
    .bind(key)
    .bind(text)
    .execute(&mut *connection)
    .await?;
    sqlx::query("INSERT INTO note_text (rowid, title, text, done) VALUES (?, ?, ?, '')")
        .bind(note)
        .bind(key)
        .bind(text)
        .execute(&mut *connection)
        .await?;
    sqlx::query(
        "INSERT INTO act (at, what, subject) VALUES (unixepoch(), 'note-sent', 'note/' || ?)",
    )
    .bind(note)
    .execute(&mut *connection)
    .await?;
    Ok(())
}

/// The key of the note with this number.
pub(super) fn key(prefix: &str, number: u64) -> String {
    format!("{prefix}-{number:016}")
}

/// A database in this folder with so many notes of so many letters.
pub(super) fn fill(data: &Path, prefix: &str, count: u64, letters: usize) {
    block(async {
        let database = Database::open(data).await.unwrap();
        let [_, writer] = database.pools();
        let mut transaction = writer.begin_with("BEGIN IMMEDIATE").await.unwrap();
        for number in 0..count {
            // Not the same text again and again: pages of one word would be copied faster.
            let text = format!("{number} ").repeat(letters / 5);
            insert(&mut transaction, &key(prefix, number), &text).await.unwrap();
        }
        transaction.commit().await.unwrap();
        database.close().await;
    });
}

/// What is in a database.
#[derive(Debug, Default, PartialEq, Eq)]
pub(super) struct Found {
    /// The keys of the notes that are there whole.
    pub(super) whole: BTreeSet<String>,
    /// The keys of whatever is there in part.
    pub(super) half: BTreeSet<String>,
}

/// Reads the notes of this folder's database, which must be in order.
#[track_caller]
pub(super) fn read(data: &Path) -> Found {
    let file = data.join(FILE_NAME);
    block(async {
        let mut connection = SqliteConnectOptions::new()
            .filename(&file)
            .busy_timeout(std::time::Duration::from_secs(5))
            .connect()
            .await
            .unwrap();
        let found = read_from(&mut connection).await;
        connection.close().await.unwrap();
        found
    })
}

async fn read_from(connection: &mut SqliteConnection) -> Found {
    let check: Vec<String> =
        sqlx::query_scalar("PRAGMA integrity_check").fetch_all(&mut *connection).await.unwrap();
    assert_eq!(check, ["ok"]);
    let astray = sqlx::query("PRAGMA foreign_key_check").fetch_all(&mut *connection).await.unwrap();
    assert_eq!(astray.len(), 0, "rows that belong to none");
    let mut found = Found::default();
    // Whole is a note with its wording and with the record that it was sent.
    for (set, question) in [
        (
            &mut found.whole,
            "SELECT form_key FROM note
             WHERE EXISTS (SELECT 1 FROM note_version WHERE note_id = note.id)
               AND EXISTS (SELECT 1 FROM act WHERE subject = 'note/' || note.id)",
        ),
        (
            &mut found.half,
            "SELECT form_key FROM note
             WHERE NOT EXISTS (SELECT 1 FROM note_version WHERE note_id = note.id)
                OR NOT EXISTS (SELECT 1 FROM act WHERE subject = 'note/' || note.id)
             UNION ALL
             SELECT subject FROM act
             WHERE subject LIKE 'note/%'
               AND NOT EXISTS (SELECT 1 FROM note WHERE id = CAST(substr(subject, 6) AS INTEGER))",
        ),
    ] {
        let keys: Vec<String> =
            sqlx::query_scalar(question).fetch_all(&mut *connection).await.unwrap();
        set.extend(keys);
    }
    found
}

/// The schema of a file, each statement of it.
pub(super) fn schema(file: &Path) -> Vec<String> {
    block(async {
        let mut connection = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
        let schema = sqlx::query_scalar(
            "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name",
        )
        .fetch_all(&mut connection)
        .await
        .unwrap();
        connection.close().await.unwrap();
        schema
    })
}

/// Runs this SQL on a file.
pub(super) fn execute(file: &Path, sql: &str) {
    block(async {
        let mut connection = SqliteConnectOptions::new()
            .filename(file)
            .create_if_missing(true)
            .foreign_keys(false)
            .connect()
            .await
            .unwrap();
        let sql = sqlx::AssertSqlSafe(sql.to_owned());
        sqlx::raw_sql(sql).execute(&mut connection).await.unwrap();
        connection.close().await.unwrap();
    });
}

/// What this question finds in a file: one whole number.
pub(super) fn number(file: &Path, question: &'static str) -> i64 {
    block(async {
        let mut connection = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
        let number = sqlx::query_scalar(question).fetch_one(&mut connection).await.unwrap();
        connection.close().await.unwrap();
        number
    })
}
