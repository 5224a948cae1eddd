//! The built program, serving on a port of its own.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::mpsc::{self, Receiver};

use rustix::process::{Pid, Signal, kill_process};

use crate::process::{HANG, Process};
use crate::support::Folder;

/// The program without any setting from the environment of the test.
pub(crate) fn program() -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_holewright"));
    for (name, _) in std::env::vars_os() {
        if name.to_string_lossy().starts_with("HOLEWRIGHT_") {
            program.env_remove(name);
        }
    }
    program
}

/// The program while it serves.
pub(crate) struct Running {
    process: Process,
    /// Its log, line by line, read as it is written: a full pipe would hold up the program.
    log: Receiver<String>,
    pub(crate) address: SocketAddr,
    folder: Folder,
}

impl Running {
    pub(crate) fn start(arguments: &[&str]) -> Self {
        let folder = Folder::new();
        let mut command = program();
        command
            .args(["--listen", "127.0.0.1:0", "--data-dir"])
            .arg(folder.path().join("data"))
            .args(arguments);
        let mut process = Process::start(&command, Stdio::inherit());
        let lines = BufReader::new(process.stdout.take().unwrap()).lines();
        let (sender, log) = mpsc::channel();
        std::thread::spawn(move || {
            for line in lines.map_while(Result::ok) {
                // Nobody listens once the test has ended.
                let _ = sender.send(line);
            }
        });
        let address = address_in(&log.recv_timeout(HANG).unwrap());
        Self { process, log, address, folder }
    }

    /// The next line of the log.
    pub(crate) fn line(&self) -> String {
        self.log.recv_timeout(HANG).unwrap()
    }

    pub(crate) fn database(&self) -> PathBuf {
        self.folder.path().join("data/holewright.sqlite")
    }

    /// The memory it holds at this moment, in KiB.
    pub(crate) fn memory_kib(&self) -> u64 {
        let status =
            std::fs::read_to_string(format!("/proc/{}/status", self.process.id())).unwrap();
        let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:")).unwrap();
        line.trim().trim_end_matches(" kB").parse().unwrap()
    }

    /// Sends it this signal.
    pub(crate) fn signal(&self, signal: Signal) {
        kill_process(Pid::from_child(&self.process), signal).unwrap();
    }

    /// Stops it and gives the rest of its log, each line read as JSON.
    pub(crate) fn stop(mut self) -> Vec<serde_json::Value> {
        self.signal(Signal::TERM);
        assert_eq!(self.process.ends().code(), Some(0));
        self.log.iter().map(|line| serde_json::from_str(&line).unwrap()).collect()
    }
}

/// The address that a line of the log tells to open.
pub(crate) fn address_in(line: &str) -> SocketAddr {
    let address = line.split("http://").nth(1).unwrap_or_else(|| panic!("no address in {line:?}"));
    let end = address.find(|c: char| !(c.is_ascii_digit() || ".:".contains(c)));
    address[..end.unwrap_or(address.len())].parse().unwrap()
}

/// What the server sends back on these bytes until it closes.
pub(crate) fn send(address: SocketAddr, request: &[u8]) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    stream.set_read_timeout(Some(HANG)).unwrap();
    // A server that refuses early closes before it has read everything: what it said still counts.
    let _ = stream.write_all(request);
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    String::from_utf8_lossy(&answer).into_owned()
}

/// Asks with GET for a target, byte for byte as given, with these further header lines.
pub(crate) fn get(address: SocketAddr, target: &str, headers: &str) -> String {
    let request =
        format!("GET {target} HTTP/1.1\r\nHost: club.test\r\nConnection: close\r\n{headers}\r\n");
    send(address, request.as_bytes())
}

/// The status of an answer; 0 where there was none.
pub(crate) fn status(answer: &str) -> u16 {
    answer.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0)
}

/// The status at a target of a server that may not answer yet; 0 where it does not.
pub(crate) fn try_status(address: SocketAddr, target: &str) -> u16 {
    match TcpStream::connect(address) {
        Ok(_) => status(&get(address, target, "")),
        Err(_) => 0,
    }
}

/// The value of a header.
pub(crate) fn header<'a>(answer: &'a str, name: &str) -> Option<&'a str> {
    let (head, _) = answer.split_once("\r\n\r\n")?;
    head.lines().find_map(|line| {
        let (held, value) = line.split_once(": ")?;
        held.eq_ignore_ascii_case(name).then_some(value)
    })
}
