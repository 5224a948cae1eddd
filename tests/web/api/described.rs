//! Real answers against the description: every thread, drill and material, and plans across them.
//!
//! A key that the description does not name fails here, although a reader of it must bear one.

use std::collections::HashMap;

use axum::http::{Method, StatusCode};
use holewright_core::calc::fastener_lists::lists;
use holewright_core::tables::{drills, materials, rescue, threads};
use jsonschema::Validator;
use serde_json::{Map, Value, json};

use super::body;
use crate::support::{Answer, Server};

/// The schema of each answer, by route and status.
struct Described(HashMap<(String, u16), (String, Validator)>);

impl Described {
    async fn by(server: &Server) -> Self {
        let mut description = body(&server.get("/api/v1/openapi.json").await);
        let schemas = description["components"]["schemas"].as_object().unwrap().clone();
        let strict: Map<_, _> =
            schemas.iter().map(|(name, schema)| (name.clone(), strict(schema, &schemas))).collect();
        description["components"]["schemas"] = Value::Object(strict);
        let mut found = HashMap::new();
        for (path, item) in description["paths"].as_object().unwrap() {
            for (status, response) in item["get"]["responses"].as_object().unwrap() {
                let Some(content) = response["content"].as_object() else { continue };
                let (media, body) = content.iter().next().unwrap();
                let mut schema = body["schema"].clone();
                schema["components"] = description["components"].clone();
                let place = (path.clone(), status.parse().unwrap());
                found.insert(place, (media.clone(), jsonschema::validator_for(&schema).unwrap()));
            }
        }
        Self(found)
    }

    #[track_caller]
    fn check(&self, route: &str, address: &str, answer: &Answer) -> Value {
        let status = answer.status.as_u16();
        let Some((media, schema)) = self.0.get(&(route.to_owned(), status)) else {
            panic!("{address} answers {status}, which is not described: {}", answer.body)
        };
        assert_eq!(answer.header("content-type"), media, "{address}");
        let value = answer.json();
        let errors: Vec<String> = schema
            .iter_errors(&value)
            .map(|error| format!("{}: {error}", error.instance_path()))
            .collect();
        assert!(errors.is_empty(), "{address}: {errors:#?}");
        value
    }
}

/// The schema with its parts folded together and no key allowed that it does not name.
fn strict(schema: &Value, all: &Map<String, Value>) -> Value {
    match schema {
        Value::Object(held) => {
            let mut held = held.clone();
            if let Some(Value::Array(parts)) = held.remove("allOf") {
                let mut whole = json!({ "type": "object", "properties": {}, "required": [] });
                parts.iter().for_each(|part| fold(part, all, &mut whole));
                held.extend(whole.as_object().unwrap().clone());
            }
            let mut held: Map<_, _> =
                held.iter().map(|(key, inside)| (key.clone(), strict(inside, all))).collect();
            if held
                .get("properties")
                .is_some_and(|properties| properties.get("type").is_none_or(Value::is_object))
            {
                held.insert("additionalProperties".to_owned(), json!(false));
            }
            Value::Object(held)
        }
        Value::Array(items) => items.iter().map(|item| strict(item, all)).collect(),
        other => other.clone(),
    }
}

/// Adds the properties of one part of an `allOf`.
fn fold(part: &Value, all: &Map<String, Value>, whole: &mut Value) {
    if let Some(name) = part["$ref"].as_str() {
        return fold(&all[name.rsplit('/').next().unwrap()], all, whole);
    }
    if let Some(parts) = part["allOf"].as_array() {
        parts.iter().for_each(|part| fold(part, all, whole));
    }
    if let Some(properties) = part["properties"].as_object() {
        whole["properties"].as_object_mut().unwrap().extend(properties.clone());
        let required = part["required"].as_array().unwrap().clone();
        whole["required"].as_array_mut().unwrap().extend(required);
    }
}

#[tokio::test]
async fn a_key_that_is_not_described_would_be_found() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let mut checked = 0;
    for (route, address) in [
        ("/api/v1/threads/{system}/{size}", "/api/v1/threads/ba/5"),
        ("/api/v1/plan", "/api/v1/plan?thread=5ba&material=gunmetal"),
        ("/api/v1/drills", "/api/v1/drills?from_mm=12"),
        ("/api/v1/materials/{slug}", "/api/v1/materials/ptfe"),
    ] {
        let (_, schema) = &described.0[&(route.to_owned(), 200)];
        let value = described.check(route, address, &server.get(address).await);
        for key in value.as_object().unwrap().keys() {
            let mut without = value.clone();
            without.as_object_mut().unwrap().remove(key);
            assert!(!schema.is_valid(&without), "{address} without {key}");
            checked += 1;
        }
        let mut with = value;
        with["surprise"] = json!(1);
        assert!(!schema.is_valid(&with), "{address}");
    }
    assert!(checked > 40, "{checked}");
}

