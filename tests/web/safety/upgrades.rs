//! O13 and O14: an older database is copied and then brought up to date; a newer one is left alone.

use std::path::Path;

use holewright_server::db::notes::lists::Filter;
use holewright_server::db::notes::search::find;
use holewright_server::db::{Database, FILE_NAME, FolderLock, newest_schema};

use super::commands::{bytes, done, names, refused, run, serve};
use super::notes;
use crate::support::Folder;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{ConnectOptions, Connection};

/// Every schema that was ever released, as SQL: what was written then must still open.
pub(super) const RELEASED: [(i64, &str); 2] = [
    (20_261_124_230_100, include_str!("released/20261124230100.sql")),
    (20_261_125_000_200, include_str!("released/20261125000200.sql")),
];

const NEWER: &str =
    "INSERT INTO _sqlx_migrations (version, description, success, checksum, execution_time)
     VALUES (29991231235959, 'later', TRUE, x'00', 0)";

/// A data folder with the database of an earlier release.
pub(super) fn released(data: &Path, sql: &str) {
    std::fs::create_dir_all(data).unwrap();
    notes::execute(&data.join(FILE_NAME), sql);
}

fn open(data: &Path) {
    notes::block(async { Database::open(data).await.unwrap().close().await });
}

#[test]
fn o13_every_released_schema_becomes_the_newest_and_is_copied_before() {
    let folder = Folder::new();
    let fresh = folder.path().join("fresh");
    open(&fresh);
    assert!(!fresh.join("copies").exists(), "there is nothing to copy of a new database");
    for (version, sql) in RELEASED {
        let data = folder.path().join(version.to_string());
        released(&data, sql);
        let old = notes::schema(&data.join(FILE_NAME));
        open(&data);
        let new = notes::schema(&data.join(FILE_NAME));
        assert_eq!(new, notes::schema(&fresh.join(FILE_NAME)));
        assert_ne!(new, old, "{version} is no older schema");

        let copies = data.join("copies");
        let name = format!("before-{}.sqlite", newest_schema());
        assert_eq!(names(&copies), [name.as_str()]);
        let copy = copies.join(&name);
        assert_eq!(notes::schema(&copy), old);
        let rows = "SELECT count(*) FROM reference_entry WHERE id = 'threads/ba/5'";
        assert_eq!(notes::number(&copy, rows), 1);
        assert_eq!(notes::number(&data.join(FILE_NAME), rows), 1);
        let said = done(&run(&data, &["verify", copy.to_str().unwrap()]));
        assert!(said.contains(&version.to_string()), "{said}");

        // Nothing to do, nothing to copy.
        std::fs::remove_dir_all(&copies).unwrap();
        open(&data);
        assert!(!copies.exists());
    }
}

#[test]
fn o13_notes_of_an_older_schema_are_found_by_what_they_are_marked_by() {
    let folder = Folder::new();
    released(folder.path(), RELEASED[1].1);
    let check = |filter: &Filter, expected: &[i64]| {
        let found: Vec<i64> = notes::block(async {
            let database = Database::open(folder.path()).await.unwrap();
            let hits = find(&database, "tap", filter, 10).await.unwrap();
            database.close().await;
            hits.iter().map(|hit| hit.note.id).collect()
        });
        assert_eq!(found, expected, "{filter:?}");
    };
    check(&Filter::default(), &[2, 1]);
    check(&Filter { on: vec!["threads/ba/5".to_owned()], ..Filter::default() }, &[1]);
    check(&Filter { confirmed_only: true, ..Filter::default() }, &[2]);
    check(&Filter { corrected_only: true, ..Filter::default() }, &[2]);
}

#[test]
fn o13_an_older_archive_is_restored_and_brought_up_to_date() {
    let folder = Folder::new();
    let (version, sql) = RELEASED[0];
    let (old, data) = (folder.path().join("old"), folder.path().join("data"));
    released(&old, sql);
    let file = folder.path().join("club.tar");
    let said = done(&run(&old, &["backup", file.to_str().unwrap()]));
    assert!(said.contains(&version.to_string()), "{said}");
    done(&run(&data, &["restore", file.to_str().unwrap()]));
    open(&data);
    assert_eq!(names(&data.join("copies")).len(), 1);
    let schema = "SELECT max(version) FROM _sqlx_migrations";
    assert_eq!(notes::number(&data.join(FILE_NAME), schema), newest_schema());
}

