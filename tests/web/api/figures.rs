//! Threads, drills and materials: key names, figures, and what is said of bad input.

use axum::http::{Method, StatusCode};
use holewright_core::tables::threads;
use serde_json::{Value, json};

use super::{DRILL, THREAD, body, check_keys};
use crate::support::{Answer, Server};

#[tokio::test]
async fn systems_are_listed() {
    let server = Server::start().await;
    let answer = body(&server.get("/api/v1/threads").await);
    let systems = answer["systems"].as_array().unwrap();
    assert_eq!(systems.len(), threads::systems().len());
    let ba = &systems[0];
    check_keys(ba, &["id", "name", "standard", "thread_angle_deg", "count"]);
    assert_eq!((&ba["id"], &ba["thread_angle_deg"]), (&json!("ba"), &json!(47.5)));
    assert_eq!(ba["count"], 26);
}

#[tokio::test]
async fn a_system_lists_its_threads() {
    let server = Server::start().await;
    let ba = body(&server.get("/api/v1/threads/ba").await);
    check_keys(&ba, &["id", "name", "standard", "thread_angle_deg", "count", "threads"]);
    let threads = ba["threads"].as_array().unwrap();
    assert_eq!(threads.len(), 26);
    for thread in threads {
        check_keys(thread, &THREAD);
        check_keys(thread, &["sources"]);
    }
}

#[tokio::test]
async fn five_ba_has_its_standards_figures() {
    let server = Server::start().await;
    let five = body(&server.get("/api/v1/threads/ba/5").await);
    check_keys(&five, &THREAD);
    for (key, figure) in [
        ("pitch_mm", 0.59),
        ("tpi", 43.0508),
        ("major_mm", 3.2),
        ("effective_mm", 2.845),
        ("minor_mm", 2.49),
        ("minor_internal_mm", 2.49),
        ("thread_depth_mm", 0.355),
        ("thread_angle_deg", 47.5),
        ("tensile_area_mm2", 5.59),
        ("largest_hole_mm", 2.711),
    ] {
        assert_eq!(five[key], figure, "{key}");
    }
    assert_eq!(five["designation"], "5 BA");
    assert!(five["sources"][0].as_str().unwrap().starts_with("BS 93"));
}

#[tokio::test]
async fn tapping_drills_come_largest_engagement_first() {
    let server = Server::start().await;
    let five = body(&server.get("/api/v1/threads/ba/5").await);
    let tapping = five["tapping"].as_array().unwrap();
    let percents: Vec<f64> =
        tapping.iter().map(|drill| drill["engagement_percent"].as_f64().unwrap()).collect();
    assert!(percents.len() > 8 && percents.is_sorted_by(|a, b| a >= b), "{percents:?}");
    assert!(percents.iter().all(|percent| (50.0..=90.0).contains(percent)), "{percents:?}");
    let found = |label: &str| {
        let drill = tapping.iter().find(|drill| drill["drill"]["label"] == label).unwrap();
        check_keys(&drill["drill"], &DRILL);
        (drill["engagement_percent"].as_f64().unwrap(), drill["within_standard"].clone())
    };
    assert_eq!(found("No. 36"), (69.9, json!(true)));
    assert_eq!(found("2.65 mm"), (77.7, json!(true)));
    assert_eq!(found("2.75 mm"), (63.6, json!(false)));
}

#[tokio::test]
async fn clearance_has_three_fits() {
    let server = Server::start().await;
    let five = body(&server.get("/api/v1/threads/ba/5").await);
    for (fit, hole) in [("close", 3.264), ("medium", 3.328), ("free", 3.456)] {
        let held = &five["clearance"][fit];
        assert_eq!(held["hole_mm"], hole, "{fit}");
        check_keys(&held["drill"], &DRILL);
        assert!(held["drill"]["diameter_mm"].as_f64().unwrap() >= hole, "{fit}");
    }
}

#[tokio::test]
async fn a_taper_thread_has_neither_engagement_nor_clearance() {
    let server = Server::start().await;
    let quarter = body(&server.get("/api/v1/threads/npt/1-4").await);
    assert_eq!((&quarter["tapping"], &quarter["clearance"]), (&json!([]), &Value::Null));
}

