//! S34: absolute addresses come from the base URL alone, whatever host a client names.

use axum::http::Method;

use super::binary::{self, Running};
use crate::support::{Answer, Server};

const SPOOFED: [(&str, &str); 8] = [
    ("host", "evil.example"),
    ("x-forwarded-host", "evil.example"),
    ("x-forwarded-server", "evil.example"),
    ("x-host", "evil.example"),
    ("x-original-url", "https://evil.example/"),
    ("x-rewrite-url", "https://evil.example/"),
    ("x-forwarded-proto", "evil"),
    ("forwarded", "for=192.0.2.1;host=evil.example;proto=evil"),
];

const PATHS: [(&str, u16); 13] = [
    ("/", 200),
    ("/threads/ba/5", 200),
    ("/drills", 200),
    ("/materials/gunmetal", 200),
    ("/plan?thread=5ba&material=gunmetal", 200),
    ("/Threads", 301),
    ("/drills/?from=2mm&to=", 301),
    ("/search?q=5BA", 303),
    ("/search?q=flange", 404),
    ("/nothing", 404),
    ("/plan?thread=x", 422),
    ("/api/v1/threads/ba/5", 200),
    ("/api/v1/nothing", 404),
];

#[track_caller]
fn check(answer: &Answer, path: &str) {
    assert!(!answer.body.contains("evil"), "{path}: {}", answer.body);
    for (name, value) in &answer.headers {
        assert!(!value.to_str().unwrap().contains("evil"), "{path}: {name}: {value:?}");
    }
    if let Some(location) = answer.headers.get("location") {
        let location = location.to_str().unwrap();
        assert!(location.starts_with('/') && !location.starts_with("//"), "{path}: {location}");
    }
}

#[tokio::test]
async fn s34_a_spoofed_host_changes_nothing() {
    let server = Server::start().await;
    for (path, status) in PATHS {
        let plain = server.get(path).await;
        for target in [path.to_owned(), format!("https://evil.example{path}")] {
            let answer = server.ask(Method::GET, &target, &SPOOFED).await;
            assert_eq!(answer.status.as_u16(), status, "{target}");
            check(&answer, &target);
            if status == 200 {
                assert_eq!(answer.body, plain.body, "{target}");
            }
        }
    }
}

#[tokio::test]
async fn s34_pages_name_the_base_url() {
    let server = Server::start().await;
    let page = server.ask(Method::GET, "/threads/ba/5", &SPOOFED).await;
    let canonical = "<link rel=\"canonical\" href=\"https://club.test/threads/ba/5\">";
    assert!(page.body.contains(canonical), "{}", page.body);
    let preview = "<meta property=\"og:url\" content=\"https://club.test/threads/ba/5\">";
    assert!(page.body.contains(preview), "{}", page.body);
}

#[test]
fn s34_on_a_socket_too() {
    let server = Running::start(&["--base-url", "https://club.test"]);
    for request in [
        "GET /threads/ba/5 HTTP/1.1\r\nHost: evil.example\r\nX-Forwarded-Host: evil.example",
        "GET http://evil.example/threads/ba/5 HTTP/1.1\r\nHost: evil.example",
        "GET http://evil.example/Threads/BA/5 HTTP/1.1\r\nHost: evil.example",
    ] {
        let request = format!("{request}\r\nConnection: close\r\n\r\n");
        let answer = binary::send(server.address, request.as_bytes());
        assert!([200, 301].contains(&binary::status(&answer)), "{answer}");
        assert!(!answer.contains("evil"), "{answer}");
    }
}

/// RFC 9112, section 3.2: no host, two, or none that could be one is answered with 400.
#[test]
fn a_request_names_its_host_once_and_in_clear() {
    let server = Running::start(&[]);
    let ask = |version: &str, hosts: &str| {
        let request = format!("GET /drills {version}\r\n{hosts}Connection: close\r\n\r\n");
        binary::status(&binary::send(server.address, request.as_bytes()))
    };
    for hosts in [
        "",
        "Host: club.test\r\nHost: club.test\r\n",
        "Host: club.test\r\nHost: evil.test\r\n",
        "Host: \r\n",
        "Host: a b\r\n",
        "Host: club.test/path\r\n",
        "Host: someone@club.test\r\n",
        "Host: club.test, evil.test\r\n",
        "Host: caf\u{e9}.test\r\n",
    ] {
        assert_eq!(ask("HTTP/1.1", hosts), 400, "{hosts:?}");
    }
    for hosts in ["Host: club.test\r\n", "Host: [::1]:8080\r\n", "Host: 127.0.0.1\r\n"] {
        assert_eq!(ask("HTTP/1.1", hosts), 200, "{hosts:?}");
    }
    assert_eq!(ask("HTTP/1.0", ""), 200, "an older program names none");
    drop(server.stop());
}

/// RFC 9112, section 6: a body in pieces is as long as its pieces say, whatever its head says beside
/// that, and a head that names two lengths is answered with 400. Never is a part of a body taken for the
/// next request, which a proxy that reads it otherwise would not have seen.
#[test]
fn a_request_of_two_lengths_is_never_two_requests() {
    let server = Running::start(&[]);
    let smuggled = "GET /drills HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n";
    let length = format!("Content-Length: {}\r\n", smuggled.len());
    for (lengths, body) in [
        // The pieces hold it, and the length ends before it, and the other way round.
        ("Content-Length: 5\r\nTransfer-Encoding: chunked\r\n", {
            format!("{:x}\r\n{smuggled}\r\n0\r\n\r\n", smuggled.len())
        }),
        (&format!("Transfer-Encoding: chunked\r\n{length}"), format!("0\r\n\r\n{smuggled}")),
        (&format!("Content-Length: 0\r\n{length}"), smuggled.to_owned()),
        ("Content-Length: +0\r\n", smuggled.to_owned()),
        ("Transfer-Encoding: chunked, identity\r\n", format!("0\r\n\r\n{smuggled}")),
        ("Transfer-Encoding: xchunked\r\n", format!("0\r\n\r\n{smuggled}")),
    ] {
        let request = format!("POST /plan HTTP/1.1\r\nHost: x\r\n{lengths}\r\n{body}");
        let answer = binary::send(server.address, request.as_bytes());
        assert!([400, 405].contains(&binary::status(&answer)), "{lengths:?}: {answer}");
        assert_eq!(answer.matches("HTTP/1.1 ").count(), 1, "{lengths:?}: {answer}");
    }
    let log = server.stop();
    let asked = log.iter().filter(|line| line["path"] == "/drills").count();
    assert_eq!(asked, 0, "a body was taken for a request");
}
