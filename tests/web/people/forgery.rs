//! S16, S18, S21: what another site's page, another kind of body, and further fields may do.

use axum::http::{Method, StatusCode};

use super::club::{Club, PASSWORD, PLAIN, SECRETARY};

const FORM: (&str, &str) = ("content-type", "application/x-www-form-urlencoded");

/// The headers of a request, and whether it is let through with a session and without.
struct Case {
    headers: &'static [(&'static str, &'static str)],
    with_session: bool,
    without: bool,
}

#[rustfmt::skip]
const CASES: &[Case] = &[
    // What the browser says of where it comes from counts before all else.
    Case { headers: &[("sec-fetch-site", "same-origin")], with_session: true, without: true },
    Case { headers: &[("sec-fetch-site", "none")], with_session: true, without: true },
    Case { headers: &[("sec-fetch-site", "cross-site")], with_session: false, without: false },
    Case { headers: &[("sec-fetch-site", "same-site")], with_session: false, without: false },
    Case { headers: &[("sec-fetch-site", "")], with_session: false, without: false },
    Case { headers: &[("sec-fetch-site", "SAME-ORIGIN")], with_session: false, without: false },
    Case { headers: &[("sec-fetch-site", "cross-site"), ("origin", "https://club.test")], with_session: false, without: false },
    Case { headers: &[("sec-fetch-site", "same-origin"), ("origin", "https://evil.example")], with_session: true, without: true },
    // An old browser says its origin.
    Case { headers: &[("origin", "https://club.test")], with_session: true, without: true },
    Case { headers: &[("origin", "https://club.test"), ("host", "inside:8080")], with_session: true, without: true },
    Case { headers: &[("origin", "https://other.test"), ("host", "other.test")], with_session: true, without: true },
    Case { headers: &[("origin", "http://club.test"), ("host", "club.test")], with_session: false, without: false },
    Case { headers: &[("origin", "https://evil.example"), ("host", "club.test")], with_session: false, without: false },
    Case { headers: &[("origin", "https://club.test.evil.example"), ("host", "club.test")], with_session: false, without: false },
    Case { headers: &[("origin", "https://club.test:8443"), ("host", "club.test")], with_session: false, without: false },
    Case { headers: &[("origin", "null"), ("host", "club.test")], with_session: false, without: false },
    Case { headers: &[("origin", ""), ("host", "")], with_session: false, without: false },
    // One that says nothing may be a program, but then it holds no session.
    Case { headers: &[], with_session: false, without: true },
    Case { headers: &[("referer", "https://club.test/me")], with_session: false, without: true },
];

#[tokio::test]
async fn s16_another_sites_page_changes_nothing() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let before = club.dump().await;
    for case in CASES {
        let headers = [case.headers, &[FORM]].concat();
        for method in [Method::POST, Method::PUT, Method::PATCH, Method::DELETE] {
            for (path, is_post_only) in [("/me", false), ("/sign-out", true), ("/threads", false)] {
                let _ = is_post_only;
                if method == Method::POST && path != "/threads" {
                    continue;
                }
                let mut browsers =
                    [(member.clone(), case.with_session), (club.browser(), case.without)];
                for (browser, allowed) in &mut browsers {
                    let answer = browser.send(method.clone(), path, &headers, "").await;
                    let told = answer.status;
                    assert_eq!(
                        told == StatusCode::FORBIDDEN,
                        !*allowed,
                        "{method} {path} {headers:?}: {told}"
                    );
                }
            }
        }
        // A wrong number ends no session: it only shows who comes through.
        let answer = member.send(Method::POST, "/me", &headers, "end=999").await;
        let expected =
            if case.with_session { StatusCode::SEE_OTHER } else { StatusCode::FORBIDDEN };
        assert_eq!(answer.status, expected, "{headers:?}");
        // Nobody is signed in by another site's page either.
        let body = "name=Enid&password=x";
        let answer = club.browser().send(Method::POST, "/sign-in", &headers, body).await;
        assert_eq!(answer.status == StatusCode::FORBIDDEN, !case.without, "{headers:?}");
        // Reviewed is not held up.
        let answer = member.send(Method::GET, "/threads", case.headers, "").await;
        assert_eq!(answer.status, StatusCode::OK, "{headers:?}");
    }
    assert!(member.is_in().await);
    let after = club.dump().await;
    // Only the refused sign-ins are new in the record.
    assert_eq!(
        before.lines().take(3).collect::<Vec<_>>(),
        after.lines().take(3).collect::<Vec<_>>()
    );
}

