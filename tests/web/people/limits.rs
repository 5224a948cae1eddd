//! S10, S11: how often a password may be tried, from one address and for one name.

use std::time::{Duration, Instant};

use axum::http::{HeaderValue, StatusCode};
use holewright_server::rules::auth::tries::{self, Tries};

use super::club::{Club, PASSWORD, PLAIN};

const WRONG: &str = "not the password at all";

#[tokio::test]
async fn s10_the_eleventh_wrong_try_from_one_address_waits_and_nobody_else_does() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let mut guesser = club.browser().from("192.0.2.1");
    for number in 1..=10 {
        let answer = guesser.sign_in("Enid Hathersage", WRONG).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "try {number}");
    }
    for name in ["Enid Hathersage", "Nobody Atall"] {
        let answer = guesser.sign_in(name, WRONG).await;
        assert_eq!(answer.status, StatusCode::TOO_MANY_REQUESTS);
        let wait: u64 = answer.header("retry-after").parse().unwrap();
        assert!((1..=60).contains(&wait), "{wait}");
        assert!(answer.header("content-type").starts_with("text/html"));
        assert!(answer.body.contains("you may try again in"), "{}", answer.body);
    }
    let mut member = club.browser().from("198.51.100.7");
    let answer = member.sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "the right password elsewhere works at once");
}

/// A form that was read comes back with what was typed, but for secrets, and says what to do.
#[tokio::test]
async fn u06_a_form_that_must_wait_comes_back() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    for _ in 0..12 {
        let mut guesser = club.browser().from("192.0.2.1");
        guesser.sign_in("Enid Hathersage", WRONG).await;
        member.post("/prove", &[("password", WRONG)]).await;
    }
    let leave = [("notes", "remove"), ("password", PASSWORD)];
    let new = [("password", PASSWORD), ("new_password", "nine copper herons wading")];
    let mut guesser = club.browser().from("192.0.2.1");
    let next = [("name", "Enid Hathersage"), ("password", PASSWORD), ("next", "/notes/new")];
    for (answer, given_back) in [
        (guesser.post("/sign-in", &next).await, "value=\"Enid Hathersage\""),
        (guesser.post("/sign-in", &next).await, "name=\"next\" value=\"/notes/new\""),
        (member.post("/me/leave", &leave).await, "value=\"remove\" checked"),
        (member.post("/me/password", &new).await, "name=\"new_password\""),
        (member.post("/prove", &[("next", "/people")]).await, "value=\"/people\""),
    ] {
        assert_eq!(answer.status, StatusCode::TOO_MANY_REQUESTS, "{given_back}");
        assert!(answer.headers.contains_key("retry-after"), "{given_back}");
        assert!(answer.body.contains(given_back), "{given_back}: {}", answer.body);
        for words in ["Nothing was done", "10 cost no wait", "you may try again in"] {
            assert!(answer.body.contains(words), "{words}: {}", answer.body);
        }
        assert!(!answer.body.contains(PASSWORD) && !answer.body.contains("herons"));
    }
}

#[tokio::test]
async fn s10_signing_in_rightly_uses_nothing_up() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    for _ in 0..25 {
        let mut browser = club.browser().from("192.0.2.1");
        let answer = browser.sign_in("Enid Hathersage", PASSWORD).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER, "a clubroom behind one address");
    }
}

#[tokio::test]
async fn s10_an_address_made_up_by_the_reader_changes_nothing() {
    let club = Club::start().await;
    let mut told = Vec::new();
    for number in 0..12 {
        let mut browser = club.browser().from("192.0.2.1");
        let body = format!("name=Nobody+{number}&password=not+the+password+at+all");
        let forwarded = format!("203.0.113.{number}");
        let headers = [
            ("content-type", "application/x-www-form-urlencoded"),
            ("x-forwarded-for", forwarded.as_str()),
        ];
        let answer = browser.send(axum::http::Method::POST, "/sign-in", &headers, &body).await;
        told.push(answer.status.as_u16());
    }
    assert_eq!(told, [[422; 10].as_slice(), &[429, 429]].concat());
}

