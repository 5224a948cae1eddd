//! The real binary: start, health, log, stop.

use std::process::Command;

use rustix::process::Signal;

use crate::faults::{Running, get};
use crate::process::run;

#[test]
fn it_serves_is_healthy_and_stops_when_told() {
    for signal in [Signal::TERM, Signal::INT] {
        let mut server = Running::start();
        for (path, status) in [("/", "200"), ("/healthz", "200"), ("/readyz", "200"), ("/x", "404")]
        {
            let answer = get(server.address, path);
            assert!(answer.starts_with(&format!("HTTP/1.1 {status} ")), "{path}: {answer}");
        }
        let health = run(Command::new(env!("CARGO_BIN_EXE_holewright")).args([
            "healthcheck",
            "--listen",
            &server.address.to_string(),
        ]));
        assert_eq!(health.status.code(), Some(0));

        server.signal(signal);
        assert_eq!(server.ends(), Some(0));
        assert_eq!(server.data(), ["holewright.sqlite"], "the log is folded into the file");

        let log = server.log();
        let lines: Vec<serde_json::Value> =
            log.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
        let answered = lines.iter().filter(|line| line["message"] == "answered");
        assert_eq!(answered.clone().count(), 5, "one line a request: {log}");
        let missing = answered.clone().find(|line| line["path"] == "/x").unwrap();
        assert_eq!(missing["status"], 404);
        assert_eq!(missing["client"], "127.0.0.1");
        assert_eq!(missing["span"]["id"].as_str().unwrap().len(), 16);
    }
}
