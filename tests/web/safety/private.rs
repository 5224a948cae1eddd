//! The data is its owner's alone, whatever the umask and whatever it was before.

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt};
use std::path::{Path, PathBuf};
use std::process::Command;

use holewright_server::db::FILE_NAME;

use super::commands::{done, run};
use super::storm::Victim;
use super::{notes, stormed, upgrades};
use crate::support::Folder;

/// What somebody other than the owner may do anything with.
fn open_to_others(folder: &Path) -> Vec<String> {
    let mut open = Vec::new();
    for path in all_in(folder) {
        let mode = fs::symlink_metadata(&path).unwrap().mode();
        if mode & 0o077 != 0 {
            open.push(format!("{} {:o}", path.display(), mode & 0o777));
        }
    }
    open
}

/// The folder, and all that is in it however deep.
fn all_in(folder: &Path) -> Vec<PathBuf> {
    let mut all = vec![folder.to_owned()];
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.extend(all_in(&path));
        } else {
            all.push(path);
        }
    }
    all
}

/// Starts the program under this umask.
fn start(data: &Path, umask: &str) -> Victim {
    let serve = stormed::serving(data);
    let mut shell = Command::new("sh");
    shell.args(["-c", &format!(r#"umask {umask}; exec "$0" "$@""#)]);
    shell.arg(serve.get_program()).args(serve.get_args());
    Victim::start(&shell)
}

#[test]
fn the_data_is_its_owners_alone_under_any_umask() {
    for umask in ["000", "022", "077"] {
        let folder = Folder::new();
        let data = folder.path().join("club/data");
        let _server = start(&data, umask);
        assert!(data.join(format!("{FILE_NAME}-wal")).exists());
        assert_eq!(open_to_others(&data), [""; 0], "umask {umask}");
    }
}

#[test]
fn data_that_was_open_to_others_is_closed_to_them_at_the_start() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    upgrades::released(&data, upgrades::RELEASED[0].1);
    // A copy, a database kept aside, a log: each as an earlier program left it.
    stormed::seed(&data);
    let saved = folder.path().join("club.tar");
    done(&run(&data, &["backup", saved.to_str().unwrap()]));
    done(&run(&data, &["restore", saved.to_str().unwrap()]));
    start(&data, "022").kill();
    let all = all_in(&data);
    assert!(all.len() >= 7, "folder, database, log, index, kept aside, copies, copy: {all:?}");
    for path in &all {
        let mode = if path.is_dir() { 0o755 } else { 0o644 };
        fs::set_permissions(path, Permissions::from_mode(mode)).unwrap();
    }
    let _server = start(&data, "022");
    assert_eq!(open_to_others(&data), [""; 0]);
}

#[test]
fn a_restored_database_is_its_owners_alone() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    notes::fill(&data, "kept", 3, 50);
    let saved = folder.path().join("club.tar");
    done(&run(&data, &["backup", saved.to_str().unwrap()]));
    fs::set_permissions(data.join(FILE_NAME), Permissions::from_mode(0o644)).unwrap();
    done(&run(&data, &["restore", saved.to_str().unwrap()]));
    let mode = fs::metadata(data.join(FILE_NAME)).unwrap().mode();
    assert_eq!(mode & 0o777, 0o600, "{mode:o}");
}
