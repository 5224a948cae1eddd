//! S04, S05, S06, S08: signing in and out.

use axum::http::StatusCode;
use axum::http::header::SET_COOKIE;

use holewright_server::front::routes::ROUTES;

use super::club::{COOKIE_NAME, Club, PASSWORD, PLAIN, SECRETARY};

#[tokio::test]
async fn s04_one_cookie_with_its_four_attributes_and_no_trace_of_it_elsewhere() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let mut browser = club.browser();
    let answer = browser.sign_in("enid hathersage", PASSWORD).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    assert_eq!(answer.header("location"), "/me");
    assert_eq!(answer.header("cache-control"), "private, no-store");
    let cookies: Vec<&str> =
        answer.headers.get_all(SET_COOKIE).iter().map(|value| value.to_str().unwrap()).collect();
    assert_eq!(cookies.len(), 1, "{cookies:?}");
    let parts: Vec<&str> = cookies[0].split("; ").collect();
    assert!(parts[0].starts_with("__Host-holewright="), "{cookies:?}");
    for attribute in ["Path=/", "HttpOnly", "SameSite=Lax", "Secure"] {
        assert!(parts.contains(&attribute), "{attribute}: {cookies:?}");
    }
    assert!(!cookies[0].to_lowercase().contains("domain"), "{cookies:?}");

    let value = browser.cookie.clone().unwrap();
    assert_eq!(value.len(), 64, "256 bits in hexadecimal");
    assert!(!answer.body.contains(&value) && !answer.header("location").contains(&value));
    for path in ["/me", "/me/password", "/me/data.json", "/me/leave", "/"] {
        let page = browser.get(path).await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        assert!(!page.body.contains(&value), "{path} shows the session's token");
    }
    let kept = club.dump().await;
    assert!(!kept.to_lowercase().contains(&value), "only the hash is kept");
}

#[tokio::test]
async fn s04_a_home_network_without_tls_works_too() {
    let folder = crate::support::Folder::new();
    let app = crate::support::open(&folder, "http://192.168.1.20:8080").await;
    let mut headers = axum::http::HeaderMap::new();
    let token = holewright_server::rules::auth::Token::new().unwrap();
    let given = holewright_server::rules::auth::cookie::give(&token, &app.base_url).unwrap();
    let given = given.to_str().unwrap().to_owned();
    assert!(given.starts_with("holewright=") && !given.contains("Secure"), "{given}");
    headers.insert("cookie", given.split(';').next().unwrap().parse().unwrap());
    let read: Vec<_> =
        holewright_server::rules::auth::cookie::read(&headers, &app.base_url).collect();
    assert!(read == [token]);
}

/// The disk is full, the database is gone: whoever leaves a clubroom's machine leaves no cookie on it.
#[tokio::test]
async fn s06_a_sign_out_that_cannot_be_written_takes_the_cookie_and_says_so() {
    let club = Club::start().await;
    let signed_in = club.join("Enid Hathersage", PLAIN).await;
    let number = club.count("SELECT number FROM session").await.to_string();
    let writer = club.app.database.pools()[1];
    let stuck =
        "CREATE TRIGGER stuck BEFORE DELETE ON session BEGIN SELECT RAISE(ABORT, 'stuck'); END";
    sqlx::query(stuck).execute(writer).await.unwrap();
    let ways = [("/sign-out", vec![]), ("/me", vec![("end", number.as_str())])];
    for (path, fields) in &ways {
        let mut browser = signed_in.clone();
        let answer = browser.post(path, fields).await;
        assert!(answer.status.is_server_error(), "{path}: {}", answer.status);
        assert_eq!(browser.cookie, None, "{path}");
        assert_eq!(answer.header("clear-site-data"), "\"cache\"", "{path}");
        assert!(answer.body.contains("this browser has forgotten your session"), "{}", answer.body);
        assert!(answer.body.contains("could not end it"), "{}", answer.body);
    }
    assert!(signed_in.clone().is_in().await, "as the page says");
    club.app.database.close().await;
    let mut browser = signed_in.clone();
    let answer = browser.post("/sign-out", &[]).await;
    assert!(answer.status.is_server_error(), "{}", answer.status);
    assert_eq!(browser.cookie, None);
    assert!(answer.body.contains("this browser has forgotten your session"), "{}", answer.body);
}

