//! F06, F08 and F09: no room for the database, found while it serves or as it starts.

use std::collections::BTreeSet;
use std::net::SocketAddr;
use std::time::{Duration, Instant};

use rustix::process::{Pid, Resource, Rlimit, prlimit};

use super::asked::get;
use super::commands::refused;
use super::small_disk::{SmallDisk, mounted};
use super::storm::{Victim, is_ready};
use super::{notes, stormed};
use crate::process;
use crate::support::Folder;

/// How soon it must write again once there is room.
const BACK: Duration = Duration::from_secs(2);

/// What was acknowledged, and how many notes were sent.
#[derive(Default)]
struct Sent {
    acknowledged: BTreeSet<String>,
    count: u64,
}

impl Sent {
    /// Sends one more; the answer, where it was refused.
    fn one(&mut self, address: SocketAddr) -> Result<(), String> {
        let key = notes::key("full", self.count);
        self.count += 1;
        let answer = stormed::answer(address, &key);
        if answer.starts_with("HTTP/1.1 303 ") {
            self.acknowledged.insert(key);
            return Ok(());
        }
        assert!(answer.contains(&key) && answer.contains("It cut clean."), "the draft: {answer}");
        Err(answer)
    }

    /// Sends until one is refused: the log may have room that it used before.
    fn until_refused(&mut self, address: SocketAddr) -> String {
        (0..5000).find_map(|_| self.one(address).err()).unwrap()
    }

    /// There is room again: it must be used in time.
    fn until_taken(&mut self, address: SocketAddr) {
        let since = Instant::now();
        while let Err(answer) = self.one(address) {
            assert!(since.elapsed() < BACK, "{answer}");
            std::thread::sleep(Duration::from_millis(50));
        }
        assert!(is_ready(address), "it is not ready again");
    }
}

fn reads_are_answered(address: SocketAddr) {
    for path in ["/", "/threads/ba/5", "/notes", "/healthz"] {
        assert_eq!(get(address, path), Some(200), "{path}");
    }
}

#[test]
fn f06_a_full_disk_refuses_notes_and_is_over_as_soon_as_there_is_room() {
    let disk = SmallDisk::start();
    let mut sent = Sent::default();
    sent.until_taken(disk.address);
    for _ in 0..3 {
        disk.fill();
        let answer = sent.until_refused(disk.address);
        assert!(answer.starts_with("HTTP/1.1 507 "), "{answer}");
        assert!(answer.contains("the server’s disk is full"), "{answer}");
        for _ in 0..3 {
            // Some find room in what the log has already; the next must be refused as the first was.
            let _ = sent.one(disk.address);
            reads_are_answered(disk.address);
        }
        sent.until_refused(disk.address);
        let since = Instant::now();
        while is_ready(disk.address) {
            assert!(since.elapsed() < BACK, "it says that it is ready");
        }
        disk.empty();
        sent.until_taken(disk.address);
    }
    let found = notes::read(&disk.copied());
    assert_eq!((found.whole, found.half), (sent.acknowledged, BTreeSet::new()));
}

#[test]
fn f08_a_limit_on_the_size_of_files_is_as_a_full_disk() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    stormed::seed(&data);
    let victim = Victim::start(&stormed::serving(&data));
    let limit = |most| {
        let process = Pid::from_raw(i32::try_from(victim.id()).unwrap());
        prlimit(process, Resource::Fsize, Rlimit { current: most, maximum: None }).unwrap();
    };
    let mut sent = Sent::default();
    sent.until_taken(victim.address);
    for _ in 0..3 {
        let log = data.join("holewright.sqlite-wal");
        limit(Some(std::fs::metadata(log).unwrap().len()));
        let answer = sent.until_refused(victim.address);
        assert!(answer.starts_with("HTTP/1.1 503 "), "{answer}");
        assert!(answer.contains("could not be kept just now"), "{answer}");
        reads_are_answered(victim.address);
        limit(None);
        sent.until_taken(victim.address);
    }
    let found = notes::read(&data);
    assert_eq!((found.whole, found.half), (sent.acknowledged, BTreeSet::new()));
}

#[test]
fn f09_a_disk_that_is_full_at_the_start_is_one_clear_line() {
    let folder = Folder::new();
    let (data, seed) = (folder.path().join("data"), folder.path().join("seed"));
    std::fs::create_dir(&data).unwrap();
    stormed::seed(&seed);
    let fill = r#"! cat /dev/zero > "$data/ballast" 2> /dev/null"#;
    let said = process::run(&mounted(&data, &seed, fill));
    refused(&said, &[data.to_str().unwrap(), "no room"]);
}
