//! F10 and F11: a data folder that cannot be written, and a database that is damaged or none: one clear
//! line that says what to do, and nothing is made over what is there.

use std::fs;
use std::process::Command;

use holewright_server::db::FILE_NAME;

use super::commands::{bytes, refused, serve};
use super::{notes, stormed};
use crate::process;
use crate::support::Folder;

/// What is done to the bytes of a database.
type Damage = fn(&mut Vec<u8>);

const DAMAGE: [(&str, Damage); 6] = [
    ("no bytes", |bytes| bytes.clear()),
    ("not a database", |bytes| *bytes = b"shopping list ".repeat(500)),
    ("a broken header", |bytes| bytes[..100].fill(0xff)),
    ("a wrong size of pages", |bytes| bytes[16..18].fill(0x03)),
    ("half of it", |bytes| bytes.truncate(bytes.len() / 2)),
    ("a broken page", |bytes| {
        let page = bytes.len() / 4096 / 2 * 4096;
        bytes[page..page + 2048].fill(0xa5);
    }),
];

#[test]
fn f11_a_damaged_database_is_refused_and_left_as_it_is() {
    for (what, damage) in DAMAGE {
        let folder = Folder::new();
        let data = folder.path().join("data");
        notes::fill(&data, "kept", 200, 2000);
        let file = data.join(FILE_NAME);
        let mut database = fs::read(&file).unwrap();
        damage(&mut database);
        fs::write(&file, &database).unwrap();
        let before = bytes(&data);
        println!("F11: {what}");
        let restore = format!("holewright restore --data-dir {}", data.display());
        refused(&serve(&data), &[file.to_str().unwrap(), &restore]);
        assert!(bytes(&data) == before, "{what}: the folder was changed");
    }
}

#[test]
fn f11_no_new_database_is_made_beside_the_log_of_one_that_is_gone() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    let mut server = stormed::start(&data);
    assert!(stormed::write(server.address, &notes::key("log", 1)));
    server.kill();
    fs::remove_file(data.join(FILE_NAME)).unwrap();
    let before = bytes(&data);
    refused(&serve(&data), &["holewright restore", "its log"]);
    assert!(bytes(&data) == before, "the folder was changed");
}

/// Mounts the data folder so that it can only be read, where this process alone sees it.
const READ_ONLY: &str = r#"
data="$1"
shift
mount --bind "$data" "$data" && mount -o remount,bind,ro "$data" || exit 9
exec "$@"
"#;

#[test]
fn f10_a_folder_that_cannot_be_written_is_one_clear_line() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    for what in ["an empty folder", "a club", "a club that was killed"] {
        match what {
            "an empty folder" => fs::create_dir(&data).unwrap(),
            "a club" => notes::fill(&data, "kept", 5, 50),
            _ => stormed::start(&data).kill(),
        }
        let before = bytes(&data);
        let serve = stormed::serving(&data);
        let mut command = Command::new("unshare");
        command.args(["--mount", "sh", "-c", READ_ONLY, "read-only"]).arg(&data);
        command.arg(serve.get_program()).args(serve.get_args());
        println!("F10: {what}");
        let said = process::run(&command);
        let user = format!("user {}", rustix::process::getuid().as_raw());
        refused(&said, &[data.to_str().unwrap(), &user, "must be able to write"]);
        assert!(bytes(&data) == before, "{what}: the folder was changed");
    }
}