#[tokio::test]
async fn s05_a_made_up_session_is_never_taken_over() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let made_up = "ab".repeat(32);
    let mut browser = club.browser();
    browser.cookie = Some(made_up.clone());
    assert!(!browser.is_in().await);
    let answer = browser.sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    let given = browser.cookie.clone().unwrap();
    assert_ne!(given, made_up);
    assert!(browser.is_in().await);
    let mut thief = club.browser();
    thief.cookie = Some(made_up);
    assert!(!thief.is_in().await);

    // Signing in again ends the session that the browser held.
    assert_eq!(browser.sign_in("Enid Hathersage", PASSWORD).await.status, StatusCode::SEE_OTHER);
    assert_ne!(browser.cookie, Some(given.clone()));
    thief.cookie = Some(given);
    assert!(!thief.is_in().await);
}

#[tokio::test]
async fn s06_after_signing_out_the_old_cookie_is_worth_nothing() {
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    let old = browser.clone();
    assert_eq!(club.count("SELECT COUNT(*) FROM session").await, 1);
    let answer = browser.post("/sign-out", &[]).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    assert_eq!(answer.header("clear-site-data"), "\"cache\"");
    let mut cookies = answer.headers.get_all(SET_COOKIE).iter();
    let gone = format!("{COOKIE_NAME}=;");
    let gone = cookies.find(|cookie| cookie.to_str().unwrap().starts_with(&gone)).unwrap();
    assert!(gone.to_str().unwrap().contains("Max-Age=0"));
    assert_eq!(browser.cookie, None);
    assert_eq!(club.count("SELECT COUNT(*) FROM session").await, 0);
    let replayed = old.clone().get("/me").await;
    assert_eq!(replayed.status, StatusCode::SEE_OTHER);
    assert_eq!(replayed.header("location"), "/sign-in");
    let data = old.clone().get("/me/data.json").await;
    assert_eq!(data.status, StatusCode::UNAUTHORIZED);
    assert_eq!(data.header("content-type"), "application/problem+json");
}

/// The answers to an unknown name, a wrong password and a stopped member, with the name cut out.
#[tokio::test]
async fn s08_nobody_learns_which_names_there_are() {
    let club = Club::start().await;
    let mut secretary = club.join("Una Secretary", SECRETARY).await;
    club.join("Enid Hathersage", PLAIN).await;
    club.join("Alec Stopped", PLAIN).await;
    let alec = club.number_of("Alec Stopped").await;
    let stopped = secretary.post(&format!("/people/{alec}"), &[("do", "stop")]).await;
    assert_eq!(stopped.status, StatusCode::SEE_OTHER);

    let mut answers = Vec::new();
    for (name, password) in [
        ("Nobody Atall", PASSWORD),
        ("Enid Hathersage", "not the password at all"),
        ("Alec Stopped", PASSWORD),
    ] {
        let mut browser = club.browser();
        let answer = browser.sign_in(name, password).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{name}");
        assert!(answer.body.contains(name), "the name is kept as typed");
        assert_eq!(browser.cookie, None);
        let mut headers: Vec<_> = answer
            .headers
            .iter()
            .filter(|(name, _)| *name != "x-request-id" && *name != "content-length")
            .map(|(name, value)| format!("{name}: {value:?}"))
            .collect();
        headers.sort();
        answers.push((headers, answer.body.replace(name, "NAME")));
    }
    assert_eq!(answers[0], answers[1]);
    assert_eq!(answers[0], answers[2]);
    assert!(answers[0].1.contains("<title>Error: Sign in"));
}

/// Whoever was signed out meanwhile comes back to a page, also from a form that stands on another page.
#[tokio::test]
async fn s06_a_form_sent_signed_out_leads_back_to_a_page() {
    let club = Club::start().await;
    let mut browser = club.browser();
    let mut led = 0;
    for route in ROUTES.iter().filter(|route| route.methods.contains(&"post")) {
        let path = route.path.replace("{id}", "1").replace("{token}", "x");
        let answer = browser.post(&path, &[]).await;
        let Some(query) = (answer.status == StatusCode::SEE_OTHER)
            .then(|| answer.header("location").to_owned())
            .and_then(|to| to.strip_prefix("/sign-in?").map(str::to_owned))
        else {
            continue;
        };
        let next = form_urlencoded::parse(query.as_bytes()).find(|(name, _)| name == "next");
        let next = next.expect("where to").1.into_owned();
        let page = browser.get(&next).await;
        assert_ne!(page.status, StatusCode::METHOD_NOT_ALLOWED, "{path} leads to {next}");
        led += 1;
    }
    assert!(led >= 8, "{led}");
}
