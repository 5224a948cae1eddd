//! One program has a data folder: a second server and a restore are refused while one serves, and
//! the lock goes with the process.

use super::asked::get;
use super::commands::{bytes, done, program, refused, run, serve};
use super::storm::Victim;
use crate::faults::Running;
use crate::support::Folder;

#[test]
fn a_second_server_on_the_same_folder_is_one_clear_line() {
    let first = Running::start();
    let data = first.folder.path().join("data");
    let second = serve(&data);
    refused(&second, &[data.to_str().unwrap(), "another holewright", "--data-dir"]);
    assert_eq!(get(first.address, "/readyz"), Some(200), "the first serves on");
}

#[test]
fn a_killed_server_leaves_no_lock() {
    let folder = Folder::new();
    let mut serve = program();
    serve.args(["--listen", "127.0.0.1:0", "--data-dir"]).arg(folder.path());
    for _ in 0..3 {
        let mut server = Victim::start(&serve);
        assert_eq!(get(server.address, "/readyz"), Some(200));
        server.kill();
    }
}

#[test]
fn o11_a_running_server_is_not_restored_over() {
    let server = Running::start();
    let data = server.folder.path().join("data");
    let file = server.folder.path().join("club.tar");
    let file = file.to_str().unwrap();
    done(&run(&data, &["backup", file]));
    let before = bytes(&data);
    refused(&run(&data, &["restore", file]), &[data.to_str().unwrap(), "stop it first"]);
    assert!(bytes(&data) == before, "the data was touched");
    assert_eq!(get(server.address, "/readyz"), Some(200));
}
