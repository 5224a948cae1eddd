//! U31: a search takes only so long, whatever is written and whatever is asked.

use std::time::{Duration, Instant};

use holewright_server::db::notes::lists::Filter;
use holewright_server::db::notes::search::find;
use holewright_server::rules::notes::around::around;
use holewright_server::rules::notes::fields::TEXT;

use super::shown::{full_of, show};
use crate::notes::club::{Club, Right};

/// A search costs no more than so many among honest notes of the same length.
const DEAREST: u32 = 8;
const NOTES: usize = 40;

/// What is dear to look for: every place of a word against every other, or a word beside itself.
fn hard_queries() -> Vec<String> {
    let beside = |count| vec!["a"; count].join("+");
    let mut queries: Vec<String> =
        ["a", "a + b", "a a a a b b b b", "b a+b", "a b note"].map(str::to_owned).into();
    queries.extend([beside(2), beside(20), vec![beside(20); 12].join(" ")]);
    // The same word in the letters that the index takes for one.
    queries.push("a+á+à+â+ä+ã+å+ā+ă+ą+a+á+à+â+ä+ã+å+ā+ă+ą".to_owned());
    queries.push((2..14).map(beside).collect::<Vec<_>>().join(" "));
    queries
}

/// A club whose notes have this text.
async fn club_of(text: impl Fn(usize) -> String) -> Club {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let mut writer = club.app.database.pools()[1].begin().await.unwrap();
    for number in 0..NOTES {
        let title = format!("Note {number} on drill and tap, a and b");
        show(&mut writer, author.id, &title, &text(number)).await;
    }
    writer.commit().await.unwrap();
    club
}

/// The least of three times, since the first may be cold, and how many notes were found.
async fn cost(club: &Club, typed: &str) -> (Duration, usize) {
    let (mut least, mut found) = (Duration::MAX, 0);
    for _ in 0..3 {
        let since = Instant::now();
        let hits = find(&club.app.database, typed, &Filter::default(), 20).await.unwrap();
        least = least.min(since.elapsed());
        found = hits.len();
    }
    (least, found)
}

#[tokio::test]
async fn u31_no_search_costs_much_more_than_one_among_honest_notes() {
    let words = ["drill", "slow", "paraffin", "clean", "thread", "deep", "swarf", "chuck", "tap"];
    let honest = club_of(|note| full_of(|n| words[(n * n + n / 9 + note) % 9].to_owned())).await;
    let (usual, found) = cost(&honest, "drill tap").await;
    assert_eq!(found, 20);
    let worst = club_of(|note| match note % 4 {
        0 => full_of(|_| "a".to_owned()),
        1 => full_of(|n| ["a", "b"][n % 2].to_owned()),
        2 => full_of(|n| ["a", "a", "a", "b", "b"][n % 5].to_owned()),
        _ => full_of(|n| ["a", "b", "c"][n * n % 7 % 3].to_owned()),
    })
    .await;
    for typed in hard_queries() {
        let (cost, found) = cost(&worst, &typed).await;
        println!("{typed}: {cost:?}, {found} notes, an honest search {usual:?}");
        assert!(cost < DEAREST * usual, "{typed}: {cost:?}, an honest search {usual:?}");
    }
}

/// Words that no note has, each near hundreds that some have.
#[tokio::test]
async fn u31_misspelt_words_cost_no_more_among_notes_of_ten_thousand_words() {
    let letter = |n: usize| char::from(b'a' + u8::try_from(n % 26).unwrap());
    let word = |n: usize| -> String {
        ["wa", "we"][n % 2].chars().chain([n / 2, n / 52, n / 1352].map(letter)).collect()
    };
    let club = club_of(|note| full_of(|n| word(note * 300 + n))).await;
    let (usual, found) = cost(&club, "drill tap").await;
    assert_eq!(found, 20);
    let strange: Vec<String> = (0..12).map(|n| format!("waezz{}zz", letter(n))).collect();
    let (cost, _) = cost(&club, &strange.join(" ")).await;
    println!("{cost:?}, an honest search {usual:?}");
    assert!(cost < DEAREST * usual, "{cost:?}, an honest search {usual:?}");
}

/// What is shown of a note is what the index itself would cut out of it, which takes too long to ask.
#[tokio::test]
async fn u31_a_hit_shows_what_the_index_would_cut_out() {
    let club = Club::open().await;
    let writer = club.app.database.pools()[1];
    sqlx::query(
        "CREATE VIRTUAL TABLE cut USING fts5 (title, text, done, tokenize = 'unicode61 remove_diacritics 2')",
    )
    .execute(writer)
    .await
    .unwrap();
    let words = [
        "tap",
        "Drill",
        "slow",
        "café",
        "3.3 mm",
        "1/4-32",
        "end.",
        "so: it",
        "ran\ntrue",
        "x",
        "Ø 5",
        "über",
        "(clean)",
        "BA",
        "swarf,",
        "cafe\u{301}s",
        "steel",
        "oil",
        "deep",
    ];
    let mut chance = 7_u32;
    let mut next = |most: usize| {
        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        usize::try_from(chance >> 8).unwrap() % most
    };
    let mut compared = 0;
    for row in 0..400_i64 {
        let mut some = |most: usize| {
            let count = next(most) + 1;
            (0..count).map(|_| words[next(words.len())]).collect::<Vec<_>>().join(" ")
        };
        let (title, text, done) = (some(6), some(120), some(12));
        let sought: Vec<&str> = (0..next(3) + 1)
            .map(|_| ["tap", "cafe", "3.3", "1/4", "BA", "ÜBER", "tap drill", "steel"][next(8)])
            .collect();
        let mut sought = sought;
        sought.sort_unstable();
        sought.dedup();
        sqlx::query("INSERT INTO cut (rowid, title, text, done) VALUES (?, ?, ?, ?)")
            .bind(row)
            .bind(&title)
            .bind(&text)
            .bind(&done)
            .execute(writer)
            .await
            .unwrap();
        let asked: Vec<String> = sought.iter().map(|word| format!("\"{word}\"")).collect();
        let by_index: Option<String> = sqlx::query_scalar(
            "SELECT snippet(cut, -1, '[', ']', '…', 24) FROM cut WHERE cut MATCH ? AND rowid = ?",
        )
        .bind(asked.join(" AND "))
        .bind(row)
        .fetch_optional(writer)
        .await
        .unwrap();
        let Some(by_index) = by_index else { continue };
        let ours = around(&[&title, &text, &done], &sought).into_iter();
        let ours =
            ours.map(|part| if part.is_found { format!("[{}]", part.text) } else { part.text });
        assert_eq!(ours.collect::<String>(), by_index, "{sought:?} in {title} | {text} | {done}");
        compared += 1;
    }
    assert!(compared > 100, "{compared}");
}

/// The longest text is as long as may be.
#[test]
fn the_hard_texts_are_as_long_as_may_be() {
    let length = full_of(|_| "a".to_owned()).chars().count();
    assert!(length > TEXT.longest - 3 && length <= TEXT.longest, "{length}");
}