#[tokio::test]
async fn every_thread_is_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let all = "/api/v1/threads";
    described.check(all, all, &server.get(all).await);
    let mut checked = 0;
    for system in threads::systems() {
        let address = format!("{all}/{}", system.slug);
        described.check("/api/v1/threads/{system}", &address, &server.get(&address).await);
        for thread in system.threads {
            let address = format!("{address}/{}", thread.size);
            let answer = server.get(&address).await;
            let value = described.check("/api/v1/threads/{system}/{size}", &address, &answer);
            assert_eq!(value["designation"], thread.designation);
            checked += 1;
        }
    }
    assert_eq!(checked, threads::all().count());
}

#[tokio::test]
async fn every_drill_is_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let all = "/api/v1/drills";
    described.check(all, all, &server.get(all).await);
    for drill in drills::all() {
        let address = format!("/api/v1{}", drill.path());
        let answer = server.get(&address).await;
        let value = described.check("/api/v1/drills/{series}/{size}", &address, &answer);
        assert_eq!(value["label"], drill.label.as_str());
        assert_eq!(value["neighbours"].as_array().unwrap().len(), 4);
    }
}

#[tokio::test]
async fn every_material_is_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let all = "/api/v1/materials";
    described.check(all, all, &server.get(all).await);
    for material in materials::all() {
        for slug in [&[material.slug], material.aliases].concat() {
            let address = format!("{all}/{slug}");
            let answer = server.get(&address).await;
            let value = described.check("/api/v1/materials/{slug}", &address, &answer);
            assert_eq!(value["slug"], material.slug);
        }
    }
}

#[tokio::test]
async fn every_trouble_is_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let all = "/api/v1/rescue";
    let listed = described.check(all, all, &server.get(all).await);
    assert_eq!(listed["troubles"].as_array().unwrap().len(), rescue::all().len());
    for trouble in rescue::all() {
        for rest in ["", "?material=gunmetal&tap_steel=carbon", "?material=bright-mild-steel"] {
            let address = format!("{all}/{}{rest}", trouble.slug);
            let answer = server.get(&address).await;
            let value = described.check("/api/v1/rescue/{slug}", &address, &answer);
            assert_eq!(value["title"], trouble.title);
        }
    }
    let ways = |value: &Value| -> Vec<String> {
        let names = value["ways"].as_array().unwrap().iter().map(|way| &way["name"]);
        names.map(|name| name.as_str().unwrap().to_owned()).collect()
    };
    let tap = |rest: &str| format!("{all}/broken-tap?{rest}");
    let brass = body(&server.get(&tap("material=free-cutting-brass&tap_steel=carbon")).await);
    assert!(ways(&brass).contains(&"Dissolve it in hot alum".to_owned()), "{brass}");
    let steel = body(&server.get(&tap("material=bright-mild-steel&tap_steel=carbon")).await);
    assert!(!ways(&steel).contains(&"Dissolve it in hot alum".to_owned()), "{steel}");
    assert!(ways(&steel).contains(&"No alum".to_owned()), "{steel}");
}

#[tokio::test]
async fn plans_are_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let mut held = [0, 0];
    for system in threads::systems() {
        // The smallest, the largest and one between.
        let threads = system.threads;
        let some = [0, threads.len() / 2, threads.len() - 1].map(|place| &threads[place]);
        for (thread, material) in some.iter().flat_map(|thread| {
            materials::all().iter().step_by(2).map(move |material| (thread, material))
        }) {
            for rest in [
                "",
                "hole=blind&depth=5mm",
                "hole=blind&depth=6mm&part_thickness=40mm&over=gunmetal&over_thickness=3mm",
                "hole=through&depth=10mm&over=acetal&upper_hole=clearance&tap=machine&hand=left",
                "aim=easy&series=number,metric&measured_hole=2.7mm",
            ] {
                let name = thread.designation.replace(' ', "+").replace('#', "%23");
                let query = format!("thread={name}&material={}&{rest}", material.slug);
                let address = format!("/api/v1/plan?{query}");
                let answer = server.get(&address).await;
                described.check("/api/v1/plan", &address, &answer);
                held[usize::from(answer.status != StatusCode::OK)] += 1;
            }
        }
    }
    assert!(held[0] > 1500 && held[1] > 100, "{held:?} plans and refusals");
}

