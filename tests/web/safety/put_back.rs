//! O11 and F13: what `restore` puts back, what it refuses, and what becomes of the data before it.

use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use holewright_server::db::{FILE_NAME, newest_schema};
use sha2::{Digest, Sha256};

use super::asked::get;
use super::commands::{bytes, done, names, program, refused, run};
use super::storm::Victim;
use super::{notes, stormed};
use crate::support::Folder;

/// A folder with an archive of three notes in it.
pub(super) fn saved(folder: &Folder) -> PathBuf {
    let data = folder.path().join("saved");
    notes::fill(&data, "saved", 3, 50);
    let file = folder.path().join("club.tar");
    done(&run(&data, &["backup", file.to_str().unwrap()]));
    file
}

fn serve(data: &Path) -> Victim {
    let mut serve = program();
    serve.args(["--listen", "127.0.0.1:0", "--data-dir"]).arg(data);
    Victim::start(&serve)
}

#[test]
fn o11_an_empty_machine_serves_what_was_saved() {
    println!("O11: from nothing to serving in {:?}", put_back_and_serve());
}

#[test]
#[ignore = "wants the machine to itself: tests/run --soak"]
fn o11_an_empty_machine_serves_within_five_minutes() {
    assert!(put_back_and_serve() < Duration::from_secs(300));
}

/// The time from nothing to serving.
fn put_back_and_serve() -> Duration {
    let folder = Folder::new();
    let file = saved(&folder);
    let since = Instant::now();
    let data = folder.path().join("new/machine");
    let said = done(&run(&data, &["restore", file.to_str().unwrap()]));
    for word in
        ["3 notes", &newest_schema().to_string(), file.to_str().unwrap(), "no database before"]
    {
        assert!(said.contains(word), "{word} in: {said}");
    }
    let server = serve(&data);
    assert_eq!(get(server.address, "/readyz"), Some(200));
    assert_eq!(get(server.address, "/threads/ba/5"), Some(200));
    let took = since.elapsed();
    assert_eq!(notes::read(&data), notes::read(&folder.path().join("saved")));
    took
}

#[test]
fn o11_the_data_before_is_kept_aside_and_can_be_put_back() {
    let folder = Folder::new();
    let file = saved(&folder);
    let data = folder.path().join("data");
    notes::fill(&data, "before", 2, 50);
    let before = notes::read(&data);
    let said = done(&run(&data, &["restore", file.to_str().unwrap()]));
    let aside = data.join(&names(&data)[1]);
    assert!(aside.to_str().unwrap().contains("holewright.sqlite.before-restore-2"), "{aside:?}");
    assert!(said.contains(aside.to_str().unwrap()), "{said}");
    assert_eq!(names(&data).len(), 2, "{:?}", names(&data));
    assert_eq!(notes::read(&data).whole.len(), 3);

    done(&run(&data, &["restore", aside.to_str().unwrap()]));
    assert_eq!(notes::read(&data), before);
    assert_eq!(names(&data).len(), 3, "the first is still aside: {:?}", names(&data));
}

#[test]
fn o11_everybody_signs_in_again_and_the_record_says_so() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    notes::fill(&data, "saved", 1, 50);
    let database = data.join(FILE_NAME);
    notes::execute(
        &database,
        "INSERT INTO member (id, name, name_key, password_hash, joined_at)
           VALUES (1, 'Edith', 'edith', '$argon2id$', 1);
         INSERT INTO session (token_hash, number, member_id, made_at, seen_at)
           VALUES (zeroblob(32), 1, 1, 1, 1);",
    );
    let file = folder.path().join("club.tar");
    let said = done(&run(&data, &["backup", file.to_str().unwrap()]));
    assert!(said.contains("1 members"), "{said}");
    done(&run(&data, &["restore", file.to_str().unwrap()]));
    assert_eq!(notes::number(&database, "SELECT count(*) FROM member"), 1);
    assert_eq!(notes::number(&database, "SELECT count(*) FROM session"), 0);
    let recorded = "SELECT count(*) FROM act WHERE what = 'restored' AND detail LIKE '%club.tar'";
    assert_eq!(notes::number(&database, recorded), 1);
}

/// An archive with these parts.
pub(super) fn tar(file: &Path, parts: &[(&str, &[u8])]) {
    let mut builder = tar::Builder::new(std::fs::File::create(file).unwrap());
    for (name, bytes) in parts {
        let mut header = tar::Header::new_gnu();
        header.set_size(bytes.len().try_into().unwrap());
        header.set_mode(0o600);
        // As given: the builder itself would refuse some names.
        header.as_gnu_mut().unwrap().name[..name.len()].copy_from_slice(name.as_bytes());
        header.set_cksum();
        builder.append(&header, *bytes).unwrap();
    }
    builder.finish().unwrap();
}

