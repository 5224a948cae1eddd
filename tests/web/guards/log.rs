//! O09: one line a request in the log, with what an operator needs and nothing of the reader's but
//! the address.

use std::io::{BufRead, BufReader};
use std::net::TcpStream;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use serde_json::Value;

use super::binary::{self, Running, address_in, program};
use crate::support::{Folder, free_address};

#[test]
fn o09_one_json_line_a_request_without_the_readers_business() {
    let server = Running::start(&[]);
    let headers = "Cookie: hwx-cookie\r\nUser-Agent: hwx-agent\r\nReferer: https://club.test/hwx\r\n\
                   Authorization: Bearer hwx-token\r\n";
    let mut ids = Vec::new();
    for path in ["/threads/ba/5?q=hwx-query", "/search?q=hwx-words", "/plan?owned=hwx-drills"] {
        let answer = binary::get(server.address, path, headers);
        ids.push(binary::header(&answer, "x-request-id").unwrap().to_owned());
    }
    // A path is logged, as one escaped line whatever is in it.
    let odd = "/%0d%0a%1b[31m\"{}\u{9b}31m";
    binary::send(
        server.address,
        format!("GET {odd} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n").as_bytes(),
    );
    let log = server.stop();
    let answered: Vec<&Value> = log.iter().filter(|line| line["message"] == "answered").collect();
    let logged: Vec<_> =
        answered.iter().take(3).map(|line| line["span"]["id"].as_str().unwrap()).collect();
    assert_eq!(logged, ids, "the id of the line is the one in the header");
    for line in &answered {
        assert!(line["timestamp"].as_str().unwrap().ends_with('Z'), "UTC: {line}");
        assert_eq!(line["level"], "INFO", "{line}");
        assert_eq!(line["method"], "GET", "{line}");
        assert_eq!(line["client"], "127.0.0.1", "{line}");
        assert!(line["path"].is_string() && line["route"].is_string(), "{line}");
        assert!(line["status"].is_u64() && line["bytes"].is_u64(), "{line}");
        assert!(line["ms"].as_f64().unwrap() >= 0.0, "{line}");
    }
    assert_eq!(answered[0]["route"], "/threads/{system}/{size}");
    assert_eq!((&answered[1]["path"], &answered[1]["status"]), (&"/search".into(), &404.into()));
    for line in &log {
        assert!(!line.to_string().contains("hwx"), "{line}");
    }
}

#[test]
fn o09_the_level_is_a_setting() {
    let folder = Folder::new();
    let address = free_address();
    let mut server = program()
        .args(["--log", "error", "--listen", &address.to_string(), "--data-dir"])
        .arg(folder.path())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    // It says nothing when it is ready, so it is asked until it answers.
    let patience = Instant::now() + Duration::from_secs(30);
    while TcpStream::connect(address).is_err() && Instant::now() < patience {
        std::thread::sleep(Duration::from_millis(20));
    }
    let answer = binary::get(address, "/nothing", "");
    server.kill().unwrap();
    let log = server.wait_with_output().unwrap().stdout;
    assert_eq!(binary::status(&answer), 404, "{answer}");
    assert!(log.is_empty(), "{}", String::from_utf8_lossy(&log));
}

/// `script` gives the program a terminal.
#[test]
fn o09_on_a_terminal_people_can_read_it() {
    let folder = Folder::new();
    let program = env!("CARGO_BIN_EXE_holewright");
    let data = folder.path().display();
    let mut terminal = Command::new("script")
        .args(["--quiet", "--return", "--flush", "--command"])
        .arg(format!("exec {program} --listen 127.0.0.1:0 --data-dir {data}"))
        .arg("/dev/null")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut log = BufReader::new(terminal.stdout.take().unwrap());
    let mut line = String::new();
    log.read_line(&mut line).unwrap();
    let answer = binary::get(address_in(&line), "/threads/ba/5?q=hwx", "");
    // The first start says more: that the club has no secretary, and where the link stands.
    while !line.contains("answered") {
        line.clear();
        assert_ne!(log.read_line(&mut line).unwrap(), 0, "the log ended");
    }
    terminal.kill().unwrap();
    terminal.wait().unwrap();
    assert_eq!(binary::status(&answer), 200);
    assert!(serde_json::from_str::<Value>(&line).is_err(), "{line}");
    for word in ["INFO", "answered", "/threads/ba/5", "status", "200", "127.0.0.1"] {
        assert!(line.contains(word), "{word} in {line}");
    }
    assert!(line.contains(binary::header(&answer, "x-request-id").unwrap()), "{line}");
    assert!(!line.contains("hwx"), "{line}");
}
