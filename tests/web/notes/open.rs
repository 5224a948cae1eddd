//! How much there is to see to stands in the head of a member's own pages, and on none that is the same for all.

use super::club::{Club, Person, Right};

/// The words of the link to the notes in the head.
fn door(page: &str) -> &str {
    let (_, head) = page.split_once("<ul class=\"club\">").unwrap();
    let (_, link) = head.split_once("href=\"/notes\"").unwrap();
    link.split_once('>').unwrap().1.split('<').next().unwrap()
}

async fn told(club: &Club, path: &str, by: &Person) -> String {
    door(&club.get(path, Some(by)).await.body).to_owned()
}

#[tokio::test]
async fn the_head_counts_what_a_member_has_to_see_to() {
    let club = Club::open().await;
    let author = club.join("Ada Penn", Right::None).await;
    let moderator = club.join("Bert Stone", Right::Moderator).await;
    let inspector = club.join("Ina Flint", Right::Inspector).await;
    let own = ["/notes", "/notes/mine", "/notes/new", "/me", "/notes/compare"];
    for path in own {
        assert_eq!(told(&club, path, &author).await, "Notes", "{path}");
    }
    let shown = club.shown(&author, &moderator, &[("title", "A"), ("text", "T")]).await;
    let back = club.send_in(&author, &[("title", "B"), ("text", "T")]).await;
    club.send_in(&author, &[("title", "C"), ("text", "For the boiler.")]).await;
    club.post(&format!("/notes/{shown}/remark"), Some(&author), &[("remark", "More.")]).await;
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (3)");
    assert_eq!(told(&club, "/me", &inspector).await, "Notes (1)");
    assert_eq!(told(&club, "/me", &author).await, "Notes", "it waits for others");
    let page = club.get("/me", Some(&moderator)).await.body;
    assert!(page.contains("The queue (3 to decide)"), "{page}");

    club.decide(&moderator, back, ("change", "Say how.")).await;
    for path in own.into_iter().chain([format!("/notes/{shown}").as_str()]) {
        assert_eq!(told(&club, path, &author).await, "Notes (1)", "{path}");
    }
    assert!(club.get("/me", Some(&author)).await.body.contains("Your notes (1 to change)"));
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (2)");
    // What is the same for all says nothing of anybody.
    for path in ["/", "/threads/ba/8", "/drawer", "/privacy"] {
        let (page, all) = (club.get(path, Some(&author)).await, club.get(path, None).await);
        assert_eq!(page.body, all.body, "{path}");
        assert!(!page.body.contains("Notes ("), "{path}");
    }
    // A hidden note is to be looked at; one's own is for another.
    club.post(&format!("/notes/{shown}/report"), Some(&inspector), &[("danger", "It bites.")])
        .await;
    assert_eq!(told(&club, "/me", &moderator).await, "Notes (3)");
    assert_eq!(told(&club, "/me", &inspector).await, "Notes (1)");
}

#[tokio::test]
async fn what_is_counted_is_what_they_may_decide() {
    let club = Club::open().await;
    let una = club.join("Una Oakes", Right::Secretary).await;
    let own = club.send_in(&una, &[("title", "A"), ("text", "T")]).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (1)", "nobody else could decide");
    club.send_in(&una, &[("title", "B"), ("text", "For the boiler.")]).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (2)", "to send back");
    let bert = club.join("Bert Stone", Right::Moderator).await;
    assert_eq!(told(&club, "/me", &una).await, "Notes (1)", "the other moderator’s now");
    assert_eq!(told(&club, "/me", &bert).await, "Notes (2)");
    club.decide(&bert, own, ("pass", "")).await;
    let ada = club.join("Ada Penn", Right::None).await;
    club.post(&format!("/notes/{own}/remark"), Some(&ada), &[("remark", "So did mine.")]).await;
    assert_eq!(told(&club, "/me", &bert).await, "Notes (2)");
    assert_eq!(told(&club, "/me", &una).await, "Notes (1)", "on a note of her own");
}
