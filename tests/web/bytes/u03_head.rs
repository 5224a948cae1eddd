//! U03: HEAD has the headers of GET at every public address, and every text says its character set.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::process::{Command, Stdio};

use axum::Router;
use axum::http::{HeaderMap, Method};
use holewright_core::tables::{drills, materials, threads};
use holewright_pages::assets;

use super::fetched::fetch;
use crate::kinds::kinds as of_each_kind;
use crate::people::access::open_to_all;
use crate::process::{Process, wait_until};
use crate::support::{Folder, Server, free_address};

/// What neither the kinds of pages nor the matrix of rights name: files beside a page, redirects,
/// answers for programs, what is not there.
const OTHERS: [&str; 18] = [
    "/threads.csv",
    "/threads/ba.csv",
    "/threads/ba/5.csv",
    "/threads/ba/5.svg",
    "/threads/ba/5.json",
    "/drills?series=number",
    "/drills.csv?series=number",
    "/drills.json?series=number",
    "/materials.csv",
    "/plan.svg?thread=5ba&material=gunmetal",
    "/search?q=5ba",
    "/search?q=screw",
    "/Threads/",
    "/static/holewright-0123456789abcdef.css",
    "/notes?q=copper",
    "/api/v1/calc/clearance?thread=5ba",
    "/api/v1/plan?thread=nonsense",
    "/api/v1/nothing-here",
];

/// One of each kind, and the others.
fn kinds() -> impl Iterator<Item = String> {
    let kinds = of_each_kind().into_iter().map(|kind| kind.address.into_owned());
    kinds.chain(OTHERS.map(String::from)).chain(open_to_all().map(String::from))
}

/// Every public address.
fn addresses() -> Vec<String> {
    threads::systems()
        .iter()
        .map(|system| format!("/threads/{}", system.slug))
        .chain(threads::all().map(threads::Thread::path))
        .chain(drills::all().iter().map(drills::Drill::path))
        .chain(materials::all().iter().map(|material| format!("/materials/{}", material.slug)))
        .chain([assets::style_sheet().to_owned(), assets::icon().to_owned()])
        .chain(kinds())
        .collect()
}

#[tokio::test]
async fn u03_head_has_the_headers_of_get_everywhere() {
    let server = Server::start().await;
    let addresses = addresses();
    assert!(addresses.len() > 800, "{}", addresses.len());
    for path in &addresses {
        same(&server.router, path, "identity").await;
    }
    for path in kinds().chain([THREAD, assets::style_sheet()].map(String::from)) {
        for accepts in ["gzip", "zstd", "br"] {
            same(&server.router, &path, accepts).await;
        }
    }
}

const THREAD: &str = "/threads/ba/5";

/// Written out as they are read, so that nobody knows their length beforehand.
const STREAMED: [&str; 2] = ["/notes.csv", "/notes.json"];

async fn same(router: &Router, path: &str, accepts: &str) {
    let headers = [("accept-encoding", accepts)];
    let get = fetch(router, Method::GET, path, &headers).await;
    let head = fetch(router, Method::HEAD, path, &headers).await;
    assert_eq!(head.status, get.status, "{path}");
    assert!(head.body.is_empty(), "{path}");
    let length = get.body.len().to_string();
    let length = Some(&*length).filter(|_| !STREAMED.contains(&path));
    assert_eq!(get.header("content-length"), length, "{path} {accepts}");
    let without_id = |mut headers: HeaderMap| {
        headers.remove("x-request-id");
        headers
    };
    // A body that names its own request has another length only if the id had.
    assert_eq!(without_id(head.headers), without_id(get.headers), "{path} {accepts}");
}

#[tokio::test]
async fn u03_every_text_says_its_character_set() {
    let server = Server::start().await;
    for path in addresses() {
        let answer = fetch(&server.router, Method::GET, &path, &[]).await;
        let Some(kind) = answer.header("content-type") else {
            assert!(answer.body.is_empty(), "{path} says nothing of its body");
            continue;
        };
        // JSON has no character set to say: RFC 8259 leaves it UTF-8 alone. A database is no text.
        let has_none = ["application/json", "application/problem+json", "application/vnd.sqlite3"];
        assert!(has_none.contains(&kind) || kind.contains("; charset=utf-8"), "{path}: {kind}");
    }
}

#[test]
fn u03_head_sends_no_body_through_a_socket() {
    let folder = Folder::new();
    let address = free_address();
    let mut serve = Command::new(env!("CARGO_BIN_EXE_holewright"));
    serve.args(["--listen", &address.to_string(), "--data-dir"]).arg(folder.path().join("data"));
    let _server = Process::start(&serve, Stdio::inherit());
    let mut stream = None;
    wait_until("the server", || {
        stream = TcpStream::connect(address).ok();
        stream.is_some()
    });
    let mut stream = stream.unwrap();
    let head = format!("HEAD {THREAD} HTTP/1.1\r\nHost: x\r\n\r\n");
    let get = format!("GET {THREAD} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n");
    stream.write_all((head + get.as_str()).as_bytes()).unwrap();
    let mut answers = String::new();
    stream.read_to_string(&mut answers).unwrap();
    let parts: Vec<&str> = answers.split("\r\n\r\n").collect();
    let [head, get, body] = parts[..] else { panic!("{} parts", parts.len()) };
    let length = format!("content-length: {}", body.len());
    assert!(head.starts_with("HTTP/1.1 200 OK\r\n") && get.starts_with("HTTP/1.1 200 OK\r\n"));
    assert!(head.lines().any(|line| line == length), "{head}");
    assert!(get.lines().any(|line| line == length), "{get}");
    assert!(body.starts_with("<!"), "{}", &body[..20.min(body.len())]);
}