#[tokio::test]
async fn refusals_are_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    for (route, address, status) in [
        ("/api/v1", "/api/v1", 200),
        ("/api/v1/openapi.json", "/api/v1/openapi.json", 200),
        ("/api/v1/search", "/api/v1/search?q=5ba", 200),
        ("/api/v1/search", "/api/v1/search", 200),
        ("/api/v1/threads/{system}", "/api/v1/threads/xyz", 404),
        ("/api/v1/threads/{system}/{size}", "/api/v1/threads/ba/99", 404),
        ("/api/v1/threads/{system}/{size}", "/api/v1/threads/ba/%FF", 404),
        ("/api/v1/drills/{series}/{size}", "/api/v1/drills/number/99", 404),
        ("/api/v1/drills/{series}/{size}", "/api/v1/drills/brass/1", 404),
        ("/api/v1/materials/{slug}", "/api/v1/materials/unobtainium", 404),
        ("/api/v1/rescue/{slug}", "/api/v1/rescue/cheese", 404),
        ("/api/v1/rescue/{slug}", "/api/v1/rescue/broken-tap?material=cheese", 422),
        ("/api/v1/drills", "/api/v1/drills?from_mm=two", 422),
        ("/api/v1/plan", "/api/v1/plan", 422),
        ("/api/v1/plan", "/api/v1/plan?thread=1/4&material=gunmetal", 422),
    ] {
        let answer = server.get(address).await;
        assert_eq!(answer.status.as_u16(), status, "{address}");
        described.check(route, address, &answer);
        if address.contains("openapi") {
            continue;
        }
        for method in [Method::POST, Method::PUT, Method::DELETE, Method::PATCH] {
            let answer = server.ask(method, address, &[]).await;
            assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED, "{address}");
            described.check(route, address, &answer);
        }
        let answer = server.ask(Method::GET, address, &[("accept", "text/html")]).await;
        if status == 200 {
            assert_eq!(answer.status, StatusCode::NOT_ACCEPTABLE, "{address}");
        }
        described.check(route, address, &answer);
    }
}

#[tokio::test]
async fn fastener_tables_are_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let all = "/api/v1/fasteners";
    let tables = described.check(all, all, &server.get(all).await)["tables"].clone();
    assert_eq!(tables.as_array().unwrap().len(), lists().len());
    for list in lists() {
        let route = "/api/v1/fasteners/{table}";
        let address = format!("{all}/{}", list.slug);
        let found = described.check(route, &address, &server.get(&address).await);
        let rows = found["rows"].as_array().unwrap();
        assert_eq!(rows.len(), list.rows().len(), "{address}");
        assert!(rows.iter().all(|row| !row["source"].as_str().unwrap().is_empty()), "{address}");
    }
    // ISO 4032: 10 mm across flats for M6.
    let iso = body(&server.get("/fasteners/hexagons-iso.json").await);
    let six = iso["rows"].as_array().unwrap().iter().find(|row| row["size"] == "M6").unwrap();
    assert_eq!(six["across_flats_mm"], json!(10.0));
    described.check("/api/v1/fasteners/{table}", "none", &server.get(&format!("{all}/none")).await);
}

#[tokio::test]
async fn calculators_are_as_described() {
    let server = Server::start().await;
    let described = Described::by(&server).await;
    let mut held = [0, 0];
    let mut check = async |name: &str, query: String| {
        let route = format!("/api/v1/calc/{name}");
        let address = format!("{route}?{query}");
        let answer = server.get(&address).await;
        described.check(&route, &address, &answer);
        held[usize::from(answer.status != StatusCode::OK)] += 1;
    };
    for material in materials::all() {
        for rest in [
            "diameter=2mm",
            "diameter=No.+46&spindle_speeds=200-2000,4000",
            "work=tapping&diameter=5ba&spindle_max=300",
            "work=tapping&diameter=6mm",
            "work=tapping&diameter=5ba&depth=8mm",
            "depth=30mm&diameter=3mm&tool_steel=carbon",
            "work=reaming&diameter=6mm&spindle_speeds=300&depth=9mm",
            "work=reaming&diameter=1mm&owned=0.9mm",
            "work=countersinking&diameter=M3",
            "work=countersinking&diameter=6mm&spindle_max=900",
            "work=spotting&diameter=No.+30",
        ] {
            check("speeds", format!("material={}&{rest}", material.slug)).await;
        }
    }
    for thread in threads::all() {
        let name = thread.designation.replace(' ', "+").replace('#', "%23");
        check("tapping", format!("thread={name}&hole=2mm")).await;
        check("tapping", format!("thread={name}&series=metric&engagement=60")).await;
        check("clearance", format!("thread={name}&upper_error=0.2&lower_error=0.1")).await;
        check("clearance", format!("thread={name}&diameter=3.1&owned=3.4mm")).await;
        check("blind-hole", format!("thread={name}&part_thickness=9mm&finish=second")).await;
        check("position", format!("thread={name}&upper_error=0.3&lower_error=0.1")).await;
        for head in ["hexagon", "old-hexagon", "countersunk", "cap"] {
            check("fastener", format!("thread={name}&head={head}")).await;
        }
    }
    for form in ["metric", "unified", "whitworth", "ba", "pipe", "cycle", "miniature"] {
        check("tapping", format!("form={form}&major=9mm&pitch=0.9&hole=8mm")).await;
    }
    check("clearance", "diameter=7mm&fit=free".to_owned()).await;
    assert!(held[0] > 1200 && held[1] > 50, "{held:?} answers and refusals");
}
