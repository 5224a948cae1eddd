//! S31: what was typed comes back as text, never as markup, from every field and every path.

use std::collections::BTreeSet;

use crate::page::shows;
use crate::support::{Answer, Server};
use crate::{html, markup};

/// Markup that would leave a node, an attribute or a comment with `hwx` in its name. In lower case,
/// as a path is.
const PAYLOADS: [&str; 18] = [
    "<hwx onerror=hwx()>",
    "\"><hwx>",
    "'><hwx>",
    "<hwx",
    "</title><hwx>",
    "</textarea></select></option><hwx>",
    "</desc></svg><hwx>",
    "\" onfocus=\"hwx()\" autofocus=\"",
    "' onfocus='hwx()' autofocus='",
    "x onmouseover=hwx()",
    "<!--hwx-->",
    "<svg/onload=hwx()>",
    "<script>hwx()</script>",
    "<img src=x onerror=hwx()>",
    "javascript:hwx()",
    "&lt;hwx&gt;",
    "{{hwx}}{%hwx%}",
    "x\u{2028}<hwx>]]><hwx>",
];

fn encoded(text: &str) -> String {
    text.bytes().map(|byte| format!("%{byte:02X}")).collect()
}

#[track_caller]
fn check_page(answer: &Answer, payload: &str, place: &str) {
    assert_eq!(answer.header("content-type"), "text/html; charset=utf-8", "{place}");
    let page = html::read(&answer.body);
    markup::check_inert(&page, place);
    assert!(page.comments.is_empty(), "{place}: {:?}", page.comments);
    for tag in &page.tags {
        assert!(!tag.name.contains("hwx") && tag.name != "script", "{place}: <{}>", tag.name);
        for (name, _) in &tag.attributes {
            assert!(!name.contains("hwx"), "{place}: {name}");
        }
    }
    assert!(shows(&page, payload), "{place}: what was typed is not there: {}", answer.body);
}

/// The names of the fields of a form.
async fn fields(server: &Server, address: &str) -> BTreeSet<String> {
    let page = html::read(&server.get(address).await.body);
    let is_field = |name: &str| ["input", "select", "textarea"].contains(&name);
    let fields = page.tags.iter().filter(|tag| is_field(&tag.name));
    fields.filter_map(|tag| tag.attribute("name")).map(str::to_owned).collect()
}

#[tokio::test]
async fn s31_every_field_of_a_form_comes_back_as_text() {
    let server = Server::start().await;
    let plan = fields(&server, "/plan").await;
    assert!(plan.len() >= 20, "{plan:?}");
    for payload in PAYLOADS {
        for field in &plan {
            let usual = [("thread", "5ba"), ("material", "gunmetal")];
            let usual = usual.iter().filter(|(name, _)| name != field);
            let usual: String = usual.map(|(name, value)| format!("{name}={value}&")).collect();
            let address = format!("/plan?{usual}{field}={}", encoded(payload));
            let answer = server.get(&address).await;
            assert_eq!(answer.status.as_u16(), 422, "{field}={payload}");
            check_page(&answer, payload, &format!("/plan {field}={payload}"));
        }
        for field in fields(&server, "/drills").await {
            let answer = server.get(&format!("/drills?{field}={}", encoded(payload))).await;
            if field == "q" {
                continue;
            }
            assert_eq!(answer.status.as_u16(), 422, "{field}={payload}");
            check_page(&answer, payload, &format!("/drills {field}={payload}"));
        }
        let answer = server.get(&format!("/search?q={}", encoded(payload))).await;
        check_page(&answer, payload, &format!("/search q={payload}"));
    }
}

#[tokio::test]
async fn s31_every_part_of_a_path_comes_back_as_text() {
    let server = Server::start().await;
    for payload in PAYLOADS {
        for path in ["", "threads/", "threads/ba/", "drills/metric/", "materials/", "plan/"] {
            let answer = server.get(&format!("/{path}{}", encoded(payload))).await;
            assert_eq!(answer.status.as_u16(), 404, "{path}{payload}");
            check_page(&answer, payload, &format!("/{path}{payload}"));
        }
    }
}

#[tokio::test]
async fn s31_programs_get_json_that_no_browser_takes_for_a_page() {
    let server = Server::start().await;
    for payload in PAYLOADS {
        let typed = encoded(payload);
        for (path, status) in [
            (format!("plan?thread={typed}&material=gunmetal"), Some(422)),
            (format!("plan?thread=5ba&material={typed}"), Some(422)),
            (format!("plan?thread=5ba&material=gunmetal&depth={typed}"), Some(422)),
            (format!("plan?thread=5ba&material=gunmetal&owned={typed}"), Some(422)),
            (format!("drills?series={typed}"), Some(422)),
            (format!("drills?from_mm={typed}&to_mm={typed}"), Some(422)),
            (format!("threads/{typed}"), Some(404)),
            (format!("threads/ba/{typed}"), Some(404)),
            (format!("materials/{typed}"), Some(404)),
            (typed.clone(), Some(404)),
            (format!("search?q={typed}"), None),
        ] {
            let answer = server.get(&format!("/api/v1/{path}")).await;
            let found = answer.status.as_u16();
            assert!(status.is_none_or(|status| found == status), "{path}: {found}");
            let kind = answer.header("content-type");
            assert!(["application/json", "application/problem+json"].contains(&kind), "{kind}");
            assert_eq!(answer.header("x-content-type-options"), "nosniff", "{path}");
            assert!(answer.json().is_object(), "{path}: {}", answer.body);
        }
    }
    // A thread's name comes back in the answer, whole.
    let answer = server.get(&format!("/api/v1/plan?thread={}", encoded(PAYLOADS[0]))).await;
    let message = answer.json()["errors"][0]["message"].as_str().unwrap().to_owned();
    assert!(message.contains(PAYLOADS[0]), "{message}");
}
