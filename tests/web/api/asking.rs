//! How a program may ask: forms, methods, scripts on other pages.

use axum::http::{Method, StatusCode};

use crate::support::Server;

const ADDRESSES: [&str; 6] = [
    "/api/v1",
    "/api/v1/openapi.json",
    "/api/v1/threads/ba/5",
    "/api/v1/plan",
    "/api/v1/threads/xyz",
    "/api/v1/nothing-here",
];

#[tokio::test]
async fn a_preflight_is_answered_everywhere() {
    let server = Server::start().await;
    for address in ADDRESSES {
        let asked = [
            ("origin", "https://elsewhere.test"),
            ("access-control-request-method", "GET"),
            ("access-control-request-headers", "if-none-match"),
        ];
        let answer = server.ask(Method::OPTIONS, address, &asked).await;
        assert_eq!(answer.status, StatusCode::NO_CONTENT, "{address}");
        assert_eq!(answer.header("access-control-allow-origin"), "*", "{address}");
        assert_eq!(answer.header("access-control-allow-methods"), "GET, HEAD, OPTIONS");
        assert_eq!(answer.header("access-control-allow-headers"), "*");
        assert_eq!(answer.header("allow"), "GET,HEAD,OPTIONS");
    }
    let page = server.ask(Method::OPTIONS, "/threads", &[]).await;
    assert_eq!(page.status, StatusCode::METHOD_NOT_ALLOWED);
    let other = server.ask(Method::OPTIONS, "/api/v10", &[]).await;
    assert_eq!(other.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_script_may_read_every_answer() {
    let server = Server::start().await;
    for (method, address) in ADDRESSES
        .iter()
        .flat_map(|address| [Method::GET, Method::HEAD, Method::POST].map(|how| (how, address)))
    {
        let answer = server.ask(method.clone(), address, &[]).await;
        assert_eq!(answer.header("access-control-allow-origin"), "*", "{method} {address}");
        let shown = answer.header("access-control-expose-headers");
        assert!(shown.contains("ETag") && shown.contains("X-Request-Id"), "{method} {address}");
    }
}

#[tokio::test]
async fn only_a_form_that_is_there_can_be_had() {
    let server = Server::start().await;
    for (accept, status) in [
        ("", 200),
        ("*/*", 200),
        ("application/json", 200),
        ("APPLICATION/JSON; charset=utf-8", 200),
        ("text/html, application/*;q=0.1", 200),
        ("text/html;q=0.9, */*;q=0.1", 200),
        ("text/html", 406),
        ("application/xml, text/*", 406),
        ("application/json;q=0", 406),
        ("*/*, application/json; q=0.0", 406),
        ("application/*;q=0, */*", 406),
    ] {
        let answer = server.ask(Method::GET, "/api/v1/threads", &[("accept", accept)]).await;
        assert_eq!(answer.status.as_u16(), status, "{accept}");
        if status == 406 {
            assert_eq!(answer.header("content-type"), "application/problem+json");
            assert!(answer.json()["detail"].as_str().unwrap().contains("application/json"));
        }
    }
}

#[tokio::test]
async fn head_is_get_without_the_body() {
    let server = Server::start().await;
    for address in ADDRESSES.iter().chain(&["/threads/ba/5.json", "/threads/ba/99.json"]) {
        let get = server.get(address).await;
        let head = server.ask(Method::HEAD, address, &[]).await;
        assert_eq!((head.status, head.body.as_str()), (get.status, ""), "{address}");
        assert_eq!(head.headers.get("etag"), get.headers.get("etag"), "{address}");
        assert_eq!(head.header("content-type"), get.header("content-type"), "{address}");
    }
}