/// The manifest and the database of an archive.
pub(super) fn parts(file: &Path) -> (serde_json::Value, Vec<u8>) {
    let mut archive = tar::Archive::new(std::fs::File::open(file).unwrap());
    let mut parts = archive.entries().unwrap().map(|entry| {
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut entry.unwrap(), &mut bytes).unwrap();
        bytes
    });
    let manifest = serde_json::from_slice(&parts.next().unwrap()).unwrap();
    (manifest, parts.next().unwrap())
}

/// The manifest with the hash and size of this database.
pub(super) fn describing(mut manifest: serde_json::Value, database: &[u8]) -> Vec<u8> {
    let sum: String = Sha256::digest(database).iter().map(|byte| format!("{byte:02x}")).collect();
    manifest["parts"][0]["sha256"] = sum.into();
    manifest["parts"][0]["bytes"] = database.len().into();
    manifest.to_string().into_bytes()
}

/// A database changed by this SQL.
pub(super) fn changed(folder: &Folder, database: &[u8], sql: &str) -> Vec<u8> {
    let file = folder.path().join("changed.sqlite");
    std::fs::write(&file, database).unwrap();
    notes::execute(&file, sql);
    std::fs::read(&file).unwrap()
}

#[test]
fn o11_what_is_not_sound_is_refused_and_nothing_is_touched() {
    let folder = Folder::new();
    let good = saved(&folder);
    let (manifest, database) = parts(&good);
    let whole = std::fs::read(&good).unwrap();
    let as_given = manifest.to_string().into_bytes();
    let data = folder.path().join("data");
    notes::fill(&data, "before", 2, 50);
    let before = bytes(&data);
    let file = folder.path().join("bad.tar");
    let mut tried = 0;
    let mut check = |words: &[&str]| {
        let named = file.to_str().unwrap();
        for arguments in [["verify", named], ["restore", named]] {
            let mut words = words.to_vec();
            words.push(named);
            refused(&run(&data, &arguments), &words);
        }
        assert!(bytes(&data) == before, "{words:?}: the data was touched");
        tried += 1;
    };

    // Every region of the file: headers, manifest, pages.
    for at in [3, 520, 700, 1100, 2048 + 40, whole.len() / 2, 2048 + database.len() - 100] {
        let mut bad = whole.clone();
        bad[at] ^= 0x20;
        std::fs::write(&file, bad).unwrap();
        check(&[]);
    }
    for length in [0, 100, 600, 1600, 4096, whole.len() / 2, 2048 + database.len() - 1] {
        std::fs::write(&file, &whole[..length]).unwrap();
        check(&[]);
    }
    std::fs::write(&file, "a letter to the secretary\n".repeat(200)).unwrap();
    check(&["not a file that holewright saved"]);
    tar(&file, &[("manifest.json", &as_given)]);
    check(&["damaged", "missing"]);
    tar(&file, &[(FILE_NAME, &database), ("manifest.json", &as_given)]);
    check(&["no manifest"]);
    tar(&file, &[("manifest.json", &as_given), ("../x", &database)]);
    check(&["damaged", "../x"]);
    let photo: &[u8] = b"photo";
    tar(&file, &[("manifest.json", &as_given), (FILE_NAME, &database), ("photo", photo)]);
    check(&["damaged", "photo is not in its manifest"]);

    let mut newer = manifest.clone();
    (newer["form"], newer["program"]) = (2.into(), "9.9.9".into());
    tar(&file, &[("manifest.json", newer.to_string().as_bytes()), (FILE_NAME, &database)]);
    check(&["9.9.9", env!("CARGO_PKG_VERSION"), "newer program"]);
    let mut other = manifest.clone();
    other["notes"] = 4.into();
    tar(&file, &[("manifest.json", other.to_string().as_bytes()), (FILE_NAME, &database)]);
    check(&["damaged", "other than its manifest says"]);

    // Hashes that fit do not save a database that is not sound.
    let astray = changed(
        &folder,
        &database,
        "INSERT INTO verdict (note_id, member_id, version_id, worked, made_at) VALUES (1, 99, 1, 1, 1)",
    );
    tar(&file, &[("manifest.json", &describing(manifest.clone(), &astray)), (FILE_NAME, &astray)]);
    check(&["damaged", "verdict"]);
    let mut torn = database.clone();
    let page = torn.len() / 4096 / 2 * 4096;
    torn[page..page + 2000].fill(0x55);
    tar(&file, &[("manifest.json", &describing(manifest.clone(), &torn)), (FILE_NAME, &torn)]);
    check(&["damaged"]);
    let newer = changed(
        &folder,
        &database,
        "INSERT INTO _sqlx_migrations (version, description, success, checksum, execution_time)
         VALUES (29991231235959, 'later', TRUE, x'00', 0)",
    );
    let mut later = manifest.clone();
    later["schema"] = 29_991_231_235_959_i64.into();
    tar(&file, &[("manifest.json", &describing(later, &newer)), (FILE_NAME, &newer)]);
    check(&["29991231235959", &newest_schema().to_string(), "newer program"]);
    let foreign = changed(&folder, b"", "CREATE TABLE shopping (what TEXT)");
    std::fs::write(&file, foreign).unwrap();
    check(&["no database of holewright"]);
    // Half of a database: its log is beside it.
    std::fs::write(&file, &database).unwrap();
    let log = folder.path().join("bad.tar-wal");
    std::fs::write(&log, "log").unwrap();
    check(&["bad.tar-wal", "in use"]);
    std::fs::remove_file(log).unwrap();
    std::fs::remove_file(&file).unwrap();
    check(&["cannot read"]);

    assert_eq!(tried, 7 + 7 + 5 + 2 + 3 + 3);
    // The archive itself was good all the while.
    done(&run(&data, &["verify", good.to_str().unwrap()]));
    assert_eq!(names(folder.path()), ["changed.sqlite", "club.tar", "data", "saved"]);
}

