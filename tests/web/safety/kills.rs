//! F01 and F05: the process is killed in a storm of writes, and in the middle of a backup.

use std::process::Stdio;
use std::time::{Duration, Instant};

use super::commands::{done, names, program, run};
use super::storm::rounds;
use super::{notes, writer};
use crate::support::Folder;

fn kill_in_storms(count: u32) {
    let folder = Folder::new();
    let sum = rounds(&folder.path().join("data"), count, writer::start, writer::write);
    println!("F01: {sum:?}");
    assert_eq!((sum.rounds, sum.lost, sum.half), (count, 0, 0));
    assert!(sum.acknowledged > usize::try_from(count).unwrap(), "hardly a storm: {sum:?}");
}

#[test]
fn f01_nothing_acknowledged_is_lost_by_a_kill_in_a_storm() {
    writer::become_one_if_asked();
    kill_in_storms(20);
}

#[test]
#[ignore = "ten minutes of kills: tests/run --soak"]
fn f01_nothing_acknowledged_is_lost_by_five_hundred_kills() {
    kill_in_storms(500);
}

fn kill_in_backups(count: u32) {
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
    for round in 1..=count {
        let mut child = program()
            .args(save)
            .arg("--data-dir")
            .arg(&data)
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(whole * round / (count + 1));
        let _ = child.kill();
        child.wait().unwrap();
        if file.exists() {
            done(&run(&data, &["verify", file.to_str().unwrap()]));
            std::fs::remove_file(&file).unwrap();
        } else {
            cut += 1;
        }
    }
    println!("F05: a backup takes {whole:?}; {cut} of {count} kills came before its end");
    assert!(cut > count / 2, "{cut} of {count} cut short: {:?}", names(&copies));
    assert_eq!(notes::read(&data), before, "the database itself");

    // What the killed ones left is in nobody's way.
    done(&run(&data, &save));
    done(&run(&data, &["verify", file.to_str().unwrap()]));
    assert_eq!(names(&copies), ["club.tar"]);
    assert!(whole < Duration::from_secs(60), "{whole:?}");
}

#[test]
fn f05_a_killed_backup_leaves_no_file_under_its_name() {
    kill_in_backups(5);
}

#[test]
#[ignore = "fifty backups killed: tests/run --soak"]
fn f05_fifty_killed_backups_leave_no_file_under_their_name() {
    kill_in_backups(50);
}
