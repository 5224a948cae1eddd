//! The calculators as JSON: the pages' figures under names with their units.

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::support::Server;

async fn figures(server: &Server, address: &str) -> Value {
    let answer = server.get(&format!("/api/v1/calc/{address}")).await;
    assert_eq!(answer.status, StatusCode::OK, "{address}: {}", answer.body);
    answer.json()
}

#[tokio::test]
async fn speeds_are_as_on_the_page() {
    let server = Server::start().await;
    let typed = "speeds?material=stainless-304&diameter=12mm&spindle_speeds=500,1000";
    let found = figures(&server, typed).await;
    assert_eq!((&found["machine_fit"], &found["diameter_mm"]), (&json!("too-fast"), &json!(12.0)));
    assert_eq!((&found["speed_low_rpm"], &found["speed_high_rpm"]), (&json!(242.6), &json!(323.4)));
    assert_eq!(found["speed_to_set"]["surface_m_per_min"], json!(18.85));
    assert_eq!(found["machine_speeds"][1]["verdict"], json!("fast"));
    assert_eq!(found["feed"]["low_mm_per_rev"], json!(0.1016));
}

#[tokio::test]
async fn what_to_set_is_said_in_words_where_no_bench_machine_goes_so_fast() {
    let server = Server::start().await;
    let small = figures(&server, "speeds?material=free-cutting-brass&diameter=0.5mm").await;
    assert_eq!(small["setting"]["outcome"], json!("as-fast-as-it-goes"));
    assert_eq!((&small["setting"]["speed_rpm"], &small["feed"]), (&Value::Null, &Value::Null));
    let shed = "spindle_speeds=lathe:+350,+1000;+bench+drill:+600-2000";
    let named = format!("speeds?material=silver-steel&diameter=2mm&{shed}");
    let named = figures(&server, &named).await;
    assert_eq!(named["setting"]["machine"], json!("bench drill"));
    assert_eq!(
        (&named["setting"]["speed_rpm"], &named["machine_fit"]),
        (&json!(2000.0), &json!("too-slow"))
    );
    assert_eq!(named["machine_speeds"][0]["machine"], json!("lathe"));
    let tap = figures(&server, "speeds?material=gunmetal&work=tapping&diameter=5ba").await;
    assert_eq!(
        (&tap["setting"]["outcome"], &tap["by_machine"]["outcome"]),
        (&json!("by-hand"), &json!("about"))
    );
}

#[tokio::test]
async fn no_time_is_given_at_a_speed_that_is_none_to_set() {
    let server = Server::start().await;
    let drill = "material=stainless-304&diameter=12mm&depth=20mm&spindle_speeds=500,1000";
    let found = figures(&server, &format!("speeds?{drill}")).await;
    assert_eq!(found["machine_fit"], json!("too-fast"));
    assert_eq!(
        (&found["travel"]["time_low_s"], &found["travel"]["time_high_s"]),
        (&Value::Null, &Value::Null)
    );
    let page = server.get(&format!("/calculators/speeds?{drill}")).await;
    assert!(page.body.contains("Slowest at hand") && !page.body.contains("Cuts for about"));
    let slower = figures(&server, &format!("speeds?{drill},300")).await;
    assert_eq!(slower["travel"]["time_low_s"], slower["speed_to_set"]["time_low_s"]);
    assert!(slower["travel"]["time_low_s"].is_number(), "{slower}");
}

#[tokio::test]
async fn speeds_say_what_follows_from_them() {
    let server = Server::start().await;
    let drill = figures(
        &server,
        "speeds?material=gunmetal&diameter=5.5mm&depth=20mm&spindle_speeds=500,3000",
    )
    .await;
    assert_eq!(drill["travel"]["travel_mm"], json!(21.6524));
    assert_eq!(
        (&drill["travel"]["time_low_s"], &drill["speed_to_set"]["time_high_s"]),
        (&json!(4.3), &json!(8.5))
    );
    assert_eq!(drill["pecks"]["withdraw_at_mm"], json!([16.5, 20.0]));
    assert_eq!(drill["machine_range"]["slowest_rpm"], json!(500.0));
    assert_eq!((&drill["reaming"], &drill["countersink"]), (&Value::Null, &Value::Null));
    let reamer =
        "speeds?material=gunmetal&work=reaming&diameter=4mm&series=metric&tool_steel=carbon";
    let reamer = figures(&server, reamer).await;
    assert_eq!(reamer["reaming"]["by_hand"]["hole_low_mm"], json!(3.8));
    assert_eq!(reamer["reaming"]["by_hand"]["drill"]["label"], json!("3.8 mm"));
    assert_eq!((&reamer["drill"], &reamer["tool_steel"]), (&Value::Null, &json!("carbon")));
    let sink = "speeds?material=gunmetal&work=countersinking&diameter=6mm&hole_size=3.4mm";
    let sink = figures(&server, sink).await;
    assert_eq!(sink["countersink"]["depth_high_mm"], json!(1.3));
    let spot = figures(&server, "speeds?material=gunmetal&work=spotting&diameter=6mm").await;
    assert_eq!(spot["spot"]["width_high_mm"], json!(6.3));
    assert_eq!((&spot["diameter_mm"], &spot["speed_diameter_mm"]), (&json!(6.0), &json!(6.3)));
}

#[tokio::test]
async fn tapping_is_as_on_the_page() {
    let server = Server::start().await;
    let found = figures(&server, "tapping?form=metric&major=3mm&pitch=0.5&hole=2.5mm").await;
    assert_eq!(found["thread"]["designation"], json!("M3"));
    let custom = figures(&server, "tapping?form=metric&major=3mm&pitch=0.4").await;
    assert_eq!(custom["thread"], Value::Null);
    assert_eq!(found["hole"]["engagement_percent"], json!(77.0));
    assert_eq!(found["hole"]["engagement_of_five_eighths_h_percent"], json!(92.4));
    assert_eq!((&found["major_mm"], &found["tpi"]), (&json!(3.0), &json!(50.8)));
    let known = figures(&server, "tapping?thread=5ba").await;
    assert_eq!(known["thread"]["designation"], json!("5 BA"));
    let candidates = threads_ba_5(&server).await;
    assert_eq!(known["tapping"], candidates["tapping"]);
}

#[tokio::test]
async fn clearance_is_as_on_the_page() {
    let server = Server::start().await;
    let found = figures(&server, "clearance?thread=M12&upper_error=1&lower_error=1").await;
    assert_eq!(found["fits"][1]["hole_mm"], json!(13.5));
    assert_eq!(
        (&found["for_centre_errors"]["hole_mm"], &found["hole_mm"]),
        (&json!(16.0), &json!(16.0))
    );
    assert_eq!(found["drill"]["label"], json!("16 mm"));
    assert_eq!(found["printed"][1]["standard"], json!("BS 4186"));
}

#[tokio::test]
async fn mistakes_name_their_fields() {
    let server = Server::start().await;
    let answer = server.get("/api/v1/calc/tapping?form=metric&major=big&pitch=40").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(answer.header("content-type"), "application/problem+json");
    let errors = answer.json()["errors"].clone();
    assert_eq!((&errors[0]["field"], &errors[1]["field"]), (&json!("major"), &json!("pitch")));
    assert_eq!(errors[1]["choices"][0]["value"], json!("40 tpi"));
    let empty = server.get("/api/v1/calc/speeds").await;
    assert_eq!(empty.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(server.get("/api/v1/calc/sines").await.status, StatusCode::NOT_FOUND);
}

async fn threads_ba_5(server: &Server) -> Value {
    server.get("/api/v1/threads/ba/5").await.json()
}