#[test]
fn o11_a_database_that_another_program_has_open_is_not_moved() {
    let folder = Folder::new();
    let file = saved(&folder);
    let data = folder.path().join("data");
    notes::fill(&data, "before", 2, 50);
    let before = notes::read(&data);
    // Not a server, so it holds no lock on the folder: the database itself shows it.
    let runtime = tokio::runtime::Runtime::new().unwrap();
    let other = runtime.block_on(holewright_server::db::Database::open(&data)).unwrap();
    refused(&run(&data, &["restore", file.to_str().unwrap()]), &[data.to_str().unwrap()]);
    runtime.block_on(other.close());
    assert_eq!(names(&data), [FILE_NAME]);
    assert_eq!(notes::read(&data), before);
    done(&run(&data, &["restore", file.to_str().unwrap()]));
}

#[test]
fn f13_the_log_of_a_killed_server_goes_with_its_database() {
    let folder = Folder::new();
    let file = saved(&folder);
    let data = folder.path().join("data");
    let mut writer = stormed::start(&data);
    for number in 0..20 {
        assert!(stormed::write(writer.address, &notes::key("before", number)));
    }
    writer.kill();
    assert!(names(&data).contains(&format!("{FILE_NAME}-wal")), "{:?}", names(&data));
    done(&run(&data, &["restore", file.to_str().unwrap()]));
    let left = names(&data);
    assert_eq!(left.len(), 2, "{left:?}");
    assert_eq!(notes::read(&data), notes::read(&folder.path().join("saved")));
    // What was written last was in the log alone: it is folded into the one that is kept.
    let aside = folder.path().join("aside");
    std::fs::create_dir(&aside).unwrap();
    std::fs::copy(data.join(&left[1]), aside.join(FILE_NAME)).unwrap();
    assert_eq!(notes::read(&aside).whole.len(), 20);
}

#[test]
fn f13_a_stray_log_and_a_damaged_database_do_no_harm() {
    let folder = Folder::new();
    let file = saved(&folder);
    let expected = notes::read(&folder.path().join("saved"));
    // A log of another database, beside nothing and beside what is no database.
    let other = folder.path().join("other");
    let mut writer = stormed::start(&other);
    assert!(stormed::write(writer.address, &notes::key("other", 1)));
    writer.kill();
    for damaged in [None, Some("shopping list ".repeat(500))] {
        let data = folder.path().join("data");
        std::fs::create_dir(&data).unwrap();
        for suffix in ["-wal", "-shm"] {
            let name = format!("{FILE_NAME}{suffix}");
            std::fs::copy(other.join(&name), data.join(&name)).unwrap();
        }
        if let Some(damaged) = &damaged {
            std::fs::write(data.join(FILE_NAME), damaged).unwrap();
            // A sound log would mend it, as it would for the server.
            std::fs::write(data.join(format!("{FILE_NAME}-wal")), "torn").unwrap();
        }
        let said = done(&run(&data, &["restore", file.to_str().unwrap()]));
        assert_eq!(said.contains("damaged"), damaged.is_some(), "{said}");
        for suffix in ["-wal", "-shm", "-journal"] {
            let name = format!("{FILE_NAME}{suffix}");
            assert!(!names(&data).contains(&name), "{:?}", names(&data));
        }
        assert_eq!(notes::read(&data), expected);
        if let Some(damaged) = damaged {
            let kept = names(&data)
                .into_iter()
                .find(|name| name.contains("before-restore") && name.ends_with('Z'));
            let kept = std::fs::read_to_string(data.join(kept.unwrap())).unwrap();
            assert_eq!(kept, damaged, "what was there is kept, whatever it was");
        }
        std::fs::remove_dir_all(&data).unwrap();
    }
}
