//! The JSON: shapes, key names, figures, and what is said of bad input.

use axum::http::{Method, StatusCode};
use serde_json::{Value, json};

use crate::support::{Answer, Server};

#[track_caller]
fn body(answer: &Answer) -> Value {
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.body);
    assert_eq!(answer.header("content-type"), "application/json");
    assert_eq!(answer.header("access-control-allow-origin"), "*");
    answer.json()
}

#[track_caller]
fn check_keys(value: &Value, keys: &[&str]) {
    let held = value.as_object().unwrap();
    for key in keys {
        assert!(held.contains_key(*key), "{key} in {value}");
    }
}

const THREAD: [&str; 13] = [
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
const DRILL: [&str; 5] = ["series", "size", "label", "diameter_mm", "diameter_in"];

#[tokio::test]
async fn systems_are_listed() {
    let server = Server::start().await;
    let answer = body(&server.get("/api/v1/threads").await);
    let systems = answer["systems"].as_array().unwrap();
    assert_eq!(systems.len(), 20);
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
    assert_eq!(list.len(), 18);
    list.iter().for_each(|one| check_keys(one, &["slug", "name", "designations", "group"]));

    let gunmetal = body(&server.get("/api/v1/materials/gunmetal").await);
    assert_eq!(gunmetal["group"], "iron-and-gunmetal");
    let speed = &gunmetal["drilling_speeds"][0];
    assert!(speed["low_m_per_min"].as_f64().unwrap() > 0.0, "{speed}");
    assert!(!speed["source"].as_str().unwrap().is_empty());
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

const PLAN: &str = "/api/v1/plan?thread=5ba&material=gunmetal&hole=blind&depth=8mm\
    &over=free-cutting-brass&over_thickness=4mm&series=number,metric";

/// The parts and actions of a plan's steps, in order.
fn steps(plan: &Value) -> Vec<(&str, &str)> {
    let steps = plan["operations"].as_array().unwrap();
    steps
        .iter()
        .map(|step| (step["part"].as_str().unwrap(), step["action"].as_str().unwrap()))
        .collect()
}

#[tokio::test]
async fn the_main_job_is_answered() {
    let server = Server::start().await;
    let plan = body(&server.get(PLAN).await);
    for (which, label, percent, within) in [
        ("chosen", "No. 36", 69.9, true),
        ("tighter", "2.65 mm", 77.7, true),
        ("easier", "2.75 mm", 63.6, false),
    ] {
        let candidate = &plan["tapping"][which];
        check_keys(&candidate["drill"], &DRILL);
        assert_eq!(candidate["drill"]["label"], label, "{which}");
        assert_eq!(candidate["engagement_percent"], percent, "{which}");
        assert_eq!(candidate["within_standard"], within, "{which}");
    }
    assert_eq!(plan["clearance"]["hole_mm"], 3.328);
    assert_eq!(plan["clearance"]["drill"]["label"], "3.4 mm");
    check_keys(&plan["thread"], &THREAD);
    assert_eq!(plan["material"]["slug"], "gunmetal");
    check_keys(&plan["depths"], &["full_thread_mm", "drill_full_diameter_mm", "drill_to_point_mm"]);
    assert_eq!(plan["depths"]["full_thread_mm"], 8.0);
    assert_eq!((&plan["strength"], &plan["tap"]), (&Value::Null, &Value::Null));
    for (number, step) in (1..).zip(plan["operations"].as_array().unwrap()) {
        check_keys(step, &["action", "part", "tool", "diameter_mm", "depth_mm", "speed_rpm"]);
        check_keys(step, &["feed_mm_per_rev", "lubricant", "text"]);
        assert_eq!(step["number"], number);
    }
    for warning in plan["warnings"].as_array().unwrap() {
        let level = warning["level"].as_str().unwrap();
        assert!(["note", "caution", "danger"].contains(&level), "{warning}");
        assert!(!warning["text"].as_str().unwrap().is_empty());
    }
}

#[tokio::test]
async fn the_upper_part_is_opened_after_the_transfer() {
    let server = Server::start().await;
    let plan = body(&server.get(PLAN).await);
    let steps = steps(&plan);
    let place = |wanted| steps.iter().position(|step| *step == wanted).unwrap();
    let opened = place(("upper", "open-out"));
    let drilled = steps.iter().position(|step| step.1 == "drill").unwrap();
    assert_ne!(steps[drilled].0, "lower", "{steps:?}");
    assert_eq!(plan["operations"][drilled]["diameter_mm"], 2.7051);
    assert!(drilled < opened, "{steps:?}");
    assert_eq!(plan["operations"][opened]["diameter_mm"], 3.4);

    let alone =
        body(&server.get(&PLAN.replace("&over=free-cutting-brass&over_thickness=4mm", "")).await);
    assert!(self::steps(&alone).iter().all(|step| step.0 == "lower"), "{alone}");
}

#[tokio::test]
async fn the_drills_at_hand_rule_the_choice() {
    let server = Server::start().await;
    let chosen = async |query: &str| {
        let path = PLAN.replace("series=number,metric", query);
        body(&server.get(&path).await)["tapping"]["chosen"]["drill"].clone()
    };
    assert_eq!(chosen("owned=2.65mm").await["label"], "2.65 mm");
    assert_eq!(chosen("series=metric").await["series"], "metric");
}

#[tokio::test]
async fn a_deeper_thread_is_a_deeper_hole() {
    let server = Server::start().await;
    let depth = async |depth: &str| {
        let plan = body(&server.get(&PLAN.replace("depth=8mm", depth)).await);
        plan["depths"]["drill_full_diameter_mm"].as_f64().unwrap()
    };
    let (eight, nine) = (depth("depth=8mm").await, depth("depth=9mm").await);
    assert!((nine - eight - 1.0).abs() < 1e-9, "{eight} {nine}");
}

#[tokio::test]
async fn a_plan_that_cannot_be_is_a_problem_with_a_way_out() {
    let server = Server::start().await;
    let check = async |query: &str, field: &str| {
        let answer = server.get(&format!("/api/v1/plan?{query}")).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{query}: {}", answer.body);
        assert_eq!(answer.header("content-type"), "application/problem+json");
        let problem = answer.json();
        assert_eq!(problem["errors"][0]["field"], field, "{problem}");
        assert!(!problem["errors"][0]["message"].as_str().unwrap().is_empty());
        problem
    };
    check("", "thread").await;
    check("thread=5ba&material=unobtainium", "material").await;
    let ambiguous = check("thread=1/4&material=gunmetal", "thread").await;
    assert!(ambiguous["errors"][0]["choices"].as_array().unwrap().len() > 3, "{ambiguous}");
    let thin = "thread=5ba&material=gunmetal&hole=blind&depth=3/16in&part_thickness=3/16in";
    check(thin, "depth").await;
}