#[test]
fn o13_an_older_archive_keeps_what_it_called_metal() {
    let folder = Folder::new();
    let (old, data) = (folder.path().join("old"), folder.path().join("data"));
    released(&old, RELEASED[1].1);
    let before = "UPDATE note_version SET metal = 'gunmetal' WHERE note_id = 1;
        DELETE FROM verdict;
        INSERT INTO verdict (note_id, member_id, worked, metal, made_at)
        SELECT 1, id, 1, 'LG2', 1795561900 FROM member LIMIT 1;";
    notes::execute(&old.join(FILE_NAME), before);
    let file = folder.path().join("club.tar");
    done(&run(&old, &["backup", file.to_str().unwrap()]));
    done(&run(&data, &["restore", file.to_str().unwrap()]));
    open(&data);
    let held = data.join(FILE_NAME);
    for kept in [
        "SELECT count(*) FROM shown_note WHERE note ->> 'material' = 'gunmetal' AND id = 1",
        "SELECT count(*) FROM verdict WHERE material = 'LG2' AND note_id = 1",
    ] {
        assert_eq!(notes::number(&held, kept), 1, "{kept}");
    }
}

#[test]
fn o13_what_was_found_and_said_before_stands_with_what_it_was_said_of() {
    let folder = Folder::new();
    released(folder.path(), RELEASED[1].1);
    let held = folder.path().join(FILE_NAME);
    notes::execute(
        &held,
        "DELETE FROM verdict;
         INSERT INTO member (id, name, name_key, password_hash, joined_at)
         VALUES (70, 'Bea', 'bea', '$argon2id$x', 1);
         UPDATE note_version SET state = 'replaced', decided_at = 1000 WHERE id = 1;
         INSERT INTO note_version (id, note_id, state, title, text, made_at, saved_at, decided_at)
         VALUES (10, 1, 'shown', 'Five holes', 'Another drill.', 1, 1, 2000);
         UPDATE note SET shown_version = 10, shown_at = 2000 WHERE id = 1;
         INSERT INTO verdict (note_id, member_id, worked, made_at) SELECT 1, id, 1, 1500 FROM member WHERE id < 70;
         INSERT INTO verdict (note_id, member_id, worked, made_at) VALUES (1, 70, 1, 2500), (2, 70, 1, 1);
         UPDATE note SET confirmed_at = 2500;
         INSERT INTO note (id, author_id, form_key, made_at, withdrawn_at, withdrawn_why)
         SELECT number, 70, 'a key that no form made ' || number, 1, 1, 'Why' FROM (SELECT 8 AS number UNION SELECT 9);
         INSERT INTO act (at, member_id, what, subject) VALUES (1, 70, 'note-withdrawn', 'note/8');
         INSERT INTO act (at, member_id, what, subject) SELECT 1, id, 'note-withdrawn', 'note/9' FROM member WHERE id < 70;
         INSERT INTO safety_report (id, note_id, text, made_at) VALUES (7, 2, 'It grabs.', 1);",
    );
    open(folder.path());
    for (query, expected) in [
        ("SELECT count(*) FROM verdict WHERE version_id = 1 AND made_at = 1500", 1),
        ("SELECT count(*) FROM verdict WHERE version_id = 10 AND made_at = 2500", 1),
        // One from before anything was shown, by a clock that was wrong.
        ("SELECT count(*) FROM verdict WHERE version_id = 2", 1),
        ("SELECT note ->> 'worked' FROM shown_note WHERE id = 1", 1),
        ("SELECT confirmed_at FROM note WHERE id = 1", 2500),
        // An author's own reason is not for readers.
        ("SELECT withdrawn_by_another FROM note WHERE id = 8", 0),
        ("SELECT withdrawn_by_another FROM note WHERE id = 9", 1),
        ("SELECT seq FROM sqlite_sequence WHERE name = 'safety_report'", 7),
    ] {
        assert_eq!(notes::number(&held, query), expected, "{query}");
    }
}

