//! `/reference.sqlite`: opened as another program would, and held against the JSON.

use axum::body::{Body, Bytes, to_bytes};
use axum::http::{HeaderMap, Method, Request, StatusCode};
use holewright_server::api::reference_file;
use holewright_server::entries::Kind;
use serde_json::Value;
use sqlx::sqlite::{SqliteConnectOptions, SqliteRow};
use sqlx::{ConnectOptions, Row, SqliteConnection};
use tower::ServiceExt;

use super::body;

use crate::support::{Folder, Server};

async fn download(server: &Server) -> (HeaderMap, Bytes) {
    let request = Request::get("/reference.sqlite").body(Body::empty()).unwrap();
    let (head, body) = server.router.clone().oneshot(request).await.unwrap().into_parts();
    assert_eq!(head.status, StatusCode::OK);
    (head.headers, to_bytes(body, usize::MAX).await.unwrap())
}

/// The file on disk, opened to be read.
async fn opened(server: &Server, folder: &Folder) -> SqliteConnection {
    let file = folder.path().join("reference.sqlite");
    std::fs::write(&file, download(server).await.1).unwrap();
    SqliteConnectOptions::new().filename(file).read_only(true).connect().await.unwrap()
}

async fn rows(file: &mut SqliteConnection, question: &'static str) -> Vec<SqliteRow> {
    sqlx::query(question).fetch_all(file).await.unwrap()
}

async fn count(file: &mut SqliteConnection, question: &'static str) -> i64 {
    rows(file, question).await[0].get(0)
}

#[tokio::test]
async fn it_is_a_file_to_keep() {
    let server = Server::start().await;
    let (headers, bytes) = download(&server).await;
    assert!(bytes.starts_with(b"SQLite format 3\0"));
    assert_eq!(headers["content-type"], "application/vnd.sqlite3");
    assert_eq!(
        headers["content-disposition"],
        "attachment; filename=\"holewright-reference.sqlite\""
    );
    let tag = headers["etag"].to_str().unwrap();
    let again = server.ask(Method::GET, "/reference.sqlite", &[("if-none-match", tag)]).await;
    assert_eq!(again.status, StatusCode::NOT_MODIFIED);
    // Made anew it is the same to the last byte, so the tag outlives a restart.
    assert_eq!(reference_file::make().await.unwrap(), bytes);
}

#[tokio::test]
async fn it_is_sound_and_whole() {
    let (server, folder) = (Server::start().await, Folder::new());
    let file = &mut opened(&server, &folder).await;
    assert_eq!(rows(file, "PRAGMA integrity_check").await[0].get::<String, _>(0), "ok");
    assert_eq!(rows(file, "PRAGMA foreign_key_check").await.len(), 0);
    // In writing as in reading: nothing of the server's own database.
    let names = "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name";
    let names: Vec<String> = rows(file, names).await.iter().map(|row| row.get(0)).collect();
    assert_eq!(
        names,
        [
            "about",
            "clearance_hole",
            "drill",
            "material",
            "material_advice",
            "material_feed",
            "material_name",
            "material_speed",
            "reference_entry",
            "tapping_drill",
            "thread",
            "thread_source",
            "thread_system",
        ]
    );
    let entries = count(file, "SELECT count(*) FROM reference_entry").await;
    let parts = "SELECT (SELECT count(*) FROM thread_system) + (SELECT count(*) FROM thread)
        + (SELECT count(*) FROM drill) + (SELECT count(*) FROM material)";
    assert_eq!(entries, count(file, parts).await);
    let all = holewright_server::entries::all();
    let with_figures = all.iter().filter(|entry| entry.kind != Kind::Calculator).count();
    assert_eq!(entries, i64::try_from(with_figures).unwrap());
    let without = "SELECT count(*) FROM thread LEFT JOIN thread_source USING (system, size)
        WHERE source IS NULL OR source = ''";
    assert_eq!(count(file, without).await, 0, "every thread names its source");
}

/// Holds the columns of a row against the keys of the same names.
#[track_caller]
fn check_row(row: &SqliteRow, json: &Value, columns: &[&str], place: &str) {
    for column in columns {
        let expected = &json[column];
        assert!(json.as_object().unwrap().contains_key(*column), "{place}: no {column} in JSON");
        if let Some(text) = expected.as_str() {
            assert_eq!(row.get::<String, _>(*column), text, "{place} {column}");
        } else {
            assert_eq!(row.get::<Option<f64>, _>(*column), expected.as_f64(), "{place} {column}");
        }
    }
}

