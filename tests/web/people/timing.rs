//! S08, S13: how long a sign-in takes, and what many at once cost.

#![expect(clippy::print_stdout, reason = "what was measured is shown beside the bar it keeps")]

use std::path::Path;
use std::time::{Duration, Instant};

use axum::http::StatusCode;
use holewright_server::db::Database;
use holewright_server::db::sessions::New;
use holewright_server::db::slips::{self, Newcomer};
use holewright_server::rules::auth::password::{Cost, Hashing, Password};
use holewright_server::rules::auth::{Name, Token};
use holewright_server::rules::clock::Clock;
use tokio::task::JoinHandle;

use super::club::{Club, PASSWORD, PLAIN};
use crate::safety::asked::status;
use crate::safety::commands::program;
use crate::safety::storm::Victim;
use crate::support::Folder;

/// Twenty of each, at the full cost: none takes a hash more or less than another.
#[test]
fn s08_an_unknown_name_takes_as_long_as_a_wrong_password() {
    let times = times(20);
    for (kind, one) in KINDS.iter().zip(&times) {
        for (other_kind, other) in KINDS.iter().zip(&times) {
            let is_dearer = is_dearer_by_half(one, other);
            assert!(!is_dearer, "{kind} takes longer than {other_kind}: {times:?}");
        }
    }
    let shortest = times.iter().flatten().min().unwrap();
    assert!(*shortest > Duration::from_millis(5), "nothing was hashed: {times:?}");
}

/// Whether most tries took half as long again as those asked next to them, and the quickest than the
/// quickest. What else runs on the machine slows both sides by chance; a hash more on one side shows
/// in both ways.
fn is_dearer_by_half(one: &[Duration], other: &[Duration]) -> bool {
    let is_dearer = |one: &Duration, other: &Duration| *one > *other * 3 / 2;
    let dearer = one.iter().zip(other).filter(|(one, other)| is_dearer(one, other)).count();
    2 * dearer > one.len() && is_dearer(one.iter().min().unwrap(), other.iter().min().unwrap())
}

#[test]
fn s08_a_hash_more_is_seen_on_a_busy_machine_and_no_hash_more_is_not() {
    // A hash takes between one time and two, as the machine is.
    let hashes = |count: u32, first: u64| -> Vec<Duration> {
        (0..20)
            .map(|number| {
                let busy = (first + number * 7) % 10;
                Duration::from_millis(10 + busy) * count
            })
            .collect()
    };
    assert!(!is_dearer_by_half(&hashes(1, 0), &hashes(1, 4)));
    assert!(!is_dearer_by_half(&hashes(1, 4), &hashes(1, 0)));
    assert!(is_dearer_by_half(&hashes(2, 0), &hashes(1, 4)));
    assert!(is_dearer_by_half(&hashes(2, 4), &hashes(1, 0)));
}

#[test]
#[ignore = "300 of each want the machine to themselves: tests/run --soak"]
fn s08_an_unknown_name_takes_as_long_within_five_percent() {
    let mut medians = times(300).map(|mut times| {
        times.sort();
        times[times.len() / 2]
    });
    medians.sort();
    let [shortest, _, longest] = medians;
    println!("S08: unknown name, wrong password, stopped member: medians {medians:?}");
    assert!(longest.as_secs_f64() / shortest.as_secs_f64() <= 1.05, "{medians:?}");
}

/// The times of so many sign-ins by unknown names, by wrong passwords and by stopped members, in
/// turn, at the program itself behind a proxy that it trusts. Each try is by a name of its own from
/// an address of its own, so that no limit is met.
fn times(tries: usize) -> [Vec<Duration>; 3] {
    let folder = Folder::new();
    let data = folder.path().join("data");
    tokio::runtime::Runtime::new().unwrap().block_on(fill(&data, tries));
    let mut serve = program();
    serve.args(["--listen", "127.0.0.1:0", "--second-factor", "relaxed"]);
    serve.args(["--trusted-proxy", "127.0.0.1", "--data-dir"]).arg(&data);
    let server = Victim::start(&serve);
    let mut times = [Vec::new(), Vec::new(), Vec::new()];
    for number in 0..tries {
        let passwords = [PASSWORD, "some other words here", PASSWORD];
        for (place, (kind, password)) in KINDS.into_iter().zip(passwords).enumerate() {
            let client = format!("10.{place}.{}.{}", number / 250, number % 250);
            let form = format!("name={kind}+{number}&password={}", password.replace(' ', "+"));
            let request = format!(
                "POST /sign-in HTTP/1.1\r\nHost: {}\r\nX-Forwarded-For: {client}\r\n\
                 Sec-Fetch-Site: same-origin\r\nContent-Type: application/x-www-form-urlencoded\r\n\
                 Content-Length: {}\r\nConnection: close\r\n\r\n{form}",
                server.address,
                form.len()
            );
            let begun = Instant::now();
            let status = status(server.address, &request);
            times[place].push(begun.elapsed());
            assert_eq!(status, Some(422), "{kind} {number}");
        }
    }
    times
}

