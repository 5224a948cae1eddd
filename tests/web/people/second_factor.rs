//! The second factor: who must set it up, and that a code counts once.

use axum::http::StatusCode;
use holewright_server::rules::auth::second_factor::Secret;

use super::club::{Browser, Club, MODERATOR, PASSWORD, PLAIN, SECRETARY};
use crate::support::NOW;

/// The secret that a page shows in letters.
fn secret_on(page: &str) -> Secret {
    let written = page.split("<code class=\"phrase\">").nth(1).unwrap().split('<').next().unwrap();
    let letters: Vec<u8> = written.bytes().filter(|letter| *letter != b' ').collect();
    assert_eq!(letters.len(), 32, "{written}");
    let mut bytes = Vec::new();
    let (mut bits, mut held) = (0_u32, 0);
    for letter in letters {
        let value = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ234567".iter().position(|known| *known == letter);
        bits = bits << 5 | u32::try_from(value.unwrap()).unwrap();
        held += 5;
        if held >= 8 {
            held -= 8;
            bytes.push(u8::try_from(bits >> held & 0xff).unwrap());
        }
    }
    Secret::kept(&bytes).unwrap()
}

/// Sets one up with the code of this time, and gives the secret.
pub(super) async fn set_up(browser: &mut Browser, now: i64) -> Secret {
    let page = browser.get("/me/second-factor").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.body.contains("<svg class=\"qr\""), "{}", page.body);
    let secret = secret_on(&page.body);
    let code = secret.code_at(now).unwrap();
    let answer = browser.post("/me/second-factor", &[("code", &code)]).await;
    assert_eq!((answer.status, answer.header("location")), (StatusCode::SEE_OTHER, "/me"));
    secret
}

/// The published example of RFC 6238, appendix B: the eight digits at 59 s are 94287082, of which
/// six are shown.
#[test]
fn the_codes_are_those_of_the_standard() {
    let secret = Secret::kept(b"12345678901234567890").unwrap();
    for (time, code) in [
        (59, "287082"),
        (1_111_111_109, "081804"),
        (1_234_567_890, "005924"),
        (20_000_000_000, "353130"),
    ] {
        assert_eq!(secret.code_at(time).unwrap(), code);
        assert_eq!(secret.step_of(code, time, None), Some(time / 30));
    }
    // RFC 4648, section 10: the letters of "foobar" are MZXW6YTBOI.
    let foobar = Secret::kept(b"foobarfoobarfoobarfo").unwrap();
    assert!(foobar.written().replace(' ', "").starts_with("MZXW6YTBOJTG6"), "{}", foobar.written());
    assert!(foobar.address("Enid O’Leary", "club.test:8443").starts_with(
        "otpauth://totp/club.test%3A8443:Enid%20O%E2%80%99Leary?secret=MZXW6YTBOJTG6"
    ));
}

#[test]
fn a_code_counts_once_and_for_a_step_either_side() {
    let secret = Secret::kept(b"12345678901234567890").unwrap();
    let code = secret.code_at(NOW).unwrap();
    let step = NOW / 30;
    assert_eq!(secret.step_of(&code, NOW, None), Some(step));
    assert_eq!(secret.step_of(&format!(" {} {} ", &code[..3], &code[3..]), NOW, None), Some(step));
    assert_eq!(secret.step_of(&code, NOW + 30, None), Some(step), "a slow hand");
    assert_eq!(secret.step_of(&code, NOW - 30, None), Some(step), "a clock that is slow");
    assert_eq!(secret.step_of(&code, NOW + 90, None), None);
    assert_eq!(secret.step_of(&code, NOW, Some(step)), None, "used already");
    assert_eq!(secret.step_of(&code, NOW, Some(step + 1)), None, "older than one that was used");
    for nonsense in ["", "12345", "1234567", "abcdef", "+12345", "１２３４５６"] {
        assert_eq!(secret.step_of(nonsense, NOW, None), None, "{nonsense}");
    }
}

