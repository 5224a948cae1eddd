//! F01, F04 and F05: the process is killed in a storm of writes, in an upgrade, in a backup.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use holewright_server::db::{FILE_NAME, newest_schema};

use super::asked::get;
use super::commands::{done, names, program, run};
use super::storm::{Victim, rounds};
use super::{notes, storm, stormed, upgrades, writer};
use crate::process::Process;
use crate::support::Folder;

/// The longest until one that was killed was ready again.
fn kill_in_storms(count: u32) -> Duration {
    let _disk = storm::with_others();
    let (mut acknowledged, mut slowest) = (0, Duration::ZERO);
    // A new folder now and then: else most of the time goes into reading what was written long ago.
    for _ in 0..count / 20 {
        let folder = Folder::new();
        let sum = rounds(&folder.path().join("data"), 20, stormed::start, stormed::write);
        assert_eq!((sum.rounds, sum.lost, sum.half), (20, 0, 0));
        acknowledged += sum.acknowledged;
        slowest = slowest.max(sum.slowest);
    }
    println!(
        "F01: {count} kills, {acknowledged} notes acknowledged, ready after at most {slowest:?}"
    );
    assert!(acknowledged > usize::try_from(count).unwrap(), "hardly a storm: {acknowledged}");
    slowest
}

#[test]
fn f01_nothing_acknowledged_is_lost_by_a_kill_in_a_storm() {
    writer::become_one_if_asked();
    kill_in_storms(20);
}

#[test]
#[ignore = "ten minutes of kills: tests/run --soak"]
fn f01_nothing_acknowledged_is_lost_by_five_hundred_kills() {
    let slowest = kill_in_storms(500);
    assert!(slowest <= Duration::from_secs(2), "ready after {slowest:?}");
}

/// The time that a backup takes.
fn kill_in_backups(count: u32) -> Duration {
    let _disk = storm::with_others();
    let folder = Folder::new();
    let data = folder.path().join("data");
    notes::fill(&data, "kept", 1500, 4000);
    let before = notes::read(&data);
    let copies = folder.path().join("copies");
    std::fs::create_dir(&copies).unwrap();
    let file = copies.join("club.tar");
    let save = ["backup", file.to_str().unwrap()];
    // Twice: the first finds nothing in the system's memory and takes longer.
    let [_, whole] = [(); 2].map(|()| {
        let since = Instant::now();
        done(&run(&data, &save));
        std::fs::remove_file(&file).unwrap();
        since.elapsed()
    });

    let mut cut = 0;
    let mut moment = Moment(whole / 3);
    for _ in 0..count {
        let process =
            Process::start(program().args(save).arg("--data-dir").arg(&data), Stdio::null());
        std::thread::sleep(moment.0);
        drop(process);
        let is_there = file.exists();
        if is_there {
            done(&run(&data, &["verify", file.to_str().unwrap()]));
            std::fs::remove_file(&file).unwrap();
        }
        cut += u32::from(!is_there);
        moment.came(!is_there);
    }
    println!("F05: a backup takes {whole:?}; {cut} of {count} kills came before its end");
    assert!(cut > count / 5, "nearly every kill came too late");
    assert_eq!(notes::read(&data), before, "the database itself");

    // What the killed ones left is in nobody's way.
    done(&run(&data, &save));
    done(&run(&data, &["verify", file.to_str().unwrap()]));
    assert_eq!(names(&copies), ["club.tar"]);
    whole
}

#[test]
fn f05_a_killed_backup_leaves_no_file_under_its_name() {
    kill_in_backups(5);
}

#[test]
#[ignore = "fifty backups killed: tests/run --soak"]
fn f05_fifty_killed_backups_leave_no_file_under_their_name() {
    let whole = kill_in_backups(50);
    assert!(whole < Duration::from_secs(60), "{whole:?}");
}

/// When to kill: later after a kill that came early, earlier after one that came too late. So the
/// kills gather where the work ends, however busy the machine is.
struct Moment(Duration);

impl Moment {
    fn came(&mut self, early: bool) {
        self.0 = if early { self.0 * 5 / 4 } else { self.0 * 3 / 5 };
    }
}

/// Kills the program again and again while it brings an old database up to date.
fn kill_in_upgrades(count: u32) {
    let _disk = storm::with_others();
    let folder = Folder::new();
    // Twice, as above.
    let [_, (whole, old, new)] = ["first", "second"].map(|name| {
        let data = folder.path().join(name);
        upgrades::released(&data, upgrades::RELEASED[0].1);
        let old = notes::schema(&data.join(FILE_NAME));
        let since = Instant::now();
        let server = Victim::start(&serving(&data));
        let whole = since.elapsed();
        drop(server);
        (whole, old, notes::schema(&data.join(FILE_NAME)))
    });
    let mut cut = 0;
    // The schema is the first thing a start looks at.
    let mut moment = Moment(whole / 6);
    for round in 1..=count {
        let data = folder.path().join(format!("round{round}"));
        upgrades::released(&data, upgrades::RELEASED[0].1);
        let process = Process::start(&serving(&data), Stdio::null());
        std::thread::sleep(moment.0);
        drop(process);
        let left = notes::schema(&data.join(FILE_NAME));
        let copy = data.join(format!("copies/before-{}.sqlite", newest_schema()));
        cut += u32::from(left != new);
        moment.came(left != new);
        if left != old {
            assert_eq!(notes::schema(&copy), old, "round {round}: changed without a copy");
        }
        // Each step stands whole or not at all, so the next start goes on from there.
        drop(serve(&data));
        assert_eq!(notes::schema(&data.join(FILE_NAME)), new, "round {round}");
        assert!(notes::read(&data).half.is_empty());
        done(&run(&data, &["verify", copy.to_str().unwrap()]));
        std::fs::remove_dir_all(&data).unwrap();
    }
    println!(
        "F04: a start with an upgrade takes {whole:?}; {cut} of {count} kills came before its end"
    );
    assert!(cut > count / 5, "nearly every kill came too late");
}

fn serving(data: &Path) -> Command {
    let mut serve = program();
    serve.args(["--listen", "127.0.0.1:0", "--data-dir"]).arg(data);
    serve
}

fn serve(data: &Path) -> Victim {
    let server = Victim::start(&serving(data));
    assert_eq!(get(server.address, "/readyz"), Some(200));
    server
}

#[test]
fn f04_a_killed_upgrade_is_finished_at_the_next_start() {
    kill_in_upgrades(10);
}

#[test]
#[ignore = "fifty upgrades killed: tests/run --soak"]
fn f04_fifty_killed_upgrades_are_finished_at_the_next_start() {
    kill_in_upgrades(50);
}
