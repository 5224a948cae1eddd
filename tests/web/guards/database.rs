//! S32: what means something to SQL or to a full-text index is only text here.

use axum::http::StatusCode;
use holewright_server::db::reference;

use crate::support::Server;

const WORDS: [&str; 36] = [
    "' OR '1'='1",
    "5' OR '1'='1",
    "'; DROP TABLE reference_entry; --",
    "\" OR \"\"=\"",
    "' UNION SELECT digest FROM reference_entry --",
    "/**/",
    "--",
    ";",
    "'",
    "''",
    "\"",
    "\"\"",
    "\\",
    "%",
    "_",
    "%%",
    "5%",
    "[a-z]",
    "*",
    "5*",
    "\"*^NEAR",
    "NEAR(5 BA, 3)",
    "5 NEAR/2 BA",
    "5 AND",
    "OR 5",
    "NOT",
    "NOT NOT",
    "title:5",
    "{title digest}:5",
    "^5",
    "-5",
    "+",
    "(",
    ")(",
    "5\0BA",
    "char(0)||x'00'",
];

fn encoded(text: &str) -> String {
    text.bytes().map(|byte| format!("%{byte:02X}")).collect()
}

async fn rows(server: &Server) -> i64 {
    let [_, writer] = server.app.database.pools();
    sqlx::query_scalar("SELECT count(*) FROM reference_entry").fetch_one(writer).await.unwrap()
}

#[tokio::test]
async fn s32_no_word_means_anything_to_the_database() {
    let server = Server::start().await;
    let before = rows(&server).await;
    assert!(before > 800, "{before}");
    for word in WORDS {
        let typed = encoded(word);
        for path in [
            format!("/search?q={typed}"),
            format!("/api/v1/search?q={typed}"),
            format!("/threads/ba/{typed}"),
            format!("/threads/{typed}"),
            format!("/drills/metric/{typed}"),
            format!("/drills?from={typed}&to={typed}&series={typed}"),
            format!("/materials/{typed}"),
            format!("/plan?thread={typed}&material={typed}&owned={typed}"),
            format!("/api/v1/threads/ba/{typed}"),
            format!("/api/v1/materials/{typed}"),
            format!("/api/v1/plan?thread={typed}&material={typed}"),
            format!("/{typed}"),
        ] {
            let status = server.get(&path).await.status;
            assert!(!status.is_server_error(), "{path} ({word}): {status}");
        }
    }
    assert_eq!(rows(&server).await, before);
    assert_eq!(server.get("/readyz").await.status, StatusCode::OK);
}

#[tokio::test]
async fn s32_a_row_is_found_by_its_whole_name_only() {
    let server = Server::start().await;
    let digest = async |id: &str| reference::digest(&server.app.database, id).await.unwrap();
    assert!(digest("threads/ba/5").await.is_some());
    for id in [
        "threads/ba/_",
        "threads/ba/%",
        "%",
        "threads/ba/5' OR '1'='1",
        "threads/ba/5'--",
        "threads/ba/5\0",
        "THREADS/BA/5",
        "",
    ] {
        assert_eq!(digest(id).await, None, "{id}");
    }
}
