//! The real binary as a process of its own: what it logs, opens and uses.

use std::io::{BufRead, BufReader};
use std::net::SocketAddr;
use std::path::PathBuf;
use std::process::{ChildStdout, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;
use std::time::Instant;

use rustix::process::{Pid, Resource, Rlimit, Signal, kill_process, prlimit};

use crate::process::Process;
use crate::support::Folder;

/// The binary, serving on a port of its own.
pub(crate) struct Running {
    pub(crate) address: SocketAddr,
    pub(crate) folder: Folder,
    process: Process,
    log: Arc<Mutex<String>>,
    reader: Option<JoinHandle<()>>,
}

impl Running {
    pub(crate) fn start() -> Self {
        Self::under("true")
    }

    /// Started by a shell after this command, such as `ulimit -n 256`.
    pub(crate) fn under(command: &str) -> Self {
        Self::by(Folder::new(), &["sh", "-c", &format!("{command}; exec \"$0\" \"$@\"")])
    }

    /// Started by this program, which is given ours with its arguments and must become it.
    pub(crate) fn by(folder: Folder, starter: &[&str]) -> Self {
        let mut command = Command::new(starter[0]);
        command
            .args(&starter[1..])
            .arg(env!("CARGO_BIN_EXE_holewright"))
            .args(["--listen", "127.0.0.1:0"])
            // Every crowd of a test comes from this address.
            .args(["--trusted-proxy", "127.0.0.1"])
            .arg("--data-dir")
            .arg(folder.path().join("data"));
        let mut process = Process::start(&command, Stdio::inherit());
        let mut lines = BufReader::new(process.stdout.take().unwrap());
        let mut first = String::new();
        lines.read_line(&mut first).unwrap();
        let address = first.split("http://").nth(1).unwrap().split('"').next().unwrap();
        let address = address.parse().unwrap();
        let log = Arc::new(Mutex::new(first));
        let reader = Some(keep(lines, Arc::clone(&log)));
        Self { address, folder, process, log, reader }
    }

    pub(crate) fn signal(&self, signal: Signal) {
        kill_process(Pid::from_child(&self.process), signal).unwrap();
    }

    /// Its exit code, once it has ended.
    #[track_caller]
    pub(crate) fn ends(&mut self) -> Option<i32> {
        self.process.ends().code()
    }

    /// All it has logged so far; all of it once it has ended.
    pub(crate) fn log(&mut self) -> String {
        if self.process.try_wait().unwrap().is_some()
            && let Some(reader) = self.reader.take()
        {
            reader.join().unwrap();
        }
        self.log_so_far()
    }

    pub(crate) fn log_so_far(&self) -> String {
        self.log.lock().unwrap().clone()
    }

    /// The names in its data folder.
    pub(crate) fn data(&self) -> Vec<String> {
        std::fs::read_dir(self.folder.path().join("data"))
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect()
    }

    /// How many files and sockets it has open.
    pub(crate) fn descriptors(&self) -> usize {
        std::fs::read_dir(self.proc("fd")).unwrap().count()
    }

    /// From now on it may have no more open than this.
    pub(crate) fn limit_descriptors(&self, most: usize) {
        let most = Some(u64::try_from(most).unwrap());
        let limit = Rlimit { current: most, maximum: most };
        prlimit(Some(Pid::from_child(&self.process)), Resource::Nofile, limit).unwrap();
    }

    /// Soft and hard limit on open files.
    pub(crate) fn descriptor_limits(&self) -> (String, String) {
        let limits = std::fs::read_to_string(self.proc("limits")).unwrap();
        let line = limits.lines().find(|line| line.starts_with("Max open files")).unwrap();
        let words: Vec<_> = line.split_whitespace().collect();
        (words[3].to_owned(), words[4].to_owned())
    }

    /// The share of one core it uses while this runs.
    pub(crate) fn load_during(&self, meanwhile: impl FnOnce()) -> f64 {
        let (before, since) = (self.ticks(), Instant::now());
        meanwhile();
        // Linux counts a hundred ticks a second, whatever its own timer does.
        f64::from(self.ticks() - before) / 100.0 / since.elapsed().as_secs_f64()
    }

    /// Lets the peak start anew and says what is resident now, in kilobytes.
    pub(crate) fn forget_peak_memory(&self) -> u64 {
        std::fs::write(self.proc("clear_refs"), "5").unwrap();
        self.peak_memory()
    }

    /// The most memory it has had resident, in kilobytes.
    pub(crate) fn peak_memory(&self) -> u64 {
        let status = std::fs::read_to_string(self.proc("status")).unwrap();
        let line = status.lines().find(|line| line.starts_with("VmHWM:")).unwrap();
        line.split_whitespace().nth(1).unwrap().parse().unwrap()
    }

    fn ticks(&self) -> u32 {
        let stat = std::fs::read_to_string(self.proc("stat")).unwrap();
        let fields: Vec<_> = stat.rsplit(')').next().unwrap().split_whitespace().collect();
        // Fields 14 and 15 of the line: user and system time; the name and what is before are cut.
        fields[11].parse::<u32>().unwrap() + fields[12].parse::<u32>().unwrap()
    }

    fn proc(&self, name: &str) -> PathBuf {
        PathBuf::from(format!("/proc/{}/{name}", self.process.id()))
    }
}

/// Reads on, so that the pipe never fills and the server never waits for it.
fn keep(lines: BufReader<ChildStdout>, log: Arc<Mutex<String>>) -> JoinHandle<()> {
    std::thread::spawn(move || {
        for line in lines.lines() {
            let mut log = log.lock().unwrap();
            log.push_str(&line.unwrap());
            log.push('\n');
        }
    })
}
