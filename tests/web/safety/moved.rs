//! F12: the data folder, the database or what stands beside it is moved, deleted or replaced while the
//! server has it open.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use holewright_server::db::FILE_NAME;

use super::asked::get;
use super::commands::names;
use super::storm::{Victim, is_ready};
use super::{notes, stormed};
use crate::process::wait_until;
use crate::support::Folder;

/// How soon it must notice.
const SOON: Duration = Duration::from_secs(1);

/// What is done to the files under the server.
type Mishap = fn(&Path);

fn beside(data: &Path, suffix: &str) -> std::path::PathBuf {
    data.join(format!("{FILE_NAME}{suffix}"))
}

fn away(path: &Path) -> std::path::PathBuf {
    path.with_extension("away")
}

fn swap_file(file: &Path) {
    fs::copy(file, away(file)).unwrap();
    fs::rename(away(file), file).unwrap();
}

/// Each, and what stands in the folder afterwards.
const MISHAPS: [(&str, Mishap); 8] = [
    ("folder moved", |data| fs::rename(data, away(data)).unwrap()),
    ("folder deleted", |data| fs::remove_dir_all(data).unwrap()),
    ("folder replaced by an empty one", |data| {
        fs::rename(data, away(data)).unwrap();
        fs::create_dir(data).unwrap();
    }),
    ("folder replaced by a copy", |data| {
        fs::create_dir(away(data)).unwrap();
        fs::copy(data.join(FILE_NAME), away(data).join(FILE_NAME)).unwrap();
        fs::rename(data, data.with_extension("old")).unwrap();
        fs::rename(away(data), data).unwrap();
    }),
    ("database deleted", |data| fs::remove_file(data.join(FILE_NAME)).unwrap()),
    ("database replaced by a copy", |data| swap_file(&data.join(FILE_NAME))),
    ("log deleted", |data| fs::remove_file(beside(data, "-wal")).unwrap()),
    ("index of the log deleted", |data| fs::remove_file(beside(data, "-shm")).unwrap()),
];

#[test]
fn f12_no_note_is_acknowledged_once_the_data_is_not_where_it_was() {
    for (what, mishap) in MISHAPS {
        let folder = Folder::new();
        let data = folder.path().join("data");
        let server = stormed::start(&data);
        let address = server.address;
        assert!(stormed::write(address, &notes::key("before", 1)) && is_ready(address), "{what}");
        mishap(&data);
        let there = |data: &Path| if data.exists() { names(data) } else { Vec::new() };
        let left = there(&data);
        let answer = stormed::answer(address, &notes::key("after", 1));
        assert!(answer.starts_with("HTTP/1.1 503 "), "{what}: {answer}");
        assert!(answer.contains("after-0000000000000001"), "{what}: the draft: {answer}");
        let since = Instant::now();
        while is_ready(address) {
            assert!(since.elapsed() < SOON, "{what}: it says that it is ready");
        }
        for path in ["/", "/threads/ba/5", "/notes", "/healthz"] {
            assert_eq!(get(address, path), Some(200), "{what}: {path}");
        }
        assert!(!stormed::write(address, &notes::key("after", 2)), "{what}");
        assert_eq!(there(&data), left, "{what}: something new was made");
        drop(server);
        assert_eq!(there(&data), left, "{what}: something new was made at the end");
    }
}

#[test]
fn f12_data_that_is_put_back_is_written_again() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    let mut server = stormed::start(&data);
    assert!(stormed::write(server.address, &notes::key("put", 1)));
    fs::rename(&data, away(&data)).unwrap();
    assert!(!stormed::write(server.address, &notes::key("put", 2)));
    fs::rename(away(&data), &data).unwrap();
    wait_until("readiness", || is_ready(server.address));
    assert!(stormed::write(server.address, &notes::key("put", 3)));
    server.kill();
    let found = notes::read(&data);
    let kept = [1, 3].map(|number| notes::key("put", number));
    assert_eq!((found.whole, found.half.len()), (kept.into(), 0));
}

/// The commit itself looks once more: a storm of writes and a folder that moves in the middle of it.
#[test]
fn f12_what_was_acknowledged_before_a_move_has_moved_along() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    let mut server: Victim = stormed::start(&data);
    let post = stormed::write;
    let (storm, ()) = super::storm::beside(server.address, "moved", post, |acknowledged| {
        wait_until("an acknowledged note", || acknowledged().len() > 20);
        fs::rename(&data, away(&data)).unwrap();
        std::thread::sleep(Duration::from_millis(300));
    });
    server.kill();
    let found = notes::read(&away(&data));
    let lost: Vec<_> = storm.acknowledged.difference(&found.whole).collect();
    assert!(lost.is_empty(), "{lost:?}");
    assert!(storm.refused > 0 && !data.exists());
}
