//! A backup night after night, by a line in a crontab: its name, how many are kept, and on whose word.

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
use std::path::Path;
use std::process::Output;

use holewright_server::backup::manifest::utc;
use holewright_server::rules::clock::Clock;

use super::commands::{done, names, program, refused, run};
use super::notes;
use crate::guards::binary;

use crate::process::{self, Process, wait_until};
use crate::support::{Folder, free_address};

/// Today, as the name of a backup has it; the test is begun anew if midnight passes.
fn today() -> String {
    utc(Clock::System.now())[..10].to_owned()
}

/// Runs it in this folder, as a crontab does after `cd`.
fn run_in(folder: &Path, data: &Path, arguments: &[&str]) -> Output {
    let mut program = program();
    program.args(arguments).arg("--data-dir").arg(data).current_dir(folder);
    process::run(&program)
}

fn club(folder: &Folder) -> (std::path::PathBuf, std::path::PathBuf) {
    let (data, kept) = (folder.path().join("data"), folder.path().join("kept"));
    notes::fill(&data, "saved", 3, 50);
    fs::create_dir(&kept).unwrap();
    (data, kept)
}

#[test]
fn a_backup_without_a_name_has_the_date_for_one_and_never_meets_the_last() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    let day = today();
    done(&run_in(&kept, &data, &["backup"]));
    done(&run_in(&kept, &data, &["backup"]));
    // The same in a folder that is named.
    done(&run(&data, &["backup", kept.to_str().unwrap()]));
    let expected = ["-2.tar", "-3.tar", ".tar"].map(|end| format!("holewright-{day}{end}"));
    assert_eq!(names(&kept), expected);
    for name in expected {
        done(&run(&data, &["verify", kept.join(name).to_str().unwrap()]));
    }
}

#[test]
fn the_newest_are_kept_and_nothing_goes_that_it_did_not_make() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    let day = today();
    let nightly = ["backup", "--keep", "3"];
    done(&run_in(&kept, &data, &nightly));
    let first = kept.join(format!("holewright-{day}.tar"));
    // Earlier nights, as they were left.
    for day in ["2026-01-30", "2026-01-31", "2026-02-01"] {
        fs::copy(&first, kept.join(format!("holewright-{day}.tar"))).unwrap();
    }
    fs::rename(kept.join("holewright-2026-02-01.tar"), kept.join("holewright-2026-01-31-2.tar"))
        .unwrap();
    // What a person saved under such a name, or put there, stays: so does what only looks like one.
    done(&run(&data, &["backup", kept.join("holewright-2025-01-01.tar").to_str().unwrap()]));
    done(&run_in(&kept, &data, &["backup"]));
    fs::write(kept.join("holewright-2025-01-02.tar"), "a letter").unwrap();
    symlink(&first, kept.join("holewright-2025-01-03.tar")).unwrap();
    fs::copy(&first, kept.join("holewright-2025-01-04.tar.old")).unwrap();
    fs::copy(&first, kept.join("before-the-move.tar")).unwrap();
    fs::create_dir(kept.join("holewright-2025-01-05.tar")).unwrap();
    let said = done(&run_in(&kept, &data, &nightly));
    assert!(said.contains("deleted") && said.contains("holewright-2026-01-30.tar"), "{said}");
    let mut expected: Vec<String> = [
        "before-the-move.tar",
        "holewright-2025-01-01.tar",
        "holewright-2025-01-02.tar",
        "holewright-2025-01-03.tar",
        "holewright-2025-01-04.tar.old",
        "holewright-2025-01-05.tar",
        "holewright-2026-01-31-2.tar",
    ]
    .map(str::to_owned)
    .into();
    expected.extend(["-2.tar", "-3.tar", ".tar"].map(|end| format!("holewright-{day}{end}")));
    assert_eq!(names(&kept), expected);
    // To count it wants the names it gives itself.
    let named = kept.join("club.tar");
    let with_name = ["backup", "--keep", "3", named.to_str().unwrap()];
    refused(&run(&data, &with_name), &["--keep", "folder"]);
    assert!(!named.exists());
    assert_eq!(run(&data, &["backup", "--keep", "0"]).status.code(), Some(2));
}

#[test]
fn a_backup_that_fails_deletes_none() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    for _ in 0..2 {
        done(&run_in(&kept, &data, &["backup", "--keep", "2"]));
    }
    let before = names(&kept);
    fs::rename(&data, folder.path().join("gone")).unwrap();
    refused(&run_in(&kept, &data, &["backup", "--keep", "1"]), &["no database"]);
    assert_eq!(names(&kept), before);
}