#[test]
fn o13_the_newest_three_copies_are_kept() {
    let folder = Folder::new();
    released(folder.path(), RELEASED[0].1);
    let copies = folder.path().join("copies");
    std::fs::create_dir(&copies).unwrap();
    for name in ["before-3.sqlite", "before-20.sqlite", "before-100.sqlite", "mine.sqlite"] {
        std::fs::write(copies.join(name), "").unwrap();
    }
    open(folder.path());
    let newest = format!("before-{}.sqlite", newest_schema());
    assert_eq!(
        names(&copies),
        ["before-100.sqlite", "before-20.sqlite", newest.as_str(), "mine.sqlite"]
    );
}

/// A kill leaves the journal of the change that it cut off: that is rolled back, not stumbled over.
#[test]
fn f04_a_change_that_was_cut_off_is_rolled_back_first() {
    let folder = Folder::new();
    let (live, data) = (folder.path().join("live"), folder.path().join("data"));
    released(&live, RELEASED[0].1);
    std::fs::create_dir(&data).unwrap();
    notes::block(async {
        let file = live.join(FILE_NAME);
        let mut connection = SqliteConnectOptions::new().filename(file).connect().await.unwrap();
        // So many rows that some are in the file before the transaction ends.
        sqlx::raw_sql(
            "PRAGMA cache_size = 2;
             BEGIN IMMEDIATE;
             WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000)
             INSERT INTO reference_entry (id, kind, slug, title, digest)
             SELECT 'half/' || i, 'half', i, 'half', printf('%064d', i) FROM n",
        )
        .execute(&mut connection)
        .await
        .unwrap();
        for suffix in ["", "-journal"] {
            let name = format!("{FILE_NAME}{suffix}");
            std::fs::copy(live.join(&name), data.join(&name)).unwrap();
        }
        connection.close().await.unwrap();
    });
    open(&data);
    let half = "SELECT count(*) FROM reference_entry WHERE kind = 'half'";
    assert_eq!(notes::number(&data.join(FILE_NAME), half), 0);
    let copy = data.join(format!("copies/before-{}.sqlite", newest_schema()));
    assert_eq!(notes::number(&copy, half), 0);
}

#[test]
fn o13_without_a_copy_the_schema_stays_as_it_is() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    released(&data, RELEASED[0].1);
    std::fs::write(data.join("copies"), "in the way").unwrap();
    let before = bytes(&data);
    refused(&serve(&data), &["copies", "left as it is"]);
    assert!(bytes(&data) == before);
}

#[test]
fn o13_no_command_changes_the_schema_under_a_running_server() {
    for (version, sql) in RELEASED {
        check_left_to_its_server(version, sql);
    }
}

/// A server of this schema is at work: it holds the folder, and its last row is in the log alone.
#[track_caller]
fn check_left_to_its_server(version: i64, sql: &str) {
    let folder = Folder::new();
    let data = folder.path().join("data");
    released(&data, sql);
    let file = data.join(FILE_NAME);
    let runtime = tokio::runtime::Runtime::new().unwrap();
    let options = SqliteConnectOptions::new().filename(&file).pragma("journal_mode", "WAL");
    let held = FolderLock::take(&data).unwrap();
    let mut server = runtime.block_on(options.connect()).unwrap();
    let serves = "UPDATE write_probe SET written_at = written_at + 1";
    let written_at = "SELECT written_at FROM write_probe";
    let first = notes::number(&file, written_at);
    runtime.block_on(sqlx::query(serves).execute(&mut server)).unwrap();
    // The index of the log is no content.
    let contents =
        || bytes(&data).into_iter().filter(|(name, _)| !name.ends_with("-shm")).collect::<Vec<_>>();
    let before = contents();

    let (old, new) = (version.to_string(), newest_schema().to_string());
    for command in [&["invite", "--secretary"][..], &["reset", "Enid Hathersage"]] {
        let words = [&old, &new, data.to_str().unwrap(), "another holewright", "stop it first"];
        refused(&run(&data, command), &words);
        assert!(contents() == before, "{command:?} touched something");
    }
    refused(&run(&data, &["demo"]), &["another holewright", "stop it first"]);
    assert!(contents() == before);
    assert!(!data.join("copies").exists());
    let written = runtime.block_on(sqlx::query(serves).execute(&mut server)).unwrap();
    assert_eq!(written.rows_affected(), 1, "the server serves on");
    runtime.block_on(server.close()).unwrap();

    // Once it has stopped, a command does as a start would: a copy, then the newest schema.
    drop(held);
    let link = done(&run(&data, &["invite", "--secretary"]));
    assert!(link.contains("/join/"), "{link}");
    let schema = "SELECT max(version) FROM _sqlx_migrations";
    assert_eq!(notes::number(&file, schema), newest_schema());
    assert_eq!(names(&data.join("copies")), [format!("before-{new}.sqlite")]);
    let copied = data.join(format!("copies/before-{new}.sqlite"));
    assert_eq!(notes::number(&copied, written_at), first + 2);

    // And beside a server of its own schema it writes its row.
    let _held = FolderLock::take(&data).unwrap();
    let slips = notes::number(&file, "SELECT count(*) FROM slip");
    done(&run(&data, &["invite"]));
    assert_eq!(notes::number(&file, "SELECT count(*) FROM slip"), slips + 1);
}

