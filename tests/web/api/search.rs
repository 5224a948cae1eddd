//! The finder's door.

use serde_json::json;

use super::{body, check_keys};
use crate::support::Server;

#[tokio::test]
async fn words_are_found_best_first() {
    let server = Server::start().await;
    for (typed, kind, url) in [
        ("5ba", "thread", "/threads/ba/5"),
        ("No+46", "drill", "/drills/number/46"),
        ("gunmetel", "material", "/materials/gunmetal"),
        ("copper+4ba", "calculator", "/plan?thread=4+BA&material=copper"),
    ] {
        let found = body(&server.get(&format!("/api/v1/search?q={typed}")).await);
        assert_eq!(found["query"], typed.replace('+', " "));
        let first = &found["hits"][0];
        check_keys(first, &["kind", "title", "url", "why"]);
        assert_eq!((&first["kind"], &first["url"]), (&json!(kind), &json!(url)), "{typed}");
        let page = server.get(url).await;
        assert_eq!(page.status.as_u16(), 200, "{url}");
    }
}

#[tokio::test]
async fn what_means_nothing_has_no_hits() {
    let server = Server::start().await;
    for query in ["", "?q=", "?q=qwertyuiop", "?p=5ba"] {
        let found = body(&server.get(&format!("/api/v1/search{query}")).await);
        assert_eq!(found["hits"], json!([]), "{query}");
    }
}