#[tokio::test]
async fn s16_the_refusal_says_what_happened() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let headers = [FORM, ("sec-fetch-site", "cross-site")];
    let answer = member.send(Method::POST, "/me/leave", &headers, "notes=remove").await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
    assert!(answer.body.contains("nothing was changed"), "{}", answer.body);
    assert!(answer.headers.contains_key("content-security-policy"));
    assert!(member.is_in().await);
}

#[tokio::test]
async fn s18_a_form_is_sent_as_a_form_or_not_taken() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let body = "password=seven+brass+otters+dancing&notes=keep";
    for kind in ["text/plain", "application/json", "multipart/form-data; boundary=x", ""] {
        for path in [
            "/me/leave",
            "/me",
            "/me/password",
            "/sign-in",
            "/prove",
            "/notes/new",
            "/notes/1/edit",
            "/notes/1/verdict",
            "/notes/1/report",
            "/notes/1/correct",
            "/notes/1/withdraw",
            "/queue/1",
        ] {
            let headers = [("content-type", kind), ("sec-fetch-site", "same-origin")];
            let answer = member.send(Method::POST, path, &headers, body).await;
            assert_eq!(answer.status, StatusCode::UNSUPPORTED_MEDIA_TYPE, "{kind} to {path}");
        }
    }
    let headers = [("sec-fetch-site", "same-origin")];
    let answer = member.send(Method::POST, "/me/leave", &headers, body).await;
    assert_eq!(answer.status, StatusCode::UNSUPPORTED_MEDIA_TYPE, "no type at all");
    assert!(member.is_in().await);
}

#[tokio::test]
async fn s18_a_method_in_a_field_is_ignored() {
    let club = Club::start().await;
    let mut member = club.join("Enid Hathersage", PLAIN).await;
    let answer =
        member.get("/me/leave?_method=post&notes=keep&password=seven+brass+otters+dancing").await;
    assert_eq!(answer.status, StatusCode::OK);
    let answer = member.post("/threads?_method=GET", &[("_method", "GET")]).await;
    assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED);
    assert!(member.is_in().await);
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);
}

/// What somebody might slip in beside a form.
const SLIPPED: &[(&str, &str)] = &[
    ("role", "admin"),
    ("is_secretary", "1"),
    ("secretary", "yes"),
    ("moderator", "yes"),
    ("rights", "secretary"),
    ("id", "1"),
    ("member_id", "1"),
    ("author_id", "1"),
    ("approved", "1"),
    ("password_hash", "x"),
    ("totp_secret", "x"),
    ("proved_at", "9999999999"),
    ("stopped_at", ""),
];

#[tokio::test]
async fn s21_what_is_slipped_in_beside_a_form_is_never_looked_at() {
    let club = Club::start().await;
    club.join("Una Secretary", SECRETARY).await;
    let with = |fields: &[(&'static str, &'static str)]| [fields, SLIPPED].concat();
    let slip = club.slip(PLAIN).await;
    let mut member = club.browser();
    let joined =
        member.post(&slip, &with(&[("name", "Enid Hathersage"), ("new_password", PASSWORD)])).await;
    assert_eq!(joined.status, StatusCode::SEE_OTHER);
    let people = "SELECT COUNT(*) FROM member WHERE is_secretary + is_moderator + is_inspector = 0 AND id = 2";
    assert_eq!(club.count(people).await, 1, "a plain member with the next number");
    let changed = "nine copper kettles humming";
    member.post("/me/password", &with(&[("password", PASSWORD), ("new_password", changed)])).await;
    member.post("/me", &with(&[("end", "others")])).await;
    member.post("/prove", &with(&[("password", changed)])).await;
    member.post("/sign-out", SLIPPED).await;
    member.post("/sign-in", &with(&[("name", "Enid Hathersage"), ("password", changed)])).await;
    assert!(member.is_in().await);
    assert_eq!(club.count(people).await, 1);
    assert_eq!(member.get("/people").await.status, StatusCode::FORBIDDEN);
    let untouched = "SELECT COUNT(*) FROM member WHERE is_secretary = 1 AND name = 'Una Secretary' \
                     AND stopped_at IS NULL AND totp_secret IS NULL";
    assert_eq!(club.count(untouched).await, 1);
}

#[tokio::test]
async fn s21_the_first_filling_of_a_field_counts() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let fields =
        [("name", "Enid"), ("name", "Percy"), ("new_password", PASSWORD), ("new_password", "x")];
    assert_eq!(club.browser().post(&slip, &fields).await.status, StatusCode::SEE_OTHER);
    assert_eq!(club.count("SELECT COUNT(*) FROM member WHERE name = 'Enid'").await, 1);
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 1);
}
