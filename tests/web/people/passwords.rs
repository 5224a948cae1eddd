//! S14, S15: which passwords are taken.

use std::pin::pin;
use std::time::Duration;

use axum::http::StatusCode;
use holewright_server::rules::auth::password::{Cost, Password};
use holewright_server::rules::auth::phrase;
use holewright_server::rules::auth::strength::{self, Weak};

use super::club::{Club, PASSWORD, PLAIN};

/// So many characters that follow no rule anybody would try.
fn of_length(length: usize) -> String {
    let words = phrase::words();
    let mut text = String::new();
    for word in words.iter().step_by(37).cycle().take(length) {
        text.push_str(word);
        text.push(' ');
    }
    let mut text: String = text.chars().take(length).collect();
    // A password does not end in a space that a person would not see.
    if text.ends_with(' ') {
        text.pop();
        text.push('x');
    }
    text
}

#[tokio::test]
async fn s14_long_and_odd_passwords_work_exactly() {
    let club = Club::start().await;
    let odd = [
        of_length(15),
        of_length(64),
        of_length(128),
        " spaces at both ends kept ".to_owned(),
        "🔩🔧 left-hand thread ⚙️ gunmetal".to_owned(),
        "a nul \0 in the midst of it".to_owned(),
        "Ünïcödé wörds ärè fïne".to_owned(),
    ];
    for (number, password) in odd.iter().enumerate() {
        let name = format!("Member {}", ["a", "b", "c", "d", "e", "f", "g"][number]);
        let slip = club.slip(PLAIN).await;
        let mut browser = club.browser();
        let joined = browser.post(&slip, &[("name", &name), ("new_password", password)]).await;
        assert_eq!(joined.status, StatusCode::SEE_OTHER, "{password:?}: {}", joined.body);
        let again = club.browser().sign_in(&name, password).await;
        assert_eq!(again.status, StatusCode::SEE_OTHER, "{password:?}");
        // Not one character of it is left out.
        let mut short = password.clone();
        short.pop();
        for near in
            [short.as_str(), password.trim(), &password.to_uppercase(), &password.replace('\0', "")]
        {
            if near != password {
                let wrong = club.browser().sign_in(&name, near).await;
                assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY, "{near:?}");
            }
        }
    }
}

#[tokio::test]
async fn s14_too_short_and_too_long_are_told_and_nothing_is_cut() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let mut browser = club.browser();
    for (password, words) in [
        (of_length(14), "at least 15 characters, and this has 14"),
        (String::new(), "at least 15 characters, and this has 0"),
        (of_length(129), "at most 128 characters, and this has 129"),
        (of_length(200), "at most 128 characters, and this has 200"),
    ] {
        let answer = browser.post(&slip, &[("name", "Enid"), ("new_password", &password)]).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(answer.body.contains(words), "{}", answer.body);
        assert!(answer.body.contains("value=\"Enid\""), "the name is kept");
        assert!(password.is_empty() || !answer.body.contains(&password), "the password is not");
        assert!(answer.body.contains("<title>Error: "), "{}", answer.body);
        assert!(answer.body.contains("href=\"#new_password\""), "{}", answer.body);
        assert!(answer.body.contains("aria-invalid=\"true\""), "{}", answer.body);
    }
    assert_eq!(club.count("SELECT COUNT(*) FROM member").await, 0);
}

