//! `.json` behind a page's path: the body of `/api/v1`, and nothing else counts as a suffix.

use axum::http::{Method, StatusCode};
use form_urlencoded::Serializer;
use holewright_core::calculators::CALCULATORS;

use super::body;
use crate::support::Server;

#[tokio::test]
async fn a_page_with_the_suffix_is_the_same_body() {
    let server = Server::start().await;
    let plan = "plan.json?thread=5ba&material=gunmetal&hole=blind&depth=8mm";
    for address in [
        "threads.json",
        "threads/ba.json",
        "threads/ba/5.json",
        "threads/metric-fine/m3x0.35.json",
        "drills.json",
        "drills/number/46.json",
        "drills/metric/2.05.json",
        "materials.json",
        "materials/gunmetal.json",
        "rescue.json",
        "rescue/broken-tap.json?material=gunmetal&tap_steel=hss",
        "search.json?q=5ba",
        plan,
    ]
    .map(str::to_owned)
    .into_iter()
    .chain(CALCULATORS.iter().map(|calculator| {
        let query = Serializer::new(String::new()).extend_pairs(calculator.example()).finish();
        format!("calculators/{}.json?{query}", calculator.slug)
    })) {
        let here = server.get(&format!("/{address}")).await;
        let there = server
            .get(&format!(
                "/api/v1/{}",
                address.replacen(".json", "", 1).replacen("calculators", "calc", 1)
            ))
            .await;
        assert_eq!(body(&here), body(&there), "{address}");
        assert_eq!(here.header("etag"), there.header("etag"), "{address}");
        let held = [("if-none-match", here.header("etag"))];
        let again = server.ask(Method::GET, &format!("/{address}"), &held).await;
        assert_eq!(again.status, StatusCode::NOT_MODIFIED, "{address}");
        assert_eq!(again.header("access-control-allow-origin"), "*", "{address}");
    }
}

#[tokio::test]
async fn the_chart_keeps_its_own_words_for_sizes() {
    let server = Server::start().await;
    for (chart, numbers) in [
        ("from=2&to=2.06mm&series=number,metric", "from_mm=2&to_mm=2.06&series=number,metric"),
        ("from=1/16in&to=%2346", "from_mm=1.5875&to_mm=2.0574"),
        ("from=81+thou&to=7/64&series=fraction", "from_mm=2.0574&to_mm=2.778125&series=fraction"),
        ("series=letter&series=number", "series=letter,number"),
        ("from=&to=0.3", "to_mm=0.3"),
    ] {
        let here = body(&server.get(&format!("/drills.json?{chart}")).await);
        let there = body(&server.get(&format!("/api/v1/drills?{numbers}")).await);
        assert!(!here["drills"].as_array().unwrap().is_empty(), "{chart}");
        assert_eq!(here, there, "{chart}");
    }
    // The interface's own names mean nothing here.
    let all = body(&server.get("/drills.json?from_mm=3").await);
    assert_eq!(all["drills"].as_array().unwrap().len(), 414);
    // What the page refuses is refused in the same words.
    for (query, field) in [("from=banana", "from"), ("from=3&to=2", "to"), ("series=x", "series")] {
        let answer = server.get(&format!("/drills.json?{query}")).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{query}");
        assert_eq!(answer.header("content-type"), "application/problem+json", "{query}");
        let problem = answer.json();
        let error = &problem["errors"][0];
        assert_eq!(error["field"], field, "{query}");
        let page = server.get(&format!("/drills?{query}")).await;
        assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY, "{query}");
        let first: String = error["message"].as_str().unwrap().chars().take(20).collect();
        assert!(page.body.contains(&first), "{first}");
    }
}

#[tokio::test]
async fn only_a_last_json_is_a_suffix() {
    let server = Server::start().await;
    for page in ["/drills/metric/2.05", "/threads/metric-fine/m3x0.35", "/threads"] {
        let answer = server.get(page).await;
        assert_eq!(answer.header("content-type"), "text/html; charset=utf-8", "{page}");
    }
    for nothing in ["/threads.json/ba", "/.json", "/nothing.json", "/sign-in.json", "/threads.jso"]
    {
        let answer = server.get(nothing).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{nothing}");
    }
    let problem = server.get("/threads/ba/99.json").await;
    assert_eq!(problem.status, StatusCode::NOT_FOUND);
    assert_eq!(problem.header("content-type"), "application/problem+json");
    assert_eq!(problem.json()["instance"], "/threads/ba/99.json");
    let post = server.ask(Method::POST, "/threads/ba/5.json", &[]).await;
    assert_eq!(post.status, StatusCode::METHOD_NOT_ALLOWED);
    assert_eq!(post.header("allow"), "GET,HEAD");
}

#[tokio::test]
async fn a_moved_page_moves_its_figures() {
    let server = Server::start().await;
    for (asked, location) in [
        ("/threads/metric/m3x0.5.json", "/threads/metric/m3.json"),
        ("/Threads/BA/5.json", "/threads/ba/5.json"),
        ("/drills/metric/3.0.json", "/drills/metric/3.json"),
        ("/drills/number/%346.json", "/drills/number/46.json"),
    ] {
        let answer = server.get(asked).await;
        assert_eq!(answer.status, StatusCode::MOVED_PERMANENTLY, "{asked}");
        assert_eq!(answer.header("location"), location);
        assert_eq!(server.get(location).await.status, StatusCode::OK);
    }
}