#[tokio::test]
async fn s11_fifty_wrong_tries_from_fifty_addresses_slow_each_other_down() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let begun = Instant::now();
    let (mut told, mut wait) = (Vec::new(), 0);
    // At least fifty, and until the wait is so long that the next question comes within it.
    while told.len() < 50 || wait < 4 {
        let number = told.len();
        let from = format!("10.9.{}.{}", number / 250 % 250, number % 250);
        let answer = club.browser().from(&from).sign_in("Enid Hathersage", WRONG).await;
        told.push(answer.status.as_u16());
        wait = answer.headers.get("retry-after").map_or(0, seconds);
        tokio::time::sleep(Duration::from_millis(5)).await;
    }
    // The right password is kept waiting too, but not for long, and the wait is told.
    let mut member = club.browser().from("198.51.100.7");
    let answer = member.sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(answer.status, StatusCode::TOO_MANY_REQUESTS);
    let wait = seconds(&answer.headers["retry-after"]);
    assert!(wait <= 900, "{wait}");

    let tried = told.iter().filter(|status| **status == 422).count();
    // One more after the first second, after two more, after four more.
    let later = (begun.elapsed().as_secs() + 1).ilog2();
    let most = 11 + usize::try_from(later).unwrap();
    assert!((10..=most).contains(&tried), "{tried} of {} tried", told.len());
    assert_eq!(told[..10], [422; 10]);
    assert!(told[10..].iter().all(|status| [422, 429].contains(status)), "{told:?}");
    assert_eq!(
        club.acts("sign-in-refused").await,
        i64::try_from(tried).unwrap(),
        "each is recorded"
    );

    tokio::time::sleep(Duration::from_secs(wait)).await;
    assert_eq!(member.sign_in("Enid Hathersage", PASSWORD).await.status, StatusCode::SEE_OTHER);
    // And it clears the slate.
    let mut member = club.browser().from("198.51.100.8");
    assert_eq!(
        member.sign_in("Enid Hathersage", WRONG).await.status,
        StatusCode::UNPROCESSABLE_ENTITY
    );
}

fn seconds(header: &HeaderValue) -> u64 {
    header.to_str().unwrap().parse().unwrap()
}

#[test]
fn s11_the_wait_doubles_to_a_quarter_of_an_hour_and_never_further() {
    let seconds: Vec<u64> = (0..=24).map(|wrong| tries::wait(wrong).as_secs()).collect();
    assert_eq!(seconds[..=10], [0; 11]);
    assert_eq!(seconds[11..=20], [1, 2, 4, 8, 16, 32, 64, 128, 256, 512]);
    assert_eq!(seconds[21..], [900; 4]);
    assert_eq!(tries::wait(u32::MAX), tries::LONGEST);
}

/// Played through on a clock of its own: a guesser who tries at every first moment.
#[test]
fn s11_at_most_a_hundred_in_any_hour_and_the_door_opens_again() {
    let tries = Tries::default();
    let begun = Instant::now();
    let mut tried = Vec::new();
    for second in 0..3 * 3600 {
        let now = begun + Duration::from_secs(second);
        while tries.may_try("enid", now).is_ok() {
            tries.tried("enid", now);
            tried.push(second);
        }
    }
    for hour in 0..3 {
        let within =
            tried.iter().filter(|second| (hour * 3600..(hour + 1) * 3600).contains(*second));
        assert!(within.count() <= 100);
    }
    let gap = tried.windows(2).map(|pair| pair[1] - pair[0]).max().unwrap();
    assert!(gap <= 900, "never longer than a quarter of an hour: {gap}");
    assert!(tried.len() > 25, "{}", tried.len());
    // Another name is not touched by it.
    assert!(tries.may_try("percy", begun).is_ok());
    tries.right("enid", begun);
    assert!(tries.may_try("enid", begun).is_ok());
}
