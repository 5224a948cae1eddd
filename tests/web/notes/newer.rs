//! A newer wording of one's own stands on the note's page, for its author alone.

use super::club::{Club, Right};

#[tokio::test]
async fn an_author_sees_the_newer_wording_beside_the_shown_one() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let fields = [("title", "Tapping"), ("text", "Slowly.")];
    let note = club.shown(&author, &moderator, &fields).await;
    let page = format!("/notes/{note}");
    assert!(!club.get(&page, Some(&author)).await.body.contains("newer wording"));
    let newer = "Slower still, with tallow.";
    for (what, state) in [
        ("draft", "A newer wording of yours is a draft"),
        ("send", "A newer wording of yours waits for a moderator"),
    ] {
        let fields = [("title", "Tapping"), ("text", newer), ("do", what)];
        club.post(&format!("{page}/edit"), Some(&author), &fields).await;
        let body = club.get(&page, Some(&author)).await.body;
        assert!(body.contains("Slowly.") && body.contains(newer) && body.contains(state), "{body}");
        for by in [None, Some(&moderator)] {
            let body = club.get(&page, by).await.body;
            assert!(!body.contains(newer) && !body.contains("newer wording"), "{body}");
        }
    }
    club.decide(&moderator, note, ("change", "Say how slow.")).await;
    let body = club.get(&page, Some(&author)).await.body;
    let asked = "A newer wording of yours is back with you. What is asked for: Say how slow.";
    assert!(body.contains(asked) && body.contains(newer), "{body}");
}
