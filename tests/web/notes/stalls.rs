//! U31: what takes long to make does not stand in the way of other answers.

use std::time::{Duration, Instant};

use axum::http::StatusCode;
use tokio::time::sleep;

use super::club::{Club, Right};

/// The longest text, of letters in no order: the hardest to compare with another such.
fn hard(salt: u32) -> String {
    let mut state = salt;
    let letters = (0..6_600).map(|_| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        char::from(b'a' + u8::try_from(state >> 24).unwrap() % 26)
    });
    letters.flat_map(|letter| ['q', letter, ' ']).collect()
}

/// One thread answers everything here, as one of two does on a small machine: while it compares, it
/// answers nobody.
#[tokio::test]
async fn u31_eight_readers_of_a_hard_history_hold_nobody_up() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let first = hard(1);
    let fields = [("title", "Tapping"), ("text", first.as_str()), ("on", "gunmetal")];
    let note = club.shown(&author, &moderator, &fields).await;
    for salt in 2..8 {
        let text = hard(salt);
        let fields =
            [("title", "Tapping"), ("text", text.as_str()), ("on", "gunmetal"), ("do", "send")];
        let sent = club.post(&format!("/notes/{note}/edit"), Some(&author), &fields).await;
        assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.body);
        let passed = club.decide(&moderator, note, ("pass", "")).await;
        assert_eq!(passed.status, StatusCode::SEE_OTHER, "{}", passed.body);
    }
    let path = format!("/notes/{note}/history");
    let alone = Instant::now();
    assert_eq!(club.get(&path, None).await.status, StatusCode::OK);
    let alone = alone.elapsed();
    let eight = async {
        let one = || club.get(&path, None);
        tokio::join!(one(), one(), one(), one(), one(), one(), one(), one())
    };
    let mut longest = Duration::ZERO;
    let ticks = async {
        loop {
            let since = Instant::now();
            sleep(Duration::from_millis(1)).await;
            assert_eq!(club.get("/healthz", None).await.status, StatusCode::OK);
            longest = longest.max(since.elapsed());
        }
    };
    let answers = tokio::select! {
        answers = eight => answers,
        () = ticks => unreachable!(),
    };
    assert_eq!(answers.7.status, StatusCode::OK);
    assert!(longest < Duration::from_millis(200), "{longest:?} beside eight of {alone:?}");
}
