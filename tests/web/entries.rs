//! The projection of the tables into `reference_entry`.

use std::collections::BTreeSet;

use holewright_core::calculators::CALCULATORS;
use holewright_core::tables::{drills, materials, threads};
use holewright_server::db::reference::{Projected, digest, project};
use holewright_server::entries::{self, Entry, Kind};
use sqlx::Row;

use crate::support::{Folder, NOW, Server, open};

async fn ids(server: &Server) -> BTreeSet<String> {
    let [readers, _] = server.app.database.pools();
    sqlx::query("SELECT id FROM reference_entry WHERE retired_at IS NULL")
        .fetch_all(readers)
        .await
        .unwrap()
        .iter()
        .map(|row| row.get(0))
        .collect()
}

#[tokio::test]
async fn every_address_of_the_tables_has_a_row() {
    let server = Server::start().await;
    let pages: BTreeSet<String> = threads::systems()
        .iter()
        .map(|system| format!("/threads/{}", system.slug))
        .chain(threads::all().map(threads::Thread::path))
        .chain(drills::all().iter().map(drills::Drill::path))
        .chain(materials::all().iter().map(|material| format!("/materials/{}", material.slug)))
        .chain(CALCULATORS.iter().map(|calculator| calculator.path()))
        .map(|path| path.trim_start_matches('/').to_owned())
        .collect();
    assert!(pages.len() > 20);
    assert_eq!(ids(&server).await, pages);
}

#[tokio::test]
async fn a_restart_writes_nothing() {
    let folder = Folder::new();
    open(&folder, "https://club.test").await.database.close().await;
    let app = open(&folder, "https://club.test").await;
    let again = project(&app.database, &entries::all(), NOW).await.unwrap();
    assert_eq!(again, Projected { written: 0, retired: 0 });
}

fn sample(size: &str, digit: char) -> Entry {
    Entry {
        id: format!("threads/ba/{size}"),
        kind: Kind::Thread,
        slug: format!("ba/{size}"),
        title: format!("{size} BA"),
        digest: digit.to_string().repeat(64),
    }
}

#[tokio::test]
async fn only_what_differs_is_written_and_what_goes_is_kept() {
    let server = Server::start().await;
    let database = &server.app.database;
    let standing = ids(&server).await.len() as u64;

    let first = [sample("90", 'a'), sample("91", 'a')];
    let done = project(database, &first, NOW).await.unwrap();
    assert_eq!(done, Projected { written: 2, retired: standing });

    let changed = [sample("90", 'a'), sample("91", 'b')];
    let done = project(database, &changed, NOW).await.unwrap();
    assert_eq!(done, Projected { written: 1, retired: 0 });
    assert_eq!(digest(database, "threads/ba/91").await.unwrap(), Some("b".repeat(64)));

    let done = project(database, &changed[..1], NOW).await.unwrap();
    assert_eq!(done, Projected { written: 0, retired: 1 });
    assert_eq!(digest(database, "threads/ba/91").await.unwrap(), None);
    let [readers, _] = database.pools();
    let kept = sqlx::query("SELECT retired_at FROM reference_entry WHERE id = 'threads/ba/91'")
        .fetch_one(readers)
        .await
        .unwrap();
    assert_eq!(kept.get::<i64, _>(0), NOW);

    let done = project(database, &changed, NOW).await.unwrap();
    assert_eq!(done, Projected { written: 1, retired: 0 });
    assert_eq!(digest(database, "threads/ba/91").await.unwrap(), Some("b".repeat(64)));
}

#[test]
fn digests_tell_entries_apart() {
    let entries = entries::all();
    let digests: BTreeSet<_> = entries.iter().map(|entry| &entry.digest).collect();
    assert_eq!(digests.len(), entries.len());
}