/// Who tries.
const KINDS: [&str; 3] = ["Stray", KNOWN, STOPPED];
/// Whoever may sign in, with another password.
const KNOWN: &str = "Known";
/// Whoever the secretary stopped, with the right one.
const STOPPED: &str = "Stopped";

/// So many members of either kind.
async fn fill(data: &Path, members: usize) {
    let database = Database::open(data).await.unwrap();
    let hash = Hashing::at(Cost::default()).hash(Password::typed(PASSWORD)).await.unwrap();
    for number in 0..members {
        for kind in [KNOWN, STOPPED] {
            add_member(&database, &format!("{kind} {number}"), &hash).await;
        }
    }
    let [_, writer] = database.pools();
    sqlx::query("UPDATE member SET stopped_at = joined_at WHERE name LIKE 'Stopped %'")
        .execute(writer)
        .await
        .unwrap();
    database.close().await;
}

async fn add_member(database: &Database, name: &str, password_hash: &str) {
    let (slip, session) = (Token::new().unwrap(), Token::new().unwrap());
    let now = Clock::System.now();
    slips::invite(database, now, None, slip.hash(), PLAIN, "").await.unwrap();
    let name = Name::read(name).unwrap();
    let session = New { token: session.hash(), agent: "" };
    let newcomer = Newcomer { name: &name, password_hash, session };
    slips::join(database, now, slip.hash(), newcomer).await.unwrap();
}

/// While every core that may hash does, a page is answered before the first of them is done: hashes
/// so dear that only a page that waits for one comes after it.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn s13_a_page_does_not_wait_for_sign_ins() {
    let club = Club::start().await.at_cost(Cost { passes: 30, ..Cost::default() }).await;
    let passwords = &club.app.passwords;
    let tries: Vec<_> = (0..passwords.free()).map(|number| try_one(&club, number)).collect();
    while passwords.free() > 0 {
        assert!(!tries.iter().all(JoinHandle::is_finished), "they were never all at work");
        tokio::time::sleep(Duration::from_millis(1)).await;
    }
    let mut browser = club.browser();
    // By the threads that answer everybody.
    let page = tokio::spawn(async move { browser.get("/threads/ba/5").await.status });
    assert_eq!(page.await.unwrap(), StatusCode::OK);
    assert_eq!(passwords.free(), 0, "a hash was done before the page");
    for told in tries {
        assert_eq!(told.await.unwrap(), StatusCode::UNPROCESSABLE_ENTITY);
    }
}

/// Somebody tries a name that nobody has, from an address of their own.
fn try_one(club: &Club, number: usize) -> JoinHandle<StatusCode> {
    let mut browser = club.browser().from(&format!("10.0.0.{number}"));
    tokio::spawn(async move {
        browser.sign_in(&format!("Stray {number}"), "some other words here").await.status
    })
}

/// Thirty at once at the full cost: no more are hashed at a time than there are cores, and whoever
/// waits too long is asked to come again.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn s13_many_sign_ins_at_once_take_turns() {
    let club = Club::at_full_cost().await;
    let cores = club.app.passwords.free();
    let tries: Vec<_> = (0..30).map(|number| try_one(&club, number)).collect();
    let mut least_free = cores;
    while !tries.iter().all(JoinHandle::is_finished) {
        least_free = least_free.min(club.app.passwords.free());
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
    assert_eq!(least_free, 0, "they were never all at work: nothing is shown by this");
    for told in tries {
        let status = told.await.unwrap();
        let told = [StatusCode::UNPROCESSABLE_ENTITY, StatusCode::SERVICE_UNAVAILABLE];
        assert!(told.contains(&status), "{status}");
    }
    assert_eq!(club.app.passwords.free(), cores, "every turn came back");
}