#[track_caller]
fn labels(answer: &Answer) -> Vec<String> {
    let drills = body(answer)["drills"].clone();
    let drills = drills.as_array().unwrap();
    drills.iter().for_each(|drill| check_keys(drill, &DRILL));
    drills.iter().map(|drill| drill["label"].as_str().unwrap().to_owned()).collect()
}

#[tokio::test]
async fn drills_come_by_size_and_can_be_cut_down() {
    let server = Server::start().await;
    let all = body(&server.get("/api/v1/drills").await)["drills"].clone();
    let sizes: Vec<f64> = all
        .as_array()
        .unwrap()
        .iter()
        .map(|drill| drill["diameter_mm"].as_f64().unwrap())
        .collect();
    assert!(sizes.len() > 400 && sizes.is_sorted(), "{}", sizes.len());

    let cut = server.get("/api/v1/drills?series=number,metric&from_mm=2&to_mm=2,06").await;
    assert_eq!(labels(&cut), ["2 mm", "2.05 mm", "No. 46"]);
    let cut = server.get("/api/v1/drills?series=letter&from_mm=&to_mm=6").await;
    assert_eq!(labels(&cut), ["Letter A"]);
    let cut = server.get("/api/v1/drills?from_mm=3&to_mm=2").await;
    assert_eq!(labels(&cut), <[&str; 0]>::default());
}

#[tokio::test]
async fn bad_input_names_each_field() {
    let server = Server::start().await;
    let answer = server.get("/api/v1/drills?series=number,brass&from_mm=two&to_mm=inf").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(answer.header("content-type"), "application/problem+json");
    assert_eq!(answer.header("access-control-allow-origin"), "*");
    let problem = answer.json();
    check_keys(&problem, &["type", "title", "status", "detail"]);
    assert_eq!(problem["status"], 422);
    let errors = problem["errors"].as_array().unwrap();
    let fields: Vec<_> = errors.iter().map(|error| error["field"].as_str().unwrap()).collect();
    assert_eq!(fields, ["series", "from_mm", "to_mm"]);
    assert!(errors[0]["message"].as_str().unwrap().contains("brass"), "{problem}");
}

#[tokio::test]
async fn materials_are_listed_and_shown() {
    let server = Server::start().await;
    let list = body(&server.get("/api/v1/materials").await)["materials"].clone();
    let list = list.as_array().unwrap();
    assert_eq!(list.len(), holewright_core::tables::materials::all().len());
    list.iter().for_each(|one| check_keys(one, &["slug", "name", "designations", "group"]));

    let gunmetal = body(&server.get("/api/v1/materials/gunmetal").await);
    assert_eq!(gunmetal["group"], "iron-and-gunmetal");
    let speed = &gunmetal["drilling_speeds"][0];
    assert!(speed["low_m_per_min"].as_f64().unwrap() > 0.0, "{speed}");
    assert!(!speed["source"].as_str().unwrap().is_empty());
    let density = &gunmetal["density"][0];
    assert_eq!(density["low_g_per_cm3"], density["high_g_per_cm3"], "{density}");
    assert!(gunmetal["tensile_strength"][0]["low_n_per_mm2"].is_number());
    assert_eq!(gunmetal["not_to_be_cut"], serde_json::Value::Null);
    let refused = body(&server.get("/api/v1/materials/beryllium-copper").await);
    assert!(refused["not_to_be_cut"]["text"].as_str().unwrap().contains("lung"), "{refused}");
    let alias = body(&server.get("/api/v1/materials/aluminium").await);
    assert_eq!(alias["slug"], "aluminium-6082");
}

#[tokio::test]
async fn what_is_not_held_is_a_problem() {
    let server = Server::start().await;
    for path in
        ["threads/xyz", "threads/ba/99", "threads/xyz/1", "materials/unobtainium", "nothing", ""]
    {
        let answer = server.get(&format!("/api/v1/{path}")).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        assert_eq!(answer.header("content-type"), "application/problem+json", "{path}");
        assert_eq!(answer.json()["status"], 404, "{path}");
    }
}

#[tokio::test]
async fn a_program_that_has_the_figures_is_told_so() {
    let server = Server::start().await;
    for path in ["/api/v1/threads/ba/5", "/api/v1/drills?series=number"] {
        let tag = server.get(path).await.header("etag").to_owned();
        let again = server.ask(Method::GET, path, &[("if-none-match", &tag)]).await;
        assert_eq!((again.status, again.body.as_str()), (StatusCode::NOT_MODIFIED, ""), "{path}");
    }
}
