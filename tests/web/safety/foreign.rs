//! An archive that somebody else made, or touched: `verify` and `restore` take no word of it on trust.

use std::io::Write;
use std::path::Path;
use std::process::Command;

use holewright_server::db::FILE_NAME;

use super::commands::{bytes, done, program, refused, run};
use super::put_back::{changed, describing, parts, saved, tar};
use super::upgrades::{RELEASED, released};
use crate::process;
use crate::support::Folder;

/// Each with what is wrong with it, and the SQL that makes it so. The rows all stay sound.
const OTHERS: [(&str, &str); 12] = [
    (
        "trigger help",
        "CREATE TRIGGER help AFTER INSERT ON session BEGIN UPDATE member SET is_secretary = 1; END",
    ),
    ("view shown_note", "DROP VIEW shown_note; CREATE VIEW shown_note AS SELECT * FROM note"),
    ("view all_members", "CREATE VIEW all_members AS SELECT * FROM member"),
    ("index report_by_note is missing", "DROP TABLE safety_report"),
    ("table shopping", "CREATE TABLE shopping (what TEXT)"),
    ("index act_at", "CREATE INDEX act_at ON act (at DESC, id)"),
    (
        "index",
        "PRAGMA writable_schema = ON; DELETE FROM sqlite_schema WHERE name = (SELECT min(name) FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL); PRAGMA writable_schema = RESET; VACUUM",
    ),
    (
        "table note_text",
        "DROP TABLE note_text; CREATE VIRTUAL TABLE note_text USING fts5 (title, text, done, marks)",
    ),
    ("table act", "ALTER TABLE act ADD COLUMN whisper TEXT"),
    (
        "step 20261125000000",
        "UPDATE _sqlx_migrations SET checksum = x'00' WHERE version = 20261125000000",
    ),
    ("step 20261125000000", "DELETE FROM _sqlx_migrations WHERE version = 20261125000000"),
    (
        "step 20261125000000",
        "UPDATE _sqlx_migrations SET success = FALSE WHERE version = 20261125000000",
    ),
];

#[test]
fn a_database_whose_schema_is_not_the_programs_is_refused() {
    let folder = Folder::new();
    let good = saved(&folder);
    let (manifest, database) = parts(&good);
    let data = folder.path().join("data");
    super::notes::fill(&data, "before", 2, 50);
    let before = bytes(&data);
    let mut believed = Vec::new();
    for (place, (what, sql)) in OTHERS.into_iter().enumerate() {
        let other = changed(&folder, &database, sql);
        let archive = folder.path().join(format!("other{place}.tar"));
        let described = describing(manifest.clone(), &other);
        tar(&archive, &[("manifest.json", &described), (FILE_NAME, &other)]);
        let bare = folder.path().join(format!("other{place}.sqlite"));
        std::fs::write(&bare, &other).unwrap();
        for file in [&archive, &bare] {
            for command in ["verify", "restore"] {
                let output = run(&data, &[command, file.to_str().unwrap()]);
                if output.status.success() {
                    believed.push(format!("{command} {}: {sql}", file.display()));
                } else {
                    refused(&output, &["damaged", what]);
                }
            }
        }
    }
    assert_eq!(believed, [""; 0]);
    assert!(bytes(&data) == before, "the data was touched");
    // What the program's own planner keeps beside the tables is no part of the schema.
    let analysed = changed(&folder, &database, "ANALYZE");
    let file = folder.path().join("analysed.sqlite");
    std::fs::write(&file, analysed).unwrap();
    done(&run(&data, &["verify", file.to_str().unwrap()]));
}

#[test]
fn an_older_schema_is_held_against_its_own_steps() {
    let folder = Folder::new();
    for (version, sql) in RELEASED {
        let old = folder.path().join(version.to_string());
        released(&old, sql);
        let file = old.join(FILE_NAME);
        done(&run(&old, &["verify", file.to_str().unwrap()]));
        super::notes::execute(&file, "CREATE VIEW elsewhere AS SELECT 1");
        refused(&run(&old, &["verify", file.to_str().unwrap()]), &["view elsewhere"]);
    }
}

