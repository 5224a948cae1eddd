//! One call to the system that fails, the first or the tenth of its kind, by `strace`.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use holewright_server::db::FILE_NAME;
use rustix::process::{Pid, Signal, kill_process};

use crate::process::{Process, wait_until};

/// The calls by which files are made, changed and brought to the disk.
const CALLS: [&str; 11] = [
    "openat",
    "pwrite64",
    "write",
    "ftruncate",
    "fallocate",
    "fdatasync",
    "fsync",
    "rename",
    "linkat",
    "unlink",
    "mkdir",
];

/// How they fail.
pub(super) const ERRORS: [&str; 2] = ["EIO", "ENOSPC"];

/// Which call fails, how, and how many of its kind in the same thread go well before.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fault {
    pub(super) call: &'static str,
    pub(super) error: &'static str,
    pub(super) number: u32,
    pub(super) lasts: Lasts,
}

/// How many calls fail.
#[derive(Clone, Copy, Debug)]
pub(super) enum Lasts {
    Once,
    ForEver,
}

/// Which calls of each kind are to fail.
#[derive(Clone, Copy)]
pub(super) enum Numbers {
    /// Every one.
    Every,
    /// The first, the third, the ninth and so on, of a full disk.
    Some,
}

impl Numbers {
    fn after(self, number: u32) -> u32 {
        match self {
            Self::Every => number + 1,
            Self::Some => number * 3,
        }
    }

    fn errors(self) -> &'static [&'static str] {
        match self {
            Self::Every => &ERRORS,
            Self::Some => &ERRORS[1..],
        }
    }
}

/// Lets each call fail in turn until it is no longer met, and counts the failures.
pub(super) fn each(numbers: Numbers, mut run: impl FnMut(Fault) -> Met) -> u32 {
    let mut count = 0;
    for call in CALLS {
        for error in numbers.errors() {
            let mut fault = Fault { call, error, number: 1, lasts: Lasts::Once };
            while run(fault) == Met::Yes {
                count += 1;
                fault.number = numbers.after(fault.number);
            }
        }
    }
    count
}

/// Whether the program came to the call.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Met {
    Yes,
    No,
}

/// `strace` with this fault in every call on a file of ours under these folders.
fn strace(fault: Fault, folders: &[&Path], log: &Path) -> Command {
    let Fault { call, error, number, lasts } = fault;
    let later = match lasts {
        Lasts::Once => "",
        Lasts::ForEver => "+",
    };
    let mut strace = Command::new("strace");
    strace.args(["-f", "-e", &format!("trace={call}")]);
    strace.args(["-e", &format!("inject={call}:error={error}:when={number}{later}")]);
    strace.arg("-o").arg(log);
    for path in folders.iter().flat_map(|folder| names_in(folder)) {
        strace.arg("-P").arg(path);
    }
    strace
}

/// The folder and every name that the program uses in it.
fn names_in(folder: &Path) -> Vec<PathBuf> {
    let mut names = vec![folder.to_owned(), folder.join("copies")];
    let copy = format!("copies/before-{}.sqlite", holewright_server::db::newest_schema());
    for place in [FILE_NAME, "holewright.sqlite.restored", "club.tar", "club.tar.sqlite", &copy] {
        for partial in ["", ".partial"] {
            for suffix in ["", "-journal", "-wal", "-shm"] {
                names.push(folder.join(format!("{place}{partial}{suffix}")));
            }
        }
    }
    names
}

/// The command with this fault.
pub(super) fn with(fault: Fault, command: &Command, folders: &[&Path], log: &Path) -> Command {
    let mut whole = strace(fault, folders, log);
    whole.arg(command.get_program()).args(command.get_args());
    for (name, value) in command.get_envs() {
        match value {
            Some(value) => whole.env(name, value),
            None => whole.env_remove(name),
        };
    }
    whole
}

/// Lets the call fail in a running process while this is done.
#[track_caller]
pub(super) fn into<T>(
    process: u32,
    fault: Fault,
    folder: &Path,
    log: &Path,
    meanwhile: impl FnOnce() -> T,
) -> (T, Met) {
    let mut strace = strace(fault, &[folder], log);
    strace.args(["-p", &process.to_string()]);
    let mut strace = Process::start(&strace, Stdio::piped());
    let mut said = String::new();
    let mut lines = BufReader::new(strace.stderr.take().unwrap());
    while !said.contains("attached") {
        assert!(lines.read_line(&mut said).unwrap() > 0, "strace (tests/run installs it): {said}");
    }
    std::thread::spawn(move || lines.lines().for_each(drop));
    let done = meanwhile();
    // It lets go of the process.
    kill_process(Pid::from_child(&strace), Signal::INT).unwrap();
    wait_until("the end of strace", || strace.try_wait().unwrap().is_some());
    (done, met(log))
}

/// Whether the log of `strace` tells of a call that was made to fail.
pub(super) fn met(log: &Path) -> Met {
    match fs::read_to_string(log).is_ok_and(|log| log.contains("(INJECTED)")) {
        true => Met::Yes,
        false => Met::No,
    }
}
