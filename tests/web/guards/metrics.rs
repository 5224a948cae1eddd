//! S37: the metrics stand on a door of their own, and hold nothing a client sent.

use std::collections::BTreeSet;
use std::time::Duration;

use axum::body::Body;
use axum::http::{Method, Request, StatusCode};
use holewright_pages::address::Address;
use holewright_server::front::metrics::Metrics;
use holewright_server::front::routes;
use tower::ServiceExt;

use super::binary::{self, Running, address_in, program};
use crate::people::access::filled;
use crate::process;
use crate::support::{Folder, Server, free_address};

/// The lines that are series.
fn series(text: &str) -> Vec<&str> {
    text.lines().filter(|line| !line.starts_with('#')).collect()
}

#[tokio::test]
async fn s37_readers_find_no_metrics() {
    let server = Server::start().await;
    for path in ["/metrics", "/metrics/", "/Metrics", "/%6detrics", "/api/v1/metrics"] {
        let answer = server.get(path).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
        assert!(!answer.body.contains("request_duration"), "{path}");
    }
}

#[test]
fn s37_an_operator_finds_them_on_a_door_of_their_own() {
    let server = Running::start(&["--metrics-listen", "127.0.0.1:0"]);
    let door = address_in(&server.line());
    assert_ne!(door, server.address);
    for path in ["/threads/ba/5?x=hwx-query", "/hwx-path", "/threads/hwx-part", "/plan?thread=hwx"]
    {
        binary::get(server.address, path, "User-Agent: hwx-agent\r\n");
    }
    binary::send(server.address, b"HWX / HTTP/1.1\r\nHost: hwx\r\nConnection: close\r\n\r\n");
    assert_eq!(binary::status(&binary::get(server.address, "/metrics", "")), 404);
    assert_eq!(binary::status(&binary::get(door, "/", "")), 404);
    assert_eq!(binary::status(&binary::get(door, "/threads", "")), 404);

    let answer = binary::get(door, "/metrics", "");
    assert_eq!(binary::status(&answer), 200, "{answer}");
    let kind = binary::header(&answer, "content-type");
    assert_eq!(kind, Some("text/plain; version=0.0.4; charset=utf-8"));
    let version = env!("CARGO_PKG_VERSION");
    for line in [
        "# TYPE http_server_request_duration_seconds histogram".to_owned(),
        format!("holewright_build_info{{version=\"{version}\"}} 1"),
        count("/threads/{system}/{size}", "GET", 200, 1),
        count("/threads/{system}", "GET", 404, 1),
        count("/plan", "GET", 422, 1),
        count("none", "GET", 404, 2),
        count("/", "other", 405, 1),
    ] {
        assert!(answer.lines().any(|held| held == line), "{line} in {answer}");
    }
    assert!(!answer.to_lowercase().contains("hwx"), "{answer}");
    let log = server.stop();
    assert!(log.iter().all(|line| line["path"] != "/threads" && line["route"] != "pages"));
}

fn count(route: &str, method: &str, status: u16, count: u32) -> String {
    let labels = format!("route=\"{route}\",method=\"{method}\",status=\"{status}\"");
    format!("http_server_request_duration_seconds_count{{{labels}}} {count}")
}

#[test]
fn s37_without_the_option_there_is_no_such_door() {
    let server = Running::start(&[]);
    let log = server.stop();
    assert!(log.iter().all(|line| !line.to_string().contains("metrics")), "{log:?}");
}

/// What a client can do: any method and any status at every route.
#[test]
fn s37_no_client_can_make_more_series_than_the_route_table_allows() {
    let metrics = Metrics::default();
    let methods = ["GET", "HEAD", "POST", "TRACE", "HWX"];
    let routes: BTreeSet<&str> = routes::ROUTES.iter().map(|route| route.path).collect();
    let mut answered = 0;
    for status in (100..600).filter_map(|status| StatusCode::from_u16(status).ok()) {
        for method in methods {
            let method = Method::from_bytes(method.as_bytes()).unwrap();
            for route in &routes {
                metrics.answered(route, &method, status, Duration::from_millis(answered % 40));
                answered += 1;
            }
        }
    }
    let text = metrics.text(None);
    let series = series(&text);
    // Five sets for each route, one for each class of status; the build, and the last backup.
    let most = (routes.len() * 5 + 5) * SERIES + 2;
    assert_eq!(series.len(), most);
    let counted: u64 = series
        .iter()
        .filter(|line| line.starts_with("http_server_request_duration_seconds_count"))
        .map(|line| line.rsplit(' ').next().unwrap().parse::<u64>().unwrap())
        .sum();
    assert_eq!(counted, answered, "none is lost");
    let distinct: BTreeSet<_> = series.iter().map(|line| line.split(' ').next()).collect();
    assert_eq!(distinct.len(), series.len(), "none stands there twice");
    // What every operator watches is there however many others there are.
    for route in routes {
        let reading = format!("route=\"{route}\",method=\"GET\",status=\"200\"");
        assert!(text.contains(&reading), "{reading}");
    }
}

