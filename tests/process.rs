//! A program that a test starts, and its end, which comes with the test's own, however that goes.

use std::io::Read;
use std::ops::{Deref, DerefMut};
use std::os::unix::process::CommandExt;
use std::process::{Child, Command, ExitStatus, Output, Stdio};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process_group};

/// No test waits longer for anything: a hang, not a speed. What works takes a small part of it on the
/// busiest machine, so this tells nothing slow from anything quick.
pub(crate) const HANG: Duration = Duration::from_secs(120);

/// Waits for what comes by itself.
#[track_caller]
pub(crate) fn wait_until(what: &str, mut is_so: impl FnMut() -> bool) {
    let since = Instant::now();
    while !is_so() {
        assert!(since.elapsed() < HANG, "{what}: it never came");
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// A started program with all that it starts in turn, in a group of its own. It is killed and reaped
/// when this is dropped, so also when a test fails.
pub(crate) struct Process(Child);

impl Process {
    /// Starts it, with pipes for what it reads and says. The system kills it when the thread that
    /// starts it ends, so also when the test's own process is killed: a test starts it on its own
    /// thread.
    #[track_caller]
    pub(crate) fn start(command: &Command, errors: Stdio) -> Self {
        let mut tied = Command::new("setpriv");
        tied.args(["--pdeathsig", "KILL"]).arg(command.get_program()).args(command.get_args());
        for (name, value) in command.get_envs() {
            match value {
                Some(value) => tied.env(name, value),
                None => tied.env_remove(name),
            };
        }
        if let Some(folder) = command.get_current_dir() {
            tied.current_dir(folder);
        }
        tied.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(errors).process_group(0);
        match tied.spawn() {
            Ok(child) => Self(child),
            Err(error) => panic!("setpriv: {error}; see tests/run"),
        }
    }

    /// Waits until it has ended by itself.
    #[track_caller]
    pub(crate) fn ends(&mut self) -> ExitStatus {
        let mut status = None;
        wait_until("the end of a program", || {
            status = self.0.try_wait().unwrap();
            status.is_some()
        });
        status.unwrap()
    }
}

impl Deref for Process {
    type Target = Child;

    fn deref(&self) -> &Child {
        &self.0
    }
}

impl DerefMut for Process {
    fn deref_mut(&mut self) -> &mut Child {
        &mut self.0
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // Once it is reaped, its number may be another's.
        if let Ok(None) = self.0.try_wait() {
            let _ = kill_process_group(Pid::from_child(&self.0), Signal::KILL);
        }
        let _ = self.0.wait();
    }
}

/// What a program says that ends by itself.
#[track_caller]
pub(crate) fn run(command: &Command) -> Output {
    let mut process = Process::start(command, Stdio::piped());
    drop(process.stdin.take());
    let said = read(process.stdout.take().unwrap());
    let complained = read(process.stderr.take().unwrap());
    let status = process.ends();
    Output { status, stdout: said.join().unwrap(), stderr: complained.join().unwrap() }
}

/// Reads all of it meanwhile: a full pipe would hold the program up.
fn read(mut pipe: impl Read + Send + 'static) -> JoinHandle<Vec<u8>> {
    std::thread::spawn(move || {
        let mut bytes = Vec::new();
        pipe.read_to_end(&mut bytes).unwrap();
        bytes
    })
}
