//! Commands that print a link, where there is no club, and as another user than the server's.

use std::fs;
use std::process::Command;

use holewright_server::db::FILE_NAME;

use super::commands::{done, names, program, refused, run};
use super::upgrades;
use crate::process;
use crate::support::Folder;

#[test]
fn no_link_is_printed_for_a_club_that_is_not_there() {
    let folder = Folder::new();
    let nowhere = folder.path().join("mistyped");
    for command in [&["invite", "--secretary"][..], &["reset", "Enid Hathersage"]] {
        let words = ["no database in", nowhere.to_str().unwrap(), "--data-dir", "start the server"];
        refused(&run(&nowhere, command), &words);
        assert!(!nowhere.exists(), "{command:?} made the folder");
    }
    let empty = folder.path().join("empty");
    fs::create_dir(&empty).unwrap();
    refused(&run(&empty, &["invite"]), &["no database in"]);
    assert_eq!(names(&empty), [""; 0]);
    // What makes a club still does.
    done(&run(&nowhere, &["demo"]));
    done(&run(&nowhere, &["invite"]));
}

#[test]
fn what_root_makes_in_the_data_folder_is_the_owners() {
    // Only root can give a file away; as another user the same is tried in a user namespace of its own.
    let folder = Folder::new();
    let data = folder.path().join("data");
    upgrades::released(&data, upgrades::RELEASED[1].1);
    let mut script = String::from(r#"chown -R 1234:1234 "$1"; "#);
    script.push_str(r#""$0" invite --data-dir "$1" && "$0" demo --data-dir "$1/new" && "$0" backup --data-dir "$1" "$1/out.tar" && "#);
    script.push_str(r#"find "$1" ! -user 1234 -o ! -group 1234"#);
    let binary = program();
    fs::create_dir(data.join("new")).unwrap();
    let mut shell =
        Command::new(if rustix::process::getuid().is_root() { "sh" } else { "unshare" });
    if !rustix::process::getuid().is_root() {
        shell.args(["--map-auto", "--map-root-user", "sh"]);
    }
    shell.args(["-euc", &script]).arg(binary.get_program()).arg(&data);
    let output = process::run(&shell);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{errors}");
    let said = String::from_utf8(output.stdout).unwrap();
    let others: Vec<&str> = said.lines().filter(|line| line.starts_with('/')).collect();
    // The archive alone is whose it is that ran the command.
    assert_eq!(others, [data.join("out.tar").to_str().unwrap()]);
    assert!(data.join("copies").is_dir() && data.join(FILE_NAME).is_file());
}
