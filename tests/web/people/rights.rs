//! S23: what weighs more asks for the password once more, and a club keeps a secretary.

use axum::http::StatusCode;

use super::club::{Club, MODERATOR, PASSWORD, PLAIN, SECRETARY};

const QUARTER: i64 = 15 * 60;

#[tokio::test]
async fn s23_the_last_secretary_cannot_go() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let address = format!("/people/{}", club.number_of("Una Secretary").await);
    let before = club.dump().await;
    let acts: [&[(&str, &str)]; 4] = [
        &[("do", "rights"), ("moderator", "yes")],
        &[("do", "stop")],
        &[("do", "remove"), ("notes", "keep")],
        &[("do", "remove"), ("notes", "remove")],
    ];
    for fields in acts {
        let answer = una.post(&address, fields).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{fields:?}");
        assert!(answer.body.contains("make another first"), "{}", answer.body);
        assert!(una.is_in().await, "{fields:?} ended the session");
    }
    let leave = una.post("/me/leave", &[("password", PASSWORD), ("notes", "keep")]).await;
    assert_eq!(leave.status, StatusCode::CONFLICT);
    assert_eq!(club.dump().await, before, "nothing was changed, and nothing recorded as done");

    // With another, each of these may be done; a stopped one does not count.
    let mut otto = club.join("Otto Second", SECRETARY).await;
    let otto_at = format!("/people/{}", club.number_of("Otto Second").await);
    assert_eq!(una.post(&otto_at, &[("do", "stop")]).await.status, StatusCode::SEE_OTHER);
    assert_eq!(una.post(&address, &[("do", "stop")]).await.status, StatusCode::CONFLICT);
    assert_eq!(una.post(&otto_at, &[("do", "allow")]).await.status, StatusCode::SEE_OTHER);
    otto.sign_in("Otto Second", PASSWORD).await;
    let demoted = una.post(&address, &[("do", "rights")]).await;
    assert_eq!(demoted.status, StatusCode::SEE_OTHER);
    assert!(!una.is_in().await, "the session with the old rights is over");
    assert_eq!(otto.post(&otto_at, &[("do", "rights")]).await.status, StatusCode::CONFLICT);
}

/// Two secretaries who demote each other at the same moment: one stays.
#[tokio::test]
async fn s23_two_who_demote_each_other_at_once_leave_one() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut otto = club.join("Otto Second", SECRETARY).await;
    let una_at = format!("/people/{}", club.number_of("Una Secretary").await);
    let otto_at = format!("/people/{}", club.number_of("Otto Second").await);
    let (one, two) = tokio::join!(
        una.post(&otto_at, &[("do", "rights")]),
        otto.post(&una_at, &[("do", "rights")])
    );
    let secretaries = "SELECT COUNT(*) FROM member WHERE is_secretary = 1";
    assert_eq!(club.count(secretaries).await, 1, "{} and {}", one.status, two.status);
}

#[tokio::test]
async fn s23_after_a_quarter_of_an_hour_the_password_is_asked_for_once_more() {
    let club = Club::start().await;
    let una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let number = club.number_of("Enid Hathersage").await;
    let address = format!("/people/{number}");

    let in_time = club.later(QUARTER).await;
    assert_eq!(una.at(&in_time).get(&address).await.status, StatusCode::OK);

    let late = club.later(QUARTER + 1).await;
    let mut una = una.at(&late);
    assert_eq!(una.get("/people").await.status, StatusCode::OK, "the list needs no proof");
    let door = format!("/prove?next=%2Fpeople%2F{number}");
    let answer = una.get(&address).await;
    assert_eq!((answer.status, answer.header("location")), (StatusCode::SEE_OTHER, door.as_str()));
    for answer in [
        una.post("/people/invite", &[]).await,
        una.post(&address, &[("do", "rights"), ("moderator", "yes")]).await,
        una.post(&address, &[("do", "remove"), ("notes", "remove")]).await,
        una.post(&address, &[("do", "reset")]).await,
    ] {
        assert_eq!(answer.status, StatusCode::FORBIDDEN);
        assert!(answer.body.contains("type=\"password\""), "{}", answer.body);
    }
    assert_eq!(una.get("/people/invite").await.status, StatusCode::SEE_OTHER);
    assert_eq!(club.count("SELECT COUNT(*) FROM member WHERE is_moderator = 1").await, 0);
    assert_eq!(club.count("SELECT COUNT(*) FROM slip WHERE used_at IS NULL").await, 0);

    let wrong =
        una.post("/prove", &[("password", "not the password at all"), ("next", &address)]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(una.get(&address).await.status, StatusCode::SEE_OTHER, "still to be proved");
    let proved = una.post("/prove", &[("password", PASSWORD), ("next", &address)]).await;
    assert_eq!(
        (proved.status, proved.header("location")),
        (StatusCode::SEE_OTHER, address.as_str())
    );
    assert_eq!(una.get(&address).await.status, StatusCode::OK);
    let given = una.post(&address, &[("do", "rights"), ("moderator", "yes")]).await;
    assert_eq!(given.status, StatusCode::SEE_OTHER);
    assert_eq!(club.count("SELECT COUNT(*) FROM member WHERE is_moderator = 1").await, 1);
}

#[tokio::test]
async fn s23_a_clock_that_was_set_back_makes_no_old_proof_new() {
    let club = Club::start().await;
    let una = club.join("Una Secretary", SECRETARY).await;
    let earlier = club.later(-3600).await;
    assert_eq!(una.at(&earlier).get("/people/invite").await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn another_members_password_proves_nothing() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let mut moderator = club.join("Enid Hathersage", MODERATOR).await;
    let fields = [("password", PASSWORD), ("name", "Una Secretary"), ("next", "/people")];
    moderator.post("/prove", &fields).await;
    assert_eq!(moderator.get("/people").await.status, StatusCode::FORBIDDEN);
}