#[test]
fn s37_one_visitor_at_one_route_takes_no_room_from_another() {
    let metrics = Metrics::default();
    for status in (400..600).filter_map(|status| StatusCode::from_u16(status).ok()) {
        metrics.answered("/notes/{id}", &Method::GET, status, Duration::ZERO);
    }
    for status in [404, 422, 503] {
        let answered = StatusCode::from_u16(status).unwrap();
        metrics.answered("/plan", &Method::GET, answered, Duration::ZERO);
        let line = count("/plan", "GET", status, 1);
        assert!(metrics.text(None).lines().any(|held| held == line), "{line}");
    }
}

/// The series of one set of labels: a bucket for each bound and one above, the sum and the count.
const SERIES: usize = 8;

/// One address of every page.
const PAGES: [&str; 14] = [
    "/",
    "/search",
    "/threads",
    "/threads/ba",
    "/threads/ba/5",
    "/drills",
    "/drills/number/46",
    "/materials",
    "/materials/gunmetal",
    "/plan",
    "/drawer",
    "/calculators",
    "/calculators/speeds",
    "/static/holewright-0.css",
];

#[tokio::test]
async fn s37_a_visit_to_every_route_is_counted_with_each() {
    let server = Server::start().await;
    let mut visited = BTreeSet::from(["none"]);
    server.get("/nothing-here").await;
    for path in PAGES {
        visited.insert(Address::read(path).page.template().unwrap());
        server.get(path).await;
    }
    assert_eq!(visited.len(), PAGES.len() + 1);
    for route in routes::ROUTES {
        visited.insert(route.path);
        let method = if route.methods[0] == "post" { Method::POST } else { Method::GET };
        // The answer itself may be a file that is no text.
        let request = Request::builder().method(method).uri(filled(route.path));
        server.router.clone().oneshot(request.body(Body::empty()).unwrap()).await.unwrap();
    }
    let text = server.app.metrics.text(None);
    let counted: BTreeSet<&str> =
        text.lines().filter_map(|line| line.split("route=\"").nth(1)?.split('"').next()).collect();
    assert_eq!(counted, visited);
}

#[test]
fn s37_a_path_is_counted_by_its_template() {
    for (path, template) in [
        ("/", Some("/")),
        ("/Threads//BA/5/", Some("/threads/{system}/{size}")),
        ("/threads/ba/5.svg", Some("/threads/{system}/{size}")),
        ("/threads.csv", Some("/threads")),
        ("/drills/metric/2.05", Some("/drills/{series}/{size}")),
        ("/static/holewright-0.css", Some("/static/{file}")),
        ("/threads/ba/5/6", None),
        ("/metrics", None),
        ("//", Some("/")),
    ] {
        assert_eq!(Address::read(path).page.template(), template, "{path}");
    }
}

#[test]
fn s37_a_wrong_address_for_the_metrics_is_named() {
    for given in ["9090", "metrics", "127.0.0.1:99999"] {
        for from_environment in ["flag", "variable"] {
            let mut program = program();
            match from_environment {
                "flag" => program.args(["--metrics-listen", given]),
                _ => program.env("HOLEWRIGHT_METRICS_LISTEN", given),
            };
            let output = process::run(&program);
            let words = String::from_utf8_lossy(&output.stderr);
            assert_eq!(output.status.code(), Some(2), "{words}");
            for named in [given, "--metrics-listen", "HOLEWRIGHT_METRICS_LISTEN", "127.0.0.1:9090"]
            {
                assert!(words.contains(named), "{named} in {words}");
            }
        }
    }
    let taken = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let taken = taken.local_addr().unwrap().to_string();
    let folder = Folder::new();
    let data = folder.path().join("data");
    let output = process::run(
        program()
            .args(["--listen", &free_address().to_string()])
            .args(["--metrics-listen", &taken, "--data-dir"])
            .arg(&data),
    );
    let words = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(1), "{words}");
    assert!(words.contains(&taken) && words.contains("--metrics-listen"), "{words}");
    assert!(!data.exists(), "the data is not touched");
}
