//! O10 and F26: what `backup` saves, and that a backup in a storm holds what was acknowledged.

use std::path::Path;
use std::time::{Duration, Instant};

use holewright_server::db::{FILE_NAME, newest_schema};

use super::commands::{done, names, refused, run};
use super::storm::beside;
use super::{notes, storm, stormed};
use crate::process::wait_until;
use crate::support::Folder;

/// The parts of an archive, as another tar program reads them.
fn untar(file: &Path, into: &Path) -> Vec<String> {
    std::fs::create_dir_all(into).unwrap();
    let listed = std::process::Command::new("tar")
        .args(["--extract", "--verbose", "--file"])
        .arg(file)
        .arg("--directory")
        .arg(into)
        .output()
        .unwrap();
    assert!(listed.status.success());
    String::from_utf8(listed.stdout).unwrap().lines().map(str::to_owned).collect()
}

#[test]
fn o10_the_archive_opens_anywhere_and_says_what_is_in_it() {
    let folder = Folder::new();
    let (data, file) = (folder.path().join("data"), folder.path().join("club.tar"));
    notes::fill(&data, "saved", 7, 50);
    let said = done(&run(&data, &["backup", file.to_str().unwrap()]));
    for word in [file.to_str().unwrap(), "7 notes", "0 members", &newest_schema().to_string()] {
        assert!(said.contains(word), "{word} in: {said}");
    }
    let noted = format!("{FILE_NAME}.last-backup");
    assert_eq!(names(&data), [FILE_NAME, &noted], "nothing else is left beside the database");

    let out = folder.path().join("out");
    assert_eq!(untar(&file, &out), ["manifest.json", FILE_NAME]);
    let manifest: serde_json::Value =
        serde_json::from_slice(&std::fs::read(out.join("manifest.json")).unwrap()).unwrap();
    assert_eq!(manifest["form"], 1);
    assert_eq!(manifest["program"], env!("CARGO_PKG_VERSION"));
    assert_eq!(manifest["schema"], newest_schema());
    assert_eq!((&manifest["members"], &manifest["notes"]), (&0.into(), &7.into()));
    let saved_at = manifest["saved_at"].as_str().unwrap();
    assert!(saved_at.starts_with("20") && saved_at.ends_with('Z'), "{saved_at}");
    let part = &manifest["parts"][0];
    assert_eq!(part["name"], FILE_NAME);
    assert_eq!(part["bytes"], std::fs::metadata(out.join(FILE_NAME)).unwrap().len());
    let sum = std::process::Command::new("sha256sum").arg(out.join(FILE_NAME)).output().unwrap();
    let sum = String::from_utf8(sum.stdout).unwrap();
    assert_eq!(part["sha256"].as_str().unwrap(), sum.split(' ').next().unwrap());
    assert_eq!(notes::read(&out), notes::read(&data));
}

#[test]
fn o10_a_file_that_is_there_stays_unless_it_is_to_be_replaced() {
    let folder = Folder::new();
    let (data, file) = (folder.path().join("data"), folder.path().join("club.tar"));
    let save = ["backup", file.to_str().unwrap()];
    notes::fill(&data, "first", 1, 50);
    std::fs::write(&file, "the only photograph of the old shed").unwrap();
    refused(&run(&data, &save), &[save[1], "--replace"]);
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "the only photograph of the old shed");
    done(&run(&data, &["backup", save[1], "--replace"]));
    done(&run(&data, &["verify", save[1]]));
    assert_eq!(names(folder.path()), ["club.tar", "data"]);
}

#[test]
fn o10_nothing_to_save_and_nowhere_to_save_it_are_said() {
    let folder = Folder::new();
    let (data, file) = (folder.path().join("data"), folder.path().join("club.tar"));
    let save = ["backup", file.to_str().unwrap()];
    refused(&run(&data, &save), &["no database", data.to_str().unwrap(), "--data-dir"]);
    assert_eq!(names(folder.path()), [""; 0], "no folder and no database was made");
    notes::fill(&data, "saved", 1, 50);
    let nowhere = folder.path().join("nowhere/club.tar");
    refused(&run(&data, &["backup", nowhere.to_str().unwrap()]), &[nowhere.to_str().unwrap()]);
}

#[cfg(unix)]
#[test]
fn o10_only_its_owner_may_read_an_archive() {
    use std::os::unix::fs::PermissionsExt;
    let folder = Folder::new();
    let (data, file) = (folder.path().join("data"), folder.path().join("club.tar"));
    notes::fill(&data, "saved", 1, 50);
    done(&run(&data, &["backup", file.to_str().unwrap()]));
    let mode = std::fs::metadata(&file).unwrap().permissions().mode();
    assert_eq!(mode & 0o777, 0o600, "it holds what passwords are checked with");
}

/// Saves so many times in a storm of writes, each time so long after the last, and puts each
/// archive back elsewhere.
fn save_in_a_storm(rounds: u32, every: Duration) {
    let _disk = storm::with_others();
    let folder = Folder::new();
    let data = folder.path().join("data");
    let writer = stormed::start(&data);
    let (storm, archives) = beside(writer.address, "stormy", stormed::write, |acknowledged| {
        let (mut archives, mut growing) = (Vec::new(), 0);
        for round in 0..rounds {
            std::thread::sleep(every);
            let file = folder.path().join(format!("round{round}.tar"));
            wait_until("more from the storm", || acknowledged().len() > growing);
            let before = acknowledged();
            growing = before.len();
            let since = Instant::now();
            done(&run(&data, &["backup", file.to_str().unwrap()]));
            archives.push((file, before, since.elapsed()));
        }
        archives
    });
    assert_eq!(storm.refused, 0, "a backup held up a writer");
    for (file, before, took) in archives {
        let elsewhere = folder.path().join("elsewhere");
        done(&run(&elsewhere, &["restore", file.to_str().unwrap()]));
        // Reading it checks its pages and references.
        let found = notes::read(&elsewhere);
        println!(
            "F26: {} acknowledged before, {} in it, {took:?}",
            before.len(),
            found.whole.len()
        );
        assert_eq!(before.difference(&found.whole).count(), 0, "{}", file.display());
        assert_eq!(found.half.len(), 0, "{:?}", found.half);
        std::fs::remove_dir_all(&elsewhere).unwrap();
    }
    assert_eq!(storm.acknowledged, notes::read(&data).whole);
}

#[test]
fn f26_a_backup_in_a_storm_holds_all_that_was_acknowledged() {
    save_in_a_storm(5, Duration::from_millis(400));
}

#[test]
#[ignore = "five minutes of a storm: tests/run --soak"]
fn f26_thirty_backups_in_a_storm_hold_all_that_was_acknowledged() {
    save_in_a_storm(30, Duration::from_secs(10));
}
