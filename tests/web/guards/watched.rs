//! The real binary watched by strace: every call by which it could reach out, from its first.

use std::path::Path;
use std::process::{Command, Output};

use crate::process::{self, wait_until};

/// What starts a program that writes those of its calls into a file: the network's, those that start
/// another program, and the ring by which calls could be made unseen. The program keeps the number it
/// was started with (`-D`), and what it sends is left out (`-s 0`), so that no text looks like a call.
pub(super) fn starter(trace: &Path) -> Vec<&str> {
    let calls = "trace=%network,execve,execveat,io_uring_setup";
    let file = trace.to_str().unwrap();
    vec!["strace", "-D", "-f", "-s", "0", "-e", calls, "-o", file]
}

/// Runs one of the program's commands so.
pub(super) fn run(trace: &Path, arguments: &[&str]) -> Output {
    let starter = starter(trace);
    let mut watched = Command::new(starter[0]);
    watched.args(&starter[1..]).arg(env!("CARGO_BIN_EXE_holewright")).args(arguments);
    process::run(&watched)
}

/// All that was written of a process that has ended.
pub(super) fn read(trace: &Path) -> String {
    let mut written = String::new();
    // It writes on for a moment after the process is gone.
    wait_until("the end of a trace", || {
        written = std::fs::read_to_string(trace).unwrap_or_default();
        let last = written.lines().last().unwrap_or_default();
        last.ends_with("+++") && written.lines().next().is_some_and(|first| of(first) == of(last))
    });
    written
}

/// The process of a line.
fn of(line: &str) -> Option<&str> {
    line.split_whitespace().next()
}

/// The calls of a trace in order, each with its name and what it was given: `("connect", "5, {…")`.
/// A call that waited stands where it began, and there is all that it was given.
pub(super) fn calls(trace: &str) -> Vec<(&str, &str)> {
    trace
        .lines()
        .filter_map(|line| {
            let (_, call) = line.trim_start().split_once(' ')?;
            let (name, given) = call.trim_start().split_once('(')?;
            let is_name = name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_');
            is_name.then_some((name, given))
        })
        .collect()
}

/// The calls by which something was asked of another process or machine: a connection, a datagram,
/// a socket for either, another program.
pub(super) fn reaching_out<'a>(calls: &[(&'a str, &'a str)]) -> Vec<(&'a str, &'a str)> {
    let is_stream = |given: &str| {
        ["AF_INET, SOCK_STREAM", "AF_INET6, SOCK_STREAM"].iter().any(|kind| given.starts_with(kind))
    };
    let mut starts = 0;
    let mut reaches_out = |call: &&(&str, &str)| {
        let (name, given) = **call;
        match name {
            "socket" => !is_stream(given),
            // To nobody by name: to whoever is connected.
            "sendto" => !given.contains(", NULL, 0"),
            "sendmsg" | "sendmmsg" => !given.contains("msg_name=NULL"),
            "execve" => {
                starts += 1;
                // The first is its own start.
                starts > 1
            }
            "connect" | "execveat" | "io_uring_setup" => true,
            _ => false,
        }
    };
    calls.iter().filter(&mut reaches_out).copied().collect()
}
