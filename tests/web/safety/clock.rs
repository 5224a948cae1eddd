//! F16: the machine's clock goes back an hour, forward ten years, and back again, under the running
//! program. `faketime` tells it another time.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::asked::{get, send};
use super::storm::{Victim, is_ready};
use super::{notes, stormed};
use crate::support::Folder;

const BACK_AN_HOUR: i64 = -3600;
const TEN_YEARS: i64 = 10 * 365 * 24 * 3600;

/// The program, with its clock so many seconds off.
struct Clocked {
    server: Victim,
    clock: PathBuf,
}

impl Clocked {
    fn start(folder: &Folder, off: i64) -> Self {
        let clock = folder.path().join("clock");
        set(&clock, off);
        let mut serve = stormed::serving(&folder.path().join("data"));
        serve
            .env("LD_PRELOAD", library())
            .env("FAKETIME_TIMESTAMP_FILE", &clock)
            .env("FAKETIME_NO_CACHE", "1")
            // Time that goes by is not faked, under the names of the older and the newer library.
            .env("DONT_FAKE_MONOTONIC", "1")
            .env("FAKETIME_DONT_FAKE_MONOTONIC", "1")
            .env("NO_FAKE_STAT", "1");
        Self { server: Victim::start(&serve), clock }
    }

    fn set(&self, off: i64) {
        set(&self.clock, off);
    }

    fn page(&self, member: u32, path: &str) -> String {
        send(self.server.address, &stormed::page(self.server.address, member, path)).unwrap()
    }

    fn post(&self, member: u32, path: &str, form: &str) -> String {
        send(self.server.address, &stormed::post(self.server.address, member, path, form)).unwrap()
    }

    fn writes(&self, member: u32, key: &str) -> bool {
        self.post(member, "/notes/new", &stormed::sent_in(key)).starts_with("HTTP/1.1 303 ")
    }

    /// The date of an answer says that the clock is the faked one.
    fn year(&self) -> i64 {
        let answer = self.page(1, "/notes.atom");
        let date = answer.split("\ndate: ").nth(1).unwrap().lines().next().unwrap();
        date.split(' ').nth(3).unwrap().parse().unwrap()
    }
}

fn set(clock: &Path, off: i64) {
    let new = clock.with_extension("new");
    fs::write(&new, format!("{off:+}\n")).unwrap();
    fs::rename(new, clock).unwrap();
}

fn library() -> PathBuf {
    let machines = fs::read_dir("/usr/lib").unwrap();
    machines
        .map(|machine| machine.unwrap().path().join("faketime/libfaketimeMT.so.1"))
        .find(|library| library.exists())
        .unwrap_or_else(|| panic!("faketime is needed (tests/run installs it)"))
}

#[test]
fn f16_a_clock_that_goes_wrong_loses_nothing_and_shuts_nobody_out() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    stormed::seed(&data);
    let club = Clocked::start(&folder, 0);
    let address = club.server.address;
    let year = club.year();
    let key = |number| notes::key("clock", number);
    assert!(club.writes(1, &key(0)));
    assert!(club.post(2, "/sign-out", "").starts_with("HTTP/1.1 303 "));
    // As many as one member may write at once.
    while club.writes(3, &notes::key("many", 1)) {}

    club.set(BACK_AN_HOUR);
    assert!(is_ready(address));
    assert!(club.writes(1, &key(1)), "a session ended because the clock went back");
    let mine = club.page(1, "/notes/mine");
    let place = |number| mine.find(&key(number)).unwrap();
    assert!(place(1) < place(0), "the newest note comes first, whatever the clock said");
    let me = club.page(2, "/me");
    assert!(me.starts_with("HTTP/1.1 303 "), "a session that ended stands once more: {me}");

    club.set(-BACK_AN_HOUR);
    let taken = (0..3).filter(|_| club.writes(3, &notes::key("many", 1))).count();
    assert!(taken <= 1, "the limits go by the wall clock: {taken}");

    club.set(TEN_YEARS);
    assert!((9..=10).contains(&(club.year() - year)), "the clock is not faked");
    for path in ["/", "/notes", "/threads/ba/5", "/healthz", "/readyz"] {
        assert_eq!(get(address, path), Some(200), "{path}");
    }
    for path in ["/me", "/notes/mine"] {
        let page = club.page(1, path);
        assert!(page.starts_with("HTTP/1.1 303 "), "a session of ten years ago stands: {page}");
    }
    let answer = club.post(1, "/notes/new", &stormed::sent_in(&key(2)));
    assert!(answer.contains(&key(2)) && !answer.starts_with("HTTP/1.1 5"), "{answer}");

    club.set(0);
    assert!(is_ready(address));
    assert!(club.writes(1, &key(2)), "nobody may write after the clock was put right");
    drop(club);
    let found = notes::read(&data);
    assert!((0..3).all(|number| found.whole.contains(&key(number))), "{found:?}");
    assert!(found.half.is_empty(), "{found:?}");
}

#[test]
fn f16_a_start_with_a_clock_far_ahead_forgets_nothing() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    let mut server = stormed::start(&data);
    let key = notes::key("kept", 1);
    assert!(stormed::write(server.address, &key));
    server.kill();
    let ahead = Clocked::start(&folder, TEN_YEARS);
    assert!(is_ready(ahead.server.address));
    // What is old is forgotten right after the start.
    std::thread::sleep(Duration::from_secs(1));
    drop(ahead);
    let found = notes::read(&data);
    assert!(found.whole.contains(&key), "the record of it was deleted as old: {found:?}");
    let server = stormed::start(&data);
    assert!(stormed::write(server.address, &notes::key("kept", 2)), "the sessions were deleted");
}
