//! O09: one line a request in the log, with what an operator needs and nothing of the reader's but
//! the address.

use std::io::{BufRead, BufReader, Read};
use std::net::TcpStream;
use std::process::{Command, Stdio};

use serde_json::Value;

use super::binary::{self, Running, address_in, program};
use crate::process::{Process, wait_until};
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

/// Whoever tries what is not theirs is seen: each refusal has its line, with where it came from.
#[test]
fn every_refusal_has_its_line_in_the_log() {
    let server = Running::start(&[]);
    let foreign = "Sec-Fetch-Site: cross-site\r\nCookie: holewright=x\r\n";
    let json = "Sec-Fetch-Site: same-origin\r\nContent-Type: application/json\r\n";
    let long = format!("Content-Length: 20000000\r\n{json}");
    let mut asked = Vec::new();
    for (method, path, headers, status) in [
        ("GET", "/people", "", 303),
        ("POST", "/notes/new", foreign, 403),
        ("POST", "/sign-in", json, 415),
        ("POST", "/sign-in", long.as_str(), 413),
        ("TRACE", "/drills", "", 405),
        ("GET", "/.git/config", "", 404),
    ] {
        let close = "Host: x\r\nConnection: close\r\n";
        let request = format!("{method} {path} HTTP/1.1\r\n{close}{headers}\r\n");
        let answer = binary::send(server.address, request.as_bytes());
        assert_eq!(binary::status(&answer), status, "{method} {path}: {answer}");
        asked.push((method.to_owned(), path.to_owned(), u64::from(status)));
    }
    let log = server.stop();
    let answered: Vec<&Value> = log.iter().filter(|line| line["message"] == "answered").collect();
    let text = |line: &Value, name: &str| line[name].as_str().unwrap().to_owned();
    let logged: Vec<_> = answered
        .iter()
        .map(|line| (text(line, "method"), text(line, "path"), line["status"].as_u64().unwrap()))
        .collect();
    assert_eq!(logged, asked);
    assert!(answered.iter().all(|line| line["client"] == "127.0.0.1"), "{answered:?}");
}

#[test]
fn o09_the_level_is_a_setting() {
    let folder = Folder::new();
    let address = free_address();
    let mut serve = program();
    serve
        .args(["--log", "error", "--listen", &address.to_string(), "--data-dir"])
        .arg(folder.path());
    let mut server = Process::start(&serve, Stdio::inherit());
    let mut said = server.stdout.take().unwrap();
    // It says nothing when it is ready, so it is asked until it answers.
    wait_until("an answer", || TcpStream::connect(address).is_ok());
    let answer = binary::get(address, "/nothing", "");
    drop(server);
    let mut log = String::new();
    said.read_to_string(&mut log).unwrap();
    assert_eq!(binary::status(&answer), 404, "{answer}");
    assert_eq!(log, "");
}

/// `script` gives the program a terminal and a session of its own, so it is told to go with `script`.
#[test]
fn o09_on_a_terminal_people_can_read_it() {
    let folder = Folder::new();
    let program = env!("CARGO_BIN_EXE_holewright");
    let data = folder.path().display();
    let mut terminal = Command::new("script");
    terminal
        .args(["--quiet", "--return", "--flush", "--command"])
        .arg(format!(
            "exec setpriv --pdeathsig KILL {program} --listen 127.0.0.1:0 --data-dir {data}"
        ))
        .arg("/dev/null");
    let mut terminal = Process::start(&terminal, Stdio::inherit());
    let mut log = BufReader::new(terminal.stdout.take().unwrap());
    let mut line = String::new();
    // A new club is told first that it has no secretary.
    while !line.contains("http://") {
        line.clear();
        assert!(log.read_line(&mut line).unwrap() > 0, "no address");
    }
    let answer = binary::get(address_in(&line), "/threads/ba/5?q=hwx", "");
    while !line.contains("answered") {
        line.clear();
        assert!(log.read_line(&mut line).unwrap() > 0, "no line of the request");
    }
    drop(terminal);
    assert_eq!(binary::status(&answer), 200);
    assert!(serde_json::from_str::<Value>(&line).is_err(), "{line}");
    for word in ["INFO", "answered", "/threads/ba/5", "status", "200", "127.0.0.1"] {
        assert!(line.contains(word), "{word} in {line}");
    }
    assert!(line.contains(binary::header(&answer, "x-request-id").unwrap()), "{line}");
    assert!(!line.contains("hwx"), "{line}");
}
