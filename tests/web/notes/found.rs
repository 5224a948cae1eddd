//! What is shown is found, whoever writes at the same time.

use std::sync::Arc;

use axum::http::StatusCode;

use super::club::{Club, Right};

const ROUNDS: usize = 12;

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn corrections_of_several_at_once_are_all_found() {
    let club = Arc::new(Club::open().await);
    let author = club.join("Ada Penn", Right::None).await;
    let mut moderators = Vec::new();
    for name in ["Moira", "Morag", "Myrtle"] {
        moderators.push(club.join(name, Right::Moderator).await);
    }
    let mut shown = 0;
    for round in 0..ROUNDS {
        let title = format!("Round {round}");
        let fields = [("title", title.as_str()), ("text", "Drilled No. 43."), ("thread", "4 BA")];
        let note = club.shown(&author, &moderators[0], &fields).await;
        let version = club.version(note, "shown").await.to_string();
        let word = |by: usize| format!("saying{round}x{by}");
        let mut sent = Vec::new();
        for (by, moderator) in moderators.iter().enumerate() {
            let (club, moderator, version) =
                (Arc::clone(&club), moderator.clone(), version.clone());
            let text = format!("It was {} all along.", word(by));
            sent.push(tokio::spawn(async move {
                let fields = [("version", version.as_str()), ("correction", text.as_str())];
                club.post(&format!("/notes/{note}/correct"), Some(&moderator), &fields).await
            }));
        }
        for (by, sent) in sent.into_iter().enumerate() {
            let answer = sent.await.unwrap();
            assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.body);
            let page = club.get(&format!("/notes/{note}"), None).await;
            assert!(page.body.contains(&word(by)), "the correction is shown");
            shown += 1;
        }
    }
    assert_eq!(shown, ROUNDS * moderators.len());
    let mut lost = Vec::new();
    for round in 0..ROUNDS {
        for by in 0..moderators.len() {
            let word = format!("saying{round}x{by}");
            let found = club.get(&format!("/notes?q={word}"), None).await;
            if !found.body.contains(&format!("Round {round}")) {
                lost.push(word);
            }
        }
    }
    assert_eq!(lost, [""; 0], "shown, and not found");
}