#[tokio::test]
async fn secretary_and_moderator_set_it_up_before_anything_else() {
    let club = Club::with(&[]).await;
    for (name, rights) in [("Una Secretary", SECRETARY), ("Enid Hathersage", MODERATOR)] {
        let mut browser = club.join(name, rights).await;
        for path in
            ["/me", "/me/password", "/me/data.json", "/people", "/people/invite", "/people/acts"]
        {
            let answer = browser.get(path).await;
            if path.ends_with(".json") {
                assert_eq!(answer.status, StatusCode::FORBIDDEN, "{path}");
            } else {
                assert_eq!(answer.status, StatusCode::SEE_OTHER, "{path}");
                assert_eq!(answer.header("location"), "/me/second-factor", "{path}");
            }
        }
        let refused = browser.post("/people/invite", &[]).await;
        assert_eq!(refused.header("location"), "/me/second-factor");
        let wrong = browser.post("/me/second-factor", &[("code", "000000")]).await;
        assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
        set_up(&mut browser, NOW).await;
        assert_eq!(browser.get("/me").await.status, StatusCode::OK);
        let kept = browser.post("/me/second-factor", &[("do", "drop")]).await;
        assert_eq!(kept.status, StatusCode::FORBIDDEN, "their rights ask for it");
        assert_eq!(browser.post("/sign-out", &[]).await.status, StatusCode::SEE_OTHER);
    }
    let mut plain = club.join("Percy Wainscott", PLAIN).await;
    assert_eq!(plain.get("/me").await.status, StatusCode::OK, "a member need not");
}

#[tokio::test]
async fn a_sign_in_asks_for_the_code_and_takes_each_once() {
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    let secret = set_up(&mut browser, NOW).await;
    assert!(!club.dump().await.contains(&secret.written()), "kept as bytes");

    let later = club.later(300).await;
    let mut phone = later.browser();
    let answer = phone
        .post(
            "/sign-in",
            &[("name", "Enid Hathersage"), ("password", PASSWORD), ("next", "/threads")],
        )
        .await;
    assert_eq!(answer.header("location"), "/sign-in/code?next=%2Fthreads");
    let waiting = phone.clone();
    assert!(!phone.is_in().await, "the password alone signs nobody in");
    assert_eq!(phone.get("/sign-in/code?next=%2Fthreads").await.status, StatusCode::OK);
    let wrong = phone.post("/sign-in/code", &[("code", "000000")]).await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    let code = secret.code_at(NOW + 300).unwrap();
    let right = phone.post("/sign-in/code", &[("code", &code), ("next", "/threads")]).await;
    assert_eq!((right.status, right.header("location")), (StatusCode::SEE_OTHER, "/threads"));
    assert!(phone.is_in().await);
    assert_ne!(phone.cookie, waiting.cookie, "the session that waited is over");
    assert_eq!(waiting.clone().get("/sign-in/code").await.status, StatusCode::SEE_OTHER);

    // The same code a second time, at another browser.
    let mut thief = later.browser();
    thief.sign_in("Enid Hathersage", PASSWORD).await;
    let again = thief.post("/sign-in/code", &[("code", &code)]).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!thief.is_in().await);
    // And the one who waits too long begins again.
    let late = club.later(300 + 601).await;
    let late = thief.at(&late).get("/sign-in/code").await;
    assert_eq!((late.status, late.header("location")), (StatusCode::SEE_OTHER, "/sign-in"));
}

#[tokio::test]
async fn codes_cannot_be_guessed_one_after_the_other() {
    let club = Club::start().await;
    let mut browser = club.join("Enid Hathersage", PLAIN).await;
    set_up(&mut browser, NOW).await;
    let later = club.later(300).await;
    let mut thief = later.browser();
    thief.sign_in("Enid Hathersage", PASSWORD).await;
    let mut told = Vec::new();
    for number in 0..30 {
        let code = format!("{number:06}");
        told.push(thief.post("/sign-in/code", &[("code", &code)]).await.status.as_u16());
    }
    let tried = told.iter().filter(|status| **status == 422).count();
    assert!((9..=13).contains(&tried), "{told:?}");
    assert_eq!(*told.last().unwrap(), 429);
}

