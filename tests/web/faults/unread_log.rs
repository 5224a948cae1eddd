//! F28: a log that nobody reads, or that has no room, holds nobody up: neither a reader nor the stop.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::SocketAddr;
use std::process::{ChildStdout, Command, Stdio};
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use super::client::{connect, get, status};
use crate::process::{Process, wait_until};
use crate::support::{Folder, free_address};

/// What must be over by then: a container is killed a second later.
const STOP: Duration = Duration::from_secs(9);
/// More lines than the program may hold, each as long as a head may be.
const LINES: usize = 700;

/// The program with its log going there, on an address it was told.
fn serving(folder: &Folder, log: &str) -> (Process, SocketAddr) {
    let address = free_address();
    let mut command = Command::new("sh");
    command
        .args(["-c", &format!("exec \"$0\" \"$@\" {log}"), env!("CARGO_BIN_EXE_holewright")])
        .args(["--listen", &address.to_string(), "--data-dir"])
        .arg(folder.path().join("data"));
    let process = Process::start(&command, Stdio::null());
    wait_until("a server", || std::net::TcpStream::connect(address).is_ok());
    (process, address)
}

/// Has so many long lines logged.
fn fill(address: SocketAddr) {
    let path = "x".repeat(25_000);
    let request = format!("GET /{path} HTTP/1.1\r\nHost: x\r\n\r\n");
    let mut stream = connect(address);
    let mut head = BufReader::new(stream.try_clone().unwrap());
    for _ in 0..LINES {
        stream.write_all(request.as_bytes()).unwrap();
        let mut length = 0;
        let mut line = String::new();
        while line != "\r\n" {
            line.clear();
            head.read_line(&mut line).unwrap();
            if let Some(told) = line.strip_prefix("content-length: ") {
                length = told.trim().parse().unwrap();
            }
        }
        head.read_exact(&mut vec![0; length]).unwrap();
    }
}

/// Stops it, and says how long that took.
fn stop(process: &mut Process) -> Duration {
    let since = Instant::now();
    kill_process(Pid::from_child(process), Signal::TERM).unwrap();
    process.ends();
    since.elapsed()
}

/// The lines that tell how many were dropped: the number in the words and the one beside them.
fn dropped(log: &str) -> Vec<(String, u64)> {
    log.lines()
        .map(|line| serde_json::from_str::<serde_json::Value>(line).unwrap())
        .filter_map(|line| {
            let words = line["message"].as_str()?.strip_suffix(" lines dropped")?.to_owned();
            Some((words, line["lines"].as_u64()?))
        })
        .collect()
}

fn read_all(mut log: ChildStdout) -> std::thread::JoinHandle<String> {
    std::thread::spawn(move || {
        let mut text = String::new();
        log.read_to_string(&mut text).unwrap();
        text
    })
}

#[test]
fn f28_a_log_that_nobody_reads_drops_lines_and_tells_how_many() {
    let folder = Folder::new();
    let (mut server, address) = serving(&folder, "");
    fill(address);
    assert_eq!(status(&get(address, "/healthz")), 200);
    let log = read_all(server.stdout.take().unwrap());
    // Each line from now on is one more that may carry the number with it.
    std::thread::sleep(Duration::from_millis(200));
    assert_eq!(status(&get(address, "/readyz")), 200);
    stop(&mut server);
    let log = log.join().unwrap();
    let kept = log.lines().filter(|line| line.contains("answered")).count();
    let told = dropped(&log);
    assert_eq!(told.len(), 1, "{told:?}");
    let (words, number) = &told[0];
    assert!(*number > 100, "{told:?}");
    assert_eq!(words.replace(',', ""), number.to_string());
    // The two above, and every one of the crowd.
    assert_eq!(kept + usize::try_from(*number).unwrap(), LINES + 2);
}

#[test]
fn f28_a_log_that_nobody_reads_does_not_hold_up_the_stop() {
    let folder = Folder::new();
    let (mut server, address) = serving(&folder, "");
    fill(address);
    let took = stop(&mut server);
    assert!(took <= STOP, "{took:?}");
}

#[test]
fn f28_a_log_without_room_loses_lines_and_nothing_else() {
    let folder = Folder::new();
    let (mut server, address) = serving(&folder, ">/dev/full");
    fill(address);
    assert_eq!(status(&get(address, "/readyz")), 200);
    let took = stop(&mut server);
    assert!(took <= STOP, "{took:?}");
    assert!(folder.path().join("data/holewright.sqlite").exists());
}

/// The system holds the thread that lets clients in for a minute: it does not hear of the stop.
#[test]
fn f17_a_stall_in_the_system_does_not_hold_up_the_stop() {
    let folder = Folder::new();
    let (mut server, address) = serving(&folder, ">/dev/null");
    let mut strace = Command::new("strace");
    strace
        .args(["-f", "-qq", "-e", "trace=accept4", "-e", "inject=accept4:delay_enter=60000000"])
        .args(["-o", "/dev/null", "-p", &server.id().to_string()]);
    let strace = Process::start(&strace, Stdio::null());
    let status = format!("/proc/{}/status", server.id());
    wait_until("strace", || {
        let status = std::fs::read_to_string(&status).unwrap();
        status.lines().any(|line| line.starts_with("TracerPid:") && !line.ends_with("\t0"))
    });
    let _knocks = connect(address);
    // Held by then, or held a moment later: either way before it can hear of the stop.
    std::thread::sleep(Duration::from_millis(300));
    let since = Instant::now();
    kill_process(Pid::from_child(&server), Signal::TERM).unwrap();
    let threads = format!("/proc/{}/task", server.id());
    // strace lets go of the one it holds only at its own end.
    wait_until("the end", || std::fs::read_dir(&threads).is_ok_and(|all| all.count() == 1));
    let took = since.elapsed();
    drop(strace);
    server.ends();
    assert!(took <= STOP + Duration::from_secs(1), "{took:?}");
}
