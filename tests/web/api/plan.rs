//! The plan: its keys, its figures, and what is said of a plan that cannot be.

use axum::http::StatusCode;
use serde_json::Value;

use super::{DRILL, THREAD, body, check_keys};
use crate::support::Server;

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
        ("stronger", "2.65 mm", 77.7, true),
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
    // A plan in gunmetal speaks of steam: no strength stands on it, whatever the screw.
    assert_eq!(plan["strength"], Value::Null);
    let named = body(&server.get(&format!("{PLAN}&screw=8.8")).await);
    assert_eq!(named["strength"], Value::Null);
    assert!(named["assumed"].to_string().contains("go by their code"), "{}", named["assumed"]);
    // tan 23.75° · 2300 · 1.6 (3.2 − 2.7051)² (3.2 + 2 · 2.7051) / 24 000.
    assert_eq!(plan["tap"]["cutting_torque_nm"], 0.1423);
    assert_eq!(plan["tap"]["margin_words"], "fair to ample");
    assert_eq!(plan["tap"]["unconfirmed"], true);
    assert_eq!(plan["tap"]["easier"]["effort_percent"], 83.5);
    for (number, step) in (1..).zip(plan["operations"].as_array().unwrap()) {
        check_keys(step, &["action", "part", "tool", "diameter_mm", "depth_mm", "speed_rpm"]);
        check_keys(step, &["feed_mm_per_rev", "lubricant", "text"]);
        assert_eq!(step["number"], number);
    }
    let steps = plan["operations"].as_array().unwrap().iter().map(|step| &step["cautions"]);
    for said in steps.chain([&plan["cautions"], &plan["standing_cautions"]]) {
        for caution in said.as_array().unwrap() {
            let level = caution["level"].as_str().unwrap();
            assert!(["note", "caution", "danger"].contains(&level), "{caution}");
            assert!(!caution["text"].as_str().unwrap().is_empty());
        }
    }
    assert!(plan["cautions"].as_array().unwrap().len() <= 3, "{}", plan["cautions"]);
    assert!(plan["standing_cautions"].to_string().contains("boiler inspector"));
    // 9.77 mm exactly; a stop is set to a tenth, and never short of what the thread needs.
    assert_eq!(plan["depths"]["drill_full_diameter_mm"], 9.77);
    assert_eq!(
        (&plan["depths"]["stop_mm"], &plan["depths"]["stop_rounded"]),
        (&9.8.into(), &"up".into())
    );
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

#[tokio::test]
async fn the_strength_of_a_thread_is_given_with_the_screw_s_metal() {
    // 6082: 0.6 · 290 N/mm² on 73.145 mm² (6g in 6H, 6 mm, in print) is 12 727 N; the screw 20.12 · 800.
    let server = Server::start().await;
    let query = "/api/v1/plan?thread=M6&material=aluminium-6082&depth=6mm&series=metric";
    let plan = body(&server.get(&format!("{query}&screw=8.8")).await);
    let strength = &plan["strength"];
    assert_eq!(strength["weakest"], "tapped-thread");
    assert_eq!(strength["engaged_mm"], 6.0);
    assert_eq!(strength["tapped_thread_load_n"], 12_727.0);
    assert_eq!(strength["screw_load_n"], 16_099.0);
    assert_eq!(strength["strip_length_mm"], 7.5894);
    assert_eq!(body(&server.get(query).await)["strength"], Value::Null);
}