#[tokio::test]
async fn proving_oneself_asks_for_the_code_too() {
    let club = Club::start().await;
    let mut browser = club.join("Una Secretary", SECRETARY).await;
    let secret = set_up(&mut browser, NOW).await;
    let later = club.later(3600).await;
    let mut browser = browser.at(&later);
    assert_eq!(browser.get("/people/invite").await.status, StatusCode::SEE_OTHER);
    let fields = [("password", PASSWORD), ("next", "/people/invite")];
    assert_eq!(browser.post("/prove", &fields).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(browser.get("/people/invite").await.status, StatusCode::SEE_OTHER);
    let code = secret.code_at(NOW + 3600).unwrap();
    let fields = [("password", PASSWORD), ("code", &code), ("next", "/people/invite")];
    assert_eq!(browser.post("/prove", &fields).await.status, StatusCode::SEE_OTHER);
    assert_eq!(browser.get("/people/invite").await.status, StatusCode::OK);
}

#[tokio::test]
async fn a_lost_device_is_mended_by_the_secretary() {
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    set_up(&mut enid, NOW).await;
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let dropped = una.post(&address, &[("do", "drop-second-factor")]).await;
    assert_eq!(dropped.status, StatusCode::SEE_OTHER);
    assert!(!enid.is_in().await);
    let answer = enid.sign_in("Enid Hathersage", PASSWORD).await;
    assert_eq!(answer.header("location"), "/me");
    set_up(&mut enid, NOW).await;
    assert_eq!(
        enid.post("/me/second-factor", &[("do", "drop")]).await.status,
        StatusCode::SEE_OTHER
    );
    assert_eq!(club.count("SELECT COUNT(*) FROM member WHERE totp_secret IS NOT NULL").await, 0);
}

#[tokio::test]
async fn a_new_password_by_a_slip_leaves_the_second_factor() {
    const NEW: &str = "nine copper kettles humming";
    let club = Club::start().await;
    let mut una = club.join("Una Secretary", SECRETARY).await;
    let mut enid = club.join("Enid Hathersage", PLAIN).await;
    let secret = set_up(&mut enid, NOW).await;
    let address = format!("/people/{}", club.number_of("Enid Hathersage").await);
    let made = una.post(&address, &[("do", "reset")]).await.body;
    let link = made.split("<code>https://club.test").nth(1).unwrap().split('<').next().unwrap();
    let mut browser = club.browser();
    let set = browser.post(link, &[("new_password", NEW)]).await;
    assert_eq!(set.status, StatusCode::SEE_OTHER, "{}", set.body);
    assert!(!browser.is_in().await, "the slip alone lets nobody in");
    let answer = browser.sign_in("Enid Hathersage", NEW).await;
    assert!(answer.header("location").starts_with("/sign-in/code"), "{:?}", answer.headers);
    assert!(!browser.is_in().await, "the code is asked for still");
    let code = secret.code_at(NOW + 30).unwrap();
    browser.post("/sign-in/code", &[("code", &code)]).await;
    assert!(browser.is_in().await);
}

#[tokio::test]
async fn f16_a_code_taken_while_the_clock_was_far_ahead_shuts_nobody_out() {
    const TEN_YEARS: i64 = 10 * 365 * 24 * 60 * 60;
    let club = Club::start().await;
    let secret = set_up(&mut club.join("Enid Hathersage", PLAIN).await, NOW).await;
    // The clock goes wrong, is put right, and goes back an hour.
    for (off, gets_in) in [(TEN_YEARS, true), (7200, true), (3600, false), (7230, true)] {
        let club = club.later(off).await;
        let mut browser = club.browser();
        browser.sign_in("Enid Hathersage", PASSWORD).await;
        let code = secret.code_at(NOW + off).unwrap();
        browser.post("/sign-in/code", &[("code", &code)]).await;
        assert_eq!(browser.is_in().await, gets_in, "{off} seconds off");
    }
}