#[test]
fn nothing_in_an_archive_steers_the_terminal() {
    let folder = Folder::new();
    let good = saved(&folder);
    let (manifest, database) = parts(&good);
    let data = folder.path().join("data");
    let steering = "\u{1b}]0;owned\u{7}\u{1b}[2J\r\u{9b}31m\u{202e}9.9\n1 member";
    let file = folder.path().join("loud.tar");
    let mut loud = Vec::new();
    for field in ["program", "saved_at"] {
        let mut manifest = manifest.clone();
        manifest[field] = steering.into();
        loud.push((manifest, FILE_NAME.to_owned(), database.clone()));
    }
    let mut newer = manifest.clone();
    (newer["form"], newer["program"]) = (2.into(), steering.into());
    loud.push((newer, FILE_NAME.to_owned(), database.clone()));
    loud.push((manifest.clone(), "\u{1b}[2J\nsound".to_owned(), database.clone()));
    let sql = "CREATE TABLE \"\u{1b}[2J\nsound\" (x)";
    let other = changed(&folder, &database, sql);
    loud.push((
        serde_json::from_slice(&describing(manifest, &other)).unwrap(),
        FILE_NAME.to_owned(),
        other,
    ));
    for (place, (manifest, name, database)) in loud.into_iter().enumerate() {
        let manifest = manifest.to_string();
        tar(&file, &[("manifest.json", manifest.as_bytes()), (&name, &database)]);
        let output = run(&data, &["verify", file.to_str().unwrap()]);
        let said = [output.stdout, output.stderr].concat();
        let said = String::from_utf8(said).unwrap();
        let steers = |letter: char| letter != '\n' && letter.is_control() || letter == '\u{202e}';
        assert!(!said.contains(steers), "{place}: {said:?}");
        assert_eq!(said.lines().count(), 1, "{place}: {said:?}");
        assert_eq!(output.status.code(), Some(1), "{place}: {said:?}");
    }
}

/// An archive that begins with a header of this kind and these bytes behind it, most of them a hole.
fn endless(file: &Path, kind: tar::EntryType, size: u64) {
    let mut header = tar::Header::new_gnu();
    header.set_entry_type(kind);
    header.set_size(size);
    header.set_cksum();
    let mut out = std::fs::File::create(file).unwrap();
    out.write_all(header.as_bytes()).unwrap();
    out.set_len(512 + size).unwrap();
}

#[test]
fn an_endless_header_is_not_read_into_memory() {
    let folder = Folder::new();
    let file = folder.path().join("endless.tar");
    for kind in [
        tar::EntryType::GNULongName,
        tar::EntryType::GNULongLink,
        tar::EntryType::XHeader,
        tar::EntryType::XGlobalHeader,
        tar::EntryType::Regular,
    ] {
        endless(&file, kind, 3 << 30);
        let verify = program();
        let mut shell = Command::new("sh");
        shell.args(["-c", r#"ulimit -v 1500000; exec "$0" verify "$1""#]);
        shell.arg(verify.get_program()).arg(&file);
        refused(
            &process::run(&shell),
            &["not a file that holewright saved", "its first part is no manifest"],
        );
    }
}

#[test]
fn a_part_that_is_longer_than_its_manifest_says_is_not_unpacked() {
    let folder = Folder::new();
    let good = saved(&folder);
    let (manifest, database) = parts(&good);
    let file = folder.path().join("long.tar");
    let manifest = manifest.to_string();
    tar(&file, &[("manifest.json", manifest.as_bytes()), (FILE_NAME, &database)]);
    // The header of the database is given another size, and a hole of that size behind it.
    let mut whole = std::fs::read(&file).unwrap();
    let at = 512 + manifest.len().div_ceil(512) * 512;
    let mut header = tar::Header::from_byte_slice(&whole[at..at + 512]).clone();
    header.set_size(2 << 30);
    header.set_cksum();
    whole[at..at + 512].copy_from_slice(header.as_bytes());
    std::fs::write(&file, &whole).unwrap();
    std::fs::File::options().write(true).open(&file).unwrap().set_len((2 << 30) + 8192).unwrap();
    let verify = program();
    let mut shell = Command::new("sh");
    // In blocks of 512 bytes: the unpacked database may not grow past this.
    shell.args(["-c", r#"ulimit -f 100000; exec "$0" verify "$1""#]);
    shell.arg(verify.get_program()).arg(&file);
    refused(&process::run(&shell), &["damaged", "is not what was saved"]);
}
