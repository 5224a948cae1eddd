//! How long a search among many notes takes: `cargo bench --bench notes`, with `NOTES=100000` for the
//! larger club. It prints what it measured and fails above the bar.

#![expect(
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a bench that cannot run ends, and prints what it measured"
)]

use std::time::{Duration, Instant};

use clap::Parser;
use holewright_server::App;
use holewright_server::config::CommandLine;
use holewright_server::db::Database;
use holewright_server::db::notes::lists::{Filter, shown};
use holewright_server::db::notes::search::find;
use holewright_server::rules::clock::Clock;

/// p99 of a search, at any size up to a hundred thousand notes.
const BAR: Duration = Duration::from_millis(20);
const ROUNDS: usize = 200;

const METALS: [&str; 6] =
    ["gunmetal", "silver steel", "free cutting brass", "copper", "cast iron", "stainless 303"];
const WORDS: [&str; 24] = [
    "drill", "tap", "slow", "paraffin", "broke", "clean", "thread", "deep", "blind", "swarf",
    "lathe", "pillar", "chuck", "spot", "reamer", "cutting", "grease", "tallow", "speed", "feed",
    "burr", "café", "true", "ran",
];
/// Rare words, words every note has, begun words, several words.
const QUERIES: [&str; 10] = [
    "gunmetal",
    "note",
    "drill paraffin",
    "cafe",
    "n",
    "steel tallow deep",
    "zebra",
    "note 4711",
    "paraf",
    "drill tal",
];

fn main() {
    let count: u32 =
        std::env::var("NOTES").ok().and_then(|count| count.parse().ok()).unwrap_or(10_000);
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build().unwrap();
    runtime.block_on(measure(count));
}

async fn measure(count: u32) {
    let folder = std::env::temp_dir().join(format!("holewright-bench-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let line = CommandLine::try_parse_from(["holewright", "--data-dir", folder.to_str().unwrap()]);
    let base_url = "https://club.test".parse().unwrap();
    let app = App::open(line.unwrap().config, base_url, Clock::System).await.unwrap();
    fill(&app.database, count).await;
    let filters = [
        ("any", Filter::default()),
        ("on 4 BA", Filter { on: vec!["threads/ba/4".into()], ..Filter::default() }),
        ("confirmed", Filter { confirmed_only: true, ..Filter::default() }),
    ];
    let mut worst = Duration::ZERO;
    for (name, filter) in &filters {
        for query in QUERIES {
            let mut times = Vec::new();
            let mut hits = 0;
            for _ in 0..ROUNDS {
                let began = Instant::now();
                hits = find(&app.database, query, filter, 20).await.unwrap().len();
                times.push(began.elapsed());
            }
            worst = worst.max(report(&format!("“{query}”, {name}, {hits} hits"), &mut times));
        }
        let mut times = Vec::new();
        for round in 0..ROUNDS {
            let before = i64::from(count) - i64::try_from(round).unwrap() * 7;
            let began = Instant::now();
            shown(&app.database, filter, Some(before), 20).await.unwrap();
            times.push(began.elapsed());
        }
        worst = worst.max(report(&format!("the list, {name}"), &mut times));
    }
    app.database.close().await;
    std::fs::remove_dir_all(&folder).unwrap();
    println!("{count} notes: worst p99 {worst:?}, the bar is {BAR:?}");
    assert!(worst <= BAR, "too slow");
}

fn report(what: &str, times: &mut [Duration]) -> Duration {
    times.sort();
    let p99 = times[times.len() * 99 / 100];
    println!("{what}: p50 {:?}, p99 {p99:?}", times[times.len() / 2]);
    p99
}

/// Notes of a hundred words, every third on 4 BA, every fourth confirmed.
async fn fill(database: &Database, count: u32) {
    let [_, writer] = database.pools();
    let mut transaction = writer.begin().await.unwrap();
    sqlx::query(
        "INSERT INTO member (id, name, name_key, password_hash, joined_at) VALUES (1, 'A', 'a', '$argon2id$x', 1)",
    )
    .execute(&mut *transaction)
    .await
    .unwrap();
    let mut chance = 1_u32;
    let mut next = move |most: usize| {
        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        usize::try_from(chance >> 8).unwrap() % most
    };
    for id in 1..=count {
        let metal = METALS[next(METALS.len())];
        let text: Vec<&str> = (0..100).map(|_| WORDS[next(WORDS.len())]).collect();
        let (title, text) = (format!("Note {id} in {metal}"), text.join(" "));
        let confirmed = (id % 4 == 0).then_some(id);
        sqlx::query("INSERT INTO note (id, author_id, form_key, made_at) VALUES (?, 1, ?, 1)")
            .bind(id)
            .bind(format!("{id:032}"))
            .execute(&mut *transaction)
            .await
            .unwrap();
        sqlx::query(
            "INSERT INTO note_version (id, note_id, state, title, text, material, made_at, saved_at)
             VALUES (?1, ?1, 'shown', ?2, ?3, ?4, 1, 1)",
        )
        .bind(id)
        .bind(&title)
        .bind(&text)
        .bind(metal)
        .execute(&mut *transaction)
        .await
        .unwrap();
        sqlx::query(
            "UPDATE note SET shown_version = id, shown_at = 1, confirmed_at = ? WHERE id = ?",
        )
        .bind(confirmed)
        .bind(id)
        .execute(&mut *transaction)
        .await
        .unwrap();
        if id % 3 == 0 {
            sqlx::query("INSERT INTO note_entry (version_id, entry_id) VALUES (?, 'threads/ba/4')")
                .bind(id)
                .execute(&mut *transaction)
                .await
                .unwrap();
        }
        sqlx::query(
            "INSERT INTO note_text (rowid, title, text, done, marks)
             SELECT ?1, ?2, ?3, ?4, marks FROM note_mark WHERE id = ?1",
        )
        .bind(id)
        .bind(&title)
        .bind(&text)
        .bind(if id % 3 == 0 { format!("{metal} · 4 BA") } else { metal.to_owned() })
        .execute(&mut *transaction)
        .await
        .unwrap();
    }
    transaction.commit().await.unwrap();
}
