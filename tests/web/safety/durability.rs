//! F02: a note is on the disk before its answer is written, seen by the calls to the system.

use std::collections::BTreeSet;
use std::io::{BufRead, BufReader};
use std::net::SocketAddr;
use std::path::Path;
use std::process::{Command, Stdio};

use super::storm::Victim;
use super::{notes, storm, stormed, writer};
use crate::process::Process;
use crate::support::Folder;

/// How many answers there were, and before how many of them the log was synced since the last.
#[derive(Debug, Default, PartialEq, Eq)]
struct Counted {
    answers: u32,
    synced: u32,
}

/// Reads what `strace -f -y` wrote: each call with its process, a call that waits in two halves.
fn count(trace: &str, answer: &str) -> Counted {
    let mut counted = Counted::default();
    let mut waiting = BTreeSet::new();
    let mut is_synced = false;
    for line in trace.lines() {
        let Some((process, call)) = line.trim_start().split_once(' ') else { continue };
        let call = call.trim_start();
        let is_sync = call.contains("sync(") && call.contains("-wal>");
        if is_sync && call.contains("<unfinished") {
            waiting.insert(process);
        } else if is_sync || call.contains("sync resumed>") && waiting.remove(process) {
            // Only a sync that has ended well counts.
            is_synced |= call.ends_with("= 0");
        } else if call.contains(answer) {
            counted.answers += 1;
            counted.synced += u32::from(is_synced);
            is_synced = false;
        }
    }
    counted
}

/// Writes so many notes, one after another, to a process that is watched.
fn watch(
    start: impl Fn(&Path) -> Victim,
    write: impl Fn(SocketAddr, &str) -> bool,
    notes: u64,
) -> Counted {
    let _disk = storm::with_others();
    let folder = Folder::new();
    let mut victim = start(&folder.path().join("data"));
    let trace = folder.path().join("trace");
    let mut strace = Command::new("strace");
    strace
        .args(["-f", "-y", "-s", "20", "-e", "trace=fdatasync,fsync,write,writev,sendto,sendmsg"])
        .arg("-o")
        .arg(&trace)
        .args(["-p", &victim.id().to_string()]);
    let mut strace = Process::start(&strace, Stdio::piped());
    let mut said = String::new();
    let mut lines = BufReader::new(strace.stderr.take().unwrap());
    lines.read_line(&mut said).unwrap();
    assert!(said.contains("attached"), "strace is needed (tests/run installs it): {said}");
    // Read on: it says a line for each new thread, and nobody listening would be its end.
    std::thread::spawn(move || lines.lines().for_each(drop));
    for number in 0..notes {
        assert!(write(victim.address, &notes::key("watched", number)));
    }
    victim.kill();
    strace.ends();
    count(&std::fs::read_to_string(trace).unwrap(), "HTTP/1.1 303")
}

#[test]
fn f02_the_log_is_synced_before_every_answer() {
    assert_eq!(watch(stormed::start, stormed::write, 100), Counted { answers: 100, synced: 100 });
}

#[test]
fn f02_a_commit_that_is_not_synced_is_seen() {
    let counted = watch(writer::start_unsynced, writer::write, 20);
    assert_eq!(counted.answers, 20);
    assert!(counted.synced <= 1, "{counted:?}");
}

#[test]
fn f02_only_a_sync_that_ended_before_the_answer_counts() {
    let answer = "HTTP/1.1 303";
    for (trace, synced) in [
        ("7 fdatasync(9</d/x-wal>) = 0\n7 sendto(5, \"HTTP/1.1 303 See\") = 9\n", 1),
        ("7 sendto(5, \"HTTP/1.1 303 See\") = 9\n7 fdatasync(9</d/x-wal>) = 0\n", 0),
        ("7 fdatasync(9</d/x-wal>) = -1 EIO\n7 sendto(5, \"HTTP/1.1 303 See\") = 9\n", 0),
        ("7 fdatasync(9</d/x>) = 0\n7 sendto(5, \"HTTP/1.1 303 See\") = 9\n", 0),
        (
            "7 fdatasync(9</d/x-wal> <unfinished ...>\n8 write(5, \"HTTP/1.1 303 See\") = 9\n\
             7 <... fdatasync resumed>) = 0\n",
            0,
        ),
        (
            "7 fdatasync(9</d/x-wal> <unfinished ...>\n7 <... fdatasync resumed>) = 0\n\
             8 writev(5, \"HTTP/1.1 303 See\") = 9\n",
            1,
        ),
    ] {
        assert_eq!(count(trace, answer), Counted { answers: 1, synced }, "{trace}");
    }
}