#[test]
fn a_backup_goes_to_standard_output() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    let before = names(&data);
    let output = run_in(&kept, &data, &["backup", "-"]);
    assert_eq!((output.status.code(), output.stderr.as_slice()), (Some(0), b"".as_slice()));
    assert_eq!(names(&kept), [""; 0]);
    let left: Vec<_> =
        names(&data).into_iter().filter(|name| name != "holewright.sqlite.last-backup").collect();
    assert_eq!(left, before, "nothing is left of it in the data folder");
    let file = folder.path().join("piped.tar");
    fs::write(&file, output.stdout).unwrap();
    done(&run(&data, &["verify", file.to_str().unwrap()]));
    refused(&run(&data, &["backup", "-", "--keep", "2"]), &["--keep", "folder"]);
    fs::rename(&data, folder.path().join("gone")).unwrap();
    refused(&run(&data, &["backup", "-"]), &["no database"]);
}

#[test]
fn what_somebody_else_put_in_the_way_is_neither_followed_nor_trusted() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    let file = kept.join("club.tar");
    let save = ["backup", file.to_str().unwrap()];
    let treasure = folder.path().join("treasure");
    fs::write(&treasure, "kept").unwrap();
    for end in [".partial", ".sqlite.partial"] {
        let way = kept.join(format!("club.tar{end}"));
        let said = [way.to_str().unwrap(), "in the way", "delete it"];
        symlink(&treasure, &way).unwrap();
        refused(&run(&data, &save), &said);
        fs::remove_file(&way).unwrap();
        symlink(folder.path().join("nowhere"), &way).unwrap();
        refused(&run(&data, &save), &said);
        fs::remove_file(&way).unwrap();
        fs::hard_link(&treasure, &way).unwrap();
        refused(&run(&data, &save), &said);
        fs::remove_file(&way).unwrap();
        fs::create_dir(&way).unwrap();
        refused(&run(&data, &save), &said);
        fs::remove_dir(&way).unwrap();
        // Open to all: somebody may hold it open and read what is written.
        fs::write(&way, "").unwrap();
        fs::set_permissions(&way, Permissions::from_mode(0o666)).unwrap();
        refused(&run(&data, &save), &said);
        fs::remove_file(&way).unwrap();
        // What a killed program of our own left is no obstacle, and is not written into.
        fs::write(&way, "half").unwrap();
        fs::set_permissions(&way, Permissions::from_mode(0o600)).unwrap();
        let left = fs::File::open(&way).unwrap();
        done(&run(&data, &save));
        assert_eq!(left.metadata().unwrap().len(), 4, "it was made anew");
        assert_eq!(fs::metadata(&file).unwrap().mode() & 0o777, 0o600);
        fs::remove_file(&file).unwrap();
    }
    assert_eq!(fs::read_to_string(&treasure).unwrap(), "kept");
    assert!(!folder.path().join("nowhere").exists());
    assert_eq!(names(&kept), [""; 0]);
}

/// The age that the metrics show.
fn age(metrics: std::net::SocketAddr) -> f64 {
    let shown = binary::get(metrics, "/metrics", "");
    let line = shown.lines().find(|line| line.starts_with("holewright_last_backup_age_seconds "));
    let line = line.unwrap_or_else(|| panic!("{shown}"));
    line.rsplit(' ').next().unwrap().parse().unwrap()
}

#[test]
fn the_metrics_show_how_old_the_last_backup_is() {
    let folder = Folder::new();
    let (data, kept) = club(&folder);
    let (address, metrics) = (free_address(), free_address());
    let mut serve = program();
    serve.args(["--listen", &address.to_string(), "--metrics-listen", &metrics.to_string()]);
    serve.arg("--data-dir").arg(&data);
    let _server = Process::start(&serve, std::process::Stdio::null());
    wait_until("readiness", || binary::try_status(address, "/readyz") == 200);
    assert!(age(metrics).is_infinite(), "there is none: an alarm on its age rings");
    done(&run_in(&kept, &data, &["backup", "--keep", "2"]));
    let young = age(metrics);
    assert!((0.0..600.0).contains(&young), "{young}");
    let long_ago = Clock::System.now() - 100_000;
    fs::write(data.join("holewright.sqlite.last-backup"), format!("{}\n", utc(long_ago))).unwrap();
    let old = age(metrics);
    assert!((100_000.0..100_600.0).contains(&old), "{old}");
    fs::write(data.join("holewright.sqlite.last-backup"), "\u{1b}[2J").unwrap();
    assert!(age(metrics).is_infinite());
    // One that failed is none.
    refused(&run(&data, &["backup", "/nowhere/club.tar"]), &["/nowhere"]);
    assert!(age(metrics).is_infinite());
}
