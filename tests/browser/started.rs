//! The programs a test starts: the club's server and the browser's driver.

use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};

use crate::process::{Process, run};

/// A folder that goes when the test ends.
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let name = format!("holewright-browser-{}-{count}", std::process::id());
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir_all(&folder).unwrap();
        Self(folder)
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

/// Starts a program and reads its lines until one says where it listens; none where it ends first.
fn start<T>(command: &Command, told: impl Fn(&str) -> Option<T>) -> Option<(Process, T)> {
    let mut process = Process::start(command, Stdio::null());
    let mut lines = BufReader::new(process.stdout.take().unwrap()).lines();
    let found = lines.by_ref().map_while(Result::ok).find_map(|line| told(&line));
    // The rest is read and dropped, or a full pipe would stop the program.
    std::thread::spawn(move || lines.for_each(drop));
    found.map(|found| (process, found))
}

/// The binary, serving on a port of its own with a data folder of its own.
pub(crate) struct Site {
    _process: Process,
    /// `http://127.0.0.1:40123`, without a final slash.
    pub(crate) base: String,
    folder: Folder,
}

impl Site {
    /// A path of this site that the command line gives: a link to join with.
    pub(crate) fn link(&self, arguments: &[&str]) -> String {
        let mut command = Command::new(env!("CARGO_BIN_EXE_holewright"));
        command.args(["--base-url", &self.base, "--data-dir"]).arg(self.folder.path());
        let output = run(command.args(arguments));
        let link = String::from_utf8(output.stdout).unwrap();
        link.trim().strip_prefix(&self.base).unwrap_or_else(|| panic!("{link}")).to_owned()
    }

    pub(crate) fn start() -> Self {
        Self::start_with(&[])
    }

    /// With these settings besides the usual ones.
    pub(crate) fn start_with(settings: &[&str]) -> Self {
        Self::serve(Folder::new(), settings)
    }

    /// On the demonstration, without a second factor; and the password of all its members.
    pub(crate) fn start_on_the_demonstration() -> (Self, String) {
        let folder = Folder::new();
        let mut command = Command::new(env!("CARGO_BIN_EXE_holewright"));
        let output = run(command.args(["demo", "--data-dir"]).arg(folder.path()));
        let told = String::from_utf8(output.stdout).unwrap();
        let password =
            told.split("this once:").nth(1).and_then(|rest| rest.split_whitespace().next());
        let password = password.unwrap_or_else(|| panic!("no password in {told}")).to_owned();
        (Self::serve(folder, &["--second-factor", "relaxed"]), password)
    }

    fn serve(folder: Folder, settings: &[&str]) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_holewright"));
        command.args(["--listen", "127.0.0.1:0", "--data-dir"]).arg(folder.path()).args(settings);
        let (process, base) = start(&command, |line| {
            let rest = line.split("http://").nth(1)?;
            Some(format!("http://{}", rest.split('"').next()?))
        })
        .unwrap_or_else(|| panic!("the program does not say where it listens"));
        Self { _process: process, base, folder }
    }
}

/// chromedriver, on a port of its own.
pub(crate) struct Driver {
    _process: Process,
    pub(crate) address: SocketAddr,
}

impl Driver {
    /// It takes a free port of one family of addresses and then asks for the same of the other, where
    /// somebody may have it already; then it ends, and another port is tried.
    pub(crate) fn start() -> Self {
        let driver = || {
            start(Command::new("chromedriver").arg("--port=0"), |line| {
                let port = line.split("started successfully on port ").nth(1)?;
                port.trim_end_matches('.').parse::<u16>().ok()
            })
        };
        let started = (0..5).find_map(|_| driver());
        let (process, port) = started
            .unwrap_or_else(|| panic!("chromedriver does not say where it listens; see tests/run"));
        Self { _process: process, address: (Ipv4Addr::LOCALHOST, port).into() }
    }
}
