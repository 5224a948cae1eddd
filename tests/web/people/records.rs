//! S17 and the log: reading changes nothing, and every act stands in the record.

use axum::http::StatusCode;

use super::access;
use super::club::{Club, PASSWORD, PLAIN, SECRETARY};

#[tokio::test]
async fn s17_reading_every_page_as_secretary_changes_nothing() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    let slip = club.slip(PLAIN).await;
    let before = club.dump().await;
    let mut read = 0;
    for (method, path) in access::routes() {
        if method != "GET" {
            continue;
        }
        let path = path
            .replace("/join/{token}", &slip)
            .replace("/reset/{token}", &slip.replace("join", "reset"))
            .replace("{id}", "2")
            .replace("{issue}", "best")
            .replace("{system}", "ba")
            .replace("{size}", "5")
            .replace("{series}/5", "number/5")
            .replace("{slug}", "gunmetal");
        let answer = una.get(&path).await;
        assert!(answer.status.as_u16() < 500, "{path}: {}", answer.status);
        let head = una.send(axum::http::Method::HEAD, &path, &[], "").await;
        assert_eq!(head.status, answer.status, "{path}");
        read += 1;
    }
    assert!(read > 25, "{read}");
    assert_eq!(club.dump().await, before);
}

#[tokio::test]
async fn every_act_on_people_is_in_the_record_with_who_and_whom() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    let id = club.number_of("Enid Hathersage").await;
    let address = format!("/people/{id}");
    una.post("/people/invite", &[("meant_for", "Percy")]).await;
    let members = una.get("/people").await.body;
    let mark = members.split("name=\"void\" value=\"").nth(1).unwrap();
    una.post("/people", &[("void", mark.split('"').next().unwrap())]).await;
    una.post(&address, &[("do", "rights"), ("inspector", "yes")]).await;
    una.post(&address, &[("do", "reset")]).await;
    una.post(&address, &[("do", "stop")]).await;
    una.post(&address, &[("do", "allow")]).await;
    una.post(&address, &[("do", "drop-second-factor")]).await;
    enid.sign_in("Enid Hathersage", "not the password at all").await;
    enid.sign_in("Enid Hathersage", PASSWORD).await;
    enid.post(
        "/me/password",
        &[("password", PASSWORD), ("new_password", "nine copper kettles humming")],
    )
    .await;
    enid.post("/sign-out", &[]).await;
    una.post(&address, &[("do", "remove"), ("notes", "keep")]).await;
    for what in [
        "joined",
        "slip-to-join",
        "slip-made-void",
        "rights-given",
        "slip-to-reset",
        "member-stopped",
        "member-allowed",
        "second-factor-dropped",
        "sign-in-refused",
        "sign-in",
        "password-changed",
        "sign-out",
        "member-removed",
    ] {
        assert!(club.acts(what).await > 0, "{what} is not in the record");
    }
    let page = una.get("/people/acts").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.body.contains("<td>Una Secretary</td><td>rights given</td>"), "{}", page.body);
    assert!(page.body.contains("Enid Hathersage: member, inspector"), "{}", page.body);
    assert!(page.body.contains(&format!("member/{id}")), "{}", page.body);
    assert!(!page.body.contains(PASSWORD));
}

#[tokio::test]
async fn the_record_has_pages_and_ages() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    for number in 0..120 {
        una.post("/people/invite", &[("meant_for", &format!("guest number {number}"))]).await;
    }
    let mut seen = 0;
    let mut path = "/people/acts".to_owned();
    let mut pages = 0;
    loop {
        let body = una.get(&path).await.body;
        seen += body.matches("<tr id=\"act-").count();
        pages += 1;
        let Some(older) = body.split("/people/acts?before=").nth(1) else { break };
        path = format!("/people/acts?before={}", older.split('"').next().unwrap());
    }
    assert_eq!((pages, seen), (3, 122), "120 slips, her own slip, her joining");
    for odd in ["x", "-1", "0", "99999999999999999999", "%00"] {
        assert_eq!(
            una.get(&format!("/people/acts?before={odd}")).await.status,
            StatusCode::OK,
            "{odd}"
        );
    }
    let now = club.app.clock.now();
    let database = &club.app.database;
    assert_eq!(holewright_server::db::acts::forget_old(database, now).await.unwrap(), 0);
    let later = now + holewright_server::db::acts::KEPT + 1;
    assert_eq!(holewright_server::db::acts::forget_old(database, later).await.unwrap(), 122);
}