#[tokio::test]
async fn s14_a_megabyte_is_refused_and_never_hashed() {
    // So dear that a hash would be seen for seconds.
    let club = Club::start().await.at_cost(Cost { passes: 50, ..Cost::default() }).await;
    let slip = club.slip(PLAIN).await;
    let long = "long words of brass ".repeat(50_000);
    let turns = club.app.passwords.free();
    let mut browser = club.browser();
    let mut asked = pin!(async {
        let joined = browser.post(&slip, &[("name", "Enid"), ("new_password", &long)]).await;
        let signed = browser.sign_in("Enid", &long).await;
        [joined, signed]
    });
    let mut free = turns;
    let [joined, signed] = loop {
        tokio::select! {
            told = &mut asked => break told,
            () = tokio::time::sleep(Duration::from_millis(1)) => {
                free = free.min(club.app.passwords.free());
            }
        }
    };
    assert_eq!(free, turns, "it was hashed");
    for answer in [joined, signed] {
        assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
        assert!(answer.body.contains("what was sent is too large: "), "{}", answer.body);
        let most = answer.body.split(" kB are taken here at most").next().unwrap_or_default();
        let most: Option<u64> = most.rsplit(' ').next().and_then(|most| most.parse().ok());
        assert!(most.is_some_and(|most| (3..100).contains(&most)), "{}", answer.body);
        assert!(answer.body.contains("what you typed is still there"), "{}", answer.body);
    }
    // What is no more than a form may hold is told apart.
    let signed = club.browser().sign_in("Enid", &long[..20_000]).await;
    assert_eq!(signed.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(signed.body.contains("No password here has more than 128 characters"));
    assert_eq!(club.acts("sign-in-refused").await, 0, "it was not tried");
}

#[track_caller]
fn refused(password: &str, name: &str) -> Weak {
    let checked = strength::check(&Password::typed(password), name, "club.test:8443");
    match checked {
        Err(weak) => weak,
        Ok(()) => panic!("{password} was taken"),
    }
}

#[test]
fn s15_common_passwords_and_patterns_are_refused() {
    for common in [
        "password1234567",
        "PASSWORD1234567",
        "correct horse battery staple",
        "P@ssw0rdP@ssw0rd",
        "iloveyouforever",
    ] {
        assert_eq!(refused(common, "Enid"), Weak::Common, "{common}");
    }
    for again in ["aaaaaaaaaaaaaaaa", "abcabcabcabcabcabc", "12121212121212121", "x1y2zx1y2zx1y2z"]
    {
        assert_eq!(refused(again, "Enid"), Weak::Repeated, "{again}");
    }
    for row in ["abcdefghijklmnopq", "98765432109876543", "qwertyuiopasdfg", "2345678901234567890"]
    {
        let weak = refused(row, "Enid");
        assert!(matches!(weak, Weak::Row | Weak::Common), "{row}: {weak:?}");
    }
    for (own, word) in [
        ("holewright12345", "holewright"),
        ("Holewright!!Holewright", "holewright"),
        ("enidhathersage1", "hathersage"),
        ("Hathersage, Enid", "hathersage"),
        ("modelengineers1!", "engineers"),
        ("club.test club.test", "club"),
        ("passwordpassword2026", "password"),
        ("password23456789", "password"),
    ] {
        match refused(own, "Enid Hathersage") {
            Weak::Word(found) => assert_eq!(found, word, "{own}"),
            Weak::Common | Weak::Repeated => {}
            other => panic!("{own}: {other:?}"),
        }
    }
}

/// Of more than nine thousand that leaked, some from the head and some from the tail of the list.
#[test]
fn s15_passwords_that_leaked_are_refused_however_they_are_spelt() {
    assert!(strength::leaked() >= 3_000, "{}", strength::leaked());
    for leaked in [
        "translatability",
        "Rumpelstiltzkin",
        "RUMPEL-STILTZKIN",
        "per aspera ad astra",
        "neversaymyp@ssword",
        "vsebudethorosho",
        "dontworrybehappy",
        "zebraprintchloe",
        "zebrakuritzebrakurit",
    ] {
        assert_eq!(refused(leaked, "Enid"), Weak::Common, "{leaked}");
    }
}

#[test]
fn s15_no_rule_asks_for_signs_or_capitals() {
    for good in [
        PASSWORD,
        "the clack valve sticks on mondays",
        "onlysmallletterswithoutspaces",
        "418 263 907 551 846",
        "password is only part of what my aunt typed",
    ] {
        let checked = strength::check(&Password::typed(good), "Enid Hathersage", "club.test");
        assert_eq!(checked, Ok(()), "{good}");
    }
}

#[tokio::test]
async fn s15_the_form_says_why() {
    let club = Club::start().await;
    let slip = club.slip(PLAIN).await;
    let mut browser = club.browser();
    for (password, words) in [
        ("password1234567", "one of the passwords that are used most"),
        ("rumpelstiltzkin", "one of the passwords that are used most"),
        ("holewright12345", "Without “holewright” too little is left"),
        ("enid hathersage", "Without “hathersage” too little is left"),
    ] {
        let fields = [("name", "Enid Hathersage"), ("new_password", password)];
        let answer = browser.post(&slip, &fields).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
        assert!(answer.body.contains(words), "{password}: {}", answer.body);
    }
}

/// The library's own verifier, which allocates for itself, takes what is worked out in our memory.
#[tokio::test]
async fn what_is_kept_is_argon2id_in_the_phc_form() {
    use argon2::password_hash::PasswordVerifier;
    use holewright_server::rules::auth::password::Hashing;

    let hashing = Hashing::at(Cost { memory_kib: 64, passes: 2 });
    let typed = || Password::typed(PASSWORD);
    let (one, two) = (hashing.hash(typed()).await.unwrap(), hashing.hash(typed()).await.unwrap());
    assert_ne!(one, two, "each has a salt of its own");
    for hash in [&one, &two] {
        assert!(hash.starts_with("$argon2id$v=19$m=64,t=2,p=1$"), "{hash}");
        let library = argon2::Argon2::default();
        assert!(library.verify_password(PASSWORD.as_bytes(), hash.as_str()).is_ok(), "{hash}");
        assert!(hashing.verify(typed(), Some(hash.clone())).await.unwrap());
        let other = Password::typed("seven brass otters dancinG");
        assert!(!hashing.verify(other, Some(hash.clone())).await.unwrap());
    }
    // The memory is used again at another cost, both ways.
    let dear = Hashing::at(Cost { memory_kib: 256, passes: 1 }).hash(typed()).await.unwrap();
    assert!(hashing.verify(typed(), Some(dear)).await.unwrap());
    assert!(hashing.verify(typed(), Some(one)).await.unwrap());
    assert!(!hashing.verify(typed(), None).await.unwrap());
    assert!(
        hashing.verify(typed(), Some("$argon2id$v=19$m=64,t=2,p=1$".to_owned())).await.is_err()
    );
    assert_eq!(Cost::default(), Cost { memory_kib: 19_456, passes: 2 });
}

/// What the comment in `auth/phrase.rs` says of its worth, worked out again.
#[test]
fn a_phrase_has_fifty_bits() {
    let words = phrase::words();
    let mut different = words.clone();
    different.sort_unstable();
    different.dedup();
    assert_eq!(words.len(), different.len(), "a word stands twice");
    assert!((1024..=2048).contains(&words.len()), "{}", words.len());
    let count = u32::try_from(words.len()).unwrap();
    assert!(u64::from(count).pow(5) >= 1 << 50);
    for word in &words {
        let plain = word.bytes().all(|letter| letter.is_ascii_lowercase());
        assert!(plain && (3..=12).contains(&word.len()), "{word}");
    }
    let drawn: Vec<String> = (0..50).map(|_| phrase::draw().unwrap().secret().to_owned()).collect();
    for phrase in &drawn {
        assert_eq!(phrase.split('-').count(), phrase::LENGTH, "{phrase}");
        let checked = strength::check(&Password::typed(phrase), "Enid Hathersage", "club.test");
        assert_eq!(checked, Ok(()), "{phrase}");
    }
    let mut different = drawn.clone();
    different.sort();
    different.dedup();
    assert_eq!(different.len(), drawn.len());
}

#[tokio::test]
async fn s08_a_hash_of_another_cost_is_made_anew_at_the_next_sign_in() {
    let club = Club::start().await;
    club.join("Enid Hathersage", PLAIN).await;
    let dear = club.at_cost(Cost { memory_kib: 128, passes: 1 }).await;
    let with =
        "SELECT COUNT(*) FROM member WHERE password_hash LIKE '$argon2id$v=19$m=128,t=1,p=1$%'";
    let wrong = dear.browser().sign_in("Enid Hathersage", "some other words here").await;
    assert_eq!(wrong.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(club.count(with).await, 0);
    for _ in 0..2 {
        let answer = dear.browser().sign_in("Enid Hathersage", PASSWORD).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER);
        assert_eq!(club.count(with).await, 1);
    }
}
