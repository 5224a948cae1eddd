//! What a test starts does not outlive it: not where it fails, and not where it is killed.

use std::panic::catch_unwind;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::process::{Process, wait_until};

/// Starts a shell that starts a program in turn, and gives both with their numbers.
fn start() -> (Process, [String; 2]) {
    let mut shell = Command::new("sh");
    shell.args(["-c", "sleep 1000 & echo $!; wait"]);
    let mut process = Process::start(&shell, Stdio::inherit());
    let mut said = std::io::BufReader::new(process.stdout.take().unwrap());
    let mut child = String::new();
    std::io::BufRead::read_line(&mut said, &mut child).unwrap();
    let numbers = [process.id().to_string(), child.trim().to_owned()];
    (process, numbers)
}

fn is_running(number: &str) -> bool {
    let state = std::fs::read_to_string(Path::new("/proc").join(number).join("stat"));
    // A program that ended and was not reaped yet is a zombie.
    state.is_ok_and(|state| !state.rsplit(')').next().unwrap().starts_with(" Z"))
}

#[test]
fn a_test_that_fails_leaves_nothing_running() {
    let numbers = std::sync::Mutex::new(Vec::new());
    let failed = catch_unwind(|| {
        let (_process, started) = start();
        assert!(started.iter().all(|number| is_running(number)));
        numbers.lock().unwrap().extend(started);
        panic!("a test fails");
    });
    assert!(failed.is_err());
    for number in numbers.lock().unwrap().iter() {
        wait_until("the end of what it started", || !is_running(number));
    }
}

/// The system tells the end of a thread and the end of its whole process alike.
#[test]
fn a_test_that_is_killed_leaves_no_server_running() {
    let thread = std::thread::spawn(|| {
        let process = Process::start(Command::new("sleep").arg("1000"), Stdio::inherit());
        let number = process.id().to_string();
        let name = Path::new("/proc").join(&number).join("comm");
        wait_until("its own name", || std::fs::read_to_string(&name).unwrap() == "sleep\n");
        std::mem::forget(process);
        number
    });
    let number = thread.join().unwrap();
    wait_until("the end of a program whose test is gone", || !is_running(&number));
}
