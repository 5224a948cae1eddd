//! The OpenAPI description itself: its snapshot, its routes, its units, its parameters.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use axum::http::StatusCode;
use form_urlencoded::Serializer;
use holewright_core::calculators::{CALCULATORS, Declaration};
use holewright_server::front::routes::ROUTES;
use serde_json::Value;

use super::body;
use crate::support::Server;

/// The description as last agreed. A change of it is a change of the interface.
const AGREED: &str = "tests/web/api/openapi.json";

fn in_package(path: &str) -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

async fn description() -> Value {
    body(&Server::start().await.get("/api/v1/openapi.json").await)
}

#[tokio::test]
async fn it_is_the_one_agreed() {
    let found = format!("{:#}\n", description().await);
    let agreed = fs::read_to_string(in_package(AGREED)).unwrap_or_default();
    let written = in_package("target/openapi.json");
    if found != agreed {
        fs::write(&written, &found).unwrap();
    }
    assert!(
        found == agreed,
        "the description changed; look at it and, if so meant: cp {} {AGREED}",
        written.display()
    );
}

/// The rest is what a wrong address gets.
fn is_described(path: &str) -> bool {
    path.starts_with("/api/v1") && !path.ends_with("{*rest}")
}

#[tokio::test]
async fn every_route_is_described_and_no_other() {
    let calculator = "/api/v1/calc/{name}";
    let each = |path: &str| -> Vec<String> {
        if path == calculator { calculators().collect() } else { vec![path.to_owned()] }
    };
    let routes = ROUTES.iter().map(|route| route.path).filter(|path| is_described(path));
    let routes: BTreeSet<String> = routes.flat_map(each).collect();
    assert!(routes.len() > 10, "{routes:?}");
    let description = description().await;
    let described: BTreeSet<String> =
        description["paths"].as_object().unwrap().keys().cloned().collect();
    assert_eq!(described, routes);

    let index = body(&Server::start().await.get("/api/v1").await);
    let listed: BTreeSet<String> = index["routes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|route| {
            assert_ne!(route["answers"], "", "{route}");
            route["path"].as_str().unwrap().to_owned()
        })
        .collect();
    assert_eq!(listed, routes);
}

#[tokio::test]
async fn every_number_says_its_unit() {
    let units = [
        ("_mm", "millimetres"),
        ("_in", "inches"),
        ("_n_per_mm2", "newtons a square millimetre"),
        ("_mm2", "square millimetres"),
        ("_deg", "degrees"),
        ("_percent", "percentage"),
        ("_rpm", "revolutions a minute"),
        ("_mm_per_rev", "millimetres a revolution"),
        ("_m_per_min", "metres a minute"),
        ("_mm_per_min", "millimetres a minute"),
        ("_g_per_cm3", "grams a cubic centimetre"),
        ("_on_scale", "points of the scale"),
        ("_s", "seconds"),
        ("_nm", "newton metres"),
        ("_n", "newtons"),
        ("_w", "watts"),
    ];
    // Plain counts and ratios, and the HTTP status.
    let without_unit = ["count", "number", "tpi", "status", "depth_in_diameters"];
    let mut checked = 0;
    each_property(&description().await["components"]["schemas"], &mut |name, property| {
        let kinds = property["type"].to_string();
        if !kinds.contains("number") && !kinds.contains("integer") {
            return;
        }
        let words = property["description"].as_str().unwrap_or_default();
        assert!(!words.is_empty(), "{name} has no description");
        let unit = units.iter().find(|(suffix, _)| name.ends_with(suffix));
        match unit {
            Some((_, unit)) => assert!(words.contains(unit), "{name}: {words}"),
            None => assert!(without_unit.contains(&name), "{name} has no unit in its name"),
        }
        checked += 1;
    });
    assert!(checked > 35, "{checked}");
}

#[tokio::test]
async fn every_property_is_explained() {
    let mut checked = 0;
    each_property(&description().await["components"]["schemas"], &mut |name, property| {
        let of_a_type = property["oneOf"].as_array().map_or(property, |kinds| &kinds[0]);
        assert!(of_a_type["description"].is_string(), "{name}: {property}");
        checked += 1;
    });
    assert!(checked > 100, "{checked}");
}

/// Every property of every schema, at any depth.
fn each_property(value: &Value, look: &mut impl FnMut(&str, &Value)) {
    match value {
        Value::Object(held) => {
            for (key, inside) in held {
                if let ("properties", Value::Object(properties)) = (key.as_str(), inside) {
                    properties.iter().for_each(|(name, property)| look(name, property));
                }
                each_property(inside, look);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| each_property(item, look)),
        _ => {}
    }
}

/// Every calculator, for programs.
fn calculators() -> impl Iterator<Item = String> {
    CALCULATORS.iter().map(|calculator| format!("/api/v1/calc/{}", calculator.slug))
}

#[tokio::test]
async fn every_parameter_is_real() {
    let server = Server::start().await;
    let description = description().await;
    let mut checked = 0;
    let others = [
        ("/api/v1/plan".to_owned(), "thread=5ba&material=gunmetal&hole=blind".to_owned()),
        ("/api/v1/drills".to_owned(), String::new()),
    ];
    let example = |calculator: &&Declaration| {
        Serializer::new(String::new()).extend_pairs(calculator.example()).finish()
    };
    for (path, held) in others.into_iter().chain(calculators().zip(CALCULATORS.iter().map(example)))
    {
        for parameter in description["paths"][&path]["get"]["parameters"].as_array().unwrap() {
            let name = parameter["name"].as_str().unwrap();
            let filled = |value: &str| {
                let others = form_urlencoded::parse(held.as_bytes());
                let query = Serializer::new(String::new())
                    .append_pair(name, value)
                    .extend_pairs(others.filter(|(other, _)| other != name))
                    .finish();
                format!("{path}?{query}")
            };
            let answer = server.get(&filled("qqq")).await;
            assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{path} {name}");
            assert_eq!(answer.json()["errors"][0]["field"], name, "{path}");
            let example = parameter["example"].as_str().unwrap();
            let answer = server.get(&filled(example)).await;
            assert_eq!(answer.status, StatusCode::OK, "{name}={example}: {}", answer.body);
            checked += 1;
        }
    }
    assert!(checked >= 54, "{checked}");
}