#[test]
fn o13_no_command_makes_the_database_that_a_server_is_about_to_make() {
    let folder = Folder::new();
    let held = FolderLock::take(folder.path()).unwrap();
    for command in [&["invite"][..], &["reset", "Enid Hathersage"]] {
        refused(&run(folder.path(), command), &["no database in", "start the server"]);
    }
    refused(&run(folder.path(), &["demo"]), &["another holewright", "stop it first"]);
    assert!(names(folder.path()).is_empty());
    drop(held);
}

#[test]
fn o14_a_newer_schema_is_refused_by_name_and_nothing_is_touched() {
    let folder = Folder::new();
    let data = folder.path().join("data");
    // The copy that the newer program made, and one of its own later copies.
    released(&data.join("copies"), RELEASED[0].1);
    let copy = data.join("copies/before-29991231235959.sqlite");
    std::fs::rename(data.join("copies").join(FILE_NAME), &copy).unwrap();
    notes::fill(&data, "newer", 1, 50);
    notes::execute(&data.join(FILE_NAME), NEWER);
    let later = data.join("copies/before-29991231235960.sqlite");
    std::fs::copy(data.join(FILE_NAME), &later).unwrap();
    let before = (bytes(&data), bytes(&data.join("copies")));

    let (known, named) = (newest_schema().to_string(), copy.to_str().unwrap());
    let command = format!("holewright restore --data-dir {} {named}", data.display());
    let refusal = ["29991231235959", &known, &command];
    refused(&serve(&data), &refusal);
    assert!((bytes(&data), bytes(&data.join("copies"))) == before, "something was touched");

    // The command that it names does what it says.
    done(&run(&data, &["restore", named]));
    open(&data);
}

#[test]
fn o14_a_newer_program_that_was_killed_left_its_log_and_that_is_not_touched_either() {
    let folder = Folder::new();
    let (data, live) = (folder.path().join("data"), folder.path().join("live"));
    notes::fill(&live, "newer", 1, 50);
    std::fs::create_dir(&data).unwrap();
    let runtime = tokio::runtime::Runtime::new().unwrap();
    runtime.block_on(async {
        let database = Database::open(&live).await.unwrap();
        let [_, writer] = database.pools();
        sqlx::raw_sql(NEWER).execute(writer).await.unwrap();
        // As a kill leaves them: the last rows are in the log alone.
        for suffix in ["", "-wal"] {
            let name = format!("{FILE_NAME}{suffix}");
            std::fs::copy(live.join(&name), data.join(&name)).unwrap();
        }
        database.close().await;
    });
    let before = bytes(&data);
    let refusal = ["29991231235959", "holewright restore"];
    refused(&serve(&data), &refusal);
    let after = bytes(&data).into_iter().filter(|(name, _)| !name.ends_with("-shm"));
    assert!(after.collect::<Vec<_>>() == before, "something was touched");
}