#[tokio::test]
async fn threads_have_the_figures_of_the_json() {
    let (server, folder) = (Server::start().await, Folder::new());
    let file = &mut opened(&server, &folder).await;
    let threads = rows(file, "SELECT * FROM thread").await;
    let drills = rows(
        file,
        "SELECT system, size, drill_series, drill_size, engagement_percent, within_standard
         FROM tapping_drill",
    )
    .await;
    let holes =
        rows(file, "SELECT system, size, fit, hole_mm, drill_size FROM clearance_hole").await;
    for row in &threads {
        let (system, size): (String, String) = (row.get("system"), row.get("size"));
        let place = format!("/api/v1/threads/{system}/{size}");
        let json = body(&server.get(&place).await);
        let columns = [
            "system",
            "size",
            "designation",
            "pitch_mm",
            "tpi",
            "major_mm",
            "effective_mm",
            "minor_mm",
            "minor_internal_mm",
            "thread_depth_mm",
            "thread_angle_deg",
            "tensile_area_mm2",
            "largest_hole_mm",
        ];
        check_row(row, &json, &columns, &place);
        assert_eq!(row.get::<Option<String>, _>("note").as_deref(), json["note"].as_str());
        let own = |row: &&SqliteRow| {
            row.get::<String, _>("system") == system && row.get::<String, _>("size") == size
        };
        let tapping = json["tapping"].as_array().unwrap();
        assert_eq!(drills.iter().filter(own).count(), tapping.len(), "{place}");
        for row in drills.iter().filter(own) {
            let (series, drill): (String, String) =
                (row.get("drill_series"), row.get("drill_size"));
            let found = tapping.iter().find(|found| {
                found["drill"]["series"] == series && found["drill"]["size"] == drill
            });
            check_row(row, found.unwrap(), &["engagement_percent"], &place);
            let within = row.get::<Option<i64>, _>("within_standard").map(|within| within == 1);
            assert_eq!(within, found.unwrap()["within_standard"].as_bool(), "{place}");
        }
        let fits = json["clearance"].as_object().map_or(0, serde_json::Map::len);
        assert_eq!(holes.iter().filter(own).count(), fits, "{place}");
        for row in holes.iter().filter(own) {
            let hole = &json["clearance"][row.get::<String, _>("fit").as_str()];
            check_row(row, hole, &["hole_mm"], &place);
            let drill = row.get::<Option<String>, _>("drill_size");
            assert_eq!(drill.as_deref(), hole["drill"]["size"].as_str(), "{place}");
        }
    }
    assert!(threads.len() > 400 && drills.len() > 2000, "{} {}", threads.len(), drills.len());
}

#[tokio::test]
async fn drills_and_materials_have_the_figures_of_the_json() {
    let (server, folder) = (Server::start().await, Folder::new());
    let file = &mut opened(&server, &folder).await;
    for row in rows(file, "SELECT * FROM drill").await {
        let place = format!(
            "/api/v1/drills/{}/{}",
            row.get::<String, _>("series"),
            row.get::<String, _>("size")
        );
        let json = body(&server.get(&place).await);
        let columns = ["series", "size", "label", "diameter_mm", "diameter_in", "source"];
        check_row(&row, &json, &columns, &place);
    }
    let speeds = rows(file, "SELECT * FROM material_speed").await;
    let advice = rows(file, "SELECT * FROM material_advice").await;
    let mut checked = 0;
    for row in speeds.iter().chain(&advice) {
        let place = format!("/api/v1/materials/{}", row.get::<String, _>("material"));
        let json = body(&server.get(&place).await);
        let held = &json[row.get::<String, _>("kind").as_str()];
        let number = usize::try_from(row.get::<i64, _>("number")).unwrap();
        let held = if held.is_array() { &held[number - 1] } else { held };
        let columns: &[&str] = match row.try_get::<f64, _>("low_m_per_min") {
            Ok(_) => &["low_m_per_min", "high_m_per_min", "printed_as", "source"],
            Err(_) => &["text", "source"],
        };
        check_row(row, held, columns, &place);
        checked += 1;
    }
    assert!(checked > 150, "{checked}");
}
