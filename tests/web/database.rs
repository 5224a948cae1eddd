//! The connection contract on every pool member, and migrations.

use holewright_server::db::connection::{LOG_LIMIT_BYTES, READERS};
use holewright_server::db::{Database, Error, FILE_NAME, newest_schema};
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection, Row, SqliteConnection};

use crate::support::{Folder, Server};

/// What each connection must say of itself.
const CONTRACT: [(&str, &str); 9] = [
    ("PRAGMA journal_mode", "wal"),
    ("PRAGMA synchronous", "2"),
    ("PRAGMA foreign_keys", "1"),
    ("PRAGMA busy_timeout", "5000"),
    ("PRAGMA trusted_schema", "0"),
    ("PRAGMA cell_size_check", "1"),
    ("PRAGMA mmap_size", "0"),
    ("PRAGMA temp_store", "2"),
    ("PRAGMA journal_size_limit", "16777216"),
];

async fn answer(connection: &mut SqliteConnection, question: &'static str) -> String {
    let row = sqlx::query(question).fetch_one(connection).await.unwrap();
    row.try_get::<String, _>(0)
        .or_else(|_| row.try_get::<i64, _>(0).map(|number| number.to_string()))
        .unwrap()
}

#[tokio::test]
async fn every_connection_keeps_the_contract() {
    let server = Server::start().await;
    let mut checked = 0;
    for pool in server.app.database.pools() {
        // All are held at once, so each is another connection.
        let mut members = Vec::new();
        for _ in 0..pool.options().get_max_connections() {
            members.push(pool.acquire().await.unwrap());
        }
        for member in &mut members {
            for (question, expected) in CONTRACT {
                assert_eq!(answer(member, question).await, expected, "{question}");
            }
            checked += 1;
        }
    }
    assert_eq!(checked, READERS + 1, "the readers and one writer");
    assert_eq!(LOG_LIMIT_BYTES, 16_777_216);
}

#[tokio::test]
async fn sqlite_has_the_fix_for_the_log_reset_race() {
    let server = Server::start().await;
    let [readers, _] = server.app.database.pools();
    let version = answer(&mut readers.acquire().await.unwrap(), "SELECT sqlite_version()").await;
    let parts: Vec<u32> = version.split('.').map(|part| part.parse().unwrap()).collect();
    assert!(parts >= vec![3, 51, 3], "{version}");
}

#[tokio::test]
async fn readers_cannot_write() {
    let server = Server::start().await;
    let [readers, writer] = server.app.database.pools();
    let write = "UPDATE write_probe SET written_at = 1";
    let refused = sqlx::query(write).execute(readers).await.unwrap_err();
    assert!(refused.to_string().contains("readonly"), "{refused}");
    sqlx::query(write).execute(writer).await.unwrap();
}

#[tokio::test]
async fn our_tables_are_strict() {
    let server = Server::start().await;
    let [readers, _] = server.app.database.pools();
    let tables = sqlx::query(
        "SELECT name, strict FROM pragma_table_list
         WHERE schema = 'main' AND type = 'table' AND name NOT LIKE '\\_sqlx%' ESCAPE '\\'
           AND name NOT LIKE 'sqlite%'",
    )
    .fetch_all(readers)
    .await
    .unwrap();
    let names: Vec<String> = tables.iter().map(|table| table.get(0)).collect();
    assert!(names.contains(&"reference_entry".to_owned()), "{names:?}");
    for table in &tables {
        assert_eq!(table.get::<i64, _>(1), 1, "{}", table.get::<String, _>(0));
    }
}

async fn schema(folder: &Folder) -> Vec<String> {
    let options = SqliteConnectOptions::new().filename(folder.path().join(FILE_NAME));
    let mut connection = options.connect().await.unwrap();
    let rows = sqlx::query("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name")
        .fetch_all(&mut connection)
        .await
        .unwrap();
    let schema = rows.iter().map(|row| row.get(0)).collect();
    connection.close().await.unwrap();
    schema
}

#[tokio::test]
async fn opening_again_changes_no_schema() {
    let folder = Folder::new();
    Database::open(folder.path()).await.unwrap().close().await;
    let first = schema(&folder).await;
    Database::open(folder.path()).await.unwrap().close().await;
    assert!(first.len() >= 3, "{first:?}");
    assert_eq!(schema(&folder).await, first);
}

#[tokio::test]
async fn closing_folds_the_log_into_the_file() {
    let folder = Folder::new();
    Database::open(folder.path()).await.unwrap().close().await;
    let left: Vec<_> = std::fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(left, [FILE_NAME]);
}

#[tokio::test]
async fn a_newer_programs_database_is_left_alone() {
    let folder = Folder::new();
    let database = Database::open(folder.path()).await.unwrap();
    let [_, writer] = database.pools();
    sqlx::query(
        "INSERT INTO _sqlx_migrations (version, description, success, checksum, execution_time)
         VALUES (29991231235959, 'later', TRUE, x'00', 0)",
    )
    .execute(writer)
    .await
    .unwrap();
    database.close().await;
    let before = std::fs::read(folder.path().join(FILE_NAME)).unwrap();

    let error = Database::open(folder.path()).await.unwrap_err();
    assert!(matches!(error, Error::NewerSchema { found: 29_991_231_235_959, .. }), "{error}");
    assert!(error.to_string().contains(&newest_schema().to_string()), "{error}");
    assert_eq!(std::fs::read(folder.path().join(FILE_NAME)).unwrap(), before);
}

#[tokio::test]
async fn a_file_that_is_no_database_is_refused_and_kept() {
    let folder = Folder::new();
    let file = folder.path().join(FILE_NAME);
    std::fs::write(&file, "shopping list ".repeat(500)).unwrap();
    let error = Database::open(folder.path()).await.unwrap_err();
    assert!(error.to_string().contains(FILE_NAME), "{error}");
    assert!(std::fs::read_to_string(&file).unwrap().starts_with("shopping list"));
}
