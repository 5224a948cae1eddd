//! The program on a small disk of its own, which a test can fill and empty. The disk is mounted where
//! this process alone sees it, so it goes with the process.

use std::fs::{self, File};
use std::io::{ErrorKind, Write};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::process::Command;

use super::storm::Victim;
use super::stormed;
use crate::support::Folder;

/// Mounts the disk over the data folder with what stands in it, then becomes the program.
const MOUNT: &str = r#"
data="$1" seed="$2" before="$3"
shift 3
mount -t tmpfs -o size=8m,mode=700 tmpfs "$data" || exit 9
cp "$seed"/* "$data" && eval "$before" && exec "$@"
"#;

/// The program that this mounts for and becomes; another mount namespace needs the rights of root.
pub(super) fn mounted(data: &Path, seed: &Path, before: &str) -> Command {
    let serve = stormed::serving(data);
    let mut command = Command::new("unshare");
    command.args(["--mount", "sh", "-c", MOUNT, "mount"]).args([data, seed]).arg(before);
    command.arg(serve.get_program()).args(serve.get_args());
    for (name, value) in serve.get_envs() {
        match value {
            Some(value) => command.env(name, value),
            None => command.env_remove(name),
        };
    }
    command
}

/// Such a program at work.
pub(super) struct SmallDisk {
    _victim: Victim,
    pub(super) address: SocketAddr,
    data: PathBuf,
    folder: Folder,
}

impl SmallDisk {
    /// Starts it with members who are signed in.
    pub(super) fn start() -> Self {
        let folder = Folder::new();
        let (data, seed) = (folder.path().join("data"), folder.path().join("seed"));
        fs::create_dir(&data).unwrap();
        stormed::seed(&seed);
        let victim = Victim::start(&mounted(&data, &seed, "true"));
        // What the process sees there.
        let data = PathBuf::from(format!("/proc/{}/root{}", victim.id(), data.display()));
        Self { address: victim.address, _victim: victim, data, folder }
    }

    /// Leaves no room at all.
    pub(super) fn fill(&self) {
        let mut ballast = File::create(self.data.join("ballast")).unwrap();
        for size in [1 << 16, 1 << 12, 1] {
            loop {
                match ballast.write(&vec![7; size]) {
                    Ok(_) => {}
                    Err(error) if error.kind() == ErrorKind::StorageFull => break,
                    Err(error) => panic!("{error}"),
                }
            }
        }
    }

    /// Makes room again.
    pub(super) fn empty(&self) {
        fs::remove_file(self.data.join("ballast")).unwrap();
    }

    /// The database and its log as they are now, in a folder that outlives the process.
    pub(super) fn copied(&self) -> PathBuf {
        let copy = self.folder.path().join("copy");
        let _ = fs::remove_dir_all(&copy);
        fs::create_dir(&copy).unwrap();
        for entry in fs::read_dir(&self.data).unwrap().map(|entry| entry.unwrap()) {
            if !entry.file_name().to_string_lossy().ends_with("-shm") {
                fs::copy(entry.path(), copy.join(entry.file_name())).unwrap();
            }
        }
        copy
    }
}
