//! S40, S41: nothing is asked of another machine, and a page is the same whoever reads it.

use std::fs;
use std::path::{Path, PathBuf};

use axum::http::StatusCode;

use super::club::{Club, SECRETARY};

/// The one file that opens a connection: it asks this server, on its own machine, how it is.
const ASKS_ITSELF: &str = "src/server/healthcheck.rs";

/// What a connection, a look-up of a name or another program would be begun with.
const CALLS: &[&str] = &[
    "TcpStream::connect",
    "UdpSocket",
    "UnixStream",
    "lookup_host",
    "to_socket_addrs",
    "ToSocketAddrs",
    "Command::new",
    "reqwest",
    "hyper::client",
    "client::legacy",
    ".connect(",
];

#[test]
fn s40_no_file_but_the_health_check_opens_a_connection() {
    let mut found: Vec<(String, &str)> = Vec::new();
    let mut read = 0;
    for file in sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src")) {
        let text = fs::read_to_string(&file).unwrap();
        read += 1;
        for call in CALLS.iter().filter(|call| text.contains(**call)) {
            let file = file.strip_prefix(env!("CARGO_MANIFEST_DIR")).unwrap();
            found.push((file.to_string_lossy().into_owned(), *call));
        }
    }
    found.sort();
    assert!(read > 150, "{read}");
    let opens_a_file = |file: &str| (file.to_owned(), ".connect(");
    let [copy, export] = ["src/server/db/copy.rs", "src/server/db/export.rs"].map(opens_a_file);
    assert_eq!(found, [copy, export, (ASKS_ITSELF.to_owned(), "TcpStream::connect")]);
    let asks = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(ASKS_ITSELF)).unwrap();
    assert!(asks.contains("reachable("), "it asks its own address");
    // No library that could do it for us is among those we name.
    let manifest =
        fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml")).unwrap();
    // The browser tests may speak to their driver; the program names no client.
    let manifest = manifest.split("[dev-dependencies]").next().unwrap();
    for library in ["reqwest", "ureq", "curl", "isahc", "lettre", "hickory"] {
        assert!(!manifest.lines().any(|line| line.starts_with(library)), "{library}");
    }
    let http = manifest.lines().filter(|line| line.starts_with("hyper")).collect::<String>();
    assert!(!http.contains("client"), "{http}");
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
    found
}

#[tokio::test]
async fn s41_a_reference_page_is_the_same_whoever_reads_it() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    let mut stranger = club.browser();
    for path in [
        "/",
        "/threads",
        "/threads/ba/5",
        "/drills",
        "/materials/gunmetal",
        "/plan?thread=5ba&material=gunmetal",
        "/search?q=brass",
        "/calculators",
        "/nothing/here",
        "/threads/ba/5.json",
        "/threads.csv",
        "/privacy",
        "/sign-in",
    ] {
        let (hers, theirs) = (secretary.get(path).await, stranger.get(path).await);
        assert_eq!(hers.status, theirs.status, "{path}");
        assert_eq!(hers.body, theirs.body, "{path}");
        assert!(!hers.body.contains("Una Secretary"), "{path}");
        let named = |answer: &crate::support::Answer| {
            let mut named: Vec<String> = answer
                .headers
                .iter()
                .filter(|(name, _)| *name != "x-request-id")
                .map(|(name, value)| format!("{name}: {value:?}"))
                .collect();
            named.sort();
            named
        };
        assert_eq!(named(&hers), named(&theirs), "{path}");
        assert!(hers.headers.get("set-cookie").is_none(), "{path}");
    }
}

#[tokio::test]
async fn s41_a_members_pages_are_kept_by_nobody() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    for path in [
        "/me",
        "/me/password",
        "/me/second-factor",
        "/me/leave",
        "/me/data.json",
        "/people",
        "/people/1",
        "/people/invite",
        "/people/acts",
        "/prove",
    ] {
        let answer = secretary.get(path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
        assert_eq!(answer.header("cache-control"), "private, no-store", "{path}");
        assert!(answer.headers.get("etag").is_none(), "{path}");
        let stranger = club.browser().get(path).await;
        assert!(!stranger.body.contains("Una Secretary"), "{path}");
        assert!(stranger.header("cache-control").contains("no-store"), "{path}");
    }
}
